package mix_test

import (
	"encoding/csv"
	"math"
	"os"
	"strconv"
	"testing"

	"fourturn/planner/mix"
	"fourturn/planner/quantity"
)

// potsFromBag returns how many pots a bag fills.
func potsFromBag(bag, pot quantity.Volume, settling float64) float64 {
	return math.Floor(float64(bag / mix.Loosened(pot, settling)))
}

// bales returns how many bales a volume of loose peat takes.
func bales(t *testing.T, bale, loose quantity.Volume, expansion float64) float64 {
	t.Helper()
	batch := mix.Blend{Parts: []mix.Part{{Key: "peat", Parts: 1, Expansion: expansion}}}.Make(loose)
	p, err := mix.Buy(mix.Order{Need: batch.Portions[0].AsSold, Bags: []mix.Bag{{Volume: bale, Price: 1}}})
	if err != nil {
		t.Fatal(err)
	}
	return float64(p.Bags)
}

// facts are the values that rows of published ones name, as this package finds them.
func facts(t *testing.T) map[string]float64 {
	t.Helper()
	const poundsPerCubicFoot = float64(quantity.CubicFoot) / float64(quantity.Pound)
	const squareFootInch = quantity.CubicFoot / 12
	out := map[string]float64{
		"default settling":                      float64(mix.Loosened(1, 0)) - 1,
		"default share":                         float64(mix.Content{Volume: 1}.At(mix.ChangeOut{Capacity: 1}).OldOut),
		"lift limit in lb":                      float64(mix.LiftLimit / quantity.Pound),
		"code load in psf":                      mix.CodeLoad / mix.PSF,
		"kg/m2 per psf":                         mix.PSF,
		"1 gal pots from 3 ft3 at 0 %":          math.Floor(float64(3 * quantity.CubicFoot / quantity.Gallon)),
		"bales of 3 ft3 for 3.5 yd3":            bales(t, 3*quantity.CubicFoot, 3.5*quantity.CubicYard, mix.BaleExpansion),
		"bales of 3 ft3 for 3.5 yd3 unfluffed":  bales(t, 3*quantity.CubicFoot, 3.5*quantity.CubicYard, 1),
		"ft2 at 1 in from a 3.8 ft3 bale":       float64(3.8 * quantity.CubicFoot * mix.BaleExpansion / squareFootInch),
		"ft2 at 1 in from a 1 ft3 bale":         float64(1 * quantity.CubicFoot * mix.BaleExpansion / squareFootInch),
		"tbsp for 3 gal at half a tbsp per gal": mix.Measure(3*quantity.Tablespoon/2, mix.USSpoons).Hands[0].Count,
		"tbsp for 5 gal at half a tbsp per gal": mix.Measure(5*quantity.Tablespoon/2, mix.USSpoons).Hands[0].Count,
	}
	for name, gallons := range map[string]quantity.Volume{"1": 1, "2": 2, "3": 3, "5": 5} {
		out[name+" gal pots from 3 ft3 at 6 %"] = potsFromBag(3*quantity.CubicFoot, gallons*quantity.Gallon, 0.06)
	}
	for _, s := range mix.Substrates {
		litre := mix.Weigh(mix.WeightInput{Mix: 1, Substrate: s})
		out["wet kg/L of "+s.Key] = float64(litre.Drained)
		out["wet lb/ft3 of "+s.Key] = float64(litre.Drained) * poundsPerCubicFoot
		out["dry lb/ft3 of "+s.Key] = float64(litre.Dry) * poundsPerCubicFoot
		out["kg of 36 qt of "+s.Key] = float64(mix.Weigh(mix.WeightInput{Mix: 36 * quantity.LiquidQuart, Substrate: s}).Drained)
	}
	return out
}

func TestPublishedValues(t *testing.T) {
	file, err := os.Open("../../testdata/published/mix.csv")
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	rows, err := csv.NewReader(file).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	number := func(s string) float64 {
		x, err := strconv.ParseFloat(s, 64)
		if err != nil {
			t.Fatal(err)
		}
		return x
	}
	found := facts(t)
	for _, row := range rows[1:] {
		got, known := found[row[0]]
		if !known {
			t.Errorf("no such fact: %s", row[0])
			continue
		}
		const rounding = 1e-9
		within := got >= number(row[2])-rounding && got <= number(row[3])+rounding
		if within == (row[1] == "not") {
			t.Errorf("%s: %v, row says %s %s to %s (%s)", row[0], got, row[1], row[2], row[3], row[4])
		}
	}
}
