package widgets

import (
	"image/color"
	"math"

	"fourturn/app/theme"
	"fourturn/app/widgets/ink"
)

// Plants stand along the foot of a strip in small, side by side, so that a planting is
// known again by its drawing where colours are not seen. Each kind is drawn once for a
// size and a look, and laid down as often as it stands there.

// Measures of a small plant, in units of the screen.
const (
	plantWide  = 14.0
	plantHigh  = 14.0
	plantPitch = 15.0
)

// spriteKey says for what a small plant was drawn.
type spriteKey struct {
	plant YearPlant
	line  color.NRGBA
	scale float64
}

// sprite is a small plant; it stands on its lower edge.
type sprite struct{ sheet *ink.Sheet }

// faint returns a colour for marks that lie behind drawings.
func faint(c color.Color) color.NRGBA {
	n := color.NRGBAModel.Convert(c).(color.NRGBA)
	n.A = uint8(int(n.A) * 2 / 5)
	return n
}

// plants draws what is planted along the foot of a strip, in turn.
func (p *rowPainter) plants(s *YearSegment) {
	if len(s.Plants) == 0 {
		return
	}
	pitch := plantPitch * p.scale
	start := p.fine(float64(s.Start)) + 6*p.scale
	end := math.Min(p.fine(float64(s.End))-2*p.scale, p.w+pitch)
	first := max(0, int(math.Floor(-start/pitch))-1)
	foot := int(p.foot())
	for k := first; ; k++ {
		x := start + float64(k)*pitch
		if x+plantWide*p.scale > end {
			return
		}
		image := p.sprite(s.Plants[k%len(s.Plants)]).sheet.Image
		p.sheet.Lay(image, int(math.Round(x)), foot-image.Rect.Dy()+int(math.Round(p.scale)))
	}
}

// sprite returns a small plant, drawn when it is first asked for.
func (p *rowPainter) sprite(plant YearPlant) *sprite {
	line := color.NRGBAModel.Convert(p.look.colour(theme.ColorInkSoft)).(color.NRGBA)
	key := spriteKey{plant, line, p.scale}
	known := p.view.body.sprites
	if s, ok := known[key]; ok {
		return s
	}
	const most = 256 // kinds of plant that are kept drawn
	if len(known) >= most {
		clear(known)
	}
	s := &sprite{ink.NewSheet(int(math.Ceil(plantWide*p.scale)), int(math.Ceil(plantHigh*p.scale)))}
	known[key] = s
	d := &plantSketch{sheet: s.sheet, plant: plant, line: ink.Solid(line), scale: p.scale}
	d.draw()
	return s
}

// plantSketch draws one small plant.
type plantSketch struct {
	sheet *ink.Sheet
	plant YearPlant
	line  ink.Paint
	scale float64
}

// at turns units of the screen, from the middle of the foot upwards, into pixels.
func (d *plantSketch) at(x, y float64) ink.Point {
	_, h := d.sheet.Size()
	return ink.Point{X: (plantWide/2 + x) * d.scale, Y: float64(h) - y*d.scale}
}

func (d *plantSketch) draw() {
	switch d.plant.Habit {
	case Upright:
		d.upright()
	case Mounding:
		d.mound()
	case Trailing:
		d.trailing()
	}
}

// bloom draws one flower with a thin line around it.
func (d *plantSketch) bloom(x, y, r float64) {
	c := d.at(x, y)
	d.sheet.Fill(d.line, ink.Disc(c, (r+0.55)*d.scale))
	d.sheet.Fill(ink.Solid(d.plant.Flower), ink.Disc(c, r*d.scale))
}

func (d *plantSketch) leaf(shape ...ink.Point) {
	d.sheet.Fill(ink.Solid(d.plant.Leaf), shape)
	d.sheet.Stroke(d.line, 0.8*d.scale, true, shape...)
}

// upright is three stems with a spike of flowers.
func (d *plantSketch) upright() {
	d.leaf(d.at(0, 0), d.at(-5.4, 7), d.at(-1.4, 4))
	d.leaf(d.at(0, 0), d.at(5.4, 7), d.at(1.4, 4))
	d.sheet.Stroke(d.line, d.scale, false, d.at(0, 0), d.at(0, 9))
	d.bloom(0, 12, 1.2)
	d.bloom(-0.9, 9.6, 1.5)
	d.bloom(1.1, 7.4, 1.7)
}

// mound is a dome with flowers on it.
func (d *plantSketch) mound() {
	const steps = 16
	var dome []ink.Point
	for i := range steps + 1 {
		a := math.Pi * float64(i) / steps
		dome = append(dome, d.at(-6*math.Cos(a), 8.2*math.Sin(a)))
	}
	d.leaf(dome...)
	d.bloom(-2.9, 5, 1.6)
	d.bloom(0.4, 7.2, 1.7)
	d.bloom(3.1, 4.2, 1.6)
}

// trailing is stems that arch over and come down to the ground.
func (d *plantSketch) trailing() {
	for _, side := range []float64{-1, 1} {
		var stem []ink.Point
		for i := range 9 {
			t := float64(i) / 8
			stem = append(stem, d.at(side*(0.4+5.6*t), 5.4*math.Sin(math.Pi*(0.25+0.75*t))))
		}
		d.sheet.Stroke(ink.Solid(d.plant.Leaf), 2.4*d.scale, false, stem...)
		d.sheet.Stroke(d.line, 0.8*d.scale, false, stem...)
		d.bloom(side*2.4, 5.6, 1.25)
		d.bloom(side*5, 2.6, 1.25)
	}
}
