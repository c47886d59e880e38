package planner_test

import (
	"fmt"
	"testing"

	"fourturn/planner"
)

// BenchmarkWorkOut works out plans of 10 to 10,000 pots. The metric ns/pot shows that
// the cost grows in line with the pots, ratio is that of a pot against a pot of the
// smallest plan in the same run.
func BenchmarkWorkOut(b *testing.B) {
	ref := reference(b)
	first := 0.0
	for _, n := range []int{10, 100, 1_000, 10_000} {
		plan := yard()
		kinds := plan.Pots
		plan.Pots = make([]planner.Pot, n)
		for i := range plan.Pots {
			plan.Pots[i] = kinds[i%len(kinds)]
			plan.Pots[i].ID = fmt.Sprintf("pot-%d", i)
		}
		b.Run(fmt.Sprintf("pots=%d", n), func(b *testing.B) {
			for b.Loop() {
				planner.WorkOut(&plan, ref, today)
			}
			perPot := float64(b.Elapsed().Nanoseconds()) / float64(b.N) / float64(n)
			if first == 0 {
				first = perPot
			}
			b.ReportMetric(perPot, "ns/pot")
			b.ReportMetric(perPot/first, "ratio")
		})
	}
}
