package widgets

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/widget"

	"fourturn/app/theme"
)

// SearchEntry is a line to type in, above a table of what answers. The line keeps
// the focus: Up, Down and the page keys go through the table, Esc goes to what lies
// around them.
type SearchEntry struct {
	widget.Entry
	table *DataTable
}

var _ fyne.Accessible = (*SearchEntry)(nil)

// NewSearchEntry returns an empty line. Name says what may be typed; onChange is
// called for each letter, onEnter for Enter.
func NewSearchEntry(name string, table *DataTable, onChange func(typed string), onEnter func()) *SearchEntry {
	e := &SearchEntry{table: table}
	e.PlaceHolder = name
	e.Icon = theme.Icon(theme.IconSearch)
	e.OnChanged = onChange
	e.OnSubmitted = func(string) { onEnter() }
	e.ExtendBaseWidget(e)
	return e
}

// TypedKey chooses, passes on or types.
func (e *SearchEntry) TypedKey(ev *fyne.KeyEvent) {
	switch ev.Name {
	case fyne.KeyEscape:
		escape(e)
	case fyne.KeyUp, fyne.KeyDown, fyne.KeyPageUp, fyne.KeyPageDown:
		e.table.list.TypedKey(ev)
	default:
		e.Entry.TypedKey(ev)
	}
}

// AccessibilityLabel returns what is looked for, and what is chosen in the table.
func (e *SearchEntry) AccessibilityLabel() string {
	return accessibleName(e.PlaceHolder, e.Text, e.table.AccessibilityLabel())
}

// AccessibilityRole is text, the nearest that the toolkit knows.
func (e *SearchEntry) AccessibilityRole() fyne.AccessibleRole { return fyne.AccessibleRoleText }
