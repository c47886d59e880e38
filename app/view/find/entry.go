package find

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/widget"

	"fourturn/app/theme"
)

// entry is the line to type in. The keys that go through a list go to what was found.
type entry struct {
	widget.Entry
	view *View
}

var _ fyne.Accessible = (*entry)(nil)

func newEntry(v *View) *entry {
	e := &entry{view: v}
	e.PlaceHolder = v.words.T("find.placeholder")
	e.Icon = theme.Icon(theme.IconSearch)
	e.OnSubmitted = func(string) { v.goTo(v.table.Selected()) }
	e.ExtendBaseWidget(e)
	return e
}

// TypedKey chooses, closes or types.
func (e *entry) TypedKey(ev *fyne.KeyEvent) {
	switch ev.Name {
	case fyne.KeyEscape:
		e.view.dialog.Cancel()
	case fyne.KeyUp, fyne.KeyDown, fyne.KeyPageUp, fyne.KeyPageDown:
		e.view.table.Body().TypedKey(ev)
	default:
		e.Entry.TypedKey(ev)
	}
}

// AccessibilityLabel returns what is looked for, and what Enter would go to.
func (e *entry) AccessibilityLabel() string {
	return e.PlaceHolder + ": " + e.Text + "; " + e.view.table.AccessibilityLabel()
}

// AccessibilityRole is text, the nearest that the toolkit knows.
func (e *entry) AccessibilityRole() fyne.AccessibleRole { return fyne.AccessibleRoleText }
