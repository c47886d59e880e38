package plantdraw

import (
	"image"
	"image/color"
	"math"

	"fourturn/app/widgets/ink"
	"fourturn/plants"
	"fourturn/plants/sketch"
)

// Tile is a pattern that repeats to the right and downwards.
type Tile struct {
	cover []uint8
	side  int
}

// Pattern returns a tile of a plant's flowers, or of its leaves where it is grown for
// them, in outline. Pixels is how many make a unit of the screen.
func Pattern(p *plants.Plant, pixels float64) Tile {
	side := max(8, int(math.Round(26*pixels)))
	sheet := ink.NewSheet(side, side)
	motif := sketch.Motif(p, 9)
	black := Palette{Ink: color.NRGBA{A: 255}, Faint: color.NRGBA{A: 255}, Mono: true}
	half := float64(side) / 2
	spots := []ink.Point{{X: half / 2, Y: half / 2}, {X: half * 1.5, Y: half * 1.5}}
	for _, spot := range spots {
		place := Place{Foot: spot, Scale: float64(side) * 0.2, Pen: math.Max(0.8, 0.9*pixels)}
		for _, m := range motif {
			if m.Mono {
				continue
			}
			m.Fill = sketch.Tone{} // the ground shows through
			Paint(sheet, []sketch.Mark{m}, place, black)
		}
	}
	t := Tile{cover: make([]uint8, side*side), side: side}
	for i := range t.cover {
		t.cover[i] = sheet.Image.Pix[4*i+3]
	}
	return t
}

// At returns how much of a pixel the pattern covers, from 0 to 255.
func (t Tile) At(x, y int) uint8 {
	if t.side == 0 {
		return 0
	}
	x, y = ((x%t.side)+t.side)%t.side, ((y%t.side)+t.side)%t.side
	return t.cover[y*t.side+x]
}

// Lay draws the pattern over a rectangle of an image in one colour.
func (t Tile) Lay(into *image.NRGBA, where image.Rectangle, c color.NRGBA) {
	where = where.Intersect(into.Rect)
	for y := where.Min.Y; y < where.Max.Y; y++ {
		for x := where.Min.X; x < where.Max.X; x++ {
			share := float64(t.At(x, y)) / 255 * float64(c.A) / 255
			if share == 0 {
				continue
			}
			under := into.NRGBAAt(x, y)
			if under.A == 0 {
				into.SetNRGBA(x, y, color.NRGBA{R: c.R, G: c.G, B: c.B, A: uint8(share * 255)})
				continue
			}
			over := mixed(under, c, share)
			over.A = max(under.A, uint8(share*255))
			into.SetNRGBA(x, y, over)
		}
	}
}
