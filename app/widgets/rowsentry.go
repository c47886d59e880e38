package widgets

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/widget"
)

// RowsEntry is a place for many lines, such as the rows of a table. Esc goes to what
// lies around it, which the toolkit's entry keeps to itself.
type RowsEntry struct{ widget.Entry }

// NewRowsEntry returns an empty place; the example stands in it until one types.
func NewRowsEntry(example string) *RowsEntry {
	e := &RowsEntry{}
	e.MultiLine = true
	e.Wrapping = fyne.TextWrapOff
	e.PlaceHolder = example
	e.ExtendBaseWidget(e)
	return e
}

// TypedKey passes Esc on and types all else.
func (e *RowsEntry) TypedKey(ev *fyne.KeyEvent) {
	if ev.Name == fyne.KeyEscape {
		escape(e)
		return
	}
	e.Entry.TypedKey(ev)
}
