package year_test

import (
	"slices"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	"fourturn/app/screen/screentest"
	screen "fourturn/app/screen/year"
	"fourturn/app/theme"
	"fourturn/app/view/year"
	"fourturn/app/widgets/golden"
)

// desk is a page in a window that a test can press keys in.
type desk struct {
	*screentest.Desk
	shell  *shell
	window fyne.Window
	view   *year.View
	screen *screen.Screen
}

func sit(t *testing.T) *desk {
	t.Helper()
	golden.App(t, theme.Options{})
	d := &desk{Desk: screentest.Open(t, screentest.Example(t), screentest.SummerDay), shell: &shell{}}
	d.window = test.NewTempWindow(t, nil)
	d.shell.canvas = d.window.Canvas()
	d.screen = screen.New(d.Session, d.Words)
	d.view = year.New(d.screen, d.Words, d.shell)
	d.window.SetContent(d.view.Object())
	d.window.Resize(large)
	return d
}

// press gives keys to what has the focus.
func (d *desk) press(keys ...fyne.KeyName) {
	for _, k := range keys {
		d.window.Canvas().Focused().TypedKey(&fyne.KeyEvent{Name: k})
	}
}

// settle waits for the figures and shows them.
func (d *desk) settle() {
	d.Settle()
	d.view.Refresh()
}

// focused returns what a screen reader says of the focus.
func (d *desk) focused() string {
	if a, ok := d.window.Canvas().Focused().(fyne.Accessible); ok {
		return a.AccessibilityLabel()
	}
	return ""
}

func TestEveryPartIsReachedByTab(t *testing.T) {
	d := sit(t)
	var order []string
	for range 14 {
		d.window.Canvas().FocusNext()
		order = append(order, d.focused())
	}
	for _, want := range []string{
		"Today", "Fewer days, larger (+)", "More days, smaller (−)", "Days in sight, year", "Find by name: ",
		"Place, all places", "Shape, all shapes", "Appetite for risk, cautious 10%",
	} {
		if !slices.Contains(order, want) {
			t.Errorf("%q is not reached: %q", want, order)
		}
	}
	if slices.Contains(order, "") {
		t.Errorf("something without a name has the focus: %q", order)
	}
}

func TestAChangeOutIsPinnedMovedAndToldByKeysAlone(t *testing.T) {
	d := sit(t)
	d.window.Canvas().Focus(focusable(t, d, "Find by name: "))
	test.Type(d.window.Canvas().Focused(), "half barrel")
	d.press(fyne.KeyDown) // to the strips
	for range 12 {        // to a change-out that is to come
		d.press(fyne.KeyRight)
	}
	test.Type(d.window.Canvas().Focused(), "p")
	d.settle()
	if d.UndoName() == "" {
		t.Fatal("nothing was pinned")
	}
	d.Undo()
	d.settle()
	d.press(fyne.KeyReturn, fyne.KeyRight, fyne.KeyRight, fyne.KeyReturn)
	d.settle()
	if d.UndoName() == "" {
		t.Error("nothing was moved")
	}
	d.press(fyne.KeyRight, fyne.KeyReturn) // the planting: its story
	if got := d.focused(); got != "All pots" {
		t.Fatalf("in the story %q has the focus", got)
	}
	d.press(fyne.KeySpace)
	if got := d.focused(); got == "All pots" {
		t.Error("the story does not close")
	}
}

func TestAStoryIsOpenedFromElsewhere(t *testing.T) {
	d := sit(t)
	d.screen.Search("nothing of the kind")
	d.view.Open(d.Plan().Pots[3].ID)
	if d.screen.Asked() || d.screen.ChosenRow() != 3 {
		t.Error("the pot that was to be opened is not shown")
	}
}

// focusable returns what is called so when Tab comes to it.
func focusable(t *testing.T, d *desk, name string) fyne.Focusable {
	t.Helper()
	for range 30 {
		d.window.Canvas().FocusNext()
		if d.focused() == name {
			return d.window.Canvas().Focused()
		}
	}
	t.Fatalf("%q is not reached by Tab", name)
	return nil
}

// What can stand instead is asked in a dialog that the keys reach.
func TestASwapIsAskedFor(t *testing.T) {
	d := sit(t)
	d.window.Canvas().Focus(focusable(t, d, "Find by name: "))
	d.press(fyne.KeyDown, fyne.KeyRight, fyne.KeyRight, fyne.KeyRight)
	test.Type(d.window.Canvas().Focused(), "s")
	if d.window.Canvas().Overlays().Top() == nil {
		t.Fatal("nothing is asked")
	}
	golden.Picture(t, "swap.png", d.window.Canvas())
	d.press(fyne.KeyReturn)
	d.settle()
	if d.UndoName() == "" || d.window.Canvas().Overlays().Top() != nil {
		t.Error("nothing was swapped")
	}
}
