package main

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"fourturn/app/words"
	"fourturn/plants"
)

func ownBookWith(t *testing.T, text string) (*plants.Book, []string) {
	t.Helper()
	path := filepath.Join(t.TempDir(), "plants.yaml")
	if err := os.WriteFile(path, []byte(text), 0o600); err != nil {
		t.Fatal(err)
	}
	return openBook(path, words.New("en"))
}

// A value of the person's own goes before the built-in one.
func TestOwnBookOverridesAValue(t *testing.T) {
	book, faults := ownBookWith(t, "plants:\n  - id: pansy\n    heat_limit: 29 C\n")
	if len(faults) > 0 {
		t.Fatal(faults)
	}
	p, _ := book.Plant("pansy")
	if got, _ := p.HeatLimit.Get(); got != 29 {
		t.Errorf("heat limit %v, want 29", got)
	}
	if p.Soft(plants.FieldHeatLimit) {
		t.Error("what the person entered is shown as an estimate")
	}
}

// A missing book is no fault.
func TestOwnBookMayBeMissing(t *testing.T) {
	book, faults := openBook(filepath.Join(t.TempDir(), "none.yaml"), words.New("en"))
	if book == nil || len(faults) > 0 {
		t.Error(faults)
	}
}

// A faulty book is named with file, line and column, and the built-in one is in use.
func TestFaultyOwnBookNamesThePlace(t *testing.T) {
	book, faults := ownBookWith(t, "plants:\n  - id: pansy\n    heat_limit: warm\n")
	if len(faults) != 1 || !strings.Contains(faults[0], "plants.yaml:3:17: ") {
		t.Errorf("faults: %q", faults)
	}
	if _, ok := book.Plant("pansy"); !ok {
		t.Error("the built-in book is gone")
	}
}
