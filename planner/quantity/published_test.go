package quantity_test

import (
	"encoding/csv"
	"math"
	"os"
	"strconv"
	"testing"

	"fourturn/planner/quantity"
)

// facts are the values that rows of published ones name, as this package has them.
var facts = map[string]float64{
	"in3 per dry quart":       float64(quantity.DryQuart / quantity.CubicInch),
	"in3 per liquid quart":    float64(quantity.LiquidQuart / quantity.CubicInch),
	"in3 per gallon":          float64(quantity.Gallon / quantity.CubicInch),
	"in3 per dry gallon":      float64(quantity.DryGallon / quantity.CubicInch),
	"L per gallon":            quantity.Gallon.Litres(),
	"L per dry gallon":        quantity.DryGallon.Litres(),
	"L per ft3":               quantity.CubicFoot.Litres(),
	"L per yd3":               quantity.CubicYard.Litres(),
	"L per trade gallon":      quantity.TradeGallon.Litres(),
	"liquid quarts per ft3":   float64(quantity.CubicFoot / quantity.LiquidQuart),
	"dry quarts per ft3":      float64(quantity.CubicFoot / quantity.DryQuart),
	"gallons per ft3":         float64(quantity.CubicFoot / quantity.Gallon),
	"ft3 per yd3":             float64(quantity.CubicYard / quantity.CubicFoot),
	"gallons per yd3":         float64(quantity.CubicYard / quantity.Gallon),
	"trade gallons per ft3":   float64(quantity.CubicFoot / quantity.TradeGallon),
	"trade gallons per yd3":   float64(quantity.CubicYard / quantity.TradeGallon),
	"g/L per lb/yd3":          quantity.Pound.Grams() / quantity.CubicYard.Litres(),
	"mg/L per oz per 100 gal": quantity.Ounce.Grams() * 1000 / (100 * quantity.Gallon.Litres()),
	"mL per teaspoon":         float64(quantity.Teaspoon / quantity.Millilitre),
	"mL per tablespoon":       float64(quantity.Tablespoon / quantity.Millilitre),
	"tablespoons per pint":    float64(quantity.Pint / quantity.Tablespoon),
	"teaspoons per pint":      float64(quantity.Pint / quantity.Teaspoon),
	"kg per lb":               quantity.Pound.Kilograms(),
	"dry quarts in 2 ft3":     float64(2 * quantity.CubicFoot / quantity.DryQuart),
	"liquid quarts in 2 ft3":  float64(2 * quantity.CubicFoot / quantity.LiquidQuart),
}

func TestPublishedUnitFacts(t *testing.T) {
	file, err := os.Open("../../testdata/published/quantity.csv")
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
	for _, row := range rows[1:] {
		got, known := facts[row[0]]
		if !known {
			t.Errorf("no such fact: %s", row[0])
			continue
		}
		want, tolerance := number(row[2]), number(row[3])
		agrees := math.Abs(got-want) <= tolerance*want
		if agrees == (row[1] == "not") {
			t.Errorf("%s: %.9g, row says %s %v (%s)", row[0], got, row[1], want, row[4])
		}
	}
}
