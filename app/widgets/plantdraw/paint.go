package plantdraw

import (
	"image/color"
	"math"

	"fourturn/app/widgets/ink"
	"fourturn/plants/sketch"
)

// Place is where a drawing goes on a sheet, in pixels.
type Place struct {
	Foot  ink.Point // of the plant; seen from above, its middle
	Scale float64   // pixels per metre
	Pen   float64   // width of the pen
}

// Paint paints marks onto a sheet.
func Paint(sheet *ink.Sheet, marks []sketch.Mark, at Place, p Palette) {
	for _, m := range marks {
		if m.Mono && !p.Mono {
			continue
		}
		points := make([]ink.Point, len(m.Shape))
		for i, q := range m.Shape {
			points[i] = ink.Point{X: at.Foot.X + q.X*at.Scale, Y: at.Foot.Y - q.Y*at.Scale}
		}
		if m.Closed && m.Fill.Kind != sketch.None {
			sheet.Fill(ink.Solid(p.area(m.Fill)), points)
		}
		if m.Line.Kind == sketch.None {
			continue
		}
		width := m.Weight * at.Pen
		if p.Mono && m.Line.Kind == sketch.Tinted {
			width *= needleInPrint
		}
		if m.Closed {
			width = math.Min(width, lineShare*thickness(points))
		}
		line(sheet, p.stroke(m.Line), width, m.Closed, points)
	}
}

// needleInPrint is how much thinner lines that are coloured elsewhere, such as
// needles, are in ink: else they would run together.
const needleInPrint = 0.45

// lineShare is how wide the line around a small area may be, as a share of how thick
// the area is: more would leave nothing of its colour.
const lineShare = 0.17

// thickness is how thick an area is on average: twice its surface by its outline.
func thickness(points []ink.Point) float64 {
	area, around := 0.0, 0.0
	for i, p := range points {
		q := points[(i+1)%len(points)]
		area += p.X*q.Y - p.Y*q.X
		around += math.Hypot(q.X-p.X, q.Y-p.Y)
	}
	if around == 0 {
		return 0
	}
	return 2 * math.Abs(area) / around
}

// area returns what an area is filled with: paper in one colour, but for ink itself.
func (p Palette) area(t sketch.Tone) color.NRGBA {
	if p.Mono && t.Kind == sketch.Tinted {
		return p.Paper
	}
	return p.tone(t)
}

// stroke returns what a line is drawn with: ink in one colour.
func (p Palette) stroke(t sketch.Tone) color.NRGBA {
	if p.Mono && t.Kind == sketch.Tinted {
		return p.Ink
	}
	return p.tone(t)
}

// hairline is the thinnest line that is drawn as wide as it is; thinner ones are
// paler instead.
const hairline = 0.75

// line draws a line of any width, paler where it is thinner than a pixel can show.
func line(sheet *ink.Sheet, c color.NRGBA, width float64, closed bool, points []ink.Point) {
	if width < hairline {
		c.A = uint8(float64(c.A) * math.Max(0.25, width/hairline))
		width = hairline
	}
	sheet.Fill(ink.Solid(c), outline(width, closed, points)...)
}

// outline returns bars along a line that overlap at its bends, all running the same
// way round.
func outline(width float64, closed bool, points []ink.Point) [][]ink.Point {
	if width > 2.5 || len(points) < 2 {
		return ink.Outline(width, closed, points...)
	}
	n := len(points) - 1
	if closed {
		n++
	}
	shapes := make([][]ink.Point, 0, n)
	r := width / 2
	for i := range n {
		p, q := points[i], points[(i+1)%len(points)]
		dx, dy := q.X-p.X, q.Y-p.Y
		length := math.Hypot(dx, dy)
		if length < 1e-6 {
			continue
		}
		dx, dy = dx/length*r, dy/length*r
		over := 0.5 // of the half width, past each end
		shapes = append(shapes, []ink.Point{
			{X: p.X + dy - dx*over, Y: p.Y - dx - dy*over},
			{X: q.X + dy + dx*over, Y: q.Y - dx + dy*over},
			{X: q.X - dy + dx*over, Y: q.Y + dx + dy*over},
			{X: p.X - dy - dx*over, Y: p.Y + dx - dy*over},
		})
	}
	return shapes
}
