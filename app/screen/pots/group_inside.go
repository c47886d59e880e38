package pots

import (
	"strings"

	"fourturn/app/words"
	"fourturn/planner"
	"fourturn/planner/quantity"
	"fourturn/planner/vessel"
	"fourturn/planner/working"
)

// insideGroup is what takes room from the mix, and whether water can drain.
func (s *Screen) insideGroup(pot *planner.Pot) Group {
	w := s.words
	spec := &pot.Vessel
	v := built(pot)
	g := Group{Key: groupInside}
	if spec.Liner == nil { // else the rim is that of the liner
		g.Fields = append(g.Fields, s.measure(ofPot, vessel.FieldRim, "pots.help_rim", s.rim(spec, v)))
	}
	g.Fields = append(g.Fields,
		s.yesNo("no_holes", "pots.holes", "pots.holes_there", "pots.holes_none", spec.NoHoles, func(spec *vessel.Spec, none bool) { spec.NoHoles = none }),
		s.measure(ofPot, vessel.FieldFalseBottom, "pots.help_none", s.given(spec.FalseBottom)),
		s.yesNo("reservoir", "pots.reservoir", "pots.reservoir_none", "pots.reservoir_there", spec.Reservoir, setReservoir))
	if spec.Reservoir {
		water := ""
		if spec.ReservoirWater > 0 {
			water = w.Water(spec.ReservoirWater, s.session.Plan().Units)
		}
		g.Fields = append(g.Fields, s.measure(ofPot, vessel.FieldReservoirWater, "pots.help_reservoir", water))
	}
	g.Fields = append(g.Fields, s.measure(ofPot, vessel.FieldDrainageLayer, "pots.help_layer", s.given(spec.DrainageLayer)))
	g.Summary = s.insideSummary(spec, v)
	if v == nil {
		return g
	}
	g.Figures = append(g.Figures, s.named("pots.rim", working.Number(float64(v.Rim()), working.Metre), v.RimWorking))
	if spec.FalseBottom > 0 || spec.Reservoir {
		g.Figures = append(g.Figures, s.named("pots.reservoir_water", working.Number(float64(v.ReservoirVolume()), working.Litre), v.ReservoirWorking))
	}
	if v.LayerVolume() > 0 {
		g.Figures = append(g.Figures, s.named("pots.layer", working.Number(float64(v.LayerVolume()), working.Litre), v.LayerWorking))
	}
	g.Notes = append(g.Notes, w.T("pots.layer_disputed"))
	return g
}

// usualReservoir is how high a reservoir is until somebody measures it (judgement).
const usualReservoir = 5 * quantity.Centimetre

// setReservoir makes room for the water where there is no false bottom yet.
func setReservoir(spec *vessel.Spec, there bool) {
	spec.Reservoir = there
	if there && spec.FalseBottom == 0 {
		spec.FalseBottom = usualReservoir
		if v, err := vessel.New(*spec); err != nil || v.MixDepth() < usualReservoir {
			spec.FalseBottom = quantity.Centimetre
		}
	}
}

func (s *Screen) insideSummary(spec *vessel.Spec, v *vessel.Vessel) string {
	w := s.words
	var parts []string
	if v != nil && spec.Liner == nil {
		parts = append(parts, w.T("pots.summary_rim", words.A{"rim": s.Length(v.Rim())}))
	}
	if spec.NoHoles {
		parts = append(parts, w.T("pots.summary_no_holes"))
	}
	switch {
	case spec.Reservoir && v != nil:
		parts = append(parts, w.T("pots.summary_reservoir", words.A{"water": w.Water(v.ReservoirVolume(), s.session.Plan().Units)}))
	case spec.FalseBottom > 0:
		parts = append(parts, w.T("pots.summary_false_bottom", words.A{"height": s.Length(spec.FalseBottom)}))
	}
	if spec.DrainageLayer > 0 {
		parts = append(parts, w.T("pots.summary_layer", words.A{"thickness": s.Length(spec.DrainageLayer)}))
	}
	return words.Capital(strings.Join(parts, ", "))
}

// named is a figure with its working that is not worked out by the front door.
func (s *Screen) named(key string, value working.Value, trace func() working.Trace) Figure {
	f, _ := s.figure(key, planner.NewFigure(value, trace))
	return f
}
