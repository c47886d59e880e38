package widgets

import (
	"image/color"
	"math"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/widget"

	"fourturn/app/theme"
)

// ScaleMark is a value of a scale that has a name.
type ScaleMark struct {
	Value int
	Label string
}

// ScaleData is what a ScaleField shows.
type ScaleData struct {
	Label       string // what is chosen
	Words       string // what the value means, such as "Cautious: in 10 % of years"
	Least, Most int
	Value       int
	Marks       []ScaleMark // by rising value
}

// ScaleField is a whole number on a line between two ends, with named values under it.
// The pointer drags it or taps on a place or a name; Left and Right move it by one,
// Page Up and Page Down by ten, Home and End to the ends.
type ScaleField struct {
	widget.BaseWidget

	// OnTry is called for each value on the way.
	OnTry func(value int)
	// OnTake is called when the value is let go of: at the end of a drag, for a tap, and
	// for a key.
	OnTake func(value int)

	data     ScaleData
	focused  bool
	hovered  bool
	dragging bool
}

var (
	_ fyne.Widget       = (*ScaleField)(nil)
	_ fyne.Tappable     = (*ScaleField)(nil)
	_ fyne.Draggable    = (*ScaleField)(nil)
	_ fyne.Focusable    = (*ScaleField)(nil)
	_ desktop.Hoverable = (*ScaleField)(nil)
	_ fyne.Accessible   = (*ScaleField)(nil)
)

// NewScaleField returns a field.
func NewScaleField(data ScaleData) *ScaleField {
	s := &ScaleField{data: data}
	s.ExtendBaseWidget(s)
	return s
}

// Set shows other data.
func (s *ScaleField) Set(data ScaleData) {
	s.data = data
	s.Refresh()
}

// Value returns the value shown.
func (s *ScaleField) Value() int { return s.data.Value }

func (s *ScaleField) try(value int) {
	value = max(s.data.Least, min(value, s.data.Most))
	if value == s.data.Value {
		return
	}
	s.data.Value = value
	s.Refresh()
	if s.OnTry != nil {
		s.OnTry(value)
	}
}

func (s *ScaleField) take() {
	if s.OnTake != nil {
		s.OnTake(s.data.Value)
	}
}

// at returns the value at a place on the line.
func (s *ScaleField) at(x float32) int {
	line := s.line(s.Size())
	if line.w <= 0 {
		return s.data.Value
	}
	share := float64((x - line.x) / line.w)
	return s.data.Least + int(math.Round(share*float64(s.data.Most-s.data.Least)))
}

// Tapped goes to the place under the pointer; near a named value to that.
func (s *ScaleField) Tapped(ev *fyne.PointEvent) {
	s.focus()
	value := s.at(ev.Position.X)
	const near = 3
	for _, m := range s.data.Marks {
		if m.Value-near <= value && value <= m.Value+near {
			value = m.Value
		}
	}
	s.try(value)
	s.take()
}

func (s *ScaleField) focus() {
	if cv := fyne.CurrentApp().Driver().CanvasForObject(s); cv != nil {
		cv.Focus(s)
	}
}

// Dragged moves the value with the pointer.
func (s *ScaleField) Dragged(ev *fyne.DragEvent) {
	s.dragging = true
	s.try(s.at(ev.Position.X))
}

// DragEnd takes the value.
func (s *ScaleField) DragEnd() {
	s.dragging = false
	s.take()
}

// MouseIn lights the knob.
func (s *ScaleField) MouseIn(*desktop.MouseEvent) {
	s.hovered = true
	s.Refresh()
}

// MouseMoved is not used.
func (s *ScaleField) MouseMoved(*desktop.MouseEvent) {}

// MouseOut puts out the light.
func (s *ScaleField) MouseOut() {
	s.hovered = false
	s.Refresh()
}

// FocusGained shows the focus ring.
func (s *ScaleField) FocusGained() {
	s.focused = true
	s.Refresh()
}

// FocusLost hides the focus ring.
func (s *ScaleField) FocusLost() {
	s.focused = false
	s.Refresh()
}

// TypedRune is not used.
func (s *ScaleField) TypedRune(rune) {}

// TypedKey moves the value.
func (s *ScaleField) TypedKey(ev *fyne.KeyEvent) {
	const leap = 10
	value := s.data.Value
	switch ev.Name {
	case fyne.KeyLeft, fyne.KeyDown:
		value--
	case fyne.KeyRight, fyne.KeyUp:
		value++
	case fyne.KeyPageDown:
		value -= leap
	case fyne.KeyPageUp:
		value += leap
	case fyne.KeyHome:
		value = s.data.Least
	case fyne.KeyEnd:
		value = s.data.Most
	case fyne.KeyEscape:
		escape(s)
		return
	default:
		return
	}
	before := s.data.Value
	s.try(value)
	if s.data.Value != before {
		s.take()
	}
}

// AccessibilityLabel returns the label and what the value means.
func (s *ScaleField) AccessibilityLabel() string { return accessibleName(s.data.Label, s.data.Words) }

// AccessibilityRole is a button, the nearest that the toolkit knows.
func (s *ScaleField) AccessibilityRole() fyne.AccessibleRole { return fyne.AccessibleRoleButton }

// Measures of the field.
const (
	knobWide   float32 = 10
	knobHigh   float32 = 22
	scaleInset float32 = 44 // at either end, so that the names under the line find room
)

// line returns where the line is drawn.
func (s *ScaleField) line(size fyne.Size) rect {
	caption := lookOf(s).measure("X", scriptText).Height
	return rect{scaleInset, caption + theme.Half + knobHigh/2, max(0, size.Width-2*scaleInset), 2}
}

// x returns where a value lies on the line.
func (s *ScaleField) x(value int, line rect) float32 {
	if s.data.Most == s.data.Least {
		return line.x
	}
	return line.x + line.w*float32(value-s.data.Least)/float32(s.data.Most-s.data.Least)
}

// CreateRenderer is called by the toolkit.
func (s *ScaleField) CreateRenderer() fyne.WidgetRenderer {
	r := &scaleRenderer{
		field: s, label: canvas.NewText("", nil), words: canvas.NewText("", nil),
		line: canvas.NewRectangle(color.Transparent), filled: canvas.NewRectangle(color.Transparent),
		knob: canvas.NewRectangle(color.Transparent), ring: newRing(),
	}
	r.knob.CornerRadius, r.knob.StrokeWidth = 3, 1.5
	r.Refresh()
	return r
}

type scaleRenderer struct {
	field        *ScaleField
	label, words *canvas.Text
	line, filled *canvas.Rectangle
	knob, ring   *canvas.Rectangle
	ticks        []*canvas.Rectangle
	names        []*canvas.Text
}

func (r *scaleRenderer) Refresh() {
	s, l := r.field, lookOf(r.field)
	for len(r.ticks) < len(s.data.Marks) {
		r.ticks = append(r.ticks, canvas.NewRectangle(color.Transparent))
		r.names = append(r.names, canvas.NewText("", nil))
	}
	l.set(r.label, s.data.Label, scriptCaption)
	fill(r.line, l.colour(theme.ColorOutline))
	fill(r.filled, l.colour(theme.ColorPen))
	for i, m := range s.data.Marks {
		fill(r.ticks[i], l.colour(theme.ColorOutline))
		kind := scriptCaption
		if m.Value == s.data.Value {
			kind = scriptStrong
		}
		l.set(r.names[i], m.Label, kind)
	}
	r.knob.FillColor, r.knob.StrokeColor = l.colour(theme.ColorSurface), l.colour(theme.ColorPen)
	if s.hovered || s.dragging || s.focused {
		r.knob.FillColor = l.colour(theme.ColorPen)
	}
	r.knob.Refresh()
	l.ring(r.ring, s.focused)
	r.Layout(s.Size())
}

func (r *scaleRenderer) MinSize() fyne.Size {
	l := lookOf(r.field)
	width := 2 * scaleInset
	for _, m := range r.field.data.Marks {
		width += l.measure(m.Label, scriptStrong).Width + theme.Step
	}
	return fyne.NewSize(width, l.measure("X", scriptText).Height+theme.Half+knobHigh+theme.Half+l.measure("X", scriptStrong).Height)
}

func (r *scaleRenderer) Layout(size fyne.Size) {
	s, l := r.field, lookOf(r.field)
	head := l.measure("X", scriptText)
	caption := r.label.MinSize()
	place(r.label, 0, centred(0, head.Height, caption.Height), caption.Width, caption.Height)
	l.set(r.words, l.fit(s.data.Words, scriptText, size.Width-caption.Width-theme.Step), scriptText)
	words := r.words.MinSize()
	place(r.words, caption.Width+theme.Step, 0, words.Width, head.Height)
	line := s.line(size)
	place(r.line, line.x, line.y-line.h/2, line.w, line.h)
	at := s.x(s.data.Value, line)
	place(r.filled, line.x, line.y-line.h, at-line.x, 2*line.h)
	place(r.knob, at-knobWide/2, line.y-knobHigh/2, knobWide, knobHigh)
	place(r.ring, 0, head.Height, size.Width, knobHigh+theme.Step)
	foot := line.y + knobHigh/2 + theme.Half
	for i, m := range s.data.Marks {
		x := s.x(m.Value, line)
		place(r.ticks[i], x-0.5, line.y-theme.Half, 1, theme.Step)
		name := r.names[i].MinSize()
		place(r.names[i], min(max(0, x-name.Width/2), size.Width-name.Width), foot, name.Width, name.Height)
	}
}

func (r *scaleRenderer) Objects() []fyne.CanvasObject {
	objects := []fyne.CanvasObject{r.label, r.words, r.line, r.filled}
	for i := range r.ticks {
		objects = append(objects, r.ticks[i], r.names[i])
	}
	return append(objects, r.knob, r.ring)
}

func (r *scaleRenderer) Destroy() {}
