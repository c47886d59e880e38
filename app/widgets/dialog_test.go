package widgets

import (
	"slices"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/widget"

	"fourturn/app/theme"
	"fourturn/app/widgets/golden"
)

func TestDialogLook(t *testing.T) {
	for name, mode := range map[string]theme.Mode{"light": theme.Light, "dark": theme.Dark} {
		golden.App(t, theme.Options{Mode: mode})
		w := test.NewTempWindow(t, container.NewBorder(
			NewPageHeader("Pots", "12 pots at two places"), nil, NewNavRail(rooms(), nil), nil, NewText("")))
		w.Resize(fyne.NewSize(640, 380))
		field := NewMeasureField("How many alike", "1 to 500", nil)
		field.SetValue("12")
		ShowDialog(w.Canvas(), DialogData{
			Title: "Duplicate the trough", Accept: "Duplicate", Cancel: "Cancel", Size: fyne.NewSize(320, 0),
			Content: container.NewVBox(NewText("The copies get its size, place and plantings; each keeps its own history from then on."), field),
			Focus:   field.Entry(),
		})
		w.Resize(fyne.NewSize(641, 380))
		w.Resize(fyne.NewSize(640, 380))
		golden.Picture(t, "dialog-"+name+".png", w.Canvas())
	}
}

func TestDialogKeys(t *testing.T) {
	golden.App(t, theme.Options{})
	var done []string
	button := widget.NewButton("x", nil)
	w := test.NewTempWindow(t, button)
	c := w.Canvas()
	c.Focus(button)
	c.SetOnTypedKey(func(*fyne.KeyEvent) { done = append(done, "page") })
	allowed := false
	open := func() *Dialog {
		return ShowDialog(c, DialogData{
			Title: "Title", Accept: "Yes", Cancel: "No", Content: NewText("Text"),
			OnAccept: func() bool { done = append(done, "accept"); return allowed },
			OnCancel: func() { done = append(done, "cancel") },
		})
	}
	key := func(name fyne.KeyName) { c.OnTypedKey()(&fyne.KeyEvent{Name: name}) }

	d := open()
	key(fyne.KeyReturn)
	if d.Closed() {
		t.Fatal("closed although the work was refused")
	}
	allowed = true
	key(fyne.KeyReturn)
	if !d.Closed() || c.Focused() != button {
		t.Errorf("closed %v, focus on %v", d.Closed(), c.Focused())
	}
	key(fyne.KeyReturn)

	d = open()
	inner := open() // over the first
	key(fyne.KeyEscape)
	if !inner.Closed() || d.Closed() {
		t.Error("Esc must close the upper dialog only")
	}
	key(fyne.KeyEscape)
	d.Cancel() // already closed: nothing
	key(fyne.KeyEscape)
	want := []string{"accept", "accept", "page", "cancel", "cancel", "page"}
	if !slices.Equal(done, want) {
		t.Errorf("did %v, want %v", done, want)
	}
}

// Esc reaches the dialog from a button or a field with the focus, too.
func TestDialogEscapeFromWithin(t *testing.T) {
	golden.App(t, theme.Options{})
	w := test.NewTempWindow(t, NewText("page"))
	for range 2 {
		field := NewMeasureField("Length", "", nil)
		d := ShowDialog(w.Canvas(), DialogData{Title: "T", Accept: "Yes", Content: field, Focus: field.Entry()})
		field.entry.SetText("typed")
		press(field.entry, fyne.KeyEscape)
		if d.Closed() || field.entry.Text != "" {
			t.Error("the first Esc must only put back the text")
		}
		press(field.entry, fyne.KeyEscape)
		if !d.Closed() {
			t.Error("the second Esc must close")
		}
	}
	accepted := 0
	field := NewMeasureField("Length", "", nil)
	ShowDialog(w.Canvas(), DialogData{Title: "T", Accept: "Yes", Content: field, Focus: field.Entry(), OnAccept: func() bool {
		accepted++
		return field.Value() == "90 cm"
	}})
	field.entry.SetText("90 cm")
	press(field.entry, fyne.KeyReturn)
	if accepted != 1 || w.Canvas().Overlays().Top() != nil {
		t.Errorf("Enter in a field accepted %d times", accepted)
	}
	d := ShowDialog(w.Canvas(), DialogData{Title: "T", Accept: "Yes", Content: NewText("x")})
	button, ok := w.Canvas().Focused().(*Button)
	if !ok {
		t.Fatalf("focus is on %T, want the button", w.Canvas().Focused())
	}
	press(button, fyne.KeyEscape)
	if !d.Closed() {
		t.Error("Esc on the button must close")
	}
}

// In a window the parts of a widget are not known, only the widget: Esc on a button
// must reach the dialog around it, and the window where there is no dialog.
func TestEscOnAButtonIsPassedOn(t *testing.T) {
	golden.App(t, theme.Options{Mode: theme.Light})
	button := NewButton(ButtonData{Label: "Go on"}, nil)
	w := test.NewTempWindow(t, button)
	got := 0
	w.Canvas().SetOnTypedKey(func(ev *fyne.KeyEvent) {
		if ev.Name == fyne.KeyEscape {
			got++
		}
	})
	w.Canvas().Focus(button)
	button.TypedKey(&fyne.KeyEvent{Name: fyne.KeyEscape})
	if got != 1 {
		t.Errorf("the window heard Esc %d times", got)
	}
	inside := NewButton(ButtonData{Label: "Inside"}, nil)
	d := ShowDialog(w.Canvas(), DialogData{Title: "A question", Content: inside, Cancel: "Cancel"})
	inside.TypedKey(&fyne.KeyEvent{Name: fyne.KeyEscape})
	if !d.Closed() {
		t.Error("Esc on a button did not cancel the dialog")
	}
	if got != 1 {
		t.Error("the window heard an Esc that the dialog took")
	}
}

func TestAFieldIsTypingUntilItIsCommitted(t *testing.T) {
	golden.App(t, theme.Options{Mode: theme.Light})
	field := NewMeasureField("Height", "", func(string) error { return nil })
	field.SetValue("40 cm")
	test.NewTempWindow(t, field)
	typing := field.Entry().(interface{ Typing() bool })
	if typing.Typing() {
		t.Error("an untouched field is typing")
	}
	test.Type(field.Entry(), "9")
	if !typing.Typing() {
		t.Error("a changed field is not typing")
	}
}
