package nutrition_test

import (
	"errors"
	"fmt"
	"math"
	"testing"

	"pgregory.net/rapid"

	"fourturn/planner/finding"
	"fourturn/planner/nutrition"
	"fourturn/planner/quantity"
)

// 1:100 makes 100 parts (UMass) or is added to 100 parts (a distributor's newsletter):
// the stock differs by 1 %.
func ExampleInjector() {
	feed, _ := nutrition.AtStrength(nutrition.MustParseAnalysis("20-10-20"), 200)
	makes := feed.Stock(nutrition.Injector{Ratio: 100, Convention: nutrition.PartsMade})
	added := feed.Stock(nutrition.Injector{Ratio: 100, Convention: nutrition.PartsAdded})
	fmt.Printf("%.1f g/L or %.1f g/L\n", float64(makes), float64(added))
	// Output: 100.0 g/L or 101.0 g/L
}

// Any figure of a batch is found again from the others.
func TestBatchSolvesForAnyFigure(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		b := nutrition.Batch{
			Analysis: nutrition.Analysis{N: rapid.Float64Range(1, 46).Draw(t, "N")},
			Nitrogen: nutrition.PPM(rapid.Float64Range(10, 1000).Draw(t, "ppm")),
			Volume:   quantity.Volume(rapid.Float64Range(0.5, 200).Draw(t, "volume")),
			Injector: nutrition.Injector{
				Ratio:      rapid.Float64Range(2, 500).Draw(t, "ratio"),
				Convention: nutrition.RatioConvention(rapid.IntRange(0, 1).Draw(t, "convention")),
			},
		}
		if rapid.Bool().Draw(t, "can") {
			b.Injector = nutrition.NoInjector
		}
		full, err := b.Solve(nutrition.UnknownMass)
		if err != nil {
			t.Fatal(err)
		}
		feed, _ := nutrition.AtStrength(b.Analysis, b.Nitrogen)
		if !near(float64(full.Mass), float64(feed.For(full.Makes())), 1e-9) || !near(float64(full.Concentrate()), float64(feed.Stock(b.Injector)), 1e-9) {
			t.Fatalf("%+v does not make the feed", full)
		}
		for unknown, wipe := range map[nutrition.Unknown]func(*nutrition.Batch){
			nutrition.UnknownNitrogen: func(b *nutrition.Batch) { b.Nitrogen = 0 },
			nutrition.UnknownVolume:   func(b *nutrition.Batch) { b.Volume = 0 },
			nutrition.UnknownRatio:    func(b *nutrition.Batch) { b.Injector.Ratio = 0 },
		} {
			asked := full
			wipe(&asked)
			got, err := asked.Solve(unknown)
			if err != nil || !near(float64(got.Nitrogen), float64(full.Nitrogen), 1e-9) || !near(float64(got.Volume), float64(full.Volume), 1e-9) ||
				!near(got.Injector.Ratio, full.Injector.Ratio, 1e-6) {
				t.Fatalf("figure %v of %+v is %+v, %v", unknown, full, got, err)
			}
		}
	})
}

func TestBatchRefuses(t *testing.T) {
	good := nutrition.Batch{Analysis: nutrition.Analysis{N: 20}, Nitrogen: 200, Mass: 0.009, Volume: 9, Injector: nutrition.NoInjector}
	if _, err := (nutrition.Batch{Analysis: nutrition.Analysis{K2O: 50}, Nitrogen: 200, Volume: 9, Injector: nutrition.NoInjector}).Solve(nutrition.UnknownMass); !errors.Is(err, nutrition.ErrNoNitrogen) {
		t.Errorf("potash alone: %v", err)
	}
	if _, err := nutrition.AtStrength(nutrition.Analysis{K2O: 50}, 100); !errors.Is(err, nutrition.ErrNoNitrogen) {
		t.Errorf("potash alone: %v", err)
	}
	for name, b := range map[string]struct {
		batch   nutrition.Batch
		unknown nutrition.Unknown
	}{
		"no volume": {nutrition.Batch{Analysis: good.Analysis, Mass: 0.009, Injector: nutrition.NoInjector}, nutrition.UnknownNitrogen},
		"no ratio":  {nutrition.Batch{Analysis: good.Analysis, Nitrogen: 200, Volume: 9}, nutrition.UnknownMass},
		"no ppm":    {nutrition.Batch{Analysis: good.Analysis, Mass: 0.009, Injector: nutrition.NoInjector}, nutrition.UnknownVolume},
		"no mass":   {nutrition.Batch{Analysis: good.Analysis, Nitrogen: 200, Volume: 9}, nutrition.UnknownRatio},
	} {
		if got, err := b.batch.Solve(b.unknown); !errors.Is(err, nutrition.ErrUnsolvable) || got != b.batch {
			t.Errorf("%s: %+v, %v", name, got, err)
		}
	}
}

// 20 % N at 200 ppm through 1:200 is 200 g/L and dissolves; through 1:500 it is 500
// g/L, above the 4 lb a gallon of the label, and the finding says how far one may go.
func TestSolubilityFinding(t *testing.T) {
	feed, _ := nutrition.AtStrength(nutrition.MustParseAnalysis("20-10-20"), 200)
	where := finding.Where{"products", "a"}
	if _, ok := nutrition.SolubilityFinding(where, feed, nutrition.Injector{Ratio: 200}, 0); ok {
		t.Error("200 g/L is refused")
	}
	for _, convention := range []nutrition.RatioConvention{nutrition.PartsMade, nutrition.PartsAdded} {
		f, ok := nutrition.SolubilityFinding(where, feed, nutrition.Injector{Ratio: 500, Convention: convention}, 0)
		if !ok {
			t.Fatal("500 g/L is let pass")
		}
		most := nutrition.Injector{Ratio: arg(t, f, "most"), Convention: convention}
		if !near(float64(feed.Stock(most)), float64(nutrition.UsualSolubility), 1e-9) {
			t.Errorf("1:%v makes %v g/L", most.Ratio, feed.Stock(most))
		}
	}
}

func TestStrengthAndPhosphorusFindings(t *testing.T) {
	where := finding.Where{"products", "a"}
	medium := nutrition.ClassOf(nutrition.MediumFeeder)
	for ppm, code := range map[nutrition.PPM]string{
		100: "nutrition.strength_low", 150: "", 200: "", 300: "nutrition.strength_high",
	} {
		s, _ := nutrition.AtStrength(nutrition.MustParseAnalysis("20-20-20"), ppm)
		if f, ok := nutrition.StrengthFinding(where, s, medium); f.Code != code || ok != (code != "") {
			t.Errorf("%v ppm: %q", ppm, f.Code)
		}
	}
	bloom, _ := nutrition.AtStrength(nutrition.MustParseAnalysis("10-52-10"), 100)
	if f, ok := nutrition.PhosphorusFinding(where, bloom); !ok || !near(arg(t, f, "phosphorus"), 227, 0.005) {
		t.Errorf("10-52-10: %v", f)
	}
	even, _ := nutrition.AtStrength(nutrition.MustParseAnalysis("20-20-20"), 100)
	if _, ok := nutrition.PhosphorusFinding(where, even); ok {
		t.Error("20-20-20 is reported")
	}
}

// A conductivity measured gives back the strength (Purdue HO-286-W).
func TestConductivityGivesBackTheStrength(t *testing.T) {
	a := nutrition.MustParseAnalysis("15-5-15")
	slope, ok := nutrition.KnownSlope(a)
	if !ok {
		t.Fatal("15-5-15 has no slope")
	}
	feed, _ := nutrition.AtStrength(a, 175)
	ec := feed.EC(slope, 0.4)
	if !near(float64(ec.Value), 0.4+0.74*1.75, 1e-9) || !near(float64(nutrition.StrengthFromEC(ec.Value, 0.4, slope)), 175, 1e-9) {
		t.Errorf("%v, %v", ec.Value, nutrition.StrengthFromEC(ec.Value, 0.4, slope))
	}
	if got := nutrition.StrengthFromEC(0.3, 0.4, slope); got != 0 {
		t.Errorf("less than the water's own is %v ppm", got)
	}
	if _, ok := nutrition.KnownSlope(nutrition.MustParseAnalysis("11-11-18")); ok {
		t.Error("a product that no source gives has a slope")
	}
	if w := ec.Working(); len(w.Notes) != 0 {
		t.Errorf("one source: %v", w.Notes)
	}
	balanced, _ := nutrition.KnownSlope(nutrition.MustParseAnalysis("20-20-20"))
	if w := feed.EC(balanced, 0).Working(); len(w.Notes) != 1 {
		t.Errorf("two sources: %v", w.Notes)
	}
}

// What is poured wets the mix and lets the share run through.
func TestPour(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		mix := quantity.Volume(rapid.Float64Range(0, 500).Draw(t, "mix"))
		takenUp := rapid.Float64Range(0.05, 0.9).Draw(t, "u")
		leaching := rapid.Float64Range(0.01, 0.6).Draw(t, "f")
		p := nutrition.PourFor(mix, takenUp, leaching)
		if !near(float64(p.Wets), float64(mix)*takenUp, 1e-9) || !near(float64(p.RunsThrough()), float64(p.Volume)*leaching, 1e-6) {
			t.Fatalf("%+v", p)
		}
	})
}

// A can's worth: whole cans and a last part make up the round.
func TestCans(t *testing.T) {
	feed, _ := nutrition.AtStrength(nutrition.MustParseAnalysis("20-20-20"), 200) // 1 g/L
	rapid.Check(t, func(t *rapid.T) {
		total := quantity.Volume(rapid.Float64Range(0, 1000).Draw(t, "total"))
		can := quantity.Volume(rapid.Float64Range(1, 30).Draw(t, "can"))
		c := nutrition.CansOf(feed, total, can)
		sum := can*quantity.Volume(c.Full) + c.Part
		if math.Abs(float64(sum-total)) > 1e-6*float64(can+total) || c.Part >= can || c.Part < 0 {
			t.Fatalf("%v in cans of %v: %+v", total, can, c)
		}
		mass := c.PerCan*quantity.Mass(c.Full) + c.InPart
		if math.Abs(float64(mass-feed.For(total))) > 1e-6*float64(feed.For(can+total)) {
			t.Fatalf("%v of product for %v", mass, total)
		}
	})
	if c := nutrition.CansOf(feed, 27, 0); c.Full != 3 || c.Part != 0 || c.Refills != 2 || c.PerCan.Grams() != 9 {
		t.Errorf("27 L in the usual can: %+v", c)
	}
	if c := nutrition.CansOf(feed, 0.1*3, 0.1); c.Full != 3 || c.Part != 0 {
		t.Errorf("three tenths in cans of a tenth: %+v", c)
	}
	if c := nutrition.CansOf(feed, 0, 0); c.Refills != 0 || c.Full != 0 {
		t.Errorf("nothing: %+v", c)
	}
}
