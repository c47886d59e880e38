package widgets

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	fynetheme "fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"fourturn/app/theme"
)

// NoteField is an entry for a text of several lines. It commits when the focus leaves;
// Esc puts back what stood there.
type NoteField struct {
	widget.BaseWidget
	label, value, problem string
	entry                 *noteEntry
	onCommit              func(text string) error
}

var (
	_ fyne.Widget     = (*NoteField)(nil)
	_ fyne.Accessible = (*NoteField)(nil)
)

// noteLines is how many lines are in sight; more can be scrolled to.
const noteLines = 3

// NewNoteField returns an empty field. onCommit is as that of a [MeasureField].
func NewNoteField(label string, onCommit func(text string) error) *NoteField {
	n := &NoteField{label: label, onCommit: onCommit}
	n.entry = &noteEntry{field: n}
	n.entry.MultiLine, n.entry.Wrapping = true, fyne.TextWrapWord
	n.entry.ExtendBaseWidget(n.entry)
	n.entry.SetMinRowsVisible(noteLines)
	n.ExtendBaseWidget(n)
	return n
}

// SetValue shows a text. While somebody is typing, what is typed stays.
func (n *NoteField) SetValue(text string) {
	typing := n.entry.Text != n.value
	n.value = text
	if typing && n.entry.Text != text {
		return
	}
	if n.entry.Text != text {
		n.entry.SetText(text)
	}
}

// SetError shows a reason why the text will not do; "" takes it away.
func (n *NoteField) SetError(reason string) {
	if n.problem != reason {
		n.problem = reason
		n.Refresh()
	}
}

// Entry returns the part that takes the focus.
func (n *NoteField) Entry() fyne.Focusable { return n.entry }

// Commit hands what was typed to onCommit, if it changed.
func (n *NoteField) Commit() {
	text := n.entry.Text
	if text == n.value || n.onCommit == nil {
		return
	}
	if err := n.onCommit(text); err != nil {
		n.SetError(err.Error())
		return
	}
	n.value = text
	n.SetError("")
}

// AccessibilityLabel returns label, text and, if any, the error.
func (n *NoteField) AccessibilityLabel() string {
	return accessibleName(n.label, n.entry.Text, n.problem)
}

// AccessibilityRole is text, the nearest that the toolkit knows.
func (n *NoteField) AccessibilityRole() fyne.AccessibleRole { return fyne.AccessibleRoleText }

// noteEntry is the entry inside a NoteField.
type noteEntry struct {
	widget.Entry
	field *NoteField
}

// AccessibilityLabel is the field's.
func (e *noteEntry) AccessibilityLabel() string { return e.field.AccessibilityLabel() }

// AccessibilityRole is the field's.
func (e *noteEntry) AccessibilityRole() fyne.AccessibleRole { return e.field.AccessibilityRole() }

// Typing reports whether something is typed that was not committed.
func (e *noteEntry) Typing() bool { return e.Text != e.field.value }

// FocusLost commits.
func (e *noteEntry) FocusLost() {
	e.Entry.FocusLost()
	e.field.Commit()
}

// TypedKey puts back on Esc what stood there.
func (e *noteEntry) TypedKey(ev *fyne.KeyEvent) {
	if ev.Name != fyne.KeyEscape {
		e.Entry.TypedKey(ev)
		return
	}
	if e.Text == e.field.value {
		escape(e)
		return
	}
	e.SetText(e.field.value)
	e.field.SetError("")
}

// CreateRenderer is called by the toolkit.
func (n *NoteField) CreateRenderer() fyne.WidgetRenderer {
	r := &noteRenderer{field: n, label: canvas.NewText("", nil), help: canvas.NewText("", nil)}
	r.Refresh()
	return r
}

type noteRenderer struct {
	field       *NoteField
	label, help *canvas.Text
}

func (r *noteRenderer) Refresh() {
	l := lookOf(r.field)
	l.set(r.label, r.field.label, scriptCaption)
	r.Layout(r.field.Size())
}

func (r *noteRenderer) MinSize() fyne.Size {
	caption := lookOf(r.field).measure("x", scriptCaption).Height
	entry := r.field.entry.MinSize()
	high := caption + entry.Height + theme.Half
	if r.field.problem != "" {
		high += caption
	}
	return fyne.NewSize(entry.Width, high)
}

func (r *noteRenderer) Layout(size fyne.Size) {
	l := lookOf(r.field)
	caption := l.measure("x", scriptCaption).Height
	place(r.label, 0, 0, size.Width, caption)
	entry := r.field.entry.MinSize().Height
	place(r.field.entry, 0, caption+theme.Half/2, size.Width, entry)
	l.set(r.help, l.fit(r.field.problem, scriptCaption, size.Width), scriptCaption.in(fynetheme.ColorNameError))
	place(r.help, 0, caption+entry+theme.Half, size.Width, caption)
}

func (r *noteRenderer) Objects() []fyne.CanvasObject {
	return []fyne.CanvasObject{r.label, r.field.entry, r.help}
}

func (r *noteRenderer) Destroy() {}
