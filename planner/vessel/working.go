package vessel

import (
	"fourturn/planner/quantity"
	"fourturn/planner/working"
)

// Fill is the mix that a vessel takes up to its fill line, firm. It remembers the
// vessel for its working.
type Fill struct {
	Volume quantity.Volume
	vessel Vessel
}

// Fill returns [Vessel.FillVolume] with its working.
func (v Vessel) Fill() Fill { return Fill{Volume: v.FillVolume(), vessel: v} }

var (
	exact   = working.Source{Status: working.Definition}
	entered = working.Source{Status: working.Entered}
)

// formulas of the volume beneath height z, by kind. D and d are the diameters, L, l
// the lengths and W, w the widths at z and at the bottom.
var formulas = map[Kind]string{
	Round:            "V(z) = π/12 × z × (D² + D·d + d²)",
	Cylinder:         "V(z) = π/4 × D² × z",
	Bowl:             "V(z) = π × z² × (R − z/3), R = (D²/4 + h²) / 2h",
	HemisphereBasket: "V(z) = π × z² × (R − z/3), R = D/2",
	ConeBasket:       "V(z) = π/12 × D(z)² × z",
	Square:           "V(z) = z/3 × (W² + W·w + w²)",
	Trough:           "V(z) = z/6 × (2·L·W + L·w + l·W + 2·l·w)",
	OvalTrough:       "V(z) = π/24 × z × (2·L·W + L·w + l·W + 2·l·w)",
	HalfBarrel:       "V(z) = π/4 × ∫ (d + b·z + c·z²)² dz",
	WallBasket:       "V(z) = π/4 × ∫ L(z)·W(z) dz",
	Turned:           "V(z) = Σ π/12 × Δz × (D₁² + D₁·D₂ + D₂²)",
	Measured:         "V(z) = V_water × z / z_fill",
}

// Working returns the trace of the fill: the volume beneath the fill line less the
// volume beneath the floor of the mix.
func (f Fill) Working() working.Trace {
	v := f.vessel.holder()
	full, floor := v.under(v.fill), v.under(v.floor)
	geometry := v.geometry(full)
	trace := working.Trace{
		Name: "vessel.fill", Formula: "V = V_line − V_floor",
		Inputs: []working.Input{
			{Symbol: "V_line", Name: "vessel.volume_to_fill_line", Value: working.Number(float64(full), working.Litre), Source: exact, From: &geometry},
			{Symbol: "V_floor", Name: "vessel.volume_under_floor", Value: working.Number(float64(floor), working.Litre), Source: exact},
		},
		Result: working.Number(float64(f.Volume), working.Litre),
		Source: exact,
	}
	if f.vessel.spec.Liner != nil {
		trace.Notes = append(trace.Notes, "vessel.note_liner")
	}
	if v.spec.DrainageLayer > 0 {
		trace.Notes = append(trace.Notes, "vessel.note_drainage_layer")
	}
	return trace
}

// geometry is the trace of the volume beneath the fill line.
func (v *Vessel) geometry(full quantity.Volume) working.Trace {
	s := &v.spec
	trace := working.Trace{
		Name: "vessel.volume_to_fill_line", Formula: formulas[s.cell()],
		Result: working.Number(float64(full), working.Litre),
		Source: working.Source{Status: working.Definition, Cite: "W. Beyer, CRC Standard Mathematical Tables, mensuration"},
		Notes:  []string{"vessel.kind." + string(s.Kind)},
	}
	if s.Kind == Pockets {
		trace.Formula += ", V = n × V(z)"
		trace.Inputs = append(trace.Inputs, working.Input{Symbol: "n", Name: "vessel.field.cells", Value: working.Number(float64(s.Cells), working.None), Source: entered})
	}
	if s.Kind == Measured {
		trace.Source = entered
		trace.Inputs = append(trace.Inputs, working.Input{Symbol: "V_water", Name: "vessel.field.water", Value: working.Number(float64(s.Water), working.Litre), Source: entered})
	}
	for _, d := range dimensionsOf[s.cell()] {
		if x := *d.at(s); x != 0 {
			trace.Inputs = append(trace.Inputs, working.Input{Name: "vessel.field." + string(d.Field), Value: metres(x), Source: entered})
		}
	}
	if s.Kind == Turned {
		trace.Inputs = append(trace.Inputs, working.Input{Name: "vessel.field.rings", Value: working.Number(float64(len(s.Rings)), working.None), Source: entered})
	}
	if !s.inside() {
		trace.Inputs = append(trace.Inputs,
			working.Input{Name: "vessel.field.wall", Value: metres(s.Wall), Source: entered},
			working.Input{Name: "vessel.field.base", Value: metres(s.base()), Source: entered})
	}
	trace.Inputs = append(trace.Inputs,
		working.Input{Name: "vessel.field.rim", Value: metres(quantity.Length(v.rim)), Source: s.rimSource()},
		working.Input{Symbol: "z", Name: "vessel.fill_height", Value: metres(quantity.Length(v.fill)), Source: exact})
	return trace
}

// LayerWorking returns the trace of the volume of the drainage layer.
func (v Vessel) LayerWorking() working.Trace {
	trace := working.Trace{
		Name: "vessel.layer_volume", Formula: "V = V(z_bottom + t) − V(z_bottom)",
		Result: working.Number(float64(v.LayerVolume()), working.Litre),
		Source: exact,
		Notes:  []string{"vessel.note_drainage_layer"},
	}
	for _, s := range []*Spec{&v.spec, v.spec.Liner} {
		if s != nil && s.DrainageLayer > 0 {
			trace.Inputs = append(trace.Inputs,
				working.Input{Symbol: "t", Name: "vessel.field.drainage_layer", Value: metres(s.DrainageLayer), Source: entered},
				working.Input{Symbol: "z_bottom", Name: "vessel.field.false_bottom", Value: metres(s.FalseBottom), Source: entered})
		}
	}
	return trace
}

// RimWorking returns the trace of the watering rim of what holds the mix.
func (v Vessel) RimWorking() working.Trace {
	h := v.holder()
	trace := working.Trace{
		Name: "vessel.field.rim", Formula: "r", Result: metres(quantity.Length(h.rim)), Source: h.spec.rimSource(),
	}
	if h.spec.Rim != nil {
		return trace
	}
	l, w := h.inner.at(h.inner.height)
	trace.Formula = "r = min(r(d), h / 5)"
	trace.Inputs = []working.Input{
		{Symbol: "d", Name: "vessel.across", Value: metres(quantity.Length(min(l, w))), Source: exact},
		{Symbol: "h", Name: "vessel.depth", Value: metres(quantity.Length(h.inner.height)), Source: exact},
	}
	trace.Notes = []string{"vessel.note_rim"}
	return trace
}

// ReservoirWorking returns the trace of the water in the reservoir.
func (v Vessel) ReservoirWorking() working.Trace {
	trace := working.Trace{
		Name: "vessel.reservoir_volume", Formula: "W = V(z_bottom)",
		Result: working.Number(float64(v.ReservoirVolume()), working.Litre),
		Source: exact,
	}
	for _, s := range []*Spec{&v.spec, v.spec.Liner} {
		switch {
		case s == nil || !s.Reservoir:
		case s.ReservoirWater > 0:
			trace.Formula = "W"
			trace.Inputs = append(trace.Inputs, working.Input{Symbol: "W", Name: "vessel.field.reservoir_water", Value: working.Number(float64(s.ReservoirWater), working.Litre), Source: entered})
		default:
			trace.Inputs = append(trace.Inputs, working.Input{Symbol: "z_bottom", Name: "vessel.field.false_bottom", Value: metres(s.FalseBottom), Source: entered})
		}
	}
	return trace
}
