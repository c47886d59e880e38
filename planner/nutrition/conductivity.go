package nutrition

import "fourturn/planner/working"

// Conductivity is an electrical conductivity in mS/cm.
type Conductivity float64

// Slope is how much a product raises the conductivity of water for each 100 ppm N.
// Sources differ, so it has two ends.
type Slope struct {
	Low, High Conductivity
	Source    working.Source
}

// Middle returns the middle of the two ends.
func (s Slope) Middle() Conductivity { return (s.Low + s.High) / 2 }

// knownSlopes are the published conductivities at 100 ppm N by analysis.
var knownSlopes = map[Analysis]Slope{
	{N: 20, P2O5: 20, K2O: 20}: {0.41, 0.46, working.Source{Status: working.Published, Cite: "Univ. Delaware, Kent Co. (2008), after UMass"}},
	{N: 15, P2O5: 0, K2O: 15}:  {0.69, 0.76, working.Source{Status: working.Published, Cite: "Univ. Delaware, Kent Co. (2008), after UMass"}},
	{N: 15, P2O5: 5, K2O: 15}:  {0.74, 0.74, working.Source{Status: working.Published, Cite: "distributor's newsletter, vol. 38"}},
	{N: 20, P2O5: 10, K2O: 20}: {0.64, 0.64, working.Source{Status: working.Published, Cite: "MSU Extension, Ensuring proper fertilizer concentration, table 1: a 20 % N product"}},
}

// KnownSlope returns the published slope of a product by its analysis. ok is false
// where none was read: the label may print one.
func KnownSlope(a Analysis) (s Slope, ok bool) {
	s, ok = knownSlopes[a]
	return s, ok
}

// LabelSlope returns a slope that the person read on the label, in mS/cm at 100 ppm N.
func LabelSlope(at100 Conductivity) Slope {
	return Slope{at100, at100, working.Source{Status: working.Entered}}
}

// EC is the estimated conductivity of a solution.
type EC struct {
	Value    Conductivity // of water and feed together
	Low      Conductivity
	High     Conductivity
	solution Solution
	slope    Slope
	water    Conductivity
}

// EC returns the conductivity of the solution in water of its own conductivity:
// water + slope × ppm / 100 (Purdue HO-286-W, solved for the conductivity).
func (s Solution) EC(slope Slope, water Conductivity) EC {
	hundreds := Conductivity(s.Nitrogen() / 100)
	return EC{
		Value: water + slope.Middle()*hundreds, Low: water + slope.Low*hundreds, High: water + slope.High*hundreds,
		solution: s, slope: slope, water: water,
	}
}

// StrengthFromEC returns the nitrogen of a solution whose conductivity was measured,
// 100 × (EC − EC of the water) / slope, and 0 where the water alone reads as much
// (Purdue HO-286-W). It panics on a slope that is not above zero.
func StrengthFromEC(measured, water Conductivity, slope Slope) PPM {
	if !(slope.Middle() > 0) {
		panic("nutrition: a slope must be above zero")
	}
	return PPM(max(0, 100*float64((measured-water)/slope.Middle())))
}

// Working returns the trace of the conductivity.
func (e EC) Working() working.Trace {
	trace := working.Trace{
		Name:    "nutrition.conductivity",
		Formula: "EC = EC_w + k × ppm / 100",
		Inputs: []working.Input{
			{Symbol: "EC_w", Name: "nutrition.water_conductivity", Value: working.Number(float64(e.water), working.MilliSiemensPerCM), Source: working.Source{Status: working.Entered}},
			{Symbol: "k", Name: "nutrition.conductivity_slope", Value: working.Number(float64(e.slope.Middle()), working.MilliSiemensPerCM), Source: e.slope.Source},
			{Symbol: "ppm", Name: "nutrition.nitrogen_strength", Value: working.Number(float64(e.solution.Nitrogen()), working.MilligramPerLitre), Source: working.Source{Status: working.Derived}},
		},
		Result: working.Number(float64(e.Value), working.MilliSiemensPerCM),
		Source: working.Source{Status: working.Published, Cite: "Purdue HO-286-W"},
	}
	if e.Low < e.High {
		trace.Notes = []string{"nutrition.note_slopes_differ"}
	}
	return trace
}
