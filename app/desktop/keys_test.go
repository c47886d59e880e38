package desktop

import (
	"slices"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/widget"
)

func TestEveryKeyMeansOneThing(t *testing.T) {
	st := newStage(t)
	names, keys := map[string]bool{}, map[string]string{}
	for _, a := range st.Actions() {
		if names[a.Name] {
			t.Errorf("two actions are called %q", a.Name)
		}
		names[a.Name] = true
		for _, k := range a.Keys {
			written := st.writeKeys(k)
			if other, ok := keys[written]; ok {
				t.Errorf("%s does both %q and %q", written, other, a.Name)
			}
			keys[written] = a.Name
		}
	}
	for _, want := range []string{
		"Ctrl+N", "Ctrl+O", "Ctrl+S", "Ctrl+Shift+S", "Ctrl+Q", "Ctrl+Z", "Ctrl+Y", "Ctrl+Shift+Z", "Ctrl+X", "Ctrl+C",
		"Ctrl+V", "Ctrl+A", "Ctrl+1", "Ctrl+2", "Ctrl+3", "Alt+Left", "Alt+Right", "Ctrl+=", "Ctrl+−", "Ctrl+0",
	} {
		if keys[want] == "" {
			t.Errorf("%s does nothing; there are %v", want, keys)
		}
	}
}

// Every key of the table must be heard by the menus, the second ones too, and by
// the action that it belongs to.
func TestEveryKeyIsHeard(t *testing.T) {
	st := newStage(t)
	for _, a := range st.Actions() {
		for _, k := range a.Keys {
			ran := ""
			for _, other := range st.Actions() {
				name := other.Name
				other.Run, other.Enabled = func() { ran = name }, nil
			}
			if !st.shortcut(k) || ran != a.Name {
				t.Errorf("%s ran %q, not %q", st.writeKeys(k), ran, a.Name)
			}
		}
	}
}

func TestPageOfKeysListsEveryKey(t *testing.T) {
	st := newStage(t)
	rows := st.Keys()
	for _, a := range st.Actions() {
		if len(a.Keys) > 0 && !slices.ContainsFunc(rows, func(r KeyRow) bool { return r.Does == a.Label() }) {
			t.Errorf("the page of keys lacks %q", a.Name)
		}
	}
	for _, r := range rows {
		if strings.Contains(r.Does+r.Keys, "⟦") {
			t.Errorf("no words for %v", r)
		}
	}
	st.Perform("keys")
	if !st.dialogOpen() {
		t.Fatal("the page of keys did not open")
	}
	st.press(fyne.KeyEscape)
	if st.dialogOpen() {
		t.Error("Esc did not close the page of keys")
	}
}

func TestMenusHaveWords(t *testing.T) {
	st := newStage(t)
	st.rename("Yard")
	for _, a := range st.Actions() {
		if strings.Contains(a.Label(), "⟦") || a.Label() == "" {
			t.Errorf("%s is called %q", a.Name, a.Label())
		}
	}
}

// An action out of use does nothing when its key is pressed all the same.
func TestKeysOfActionsOutOfUse(t *testing.T) {
	st := newStage(t)
	if st.Perform("back") || st.Perform("restore_copy") || st.Perform("undo") || st.Perform("no such action") {
		t.Error("an action out of use was performed")
	}
	st.shortcut(backKeys())
	if st.Room() != "due" {
		t.Error("back went somewhere")
	}
}

func TestUndoAsksTheFocusedFieldFirst(t *testing.T) {
	st := newStage(t)
	st.rename("Yard")
	if got := st.undoLabel(); got != "Undo: Pots" {
		t.Errorf("undo is called %q", got)
	}
	field := st.pages["due"].field
	st.Canvas().Focus(field)
	test.Type(field, "basil")
	st.shortcut(&fyne.ShortcutUndo{})
	if field.Text == "basil" || st.session.Plan().Title != "Yard" {
		t.Errorf("undo left the field at %q and the plan at %q", field.Text, st.session.Plan().Title)
	}
	st.shortcut(&fyne.ShortcutRedo{})
	if field.Text != "basil" {
		t.Errorf("redo left the field at %q", field.Text)
	}
	st.Canvas().Unfocus()
	st.shortcut(&fyne.ShortcutUndo{})
	if st.session.Plan().Title != "Terrace" || !strings.Contains(st.text(), "Undone: Pots") {
		t.Errorf("undo left the plan at %q and said %q", st.session.Plan().Title, st.text())
	}
	st.shortcut(ctrlShift(fyne.KeyZ))
	if st.session.Plan().Title != "Yard" {
		t.Error("Ctrl+Shift+Z did not redo")
	}
}

// calm is a field in which nothing is typed that the plan does not have.
type calm struct{ widget.Entry }

func (c *calm) Typing() bool { return false }

func TestUndoPassesAFieldWithoutTyping(t *testing.T) {
	st := newStage(t)
	st.rename("Yard")
	field := &calm{}
	field.ExtendBaseWidget(field)
	st.pages["due"].object.(*fyne.Container).Add(field)
	st.Canvas().Focus(field)
	st.Undo()
	if st.session.Plan().Title != "Terrace" {
		t.Error("undo stayed in a field without typing")
	}
}

func TestCutCopyPasteGoToTheFocusedField(t *testing.T) {
	st := newStage(t)
	field := st.pages["due"].field
	st.Canvas().Focus(field)
	test.Type(field, "thyme")
	st.shortcut(&fyne.ShortcutSelectAll{})
	st.shortcut(&fyne.ShortcutCut{})
	if field.Text != "" || st.config.App.Clipboard().Content() != "thyme" {
		t.Errorf("cut left %q and put %q on the clipboard", field.Text, st.config.App.Clipboard().Content())
	}
	st.shortcut(&fyne.ShortcutPaste{})
	st.shortcut(&fyne.ShortcutPaste{})
	if field.Text != "thymethyme" {
		t.Errorf("pasting gave %q", field.Text)
	}
	st.Canvas().Unfocus()
	st.shortcut(&fyne.ShortcutPaste{}) // nowhere to go: nothing happens
}
