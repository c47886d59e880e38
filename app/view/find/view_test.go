package find_test

import (
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/widget"

	screen "fourturn/app/screen/find"
	"fourturn/app/screen/screentest"
	"fourturn/app/theme"
	"fourturn/app/view/find"
	"fourturn/app/widgets/golden"
	"fourturn/planner"
)

// shell is the window around the search.
type shell struct {
	window fyne.Window
	went   []string
}

func (s *shell) Canvas() fyne.Canvas { return s.window.Canvas() }
func (s *shell) Go(room, id string)  { s.went = append(s.went, room+" "+id) }
func (s *shell) Perform(a string) bool {
	s.went = append(s.went, "do "+a)
	return true
}

var small, large = fyne.NewSize(900, 600), fyne.NewSize(1280, 800)

// open opens the search over an empty page and types.
func open(t *testing.T, plan *planner.Plan, options theme.Options, size fyne.Size, typed string) *shell {
	t.Helper()
	golden.App(t, options)
	s := &shell{window: test.NewTempWindow(t, container.NewCenter(widget.NewLabel("")))}
	s.window.Resize(size)
	d := screentest.Open(t, plan, screentest.SummerDay)
	find.Open(screen.New(d.Session, d.Words, screentest.Book(t), screen.Around{
		Rooms:   []screen.Named{{Name: "due", Label: "Due", Keys: "Ctrl+1"}, {Name: "pots", Label: "Pots", Keys: "Ctrl+2"}},
		Actions: []screen.Named{{Name: "save", Label: "Save", Keys: "Ctrl+S"}, {Name: "text_larger", Label: "Larger text", Keys: "Ctrl+="}},
	}), d.Words, s)
	test.Type(s.Canvas().Focused(), typed)
	return s
}

func (s *shell) press(keys ...fyne.KeyName) {
	for _, key := range keys {
		if focused := s.Canvas().Focused(); focused != nil {
			focused.TypedKey(&fyne.KeyEvent{Name: key})
		}
	}
}

func TestPictures(t *testing.T) {
	for _, one := range []struct {
		name    string
		options theme.Options
		size    fyne.Size
		plan    *planner.Plan
		typed   string
	}{
		{"pots-light-900x600", theme.Options{Mode: theme.Light}, small, screentest.Example(t), "po"},
		{"pots-dark-1280x800", theme.Options{Mode: theme.Dark}, large, screentest.Example(t), "po"},
		{"start-light-900x600", theme.Options{Mode: theme.Light}, small, screentest.Example(t), ""},
		{"none-dark-900x600", theme.Options{Mode: theme.Dark}, small, screentest.Example(t), "qqq"},
		{"longest-contrast-900x600", theme.Options{Mode: theme.Light, HighContrast: true, TextScale: 1.5}, small, screentest.LongestNames(t), "the"},
	} {
		s := open(t, one.plan, one.options, one.size, one.typed)
		s.window.Resize(one.size.AddWidthHeight(1, 1))
		s.window.Resize(one.size)
		golden.Picture(t, one.name+".png", s.Canvas())
	}
}

func TestEverythingByKeys(t *testing.T) {
	for _, one := range []struct {
		typed string
		keys  []fyne.KeyName
		want  string
	}{
		{"door pot", []fyne.KeyName{fyne.KeyReturn}, "pots door-left"},
		{"door pot", []fyne.KeyName{fyne.KeyDown, fyne.KeyReturn}, "pots door-right"},
		{"door pot", []fyne.KeyName{fyne.KeyDown, fyne.KeyUp, fyne.KeyUp, fyne.KeyReturn}, "pots door-left"},
		{"save", []fyne.KeyName{fyne.KeyReturn}, "do save"},
		{"", []fyne.KeyName{fyne.KeyDown, fyne.KeyReturn}, "pots "},
		{"door", []fyne.KeyName{fyne.KeyEscape}, ""},
	} {
		s := open(t, screentest.Example(t), theme.Options{}, small, one.typed)
		s.press(one.keys...)
		if got := strings.Join(s.went, ","); got != one.want {
			t.Errorf("%q and %v went to %q, not %q", one.typed, one.keys, got, one.want)
		}
		if s.Canvas().Overlays().Top() != nil {
			t.Errorf("%q and %v left the search open", one.typed, one.keys)
		}
	}
	s := open(t, screentest.Example(t), theme.Options{}, small, "qqq")
	s.press(fyne.KeyReturn)
	if s.Canvas().Overlays().Top() == nil || len(s.went) > 0 {
		t.Error("Enter went somewhere with nothing found")
	}
}

func TestATapGoesThereAtOnce(t *testing.T) {
	s := open(t, screentest.Example(t), theme.Options{}, small, "door pot, right")
	for _, o := range test.LaidOutObjects(s.Canvas().Overlays().Top()) {
		if table, ok := o.(interface{ Body() fyne.Focusable }); ok {
			at := fyne.CurrentApp().Driver().AbsolutePositionForObject(table.Body().(fyne.CanvasObject))
			test.TapCanvas(s.Canvas(), at.AddXY(40, 10))
		}
	}
	if len(s.went) != 1 || s.went[0] != "pots door-right" {
		t.Errorf("a tap went to %q", s.went)
	}
}
