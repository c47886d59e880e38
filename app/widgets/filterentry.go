package widgets

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/widget"

	"fourturn/app/theme"
)

// FilterEntry is an entry that is answered as one types. Esc empties it, Down and
// Enter go to what was found.
type FilterEntry struct {
	widget.Entry
	onDown func()
}

var _ fyne.Accessible = (*FilterEntry)(nil)

// NewFilterEntry returns an empty entry; its name stands in it until one types.
func NewFilterEntry(name string, onChange func(string), onDown func()) *FilterEntry {
	e := &FilterEntry{onDown: onDown}
	e.PlaceHolder = name
	e.Icon = theme.Icon(theme.IconSearch)
	e.OnChanged = onChange
	e.OnSubmitted = func(string) { onDown() }
	e.ExtendBaseWidget(e)
	return e
}

// TypedKey empties on Esc, goes on by Down, and types all else.
func (e *FilterEntry) TypedKey(ev *fyne.KeyEvent) {
	switch ev.Name {
	case fyne.KeyEscape:
		if e.Text == "" {
			escape(e)
			return
		}
		e.SetText("")
	case fyne.KeyDown:
		e.onDown()
	default:
		e.Entry.TypedKey(ev)
	}
}

// AccessibilityLabel returns what is looked for, by its name.
func (e *FilterEntry) AccessibilityLabel() string { return e.PlaceHolder + ": " + e.Text }

// AccessibilityRole is text, the nearest that the toolkit knows.
func (e *FilterEntry) AccessibilityRole() fyne.AccessibleRole { return fyne.AccessibleRoleText }
