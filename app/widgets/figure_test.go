package widgets

import (
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/test"

	"fourturn/app/theme"
	"fourturn/app/widgets/golden"
)

func figures() fyne.CanvasObject {
	open := func() {}
	focused := NewFigure(FigureData{Label: "Slow-release charge", Value: "132", Unit: "g"}, open)
	focused.FocusGained()
	return container.NewPadded(container.NewVBox(
		container.NewHBox(
			NewFigure(FigureData{Label: "Mix to buy", Value: "38.2", Unit: "L", Style: FigureLead}, open),
			NewFigure(FigureData{Label: "Weight when wet", Value: "46", Unit: "kg", Soft: true, Style: FigureLead}, open),
			NewFigure(FigureData{Label: "Pots", Value: "12", Style: FigureLead}, nil),
		),
		container.NewHBox(
			focused,
			NewFigure(FigureData{Label: "Change-out", Value: "14 May", Soft: true}, open),
			NewFigure(FigureData{Label: "Growing since", Value: "2 Oct"}, nil),
		),
		NewFigure(FigureData{Label: "Fresh mix", Value: "1,204.0", Unit: "L", Style: FigureRow}, open),
		NewFigure(FigureData{Label: "Settling and firming", Value: "15", Unit: "%", Style: FigureRow, Soft: true}, open),
		NewFigure(FigureData{Value: "9.5", Unit: "g/L", Style: FigureBare}, open),
	))
}

func TestFigureLook(t *testing.T) {
	golden.Check(t, "figure", fyne.NewSize(400, 270), figures)
}

func TestFigureOpensItsWorking(t *testing.T) {
	golden.App(t, theme.Options{})
	opened := 0
	f := NewFigure(FigureData{Label: "Mix", Value: "38", Unit: "L"}, func() { opened++ })
	w := test.NewTempWindow(t, f)
	test.Tap(f)
	w.Canvas().Focus(f)
	for _, key := range []fyne.KeyName{fyne.KeyF1, fyne.KeyReturn, fyne.KeyEnter, fyne.KeySpace, fyne.KeyEscape, fyne.KeyA} {
		f.TypedKey(&fyne.KeyEvent{Name: key})
	}
	if opened != 5 {
		t.Errorf("opened %d times, want by the click and four keys", opened)
	}
}

func TestFigureWithoutWorkingIsPassedByTab(t *testing.T) {
	golden.App(t, theme.Options{})
	plain := NewFigure(FigureData{Label: "Pots", Value: "12"}, nil)
	open := NewFigure(FigureData{Label: "Mix", Value: "38", Unit: "L", Soft: true}, func() {})
	w := test.NewTempWindow(t, container.NewVBox(plain, open))
	w.Canvas().FocusNext()
	if w.Canvas().Focused() != open {
		t.Errorf("focus is on %v", w.Canvas().Focused())
	}
	if got, want := open.AccessibilityLabel(), "Mix, ≈ 38 L"; got != want {
		t.Errorf("name %q, want %q", got, want)
	}
	if plain.AccessibilityRole() != fyne.AccessibleRoleText || open.AccessibilityRole() != fyne.AccessibleRoleButton {
		t.Error("a figure is a button exactly when its working can be opened")
	}
}
