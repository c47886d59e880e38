package widgets

import (
	"image/color"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/widget"

	"fourturn/app/theme"
)

// BusyData is what long work shows of itself.
type BusyData struct {
	Title  string
	Detail string  // what is being done now, or ""
	Done   float64 // share done, 0 to 1; below 0 when it is not known
	Stop   string  // label of stopping; "" when it cannot be stopped
}

// Busy shows that work is going on: the four turns of the year go round, or a line
// fills. It can be stopped where the caller allows it.
type Busy struct {
	widget.BaseWidget
	data BusyData
	stop *Button
}

var (
	_ fyne.Widget     = (*Busy)(nil)
	_ fyne.Accessible = (*Busy)(nil)
)

// NewBusy returns the state; onStop may be nil.
func NewBusy(data BusyData, onStop func()) *Busy {
	b := &Busy{data: data, stop: NewButton(ButtonData{Label: data.Stop}, onStop)}
	b.ExtendBaseWidget(b)
	return b
}

// Set shows how far the work is.
func (b *Busy) Set(data BusyData) {
	b.data = data
	b.stop.Set(ButtonData{Label: data.Stop})
	b.Refresh()
}

// AccessibilityLabel returns title and detail.
func (b *Busy) AccessibilityLabel() string { return accessibleName(b.data.Title, b.data.Detail) }

// AccessibilityRole is text.
func (b *Busy) AccessibilityRole() fyne.AccessibleRole { return fyne.AccessibleRoleText }

// CreateRenderer is called by the toolkit.
func (b *Busy) CreateRenderer() fyne.WidgetRenderer {
	r := &busyRenderer{
		busy: b, title: canvas.NewText("", nil), detail: canvas.NewText("", nil),
		track: canvas.NewRectangle(color.Transparent), bar: canvas.NewRectangle(color.Transparent),
	}
	for i := range r.arcs {
		start := float32(i)*90 + 8 // degrees; a gap of 16 between the quarters
		r.arcs[i] = canvas.NewArc(start, start+74, 0.72, color.Transparent)
	}
	r.title.Alignment, r.detail.Alignment = fyne.TextAlignCenter, fyne.TextAlignCenter
	r.turning = fyne.NewAnimation(2*time.Second, r.turn)
	r.turning.RepeatCount = fyne.AnimationRepeatForever
	r.turning.Curve = fyne.AnimationLinear
	r.Refresh()
	return r
}

type busyRenderer struct {
	busy          *Busy
	arcs          [4]*canvas.Arc
	lit           int
	title, detail *canvas.Text
	track, bar    *canvas.Rectangle
	turning       *fyne.Animation
	runs          bool
}

// turn lights the next quarter; t goes from 0 to 1.
func (r *busyRenderer) turn(t float32) {
	if lit := int(t*4) % 4; lit != r.lit {
		r.lit = lit
		r.colourArcs()
	}
}

func (r *busyRenderer) colourArcs() {
	l := lookOf(r.busy)
	for i, arc := range r.arcs {
		c := l.colour(theme.ColorRule)
		if i == r.lit {
			c = l.colour(theme.ColorRibbon)
		}
		arc.FillColor = c
		arc.Refresh()
	}
}

func (r *busyRenderer) Refresh() {
	b, l := r.busy, lookOf(r.busy)
	unknown := b.data.Done < 0
	if turn := unknown && b.Visible(); turn != r.runs {
		r.runs = turn
		if turn {
			r.turning.Start()
		} else {
			r.turning.Stop()
		}
	}
	r.colourArcs()
	for _, arc := range r.arcs {
		show(arc, unknown)
	}
	show(r.track, !unknown)
	show(r.bar, !unknown)
	r.track.StrokeWidth, r.track.StrokeColor = theme.Hair, l.colour(theme.ColorOutline)
	fill(r.track, l.colour(theme.ColorSurface))
	fill(r.bar, l.colour(theme.ColorPen))
	l.set(r.title, b.data.Title, scriptHeading)
	l.set(r.detail, b.data.Detail, scriptSoft)
	show(b.stop, b.data.Stop != "")
	r.Layout(b.Size())
}

// busySign is the size of the turning quarters; busyBar the height of the line.
const (
	busySign float32 = 48
	busyBar  float32 = 10
)

func (r *busyRenderer) MinSize() fyne.Size {
	l := lookOf(r.busy)
	height := busySign + theme.Step2 + l.measure("X", scriptHeading).Height + l.measure("X", scriptSoft).Height
	height += theme.Step2 + r.busy.stop.MinSize().Height
	return fyne.NewSize(240, height)
}

func (r *busyRenderer) Layout(size fyne.Size) {
	least := r.MinSize()
	y := max(0, (size.Height-least.Height)*0.4)
	middle := size.Width / 2
	for _, arc := range r.arcs {
		place(arc, middle-busySign/2, y, busySign, busySign)
	}
	width := min(size.Width-theme.Step4, 320)
	top := y + (busySign-busyBar)/2
	place(r.track, middle-width/2, top, width, busyBar)
	done := float32(max(0, min(r.busy.data.Done, 1)))
	place(r.bar, middle-width/2+2, top+2, (width-4)*done, busyBar-4)
	y += busySign + theme.Step2
	title := r.title.MinSize()
	place(r.title, 0, y, size.Width, title.Height)
	y += title.Height
	detail := r.detail.MinSize()
	place(r.detail, 0, y, size.Width, detail.Height)
	y += detail.Height + theme.Step2
	stop := r.busy.stop.MinSize()
	place(r.busy.stop, middle-stop.Width/2, y, stop.Width, stop.Height)
}

func (r *busyRenderer) Objects() []fyne.CanvasObject {
	objects := []fyne.CanvasObject{r.track, r.bar, r.title, r.detail, r.busy.stop}
	for _, arc := range r.arcs {
		objects = append(objects, arc)
	}
	return objects
}

// Destroy stops the turning.
func (r *busyRenderer) Destroy() { r.turning.Stop() }
