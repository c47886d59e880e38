package climate_test

import (
	"math"
	"testing"
	"time"

	"pgregory.net/rapid"

	"fourturn/planner/climate"
)

// The mean of the curve over a month is the month's normal to 0.01 K: the law
// asks for far more than the promise.
func TestSmoothKeepsMonthlyMeans(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		var means [12]float64
		for m := range means {
			means[m] = rapid.Float64Range(-60, 60).Draw(t, "mean")
		}
		curve := climate.Smooth(means)
		for m := time.January; m <= time.December; m++ {
			if d := math.Abs(curve.MonthMean(m) - means[m-1]); d > 1e-6 {
				t.Fatalf("%v: mean of the curve is off by %g K", m, d)
			}
		}
	})
}

func TestSmoothOfEqualMonthsIsFlat(t *testing.T) {
	curve := climate.Smooth([12]float64{7, 7, 7, 7, 7, 7, 7, 7, 7, 7, 7, 7})
	for i, v := range curve {
		if math.Abs(v-7) > 1e-6 {
			t.Fatalf("day %d: %g, want 7", i, v)
		}
	}
}
