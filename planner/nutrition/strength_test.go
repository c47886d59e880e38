package nutrition_test

import (
	"encoding/csv"
	"errors"
	"fmt"
	"math"
	"os"
	"strconv"
	"testing"

	"pgregory.net/rapid"

	"fourturn/planner/nutrition"
	"fourturn/planner/quantity"
	"fourturn/planner/working"
)

// published reads a table of testdata/published: each row by its column's name.
func published(t testing.TB, name string) []map[string]string {
	t.Helper()
	file, err := os.Open("../../testdata/published/" + name)
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	rows, err := csv.NewReader(file).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	if len(rows) < 2 {
		t.Fatalf("%s holds no row", name)
	}
	var table []map[string]string
	for _, row := range rows[1:] {
		named := map[string]string{}
		for i, column := range rows[0] {
			named[column] = row[i]
		}
		if named["source"] == "" || named["status"] == "" {
			t.Fatalf("%s: a row without source or status: %v", name, row)
		}
		table = append(table, named)
	}
	return table
}

func number(t testing.TB, s string) float64 {
	t.Helper()
	x, err := strconv.ParseFloat(s, 64)
	if err != nil {
		t.Fatal(err)
	}
	return x
}

func near(got, want, share float64) bool { return math.Abs(got-want) <= share*math.Abs(want) }

// 100 gallons at 200 ppm N take 13.5 oz of a 20 % product (UMass, Fertilizer
// Calculations for Greenhouse Crops; the exact figure is 13.35).
func ExampleAtStrength() {
	s, _ := nutrition.AtStrength(nutrition.MustParseAnalysis("20-10-20"), 200)
	fmt.Printf("%.3f g/L, %.2f oz in 100 gal\n", float64(s.Product), float64(s.For(100*quantity.Gallon)/quantity.Ounce))
	// Output: 1.000 g/L, 13.35 oz in 100 gal
}

func ExampleParseAnalysis() {
	a, _ := nutrition.ParseAnalysis("20-20-20")
	n, p, k := a.Elements()
	fmt.Printf("%v: %.0f N, %.1f P, %.1f K\n", a, n, p, k)
	// Output: 20-20-20: 20 N, 8.7 P, 16.6 K
}

func TestParseAnalysis(t *testing.T) {
	for text, want := range map[string]nutrition.Analysis{
		"20-10-20":          {N: 20, P2O5: 10, K2O: 20},
		" 15 – 5 – 15 ":     {N: 15, P2O5: 5, K2O: 15},
		"15.5-0-0":          {N: 15.5},
		"15,5:0:0":          {N: 15.5},
		"0-50-30":           {P2O5: 50, K2O: 30},
		"14 %-14 %-14 %":    {N: 14, P2O5: 14, K2O: 14},
		"10−52−10":          {N: 10, P2O5: 52, K2O: 10},
		"0.1-0-0":           {N: 0.1},
		"33.333-33.333-33.": {N: 33.333, P2O5: 33.333, K2O: 33},
	} {
		if got, err := nutrition.ParseAnalysis(text); err != nil || got != want {
			t.Errorf("%q: %v, %v", text, got, err)
		}
	}
	for text, fault := range map[string]nutrition.AnalysisFault{
		"":          nutrition.AnalysisShape,
		"20-20":     nutrition.AnalysisShape,
		"a-b-c":     nutrition.AnalysisShape,
		"1e1-0-0":   nutrition.AnalysisShape,
		"NaN-0-0":   nutrition.AnalysisShape,
		"20-20--20": nutrition.AnalysisShape,
		"60-30-30":  nutrition.AnalysisRange,
		"0-0-0":     nutrition.AnalysisNothing,
	} {
		_, err := nutrition.ParseAnalysis(text)
		var typed *nutrition.AnalysisError
		if !errors.As(err, &typed) || typed.Fault != fault {
			t.Errorf("%q: %v, want %v", text, err, fault)
		}
	}
}

func FuzzParseAnalysis(f *testing.F) {
	for _, s := range []string{"20-10-20", "15,5:0:0", "--", "9999999999999999999-0-0", "0.0-0-.1"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		a, err := nutrition.ParseAnalysis(s)
		if err != nil {
			return
		}
		if sum := a.N + a.P2O5 + a.K2O; !(sum > 0 && sum <= 100) {
			t.Fatalf("%q sums to %v", s, sum)
		}
		n, p, k := a.Elements()
		if !(n <= a.N && p <= a.P2O5 && k <= a.K2O) {
			t.Fatalf("%q: an element exceeds its oxide", s)
		}
	})
}

func TestParseRate(t *testing.T) {
	for text, want := range map[string]float64{
		"3.5 g/L":          3.5,
		"5.88 lb/yd3":      3.488, // HortTechnology 17(1):21 (2007): 3.49 kg/m³
		"3.4 kg/m3":        3.4,
		"1/2 tbsp per gal": 1.98, // at 15 g a tablespoon
		"½ tbsp/gal":       1.98,
		"1 1/2 tbsp/3 gal": 1.98,
		"1 tsp/trade gal":  1.76,
		"6 g/2.72 L":       2.206, // Horticulturae 6(3):43: 2.2 g/L
	} {
		got, err := nutrition.ParseRate(text, nutrition.PrillSpoon)
		if err != nil || !near(float64(got), want, 0.005) {
			t.Errorf("%q: %v, %v; want %v", text, got, err, want)
		}
	}
	for text, fault := range map[string]nutrition.RateFault{
		"":               nutrition.RateShape,
		"3 g":            nutrition.RateShape,
		"1/2":            nutrition.RateDose,
		"some/gal":       nutrition.RateDose,
		"1/0 tbsp/gal":   nutrition.RateDose,
		"3 g/acre":       nutrition.RateVolume,
		"3 g/0 L":        nutrition.RateRange,
		"1 tbsp per qt":  nutrition.RateVolume,
		"1 2 3 tbsp/gal": nutrition.RateDose,
	} {
		_, err := nutrition.ParseRate(text, nutrition.PrillSpoon)
		var typed *nutrition.RateError
		if !errors.As(err, &typed) || typed.Fault != fault {
			t.Errorf("%q: %v, want %v", text, err, fault)
		}
	}
}

func FuzzParseRate(f *testing.F) {
	for _, s := range []string{"1/2 tbsp/gal", "5.9 lb/yd3", "1 1/2 tsp per 3 gal", "⅓ cup/cu ft", "//", "1e999 g/L"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		r, err := nutrition.ParseRate(s, nutrition.PrillSpoon)
		if err == nil && (r < 0 || math.IsNaN(float64(r)) || math.IsInf(float64(r), 0)) {
			t.Fatalf("%q is %v", s, r)
		}
	})
}

func TestSpoons(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		grams := rapid.Float64Range(0.001, 500).Draw(t, "grams")
		m := quantity.Mass(grams) * quantity.Gram
		s := nutrition.SpoonsOf(m, nutrition.PrillSpoon)
		quarter := float64(nutrition.PrillSpoon) / 12
		back := float64(s.Mass(nutrition.PrillSpoon))
		if back > float64(m)+quarter || back < float64(m)-quarter || s.Teaspoons >= 3 || back == 0 {
			t.Fatalf("%v is %+v, which weighs %v", m, s, back)
		}
	})
	if s := nutrition.SpoonsOf(0, nutrition.PrillSpoon); s != (nutrition.Spoons{}) {
		t.Errorf("nothing is %+v", s)
	}
}

// A dose follows its rate, its spoons and the mix that it is reckoned on.
func TestDose(t *testing.T) {
	p := nutrition.SlowRelease{Analysis: nutrition.MustParseAnalysis("14-14-14"), Longevity: 3.5}
	d := nutrition.DoseOf(p, 4, 12, 4, nutrition.FreshMix, nutrition.LabelRateSource())
	if d.Mass.Grams() != 16 || d.Spoons != (nutrition.Spoons{Tablespoons: 1, Teaspoons: 0.25}) {
		t.Errorf("4 L of fresh mix at 4 g/L: %v, %+v", d.Mass, d.Spoons)
	}
	all := nutrition.DoseOf(p, 4, 12, 4, nutrition.AllMix, nutrition.LabelRateSource())
	if all.Mass.Grams() != 48 || nutrition.TotalMass([]nutrition.Dose{d, all}).Grams() != 64 {
		t.Errorf("all 12 L at 4 g/L: %v", all.Mass)
	}
	if w := all.Working(); w.Result != working.Number(0.048, working.Kilogram) || w.Soft() {
		t.Errorf("working: %+v", w)
	}
}
