package widgets

import (
	"image/color"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/driver/desktop"
	fynetheme "fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"fourturn/app/theme"
)

// Segments is a choice of a few that all stand in sight, such as metric or US.
// Left and Right choose.
type Segments struct {
	widget.BaseWidget
	options  []string
	chosen   int
	hovered  int
	focused  bool
	onChoose func(i int)
	name     string
}

var (
	_ fyne.Widget       = (*Segments)(nil)
	_ fyne.Tappable     = (*Segments)(nil)
	_ fyne.Focusable    = (*Segments)(nil)
	_ desktop.Hoverable = (*Segments)(nil)
	_ fyne.Accessible   = (*Segments)(nil)
)

// NewSegments returns a choice with the first option chosen. Name says what is
// chosen, for screen readers.
func NewSegments(name string, options []string, onChoose func(i int)) *Segments {
	s := &Segments{name: name, options: options, hovered: -1, onChoose: onChoose}
	s.ExtendBaseWidget(s)
	return s
}

// SetChoice shows an option as chosen, without telling onChoose; −1 shows none.
func (s *Segments) SetChoice(i int) {
	if i >= -1 && i < len(s.options) && i != s.chosen {
		s.chosen = i
		s.Refresh()
	}
}

// Choice returns the chosen option.
func (s *Segments) Choice() int { return s.chosen }

func (s *Segments) choose(i int) {
	if i < 0 || i >= len(s.options) || i == s.chosen {
		return
	}
	s.SetChoice(i)
	if s.onChoose != nil {
		s.onChoose(i)
	}
}

func (s *Segments) at(x float32) int {
	for i := range s.options {
		w := s.width(i)
		if x < w {
			return i
		}
		x -= w
	}
	return -1
}

func (s *Segments) width(i int) float32 {
	return lookOf(s).measure(s.options[i], scriptStrong).Width + theme.Step3
}

// Tapped chooses the option under the pointer.
func (s *Segments) Tapped(ev *fyne.PointEvent) { s.choose(s.at(ev.Position.X)) }

// FocusGained shows the focus ring.
func (s *Segments) FocusGained() {
	s.focused = true
	s.Refresh()
}

// FocusLost hides the focus ring.
func (s *Segments) FocusLost() {
	s.focused = false
	s.Refresh()
}

// TypedRune is not used.
func (s *Segments) TypedRune(rune) {}

// TypedKey chooses.
func (s *Segments) TypedKey(ev *fyne.KeyEvent) {
	switch ev.Name {
	case fyne.KeyLeft, fyne.KeyUp:
		s.choose(s.chosen - 1)
	case fyne.KeyRight, fyne.KeyDown:
		s.choose(s.chosen + 1)
	case fyne.KeyHome:
		s.choose(0)
	case fyne.KeyEnd:
		s.choose(len(s.options) - 1)
	case fyne.KeyEscape:
		escape(s)
	}
}

// MouseIn lights the option under the pointer.
func (s *Segments) MouseIn(ev *desktop.MouseEvent) { s.MouseMoved(ev) }

// MouseMoved lights the option under the pointer.
func (s *Segments) MouseMoved(ev *desktop.MouseEvent) {
	if i := s.at(ev.Position.X); i != s.hovered {
		s.hovered = i
		s.Refresh()
	}
}

// MouseOut puts out the light.
func (s *Segments) MouseOut() {
	s.hovered = -1
	s.Refresh()
}

// AccessibilityLabel returns the name and the choice.
func (s *Segments) AccessibilityLabel() string {
	if s.chosen < 0 || s.chosen >= len(s.options) {
		return s.name
	}
	return accessibleName(s.name, s.options[s.chosen])
}

// AccessibilityRole is a button.
func (s *Segments) AccessibilityRole() fyne.AccessibleRole { return fyne.AccessibleRoleButton }

// CreateRenderer is called by the toolkit.
func (s *Segments) CreateRenderer() fyne.WidgetRenderer {
	r := &segmentsRenderer{
		segments: s, edge: canvas.NewRectangle(color.Transparent), sheet: canvas.NewRectangle(color.Transparent),
		light: canvas.NewRectangle(color.Transparent), ribbon: canvas.NewRectangle(color.Transparent), ring: newRing(),
	}
	r.edge.StrokeWidth, r.edge.CornerRadius, r.sheet.CornerRadius = theme.Hair, 3, 2
	r.Refresh()
	return r
}

type segmentsRenderer struct {
	segments                         *Segments
	edge, sheet, light, ribbon, ring *canvas.Rectangle
	labels                           []*canvas.Text
}

func (r *segmentsRenderer) Refresh() {
	s, l := r.segments, lookOf(r.segments)
	for len(r.labels) < len(s.options) {
		r.labels = append(r.labels, canvas.NewText("", nil))
	}
	r.edge.FillColor, r.edge.StrokeColor = l.colour(theme.ColorMargin), l.colour(theme.ColorOutline)
	r.edge.Refresh()
	fill(r.sheet, l.colour(theme.ColorSurface))
	fill(r.ribbon, l.colour(theme.ColorRibbon))
	fill(r.light, l.colour(fynetheme.ColorNameHover))
	for i, label := range r.labels {
		kind := scriptSoft
		if i == s.chosen {
			kind = scriptStrong
		}
		l.set(label, s.options[i], kind)
	}
	l.ring(r.ring, s.focused)
	r.Layout(s.Size())
}

func (r *segmentsRenderer) MinSize() fyne.Size {
	width := float32(0)
	for i := range r.segments.options {
		width += r.segments.width(i)
	}
	return fyne.NewSize(width, max(theme.Target, lookOf(r.segments).measure("X", scriptText).Height+theme.Step))
}

func (r *segmentsRenderer) Layout(size fyne.Size) {
	s := r.segments
	height := r.MinSize().Height
	y := centred(0, size.Height, height)
	place(r.edge, 0, y, r.MinSize().Width, height)
	place(r.ring, 0, y, r.MinSize().Width, height)
	show(r.sheet, s.chosen >= 0)
	show(r.ribbon, s.chosen >= 0)
	show(r.light, s.hovered >= 0 && s.hovered != s.chosen)
	x := float32(0)
	for i, label := range r.labels {
		w := s.width(i)
		text := label.MinSize()
		place(label, x+(w-text.Width)/2, centred(y, height, text.Height), text.Width, text.Height)
		if i == s.chosen {
			place(r.sheet, x+1, y+1, w-2, height-2)
			place(r.ribbon, x+theme.Step, y+height-4, w-theme.Step2, 2)
		}
		if i == s.hovered {
			place(r.light, x+1, y+1, w-2, height-2)
		}
		x += w
	}
}

func (r *segmentsRenderer) Objects() []fyne.CanvasObject {
	objects := []fyne.CanvasObject{r.edge, r.sheet, r.light, r.ribbon}
	for _, label := range r.labels {
		objects = append(objects, label)
	}
	return append(objects, r.ring)
}

func (r *segmentsRenderer) Destroy() {}
