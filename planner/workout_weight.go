package planner

import (
	"fourturn/planner/finding"
	"fourturn/planner/mix"
	"fourturn/planner/quantity"
	"fourturn/planner/vessel"
	"fourturn/planner/working"
)

// weigh fills in what the pot weighs: empty, with its plants and its water, dry and
// watered, and what it bears on the floor.
func (w *workOut) weigh(out *PotOutlook, where finding.Where) {
	v := *out.Vessel
	empty := v.EmptyMass()
	tops := mix.Tops{Opening: v.Opening().Area, Entered: out.Pot.PlantMass}
	substrate, _ := mix.SubstrateOf(w.Plan.Mix.Substrate)
	weight := mix.Weigh(mix.WeightInput{
		Pot: empty.Mass, Mix: v.FillVolume(), Substrate: substrate, Plants: tops.Mass(),
		Reservoir: v.ReservoirVolume(), Gravel: v.LayerVolume(), Footprint: w.footprint(out),
	}).From(empty.Working, tops.Working)
	out.Weight = weight
	if empty.Known {
		out.Empty = kilograms(empty.Mass, empty.Working)
	}
	out.Tops = kilograms(tops.Mass(), tops.Working)
	out.Dry = kilograms(weight.Dry, func() working.Trace { return dryWorking(weight) })
	out.Wet = kilograms(weight.Drained, weight.Working)
	if weight.FloorLoad > 0 {
		out.Load = NewFigure(working.Number(weight.FloorLoad, working.KilogramPerM2), weight.FloorWorking)
	}
	if water := v.ReservoirVolume(); water > 0 {
		out.Reservoir = NewFigure(working.Number(float64(water), working.Litre), v.ReservoirWorking)
	}
	if layer := v.LayerVolume(); layer > 0 {
		out.Layer = NewFigure(working.Number(float64(layer), working.Litre), v.LayerWorking)
	}
	w.Findings = append(w.Findings, weight.Findings(where)...)
}

func kilograms(m quantity.Mass, trace func() working.Trace) Figure {
	return NewFigure(working.Number(float64(m), working.Kilogram), trace)
}

// footprint returns the area that carries the pot; nothing under a hanging one.
func (w *workOut) footprint(out *PotOutlook) quantity.Area {
	switch out.Pot.Vessel.Kind {
	case vessel.HemisphereBasket, vessel.ConeBasket, vessel.WallBasket:
		return 0
	default:
		return out.Vessel.Footprint()
	}
}

// dryWorking is the trace of the weight with dry mix: what is carried when watered,
// less the water.
func dryWorking(weight mix.Weight) working.Trace {
	wet := weight.Working()
	return working.Trace{
		Name: "plan.dry", Formula: "m_dry = m_wet − water",
		Inputs: []working.Input{
			{Symbol: "m_wet", Name: wet.Name, Value: wet.Result, Source: wet.Source, From: &wet},
			{Symbol: "water", Name: "plan.water_held", Value: working.Number(float64(weight.Drained-weight.Dry), working.Kilogram), Source: derived},
		},
		Result: working.Number(float64(weight.Dry), working.Kilogram), Source: derived,
	}
}
