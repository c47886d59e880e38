package ink

import (
	"image/color"
	"math"
)

// Paint gives the colour of each pixel of a shape.
type Paint struct {
	colour color.NRGBA
	tile   []uint8 // cover of the marks, side by side; nil paints all
	side   int     // of the tile, in pixels
}

// Solid paints one colour.
func Solid(c color.Color) Paint { return Paint{colour: toNRGBA(c)} }

// Hatched paints only the marks of a pattern; between them nothing is painted.
// Scale is pixels per unit of the screen, so that marks keep their size.
func Hatched(c color.Color, p Pattern, scale float64) Paint {
	if p == Plain {
		return Solid(c)
	}
	if scale <= 0 {
		scale = 1
	}
	side := max(1, int(math.Round(p.period()*scale)))
	exact := float64(side) / p.period() // so that tiles meet without a seam
	paint := Paint{colour: toNRGBA(c), tile: make([]uint8, side*side), side: side}
	for i := range paint.tile {
		x, y := float64(i%side)+0.5, float64(i/side)+0.5
		paint.tile[i] = uint8(p.mark(x/exact, y/exact, exact)*255 + 0.5)
	}
	return paint
}

func toNRGBA(c color.Color) color.NRGBA {
	if c == nil {
		return color.NRGBA{}
	}
	return color.NRGBAModel.Convert(c).(color.NRGBA)
}

func (p Paint) at(x, y int) color.NRGBA {
	c := p.colour
	if p.tile != nil {
		c.A = uint8(int(c.A) * int(p.tile[y%p.side*p.side+x%p.side]) / 255)
	}
	return c
}

// Pattern is a hatch that tells areas apart without colour.
type Pattern int

// The patterns, chosen to stay apart at a glance and in a poor photocopy.
const (
	Plain   Pattern = iota // no marks: all is painted
	Rising                 // lines like /
	Falling                // lines like \
	Dots                   // staggered dots
	Level                  // lines like —
	Upright                // lines like |
	Crossed                // / and \ together
	Waves                  // wavy level lines
	Clear                  // no marks and no paint
)

// PatternCount is how many patterns can stand for a kind of area.
const PatternCount = 8

// Sizes of the marks in units of the screen, chosen by eye at 96 dpi.
const (
	lineWidth = 1.1
	dotRadius = 1.1
)

// period returns after how many units of the screen the marks repeat, both ways.
func (p Pattern) period() float64 {
	switch p {
	case Plain, Clear:
		return 1
	case Rising, Falling:
		return 10
	case Level, Upright:
		return 7
	case Dots, Crossed, Waves:
		return 12
	}
	panic("ink: unknown pattern")
}

// mark returns how much of the pixel at (x, y), in screen units, the marks cover.
func (p Pattern) mark(x, y, scale float64) float64 {
	near := func(v, pitch float64) float64 { // distance to the nearest line
		m := math.Mod(v+1000*pitch, pitch)
		return math.Min(m, pitch-m)
	}
	cover := func(halfWidth, distance float64) float64 {
		return math.Max(0, math.Min(1, (halfWidth-distance)*scale+0.5))
	}
	line := func(distance float64) float64 { return cover(lineWidth/2, distance) }
	pitch := p.period()
	switch p {
	case Plain:
		return 1
	case Rising:
		return line(near(x+y, pitch) / math.Sqrt2)
	case Falling:
		return line(near(x-y, pitch) / math.Sqrt2)
	case Crossed:
		return math.Max(line(near(x+y, pitch)/math.Sqrt2), line(near(x-y, pitch)/math.Sqrt2))
	case Level:
		return line(near(y, pitch))
	case Upright:
		return line(near(x, pitch))
	case Waves:
		return line(near(y+1.5*math.Sin(x*math.Pi/6), pitch/2))
	case Dots: // two dots in each tile of 12 by 6, staggered
		if math.Mod(y, 12) >= 6 {
			x += 3
		}
		return cover(dotRadius, math.Hypot(math.Mod(x, 6)-3, math.Mod(y, 6)-3))
	case Clear:
		return 0
	}
	panic("ink: unknown pattern")
}
