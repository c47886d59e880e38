package widgets

import (
	"image"
	"image/color"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	fynetheme "fyne.io/fyne/v2/theme"

	"fourturn/app/theme"
)

// CreateRenderer is called by the toolkit.
func (c *ClimateChart) CreateRenderer() fyne.WidgetRenderer {
	r := &climateRenderer{
		chart: c, line: canvas.NewRectangle(color.Transparent), card: canvas.NewRectangle(color.Transparent),
		today: canvas.NewRectangle(color.Transparent), level: canvas.NewRectangle(color.Transparent), ring: newRing(),
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
	level             *canvas.Rectangle // the second reading line
	ring              *canvas.Rectangle
	texts             []*canvas.Text // labels, then the reading
	used              int
	drawn             image.Image
	drawnFor          climateKey
}

// climateKey says for what the picture was drawn; the reading line does not
// change it.
type climateKey struct {
	revision int // of the data
	w, h     int // in pixels
	look     look
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
	c, d := r.chart, r.chart.data
	show(r.line, c.reading)
	shown := c.reading && c.data.Reading != nil
	show(r.card, shown)
	x := plot.x + c.x(c.day, plot)
	fill(r.line, l.colour(theme.ColorPen))
	place(r.line, x-0.5, plot.y, 1, plot.h)
	leveled := c.leveled && d.ReadingAt != nil
	show(r.level, leveled)
	fill(r.level, l.colour(theme.ColorPen))
	place(r.level, plot.x, plot.y+plot.h*float32(1-share(c.level, d.Temperatures))-0.5, plot.w, 1)
	if !shown {
		return
	}
	heading, lines := d.Reading(c.day)
	if leveled {
		lines = append(lines, d.ReadingAt(c.level)...)
	}
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
	objects := []fyne.CanvasObject{r.raster, r.today, r.level, r.line}
	// The card lies under the texts of the reading, which come last.
	objects = append(objects, r.card)
	for _, t := range r.texts {
		objects = append(objects, t)
	}
	return append(objects, r.ring)
}

func (r *climateRenderer) Destroy() {}
