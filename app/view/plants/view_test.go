package plants_test

import (
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/layout"
	"fyne.io/fyne/v2/test"

	screen "fourturn/app/screen/plants"
	"fourturn/app/screen/screentest"
	"fourturn/app/theme"
	view "fourturn/app/view/plants"
	"fourturn/app/widgets"
	"fourturn/app/widgets/golden"
	"fourturn/planner"
)

// shell stands for the window around the room.
type shell struct {
	shown  []planner.Figure
	status string
	canvas fyne.Canvas
}

func (s *shell) ShowWorking(f planner.Figure) { s.shown = append(s.shown, f) }
func (s *shell) Status(text string)           { s.status = text }
func (s *shell) Canvas() fyne.Canvas          { return s.canvas }

// room opens the example, in a household with cats or as it is.
func room(t *testing.T, cats bool) (*screentest.Desk, *screen.Screen) {
	t.Helper()
	plan := screentest.Example(t)
	plan.Household.Cats = cats
	d := screentest.Open(t, plan, screentest.SummerDay)
	return d, screen.New(d.Session, d.Words)
}

func page(v *view.View) fyne.CanvasObject {
	return container.New(layout.NewCustomPaddedLayout(theme.Step2, theme.Step2, theme.Step2, theme.Step2), v.Object())
}

var sizes = []struct {
	name string
	size fyne.Size
}{{"900x600", fyne.NewSize(900, 600)}, {"1280x800", fyne.NewSize(1280, 800)}}

func TestPictures(t *testing.T) {
	for _, size := range sizes {
		for _, one := range []struct {
			name  string
			plant string
			do    func(*screen.Screen)
		}{
			{"whole", "", nil},
			{"listed", "english-ivy", func(s *screen.Screen) { s.Search("ivy") }},
			{"none", "", func(s *screen.Screen) { s.Search("qqqq") }},
		} {
			t.Run(one.name+"-"+size.name, func(t *testing.T) {
				d, s := room(t, false)
				golden.Check(t, one.name+"-"+size.name, size.size, func() fyne.CanvasObject {
					if one.do != nil {
						one.do(s)
					}
					v := view.New(s, d.Words, &shell{})
					if one.plant != "" {
						v.Open(one.plant)
					}
					return page(v)
				})
			})
		}
	}
}

// window shows the room, as high as all that is known of a plant needs.
func window(t *testing.T, size fyne.Size, d *screentest.Desk, s *screen.Screen) (*view.View, *shell, fyne.Window) {
	t.Helper()
	golden.App(t, theme.Options{Mode: theme.Light})
	sh := &shell{}
	v := view.New(s, d.Words, sh)
	w := test.NewTempWindow(t, page(v))
	sh.canvas = w.Canvas()
	w.SetPadded(false)
	w.Resize(size.AddWidthHeight(1, 1)) // twice, since text that wraps has its height only then
	w.Resize(size)
	return v, sh, w
}

var high = fyne.NewSize(900, 1500)

func TestFactsAreSeen(t *testing.T) {
	d, s := room(t, false)
	v, _, w := window(t, high, d, s)
	v.Open("pansy")
	golden.Picture(t, "facts.png", w.Canvas())
}

func TestARefusalIsSaidBesideTheButton(t *testing.T) {
	d, s := room(t, true)
	v, sh, w := window(t, high, d, s)
	v.Open("pot-lily")
	revision := d.Revision()
	press(t, v.Object(), "Add")
	if d.Revision() != revision || sh.status != "" {
		t.Error("a lily was added where cats live")
	}
	golden.Picture(t, "not-added.png", w.Canvas())
}

func TestAPlantIsAddedByTheButton(t *testing.T) {
	d, s := room(t, false)
	v, sh, _ := window(t, high, d, s)
	v.Open("pansy")
	press(t, v.Object(), "Add")
	if want := "Pansy is in Door pot, left in Spring already."; sh.status != "" {
		t.Errorf("status %q, where %q stands beside the button", sh.status, want)
	}
	v.Open("viola")
	press(t, v.Object(), "Add")
	if want := "Viola added to Door pot, left, Spring."; sh.status != want {
		t.Errorf("status %q, want %q", sh.status, want)
	}
}

func TestPlantsSideBySide(t *testing.T) {
	d, s := room(t, false)
	v, sh, w := window(t, fyne.NewSize(900, 600), d, s)
	for _, id := range []string{"pansy", "english-ivy", "angelonia", "pot-lily", "viola"} {
		v.Open(id)
		press(t, v.Object(), "Compare")
	}
	if want := "At most 4 plants stand side by side. Take one away first."; sh.status != want {
		t.Errorf("status %q, want %q", sh.status, want)
	}
	press(t, v.Object(), "Compare (4)")
	golden.Picture(t, "compared.png", w.Canvas())
}

func TestItIsFoundAsOneTypes(t *testing.T) {
	d, s := room(t, false)
	v, sh, w := window(t, fyne.NewSize(900, 600), d, s)
	entry := find[fyne.Focusable](t, v.Object(), "Find by any name: ")
	w.Canvas().Focus(entry)
	test.Type(entry, "lóbel")
	if n := s.Rows(); n == 0 || n > 5 {
		t.Fatalf("%d plants answer", n)
	}
	entry.TypedKey(&fyne.KeyEvent{Name: fyne.KeyDown})
	if sh.canvas.Focused() == entry || s.ChosenRow() != 0 {
		t.Error("Down does not go to what was found")
	}
	entry.TypedKey(&fyne.KeyEvent{Name: fyne.KeyEscape})
	if s.Query() != "" || s.Filtered() {
		t.Error("Esc does not empty the search")
	}
}

func TestAFigureOpensWhereItIsFrom(t *testing.T) {
	d, s := room(t, false)
	v, sh, _ := window(t, high, d, s)
	v.Open("pansy")
	figure := find[fyne.Tappable](t, v.Object(), "heat limit")
	figure.Tapped(nil)
	if len(sh.shown) != 1 || sh.shown[0].Working().Name != "plants.field.heat_limit" || sh.shown[0].Working().Source.Status == "" {
		t.Errorf("shown %v", sh.shown)
	}
}

// A narrow page leaves columns out rather than cutting them.
func TestANarrowPage(t *testing.T) {
	d, s := room(t, false)
	v, _, w := window(t, fyne.NewSize(720, 600), d, s)
	v.Open("english-ivy")
	golden.Picture(t, "narrow.png", w.Canvas())
}

// find returns the visible part whose name begins so.
func find[T any](t *testing.T, o fyne.CanvasObject, name string) T {
	t.Helper()
	for _, part := range test.LaidOutObjects(o) {
		named, ok := part.(fyne.Accessible)
		if it, fits := part.(T); ok && fits && matches(named.AccessibilityLabel(), name) {
			return it
		}
	}
	t.Fatalf("there is no %q", name)
	var none T
	return none
}

// matches reports whether a name is the one looked for, or goes on after it with what
// the part shows.
func matches(have, want string) bool {
	rest, ok := strings.CutPrefix(have, want)
	return ok && !strings.HasPrefix(rest, " (")
}

func press(t *testing.T, o fyne.CanvasObject, name string) {
	t.Helper()
	test.Tap(find[*widgets.Button](t, o, name))
}
