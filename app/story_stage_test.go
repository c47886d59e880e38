package main

import (
	"bytes"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"

	"fyne.io/fyne/v2"

	"fourturn/app/desktop"
	"fourturn/app/session"
	"fourturn/app/theme"
	"fourturn/app/words"
)

// stage is the whole program with its window in memory, a folder of the person's and
// a clock that stands still.
type stage struct {
	*wiring
	t      *testing.T
	app    fyne.App
	desk   *desk
	folder string // the person's documents
	state  string // where the program keeps journals and copies
	now    time.Time
	errors bytes.Buffer
}

func newStage(t *testing.T) *stage {
	s := &stage{
		t: t, app: memoryApp(), folder: t.TempDir(), state: t.TempDir(),
		now: time.Date(2027, time.April, 14, 9, 0, 0, 0, time.UTC),
	}
	s.app.Settings().SetTheme(theme.New(theme.Options{Mode: theme.Light, TextScale: 1}))
	s.start("")
	return s
}

// start opens the window as at a start of the program.
func (s *stage) start(path string) {
	s.desk = newDesk()
	term := &terminal{out: &s.errors, err: &s.errors, words: words.New("en"), now: func() time.Time { return s.now }}
	s.wiring = newWiring(term, s.app, newStore(s.state, term.now), s.desk.post)
	s.wiring.folder = s.folder
	s.window = s.app.NewWindow(appName)
	s.open()
	s.window.Resize(desktop.FirstWindow)
	s.begin(path)
	s.settle()
}

// settle lets everything in the background come to an end: what the program says it is
// busy with, and then what comes back in a moment unannounced, such as a look at the disk.
func (s *stage) settle() {
	s.t.Helper()
	for still := 0; still < 3; still++ {
		s.desk.until(func() bool {
			_, current := s.session.Outlook()
			return current && !s.session.Busy(session.OpeningFile) && !s.session.Busy(session.SavingFile)
		})
		time.Sleep(5 * time.Millisecond)
		if s.desk.run() {
			still = -1
		}
	}
	layTwice(s.window)
}

// quit ends the program as a person does who has saved.
func (s *stage) quit() {
	s.session.Close()
	s.window.Close()
}

// crash ends the program at once: the next start finds what lies on the disk now.
func (s *stage) crash() {
	s.t.Helper()
	s.waitForJournal()
	after := s.t.TempDir()
	if err := os.CopyFS(after, os.DirFS(s.state)); err != nil {
		s.t.Fatal(err)
	}
	s.session.Discard()
	s.quit()
	s.state = after
}

// waitForJournal waits until unsaved work is on the disk, as it is within moments.
func (s *stage) waitForJournal() {
	if !s.session.Dirty() {
		return
	}
	for range 500 {
		journals, _ := filepath.Glob(filepath.Join(s.state, "journals", "*", "work"))
		if len(journals) > 0 {
			return
		}
		time.Sleep(10 * time.Millisecond)
	}
	s.t.Fatal("no journal was written")
}

// end leaves the stage.
func (s *stage) end() {
	s.session.Discard()
	s.quit()
}

// path is that of a file of the person's.
func (s *stage) path(name string) string { return filepath.Join(s.folder, filepath.FromSlash(name)) }

func (s *stage) write(name string, data []byte) {
	s.t.Helper()
	if err := os.WriteFile(s.path(name), data, 0o600); err != nil {
		s.t.Fatal(err)
	}
}

// describe says what the window shows, for a story that fails.
func (s *stage) describe() string {
	seen := s.texts()
	return "the window shows:\n  " + strings.Join(slices.Compact(seen), "\n  ")
}
