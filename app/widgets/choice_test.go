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

func TestChoiceLook(t *testing.T) {
	golden.Check(t, "choice", fyne.NewSize(440, 150), func() fyne.CanvasObject {
		shape := NewChoiceField("Shape", "changes what is asked", []string{"Round, tapered", "Rectangular"}, nil)
		shape.SetChoice(0)
		length := NewMeasureField("Length", "cm, m, in or ft", nil)
		length.SetValue("90 cm")
		units := NewSegments("Units", []string{"Metric", "US customary"}, nil)
		focused := NewSegments("Span", []string{"Month", "Season", "Year"}, nil)
		focused.SetChoice(2)
		focused.FocusGained()
		return container.NewPadded(container.NewVBox(container.NewGridWithColumns(2, shape, length), container.NewHBox(units, focused)))
	})
}

func TestChoiceFieldTellsOnlyWhatAPersonChose(t *testing.T) {
	golden.App(t, theme.Options{})
	var chosen []int
	c := NewChoiceField("Shape", "", []string{"a", "b", "c"}, func(i int) { chosen = append(chosen, i) })
	w := test.NewTempWindow(t, c)
	c.SetChoice(1)
	w.Canvas().Focus(c.Entry())
	press(c.Entry(), fyne.KeyRight)
	c.SetOptions([]string{"x", "y"})
	c.SetChoice(7)
	if !slices.Equal(chosen, []int{2}) || c.Choice() != -1 {
		t.Errorf("chosen %v, now %d", chosen, c.Choice())
	}
	c.SetChoice(0)
	if got := c.AccessibilityLabel(); got != "Shape, x" {
		t.Errorf("name %q", got)
	}
}

func TestSegments(t *testing.T) {
	golden.App(t, theme.Options{})
	var chosen []int
	s := NewSegments("Units", []string{"Metric", "US", "Both"}, func(i int) { chosen = append(chosen, i) })
	w := test.NewTempWindow(t, s)
	w.Resize(fyne.NewSize(400, 60))
	press(s, fyne.KeyLeft, fyne.KeyRight, fyne.KeyEnd, fyne.KeyRight)
	test.TapAt(s, fyne.NewPos(5, 10))
	test.TapAt(s, fyne.NewPos(390, 10)) // beside the options
	s.SetChoice(2)
	if want := []int{1, 2, 0}; !slices.Equal(chosen, want) || s.Choice() != 2 {
		t.Errorf("chosen %v, want %v", chosen, want)
	}
}
