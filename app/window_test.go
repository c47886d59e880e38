package main

import (
	"bytes"
	"image/png"
	"os"
	"path/filepath"
	"slices"
	"testing"

	"fyne.io/fyne/v2"

	"fourturn/app/desktop"
	"fourturn/app/theme"
	"fourturn/app/words"
	"fourturn/planner"
	"fourturn/planner/civil"
)

// headlessTerminal returns a terminal on a fixed day, in a build that draws in
// memory.
func headlessTerminal(t *testing.T) (term *terminal, out, errs *bytes.Buffer) {
	t.Helper()
	if !headless {
		t.Skip("this build draws in a window; the tag ci draws in memory")
	}
	out, errs = &bytes.Buffer{}, &bytes.Buffer{}
	return &terminal{out: out, err: errs, words: words.New("en_GB"), now: todayOf(civil.MustParse("2027-04-20"))}, out, errs
}

func TestDisplayIsLookedFor(t *testing.T) {
	for _, one := range []struct {
		system, name string
		want         bool
	}{
		{"linux", "", false},
		{"linux", "DISPLAY", true},
		{"freebsd", "WAYLAND_DISPLAY", true},
		{"windows", "", true},
		{"darwin", "", true},
	} {
		getenv := func(name string) string {
			if name == one.name {
				return ":0"
			}
			return ""
		}
		if got := hasDisplay(one.system, getenv); got != one.want {
			t.Errorf("%s with %q: %v", one.system, one.name, got)
		}
	}
}

func TestAWindowNeedsAnotherBuild(t *testing.T) {
	term, _, errs := headlessTerminal(t)
	if code := openWindow(term, ""); code != exitFault || errs.Len() == 0 {
		t.Errorf("code %d, said %q", code, errs)
	}
}

// begun returns the title of the plan that the window begins with.
func begun(t *testing.T, path string, prepare func(*desktop.Settings)) string {
	t.Helper()
	term, _, _ := headlessTerminal(t)
	s, err := newStudio(term, newPlan(), theme.Options{}, desktop.LeastWindow)
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(s.close)
	prepare(s.shell.Settings())
	plan := s.session.Plan()
	s.begin(path)
	s.desk.until(func() bool { return s.session.Plan() != plan })
	s.wait()
	return s.session.Plan().Title
}

func TestWhatTheWindowBeginsWith(t *testing.T) {
	file := func(title string) string {
		path := filepath.Join(t.TempDir(), "plan.yaml")
		if err := os.WriteFile(path, []byte("fourturn: 1\ntitle: "+title+"\n"), 0o644); err != nil {
			t.Fatal(err)
		}
		return path
	}
	recent := file("Recent")
	for _, one := range []struct {
		what, path, want string
		prepare          func(*desktop.Settings)
	}{
		{"first start", "", examplePlan().Title, func(*desktop.Settings) {}},
		{"second start, nothing saved", "", "", func(s *desktop.Settings) { s.Started() }},
		{"second start", "", "Recent", func(s *desktop.Settings) { s.Started(); s.AddRecent(recent) }},
		{"a file on the command line", file("Asked"), "Asked", func(s *desktop.Settings) { s.AddRecent(recent) }},
	} {
		if got := begun(t, one.path, one.prepare); got != one.want {
			t.Errorf("%s begins with %q, not %q", one.what, got, one.want)
		}
	}
}

// Every room opens with the example and with an empty plan, and shows something.
func TestEveryRoomOpens(t *testing.T) {
	term, _, _ := headlessTerminal(t)
	for name, plan := range map[string]*planner.Plan{"example": examplePlan(), "empty": newPlan()} {
		s, err := newStudio(term, plan, theme.Options{Mode: theme.Light}, desktop.LeastWindow)
		if err != nil {
			t.Fatal(err)
		}
		t.Cleanup(s.close)
		for _, room := range rooms(s.session, term.words, s.ref.Book, nil) {
			s.shell.GoTo(room.Key, "")
			s.wait()
			if s.shell.Room() != room.Key {
				t.Fatalf("%s: the room %s did not open", name, room.Key)
			}
			if need := s.window.Content().MinSize(); need.Max(desktop.LeastWindow) != desktop.LeastWindow {
				t.Errorf("%s: with the room %s the window needs %v, more than %v", name, room.Key, need, desktop.LeastWindow)
			}
		}
	}
}

func TestDemoWritesTheMainJob(t *testing.T) {
	term, _, errs := headlessTerminal(t)
	folder := filepath.Join(t.TempDir(), "out")
	if code := runDemo(term, []string{"--out", folder}); code != exitGood {
		t.Fatalf("code %d: %s", code, errs)
	}
	entries, err := os.ReadDir(folder)
	if err != nil {
		t.Fatal(err)
	}
	var names []string
	for _, e := range entries {
		names = append(names, e.Name())
	}
	for _, want := range []string{"example.yaml", "figures.txt", "figures.json", "calendar.ics", "due.png", "pots.png"} {
		if !slices.Contains(names, want) {
			t.Errorf("no %s among %q", want, names)
		}
	}
	in, err := os.Open(filepath.Join(folder, "pots.png"))
	if err != nil {
		t.Fatal(err)
	}
	defer in.Close()
	picture, err := png.Decode(in)
	if err != nil {
		t.Fatal(err)
	}
	if got := fyne.NewSize(float32(picture.Bounds().Dx()), float32(picture.Bounds().Dy())); got != desktop.FirstWindow {
		t.Errorf("the picture is %v", got)
	}
}

func TestDemoAndGalleryNeedAFolder(t *testing.T) {
	term, _, _ := headlessTerminal(t)
	if runDemo(term, nil) != exitUsage || runGallery(term, []string{"--out"}) != exitUsage {
		t.Error("a missing folder was let pass")
	}
}
