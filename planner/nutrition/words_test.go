package nutrition_test

import (
	"encoding/json"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"fourturn/planner/nutrition"
)

// Every key that the package hands out has its English text, and no text is left over.
func TestKeysHaveWords(t *testing.T) {
	text, err := os.ReadFile("../../app/words/translations/en/nutrition.json")
	if err != nil {
		t.Fatal(err)
	}
	words := map[string]string{}
	if err := json.Unmarshal(text, &words); err != nil {
		t.Fatal(err)
	}
	files, err := filepath.Glob("*.go")
	if err != nil || len(files) == 0 {
		t.Fatal("no source files", err)
	}
	used := map[string]bool{}
	for _, f := range nutrition.Feeders {
		used[f.Key()] = true
	}
	for _, f := range []nutrition.AnalysisFault{nutrition.AnalysisShape, nutrition.AnalysisRange, nutrition.AnalysisNothing} {
		used[f.Key()] = true
	}
	for _, f := range []nutrition.RateFault{nutrition.RateShape, nutrition.RateDose, nutrition.RateVolume, nutrition.RateRange} {
		used[f.Key()] = true
	}
	for _, file := range files {
		if strings.HasSuffix(file, "_test.go") {
			continue
		}
		source, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		for _, m := range regexp.MustCompile(`"(nutrition\.[a-z0-9_.]*)"`).FindAllStringSubmatch(string(source), -1) {
			if !strings.HasSuffix(m[1], "_") && !strings.HasSuffix(m[1], ".") {
				used[m[1]] = true
			}
		}
	}
	for key := range used {
		if words[key] == "" {
			t.Errorf("%s has no words", key)
		}
	}
	for key := range words {
		if !used[key] {
			t.Errorf("%s is in the words and nowhere else", key)
		}
	}
}
