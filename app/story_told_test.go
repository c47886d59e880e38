package main

import (
	"encoding/json"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
)

// told is what the stories have done so far.
type told struct {
	did   map[string]bool // actions of the menus, by name
	edits map[string]bool // named edits of the plan
	all   map[string]bool // every action that was seen in the menus
}

func newTold() *told {
	return &told{did: map[string]bool{}, edits: map[string]bool{}, all: map[string]bool{}}
}

// see takes down what the stage has come to.
func (d *told) see(s *stage) {
	for _, a := range s.shell.Actions() {
		d.all[a.Name] = true
	}
	if step, ok := s.session.UndoStep(); ok {
		d.edits[step.Name] = true
	}
	if step, ok := s.session.RedoStep(); ok {
		d.edits[step.Name] = true
	}
}

// check fails for every entry of the menus and every named edit that no story does.
func (d *told) check(t *testing.T) {
	for _, name := range sorted(d.all) {
		if !d.did[name] && !strings.HasPrefix(name, "recent ") {
			t.Errorf("no story does %q", name)
		}
	}
	for _, key := range editKeys(t) {
		if !d.edits[key] {
			t.Errorf("no story makes the edit %q", key)
		}
	}
}

// editKeys returns the keys of all named edits, from their texts.
func editKeys(t *testing.T) []string {
	files, err := filepath.Glob(filepath.Join("words", "translations", "en", "*.json"))
	if err != nil || len(files) == 0 {
		t.Fatalf("no texts: %v", err)
	}
	keys := map[string]bool{}
	for _, file := range files {
		data, err := os.ReadFile(file)
		texts := map[string]string{}
		if err == nil {
			err = json.Unmarshal(data, &texts)
		}
		if err != nil {
			t.Fatal(err)
		}
		for key := range texts {
			if name, _, _ := strings.Cut(key, "#"); strings.Contains(name, ".edit_") {
				keys[name] = true
			}
		}
	}
	return sorted(keys)
}

func sorted(set map[string]bool) []string {
	var list []string
	for one := range set {
		list = append(list, one)
	}
	slices.Sort(list)
	return list
}
