package widgets

import (
	"image"
	"math"

	"fyne.io/fyne/v2"

	"fourturn/app/theme"
	"fourturn/app/widgets/ink"
)

// Measures of the chart, in units of the screen.
const (
	sampleWidth float32 = 26
	oddsShare   float64 = 0.30 // height of certain freeze, as a share of the plot
)

// legendItem is one word of the legend with how its sample is drawn.
type legendItem struct {
	word   string
	sample func(p *climatePainter, x, y, w float64)
}

func (c *ClimateChart) legend() []legendItem {
	var items []legendItem
	add := func(word string, sample func(p *climatePainter, x, y, w float64)) {
		if word != "" {
			items = append(items, legendItem{word, sample})
		}
	}
	l := c.data.Legend
	add(l.High, func(p *climatePainter, x, y, w float64) {
		p.sheet.Stroke(p.solid(theme.ColorWarm), p.line(2), false, ink.Point{X: x, Y: y}, ink.Point{X: x + w, Y: y})
	})
	add(l.Low, func(p *climatePainter, x, y, w float64) {
		p.dashed(theme.ColorCold, []ink.Point{{X: x, Y: y}, {X: x + w, Y: y}})
	})
	add(l.Freeze, func(p *climatePainter, x, y, w float64) {
		h := 5 * p.scale
		p.odds([]ink.Point{{X: x, Y: y + h}, {X: x, Y: y - h}, {X: x + w, Y: y - h}, {X: x + w, Y: y + h}})
	})
	add(l.Day, func(p *climatePainter, x, y, w float64) {
		p.dotted(theme.ColorSun, []ink.Point{{X: x, Y: y}, {X: x + w, Y: y}})
	})
	return items
}

// draw makes the picture of the curves, once for each size, look and year.
func (r *climateRenderer) draw(w, h int) image.Image {
	c := r.chart
	key := climateKey{c.revision, w, h, lookOf(c)}
	if r.drawn != nil && key == r.drawnFor {
		return r.drawn
	}
	size := c.Size()
	plot := c.plot(size)
	p := &climatePainter{
		sheet: ink.NewSheet(w, h), look: key.look, data: &c.data,
		scale: float64(w) / math.Max(1, float64(plot.w)), w: float64(w),
	}
	p.h = float64(plot.h) * p.scale
	p.grid()
	p.band()
	p.freeze()
	p.lines()
	p.day()
	p.frame()
	p.seasons(float64(lookOf(c).measure("X", scriptCaption).Height))
	p.legend(c, float64(size.Height-plot.y))
	r.drawn, r.drawnFor = p.sheet.Image, key
	return r.drawn
}

// climatePainter draws the curves in pixels; the plot begins at the top left.
type climatePainter struct {
	sheet       *ink.Sheet
	look        look
	data        *ClimateData
	scale, w, h float64 // pixels per unit; size of the plot in pixels
}

func (p *climatePainter) solid(name fyne.ThemeColorName) ink.Paint {
	return ink.Solid(p.look.colour(name))
}

func (p *climatePainter) line(units float64) float64 { return math.Max(1, units*p.scale) }

func (p *climatePainter) x(day float64) float64 { return day / float64(max(1, p.data.days())) * p.w }

func (p *climatePainter) y(v float64, ticks []ChartTick) float64 {
	return p.h * (1 - share(v, ticks))
}

// curve returns the points of a list, one in the middle of each day.
func (p *climatePainter) curve(values []float64, ticks []ChartTick) []ink.Point {
	n := min(len(values), p.data.days())
	points := make([]ink.Point, 0, n+2)
	for i := range n {
		points = append(points, ink.Point{X: p.x(float64(i) + 0.5), Y: p.y(values[i], ticks)})
	}
	if n > 0 {
		points = append([]ink.Point{{X: 0, Y: points[0].Y}}, points...)
		points = append(points, ink.Point{X: p.w, Y: points[len(points)-1].Y})
	}
	return points
}

func (p *climatePainter) grid() {
	hair := math.Max(1, math.Round(p.scale))
	p.sheet.Rect(p.solid(theme.ColorSurface), 0, 0, math.Round(p.w), math.Round(p.h))
	for _, t := range p.data.Axis.Ticks {
		x := math.Round(p.x(float64(t.Day - p.data.Axis.First)))
		p.sheet.Rect(p.solid(theme.ColorRule), x, 0, x+hair, math.Round(p.h))
	}
	for _, t := range p.data.Temperatures {
		y := math.Round(p.y(t.Value, p.data.Temperatures))
		p.sheet.Rect(p.solid(theme.ColorRule), 0, y, math.Round(p.w), y+hair)
	}
}

// band fills between lows and highs.
func (p *climatePainter) band() {
	low, high := p.curve(p.data.Low, p.data.Temperatures), p.curve(p.data.High, p.data.Temperatures)
	if len(low) == 0 || len(high) == 0 {
		return
	}
	shape := append([]ink.Point{}, high...)
	for i := len(low) - 1; i >= 0; i-- {
		shape = append(shape, low[i])
	}
	p.sheet.Fill(p.solid(theme.ColorWarmWash), shape)
}

// lines draws highs, lows and the freezing point over all areas.
func (p *climatePainter) lines() {
	p.sheet.Stroke(p.solid(theme.ColorWarm), p.line(2), false, p.curve(p.data.High, p.data.Temperatures)...)
	p.dashed(theme.ColorCold, p.curve(p.data.Low, p.data.Temperatures))
	if y := p.y(0, p.data.Temperatures); y > 0 && y < p.h {
		y = math.Round(y) + 0.5
		p.sheet.Stroke(p.solid(theme.ColorOutline), p.line(1), false, ink.Point{X: 0, Y: y}, ink.Point{X: p.w, Y: y})
	}
}

func (p *climatePainter) dashed(name fyne.ThemeColorName, points []ink.Point) {
	p.sheet.Dash(p.solid(name), p.line(2), 7*p.scale, 3*p.scale, points...)
}

func (p *climatePainter) dotted(name fyne.ThemeColorName, points []ink.Point) {
	p.sheet.Dash(p.solid(name), p.line(2.2), 2.2*p.scale, 3.4*p.scale, points...)
}

// freeze draws the odds of a freeze as a hatched area that rises from the foot.
func (p *climatePainter) freeze() {
	n := min(len(p.data.FreezeOdds), p.data.days())
	if n == 0 {
		return
	}
	shape := []ink.Point{{X: 0, Y: p.h}}
	height := func(odds float64) float64 { return p.h * (1 - oddsShare*math.Max(0, math.Min(odds, 1))) }
	shape = append(shape, ink.Point{X: 0, Y: height(p.data.FreezeOdds[0])})
	for i := range n {
		shape = append(shape, ink.Point{X: p.x(float64(i) + 0.5), Y: height(p.data.FreezeOdds[i])})
	}
	shape = append(shape, ink.Point{X: p.w, Y: height(p.data.FreezeOdds[n-1])}, ink.Point{X: p.w, Y: p.h})
	p.odds(shape)
}

func (p *climatePainter) odds(shape []ink.Point) {
	p.sheet.Fill(p.solid(theme.ColorColdWash), shape)
	p.sheet.Fill(ink.Hatched(p.look.colour(theme.ColorCold), ink.Falling, p.scale), shape)
	p.sheet.Stroke(p.solid(theme.ColorCold), p.line(1.2), false, shape[1:len(shape)-1]...)
}

func (p *climatePainter) day() {
	if len(p.data.Hours) > 1 && len(p.data.DayLength) > 0 {
		p.dotted(theme.ColorSun, p.curve(p.data.DayLength, p.data.Hours))
	}
}

// frame draws the edge of the plot.
func (p *climatePainter) frame() {
	half := p.line(1) / 2
	p.sheet.Stroke(p.solid(theme.ColorOutline), p.line(1), true,
		ink.Point{X: half, Y: half}, ink.Point{X: p.w - half, Y: half},
		ink.Point{X: p.w - half, Y: p.h - half}, ink.Point{X: half, Y: p.h - half})
}

// seasons draws the strip under the plot, text units high.
func (p *climatePainter) seasons(text float64) {
	top := math.Round(p.h + float64(theme.Half)*p.scale)
	foot := math.Round(top + (text+13)*p.scale)
	hatch := math.Round(8 * p.scale)
	for _, s := range p.data.Seasons {
		x0 := math.Round(math.Max(0, p.x(float64(s.Start-p.data.Axis.First))))
		x1 := math.Round(math.Min(p.w, p.x(float64(s.End-p.data.Axis.First))))
		if x1 <= x0 {
			continue
		}
		edge := p.look.colour(theme.CategoryEdge(s.Category))
		p.sheet.Rect(p.solid(theme.CategoryWash(s.Category)), x0, top, x1, foot)
		p.sheet.Rect(ink.Hatched(edge, PatternOf(s.Category), p.scale), x0, foot-hatch, x1, foot)
		half := p.line(1.2) / 2
		p.sheet.Stroke(ink.Solid(edge), p.line(1.2), true, ink.Point{X: x0 + half, Y: top + half},
			ink.Point{X: x1 - half, Y: top + half}, ink.Point{X: x1 - half, Y: foot - half}, ink.Point{X: x0 + half, Y: foot - half})
	}
}

// legend draws a sample before each word.
func (p *climatePainter) legend(c *ClimateChart, height float64) {
	l := p.look
	text := float64(l.measure("X", scriptCaption).Height)
	x, right := 0.0, float64(c.Size().Width-c.plot(c.Size()).x)
	for _, item := range c.legend() {
		width := float64(l.measure(item.word, scriptCaption).Width)
		if x+float64(sampleWidth+theme.Step)+width > right {
			return
		}
		item.sample(p, x*p.scale, (height-text/2)*p.scale, float64(sampleWidth-theme.Half)*p.scale)
		x += float64(sampleWidth+theme.Step) + width + float64(theme.Step2)
	}
}
