package plants

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/widget"

	"fourturn/app/theme"
)

// searchEntry is an entry that is answered as one types. Esc empties it, Down and
// Enter go to what was found.
type searchEntry struct {
	widget.Entry
	onDown func()
}

var _ fyne.Accessible = (*searchEntry)(nil)

func newSearchEntry(name string, onChange func(string), onDown func()) *searchEntry {
	e := &searchEntry{onDown: onDown}
	e.PlaceHolder = name
	e.Icon = theme.Icon(theme.IconSearch)
	e.OnChanged = onChange
	e.OnSubmitted = func(string) { onDown() }
	e.ExtendBaseWidget(e)
	return e
}

// TypedKey empties on Esc, goes on by Down, and types all else.
func (e *searchEntry) TypedKey(ev *fyne.KeyEvent) {
	switch ev.Name {
	case fyne.KeyEscape:
		e.SetText("")
	case fyne.KeyDown:
		e.onDown()
	default:
		e.Entry.TypedKey(ev)
	}
}

// AccessibilityLabel returns what is looked for, by its name.
func (e *searchEntry) AccessibilityLabel() string { return e.PlaceHolder + ": " + e.Text }

// AccessibilityRole is text, the nearest that the toolkit knows.
func (e *searchEntry) AccessibilityRole() fyne.AccessibleRole { return fyne.AccessibleRoleText }
