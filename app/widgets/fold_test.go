package widgets

import (
	"errors"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/test"

	"fourturn/app/theme"
	"fourturn/app/widgets/golden"
)

func TestFoldLook(t *testing.T) {
	golden.Check(t, "fold", fyne.NewSize(460, 330), func() fyne.CanvasObject {
		open := NewFold("Inside the pot", NewText(longText), true)
		open.SetSummary("Rim 2.5 cm, no holes")
		open.SetMark(theme.IconWarning, "warning")
		closed := NewFold("Weight", NewText(longText), false)
		closed.SetSummary("A very long summary of everything that weighs something in this pot, and more")
		closed.SetMark(theme.IconCaution, "caution")
		focused := NewFold("Liner pot", NewText(longText), false)
		focused.SetSummary("none")
		focused.head.FocusGained()
		notes := NewNoteField("Notes", nil)
		notes.SetValue("Cracked at the foot.\nTurn the good side to the street.")
		return container.NewVBox(open, closed, focused, notes)
	})
}

func TestAFoldIsOpenedByKeys(t *testing.T) {
	golden.App(t, theme.Options{})
	content := NewText("inside")
	f := NewFold("Weight", content, false)
	told := 0
	f.OnToggle = func(open bool) { told++ }
	w := test.NewTempWindow(t, f)
	w.Resize(fyne.NewSize(300, 200))
	if content.Visible() || f.IsOpen() {
		t.Fatal("a closed fold shows its content")
	}
	w.Canvas().Focus(f.Head())
	f.Head().TypedKey(&fyne.KeyEvent{Name: fyne.KeySpace})
	if !content.Visible() || told != 1 {
		t.Errorf("Space: visible %v, told %d times", content.Visible(), told)
	}
	test.Tap(f.head)
	f.SetOpen(false)
	if content.Visible() || told != 2 {
		t.Errorf("a tap: visible %v, told %d times", content.Visible(), told)
	}
	f.SetSummary("12 kg")
	f.SetMark(theme.IconCaution, "caution")
	if got := f.head.AccessibilityLabel(); got != "Weight, caution, 12 kg" {
		t.Errorf("it is read out as %q", got)
	}
}

func TestANoteCommitsWhenItIsLeft(t *testing.T) {
	golden.App(t, theme.Options{})
	var took []string
	n := NewNoteField("Notes", func(text string) error {
		if text == "no" {
			return errors.New("refused")
		}
		took = append(took, text)
		return nil
	})
	w := test.NewTempWindow(t, n)
	n.SetValue("a")
	w.Canvas().Focus(n.Entry())
	n.entry.SetText("a\nb")
	n.SetValue("a") // a refresh while somebody types
	if n.entry.Text != "a\nb" || !n.entry.Typing() {
		t.Errorf("a refresh took the text: %q", n.entry.Text)
	}
	w.Canvas().Unfocus()
	if len(took) != 1 || took[0] != "a\nb" || n.entry.Typing() {
		t.Errorf("took %q", took)
	}
	n.entry.SetText("no")
	n.Commit()
	if n.problem != "refused" || len(took) != 1 {
		t.Errorf("problem %q", n.problem)
	}
	n.entry.TypedKey(&fyne.KeyEvent{Name: fyne.KeyEscape})
	if n.entry.Text != "a\nb" || n.problem != "" {
		t.Errorf("Esc leaves %q, %q", n.entry.Text, n.problem)
	}
}

func TestTypingIsToldWhileItGoesOn(t *testing.T) {
	golden.App(t, theme.Options{})
	var told []string
	m := NewMeasureField("Height", "", func(string) error { return nil })
	m.SetOnTyped(func(text string) { told = append(told, text) })
	w := test.NewTempWindow(t, m)
	m.SetValue("4")
	w.Canvas().Focus(m.Entry())
	m.SetValue("40")
	test.Type(m.entry, "1")
	m.entry.TypedKey(&fyne.KeyEvent{Name: fyne.KeyEscape})
	if len(told) != 2 || told[1] != "40" {
		t.Errorf("told %q", told)
	}
}
