package pots_test

import (
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	"fourturn/app/screen/screentest"
	"fourturn/app/widgets"
	"fourturn/app/widgets/golden"
)

// press presses the button of a name on the page or in the dialog over it.
func press(t *testing.T, c fyne.Canvas, name string) {
	t.Helper()
	root := c.Content()
	if top := c.Overlays().Top(); top != nil {
		root = top
	}
	for _, o := range test.LaidOutObjects(root) {
		if b, ok := o.(*widgets.Button); ok && b.Visible() && b.AccessibilityLabel() == name {
			b.TypedKey(&fyne.KeyEvent{Name: fyne.KeyReturn})
			return
		}
	}
	t.Fatalf("there is no button %q", name)
}

func TestAListIsPastedIntoTheDialog(t *testing.T) {
	d, _, sh := open(t, screentest.Example(t), fyne.NewSize(900, 600))
	press(t, sh.canvas, "From a list")
	entry, ok := sh.canvas.Focused().(interface {
		fyne.Focusable
		SetText(string)
	})
	if !ok {
		t.Fatalf("the focus is on %T", sh.canvas.Focused())
	}
	entry.SetText("Gate pot;sphere;50 cm")
	press(t, sh.canvas, "Add them")
	if sh.canvas.Overlays().Top() == nil || len(d.Plan().Pots) != 10 {
		t.Fatal("a list with a fault was taken")
	}
	golden.Picture(t, "list-refused.png", sh.canvas)
	entry.SetText("Gate pot;bowl;50 x 20 cm;North arch;3")
	golden.Picture(t, "list-ready.png", sh.canvas)
	press(t, sh.canvas, "Add them")
	if sh.canvas.Overlays().Top() != nil || len(d.Plan().Pots) != 13 {
		t.Errorf("%d pots", len(d.Plan().Pots))
	}
}

func TestEscapeLeavesTheList(t *testing.T) {
	d, _, sh := open(t, screentest.Example(t), fyne.NewSize(900, 600))
	press(t, sh.canvas, "From a list")
	test.Type(sh.canvas.Focused(), "A;bowl;50 x 20")
	sh.canvas.Focused().TypedKey(&fyne.KeyEvent{Name: fyne.KeyEscape})
	if sh.canvas.Overlays().Top() != nil || len(d.Plan().Pots) != 10 {
		t.Error("Esc does not leave the list")
	}
}

func TestMoreAlikeAsksHowMany(t *testing.T) {
	d, _, sh := open(t, screentest.Example(t), fyne.NewSize(900, 600))
	press(t, sh.canvas, "More alike")
	sh.canvas.Focused().(interface{ SetText(string) }).SetText("0")
	press(t, sh.canvas, "More alike")
	if len(d.Plan().Pots) != 10 || sh.canvas.Overlays().Top() == nil {
		t.Fatal("none alike were added")
	}
	sh.canvas.Focused().(interface{ SetText(string) }).SetText("4")
	press(t, sh.canvas, "More alike")
	if n := len(d.Plan().Pots); n != 14 {
		t.Errorf("%d pots", n)
	}
}

func TestRemovingTheLastPotLeavesTheEmptyBench(t *testing.T) {
	d, v, sh := open(t, screentest.Example(t), fyne.NewSize(900, 600))
	for range 10 {
		press(t, sh.canvas, "Remove")
	}
	if len(d.Plan().Pots) != 0 {
		t.Fatalf("%d pots are left", len(d.Plan().Pots))
	}
	d.Settle()
	v.Refresh()
	press(t, sh.canvas, "Add the first pot")
	if len(d.Plan().Pots) != 1 {
		t.Error("the first pot was not added")
	}
}

func TestARefreshKeepsTheFieldWithTheFocus(t *testing.T) {
	d, v, sh := open(t, screentest.Example(t), fyne.NewSize(1280, 800))
	var field *widgets.MeasureField
	for _, o := range test.LaidOutObjects(sh.canvas.Content()) {
		if m, ok := o.(*widgets.MeasureField); ok && m.Value() == "40 cm" {
			field = m
		}
	}
	if field == nil {
		t.Fatal("the height is not on the page")
	}
	sh.canvas.Focus(field.Entry())
	entry := sh.canvas.Focused()
	test.Type(entry, "1")
	d.Settle()
	v.Refresh()
	if sh.canvas.Focused() != entry || d.Plan().Pots[0].Vessel.Height != 0.40 {
		t.Error("a refresh took the focus or the text")
	}
}
