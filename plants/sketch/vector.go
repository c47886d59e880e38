package sketch

import "math"

// Point is a place on the drawing in metres: X to the right of the foot of the
// plant, Y up from the soil (seen from above: away from the viewer).
type Point struct{ X, Y float64 }

func (p Point) plus(q Point) Point        { return Point{p.X + q.X, p.Y + q.Y} }
func (p Point) minus(q Point) Point       { return Point{p.X - q.X, p.Y - q.Y} }
func (p Point) times(k float64) Point     { return Point{p.X * k, p.Y * k} }
func (p Point) length() float64           { return math.Hypot(p.X, p.Y) }
func (p Point) across() Point             { return Point{-p.Y, p.X} }
func between(p, q Point, t float64) Point { return Point{p.X + (q.X-p.X)*t, p.Y + (q.Y-p.Y)*t} }

// unit returns the direction of p, or other where p has none.
func (p Point) unit(other Point) Point {
	l := p.length()
	if l < 1e-9 {
		return other
	}
	return p.times(1 / l)
}

// space is a place or a direction in space: X to the right, Y away, Z up.
type space struct{ X, Y, Z float64 }

func (p space) plus(q space) space    { return space{p.X + q.X, p.Y + q.Y, p.Z + q.Z} }
func (p space) minus(q space) space   { return space{p.X - q.X, p.Y - q.Y, p.Z - q.Z} }
func (p space) times(k float64) space { return space{p.X * k, p.Y * k, p.Z * k} }
func (p space) dot(q space) float64   { return p.X*q.X + p.Y*q.Y + p.Z*q.Z }
func (p space) length() float64       { return math.Sqrt(p.dot(p)) }

func (p space) cross(q space) space {
	return space{p.Y*q.Z - p.Z*q.Y, p.Z*q.X - p.X*q.Z, p.X*q.Y - p.Y*q.X}
}

func (p space) unit() space {
	l := p.length()
	if l < 1e-12 {
		return up
	}
	return p.times(1 / l)
}

var up = space{0, 0, 1}

// towards returns the direction at an azimuth and an elevation, in radians.
func towards(azimuth, elevation float64) space {
	sinA, cosA := math.Sincos(azimuth)
	sinE, cosE := math.Sincos(elevation)
	return space{cosE * cosA, cosE * sinA, sinE}
}

// sideways returns a level direction across d.
func sideways(d space) space {
	side := d.cross(up)
	if side.length() < 0.05 {
		return space{1, 0, 0}
	}
	return side.unit()
}

func degrees(d float64) float64 { return d * math.Pi / 180 }

// golden is the angle between leaves that follow each other.
var golden = math.Pi * (3 - math.Sqrt(5))

// camera is the direction from which the plant is seen.
type camera struct {
	right, up, to space // on the drawing, and to the viewer
}

// lookedDown is from how far above the side is drawn: enough for a whorl of leaves
// to open, and little enough for heights to be true within 3 %.
var lookedDown = degrees(13)

func cameraOf(v View) camera {
	if v == Above {
		return camera{right: space{1, 0, 0}, up: space{0, 1, 0}, to: up}
	}
	sin, cos := math.Sincos(lookedDown)
	return camera{right: space{1, 0, 0}, up: space{0, sin, cos}, to: space{0, -cos, sin}}
}

func (c camera) see(p space) Point     { return Point{p.dot(c.right), p.dot(c.up)} }
func (c camera) near(p space) float64  { return p.dot(c.to) }
func (c camera) faces(d space) float64 { return d.dot(c.to) }
