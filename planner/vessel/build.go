package vessel

import (
	"math"

	"fourturn/planner/quantity"
)

// solids returns the hollow of one cell and the body around it.
func solids(s *Spec) (inner, outer solid) {
	base, wall := float64(s.base()), float64(s.Wall)
	given := givenSolid(s)
	if s.inside() {
		return given, grown(s, &given, base, wall)
	}
	return grown(s, &given, -base, -wall), given
}

// givenSolid returns the solid that the dimensions themselves describe.
func givenSolid(s *Spec) solid {
	m := func(l quantity.Length) float64 { return float64(l) }
	h := m(s.Height)
	switch s.cell() {
	case Round:
		return tapered(ellipse, m(s.BottomDiameter), m(s.TopDiameter), m(s.BottomDiameter), m(s.TopDiameter), h)
	case Cylinder:
		return tapered(ellipse, m(s.TopDiameter), m(s.TopDiameter), m(s.TopDiameter), m(s.TopDiameter), h)
	case Square:
		return tapered(rectangle, m(s.BottomWidth), m(s.TopWidth), m(s.BottomWidth), m(s.TopWidth), h)
	case Trough:
		return tapered(rectangle, m(s.BottomLength), m(s.TopLength), m(s.BottomWidth), m(s.TopWidth), h)
	case OvalTrough:
		return tapered(ellipse, m(s.BottomLength), m(s.TopLength), m(s.BottomWidth), m(s.TopWidth), h)
	case WallBasket:
		if s.BottomLength > 0 {
			return tapered(halfEllipse, m(s.BottomLength), m(s.TopLength), m(s.BottomWidth), m(s.TopWidth), h)
		}
		return rounded(halfEllipse, m(s.TopLength), m(s.TopWidth), h, h)
	case Bowl:
		return bowl(m(s.TopDiameter), h)
	case HemisphereBasket:
		return bowl(m(s.TopDiameter), m(s.TopDiameter)/2)
	case ConeBasket:
		return tapered(ellipse, 0, m(s.TopDiameter), 0, m(s.TopDiameter), h)
	case HalfBarrel:
		a := bulged(m(s.BottomDiameter), m(s.MiddleDiameter), m(s.TopDiameter), h)
		return solid{form: ellipse, height: h, length: a, width: a, share: 1}
	case Turned:
		return solid{form: ellipse, height: m(s.Rings[len(s.Rings)-1].Height), rings: s.Rings, share: 1}
	case Measured:
		return measured(s)
	}
	panic("vessel: solid of an unchecked kind")
}

func tapered(f form, bottomLength, topLength, bottomWidth, topWidth, h float64) solid {
	return solid{form: f, height: h, length: straight(bottomLength, topLength, h), width: straight(bottomWidth, topWidth, h), share: 1}
}

func rounded(f form, length, width, h, radius float64) solid {
	return solid{form: f, height: h, length: axis{c0: length}, width: axis{c0: width}, radius: radius, share: 1}
}

// bowl is the cap of a sphere of radius (a² + h²) / 2h, where a is half the
// diameter of the opening.
func bowl(diameter, h float64) solid {
	a := diameter / 2
	return rounded(ellipse, diameter, diameter, h, (a*a+h*h)/(2*h))
}

// bulged is the parabola through three diameters at the bottom, at half the height
// and at the top. Where the middle is not given, the stave is upright at the brim,
// as that of a barrel cut through at its widest.
func bulged(bottom, middle, top, h float64) axis {
	if middle == 0 {
		middle = top - (top-bottom)/4
	}
	return axis{c0: bottom, c1: (4*middle - 3*bottom - top) / h, c2: 2 * (bottom - 2*middle + top) / (h * h)}
}

// grown returns the solid on the other side of the walls: around the given one for
// base and wall above zero, within it below zero.
func grown(s *Spec, g *solid, base, wall float64) solid {
	out := *g
	out.height = g.height + base
	switch s.cell() {
	case Bowl, HemisphereBasket:
		return bowl(g.length.c0+2*wall, out.height)
	case WallBasket:
		if g.radius > 0 {
			return rounded(g.form, g.length.c0+2*wall, g.width.c0+2*wall, out.height, out.height)
		}
	case ConeBasket:
		d := g.length.at(g.height) + 2*wall
		return tapered(ellipse, 0, d, 0, d, out.height)
	case Turned:
		out.lift, out.widened = -base, 2*wall
		return out
	case Measured:
		out.length.c0 += 2 * wall
		out.width.c0 += 2 * wall
		if wall < 0 || base < 0 {
			setShare(s, &out)
		}
		return out
	}
	if base < 0 {
		out.length, out.width = g.length.shifted(-base, 2*wall), g.width.shifted(-base, 2*wall)
		return out
	}
	// The foot of the wall goes straight down: a slope carried on could meet the axis.
	out.foot = base
	out.length, out.width = g.length.shifted(0, 2*wall), g.width.shifted(0, 2*wall)
	return out
}

// measured is the upright solid over the opening that holds the water measured up
// to the fill line. Dimensions that are not known make it as wide as it is deep:
// enough for a sketch.
func measured(s *Spec) solid {
	litres := float64(s.Water) / 1000 // m³
	out := solid{form: ellipse, height: float64(s.Height), share: 1}
	length, width := float64(s.TopDiameter), float64(s.TopDiameter)
	switch {
	case s.TopLength > 0 && s.TopWidth > 0:
		out.form, length, width = rectangle, float64(s.TopLength), float64(s.TopWidth)
	case length > 0:
	case out.height > 0:
		depth := out.height - float64(defaultRim(quantity.Length(out.height), quantity.Length(out.height)))
		length = math.Sqrt(litres / depth * 4 / math.Pi)
		width = length
	default:
		length = math.Cbrt(litres * 4 / math.Pi)
		width = length
	}
	out.length.c0, out.width.c0 = length, width
	if out.height == 0 {
		rim := defaultRim(quantity.Length(min(length, width)), quantity.Length(math.Inf(1)))
		if s.Rim != nil {
			rim = *s.Rim
		}
		out.height = litres/(out.form.areaFactor()*length*width) + float64(rim)
	}
	setShare(s, &out)
	return out
}

// setShare makes the solid hold the measured water up to its fill line.
func setShare(s *Spec, out *solid) {
	fill := out.height - float64(rimOf(s, out))
	whole := out.form.areaFactor() * out.length.c0 * out.width.c0 * fill
	if whole > 0 {
		out.share = float64(s.Water) / 1000 / whole
	}
}
