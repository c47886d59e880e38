package nutrition_test

import (
	"fmt"
	"math/rand/v2"
	"testing"
	"time"

	"fourturn/planner/civil"
	"fourturn/planner/nutrition"
)

// yearOfPots invents pots through a year: four stays, change-outs by spot, classes as
// they come, some with slow release, some with a history. The same seed gives the same pots.
func yearOfPots(n, spots int, seed uint64) ([]nutrition.Demand, nutrition.RoundRules) {
	random := rand.New(rand.NewPCG(seed, 1))
	first := civil.MustParse("2027-03-01")
	demands := make([]nutrition.Demand, n)
	for i := range demands {
		spot := random.IntN(spots)
		f := nutrition.Feeders[random.IntN(3)]
		charged := random.IntN(3) == 0
		var open []nutrition.Span
		for k, length := range []int{75, 130, 70} {
			planted := 5*spot%23 + []int{0, 75, 205}[k]
			start := planted + 14
			if charged && k == 1 {
				start = planted + 56
			}
			open = append(open, nutrition.Span{First: first.AddDays(start), Last: first.AddDays(planted + length - 8)})
		}
		demands[i] = nutrition.Demand{Pot: fmt.Sprint("pot", i), Interval: nutrition.ClassOf(f).Interval, Open: open}
	}
	return demands, nutrition.RoundRules{First: first, Last: first.AddDays(364), Products: 2}
}

// plainPass is what the benchmarks are measured against: looking once at every pot on
// every day.
func plainPass(demands []nutrition.Demand, rules nutrition.RoundRules) int {
	open := 0
	for d := rules.First; d <= rules.Last; d++ {
		for i := range demands {
			for _, s := range demands[i].Open {
				if s.Holds(d) {
					open++
				}
			}
		}
	}
	return open
}

func BenchmarkRounds1000PotsAYear(b *testing.B) {
	demands, rules := yearOfPots(1000, 12, 1)
	rounds := 0
	started := time.Now()
	for b.Loop() {
		rounds += len(nutrition.PlanRounds(demands, rules).Rounds)
	}
	took := time.Since(started) / time.Duration(b.N)
	started = time.Now()
	const passes = 20
	for range passes {
		rounds += plainPass(demands, rules)
	}
	plain := time.Since(started) / passes
	if rounds == 0 {
		b.Fatal("no rounds")
	}
	b.ReportMetric(float64(took)/float64(plain), "x-plain-pass")
}
