package begin

import (
	"fourturn/planner"
	"fourturn/planner/quantity"
)

// months of a coated fertiliser sold for three to four months.
const coatedMonths = 3.5

// addProducts gives a plan what the job needs: a mix, a slow release that is worked
// into it, and two soluble feeds that take turns. The analyses are usual ones; what
// one really has is entered in the room of mix and buying.
func (s *Screen) addProducts(plan *planner.Plan) {
	bag := 40 * quantity.Litre
	if plan.Units == quantity.USCustomary {
		bag = quantity.CubicFoot
	}
	plan.Products = []planner.Product{
		{ID: "mix", Name: s.words.T("begin.product_mix"), Kind: planner.PottingMix, Packs: []planner.Pack{{Volume: bag}}},
		{ID: "coated", Name: s.words.T("begin.product_coated"), Kind: planner.SlowRelease, Analysis: "14-14-14", Longevity: coatedMonths},
		{ID: "even", Name: s.words.T("begin.product_soluble", map[string]any{"analysis": "20-20-20"}), Kind: planner.Soluble, Analysis: "20-20-20"},
		{ID: "bloom", Name: s.words.T("begin.product_soluble", map[string]any{"analysis": "10-30-20"}), Kind: planner.Soluble, Analysis: "10-30-20"},
	}
	plan.Feeding.SlowRelease, plan.Feeding.Turn = "coated", []string{"even", "bloom"}
}
