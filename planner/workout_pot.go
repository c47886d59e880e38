package planner

import (
	"math"

	"fourturn/planner/finding"
	"fourturn/planner/mix"
	"fourturn/planner/nutrition"
	"fourturn/planner/quantity"
	"fourturn/planner/vessel"
	"fourturn/planner/working"
)

// pot works out one pot: its volumes, its mix and charge, and its year.
func (w *workOut) pot(pot *Pot, search *yearSearch) PotOutlook {
	out := PotOutlook{Pot: pot, search: search}
	where := finding.Where{"pots", pot.ID}
	if p := w.places[pot.Spot]; p != nil {
		out.Spot, out.Site = p.spot, p.site
	} else {
		w.find("plan.no_spot", finding.Warning, where)
	}
	built, err := vessel.New(pot.Vessel)
	if err != nil {
		out.Faults = pot.Vessel.Validate()
		for _, fault := range out.Faults {
			w.Findings = append(w.Findings, fault.Finding(where))
		}
	} else {
		out.Vessel = &built
		w.volumes(&out, where)
	}
	w.year(&out, where)
	return out
}

// volumes fills in what depends on the pot alone.
func (w *workOut) volumes(out *PotOutlook, where finding.Where) {
	v := *out.Vessel
	fill := v.Fill()
	out.Fill = NewFigure(working.Number(float64(fill.Volume), working.Litre), fill.Working)
	out.Brim = NewFigure(working.Number(float64(v.BrimVolume()), working.Litre), func() working.Trace { return brimWorking(v) })

	first := mix.ToFill(mix.FillInput{Capacity: fill.Volume, Settling: w.Plan.Mix.Settling})
	out.Mix = NewFigure(working.Number(float64(first.Loose), working.Litre), first.Working)
	later := mix.Content{Volume: fill.Volume}.At(w.changeOut(out, 0, 0))
	out.Refresh = NewFigure(working.Number(float64(later.Loose()), working.Litre), later.Working)

	w.weigh(out, where)
	w.Findings = append(w.Findings, v.Findings(where)...)
	if dose, ok := w.dose(nutrition.MediumFeeder, fill.Volume); ok {
		out.Charge, out.Spoons = doseFigures(dose, w.prillSpoon())
	}
}

// brimWorking is the trace of the volume up to the brim: that of the fill line with
// the rim added.
func brimWorking(v vessel.Vessel) working.Trace {
	exact := working.Source{Status: working.Definition}
	fill := v.Fill().Working()
	return working.Trace{
		Name: "plan.brim", Formula: "V_brim = V + V_rim",
		Inputs: []working.Input{
			{Symbol: "V", Name: "vessel.fill", Value: fill.Result, Source: exact, From: &fill},
			{Symbol: "V_rim", Name: "plan.above_fill_line", Value: working.Number(float64(v.BrimVolume()-v.FillVolume()), working.Litre), Source: exact},
		},
		Result: working.Number(float64(v.BrimVolume()), working.Litre), Source: exact,
	}
}

func doseFigures(d nutrition.Dose, tablespoon quantity.Mass) (mass, spoons Figure) {
	level := asMeasured(float64(d.Spoons.Tablespoons) + d.Spoons.Teaspoons/3)
	spoonsOf := func() working.Trace {
		dose := d.Working()
		return working.Trace{
			Name: "plan.level_tablespoons", Formula: "n = m / t, rounded as a person measures",
			Inputs: []working.Input{
				{Symbol: "m", Name: dose.Name, Value: dose.Result, Source: dose.Source, From: &dose},
				{Symbol: "t", Name: "plan.tablespoon", Value: working.Number(float64(tablespoon), working.Kilogram), Source: tablespoonSource},
			},
			Result: working.Number(level, working.None), Source: derived, Notes: []string{"plan.note_spoons"},
		}
	}
	return NewFigure(working.Number(float64(d.Mass), working.Kilogram), d.Working),
		NewFigure(working.Number(level, working.None), spoonsOf)
}

// tablespoonSource is that of the mass of a spoon of coated prills where the person
// did not weigh one.
var tablespoonSource = working.Source{Status: working.Memory, Cite: "about 1 g/mL, 15 g a tablespoon of coated prill"}

// asMeasured rounds a number of spoons as a person measures: to halves from three on,
// to quarters below. Spoons are good to a quarter of the dose at best.
func asMeasured(spoons float64) float64 {
	if spoons >= 3 {
		return math.Round(spoons*2) / 2
	}
	return math.Max(0.25, math.Round(spoons*4)/4)
}
