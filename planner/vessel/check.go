package vessel

import (
	"math"

	"fourturn/planner/quantity"
	"fourturn/planner/working"
)

// Validate returns what is wrong with the Spec, in the order of its fields, or nil.
func (s Spec) Validate() []Fault {
	c := checker{spec: &s}
	if !c.kind() {
		return c.faults
	}
	c.dimensions()
	c.walls()
	if len(c.faults) == 0 { // the hollow is known
		c.room()
	}
	c.liner()
	return c.faults
}

type checker struct {
	spec   *Spec
	faults []Fault
}

func (c *checker) report(f Fault) { c.faults = append(c.faults, f) }

func metres(l quantity.Length) working.Value {
	return working.Number(float64(l), working.Metre)
}

func outside(x, lowest, highest quantity.Length) bool {
	return !(x >= lowest && x <= highest) // true for NaN
}

// within reports a length that is not from lowest to highest.
func (c *checker) within(field Field, index int, x, lowest, highest quantity.Length) {
	if outside(x, lowest, highest) {
		c.report(Fault{
			Code: FaultRange, Field: field, Index: index,
			Found: metres(x), Lowest: metres(lowest), Highest: metres(highest),
		})
	}
}

func (c *checker) unknown(field Field, word string) {
	c.report(Fault{Code: FaultUnknown, Field: field, Found: working.Text(word)})
}

func (c *checker) kind() bool {
	s := c.spec
	if s.MeasuredOn != "" && s.MeasuredOn != Inside && s.MeasuredOn != Outside {
		c.unknown(FieldMeasuredOn, string(s.MeasuredOn))
	}
	if s.Material != "" {
		if _, known := materials[s.Material]; !known {
			c.unknown(FieldMaterial, string(s.Material))
		}
	}
	switch {
	case s.Kind == "":
		c.report(Fault{Code: FaultMissing, Field: FieldKind})
	case s.Kind == Pockets && s.Cell == "":
		c.report(Fault{Code: FaultMissing, Field: FieldCell})
	case s.Kind == Pockets && !isCell(s.Cell):
		c.unknown(FieldCell, string(s.Cell))
	case s.Kind != Pockets && s.Kind != Turned && dimensionsOf[s.Kind] == nil:
		c.unknown(FieldKind, string(s.Kind))
	default:
		return true
	}
	return false
}

func (c *checker) dimensions() {
	s := c.spec
	for _, d := range dimensionsOf[s.cell()] {
		x := *d.at(s)
		switch {
		case x != 0:
			c.within(d.Field, 0, x, d.Lowest, d.Highest)
		case d.Required:
			c.report(Fault{Code: FaultMissing, Field: d.Field, Lowest: metres(d.Lowest), Highest: metres(d.Highest)})
		}
	}
	switch s.Kind {
	case Pockets:
		c.number(FieldCells, float64(s.Cells), 1, MaxCells, working.None)
	case Measured:
		c.number(FieldWater, float64(s.Water), float64(MinWater), float64(MaxWater), working.Litre)
		c.together(FieldTopLength, FieldTopWidth, s.TopLength, s.TopWidth)
	case Turned:
		c.rings()
	}
	switch s.cell() {
	case WallBasket:
		c.together(FieldBottomLength, FieldBottomWidth, s.BottomLength, s.BottomWidth)
	case HalfBarrel:
		c.stave()
	}
}

// number reports a number that is not given or not from lowest to highest.
func (c *checker) number(field Field, x, lowest, highest float64, unit working.Unit) {
	f := Fault{
		Code: FaultRange, Field: field, Found: working.Number(x, unit),
		Lowest: working.Number(lowest, unit), Highest: working.Number(highest, unit),
	}
	switch {
	case x == 0:
		f.Code = FaultMissing
		c.report(f)
	case !(x >= lowest && x <= highest):
		c.report(f)
	}
}

// together reports the one of two lengths that is missing beside the other.
func (c *checker) together(first, second Field, a, b quantity.Length) {
	if a == 0 && b != 0 {
		c.report(Fault{Code: FaultTogether, Field: first})
	}
	if a != 0 && b == 0 {
		c.report(Fault{Code: FaultTogether, Field: second})
	}
}

func (c *checker) rings() {
	rings := c.spec.Rings
	if n := len(rings); n < 2 || n > MaxRings {
		c.report(Fault{
			Code: FaultRange, Field: FieldRings, Found: working.Number(float64(n), working.None),
			Lowest: working.Number(2, working.None), Highest: working.Number(MaxRings, working.None),
		})
		return
	}
	for i, r := range rings {
		highest := quantity.Length(MaxHeight)
		if i == 0 {
			highest = 0
		}
		c.within(FieldRingHeight, i, r.Height, 0, highest)
		c.within(FieldRingDiameter, i, r.Diameter, MinAcross, MaxAcross)
		if i > 0 && r.Height <= rings[i-1].Height {
			c.report(Fault{Code: FaultOrder, Field: FieldRingHeight, Index: i, Found: metres(r.Height), Lowest: metres(rings[i-1].Height)})
		}
	}
	if last := len(rings) - 1; len(c.faults) == 0 {
		c.within(FieldRingHeight, last, rings[last].Height, MinHeight, MaxHeight)
	}
}

// stave reports a parabola that leaves no width somewhere between its ends.
func (c *checker) stave() {
	s := c.spec
	if s.MiddleDiameter == 0 || s.Height <= 0 {
		return
	}
	a := bulged(float64(s.BottomDiameter), float64(s.MiddleDiameter), float64(s.TopDiameter), float64(s.Height))
	if a.c2 == 0 {
		return
	}
	if z := -a.c1 / (2 * a.c2); z > 0 && z < float64(s.Height) && a.at(z) < float64(MinAcross) {
		c.report(Fault{Code: FaultShape, Field: FieldMiddleDiameter, Found: metres(s.MiddleDiameter)})
	}
}

func (c *checker) walls() {
	s := c.spec
	c.within(FieldWall, 0, s.Wall, 0, MaxWall)
	c.within(FieldBase, 0, s.Base, 0, MaxWall)
	if s.Rim != nil {
		c.within(FieldRim, 0, *s.Rim, 0, MaxHeight)
	}
	c.within(FieldFalseBottom, 0, s.FalseBottom, 0, MaxHeight)
	c.within(FieldDrainageLayer, 0, s.DrainageLayer, 0, MaxHeight)
	if s.ReservoirWater != 0 {
		c.number(FieldReservoirWater, float64(s.ReservoirWater), 0, float64(MaxWater), working.Litre)
	}
}

// room reports walls that leave no hollow, and features that leave no room for mix.
func (c *checker) room() {
	s := c.spec
	in, _ := solids(s)
	if s.Kind == Measured && in.height > float64(MaxHeight) {
		c.report(Fault{
			Code: FaultRange, Field: FieldWater, Found: working.Number(float64(s.Water), working.Litre),
			Lowest: working.Number(float64(MinWater), working.Litre), Highest: working.Number(float64(s.Water)*float64(MaxHeight)/in.height, working.Litre),
		})
		return
	}
	if math.IsInf(in.height, 0) || !(in.height > leastOpenDepth) {
		c.report(Fault{
			Code: FaultNoHollow, Field: FieldBase, Found: metres(s.base()), Lowest: metres(0),
			Highest: metres(s.base() + quantity.Length(in.height-leastOpenDepth)),
		})
		return
	}
	if narrow := narrowest(&in); !(narrow >= 0) || !(in.below(in.height) > 0) {
		c.report(Fault{
			Code: FaultNoHollow, Field: FieldWall, Found: metres(s.Wall), Lowest: metres(0),
			Highest: metres(max(0, s.Wall+quantity.Length(narrow/2))),
		})
		return
	}
	v := vesselOf(s)
	if s.Liner == nil && !(v.fill-v.floor >= leastOpenDepth) {
		c.report(Fault{
			Code: FaultNoRoom, Field: widestFeature(&v), Found: metres(quantity.Length(in.height - (v.fill - v.floor))),
			Lowest: metres(0), Highest: metres(quantity.Length(in.height - leastOpenDepth)),
		})
	}
	if space := v.under(float64(s.FalseBottom)); s.ReservoirWater > space*(1+1e-9) {
		c.report(Fault{
			Code: FaultRange, Field: FieldReservoirWater, Found: working.Number(float64(s.ReservoirWater), working.Litre),
			Lowest: working.Number(0, working.Litre), Highest: working.Number(float64(space), working.Litre),
		})
	}
}

// widestFeature returns the field that takes most of the height.
func widestFeature(v *Vessel) Field {
	field, most := FieldRim, v.inner.height-v.fill
	if h := float64(v.spec.FalseBottom); h > most {
		field, most = FieldFalseBottom, h
	}
	if h := float64(v.spec.DrainageLayer); h > most {
		field = FieldDrainageLayer
	}
	return field
}

// narrowest returns the smaller of the least length and the least width.
func narrowest(s *solid) float64 {
	least := math.Inf(1)
	if s.rings != nil {
		for _, r := range s.rings {
			least = min(least, float64(r.Diameter)+s.widened)
		}
		return least
	}
	for _, z := range [...]float64{0, s.height / 2, s.height} {
		if s.radius > 0 {
			z = s.height
		}
		l, w := s.at(z)
		least = min(least, l, w)
	}
	return least
}
