package nutrition_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"testing"
	"time"

	"fourturn/planner/civil"
	"fourturn/planner/nutrition"
	"fourturn/planner/quantity"
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

// yearOfAccounts invents the accounts of pots that stand in one spot: two charges and
// fifteen feeds each.
func yearOfAccounts(n int) []nutrition.Account {
	means := make([]quantity.Temperature, 365)
	for i := range means {
		means[i] = quantity.Temperature(12 - 10*math.Cos(2*math.Pi*float64(i-15)/365))
	}
	first := civil.MustParse("2027-01-01")
	thermal := nutrition.NewThermal(first, means, nutrition.UsualKinetics())
	product := nutrition.SlowRelease{Analysis: nutrition.MustParseAnalysis("14-14-14"), Longevity: 3.5}
	accounts := make([]nutrition.Account, n)
	for i := range accounts {
		class := nutrition.ClassOf(nutrition.Feeders[i%3])
		feed, err := nutrition.AtStrength(nutrition.MustParseAnalysis("20-10-20"), class.Nitrogen())
		if err != nil {
			panic(err)
		}
		mix := quantity.Volume(5 + i%40)
		a := nutrition.Account{Pot: fmt.Sprint("pot", i), Mix: mix, Growth: []nutrition.Growth{{Span: nutrition.Span{First: first.AddDays(90), Last: first.AddDays(290)}, Class: class}}}
		for _, day := range []int{100, 190} {
			charge := nutrition.Charge{Product: product, Date: first.AddDays(day), Mass: class.Rate(product.Analysis).Of(mix)}
			a.Tracks = append(a.Tracks, nutrition.Follow(charge, thermal, nil))
		}
		for k := range 15 {
			a.Feeds = append(a.Feeds, nutrition.GivenFeed{Date: first.AddDays(120 + 10*k), Solution: feed, Volume: mix / 3})
		}
		accounts[i] = a
	}
	return accounts
}

func BenchmarkBalance10000PotsAYear(b *testing.B) {
	accounts := yearOfAccounts(10_000)
	first := civil.MustParse("2027-01-01")
	total := quantity.Mass(0)
	started := time.Now()
	for b.Loop() {
		for _, a := range accounts {
			total += a.Weeks(first, 52).Weeks[30].Nitrogen()
		}
	}
	took := time.Since(started) / time.Duration(b.N)
	demands := make([]nutrition.Demand, len(accounts))
	for i, a := range accounts {
		demands[i].Open = []nutrition.Span{a.Growth[0].Span}
	}
	started = time.Now()
	const passes = 5
	days := 0
	for range passes {
		days += plainPass(demands, nutrition.RoundRules{First: first, Last: first.AddDays(364)})
	}
	plain := time.Since(started) / passes
	if total == 0 || days == 0 {
		b.Fatal("nothing was balanced")
	}
	b.ReportMetric(float64(took)/float64(plain), "x-plain-pass")
}
