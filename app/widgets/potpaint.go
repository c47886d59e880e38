package widgets

import (
	"math"

	"fyne.io/fyne/v2"
	fynetheme "fyne.io/fyne/v2/theme"

	"fourturn/app/theme"
	"fourturn/app/widgets/ink"
)

// potPainter draws a pot in pixels.
type potPainter struct {
	sheet  *ink.Sheet
	look   look
	at     potSheet
	pixels float64 // per unit of the screen
}

func (p *potPainter) solid(name fyne.ThemeColorName) ink.Paint {
	return ink.Solid(p.look.colour(name))
}

func (p *potPainter) hatch(name fyne.ThemeColorName, pattern Pattern) ink.Paint {
	return ink.Hatched(p.look.colour(name), pattern, p.pixels)
}

// line returns a stroke width in pixels, never thinner than one.
func (p *potPainter) line(units float64) float64 { return math.Max(1, units*p.pixels) }

func (p *potPainter) pixel(u ink.Point) ink.Point {
	return ink.Point{X: u.X * p.pixels, Y: u.Y * p.pixels}
}

func (p *potPainter) shape(v PotView, metres []Metres) []ink.Point {
	points := make([]ink.Point, len(metres))
	for i, m := range metres {
		points[i] = p.pixel(p.at.point(v, m))
	}
	return points
}

func (p *potPainter) side(s *PotSide) {
	if !p.at.has(SideView) {
		return
	}
	p.ground()
	for _, plant := range s.Plants {
		if plant.Habit != Trailing {
			p.plant(s, plant)
		}
	}
	if p.tooSmall(s.Outer, s.Cells) {
		p.block(SideView, spread(s.Outer, s.Cells))
	} else {
		for _, at := range cellsOf(s.Cells) {
			p.cutOpen(s, at)
		}
	}
	for _, plant := range s.Plants {
		if plant.Habit == Trailing {
			p.plant(s, plant)
		}
	}
}

// cellsOf returns where to draw a cell: once, unless there are several.
func cellsOf(cells []Metres) []Metres {
	if len(cells) == 0 {
		return []Metres{{}}
	}
	return cells
}

// leastCell is how wide a cell must be, in units, for its walls to be seen: smaller ones
// would be all outline, and thousands of them slow to draw.
const leastCell = 6

func (p *potPainter) tooSmall(outer, cells []Metres) bool {
	return len(cells) > 1 && boxOf(outer).width()*p.at.scale < leastCell
}

// block draws many small cells as one.
func (p *potPainter) block(v PotView, b box) {
	all := []Metres{{b.x0, b.y0}, {b.x1, b.y0}, {b.x1, b.y1}, {b.x0, b.y1}}
	shape := p.shape(v, all)
	p.sheet.Fill(p.solid(theme.ColorSoil), shape)
	p.sheet.Fill(p.hatch(theme.ColorSoilMark, ink.Dots), shape)
	p.outlines(v, all, all)
}

// cutOpen draws one cell from the side: wall, what is in it, and a liner that holds the
// mix instead.
func (p *potPainter) cutOpen(s *PotSide, at Metres) {
	outer, inner := moved(s.Outer, at), moved(s.Inner, at)
	holder := inner
	p.wall(SideView, outer, inner)
	p.filling(inner, s.LayerFrom, s.LayerTo, theme.ColorSurface, theme.ColorOutline, ink.Crossed)
	p.filling(inner, s.WaterFrom, s.WaterTo, theme.ColorWater, theme.ColorWaterMark, ink.Waves)
	if len(s.Liner) > 0 {
		holder = moved(s.LinerInner, at)
		p.wall(SideView, moved(s.Liner, at), holder)
	}
	p.filling(holder, s.MixFrom, s.MixTo, theme.ColorSoil, theme.ColorSoilMark, ink.Dots)
	if s.Shelf > 0 {
		p.level(inner, s.Shelf, true, fynetheme.ColorNameForeground)
	}
	if len(s.Liner) > 0 {
		p.sheet.Stroke(p.solid(theme.ColorOutline), p.line(1), true, p.shape(SideView, holder)...)
		p.sheet.Stroke(p.solid(fynetheme.ColorNameForeground), p.line(1), true, p.shape(SideView, moved(s.Liner, at))...)
	}
	p.outlines(SideView, outer, inner)
}

// filling paints what lies between two heights of a hollow, with a line on top.
func (p *potPainter) filling(hollow []Metres, from, to float64, colour, mark fyne.ThemeColorName, pattern ink.Pattern) {
	if to <= from {
		return
	}
	shape := p.shape(SideView, between(hollow, from, to))
	if len(shape) == 0 {
		return
	}
	p.sheet.Fill(p.solid(colour), shape)
	p.sheet.Fill(p.hatch(mark, pattern), shape)
	p.level(hollow, to, true, mark)
}

// ground draws the line on which the pot stands.
func (p *potPainter) ground() {
	place := p.at.views[SideView]
	y := p.at.point(SideView, Metres{0, place.outer.y0}).Y + 0.75
	a := p.at.point(SideView, Metres{place.outer.x0, 0}).X - 14
	b := p.at.point(SideView, Metres{place.outer.x1, 0}).X + 14
	p.sheet.Stroke(p.solid(theme.ColorOutline), p.line(1), false, p.pixel(ink.Point{X: a, Y: y}), p.pixel(ink.Point{X: b, Y: y}))
}

// wall fills what lies between the outline and the hollow.
func (p *potPainter) wall(v PotView, outer, inner []Metres) {
	hollow := p.shape(v, turned(inner, false))
	p.sheet.Fill(p.solid(theme.ColorSurface), p.shape(v, turned(outer, true)))
	p.sheet.Fill(p.hatch(theme.ColorOutline, ink.Rising), p.shape(v, turned(outer, true)), hollow)
}

func (p *potPainter) outlines(v PotView, outer, inner []Metres) {
	p.sheet.Stroke(p.solid(theme.ColorOutline), p.line(1), true, p.shape(v, inner)...)
	p.sheet.Stroke(p.solid(fynetheme.ColorNameForeground), p.line(1.5), true, p.shape(v, outer)...)
}

// level draws the top of a filling across the hollow.
func (p *potPainter) level(inner []Metres, y float64, filled bool, colour fyne.ThemeColorName) {
	if !filled {
		return
	}
	x0, x1 := math.Inf(1), math.Inf(-1)
	for _, m := range between(inner, y-1e-6, y+1e-6) {
		x0, x1 = math.Min(x0, m.X), math.Max(x1, m.X)
	}
	if x0 >= x1 {
		return
	}
	a, b := p.pixel(p.at.point(SideView, Metres{x0, y})), p.pixel(p.at.point(SideView, Metres{x1, y}))
	p.sheet.Stroke(p.solid(colour), p.line(1.5), false, a, b)
}

func (p *potPainter) plan(plan *PotPlan) {
	if !p.at.has(PlanView) {
		return
	}
	if p.tooSmall(plan.Outer, plan.Cells) {
		p.block(PlanView, spread(plan.Outer, plan.Cells))
		return
	}
	for _, at := range cellsOf(plan.Cells) {
		outer, inner := moved(plan.Outer, at), moved(plan.Inner, at)
		p.wall(PlanView, outer, inner)
		hollow := p.shape(PlanView, inner)
		p.sheet.Fill(p.solid(theme.ColorSoil), hollow)
		p.sheet.Fill(p.hatch(theme.ColorSoilMark, ink.Dots), hollow)
		p.outlines(PlanView, outer, inner)
	}
	for _, plant := range plan.Plants {
		p.fromAbove(plant)
	}
}

// dimension draws a dimension line with slanting ticks and thin guide lines.
func (p *potPainter) dimension(d PotDimension) {
	from, to := p.at.dimension(d)
	a, b := p.pixel(from), p.pixel(to)
	ink1 := p.solid(theme.ColorOutline)
	p.sheet.Stroke(ink1, p.line(1), false, a, b)
	tick := 3 * p.pixels
	for _, end := range []ink.Point{a, b} {
		p.sheet.Stroke(p.solid(fynetheme.ColorNameForeground), p.line(1.2), false,
			ink.Point{X: end.X - tick, Y: end.Y + tick}, ink.Point{X: end.X + tick, Y: end.Y - tick})
	}
	for _, guide := range [][2]ink.Point{
		{p.pixel(p.at.point(d.View, d.From)), a},
		{p.pixel(p.at.point(d.View, d.To)), b},
	} {
		p.sheet.Dash(ink1, p.line(0.75), 2*p.pixels, 2*p.pixels, guide[0], guide[1])
	}
}
