package nutrition

import (
	"fourturn/planner/civil"
	"fourturn/planner/quantity"
	"fourturn/planner/working"
)

// Charge is one dose of slow release in a pot.
type Charge struct {
	Product   SlowRelease
	Date      civil.Date // goes in on the morning of this day
	Mass      quantity.Mass
	Placement Placement
}

// Taking is mix taken out of a pot, with the prills in it.
type Taking struct {
	Date  civil.Date
	Share float64 // of the mix, 0 to 1
}

// Track follows one charge through time.
type Track struct {
	Charge  Charge
	Thermal *Thermal // of the pot's mix
	Takings []Taking // of its pot, in order of date; those up to the charge's own day are not read

	curve curve
}

// Follow returns the track of a charge at the temperatures of its pot. It panics on
// a product whose longevity or coated share describes no release.
func Follow(c Charge, t *Thermal, takings []Taking) Track {
	c.Product = c.Product.filled()
	return Track{Charge: c, Thermal: t, Takings: takings, curve: c.Product.curve(t.kinetics)}
}

// Age returns the age of the charge on the morning of d, in days at its reference
// temperature.
func (t Track) Age(d civil.Date) float64 {
	if d <= t.Charge.Date {
		return 0
	}
	return t.Thermal.Age(t.Charge.Date, d, t.Charge.Product.Reference)
}

// Released returns the share of the charge's nutrients that is out by the morning of d.
func (t Track) Released(d civil.Date) float64 { return t.curve.released(t.Age(d)) }

// Left returns the share still in the prills on the morning of d.
func (t Track) Left(d civil.Date) float64 { return 1 - t.Released(d) }

// kept returns the share of the prills that is still in the pot on day d.
func (t Track) kept(d civil.Date) float64 {
	share := 1.0
	for _, taking := range t.Takings {
		if taking.Date > t.Charge.Date && taking.Date <= d {
			share *= 1 - taking.Share
		}
	}
	return share
}

// InPot returns what is still in prills in the pot on the morning of d, as mass of
// product; on the day of a taking, after it.
func (t Track) InPot(d civil.Date) quantity.Mass {
	if d < t.Charge.Date {
		return 0
	}
	return t.Charge.Mass * quantity.Mass(t.Left(d)*t.kept(d))
}

// SpentOn returns the first morning on which the charge is spent by the settings of
// its [Kinetics]; ok is false when that takes more than 20 years.
func (t Track) SpentOn() (day civil.Date, ok bool) {
	day, ok = t.Thermal.reach(t.Charge.Date, t.curve.ageAt(t.Thermal.kinetics.Spent), t.Charge.Product.Reference)
	return max(day, t.Charge.Date+1), ok // what is not coated dissolves on the first day
}

// Dissolved returns the mass of product that reaches the mix from the morning of
// from to the morning of to: what is released, less what a place on top loses.
func (t Track) Dissolved(from, to civil.Date) quantity.Mass {
	from = max(from, t.Charge.Date)
	if to <= from {
		return 0
	}
	share, start := 0.0, from
	for _, taking := range t.Takings {
		if taking.Date > start && taking.Date < to {
			share += (t.Released(taking.Date) - t.Released(start)) * t.kept(start)
			start = taking.Date
		}
	}
	share += (t.Released(to) - t.Released(start)) * t.kept(start)
	if t.Charge.Placement == OnTop {
		share *= TopDelivery
	}
	return t.Charge.Mass * quantity.Mass(share)
}

// Brings returns the nutrients that reach the mix from the morning of from to the
// morning of to.
func (t Track) Brings(from, to civil.Date) Nutrients {
	return t.Charge.Product.Analysis.In(t.Dissolved(from, to))
}

// Working returns the trace of what is left on the morning of d.
func (t Track) Working(d civil.Date) working.Trace {
	inputs := append([]working.Input{
		{Symbol: "day₀", Name: "nutrition.charged_on", Value: working.Date(t.Charge.Date), Source: working.Source{Status: working.Entered}},
		{Symbol: "age", Name: "nutrition.thermal_age", Value: working.Number(t.Age(d), working.Day), Source: working.Source{Status: working.Estimated}},
	}, kineticsInputs(t.Charge.Product, t.Thermal.kinetics)...)
	trace := working.Trace{
		Name:    "nutrition.left",
		Formula: "age = Σ exp(Ea/R × (1/T_ref − 1/T)); left = 1 − r(age): lag, then rate × age, then decay",
		Inputs:  inputs,
		Result:  working.Number(t.Left(d), working.Share),
		Source:  activationSource,
		Notes:   []string{"nutrition.note_cold_release", "nutrition.note_one_curve"},
	}
	if t.Charge.Placement == OnTop {
		trace.Notes = append(trace.Notes, "nutrition.note_top_delivery")
	}
	return trace
}
