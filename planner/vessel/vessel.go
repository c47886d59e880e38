package vessel

import "fourturn/planner/quantity"

// Vessel is a pot whose Spec is good. It is immutable and safe to copy.
type Vessel struct {
	spec         Spec
	inner, outer solid
	rim          float64 // m
	fill         float64 // height of the fill line above the inside bottom, m
	floor        float64 // height from which mix is filled in, m
}

// New returns the vessel of a Spec, or a [*FaultError] with all that is wrong.
func New(s Spec) (Vessel, error) {
	if faults := s.Validate(); len(faults) > 0 {
		return Vessel{}, &FaultError{Faults: faults}
	}
	return vesselOf(&s), nil
}

func vesselOf(s *Spec) Vessel {
	v := Vessel{spec: *s}
	v.inner, v.outer = solids(s)
	v.rim = float64(rimOf(s, &v.inner))
	v.fill = v.inner.height - v.rim
	v.floor = float64(s.FalseBottom + s.DrainageLayer)
	return v
}

// Spec returns the description that the vessel was made from.
func (v Vessel) Spec() Spec { return v.spec }

// holder returns the vessel that holds the mix: the liner, or the pot itself.
func (v *Vessel) holder() *Vessel {
	if v.spec.Liner == nil {
		return v
	}
	liner := vesselOf(v.spec.Liner)
	return &liner
}

// litres turns the cubic metres of one cell into the volume of all.
func (v *Vessel) litres(cubicMetres float64) quantity.Volume {
	return quantity.Volume(cubicMetres * 1000 * float64(v.spec.cells()))
}

// under returns the volume beneath height z above the inside bottom.
func (v *Vessel) under(z float64) quantity.Volume { return v.litres(v.inner.below(z)) }

// FillVolume returns how much mix the vessel takes, firm, up to its fill line: above
// a false bottom and a drainage layer, and in the liner where there is one.
func (v Vessel) FillVolume() quantity.Volume {
	h := v.holder()
	return h.under(h.fill) - h.under(h.floor)
}

// BrimVolume returns the volume of the hollow up to the brim, of the pot itself and
// not of its liner.
func (v Vessel) BrimVolume() quantity.Volume { return v.under(v.inner.height) }

// VolumeBelow returns the volume of the hollow beneath a height above the inside
// bottom; 0 below the bottom, all of it above the brim.
func (v Vessel) VolumeBelow(height quantity.Length) quantity.Volume { return v.under(float64(height)) }

// LayerVolume returns the volume of the drainage layer: in the pot, and in its liner
// where there is one.
func (v Vessel) LayerVolume() quantity.Volume {
	volume := v.layer()
	if v.spec.Liner != nil {
		volume += v.holder().layer()
	}
	return volume
}

func (v *Vessel) layer() quantity.Volume {
	return v.under(v.floor) - v.under(float64(v.spec.FalseBottom))
}

// ReservoirVolume returns the water that the reservoir holds, or 0 without one.
func (v Vessel) ReservoirVolume() quantity.Volume {
	volume := v.spec.reservoir(&v)
	if v.spec.Liner != nil {
		volume += v.spec.Liner.reservoir(v.holder())
	}
	return volume
}

func (s *Spec) reservoir(v *Vessel) quantity.Volume {
	switch {
	case !s.Reservoir:
		return 0
	case s.ReservoirWater > 0:
		return s.ReservoirWater
	}
	return v.under(float64(s.FalseBottom))
}

// Height returns the height of the pot outside.
func (v Vessel) Height() quantity.Length { return quantity.Length(v.outer.height) }

// Depth returns the depth of the hollow, from the brim to the inside bottom.
func (v Vessel) Depth() quantity.Length { return quantity.Length(v.inner.height) }

// Rim returns the distance from the fill line to the brim of what holds the mix.
func (v Vessel) Rim() quantity.Length { return quantity.Length(v.holder().rim) }

// MixDepth returns the height of the mix, from where it is filled in to the fill
// line.
func (v Vessel) MixDepth() quantity.Length {
	h := v.holder()
	return quantity.Length(h.fill - h.floor)
}

// WidthAt returns how wide the hollow is at a height above its bottom: its length,
// for shapes longer than wide, and its width the other way. Both are 0 outside it.
func (v Vessel) WidthAt(height quantity.Length) (length, width quantity.Length) {
	return across(&v.inner, float64(height))
}

// OutsideWidthAt returns how wide the pot is outside at a height above the ground.
func (v Vessel) OutsideWidthAt(height quantity.Length) (length, width quantity.Length) {
	return across(&v.outer, float64(height))
}

func across(s *solid, z float64) (length, width quantity.Length) {
	if z < 0 || z > s.height {
		return 0, 0
	}
	l, w := s.at(z)
	return quantity.Length(l), quantity.Length(w)
}

// Opening is the surface of the mix at the fill line.
type Opening struct {
	Area      quantity.Area   // of all cells together
	Perimeter quantity.Length // of all cells together
	Length    quantity.Length // of one cell
	Width     quantity.Length // of one cell
	Cells     int
}

// Opening returns the surface of the mix at the fill line.
func (v Vessel) Opening() Opening {
	h := v.holder()
	l, w := h.inner.at(h.fill)
	n := h.spec.cells()
	return Opening{
		Area:      quantity.Area(h.inner.form.areaFactor() * l * w * float64(n)),
		Perimeter: quantity.Length(h.inner.form.perimeter(l, w) * float64(n)),
		Length:    quantity.Length(l),
		Width:     quantity.Length(w),
		Cells:     n,
	}
}

// Footprint returns the area on which the pot stands, or for a hanging basket or a
// bowl that stands on a point the area of a fifth of its width across (judgement).
func (v Vessel) Footprint() quantity.Area {
	l, w := v.outer.at(0)
	if l*w == 0 {
		const footShare = 0.2
		l, w = v.outer.at(v.outer.height)
		l, w = l*footShare, w*footShare
	}
	return quantity.Area(v.outer.form.areaFactor() * l * w * float64(v.spec.cells()))
}
