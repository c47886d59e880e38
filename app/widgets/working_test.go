package widgets

import (
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/test"

	"fourturn/app/theme"
	"fourturn/app/widgets/golden"
)

// exampleWorking has the shape of a real one; its numbers are invented.
func exampleWorking() WorkingData {
	return WorkingData{
		Title: "Mix to buy", Formula: "B = (V − R) × (1 + s)", Result: "38.2 L", Soft: true,
		Path: []WorkingStep{{Title: "Bags", OnOpen: func() {}}},
		Inputs: []WorkingInput{
			{Symbol: "V", Name: "volume of the pot up to the fill line", Value: "41.5 L", Source: "from the sizes entered", OnOpen: func() {}},
			{Symbol: "R", Name: "room that roots take", Value: "8.3 L", Source: "entered"},
			{Symbol: "s", Name: "settling and firming", Value: "15 %", Source: "common practice, no source", Soft: true},
		},
		Source: "Geometry of a tapered prism; settling added as a share of the volume.",
		Notes:  []string{"Bags are sold by loose volume: what is in them settles as it is firmed."},
	}
}

var words = WorkingWords{Inputs: "Inputs", Source: "Source", Notes: "Notes", Soft: "rests on common practice or an estimate", Close: "Close"}

func TestWorkingCardLook(t *testing.T) {
	golden.Check(t, "working", fyne.NewSize(400, 460), func() fyne.CanvasObject {
		w := NewWorkingCard(words, nil)
		w.Set(exampleWorking())
		return container.NewPadded(w)
	})
}

func TestWorkingCardClosesAndGoesOn(t *testing.T) {
	golden.App(t, theme.Options{})
	closed, opened := 0, 0
	w := NewWorkingCard(words, func() { closed++ })
	data := exampleWorking()
	data.Inputs[0].OnOpen = func() { opened++ }
	w.Set(data)
	window := test.NewTempWindow(t, w)
	window.Resize(fyne.NewSize(400, 500))
	for _, o := range test.LaidOutObjects(w) {
		if f, ok := o.(*Figure); ok && f.onWorking != nil {
			test.Tap(f)
		}
	}
	test.Tap(w.close)
	if closed != 1 || opened != 1 {
		t.Errorf("closed %d, opened %d", closed, opened)
	}
}
