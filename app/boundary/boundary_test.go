package boundary

import (
	"os"
	"path/filepath"
	"strings"
	"testing"
	"testing/fstest"

	"github.com/google/go-cmp/cmp"
	"golang.org/x/tools/txtar"
)

func TestTheProjectKeepsItsRules(t *testing.T) {
	faults, err := check(os.DirFS("../.."), exceptions)
	if err != nil {
		t.Fatal(err)
	}
	for _, fault := range faults {
		t.Error(fault)
	}
}

// TestEachRuleIsSeenToBreak checks small trees that break one rule each. The file
// "want" lists the faults to be found, one a line; "exceptions", where present,
// lists "room import reason".
func TestEachRuleIsSeenToBreak(t *testing.T) {
	names, err := filepath.Glob("../../testdata/boundary/*.txtar")
	if err != nil || len(names) == 0 {
		t.Fatal("no fixtures", err)
	}
	for _, name := range names {
		t.Run(strings.TrimSuffix(filepath.Base(name), ".txtar"), func(t *testing.T) {
			archive, err := txtar.ParseFile(name)
			if err != nil {
				t.Fatal(err)
			}
			tree := fstest.MapFS{}
			want, hasWant := "", false
			var allowed []exception
			for _, file := range archive.Files {
				switch file.Name {
				case "want":
					want, hasWant = string(file.Data), true
				case "exceptions":
					allowed = readExceptions(string(file.Data))
				default:
					tree[file.Name] = &fstest.MapFile{Data: file.Data}
				}
			}
			if !hasWant {
				t.Fatal("the fixture has no file want")
			}
			faults, err := check(tree, allowed)
			if err != nil {
				t.Fatal(err)
			}
			got := strings.Join(faults, "\n")
			if diff := cmp.Diff(strings.TrimSpace(want), got); diff != "" {
				t.Error(diff)
			}
		})
	}
}

func readExceptions(text string) (all []exception) {
	for line := range strings.Lines(strings.TrimSpace(text)) {
		parts := strings.SplitN(strings.TrimSpace(line)+"  ", " ", 3)
		all = append(all, exception{parts[0], parts[1], strings.TrimSpace(parts[2])})
	}
	return all
}
