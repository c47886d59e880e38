package begin_test

import (
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/widget"

	screen "fourturn/app/screen/begin"
	"fourturn/app/screen/screentest"
	"fourturn/app/theme"
	"fourturn/app/view/begin"
	"fourturn/app/widgets/golden"
	"fourturn/planner"
)

// shell is the window around the questions.
type shell struct {
	window fyne.Window
	room   string
	empty  bool
	t      *testing.T
}

func (s *shell) Canvas() fyne.Canvas { return s.window.Canvas() }
func (s *shell) Empty()              { s.empty = true }

func (s *shell) Replace(start func() error, room string) {
	if err := start(); err != nil {
		s.t.Error(err)
	}
	s.room = room
}

var small, large = fyne.NewSize(900, 600), fyne.NewSize(1280, 800)

func open(t *testing.T, options theme.Options, size fyne.Size) (*screentest.Desk, *shell) {
	t.Helper()
	golden.App(t, options)
	s := &shell{t: t, window: test.NewTempWindow(t, container.NewCenter(widget.NewLabel("")))}
	s.window.Resize(size)
	d := screentest.Open(t, screentest.Empty(), screentest.SummerDay)
	begin.Open(screen.New(d.Session, d.Words, planner.Reference{Book: screentest.Book(t)}, screentest.SummerDay), d.Words, s)
	return d, s
}

func (s *shell) press(key fyne.KeyName) {
	if focused := s.Canvas().Focused(); focused != nil {
		focused.TypedKey(&fyne.KeyEvent{Name: key})
	} else {
		s.Canvas().OnTypedKey()(&fyne.KeyEvent{Name: key})
	}
}

// accept presses the main button by Enter where nothing has the focus.
func (s *shell) accept() {
	s.Canvas().Unfocus()
	s.press(fyne.KeyReturn)
}

func TestPictures(t *testing.T) {
	for _, one := range []struct {
		name    string
		options theme.Options
		size    fyne.Size
		typed   string
		pages   int
		do      func(*shell)
	}{
		{"start-light-900x600", theme.Options{Mode: theme.Light}, small, "", 0, nil},
		{"place-dark-1280x800", theme.Options{Mode: theme.Dark}, large, "san", 0, nil},
		{"place-large-text-900x600", theme.Options{Mode: theme.Light, TextScale: 1.3}, small, "san", 0, nil},
		{"pots-light-900x600", theme.Options{Mode: theme.Light}, small, "hamburg", 1, nil},
		{"measures-light-900x600", theme.Options{Mode: theme.Light}, small, "des moines", 1, func(s *shell) {
			label := func() string { return s.Canvas().Focused().(fyne.Accessible).AccessibilityLabel() }
			for i := 0; i < 100 && !strings.Contains(label(), "round, tapered"); i++ {
				s.press(fyne.KeyLeft)
			}
		}},
		{"taste-light-900x600", theme.Options{Mode: theme.Light}, small, "hamburg", 2, nil},
		{"taste-dark-1280x800", theme.Options{Mode: theme.Dark}, large, "hamburg", 2, nil},
		{"taste-contrast-900x600", theme.Options{Mode: theme.Light, HighContrast: true}, small, "hamburg", 2, nil},
	} {
		_, s := open(t, one.options, one.size)
		test.Type(s.Canvas().Focused(), one.typed)
		for range one.pages {
			s.accept()
		}
		if one.do != nil {
			one.do(s)
		}
		s.window.Resize(one.size.AddWidthHeight(1, 1))
		s.window.Resize(one.size)
		golden.Picture(t, one.name+".png", s.Canvas())
	}
}

// A town and Enter three times make a plan with its year.
func TestANewPlanByKeys(t *testing.T) {
	d, s := open(t, theme.Options{}, small)
	test.Type(s.Canvas().Focused(), "hamburg")
	s.press(fyne.KeyReturn)
	s.accept()
	s.accept()
	if s.room != "year" || len(d.Plan().Pots) != 3 || s.Canvas().Overlays().Top() != nil {
		t.Errorf("in room %q, %d pots, still open %v", s.room, len(d.Plan().Pots), s.Canvas().Overlays().Top() != nil)
	}
}

func TestEscLeavesEverythingAsItWas(t *testing.T) {
	d, s := open(t, theme.Options{}, small)
	before := d.Plan()
	test.Type(s.Canvas().Focused(), "hamburg")
	s.accept()
	s.press(fyne.KeyEscape)
	if s.Canvas().Overlays().Top() != nil || d.Plan() != before {
		t.Error("Esc did not leave everything as it was")
	}
}

func TestOnlyAPlaceLeadsOn(t *testing.T) {
	_, s := open(t, theme.Options{}, small)
	test.Type(s.Canvas().Focused(), "xqxq")
	before := s.Canvas().Focused()
	s.press(fyne.KeyReturn)
	if s.Canvas().Focused() != before {
		t.Error("went on without a place")
	}
}
