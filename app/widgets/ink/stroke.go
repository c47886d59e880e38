package ink

import "math"

// Stroke draws a line of the given width through the points, with round ends and
// joins. Closed joins the last point to the first.
func (s *Sheet) Stroke(paint Paint, width float64, closed bool, points ...Point) {
	s.Fill(paint, Outline(width, closed, points...)...)
}

// Dash draws a broken line: on and off are lengths in pixels.
func (s *Sheet) Dash(paint Paint, width, on, off float64, points ...Point) {
	s.Fill(paint, Dashes(width, on, off, points...)...)
}

// Outline returns shapes, all running the same way round, that together cover a
// stroke of the given width through the points.
func Outline(width float64, closed bool, points ...Point) [][]Point {
	if len(points) == 0 {
		return nil
	}
	r := width / 2
	var shapes [][]Point
	for _, p := range points {
		shapes = append(shapes, Disc(p, r))
	}
	last := len(points) - 1
	if closed {
		last = len(points)
	}
	for i := 0; i < last; i++ {
		if bar := bar(points[i], points[(i+1)%len(points)], r); bar != nil {
			shapes = append(shapes, bar)
		}
	}
	return shapes
}

// Dashes returns the shapes of a broken line with square ends.
func Dashes(width, on, off float64, points ...Point) [][]Point {
	var shapes [][]Point
	at := 0.0 // place in the pattern
	for i := 0; i+1 < len(points); i++ {
		p, q := points[i], points[i+1]
		length := math.Hypot(q.X-p.X, q.Y-p.Y)
		along := func(t float64) Point {
			return Point{p.X + (q.X-p.X)*t/length, p.Y + (q.Y-p.Y)*t/length}
		}
		for t := 0.0; t < length; {
			phase := math.Mod(at, on+off)
			step := on - phase
			drawn := step > 1e-9
			if !drawn {
				step = on + off - phase
			}
			step = math.Max(math.Min(step, length-t), 1e-6)
			if drawn {
				if b := bar(along(t), along(t+step), width/2); b != nil {
					shapes = append(shapes, b)
				}
			}
			t, at = t+step, at+step
		}
	}
	return shapes
}

// bar returns the rectangle of half width r around the line from p to q.
func bar(p, q Point, r float64) []Point {
	dx, dy := q.X-p.X, q.Y-p.Y
	length := math.Hypot(dx, dy)
	if length < 1e-9 {
		return nil
	}
	nx, ny := -dy/length*r, dx/length*r
	return []Point{
		{p.X - nx, p.Y - ny},
		{q.X - nx, q.Y - ny},
		{q.X + nx, q.Y + ny},
		{p.X + nx, p.Y + ny},
	}
}

// Disc returns a circle, running the same way round as bars do.
func Disc(centre Point, r float64) []Point {
	n := 8 + int(math.Min(r, 60)*1.5)
	points := make([]Point, n)
	for i := range points {
		sin, cos := math.Sincos(2 * math.Pi * float64(i) / float64(n))
		points[i] = Point{centre.X + r*cos, centre.Y + r*sin}
	}
	return points
}
