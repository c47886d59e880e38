package nutrition_test

import (
	"testing"

	"pgregory.net/rapid"

	"fourturn/planner/nutrition"
)

// The nitrogen of a charge is the class's whatever the product.
func TestRateGivesTheSameNitrogen(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		class := nutrition.ClassOf(rapid.SampledFrom(nutrition.Feeders[:]).Draw(t, "feeder"))
		a := nutrition.Analysis{N: rapid.Float64Range(5, 40).Draw(t, "N"), K2O: 10}
		nitrogen := a.In(class.Rate(a).Of(1)).N.Grams()
		tested := nutrition.MustParseAnalysis("16-9-12")
		if want := tested.In(class.Rate(tested).Of(1)).N.Grams(); !near(nitrogen, want, 1e-9) {
			t.Fatalf("%v g N per litre from %v, %v from %v", nitrogen, a, want, tested)
		}
	})
	if got := nutrition.ClassOf(nutrition.LightFeeder).Rate(nutrition.Analysis{K2O: 50}); !near(float64(got), 2.6, 1e-9) {
		t.Errorf("potash alone goes in at %v g/L", got)
	}
}

// A hungrier class gets no less of anything.
func TestClassesAreInOrder(t *testing.T) {
	for i := 1; i < len(nutrition.Feeders); i++ {
		light, heavy := nutrition.ClassOf(nutrition.Feeders[i-1]), nutrition.ClassOf(nutrition.Feeders[i])
		for name, bands := range map[string][2]nutrition.Band{
			"charge": {light.Charge, heavy.Charge}, "strength": {light.Strength, heavy.Strength}, "weekly": {light.Weekly, heavy.Weekly},
		} {
			if !(bands[0].Low < bands[1].Low && bands[0].High < bands[1].High && bands[1].Low < bands[1].High) {
				t.Errorf("%s of %s and %s: %v", name, light.Feeder, heavy.Feeder, bands)
			}
		}
		if heavy.Interval.Longest > light.Interval.Longest || heavy.SaltLimit() <= light.SaltLimit() {
			t.Errorf("%s and %s", light.Feeder, heavy.Feeder)
		}
		if light.Feeder.Heavier(heavy.Feeder) != heavy.Feeder || heavy.Feeder.Heavier(light.Feeder) != heavy.Feeder || nutrition.NoFeeder.Heavier(light.Feeder) != light.Feeder {
			t.Errorf("the hungrier of %s and %s", light.Feeder, heavy.Feeder)
		}
	}
}

func TestSharedStrength(t *testing.T) {
	light, medium, heavy := nutrition.ClassOf(nutrition.LightFeeder), nutrition.ClassOf(nutrition.MediumFeeder), nutrition.ClassOf(nutrition.HeavyFeeder)
	for _, c := range []struct {
		classes []nutrition.Class
		want    nutrition.PPM
		within  bool
	}{
		{[]nutrition.Class{medium}, 175, true},
		{[]nutrition.Class{light, medium}, 150, true},
		{[]nutrition.Class{heavy, medium}, 200, true},
		{[]nutrition.Class{heavy, light}, 150, false},
		{[]nutrition.Class{heavy, medium, light}, 150, false},
	} {
		if got, within := nutrition.SharedStrength(c.classes...); got != c.want || within != c.within {
			t.Errorf("%v: %v, %v", c.classes, got, within)
		}
	}
}
