package ink

import (
	"image"
	"image/color"
	"math"
)

// Point is a position in pixels, from the top left corner.
type Point struct{ X, Y float64 }

// Sheet is an image being drawn on.
type Sheet struct {
	Image *image.NRGBA
	cover []float32 // signed area left by edges, one more column than the image
	w, h  int
}

// NewSheet returns a clear sheet of w by h pixels; sizes below 1 become 1.
func NewSheet(w, h int) *Sheet {
	w, h = max(w, 1), max(h, 1)
	return &Sheet{
		Image: image.NewNRGBA(image.Rect(0, 0, w, h)),
		cover: make([]float32, (w+1)*h),
		w:     w, h: h,
	}
}

// Size returns the width and the height in pixels.
func (s *Sheet) Size() (w, h int) { return s.w, s.h }

// Fill paints the inside of the shapes. All shapes of one call should run the
// same way round.
func (s *Sheet) Fill(paint Paint, shapes ...[]Point) {
	box := s.bounds(shapes)
	if box.Empty() {
		return
	}
	for _, shape := range shapes {
		for i, p := range shape {
			q := shape[(i+1)%len(shape)]
			s.edge(p, q)
		}
	}
	s.settle(paint, box)
}

// Rect paints an upright rectangle; edges between pixels are softened.
func (s *Sheet) Rect(paint Paint, x0, y0, x1, y1 float64) {
	if whole(x0) && whole(y0) && whole(x1) && whole(y1) {
		s.block(paint, image.Rect(int(x0), int(y0), int(x1), int(y1)).Intersect(s.Image.Rect))
		return
	}
	s.Fill(paint, []Point{{x0, y0}, {x1, y0}, {x1, y1}, {x0, y1}})
}

// whole reports whether v lies on the edge between two pixels.
func whole(v float64) bool { return v == math.Trunc(v) && math.Abs(v) < 1<<30 }

// block paints whole pixels, which needs no areas.
func (s *Sheet) block(paint Paint, box image.Rectangle) {
	if box.Empty() {
		return
	}
	if paint.tile != nil || paint.colour.A < 255 {
		for y := box.Min.Y; y < box.Max.Y; y++ {
			for x := box.Min.X; x < box.Max.X; x++ {
				if c := paint.at(x, y); c.A > 0 {
					s.blend(x, y, c, 1)
				}
			}
		}
		return
	}
	c := paint.colour
	first := s.Image.PixOffset(box.Min.X, box.Min.Y)
	row := s.Image.Pix[first : first+box.Dx()*4]
	for i := 0; i < len(row); i += 4 {
		row[i], row[i+1], row[i+2], row[i+3] = c.R, c.G, c.B, 255
	}
	for y := box.Min.Y + 1; y < box.Max.Y; y++ {
		copy(s.Image.Pix[s.Image.PixOffset(box.Min.X, y):], row)
	}
}

// bounds returns the pixels that the shapes can touch.
func (s *Sheet) bounds(shapes [][]Point) image.Rectangle {
	x0, y0 := math.Inf(1), math.Inf(1)
	x1, y1 := math.Inf(-1), math.Inf(-1)
	for _, shape := range shapes {
		for _, p := range shape {
			x0, x1 = min(x0, p.X), max(x1, p.X)
			y0, y1 = min(y0, p.Y), max(y1, p.Y)
		}
	}
	if x0 > x1 {
		return image.Rectangle{}
	}
	clamp := func(v float64, limit int) int { return int(max(0, min(v, float64(limit)))) }
	return image.Rect(
		clamp(math.Floor(x0), s.w), clamp(math.Floor(y0), s.h),
		clamp(math.Ceil(x1)+1, s.w), clamp(math.Ceil(y1)+1, s.h))
}

// edge adds the signed area to the right of the line from p to q, row by row.
func (s *Sheet) edge(p, q Point) {
	dir := float32(1)
	if p.Y > q.Y {
		p, q, dir = q, p, -1
	}
	if q.Y-p.Y < 1e-9 || q.Y <= 0 || p.Y >= float64(s.h) {
		return
	}
	slope := (q.X - p.X) / (q.Y - p.Y)
	x, y := p.X, p.Y
	if y < 0 {
		x, y = x-y*slope, 0
	}
	last := min(q.Y, float64(s.h))
	for row := int(y); row < s.h && y < last; row++ {
		next := min(float64(row+1), last)
		nextX := x + (next-y)*slope
		s.span(row, x, nextX, dir*float32(next-y))
		x, y = nextX, next
	}
}

// span adds area d, spread over the pixels that the edge crosses in one row.
func (s *Sheet) span(row int, xa, xb float64, d float32) {
	cells := s.cover[row*(s.w+1) : (row+1)*(s.w+1)]
	add := func(i int, v float32) { cells[max(0, min(i, s.w))] += v }
	x0, x1 := min(xa, xb), max(xa, xb)
	x0 = max(-1, min(x0, float64(s.w)))
	x1 = max(-1, min(x1, float64(s.w)))
	first, end := int(math.Floor(x0)), int(math.Ceil(x1))
	if end <= first+1 {
		middle := float32((x0+x1)/2 - float64(first))
		add(first, d*(1-middle))
		add(first+1, d*middle)
		return
	}
	perPixel := 1 / (x1 - x0)
	covered := float32(0)
	for i := first; i < end; i++ {
		a, b := max(x0, float64(i)), min(x1, float64(i+1))
		share := (b - a) * perPixel // part of the edge that lies in this pixel
		middle := (a+b)/2 - float64(i)
		add(i, d*float32(share*(1-middle)))
		add(i+1, d*float32(share*middle))
		covered += float32(share)
	}
	add(end, d*(1-covered)) // nothing but rounding
}

// settle turns accumulated areas into paint and clears them.
func (s *Sheet) settle(paint Paint, box image.Rectangle) {
	for y := box.Min.Y; y < box.Max.Y; y++ {
		cells := s.cover[y*(s.w+1) : (y+1)*(s.w+1)]
		area := float32(0)
		for x := box.Min.X; x < box.Max.X; x++ {
			area += cells[x]
			cells[x] = 0
			c := min(1, max(area, -area))
			if c < 1.0/512 {
				continue
			}
			if over := paint.at(x, y); over.A > 0 {
				s.blend(x, y, over, c)
			}
		}
		for x := box.Max.X; x <= s.w; x++ {
			cells[x] = 0
		}
	}
}

// blend lays colour c over the pixel, weakened to the given cover (0 to 1).
func (s *Sheet) blend(x, y int, c color.NRGBA, cover float32) {
	alpha := cover * float32(c.A) / 255
	if alpha <= 0 {
		return
	}
	i := s.Image.PixOffset(x, y)
	pix := s.Image.Pix[i : i+4 : i+4]
	if alpha >= 0.999 {
		pix[0], pix[1], pix[2], pix[3] = c.R, c.G, c.B, 255
		return
	}
	under := float32(pix[3]) / 255 * (1 - alpha)
	total := alpha + under
	mix := func(over, below uint8) uint8 {
		return uint8((float32(over)*alpha+float32(below)*under)/total + 0.5)
	}
	pix[0], pix[1], pix[2] = mix(c.R, pix[0]), mix(c.G, pix[1]), mix(c.B, pix[2])
	pix[3] = uint8(total*255 + 0.5)
}

// Clear takes everything off a sheet, so that it can be drawn on again; false where it
// is of another size.
func (s *Sheet) Clear(w, h int) bool {
	if s.w != max(w, 1) || s.h != max(h, 1) {
		return false
	}
	clear(s.Image.Pix)
	return true
}

// Lay lays an image over the sheet with its upper left corner at a pixel.
func (s *Sheet) Lay(over *image.NRGBA, x, y int) {
	box := over.Rect.Add(image.Pt(x, y)).Intersect(s.Image.Rect)
	for row := box.Min.Y; row < box.Max.Y; row++ {
		from := over.PixOffset(box.Min.X-x, row-y)
		for col := box.Min.X; col < box.Max.X; col++ {
			if p := over.Pix[from : from+4 : from+4]; p[3] > 0 {
				s.blend(col, row, color.NRGBA{R: p[0], G: p[1], B: p[2], A: p[3]}, 1)
			}
			from += 4
		}
	}
}
