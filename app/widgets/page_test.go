package widgets

import (
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/widget"

	"fourturn/app/theme"
	"fourturn/app/widgets/golden"
)

const longText = "A full pot of this size weighs more than one person should lift in the best of postures. Move it empty, fill it where it stands, and ask for help."

func TestPageLook(t *testing.T) {
	golden.Check(t, "page", fyne.NewSize(760, 560), func() fyne.CanvasObject {
		off := NewButton(ButtonData{Icon: theme.IconRedo, Name: "Redo"}, nil)
		off.Disable()
		focused := NewButton(ButtonData{Label: "Show all"}, nil)
		focused.FocusGained()
		header := NewPageHeader("Pots", "12 pots at two places, 318 L of mix",
			NewButton(ButtonData{Icon: theme.IconUndo, Name: "Undo"}, nil), off,
			NewButton(ButtonData{Icon: theme.IconPrint, Label: "Print", Kind: ButtonQuiet}, nil),
			NewButton(ButtonData{Icon: theme.IconAdd, Label: "Add a pot", Kind: ButtonMain}, nil))
		figures := func() fyne.CanvasObject {
			return container.NewVBox(
				NewFigure(FigureData{Label: "Mix", Value: "38.2", Unit: "L", Style: FigureRow}, func() {}),
				NewFigure(FigureData{Label: "Slow-release charge", Value: "132", Unit: "g", Style: FigureRow, Soft: true}, func() {}))
		}
		status := NewStatusLine()
		status.SetText(theme.IconSave, "Saved at 14:02")
		status.SetRight("terrace.fourturn.yaml")
		return container.NewBorder(nil, status, nil, nil, container.NewPadded(container.NewVBox(
			header,
			container.NewGridWithColumns(2,
				NewCard("To put in", figures(), NewButton(ButtonData{Icon: theme.IconMore, Kind: ButtonQuiet, Name: "More"}, nil)),
				NewSection("Feeding", figures(), focused)),
			NewNotice(NoticeData{Kind: NoticeNote, Title: "Note: two plantings overlap by a day"}),
			NewNotice(NoticeData{Kind: NoticeCaution, Title: "Caution: a heavy lift", Text: longText, OnDismiss: func() {}, Dismiss: "Put away"}),
			NewNotice(NoticeData{Kind: NoticeWarning, Title: "Warning: the charge is spent before the autumn", Action: "Add a charge", OnAction: func() {}}),
			NewNotice(NoticeData{Kind: NoticeError, Title: "Error: the pot has no height"}),
		)))
	})
}

func TestEmptyStateLook(t *testing.T) {
	golden.Check(t, "empty", fyne.NewSize(640, 400), func() fyne.CanvasObject {
		return NewEmptyState(theme.DrawingPots, "No pots yet",
			"Draw your first pot: its shape, its size and where it stands. The year of plantings, the mix and the feeds follow from it.",
			NewButton(ButtonData{Icon: theme.IconAdd, Label: "Add a pot", Kind: ButtonMain}, nil),
			NewButton(ButtonData{Label: "Open the example"}, nil))
	})
}

func TestDrawingsLook(t *testing.T) {
	golden.Check(t, "drawings", fyne.NewSize(1000, 340), func() fyne.CanvasObject {
		grid := container.NewGridWithColumns(4)
		for _, name := range theme.DrawingNames {
			grid.Add(NewDrawing(name, fyne.NewSize(240, 150)))
		}
		return grid
	})
}

func TestIconsLook(t *testing.T) {
	golden.Check(t, "icons", fyne.NewSize(400, 200), func() fyne.CanvasObject {
		grid := container.NewGridWithColumns(10)
		for _, name := range theme.IconNames {
			grid.Add(widget.NewIcon(theme.Icon(name)))
		}
		return grid
	})
}

func TestBusyLook(t *testing.T) {
	golden.Check(t, "busy", fyne.NewSize(640, 200), func() fyne.CanvasObject {
		return container.NewGridWithColumns(2,
			NewBusy(BusyData{Title: "Working out the year", Done: -1}, nil),
			NewBusy(BusyData{Title: "Searching sequences", Detail: "214 of 640", Done: 0.33, Stop: "Stop"}, func() {}))
	})
}

func TestButtonOutOfUseDoesNothing(t *testing.T) {
	golden.App(t, theme.Options{})
	pressed := 0
	b := NewButton(ButtonData{Label: "Add"}, func() { pressed++ })
	test.NewTempWindow(t, b)
	b.Disable()
	test.Tap(b)
	press(b, fyne.KeyReturn, fyne.KeySpace)
	b.Enable()
	test.Tap(b)
	press(b, fyne.KeyReturn, fyne.KeySpace)
	if pressed != 3 {
		t.Errorf("pressed %d times, want 3", pressed)
	}
}

func TestButtonGivesItsHint(t *testing.T) {
	golden.App(t, theme.Options{})
	line := NewStatusLine()
	b := NewButton(ButtonData{Icon: theme.IconUndo, Name: "Undo"}, nil)
	b.OnHint = line.SetHint
	w := test.NewTempWindow(t, container.NewVBox(b, line))
	w.Canvas().Focus(b)
	if line.AccessibilityLabel() != "Undo" {
		t.Errorf("the line says %q", line.AccessibilityLabel())
	}
	w.Canvas().Unfocus()
	if line.AccessibilityLabel() != "" {
		t.Errorf("the line still says %q", line.AccessibilityLabel())
	}
}

// The text of a notice wraps, and the notice grows with it.
func TestNoticeGrowsWithItsText(t *testing.T) {
	golden.App(t, theme.Options{})
	n := NewNotice(NoticeData{Kind: NoticeCaution, Title: "Caution", Text: longText})
	w := test.NewTempWindow(t, container.NewVBox(n))
	w.Resize(fyne.NewSize(900, 400))
	wide := n.MinSize().Height
	w.Resize(fyne.NewSize(320, 400))
	if narrow := n.MinSize().Height; narrow < wide+30 {
		t.Errorf("height %v at 900, %v at 320", wide, narrow)
	}
}
