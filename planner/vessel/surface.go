package vessel

import (
	"math"

	"fourturn/planner/quantity"
)

// Points and weights of the Gauss-Legendre rule of 8 points on −1 to 1 (M.
// Abramowitz and I. Stegun, Handbook of Mathematical Functions, table 25.4).
var (
	gaussPoints  = [4]float64{0.1834346424956498, 0.5255324099163290, 0.7966664774136267, 0.9602898564975363}
	gaussWeights = [4]float64{0.3626837833783620, 0.3137066458778873, 0.2223810344533745, 0.1012285362903763}
)

// gauss integrates f from a to b in the given number of parts.
func gauss(a, b float64, parts int, f func(float64) float64) float64 {
	sum, half := 0.0, (b-a)/float64(2*parts)
	for i := range parts {
		middle := a + half*float64(2*i+1)
		for j, p := range gaussPoints {
			sum += gaussWeights[j] * (f(middle-half*p) + f(middle+half*p))
		}
	}
	return sum * half
}

// WallArea returns the inside surface of the sides up to the brim and that of the
// bottom, of all cells together. Sides of circles and rectangles are exact; those
// of ellipses are integrated to about six digits.
func (v Vessel) WallArea() (side, bottom quantity.Area) {
	n := quantity.Area(v.spec.cells())
	l, w := v.inner.at(0)
	return quantity.Area(v.inner.sideArea()) * n, quantity.Area(v.inner.form.areaFactor()*l*w) * n
}

// sideArea returns the surface of the sides, m².
func (s *solid) sideArea() float64 {
	switch {
	case s.rings != nil:
		return s.ringsSideArea()
	case s.form == rectangle:
		return s.flatSideArea()
	case s.radius > 0 && s.form == ellipse:
		return 2 * math.Pi * s.radius * s.height // the zone of a sphere
	case s.radius > 0:
		return s.curvedCapArea() + s.backArea()
	case s.form == halfEllipse:
		return s.curvedSideArea(math.Pi) + s.backArea()
	case s.length.c2 == 0 && s.length == s.width:
		return coneArea(s.length.at(0), s.length.at(s.height), s.height)
	}
	return s.curvedSideArea(2 * math.Pi)
}

// coneArea is the side of a frustum with diameters a and b.
func coneArea(a, b, height float64) float64 {
	return math.Pi / 2 * (a + b) * math.Hypot((b-a)/2, height)
}

func (s *solid) ringsSideArea() float64 {
	area := 0.0
	for i := 0; i <= len(s.rings); i++ {
		z0, d0, z1, d1 := s.ringSpan(i)
		from, to := max(z0, 0), min(z1, s.height)
		if to <= from || z1 <= z0 {
			continue
		}
		slope := (d1 - d0) / (z1 - z0)
		area += coneArea(d0+slope*(from-z0), d0+slope*(to-z0), to-from)
	}
	return area
}

// flatSideArea is that of four trapezia.
func (s *solid) flatSideArea() float64 {
	l0, w0 := s.at(0)
	l1, w1 := s.at(s.height)
	return (l0+l1)*math.Hypot((w1-w0)/2, s.height) + (w0+w1)*math.Hypot((l1-l0)/2, s.height)
}

// backArea is the flat back of a wall basket.
func (s *solid) backArea() float64 {
	if s.radius > 0 {
		return math.Pi / 4 * s.length.c0 * s.height // half of an ellipse
	}
	l0, _ := s.at(0)
	l1, _ := s.at(s.height)
	return (l0 + l1) / 2 * s.height
}

// semiAxes returns half the length, and half the width of the whole ellipse of
// which a half ellipse is one side, with the rate at which each grows with z.
func (s *solid) semiAxes(z float64) (a, b, da, db float64) {
	l, w := s.at(z)
	a, b, da, db = l/2, w/2, s.length.slope(z)/2, s.width.slope(z)/2
	if s.form == halfEllipse {
		b, db = 2*b, 2*db
	}
	return a, b, da, db
}

// curvedSideArea integrates the surface (a·cos t, b·sin t, z) over t up to turn
// (2π for all round) and over z.
func (s *solid) curvedSideArea(turn float64) float64 {
	quarter := gauss(0, s.height, 4, func(z float64) float64 {
		a, b, da, db := s.semiAxes(z)
		return gauss(0, math.Pi/2, 4, func(t float64) float64 {
			sin, cos := math.Sincos(t)
			lean := a*db*sin*sin + b*da*cos*cos
			return math.Sqrt(b*b*cos*cos + a*a*sin*sin + lean*lean)
		})
	})
	return quarter * turn / (math.Pi / 2)
}

// curvedCapArea integrates the curved part of a rounded wall basket, a quarter of
// an ellipsoid (a·sin u·cos t, b·sin u·sin t, −h·cos u).
func (s *solid) curvedCapArea() float64 {
	a, b, h := s.length.c0/2, s.width.c0, s.height
	eighth := gauss(0, math.Pi/2, 4, func(u float64) float64 {
		su, cu := math.Sincos(u)
		return gauss(0, math.Pi/2, 4, func(t float64) float64 {
			st, ct := math.Sincos(t)
			x, y, z := b*h*su*ct, a*h*su*st, a*b*cu
			return su * math.Sqrt(x*x+y*y+z*z)
		})
	})
	return 2 * eighth
}
