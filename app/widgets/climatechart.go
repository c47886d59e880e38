package widgets

import (
	"image"
	"image/color"
	"math"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/driver/desktop"
	fynetheme "fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"fourturn/app/theme"
)

// ClimateChart draws the normal year of a site: the band between daily lows and
// highs, the odds of a freeze, the length of the day, and the seasons below. A
// reading line follows the pointer or the arrow keys (Page Up and Page Down go by
// a month, Home and End to the ends).
type ClimateChart struct {
	widget.BaseWidget

	// OnRead is called when the reading line comes to another day.
	OnRead func(day int)

	data    ClimateData
	day     int
	reading bool // the reading line shows
	focused bool
}

var (
	_ fyne.Widget        = (*ClimateChart)(nil)
	_ fyne.Focusable     = (*ClimateChart)(nil)
	_ fyne.Tappable      = (*ClimateChart)(nil)
	_ desktop.Hoverable  = (*ClimateChart)(nil)
	_ desktop.Cursorable = (*ClimateChart)(nil)
	_ fyne.Accessible    = (*ClimateChart)(nil)
)

// NewClimateChart returns a chart whose reading line begins at today.
func NewClimateChart(data ClimateData) *ClimateChart {
	c := &ClimateChart{data: data, day: data.Axis.Today}
	c.ExtendBaseWidget(c)
	return c
}

// Set shows another year.
func (c *ClimateChart) Set(data ClimateData) {
	c.data = data
	c.day = c.within(c.day)
	c.Refresh()
}

// Read puts the reading line on a day.
func (c *ClimateChart) Read(day int) {
	day = c.within(day)
	if c.reading && day == c.day {
		return
	}
	c.day, c.reading = day, true
	c.Refresh()
	if c.OnRead != nil {
		c.OnRead(day)
	}
}

// Day returns the day of the reading line.
func (c *ClimateChart) Day() int { return c.day }

func (c *ClimateChart) within(day int) int {
	return max(c.data.Axis.First, min(day, c.data.Axis.Last-1))
}

// Tapped takes the focus and reads the day under the pointer.
func (c *ClimateChart) Tapped(ev *fyne.PointEvent) {
	if cv := fyne.CurrentApp().Driver().CanvasForObject(c); cv != nil {
		cv.Focus(c)
	}
	c.readAt(ev.Position)
}

func (c *ClimateChart) readAt(p fyne.Position) {
	plot := c.plot(c.Size())
	if plot.w <= 0 || c.data.days() == 0 {
		return
	}
	c.Read(c.data.Axis.First + int(math.Floor(float64((p.X-plot.x)/plot.w)*float64(c.data.days()))))
}

// MouseIn reads the day under the pointer.
func (c *ClimateChart) MouseIn(ev *desktop.MouseEvent) { c.MouseMoved(ev) }

// MouseMoved reads the day under the pointer.
func (c *ClimateChart) MouseMoved(ev *desktop.MouseEvent) {
	if plot := c.plot(c.Size()); ev.Position.X >= plot.x && ev.Position.X < plot.x+plot.w {
		c.readAt(ev.Position)
	}
}

// MouseOut takes the reading line away, unless the keys have it.
func (c *ClimateChart) MouseOut() { c.hideUnlessFocused() }

func (c *ClimateChart) hideUnlessFocused() {
	if c.reading != c.focused {
		c.reading = c.focused
		c.Refresh()
	}
}

// Cursor is a cross, as for reading off a scale.
func (c *ClimateChart) Cursor() desktop.Cursor { return desktop.CrosshairCursor }

// FocusGained shows the reading line.
func (c *ClimateChart) FocusGained() {
	c.focused = true
	c.Read(c.day)
	c.Refresh()
}

// FocusLost hides the reading line.
func (c *ClimateChart) FocusLost() {
	c.focused = false
	c.hideUnlessFocused()
	c.Refresh()
}

// TypedRune is not used.
func (c *ClimateChart) TypedRune(rune) {}

// TypedKey moves the reading line.
func (c *ClimateChart) TypedKey(ev *fyne.KeyEvent) {
	switch ev.Name {
	case fyne.KeyLeft:
		c.Read(c.day - 1)
	case fyne.KeyRight:
		c.Read(c.day + 1)
	case fyne.KeyPageUp:
		c.Read(c.day - 30)
	case fyne.KeyPageDown:
		c.Read(c.day + 30)
	case fyne.KeyHome:
		c.Read(c.data.Axis.First)
	case fyne.KeyEnd:
		c.Read(c.data.Axis.Last - 1)
	case fyne.KeyEscape:
		escape(c)
	}
}

// AccessibilityLabel returns the name and what the reading line says.
func (c *ClimateChart) AccessibilityLabel() string {
	parts := []string{c.data.Name}
	if c.reading && c.data.Reading != nil {
		heading, lines := c.data.Reading(c.day)
		parts = append(append(parts, heading), lines...)
	}
	return accessibleName(parts...)
}

// AccessibilityRole is text.
func (c *ClimateChart) AccessibilityRole() fyne.AccessibleRole { return fyne.AccessibleRoleText }

// plot returns where the curves are drawn.
func (c *ClimateChart) plot(size fyne.Size) rect {
	l := lookOf(c)
	text := l.measure("X", scriptCaption).Height
	side := func(ticks []ChartTick) float32 {
		w := float32(0)
		for _, t := range ticks {
			w = max(w, l.measure(t.Label, scriptCaption).Width)
		}
		return w + theme.Step
	}
	left, right := side(c.data.Temperatures), side(c.data.Hours)
	top, foot := text+theme.Half, theme.Half
	if len(c.data.Seasons) > 0 {
		foot += text + theme.Step2 + theme.Half
	}
	if c.data.Legend != (ClimateLegend{}) {
		foot += text + theme.Step
	}
	return rect{left, top, size.Width - left - right, size.Height - top - foot}
}

// CreateRenderer is called by the toolkit.
func (c *ClimateChart) CreateRenderer() fyne.WidgetRenderer {
	r := &climateRenderer{
		chart: c, line: canvas.NewRectangle(color.Transparent), card: canvas.NewRectangle(color.Transparent),
		today: canvas.NewRectangle(color.Transparent), ring: newRing(),
	}
	r.card.CornerRadius, r.card.StrokeWidth = 3, theme.Hair
	r.raster = canvas.NewRaster(r.draw)
	r.Refresh()
	return r
}

type climateRenderer struct {
	chart             *ClimateChart
	raster            *canvas.Raster
	line, today, card *canvas.Rectangle
	ring              *canvas.Rectangle
	texts             []*canvas.Text // labels, then the reading
	used              int
	drawn             image.Image
	drawnFor          climateKey
}

// climateKey says for what the picture was drawn; the reading line does not
// change it.
type climateKey struct {
	data    *float64
	days    int
	w, h    int
	look    look
	seasons int
}

func (r *climateRenderer) MinSize() fyne.Size { return fyne.NewSize(320, 200) }

func (r *climateRenderer) Layout(size fyne.Size) {
	plot := r.chart.plot(size)
	below := size.Height - plot.y
	place(r.raster, plot.x, plot.y, plot.w, below)
	place(r.ring, 0, 0, size.Width, size.Height)
	r.write(size, plot)
}

func (r *climateRenderer) Refresh() {
	l := lookOf(r.chart)
	l.ring(r.ring, r.chart.focused)
	r.Layout(r.chart.Size())
	r.raster.Refresh()
}

// text returns the next text object.
func (r *climateRenderer) text(l look, s string, kind script, x, y float32) *canvas.Text {
	if r.used == len(r.texts) {
		r.texts = append(r.texts, canvas.NewText("", nil))
	}
	t := r.texts[r.used]
	r.used++
	l.set(t, s, kind)
	t.Move(fyne.NewPos(x, y))
	t.Resize(t.MinSize())
	show(t, true)
	return t
}

// write places all labels, today and the reading line.
func (r *climateRenderer) write(size fyne.Size, plot rect) {
	c, l := r.chart, lookOf(r.chart)
	d := c.data
	r.used = 0
	text := l.measure("X", scriptCaption).Height
	for _, t := range d.Temperatures {
		w := l.measure(t.Label, scriptCaption).Width
		r.text(l, t.Label, scriptCaption, plot.x-theme.Half-w, plot.y+plot.h*float32(1-share(t.Value, d.Temperatures))-text/2)
	}
	for _, t := range d.Hours {
		r.text(l, t.Label, scriptCaption, plot.x+plot.w+theme.Half, plot.y+plot.h*float32(1-share(t.Value, d.Hours))-text/2)
	}
	for i, t := range d.Axis.Ticks {
		x := plot.x + c.x(t.Day, plot)
		next := plot.x + plot.w
		if i+1 < len(d.Axis.Ticks) {
			next = plot.x + c.x(d.Axis.Ticks[i+1].Day, plot)
		}
		if l.measure(t.Label, scriptCaption).Width+theme.Half <= next-x {
			r.text(l, t.Label, scriptCaption, x+theme.Half/2, 0)
		}
	}
	r.writeSeasons(l, plot, text)
	r.writeLegend(l, size, plot, text)
	axis := d.Axis
	show(r.today, axis.TodayLabel != "" && axis.Today >= axis.First && axis.Today < axis.Last)
	fill(r.today, l.colour(theme.ColorToday))
	place(r.today, plot.x+c.x(axis.Today, plot)-1, plot.y-theme.Half, 2, plot.h+theme.Half)
	r.writeReading(l, plot, text)
	for _, t := range r.texts[r.used:] {
		show(t, false)
	}
}

// x returns how far a day lies from the left of the plot.
func (c *ClimateChart) x(day int, plot rect) float32 {
	if c.data.days() == 0 {
		return 0
	}
	return float32(day-c.data.Axis.First) / float32(c.data.days()) * plot.w
}

func (r *climateRenderer) writeSeasons(l look, plot rect, text float32) {
	for _, s := range r.chart.data.Seasons {
		x0, x1 := max(0, r.chart.x(s.Start, plot)), min(plot.w, r.chart.x(s.End, plot))
		label := l.fit(s.Label, scriptCaption, x1-x0-theme.Step)
		if len([]rune(label)) < 3 {
			continue
		}
		r.text(l, label, scriptCaption.in(fynetheme.ColorNameForeground), plot.x+x0+theme.Half+1, plot.y+plot.h+theme.Half+2)
	}
}

// writeLegend puts the words beside the samples that the raster draws.
func (r *climateRenderer) writeLegend(l look, size fyne.Size, plot rect, text float32) {
	x := plot.x
	for _, item := range r.chart.legend() {
		width := l.measure(item.word, scriptCaption).Width
		if x+sampleWidth+theme.Step+width > size.Width {
			return
		}
		r.text(l, item.word, scriptCaption, x+sampleWidth+theme.Half, size.Height-text)
		x += sampleWidth + theme.Step + width + theme.Step2
	}
}

// writeReading shows the reading line and a card with what it says.
func (r *climateRenderer) writeReading(l look, plot rect, text float32) {
	c := r.chart
	show(r.line, c.reading)
	shown := c.reading && c.data.Reading != nil
	show(r.card, shown)
	x := plot.x + c.x(c.day, plot)
	fill(r.line, l.colour(theme.ColorPen))
	place(r.line, x-0.5, plot.y, 1, plot.h)
	if !shown {
		return
	}
	heading, lines := c.data.Reading(c.day)
	width := l.measure(heading, scriptStrong).Width
	for _, line := range lines {
		width = max(width, l.measure(line, scriptCaption).Width)
	}
	width += theme.Step2
	head := l.measure("X", scriptStrong).Height
	height := head + float32(len(lines))*text + theme.Step
	left := x + theme.Step
	if left+width > plot.x+plot.w {
		left = x - theme.Step - width
	}
	r.card.FillColor, r.card.StrokeColor = l.colour(theme.ColorSurface), l.colour(theme.ColorPen)
	r.card.Refresh()
	place(r.card, left, plot.y+theme.Half, width, height)
	y := plot.y + theme.Half + theme.Half
	r.text(l, heading, scriptStrong, left+theme.Step, y)
	y += head
	for _, line := range lines {
		r.text(l, line, scriptCaption, left+theme.Step, y)
		y += text
	}
}

func (r *climateRenderer) Objects() []fyne.CanvasObject {
	objects := []fyne.CanvasObject{r.raster, r.today, r.line}
	// The card lies under the texts of the reading, which come last.
	objects = append(objects, r.card)
	for _, t := range r.texts {
		objects = append(objects, t)
	}
	return append(objects, r.ring)
}

func (r *climateRenderer) Destroy() {}
