package plantdraw

import (
	"image"
	"math"

	"fourturn/app/widgets/ink"
	"fourturn/plants"
	"fourturn/plants/sketch"
)

// Portrait draws a plant by itself, as large as fits into w by h pixels. Pixels is
// how many make a unit of the screen.
func Portrait(p *plants.Plant, v sketch.View, w, h int, pixels float64, palette Palette) *image.NRGBA {
	sheet := ink.NewSheet(w, h)
	drawPortrait(sheet, p, v, 0, 0, float64(w), float64(h), pixels, palette)
	return sheet.Image
}

// drawPortrait fits a plant with its ground into a part of a sheet.
func drawPortrait(sheet *ink.Sheet, p *plants.Plant, v sketch.View, x, y, w, h, pixels float64, palette Palette) {
	pen := penFor(math.Min(w, h), pixels)
	room := math.Max(1, math.Min(w, h)-2*pen)
	// The pen decides how large leaves are drawn, and those how wide the drawing is:
	// the second round knows better.
	s := sketch.Draw(p, v, sketch.Options{Pen: pen / room * sizeOf(p)})
	for range 2 {
		scale := fitting(s, v, w, h, pen)
		s = sketch.Draw(p, v, sketch.Options{Pen: pen / scale})
	}
	low, high := corners(s, v)
	scale := fitting(s, v, w, h, pen)
	at := Place{Scale: scale, Pen: pen}
	at.Foot.X = x + w/2 - (low.X+high.X)/2*scale
	at.Foot.Y = y + h/2 + (low.Y+high.Y)/2*scale
	if v == sketch.Side { // stands on the lower edge
		at.Foot.Y = y + h - pen*2 + low.Y*scale
	}
	Paint(sheet, s.Ground, at, palette)
	Paint(sheet, s.Marks, at, palette)
}

// penFor returns the width of the pen in pixels for a drawing of a size.
func penFor(size, pixels float64) float64 {
	return math.Max(0.7*pixels, math.Min(1.15*pixels, size/150))
}

func sizeOf(p *plants.Plant) float64 {
	return math.Max(float64(p.Height.Low+p.Height.High)/2, math.Max(float64(p.Spread), 0.01))
}

// corners returns the corners of a drawing and of its ground.
func corners(s *sketch.Sketch, v sketch.View) (low, high sketch.Point) {
	low, high = s.Low, s.High
	if v == sketch.Side {
		for _, m := range s.Ground {
			for _, q := range m.Shape {
				low.X, low.Y = min(low.X, q.X), min(low.Y, q.Y)
				high.X = max(high.X, q.X)
			}
		}
	}
	return low, high
}

func fitting(s *sketch.Sketch, v sketch.View, w, h, pen float64) float64 {
	low, high := corners(s, v)
	room := func(all float64) float64 { return math.Max(1, all-4*pen) }
	return math.Min(room(w)/math.Max(1e-6, high.X-low.X), room(h)/math.Max(1e-6, high.Y-low.Y))
}

// Plant is a plant of the book, for who draws it and asks nothing else of it.
type Plant = plants.Plant

// Growth says how a plant stands in a drawing to scale.
type Growth struct {
	Foot           ink.Point  // in pixels: on the mix, or its middle from above
	Scale          float64    // pixels per metre
	Height, Spread float64    // m; 0 is the middle of what the book gives
	Rim            [2]float64 // m to the left and right of the foot to the rim
	Drop           float64    // m that stems may hang below the rim; 0 is as far as they like
	Pixels         float64    // for a unit of the screen
}

// Side draws a plant from the side onto a sheet, to scale. Plants that trail hang
// over the rim.
func Side(sheet *ink.Sheet, p *plants.Plant, g Growth, palette Palette) {
	draw(sheet, p, sketch.Side, g, palette)
}

// FromAbove draws a plant from above onto a sheet, to scale.
func FromAbove(sheet *ink.Sheet, p *plants.Plant, g Growth, palette Palette) {
	draw(sheet, p, sketch.Above, g, palette)
}

func draw(sheet *ink.Sheet, p *plants.Plant, v sketch.View, g Growth, palette Palette) {
	if g.Scale <= 0 {
		return
	}
	size := g.Spread
	if size <= 0 {
		size = float64(p.Spread)
	}
	pen := penFor(size*g.Scale, math.Max(g.Pixels, 0.1))
	s := sketch.Draw(p, v, sketch.Options{Pen: pen / g.Scale, Height: g.Height, Spread: g.Spread, Rim: g.Rim, Drop: g.Drop})
	Paint(sheet, s.Marks, Place{Foot: g.Foot, Scale: g.Scale, Pen: pen}, palette)
}

// Trails reports whether a plant hangs over the rim, so that it is drawn before the
// pot.
func Trails(p *plants.Plant) bool {
	return p.Drawing.Habit == plants.Cascade || p.Drawing.Habit == plants.Runner
}
