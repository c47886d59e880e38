package main

import (
	"fmt"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
	"time"

	"golang.org/x/tools/txtar"
)

// Stories are what people do with Fourturn, written down so that a person who does not
// program can read them, and carried out on the whole program with its window in memory.
//
// A story is a file in testdata/stories: a title, then one sentence a line or several
// with semicolons between them, then files that lie in the person's folder, in the txtar
// format. What stands behind # is a remark. The sentences are those of [sentences];
// texts in quotation marks are as the window shows them.

// TestStories carries out every story.
func TestStories(t *testing.T) {
	if !headless {
		t.Skip("the window is drawn in memory only with the tag ci")
	}
	paths, err := filepath.Glob(filepath.Join("..", "testdata", "stories", "*.story"))
	if err != nil || len(paths) == 0 {
		t.Fatalf("no stories: %v", err)
	}
	for _, path := range paths {
		t.Run(strings.TrimSuffix(filepath.Base(path), ".story"), func(t *testing.T) {
			story, err := txtar.ParseFile(path)
			if err != nil {
				t.Fatal(err)
			}
			tell(t, story)
		})
	}
}

// tell carries out one story.
func tell(t *testing.T, story *txtar.Archive) {
	s := newStage(t)
	defer s.end()
	for _, f := range story.Files {
		s.write(f.Name, f.Data)
	}
	lines := strings.Split(string(story.Comment), "\n")
	for i, line := range lines[1:] { // the first is the title
		for _, sentence := range split(line) {
			if err := s.carryOut(sentence); err != nil {
				t.Fatalf("line %d: %s: %v\n%s", i+2, sentence, err, s.describe())
			}
		}
	}
}

// split cuts a line into sentences, at semicolons outside quotation marks, without the
// remark behind #.
func split(line string) (sentences []string) {
	quoted, from := false, 0
	cut := func(to int) {
		if one := strings.TrimSpace(line[from:to]); one != "" {
			sentences = append(sentences, one)
		}
		from = to + 1
	}
	for i, r := range line {
		switch {
		case r == '"':
			quoted = !quoted
		case r == ';' && !quoted:
			cut(i)
		case r == '#' && !quoted:
			cut(i)
			return sentences
		}
	}
	cut(len(line))
	return sentences
}

// sentence is one kind of sentence of a story.
type sentence struct {
	pattern *regexp.Regexp
	do      func(s *stage, words []string) error
}

// carryOut does what a sentence says.
func (s *stage) carryOut(text string) error {
	for _, one := range sentences {
		if words := one.pattern.FindStringSubmatch(text); words != nil {
			return s.patiently(func() error { return one.do(s, words[1:]) })
		}
	}
	return fmt.Errorf("no such sentence; there are:\n%s", grammar())
}

// patiently does something that may have to wait for a look at the disk, which nobody
// announces: it is tried again for a while before it has failed.
func (s *stage) patiently(do func() error) error {
	err := do()
	for try := 0; err != nil && try < 40; try++ {
		time.Sleep(50 * time.Millisecond)
		s.settle()
		err = do()
	}
	s.settle()
	return err
}

func grammar() string {
	var all strings.Builder
	for _, one := range sentences {
		fmt.Fprintln(&all, "  ", one.pattern)
	}
	return all.String()
}

func TestSplitStory(t *testing.T) {
	got := split(`press "a;b"; undo # and so on; redo`)
	if len(got) != 2 || got[0] != `press "a;b"` || got[1] != "undo" {
		t.Errorf("split: %q", got)
	}
}
