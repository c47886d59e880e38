package nutrition

import (
	"errors"

	"fourturn/planner/quantity"
	"fourturn/planner/working"
)

// ErrNoNitrogen reports that a strength in ppm N was asked of a product without
// nitrogen; such a product is dosed by its mass.
var ErrNoNitrogen = errors.New("nutrition: the product holds no nitrogen")

// Solution is a soluble product dissolved in water, as it reaches the pot.
type Solution struct {
	Analysis Analysis
	Product  Concentration // g of product per litre of water
}

// AtStrength returns the solution of so many ppm N, g/L = ppm / (10 × %N), since
// 1 ppm is 1 mg/L (UMass, Fertilizer Calculations for Greenhouse Crops). It fails
// with [ErrNoNitrogen].
func AtStrength(a Analysis, n PPM) (Solution, error) {
	if a.N == 0 {
		return Solution{}, ErrNoNitrogen
	}
	return Solution{Analysis: a, Product: Concentration(float64(n) / (10 * a.N))}, nil
}

// Nitrogen returns the nitrogen in ppm.
func (s Solution) Nitrogen() PPM { return PPM(float64(s.Product) * s.Analysis.N * 10) }

// Phosphorus returns the phosphorus in ppm, as the element.
func (s Solution) Phosphorus() PPM {
	return PPM(float64(s.Product) * s.Analysis.P2O5 * 10 * phosphorusInP2O5)
}

// Potassium returns the potassium in ppm, as the element.
func (s Solution) Potassium() PPM {
	return PPM(float64(s.Product) * s.Analysis.K2O * 10 * potassiumInK2O)
}

// For returns the mass of product in a volume of solution, a can's worth, say.
func (s Solution) For(v quantity.Volume) quantity.Mass { return s.Product.Of(v) }

// Brings returns the nutrients in a volume of solution.
func (s Solution) Brings(v quantity.Volume) Nutrients { return s.Analysis.In(s.For(v)) }

// Diluted returns the solution at a share of its strength, 0.5 for half.
func (s Solution) Diluted(share float64) Solution {
	s.Product *= Concentration(share)
	return s
}

// Working returns the trace of the grams per litre.
func (s Solution) Working() working.Trace {
	return working.Trace{
		Name:    "nutrition.strength",
		Formula: "g/L = ppm / (10 × %N)",
		Inputs: []working.Input{
			{Symbol: "ppm", Name: "nutrition.nitrogen_strength", Value: working.Number(float64(s.Nitrogen()), working.MilligramPerLitre), Source: strengthSource},
			{Symbol: "%N", Name: "nutrition.nitrogen_share", Value: working.Number(s.Analysis.N/100, working.Share), Source: working.Source{Status: working.Entered}},
		},
		Result: working.Number(float64(s.Product), working.GramPerLitre),
		Source: working.Source{Status: working.Published, Cite: "UMass Extension, Fertilizer Calculations for Greenhouse Crops"},
		Notes:  []string{"nutrition.note_label_first", "nutrition.note_concentrate_care"},
	}
}
