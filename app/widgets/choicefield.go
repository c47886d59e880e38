package widgets

import (
	"image/color"
	"slices"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	fynetheme "fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"fourturn/app/theme"
)

// ChoiceField is a choice from a list, laid out like a MeasureField beside it.
// Left and Right choose, Up, Down and Space open the list.
type ChoiceField struct {
	widget.BaseWidget
	label, help string
	options     []string
	list        *choiceSelect
	onChoose    func(i int)
	quiet       bool // a choice set by the program is not told to onChoose
	compact     bool // the label is said and not shown
}

var (
	_ fyne.Widget     = (*ChoiceField)(nil)
	_ fyne.Accessible = (*ChoiceField)(nil)
)

// NewChoiceField returns a field with nothing chosen. onChoose gets the number of
// the option that a person chose.
func NewChoiceField(label, help string, options []string, onChoose func(i int)) *ChoiceField {
	c := &ChoiceField{label: label, help: help, options: options, onChoose: onChoose}
	c.list = &choiceSelect{field: c}
	c.list.Options = options
	c.list.PlaceHolder = " "
	c.list.OnChanged = func(string) {
		if i := c.list.SelectedIndex(); !c.quiet && i >= 0 && c.onChoose != nil {
			c.onChoose(i)
		}
	}
	c.list.ExtendBaseWidget(c.list)
	c.ExtendBaseWidget(c)
	return c
}

// NewCompactChoice returns a field without the lines above and below, for bars where
// the options say what they are. The name is for screen readers.
func NewCompactChoice(name string, options []string, onChoose func(i int)) *ChoiceField {
	c := NewChoiceField(name, "", options, onChoose)
	c.compact = true
	return c
}

// SetChoice shows an option as chosen; −1 shows none.
func (c *ChoiceField) SetChoice(i int) {
	c.quiet = true
	defer func() { c.quiet = false }()
	if i < 0 || i >= len(c.options) {
		c.list.ClearSelected()
		return
	}
	if c.list.SelectedIndex() != i {
		c.list.SetSelectedIndex(i)
	}
}

// SetOptions changes the list. The choice is lost if the list is another one.
func (c *ChoiceField) SetOptions(options []string) {
	if slices.Equal(c.options, options) {
		return
	}
	c.quiet = true
	defer func() { c.quiet = false }()
	c.options = options
	c.list.ClearSelected()
	c.list.SetOptions(options)
}

// Choice returns the number of the chosen option, −1 for none.
func (c *ChoiceField) Choice() int { return c.list.SelectedIndex() }

// Entry returns the part that takes the focus.
func (c *ChoiceField) Entry() fyne.Focusable { return c.list }

// Disable makes the field read-only.
func (c *ChoiceField) Disable() { c.list.Disable() }

// Enable ends what Disable began.
func (c *ChoiceField) Enable() { c.list.Enable() }

// AccessibilityLabel returns label and choice.
func (c *ChoiceField) AccessibilityLabel() string { return accessibleName(c.label, c.list.Selected) }

// AccessibilityRole is a button.
func (c *ChoiceField) AccessibilityRole() fyne.AccessibleRole { return fyne.AccessibleRoleButton }

// choiceSelect is the list inside a ChoiceField.
type choiceSelect struct {
	widget.Select
	field   *ChoiceField
	focused bool
}

// AccessibilityLabel is the field's.
func (s *choiceSelect) AccessibilityLabel() string { return s.field.AccessibilityLabel() }

// AccessibilityRole is the field's.
func (s *choiceSelect) AccessibilityRole() fyne.AccessibleRole { return s.field.AccessibilityRole() }

func (s *choiceSelect) FocusGained() {
	s.focused = true
	s.Select.FocusGained()
	s.field.Refresh()
}

func (s *choiceSelect) FocusLost() {
	s.focused = false
	s.Select.FocusLost()
	s.field.Refresh()
}

func (s *choiceSelect) TypedKey(ev *fyne.KeyEvent) {
	switch ev.Name {
	case fyne.KeyEscape:
		escape(s)
	case fyne.KeyReturn, fyne.KeyEnter:
		submit(s)
	default:
		s.Select.TypedKey(ev)
	}
}

// CreateRenderer is called by the toolkit.
func (c *ChoiceField) CreateRenderer() fyne.WidgetRenderer {
	r := &choiceRenderer{
		field: c, label: canvas.NewText("", nil), help: canvas.NewText("", nil),
		edge: canvas.NewRectangle(color.Transparent), ring: newRing(),
	}
	r.edge.StrokeWidth, r.edge.CornerRadius = theme.Hair, 3
	r.Refresh()
	return r
}

type choiceRenderer struct {
	field       *ChoiceField
	label, help *canvas.Text
	edge, ring  *canvas.Rectangle
}

func (r *choiceRenderer) Refresh() {
	l := lookOf(r.field)
	show(r.label, !r.field.compact)
	l.set(r.label, r.field.label, scriptCaption)
	l.set(r.help, r.field.help, scriptCaption)
	r.edge.StrokeColor = l.colour(theme.ColorOutline)
	r.edge.Refresh()
	l.ring(r.ring, r.field.list.focused)
	r.field.list.Refresh()
	r.Layout(r.field.Size())
}

// compactWide is how wide a compact field is at most, in sizes of its text.
const compactWide = 11

func (r *choiceRenderer) MinSize() fyne.Size {
	l := lookOf(r.field)
	caption := l.measure("x", scriptCaption).Height
	list := r.field.list.MinSize()
	if r.field.compact {
		for _, option := range r.field.options {
			list.Width = max(list.Width, l.measure(option, scriptText).Width+list.Height+theme.Step)
		}
		list.Width = min(list.Width, l.size(fynetheme.SizeNameText)*compactWide)
		return list
	}
	width := max(list.Width, l.measure(r.field.label, scriptCaption).Width)
	return fyne.NewSize(width, caption+list.Height+theme.Half+caption)
}

func (r *choiceRenderer) Layout(size fyne.Size) {
	l := lookOf(r.field)
	caption := l.measure("x", scriptCaption).Height
	height := r.field.list.MinSize().Height
	if r.field.compact {
		for _, o := range []fyne.CanvasObject{r.field.list, r.edge, r.ring} {
			place(o, 0, centred(0, size.Height, height), size.Width, height)
		}
		return
	}
	place(r.label, 0, 0, size.Width, caption)
	for _, o := range []fyne.CanvasObject{r.field.list, r.edge, r.ring} {
		place(o, 0, caption+theme.Half/2, size.Width, height)
	}
	place(r.help, 0, caption+height+theme.Half, size.Width, caption)
}

func (r *choiceRenderer) Objects() []fyne.CanvasObject {
	return []fyne.CanvasObject{r.label, r.field.list, r.edge, r.ring, r.help}
}

func (r *choiceRenderer) Destroy() {}
