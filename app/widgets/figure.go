package widgets

import (
	"image"
	"image/color"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	fynetheme "fyne.io/fyne/v2/theme"

	"fourturn/app/theme"
	"fourturn/app/widgets/ink"
)

// FigureStyle says how large a figure is and where its label stands.
type FigureStyle int

// The styles.
const (
	FigureStacked FigureStyle = iota // small label above the value
	FigureLead                       // label above a large value, one to a card
	FigureRow                        // label left, value right, for lists
	FigureBare                       // value alone, for tables and running text
)

// FigureData is what a figure shows.
type FigureData struct {
	Label string
	Value string // written out in the person's locale, such as "38.2"
	Unit  string // such as "L", may be empty
	Soft  bool   // rests on an estimate or on common practice
	Style FigureStyle
	// Name overrides what screen readers say; by default label, value and unit.
	Name string
}

// Figure is a value whose working can be opened by a click, Enter, Space or F1. A
// firm figure has a line under it, a soft one dots and the sign ≈. Without
// OnWorking there is no line and it takes no focus.
type Figure struct {
	pressable
	data      FigureData
	onWorking func()
}

var (
	_ fyne.Widget      = (*Figure)(nil)
	_ fyne.Accessible  = (*Figure)(nil)
	_ fyne.Disableable = (*Figure)(nil)
)

// NewFigure returns a figure. onWorking may be nil.
func NewFigure(data FigureData, onWorking func()) *Figure {
	f := &Figure{data: data}
	f.extend(f)
	f.SetOnWorking(onWorking)
	return f
}

// Set shows other data.
func (f *Figure) Set(data FigureData) {
	if f.data != data {
		f.data = data
		f.Refresh()
	}
}

// SetOnWorking says what opens the working; nil when there is none to show.
func (f *Figure) SetOnWorking(onWorking func()) {
	changed := (f.onWorking == nil) != (onWorking == nil)
	f.onWorking, f.press = onWorking, onWorking
	if changed {
		f.Refresh()
	}
}

// Disabled reports that there is no working, so that Tab passes by.
func (f *Figure) Disabled() bool { return f.onWorking == nil }

// Enable is not used; see SetOnWorking.
func (f *Figure) Enable() {}

// Disable is not used; see SetOnWorking.
func (f *Figure) Disable() {}

// TypedKey opens the working on F1 too.
func (f *Figure) TypedKey(ev *fyne.KeyEvent) {
	if ev.Name == fyne.KeyF1 {
		f.do()
		return
	}
	f.pressable.TypedKey(ev)
}

// AccessibilityLabel returns label, value and unit.
func (f *Figure) AccessibilityLabel() string {
	if f.data.Name != "" {
		return f.data.Name
	}
	value := f.data.Value
	if f.data.Soft {
		value = "≈ " + value
	}
	if f.data.Unit != "" {
		value += " " + f.data.Unit
	}
	return accessibleName(f.data.Label, value)
}

// AccessibilityRole is a button where the working can be opened.
func (f *Figure) AccessibilityRole() fyne.AccessibleRole {
	if f.onWorking != nil {
		return fyne.AccessibleRoleButton
	}
	return fyne.AccessibleRoleText
}

// CreateRenderer is called by the toolkit.
func (f *Figure) CreateRenderer() fyne.WidgetRenderer {
	r := &figureRenderer{
		figure: f,
		ground: canvas.NewRectangle(color.Transparent),
		label:  canvas.NewText("", nil), about: canvas.NewText("≈", nil),
		value: canvas.NewText("", nil), unit: canvas.NewText("", nil),
		line: canvas.NewRectangle(color.Transparent),
		ring: newRing(),
	}
	r.dots = canvas.NewRaster(r.drawDots)
	r.ground.CornerRadius = 3
	r.Refresh()
	return r
}

type figureRenderer struct {
	figure                    *Figure
	ground, line, ring        *canvas.Rectangle
	dots                      *canvas.Raster
	label, about, value, unit *canvas.Text
}

const (
	figurePad   float32 = 4 // around the text, for the focus ring
	figureGap   float32 = 4 // between value and unit
	underGap    float32 = 1 // between value and the line under it
	underHeight float32 = 2
)

func (r *figureRenderer) Refresh() {
	f, l := r.figure, lookOf(r.figure)
	value := scriptStrong
	switch f.data.Style {
	case FigureLead:
		value = scriptFigure
	case FigureBare, FigureStacked, FigureRow:
	}
	unit := scriptSoft
	if f.onWorking != nil {
		value = value.in(theme.ColorPen)
	}
	label := scriptCaption
	if f.data.Style == FigureRow {
		label = scriptText
	}
	l.set(r.label, f.data.Label, label)
	l.set(r.about, "≈", unit)
	l.set(r.value, f.data.Value, value)
	l.set(r.unit, f.data.Unit, unit)
	show(r.label, f.data.Style != FigureBare && f.data.Label != "")
	show(r.about, f.data.Soft)
	show(r.unit, f.data.Unit != "")
	show(r.line, f.onWorking != nil && !f.data.Soft)
	show(r.dots, f.onWorking != nil && f.data.Soft)
	fill(r.line, l.colour(theme.ColorPen))
	ground := color.Color(color.Transparent)
	if f.hovered && f.onWorking != nil {
		ground = l.colour(fynetheme.ColorNameHover)
	}
	fill(r.ground, ground)
	l.ring(r.ring, f.focused)
	r.Layout(f.Size())
	r.dots.Refresh()
}

// valueSize returns the size of ≈, value and unit together.
func (r *figureRenderer) valueSize() fyne.Size {
	size := r.value.MinSize()
	if r.about.Visible() {
		size.Width += r.about.MinSize().Width + figureGap/2
	}
	if r.unit.Visible() {
		size.Width += r.unit.MinSize().Width + figureGap
	}
	size.Height += underGap + underHeight
	return size
}

func (r *figureRenderer) MinSize() fyne.Size {
	size := r.valueSize()
	if r.label.Visible() {
		label := r.label.MinSize()
		if r.figure.data.Style == FigureRow {
			size.Width += label.Width + theme.Step2
			size.Height = max(size.Height, label.Height)
		} else {
			size.Width = max(size.Width, label.Width)
			size.Height += label.Height
		}
	}
	return size.Add(fyne.NewSize(2*figurePad, figurePad))
}

func (r *figureRenderer) Layout(size fyne.Size) {
	row := r.figure.data.Style == FigureRow
	x, y := figurePad, figurePad/2
	if r.label.Visible() {
		r.label.Move(fyne.NewPos(x, y))
		r.label.Resize(r.label.MinSize())
		if row {
			r.label.Move(fyne.NewPos(x, centred(0, size.Height-underHeight, r.label.MinSize().Height)))
		} else {
			y += r.label.MinSize().Height
		}
	}
	whole := r.valueSize()
	if row {
		x = size.Width - figurePad - whole.Width
		y = centred(0, size.Height, whole.Height)
	}
	start := x
	base := r.value.MinSize().Height
	if r.about.Visible() {
		place(r.about, x, y+baselineShift(r.value, r.about), r.about.MinSize().Width, r.about.MinSize().Height)
		x += r.about.MinSize().Width + figureGap/2
	}
	place(r.value, x, y, r.value.MinSize().Width, base)
	x += r.value.MinSize().Width
	if r.unit.Visible() {
		x += figureGap
		place(r.unit, x, y+baselineShift(r.value, r.unit), r.unit.MinSize().Width, r.unit.MinSize().Height)
		x += r.unit.MinSize().Width
	}
	place(r.line, start, y+base+underGap, x-start, theme.Hair)
	place(r.dots, start, y+base+underGap, x-start, underHeight)
	place(r.ground, 0, 0, size.Width, size.Height)
	place(r.ring, 0, 0, size.Width, size.Height)
}

// baselineShift returns how much lower small text must stand to share the
// baseline of large text.
func baselineShift(large, small *canvas.Text) float32 {
	d := fyne.CurrentApp().Driver()
	_, a := d.RenderedTextSize(large.Text, large.TextSize, large.TextStyle, large.FontSource)
	_, b := d.RenderedTextSize(small.Text, small.TextSize, small.TextStyle, small.FontSource)
	return a - b
}

// drawDots draws the pencil dots under a soft figure.
func (r *figureRenderer) drawDots(w, h int) image.Image {
	sheet := ink.NewSheet(w, h)
	scale := float64(h) / float64(underHeight)
	colour := ink.Solid(lookOf(r.figure).colour(theme.ColorPen))
	for x := scale; x < float64(w); x += 4 * scale {
		sheet.Fill(colour, ink.Disc(ink.Point{X: x, Y: float64(h) / 2}, scale*0.9))
	}
	return sheet.Image
}

func (r *figureRenderer) Objects() []fyne.CanvasObject {
	return []fyne.CanvasObject{r.ground, r.label, r.about, r.value, r.unit, r.line, r.dots, r.ring}
}

func (r *figureRenderer) Destroy() {}
