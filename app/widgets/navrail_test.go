package widgets

import (
	"slices"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/test"

	"fourturn/app/theme"
	"fourturn/app/widgets/golden"
)

func rooms() []NavItem {
	return []NavItem{
		{Icon: theme.IconDue, Label: "Due", Count: "3", CountName: "3 due"},
		{Icon: theme.IconPots, Label: "Pots"},
		{Icon: theme.IconYear, Label: "Year"},
		{Icon: theme.IconFeeding, Label: "Feeding"},
		{Icon: theme.IconMix, Label: "Mix & buying"},
		{Icon: theme.IconPlantBook, Label: "Plant book"},
		{Icon: theme.IconSite, Label: "Site"},
	}
}

func TestNavRailLook(t *testing.T) {
	golden.Check(t, "navrail", fyne.NewSize(320, 400), func() fyne.CanvasObject {
		n := NewNavRail(rooms(), nil)
		n.Select(1)
		m := NewNavRail(rooms(), nil)
		m.FocusGained()
		m.hovered = 3
		m.Refresh()
		return container.NewBorder(nil, nil, n, container.NewHBox(m))
	})
}

func TestNavRailByKeyAndMouse(t *testing.T) {
	golden.App(t, theme.Options{})
	var opened []int
	n := NewNavRail(rooms(), func(i int) { opened = append(opened, i) })
	w := test.NewTempWindow(t, n)
	w.Resize(fyne.NewSize(200, 500))
	w.Canvas().Focus(n)
	for _, key := range []fyne.KeyName{fyne.KeyUp, fyne.KeyDown, fyne.KeyEnd, fyne.KeyDown, fyne.KeyHome} {
		n.TypedKey(&fyne.KeyEvent{Name: key})
	}
	test.TapAt(n, fyne.NewPos(20, theme.Step2+n.tabHeight()*4.5))
	test.TapAt(n, fyne.NewPos(20, 2)) // above the first tab: nothing
	if want := []int{1, 6, 0, 4}; !slices.Equal(opened, want) {
		t.Errorf("opened %v, want %v", opened, want)
	}
	n.SetItems(rooms()[:3])
	if n.Selected() != 2 {
		t.Errorf("open room is %d after rooms were taken away, want the last", n.Selected())
	}
}
