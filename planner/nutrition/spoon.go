package nutrition

import (
	"math"

	"fourturn/planner/quantity"
)

// Mass of a level US tablespoon (14.79 mL).
const (
	// PrillSpoon is of coated prills: about 1 g/mL, from memory, to be changed by weighing one.
	PrillSpoon quantity.Mass = 0.015
	// SolubleSpoon is of soluble 20-20-20 crystals: 6 g a teaspoon (greenhousegrower.com,
	// Fertilizing Containers); other feeds weigh 3 to 6 g.
	SolubleSpoon quantity.Mass = 0.018
)

// SpoonError is how far a spoon can be out, as a share: bulk densities of feeds
// from 3.0 to 6.8 g a level teaspoon were read. A scale is the reference.
const SpoonError = 0.25

// Spoons is a dose in level US spoons, rounded to a quarter of a teaspoon.
type Spoons struct {
	Tablespoons int     // whole level tablespoons
	Teaspoons   float64 // level teaspoons besides, in quarters, below 3
}

// SpoonsOf returns the mass in level spoons of a material of which a tablespoon
// weighs tablespoon. A dose that is not zero is a quarter teaspoon at least. It
// panics on a spoon that is not above zero.
func SpoonsOf(m, tablespoon quantity.Mass) Spoons {
	if !(tablespoon > 0) {
		panic("nutrition: a spoon must weigh more than nothing")
	}
	if !(m > 0) {
		return Spoons{}
	}
	const quarters = 12 // quarter teaspoons in a tablespoon of 3 teaspoons
	n := max(1, math.Round(float64(m/tablespoon)*quarters))
	whole := math.Floor(n / quarters)
	return Spoons{Tablespoons: int(whole), Teaspoons: (n - whole*quarters) / 4}
}

// Mass returns the mass of the spoons.
func (s Spoons) Mass(tablespoon quantity.Mass) quantity.Mass {
	return tablespoon * quantity.Mass(float64(s.Tablespoons)+s.Teaspoons/3)
}
