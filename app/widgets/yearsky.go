package widgets

import (
	"image"
	"math"

	"fyne.io/fyne/v2"

	"fourturn/app/theme"
	"fourturn/app/widgets/ink"
)

// skyHeight is the height of the weather over the strips, for text scale 1: a name and
// three lines of reading stand beside it.
const skyHeight = 68

// skyPainter draws the weather in pixels, in step with the strips.
type skyPainter struct {
	sheet *ink.Sheet
	look  look
	body  *yearBody
	from  float32 // left edge within the body
	scale float64
	w, h  float64
}

// drawSky makes the picture of the weather.
func (r *yearChartRenderer) drawSky(w, h int) image.Image {
	p := &skyPainter{
		sheet: ink.NewSheet(w, h), look: lookOf(r.chart), body: r.chart.body, from: r.skyFrom,
		scale: float64(h) / math.Max(1, float64(r.sky.Size().Height)), w: float64(w), h: float64(h),
	}
	if !p.body.data.Sky.there() {
		return p.sheet.Image
	}
	p.grid()
	p.band()
	p.freeze()
	return p.sheet.Image
}

func (p *skyPainter) solid(name fyne.ThemeColorName) ink.Paint {
	return ink.Solid(p.look.colour(name))
}

func (p *skyPainter) x(day float64) float64 {
	b := p.body
	return ((day-float64(b.data.Axis.First))*float64(b.zoom) - float64(p.from)) * p.scale
}

// The weather keeps off the months above and the strips below.
const skyPad = 3

func (p *skyPainter) y(v float64) float64 {
	pad := skyPad * p.scale
	return pad + (p.h-2*pad)*(1-share(v, p.body.data.Sky.Ticks))
}

func (p *skyPainter) grid() {
	hair := math.Max(1, math.Round(p.scale))
	for _, t := range p.body.data.Axis.Ticks {
		x, colour := math.Round(p.x(float64(t.Day))), theme.ColorRule
		if t.Major {
			colour = theme.ColorOutline
		}
		p.sheet.Rect(p.solid(colour), x, 0, x+hair, p.h)
	}
	for _, t := range p.body.data.Sky.Ticks {
		y := math.Round(p.y(t.Value))
		p.sheet.Rect(p.solid(theme.ColorRule), 0, y, p.w, y+hair)
	}
}

// curve returns the points of a list that are in the picture, one for each day.
func (p *skyPainter) curve(values []float64, y func(float64) float64) []ink.Point {
	const over = 2 // days beyond the edges
	zoom := float64(p.body.zoom)
	first := max(0, int(float64(p.from)/zoom)-over)
	end := min(len(values), int((float64(p.from)+p.w/p.scale)/zoom)+over)
	var points []ink.Point
	for i := first; i < end; i++ {
		points = append(points, ink.Point{X: p.x(float64(p.body.data.Axis.First+i) + 0.5), Y: y(values[i])})
	}
	return points
}

// band fills between lows and highs and draws both edges and the freezing point.
func (p *skyPainter) band() {
	sky := &p.body.data.Sky
	low, high := p.curve(sky.Low, p.y), p.curve(sky.High, p.y)
	if len(low) < 2 || len(high) < 2 {
		return
	}
	shape := append([]ink.Point{}, high...)
	for i := len(low) - 1; i >= 0; i-- {
		shape = append(shape, low[i])
	}
	p.sheet.Fill(p.solid(theme.ColorWarmWash), shape)
	line := math.Max(1, 1.5*p.scale)
	p.sheet.Stroke(p.solid(theme.ColorWarm), line, false, high...)
	p.sheet.Dash(p.solid(theme.ColorCold), line, 6*p.scale, 3*p.scale, low...)
	if y := p.y(0); y > 0 && y < p.h {
		y = math.Round(y)
		p.sheet.Rect(p.solid(theme.ColorOutline), 0, y, p.w, y+math.Max(1, math.Round(p.scale)))
	}
}

// freeze draws the odds of a freeze as a hatched area that hangs from above, like a
// cloud: the clear sky between is the season without frost.
func (p *skyPainter) freeze() {
	const deep = 0.34 // of the height, where a freeze is certain
	height := func(odds float64) float64 { return p.h * deep * math.Max(0, math.Min(odds, 1)) }
	edge := p.curve(p.body.data.Sky.Freeze, height)
	if len(edge) < 2 {
		return
	}
	shape := append([]ink.Point{{X: edge[0].X, Y: 0}}, edge...)
	shape = append(shape, ink.Point{X: edge[len(edge)-1].X, Y: 0})
	p.sheet.Fill(ink.Solid(faint(p.look.colour(theme.ColorColdWash))), shape)
	p.sheet.Fill(ink.Hatched(p.look.colour(theme.ColorCold), ink.Rising, p.scale), shape)
	p.sheet.Stroke(p.solid(theme.ColorCold), math.Max(1, p.scale), false, edge...)
}
