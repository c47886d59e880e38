package widgets

import (
	"image/color"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	fynetheme "fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"fourturn/app/theme"
)

// MeasureField is an entry for a measure, such as "35 cm". It commits on Enter and
// when the focus leaves, never on each key; Esc puts back what stood there. What
// onCommit refuses stays in the field with the reason under it.
//
// onCommit gets the text as typed, only when it differs from what was set. It
// returns nil when the value was taken; the caller then sets it, written out, with
// SetValue. It must not move the focus or open a dialog, since it may be called
// while the focus moves.
type MeasureField struct {
	widget.BaseWidget
	label, help string
	value       string // as last set or committed
	problem     string
	committing  bool
	setting     bool // the program sets the text
	entry       *measureEntry
	onCommit    func(text string) error
	onStep      func(steps int)
	onTyped     func(text string)
}

var (
	_ fyne.Widget     = (*MeasureField)(nil)
	_ fyne.Accessible = (*MeasureField)(nil)
)

// NewMeasureField returns an empty field. Help says what may be typed, such as
// "cm, m, in or ft"; it may be empty.
func NewMeasureField(label, help string, onCommit func(text string) error) *MeasureField {
	m := &MeasureField{label: label, help: help, onCommit: onCommit}
	m.entry = &measureEntry{field: m}
	m.entry.Wrapping = fyne.TextWrap(fyne.TextTruncateClip)
	m.entry.ExtendBaseWidget(m.entry)
	m.entry.OnSubmitted = func(string) {
		m.Commit()
		if m.problem == "" {
			submit(m.entry)
		}
	}
	m.entry.OnChanged = func(text string) {
		if m.onTyped != nil && m.entry.holdsFocus && !m.setting {
			m.onTyped(text)
		}
	}
	m.ExtendBaseWidget(m)
	return m
}

// SetOnStep says what Up (+1) and Down (-1) do; nil leaves them to the cursor.
func (m *MeasureField) SetOnStep(onStep func(steps int)) { m.onStep = onStep }

// SetOnTyped says what is called with the text while a person types it, such as to show
// what would come of it. It is called too when what was typed is put back.
func (m *MeasureField) SetOnTyped(onTyped func(text string)) { m.onTyped = onTyped }

// SetValue shows a value and forgets what was typed and refused. While somebody
// is typing something else, the text stays and only Esc's way back changes.
func (m *MeasureField) SetValue(text string) {
	typing := m.entry.holdsFocus && m.entry.Text != m.value && !m.committing
	m.value = text
	if typing && m.problem == "" && m.entry.Text != text {
		return
	}
	m.problem = ""
	if m.entry.Text != text {
		m.setting = true
		m.entry.SetText(text)
		m.setting = false
	}
	m.Refresh()
}

// Value returns the value as last set or committed.
func (m *MeasureField) Value() string { return m.value }

// Typed returns what stands in the field now, committed or not.
func (m *MeasureField) Typed() string { return m.entry.Text }

// SetLabels changes the words, such as after a change of units.
func (m *MeasureField) SetLabels(label, help string) {
	m.label, m.help = label, help
	m.Refresh()
}

// SetError shows a reason why the value will not do; "" takes it away.
func (m *MeasureField) SetError(reason string) {
	if m.problem != reason {
		m.problem = reason
		m.Refresh()
	}
}

// Error returns the reason shown, or "".
func (m *MeasureField) Error() string { return m.problem }

// Entry returns the part that takes the focus.
func (m *MeasureField) Entry() fyne.Focusable { return m.entry }

// Disable makes the field read-only.
func (m *MeasureField) Disable() { m.entry.Disable() }

// Enable ends what Disable began.
func (m *MeasureField) Enable() { m.entry.Enable() }

// Commit hands what was typed to onCommit, if it changed.
func (m *MeasureField) Commit() {
	text := m.entry.Text
	if text == m.value && m.problem == "" {
		return
	}
	if m.onCommit == nil {
		m.value = text
		return
	}
	m.committing = true
	err := m.onCommit(text)
	m.committing = false
	if err != nil {
		m.SetError(err.Error())
		return
	}
	if m.entry.Text == text && m.problem == "" {
		m.value = text
	}
	m.SetError("")
}

// Revert puts back the value as last set and takes an error away.
func (m *MeasureField) Revert() {
	m.problem = ""
	m.entry.SetText(m.value)
	m.Refresh()
}

// AccessibilityLabel returns label, text and, if any, the error.
func (m *MeasureField) AccessibilityLabel() string {
	return accessibleName(m.label, m.entry.Text, m.problem)
}

// AccessibilityRole is text, the nearest that the toolkit knows.
func (m *MeasureField) AccessibilityRole() fyne.AccessibleRole { return fyne.AccessibleRoleText }

// measureEntry is the entry inside a MeasureField.
type measureEntry struct {
	widget.Entry
	field      *MeasureField
	holdsFocus bool
}

// AccessibilityLabel is the field's.
func (e *measureEntry) AccessibilityLabel() string { return e.field.AccessibilityLabel() }

// AccessibilityRole is the field's.
func (e *measureEntry) AccessibilityRole() fyne.AccessibleRole { return e.field.AccessibilityRole() }

// Typing reports whether something is typed that was not committed: then Undo is the
// field's, else it is the plan's.
func (e *measureEntry) Typing() bool { return e.Text != e.field.value }

func (e *measureEntry) FocusGained() {
	e.holdsFocus = true
	e.Entry.FocusGained()
	e.field.Refresh()
}

func (e *measureEntry) FocusLost() {
	e.holdsFocus = false
	e.Entry.FocusLost()
	e.field.Commit()
	e.field.Refresh()
}

func (e *measureEntry) TypedKey(ev *fyne.KeyEvent) {
	switch {
	case ev.Name == fyne.KeyEscape:
		if e.Text == e.field.value && e.field.problem == "" {
			escape(e)
			return
		}
		e.field.Revert()
	case ev.Name == fyne.KeyUp && e.field.onStep != nil:
		e.field.onStep(1)
	case ev.Name == fyne.KeyDown && e.field.onStep != nil:
		e.field.onStep(-1)
	default:
		e.Entry.TypedKey(ev)
	}
}

// CreateRenderer is called by the toolkit.
func (m *MeasureField) CreateRenderer() fyne.WidgetRenderer {
	r := &measureRenderer{
		field: m, label: canvas.NewText("", nil), help: canvas.NewText("", nil),
		sign: canvas.NewImageFromResource(theme.IconIn(theme.IconError, fynetheme.ColorNameError)),
		ring: newRing(), bar: canvas.NewRectangle(color.Transparent),
	}
	r.sign.FillMode = canvas.ImageFillContain
	r.Refresh()
	return r
}

// mostLabel is how much room a label asks for; a longer one, such as a name that a person
// gave, is shortened where there is no more.
const mostLabel = 200

type measureRenderer struct {
	field       *MeasureField
	label, help *canvas.Text
	sign        *canvas.Image
	ring, bar   *canvas.Rectangle // bar: a firm edge at the left of a refused value
}

func (r *measureRenderer) Refresh() {
	m, l := r.field, lookOf(r.field)
	refused := m.problem != ""
	if !refused {
		l.set(r.help, m.help, scriptCaption)
	}
	show(r.sign, refused)
	r.sign.Refresh()
	show(r.bar, refused)
	fill(r.bar, l.colour(fynetheme.ColorNameError))
	l.ring(r.ring, m.entry.holdsFocus)
	r.Layout(m.Size())
}

// fieldWidth is the least width of an entry: about ten figures.
func (r *measureRenderer) fieldWidth(l look) float32 {
	return l.measure("0000000000", scriptText).Width + theme.Step3
}

func (r *measureRenderer) MinSize() fyne.Size {
	l := lookOf(r.field)
	caption := l.measure("x", scriptCaption).Height
	width := max(r.fieldWidth(l), min(l.measure(r.field.label, scriptCaption).Width, mostLabel))
	return fyne.NewSize(width, caption+r.field.entry.MinSize().Height+theme.Half+caption)
}

func (r *measureRenderer) Layout(size fyne.Size) {
	l, m := lookOf(r.field), r.field
	caption := l.measure("x", scriptCaption).Height
	l.set(r.label, l.fit(m.label, scriptCaption, size.Width), scriptCaption)
	place(r.label, 0, 0, size.Width, caption)
	entry := m.entry.MinSize().Height
	place(m.entry, 0, caption+theme.Half/2, size.Width, entry)
	place(r.ring, 0, caption+theme.Half/2, size.Width, entry)
	place(r.bar, 0, caption+theme.Half/2, 3, entry)
	y, x := caption+entry+theme.Half, float32(0)
	if m.problem != "" {
		place(r.sign, 0, y, caption, caption)
		x = caption + theme.Half
		l.set(r.help, l.fit(m.problem, scriptCaption, size.Width-x), scriptCaption.in(fynetheme.ColorNameError))
	}
	place(r.help, x, y, size.Width-x, caption)
}

func (r *measureRenderer) Objects() []fyne.CanvasObject {
	return []fyne.CanvasObject{r.label, r.field.entry, r.bar, r.ring, r.sign, r.help}
}

func (r *measureRenderer) Destroy() {}
