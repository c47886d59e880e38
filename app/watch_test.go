package main

import (
	"bytes"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"fourturn/app/logbook"
	"fourturn/app/words"
	"fourturn/planner/civil"
)

// watched returns a watch over a folder of the test's own.
func watched(t *testing.T) (*watch, *bytes.Buffer) {
	t.Helper()
	errs := &bytes.Buffer{}
	term := &terminal{out: errs, err: errs, words: words.New("en_GB"), now: todayOf(civil.MustParse("2027-04-20"))}
	book, err := logbook.Open(t.TempDir(), term.now)
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(book.Close)
	return &watch{terminal: term, book: book, opengl: &openGLFaults{terminal: term}}, errs
}

func TestAFaultOfOurOwnLeavesACrashFile(t *testing.T) {
	w, said := watched(t)
	ended := false
	code := w.guard(func(closing func(func())) {
		closing(func() { ended = true })
		w.book.Note("action", "text_larger")
		panic("mix: negative share")
	})
	if code != exitCrash || !ended {
		t.Errorf("code %d, the journal was closed: %v", code, ended)
	}
	text, err := os.ReadFile(w.book.LastCrash())
	if err != nil {
		t.Fatal(err)
	}
	for _, want := range []string{"mix: negative share", "TestAFaultOfOurOwnLeavesACrashFile", "text_larger"} {
		if !strings.Contains(string(text), want) {
			t.Errorf("the crash file lacks %q", want)
		}
	}
	if !strings.Contains(said.String(), filepath.Base(w.book.LastCrash())) {
		t.Errorf("said %q", said)
	}
}

func TestAFaultAtTheEndHidesNothing(t *testing.T) {
	w, _ := watched(t)
	if code := w.guard(func(closing func(func())) {
		closing(func() { panic("session: closed twice") })
	}); code != exitGood {
		t.Errorf("code %d", code)
	}
}

func TestWithoutOpenGLThePersonIsTold(t *testing.T) {
	for _, sign := range openGLSigns {
		w, said := watched(t)
		left := 0
		w.opengl.leave = func() { left++ }
		code := w.guard(func(func(func())) {
			fmt.Fprintf(w.opengl, "Fyne error:  %s\n  Cause: APIUnavailable: GLX\n", sign)
			fmt.Fprintf(w.opengl, "Fyne error:  %s\n", sign) // told once
			panic("a nil window")
		})
		if code != exitFault || left != 1 || strings.Count(said.String(), "OpenGL 2.1") != 1 || w.book.LastCrash() != "" {
			t.Errorf("%s: code %d, said %q, crash %q", sign, code, said, w.book.LastCrash())
		}
	}
}
