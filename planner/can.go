package planner

import (
	"fourturn/planner/nutrition"
	"fourturn/planner/quantity"
	"fourturn/planner/working"
)

var derived = working.Source{Status: working.Derived}

// doseWorking is the trace of the product that goes into a round's feed.
func doseWorking(s nutrition.Solution, total quantity.Volume) working.Trace {
	strength := s.Working()
	return working.Trace{
		Name: "plan.round_dose", Formula: "m = c × W",
		Inputs: []working.Input{
			{Symbol: "c", Name: "plan.strength", Value: working.Number(float64(s.Product), working.GramPerLitre), Source: derived, From: &strength},
			{Symbol: "W", Name: "plan.round_water", Value: working.Number(float64(total), working.Litre), Source: derived},
		},
		Result: working.Number(float64(s.For(total)), working.Kilogram), Source: derived,
	}
}

// spoonWorking is the trace of the level teaspoons that a full can takes.
func spoonWorking(s nutrition.Solution, can quantity.Volume, tablespoon quantity.Mass, level nutrition.Spoons) working.Trace {
	strength := s.Working()
	return working.Trace{
		Name: "plan.spoons_per_can", Formula: "n = c × C / (t / 3)",
		Inputs: []working.Input{
			{Symbol: "c", Name: "plan.strength", Value: working.Number(float64(s.Product), working.GramPerLitre), Source: derived, From: &strength},
			{Symbol: "C", Name: "plan.can", Value: working.Number(float64(can), working.Litre), Source: working.Source{Status: working.Entered}},
			{Symbol: "t", Name: "plan.tablespoon", Value: working.Number(float64(tablespoon), working.Kilogram), Source: working.Source{Status: working.Published, Cite: "6 g a level teaspoon of 20-20-20: greenhousegrower.com, Fertilizing Containers"}},
		},
		Result: working.Number(float64(level.Tablespoons)*3+level.Teaspoons, working.None),
		Source: derived, Notes: []string{"plan.note_spoons"},
	}
}

// canWorking is the trace of how often the can is filled.
func canWorking(total, can quantity.Volume, cans float64) working.Trace {
	return working.Trace{
		Name: "plan.cans", Formula: "n = ⌈2 × W / C⌉ / 2",
		Inputs: []working.Input{
			{Symbol: "W", Name: "plan.round_water", Value: working.Number(float64(total), working.Litre), Source: derived},
			{Symbol: "C", Name: "plan.can", Value: working.Number(float64(can), working.Litre), Source: working.Source{Status: working.Entered}},
		},
		Result: working.Number(cans, working.None), Source: derived,
	}
}

// strengthWorking is the trace of the nitrogen in a can for plants of several classes.
func strengthWorking(s strength) working.Trace {
	trace := working.Trace{
		Name: "plan.round_strength", Formula: "middle of what the bands share",
		Result: working.Number(float64(s.ppm), working.MilligramPerLitre),
		Source: working.Source{Status: working.Published, Cite: "MSU Extension, Consider maintenance when choosing plants (2024), table 1"},
	}
	if len(s.classes) == 0 {
		trace.Formula, trace.Source = "ppm", working.Source{Status: working.Entered}
		return trace
	}
	for _, c := range s.classes {
		trace.Inputs = append(trace.Inputs,
			working.Input{Symbol: "low", Name: c.Feeder.Key(), Value: working.Number(c.Strength.Low, working.MilligramPerLitre), Source: trace.Source},
			working.Input{Symbol: "high", Name: c.Feeder.Key(), Value: working.Number(c.Strength.High, working.MilligramPerLitre), Source: trace.Source})
	}
	if !s.within {
		trace.Formula = "the most that the lightest bears"
		trace.Notes = []string{"plan.note_shared_strength"}
	}
	return trace
}

// stockWorking is the trace of the concentrate for an injector.
func stockWorking(s nutrition.Solution, i nutrition.Injector) working.Trace {
	strength := s.Working()
	trace := working.Trace{
		Name: "plan.stock", Formula: "stock = c × D",
		Inputs: []working.Input{
			{Symbol: "c", Name: "plan.strength", Value: working.Number(float64(s.Product), working.GramPerLitre), Source: derived, From: &strength},
			{Symbol: "D", Name: "plan.dilution", Value: working.Number(i.Dilution(), working.None), Source: working.Source{Status: working.Entered}},
		},
		Result: working.Number(float64(s.Stock(i)), working.GramPerLitre), Source: derived,
		Notes: []string{"plan.note_parts_made", "nutrition.note_concentrate_care"},
	}
	if i.Convention == nutrition.PartsAdded {
		trace.Notes[0] = "plan.note_parts_added"
	}
	return trace
}
