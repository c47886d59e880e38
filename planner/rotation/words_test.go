package rotation_test

import (
	"encoding/json"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
)

var key = regexp.MustCompile(`"(rotation\.[a-z0-9_.]+)"`)

// Every key in the code has its English words, and no words are left over.
func TestKeysHaveWords(t *testing.T) {
	text, err := os.ReadFile("../../app/words/translations/en/rotation.json")
	if err != nil {
		t.Fatal(err)
	}
	var words map[string]string
	if err := json.Unmarshal(text, &words); err != nil {
		t.Fatal(err)
	}
	files, err := filepath.Glob("*.go")
	if err != nil {
		t.Fatal(err)
	}
	used := make(map[string]bool)
	for _, name := range files {
		if strings.HasSuffix(name, "_test.go") {
			continue
		}
		code, err := os.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		for _, match := range key.FindAllStringSubmatch(string(code), -1) {
			used[match[1]] = true
			if words[match[1]] == "" {
				t.Errorf("%s: %s has no words", name, match[1])
			}
		}
	}
	for name := range words {
		if !used[name] {
			t.Errorf("the words of %s are not used", name)
		}
	}
}
