package rotation

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"fourturn/planner/civil"
)

// A run over many days gives what the days give one by one.
func TestRunEqualsSteps(t *testing.T) {
	const days = 300
	n := Normals{From: civil.MustParse("2027-10-01")}
	for i := range days {
		m := 12 - 14*math.Cos(2*math.Pi*float64(i-110)/365.25)
		n.Tmin, n.Tmax, n.TminSD = append(n.Tmin, m-5), append(n.Tmax, m+5), append(n.TminSD, 4)
	}
	climate, err := NewClimate(n, nil)
	if err != nil {
		t.Fatal(err)
	}
	o := NewOutlook(climate, DefaultParams())
	rapid.Check(t, func(t *rapid.T) {
		plant := &Plant{
			Lowest: -5, PlantOut: 5, HeatLimit: 20, Base: 3, Optimum: 20,
			Hardened:     rapid.Bool().Draw(t, "hardened"),
			DisplayWeeks: rapid.Float64Range(0, 20).Draw(t, "display weeks"),
			Cut:          rapid.IntRange(0, 5).Draw(t, "cut") == 0,
			Sizes:        []Size{{WeeksToFull: rapid.Float64Range(0, 12).Draw(t, "weeks")}},
		}
		if rapid.IntRange(0, 5).Draw(t, "bulb") == 0 {
			plant.Bulb = &Bulb{ChillWeeks: 4, ChillBelow: 9, HeatSum: 200}
		}
		run, steps := o.newCourse(Part{Plant: plant, Share: 1}), o.newCourse(Part{Plant: plant, Share: 1})
		start := rapid.IntRange(0, days-1).Draw(t, "start")
		values := make([]float64, days-start)
		cut := rapid.IntRange(0, len(values)).Draw(t, "first run")
		run.run(start, values[:cut])
		run.run(start+cut, values[cut:])
		for k, v := range values {
			if want := steps.value(start + k); math.Abs(v-want) > 1e-12 {
				t.Fatalf("day %d: %v, by steps %v", k, v, want)
			}
			steps.step(start + k)
		}
	})
}
