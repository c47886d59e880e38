package vessel

import "math"

// form is the outline of a level cut.
type form uint8

const (
	ellipse     form = iota // length × width are its axes; equal for a circle
	rectangle               // length × width are its sides
	halfEllipse             // length along the wall, width from the wall
)

// areaFactor returns k of area = k × length × width.
func (f form) areaFactor() float64 {
	if f == rectangle {
		return 1
	}
	return math.Pi / 4
}

// axis is a measure across, in metres, as a polynomial in the height z.
type axis struct{ c0, c1, c2 float64 }

func (a axis) at(z float64) float64    { return a.c0 + z*(a.c1+z*a.c2) }
func (a axis) slope(z float64) float64 { return a.c1 + 2*a.c2*z }

// straight is the axis that runs from bottom at z = 0 to top at z = height.
func straight(bottom, top, height float64) axis {
	return axis{c0: bottom, c1: (top - bottom) / height}
}

// shifted returns the axis seen from a bottom at height by, and widened.
func (a axis) shifted(by, widened float64) axis {
	return axis{c0: a.at(by) + widened, c1: a.slope(by), c2: a.c2}
}

// solid is the hollow of a pot, or the body that its outside bounds, in metres
// from z = 0 at its bottom to z = height at its brim.
type solid struct {
	form   form
	height float64
	// length and width across at z. In a rounded solid they are those at the brim
	// and shrink with the height as a cap does.
	length, width axis
	// radius is that of the circle, measured upright, of which a rounded solid is
	// a cap; 0 for any other.
	radius float64
	// share scales the area of a measured pot, whose cuts are not known; else 1.
	share float64
	// foot is the height up to which the cut does not change; the axes begin there.
	foot float64
	// rings of a turned solid: z = 0 is at ring height lift, and the solid is wider
	// than its rings by widened.
	rings         []Ring
	lift, widened float64
}

// shrink returns by how much the axes of a rounded solid shrink at z, squared.
func (s *solid) shrink(z float64) float64 {
	h, r := s.height, s.radius
	return z * (2*r - z) / (h * (2*r - h))
}

// at returns the length and width of the cut at z.
func (s *solid) at(z float64) (length, width float64) {
	switch {
	case s.rings != nil:
		d := s.ringDiameter(z)
		return d, d
	case s.radius > 0:
		f := math.Sqrt(max(0, s.shrink(z)))
		return s.length.c0 * f, s.width.c0 * f
	}
	z = max(0, z-s.foot)
	return s.length.at(z), s.width.at(z)
}

// below returns the volume beneath z, m³: the antiderivative of the
// area of the cuts.
func (s *solid) below(z float64) float64 {
	z = min(max(z, 0), s.height)
	k := s.form.areaFactor() * s.share
	switch {
	case s.rings != nil:
		return s.ringsBelow(z)
	case s.radius > 0:
		h, r := s.height, s.radius
		return k * s.length.c0 * s.width.c0 * z * z * (r - z/3) / (h * (2*r - h))
	}
	l, w := s.length, s.width
	foot := min(z, s.foot) * l.c0 * w.c0
	z = max(0, z-s.foot)
	a0 := l.c0 * w.c0
	a1 := l.c0*w.c1 + l.c1*w.c0
	a2 := l.c0*w.c2 + l.c1*w.c1 + l.c2*w.c0
	a3 := l.c1*w.c2 + l.c2*w.c1
	a4 := l.c2 * w.c2
	return k * (foot + z*(a0+z*(a1/2+z*(a2/3+z*(a3/4+z*a4/5)))))
}

// ringSpan returns the ends of the part between ring i−1 and ring i, in z. The
// first part reaches below the lowest ring, as wide as it, and the last above the
// highest.
func (s *solid) ringSpan(i int) (z0, d0, z1, d1 float64) {
	z0, z1 = math.Inf(-1), math.Inf(1)
	if i > 0 {
		z0, d0 = float64(s.rings[i-1].Height)-s.lift, float64(s.rings[i-1].Diameter)+s.widened
	}
	if i < len(s.rings) {
		z1, d1 = float64(s.rings[i].Height)-s.lift, float64(s.rings[i].Diameter)+s.widened
	}
	switch i {
	case 0:
		z0, d0 = min(0, z1), d1
	case len(s.rings):
		z1, d1 = max(s.height, z0), d0
	}
	return z0, d0, z1, d1
}

func (s *solid) ringDiameter(z float64) float64 {
	for i := 0; i <= len(s.rings); i++ {
		z0, d0, z1, d1 := s.ringSpan(i)
		if z <= z1 && z1 > z0 {
			return d0 + (d1-d0)*(z-z0)/(z1-z0)
		}
	}
	_, d, _, _ := s.ringSpan(len(s.rings))
	return d
}

func (s *solid) ringsBelow(z float64) float64 {
	volume := 0.0
	for i := 0; i <= len(s.rings); i++ {
		z0, d0, z1, d1 := s.ringSpan(i)
		from, to := max(z0, 0), min(z1, z)
		if to <= from || z1 <= z0 {
			continue
		}
		a := d0 + (d1-d0)*(from-z0)/(z1-z0)
		b := d0 + (d1-d0)*(to-z0)/(z1-z0)
		volume += math.Pi / 12 * (to - from) * (a*a + a*b + b*b)
	}
	return volume
}

// perimeter returns the length of the outline of a cut.
func (f form) perimeter(length, width float64) float64 {
	switch f {
	case rectangle:
		return 2 * (length + width)
	case halfEllipse:
		return length + ellipsePerimeter(length, 2*width)/2
	}
	return ellipsePerimeter(length, width)
}

// ellipsePerimeter returns the perimeter of an ellipse with the given axes, by the
// arithmetic-geometric mean (C. F. Gauss; DLMF 19.8.6), exact to the last digits.
func ellipsePerimeter(length, width float64) float64 {
	a, b := max(length, width)/2, min(length, width)/2
	if b <= 0 {
		return 4 * a
	}
	sum, weight := (a*a+b*b)/2, 0.5
	for range 12 {
		half := (a - b) / 2
		a, b = (a+b)/2, math.Sqrt(a*b)
		weight *= 2
		sum -= weight * half * half
	}
	return 2 * math.Pi * sum / a
}
