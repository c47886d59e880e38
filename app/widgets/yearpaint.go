package widgets

import (
	"math"

	"fyne.io/fyne/v2"
	fynetheme "fyne.io/fyne/v2/theme"

	"fourturn/app/theme"
	"fourturn/app/widgets/ink"
)

// Measures of a row, in units of the screen.
const (
	stripTop   = 5.0  // above the strip
	stripFoot  = 18.0 // the ground under it, for good days, brackets and marks
	plantBand  = 13.0 // the foot of the strip, where its plants stand
	hatchBand  = 7.0  // the part of it behind them that is hatched by kind
	leastStand = 5.0  // what is seen of a planting that is past
	tagWidth   = 9.0  // the label that is a change-out
	tagHeight  = 12.0
	markRadius = 2.2
	goodTop    = 2.0 // under the ground line
	goodFoot   = 8.0
	markMiddle = 12.5
)

// rowPainter draws one row in pixels.
type rowPainter struct {
	sheet *ink.Sheet
	look  look
	view  *yearRowView
	scale float64
	w, h  float64
}

func (p *rowPainter) paint() {
	p.ground()
	for i := range p.view.row.Segments {
		p.segment(&p.view.row.Segments[i])
	}
	p.soil()
	for _, g := range p.view.row.Good {
		p.good(g)
	}
	for i := range p.view.row.Segments {
		p.spread(&p.view.row.Segments[i])
	}
	for i := range p.view.row.Segments {
		p.changeOut(i)
	}
	for _, m := range p.view.row.Marks {
		p.mark(m)
	}
}

// x returns the pixel of the start of a day, on a whole pixel.
func (p *rowPainter) x(day int) float64 {
	return math.Round(float64(p.view.body.x(day)-p.view.from) * p.scale)
}

// fine returns the pixel of a day without rounding, for curves.
func (p *rowPainter) fine(day float64) float64 {
	b := p.view.body
	return ((day-float64(b.data.Axis.First))*float64(b.zoom) - float64(p.view.from)) * p.scale
}

func (p *rowPainter) solid(name fyne.ThemeColorName) ink.Paint {
	return ink.Solid(p.look.colour(name))
}

func (p *rowPainter) line(units float64) float64 { return math.Max(1, math.Round(units*p.scale)) }

// foot returns the pixel of the ground line.
func (p *rowPainter) foot() float64 { return math.Round(p.h - stripFoot*p.scale) }

func (p *rowPainter) top() float64 { return math.Round(stripTop * p.scale) }

// inSight reports whether something between two pixels can be seen.
func (p *rowPainter) inSight(x0, x1 float64) bool {
	const over = 12 // what is drawn beside a day
	return x1 > x0 && x1 > -over*p.scale && x0 < p.w+over*p.scale
}

// ground draws the lines of the calendar.
func (p *rowPainter) ground() {
	hair := p.line(1)
	for _, t := range p.view.body.weeks() {
		x := p.x(t.Day)
		p.sheet.Dash(p.solid(theme.ColorRule), hair, hair, 4*p.scale, ink.Point{X: x + hair/2, Y: 0}, ink.Point{X: x + hair/2, Y: p.h})
	}
	for _, t := range p.view.body.data.Axis.Ticks {
		x, colour := p.x(t.Day), theme.ColorRule
		if t.Major {
			colour = theme.ColorOutline
		}
		p.sheet.Rect(p.solid(colour), x, 0, x+hair, p.h)
	}
}

// soil draws the ground line on which plantings stand; where nothing stands it is
// broken.
func (p *rowPainter) soil() {
	foot, line := p.foot(), p.line(1.5)
	bare := p.solid(theme.ColorOutline)
	p.sheet.Dash(bare, p.line(1), 2*p.scale, 4*p.scale, ink.Point{X: 0, Y: foot + 0.5}, ink.Point{X: p.w, Y: foot + 0.5})
	for i := range p.view.row.Segments {
		s := &p.view.row.Segments[i]
		x0, x1 := math.Max(0, p.x(s.Start)), math.Min(p.w, p.x(s.End))
		if x1 > x0 && !s.Ghost {
			p.sheet.Rect(p.solid(theme.ColorSoilMark), x0, foot, x1, foot+line)
		}
	}
}

// segment draws one planting as high as it looks good.
func (p *rowPainter) segment(s *YearSegment) {
	x0, x1 := p.x(s.Start), p.x(s.End)
	if !p.inSight(x0, x1) {
		return
	}
	edge := p.look.colour(theme.CategoryEdge(s.Category))
	crest := p.crest(s)
	foot := p.foot()
	shape := append(append([]ink.Point{{X: crest[0].X, Y: foot}}, crest...), ink.Point{X: crest[len(crest)-1].X, Y: foot})
	line := math.Max(1, 1.2*p.scale)
	if s.Ghost {
		p.sheet.Dash(ink.Solid(edge), line, 4*p.scale, 3*p.scale, shape...)
		p.plants(s)
		return
	}
	p.sheet.Fill(p.solid(theme.CategoryWash(s.Category)), shape)
	p.hatch(s, crest)
	if len(s.Profile) > 0 { // it may run through the label: its sides firm, its crest light
		p.sheet.Stroke(ink.Solid(faint(edge)), line, false, crest...)
		p.sheet.Stroke(ink.Solid(edge), line, false, shape[:2]...)
	} else {
		p.sheet.Stroke(ink.Solid(edge), line, false, shape...)
	}
	p.plants(s)
}

// crest returns the upper edge of a planting within what is drawn.
func (p *rowPainter) crest(s *YearSegment) []ink.Point {
	const over = 10 // days beyond the edge of the picture, so that its ends are not seen
	b := p.view.body
	day := func(x float64) int {
		return int(x/p.scale/float64(b.zoom)+float64(p.view.from/b.zoom)) + b.data.Axis.First
	}
	from, to := max(s.Start, day(0)-over), min(s.End, day(p.w)+over)
	foot := p.foot()
	high, least := foot-p.top(), leastStand*p.scale
	if len(s.Profile) == 0 {
		corner := math.Min(6*p.scale, (p.fine(float64(s.End))-p.fine(float64(s.Start)))/2)
		x0, x1 := p.fine(float64(from)), p.fine(float64(to))
		return []ink.Point{{X: x0, Y: foot - high + corner}, {X: x0 + corner, Y: foot - high}, {X: x1 - corner, Y: foot - high}, {X: x1, Y: foot - high + corner}}
	}
	at := func(d int) float64 {
		v := float64(s.Profile[max(0, min(d-s.Start, len(s.Profile)-1))])
		return foot - math.Max(least, high*math.Max(0, math.Min(v, 1)))
	}
	points := make([]ink.Point, 0, to-from+2)
	points = append(points, ink.Point{X: p.fine(float64(from)), Y: at(from)})
	for d := from; d < to; d++ {
		points = append(points, ink.Point{X: p.fine(float64(d) + 0.5), Y: at(d)})
	}
	return append(points, ink.Point{X: p.fine(float64(to)), Y: at(to - 1)})
}

// hatch draws the marks of the kind along the foot, under the crest.
func (p *rowPainter) hatch(s *YearSegment, crest []ink.Point) {
	foot := p.foot()
	band := foot - math.Round(hatchBand*p.scale)
	shape := make([]ink.Point, 0, len(crest)+2)
	shape = append(shape, ink.Point{X: crest[0].X, Y: foot})
	for _, c := range crest {
		shape = append(shape, ink.Point{X: c.X, Y: math.Max(c.Y, band)})
	}
	shape = append(shape, ink.Point{X: crest[len(crest)-1].X, Y: foot})
	p.sheet.Fill(ink.Hatched(p.look.colour(theme.CategoryEdge(s.Category)), PatternOf(s.Category), p.scale), shape)
}

// good shades the days that suit a change-out best.
func (p *rowPainter) good(g YearRange) {
	x0, x1 := p.x(g.Start), math.Max(p.x(g.End), p.x(g.Start)+p.line(2))
	if !p.inSight(x0, x1) {
		return
	}
	y0, y1 := p.foot()+p.line(goodTop), p.foot()+math.Round(goodFoot*p.scale)
	p.sheet.Rect(p.solid(theme.ColorGoodWash), x0, y0, x1, y1)
	half := 0.5 * p.line(1)
	p.sheet.Stroke(p.solid(theme.ColorGood), p.line(1), true,
		ink.Point{X: x0 + half, Y: y0 + half}, ink.Point{X: x1 - half, Y: y0 + half},
		ink.Point{X: x1 - half, Y: y1 - half}, ink.Point{X: x0 + half, Y: y1 - half})
}

// spread draws a bracket from the early to the late day of a start.
func (p *rowPainter) spread(s *YearSegment) {
	x0, x1 := p.x(s.Early), p.x(s.Late)
	if s.Early == s.Late || !p.inSight(x0, x1) {
		return
	}
	line := p.line(1)
	y0, y1 := p.foot()+p.line(goodTop), p.foot()+math.Round(goodFoot*p.scale)
	middle := math.Round((y0 + y1) / 2)
	paint := p.solid(theme.ColorInkSoft)
	p.sheet.Rect(paint, x0, y0, x0+line, y1)
	p.sheet.Rect(paint, x1-line, y0, x1, y1)
	p.sheet.Rect(paint, x0, middle, x1, middle+line)
}

// changeOut draws the label that is stuck into the ground where a planting begins: a
// knot where that has happened, filled where the day is pinned.
func (p *rowPainter) changeOut(i int) {
	s := &p.view.row.Segments[i]
	axis := p.view.body.data.Axis
	x, foot := p.x(s.Start), p.foot()
	if s.Start <= axis.First || s.Start >= axis.Last || !p.inSight(x, x+1) {
		return
	}
	edge := ink.Solid(p.look.colour(theme.CategoryEdge(s.Category)))
	line := p.line(1.2)
	x += line / 2
	if s.Fixed {
		p.sheet.Fill(edge, ink.Disc(ink.Point{X: x, Y: foot}, 3.2*p.scale))
		return
	}
	top := math.Round(p.scale)
	p.sheet.Stroke(edge, line, false, ink.Point{X: x, Y: top}, ink.Point{X: x, Y: foot + 2*p.scale})
	half, shoulder := tagWidth/2*p.scale, top+(tagHeight-4)*p.scale
	tag := []ink.Point{{X: x - half, Y: top}, {X: x + half, Y: top}, {X: x + half, Y: shoulder}, {X: x, Y: top + tagHeight*p.scale}, {X: x - half, Y: shoulder}}
	fillIn := p.solid(theme.ColorSurface)
	if s.Pinned {
		fillIn = edge
	}
	p.sheet.Fill(fillIn, tag)
	p.sheet.Stroke(edge, line, true, tag...)
	if s.Pinned { // the head of the pin
		p.sheet.Fill(p.solid(theme.ColorSurface), ink.Disc(ink.Point{X: x, Y: top + (tagHeight/2-1)*p.scale}, 1.8*p.scale))
	}
}

func (p *rowPainter) mark(m YearMark) {
	r := markRadius * p.scale
	c := ink.Point{X: p.fine(float64(m.Day) + 0.5), Y: p.foot() + markMiddle*p.scale}
	if !p.inSight(c.X-r, c.X+r) {
		return
	}
	paint := p.solid(theme.ColorInkSoft)
	switch m.Kind {
	case MarkDisc:
		p.sheet.Fill(paint, ink.Disc(c, r))
	case MarkRing:
		p.sheet.Fill(paint, ink.Disc(c, r))
		p.sheet.Fill(p.solid(fynetheme.ColorNameBackground), ink.Disc(c, r-1.1*p.scale))
	case MarkSquare:
		p.sheet.Rect(paint, math.Round(c.X-r), math.Round(c.Y-r), math.Round(c.X+r), math.Round(c.Y+r))
	case MarkDiamond:
		p.sheet.Fill(paint, []ink.Point{{X: c.X, Y: c.Y - r*1.3}, {X: c.X + r*1.3, Y: c.Y}, {X: c.X, Y: c.Y + r*1.3}, {X: c.X - r*1.3, Y: c.Y}})
	}
}
