package sketch

import "math"

// smooth returns a closed line through the points without corners (the curve of
// E. Catmull and R. Rom, 1974).
func smooth(points ...Point) []Point {
	const steps = 6
	n := len(points)
	out := make([]Point, 0, n*steps)
	for i := range n {
		p0, p1, p2, p3 := points[(i+n-1)%n], points[i], points[(i+1)%n], points[(i+2)%n]
		for j := range steps {
			out = append(out, catmull(p0, p1, p2, p3, float64(j)/steps))
		}
	}
	return out
}

// flowing returns an open line through the points without corners.
func flowing(points ...Point) []Point {
	const steps = 6
	n := len(points)
	var out []Point
	for i := 0; i+1 < n; i++ {
		p0, p1, p2, p3 := points[max(0, i-1)], points[i], points[i+1], points[min(n-1, i+2)]
		for j := range steps {
			out = append(out, catmull(p0, p1, p2, p3, float64(j)/steps))
		}
	}
	return append(out, points[n-1])
}

func catmull(p0, p1, p2, p3 Point, t float64) Point {
	one := func(a, b, c, d float64) float64 {
		return 0.5 * (2*b + (c-a)*t + (2*a-5*b+4*c-d)*t*t + (3*b-3*c+d-a)*t*t*t)
	}
	return Point{one(p0.X, p1.X, p2.X, p3.X), one(p0.Y, p1.Y, p2.Y, p3.Y)}
}

// ring returns a closed line around the middle of a frame: radius says how far it is
// at an angle.
func ring(f frame, steps int, radius func(angle float64) float64) []Point {
	points := make([]Point, steps)
	for i := range points {
		angle := 2 * math.Pi * float64(i) / float64(steps)
		points[i] = f.polar(radius(angle), angle)
	}
	return points
}

// frame is a place on the drawing with its own axes.
type frame struct {
	at   Point
	x, y Point
}

func (f frame) point(x, y float64) Point { return f.at.plus(f.x.times(x)).plus(f.y.times(y)) }

func (f frame) polar(r, angle float64) Point {
	sin, cos := math.Sincos(angle)
	return f.point(r*cos, r*sin)
}

// turned returns the frame turned by an angle.
func (f frame) turned(angle float64) frame {
	sin, cos := math.Sincos(angle)
	return frame{f.at, f.x.times(cos).plus(f.y.times(sin)), f.y.times(cos).minus(f.x.times(sin))}
}

func (f frame) scaled(k float64) frame { return frame{f.at, f.x.times(k), f.y.times(k)} }

// moved returns the frame around another of its points.
func (f frame) moved(x, y float64) frame { return frame{f.point(x, y), f.x, f.y} }

// shape returns the smooth closed line through points given in the frame, as x and y
// in turn.
func (f frame) shape(xy ...float64) []Point {
	points := make([]Point, 0, len(xy)/2)
	for i := 0; i+1 < len(xy); i += 2 {
		points = append(points, f.point(xy[i], xy[i+1]))
	}
	return smooth(points...)
}

// line returns the open line through points given in the frame.
func (f frame) line(xy ...float64) []Point {
	points := make([]Point, 0, len(xy)/2)
	for i := 0; i+1 < len(xy); i += 2 {
		points = append(points, f.point(xy[i], xy[i+1]))
	}
	return flowing(points...)
}
