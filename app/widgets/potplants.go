package widgets

import (
	"math"

	"fourturn/app/theme"
	"fourturn/app/widgets/ink"
	"fourturn/app/widgets/plantdraw"
)

// plant draws a plant from the side: not the species, only its habit, width and
// height, as one would sketch it.
func (p *potPainter) plant(s *PotSide, plant PotPlant) {
	if plant.Plant != nil {
		p.drawn(s, plant)
		return
	}
	switch plant.Habit {
	case Upright:
		p.upright(s, plant)
	case Trailing:
		p.trailing(s, plant)
	case Mounding:
		p.mound(s, plant)
	}
}

// drawn draws the plant itself.
func (p *potPainter) drawn(s *PotSide, plant PotPlant) {
	left, right := s.opening()
	plantdraw.Side(p.sheet, plant.Plant, plantdraw.Growth{
		Foot: p.pixel(p.at.point(SideView, Metres{plant.X, s.MixTo})), Scale: p.at.scale * p.pixels,
		Height: plant.Height, Spread: plant.Spread, Rim: [2]float64{plant.X - left, right - plant.X}, Drop: s.MixTo * 0.85, Pixels: p.pixels,
	}, p.plantPalette())
}

func (p *potPainter) plantPalette() plantdraw.Palette {
	return plantdraw.PaletteOf(p.look.theme, p.look.variant, theme.ColorSurface)
}

// opening returns the left and right of the pot's rim.
func (s *PotSide) opening() (left, right float64) {
	b := boxOf(s.Outer)
	return b.x0, b.x1
}

// fromAbove draws a plant in the plan.
func (p *potPainter) fromAbove(plant PotPlant) {
	c := p.pixel(p.at.point(PlanView, Metres{plant.X, plant.Y}))
	if plant.Plant != nil {
		plantdraw.FromAbove(p.sheet, plant.Plant, plantdraw.Growth{
			Foot: c, Scale: p.at.scale * p.pixels, Height: plant.Height, Spread: plant.Spread, Pixels: p.pixels,
		}, p.plantPalette())
		return
	}
	r := plant.Spread / 2 * p.at.scale * p.pixels
	p.sheet.Fill(p.solid(theme.CategoryWash(plant.Category)), ink.Disc(c, r))
	p.sheet.Stroke(p.solid(theme.CategoryEdge(plant.Category)), p.line(1.4), true, ink.Disc(c, r)...)
}

// beside turns a point beside a plant's foot into pixels: x in half spreads, y in
// heights.
func (p *potPainter) beside(s *PotSide, plant PotPlant, x, y float64) ink.Point {
	return p.pixel(p.at.point(SideView, Metres{plant.X + x*plant.Spread/2, s.MixTo + y*plant.Height}))
}

// mound draws a dome with a lobed edge.
func (p *potPainter) mound(s *PotSide, plant PotPlant) {
	const lobes, steps = 7, 84
	shape := make([]ink.Point, 0, steps+1)
	for i := range steps + 1 {
		turn := float64(i) / steps
		angle := math.Pi * turn
		bump := 0.9 + 0.1*math.Abs(math.Sin(turn*math.Pi*lobes))
		shape = append(shape, p.beside(s, plant, -math.Cos(angle)*bump*0.97, math.Sin(angle)*bump))
	}
	p.leaf(plant, shape)
	for i := range 5 { // a few dabs of bloom
		x, y := -0.6+0.3*float64(i), 0.35+0.28*math.Abs(math.Sin(float64(i)*1.9))
		dab := ink.Disc(p.beside(s, plant, x, y), p.small(plant, 0.04, 1.8))
		p.sheet.Fill(p.solid(theme.CategoryEdge(plant.Category)), dab)
	}
}

// small returns the radius of a leaf or bloom in pixels: a share of the plant's
// spread, but within what can be seen and what would look coarse.
func (p *potPainter) small(plant PotPlant, share, most float64) float64 {
	return math.Max(0.9, math.Min(plant.Spread*p.at.scale*share, most)) * p.pixels
}

// leaf fills and outlines a shape in the plant's colours.
func (p *potPainter) leaf(plant PotPlant, shape []ink.Point) {
	p.sheet.Fill(p.solid(theme.CategoryWash(plant.Category)), shape)
	p.sheet.Stroke(p.solid(theme.CategoryEdge(plant.Category)), p.line(1.2), true, shape...)
}

// upright draws a fan of blades.
func (p *potPainter) upright(s *PotSide, plant PotPlant) {
	for _, lean := range []float64{-0.85, 0.85, -0.45, 0.45, 0} {
		tall := 1 - 0.32*lean*lean
		p.leaf(plant, p.blade(s, plant, lean, tall))
	}
}

// blade is one leaf that leans to the side as it rises.
func (p *potPainter) blade(s *PotSide, plant PotPlant, lean, tall float64) []ink.Point {
	const steps = 10
	width := 0.13
	var left, right []ink.Point
	for i := range steps + 1 {
		t := float64(i) / steps
		x := lean * (0.15*t + 0.85*t*t)
		half := width * math.Sqrt(math.Max(0, math.Sin(math.Pi*(0.25+0.75*t))))
		left = append(left, p.beside(s, plant, x-half, tall*t))
		right = append(right, p.beside(s, plant, x+half, tall*t))
	}
	for i := len(right) - 1; i >= 0; i-- {
		left = append(left, right[i])
	}
	return left
}

// trailing draws stems that arch out of the pot and hang down, with leaves. It is
// drawn in front of the pot.
func (p *potPainter) trailing(s *PotSide, plant PotPlant) {
	middle := (p.at.views[SideView].outer.x0 + p.at.views[SideView].outer.x1) / 2
	out := 1.0
	if plant.X < middle {
		out = -1
	}
	edge := p.solid(theme.CategoryEdge(plant.Category))
	for _, reach := range []float64{0.45, 0.75, 1} {
		var stem []ink.Point
		for i := range 15 {
			t := float64(i) / 14
			x := out * reach * (1.1*t - 0.25*t*t)
			y := 0.5*t*(1-t)*2 - 1.5*reach*t*t*t
			stem = append(stem, p.beside(s, plant, x, y))
		}
		p.sheet.Stroke(edge, p.line(1.1), false, stem...)
		for i := 3; i < len(stem); i += 2 {
			c := stem[i]
			r := p.small(plant, 0.045, 2.6)
			c.X += 0.6 * r * math.Pow(-1, float64(i/2))
			p.sheet.Fill(p.solid(theme.CategoryWash(plant.Category)), ink.Disc(c, r))
			p.sheet.Stroke(edge, p.line(0.8), true, ink.Disc(c, r)...)
		}
	}
}
