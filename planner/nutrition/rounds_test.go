package nutrition_test

import (
	"fmt"
	"slices"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"fourturn/planner/civil"
	"fourturn/planner/nutrition"
)

var spring = civil.MustParse("2027-03-01")

func days(first, last int) nutrition.Span {
	return nutrition.Span{First: spring.AddDays(first), Last: spring.AddDays(last)}
}

// spansOf draws one to three runs of open days within n days.
func spansOf(t *rapid.T, n int) []nutrition.Span {
	var spans []nutrition.Span
	day := rapid.IntRange(-10, n/3).Draw(t, "open")
	for range rapid.IntRange(1, 3).Draw(t, "spans") {
		last := day + rapid.IntRange(0, n).Draw(t, "length")
		spans = append(spans, days(day, last))
		day = last + 2 + rapid.IntRange(0, n/3).Draw(t, "rest")
	}
	return spans
}

func demandOf(t *rapid.T, i, n, longest int) nutrition.Demand {
	shortest := rapid.IntRange(1, longest).Draw(t, "shortest")
	d := nutrition.Demand{
		Pot:      fmt.Sprint("pot", i),
		Interval: nutrition.Interval{Shortest: shortest, Longest: rapid.IntRange(shortest, longest).Draw(t, "longest")},
		Open:     spansOf(t, n),
	}
	if rapid.Bool().Draw(t, "fed") {
		d.LastFed = spring.AddDays(-rapid.IntRange(-2, longest+3).Draw(t, "ago"))
		d.LastProduct = rapid.IntRange(-1, 1).Draw(t, "last")
	}
	if rapid.IntRange(0, 9).Draw(t, "skip") == 0 {
		d.NotBefore = spring.AddDays(rapid.IntRange(0, 5).Draw(t, "not before"))
	}
	return d
}

// checkPlan is written apart from the search: it reads only the result.
func checkPlan(t interface{ Fatalf(string, ...any) }, demands []nutrition.Demand, rules nutrition.RoundRules, plan nutrition.Rounds) {
	named := map[string]bool{}
	for _, f := range plan.Findings {
		named[f.Where[1]] = true
	}
	can := map[civil.Date]int{}
	previous := civil.Date(0)
	for _, r := range plan.Rounds {
		if r.Date <= previous || r.Date < rules.First || r.Date > rules.Last || len(r.Pots) == 0 {
			t.Fatalf("round on %v after %v for %d pots", r.Date, previous, len(r.Pots))
		}
		previous = r.Date
		can[r.Date] = r.Product
		for _, pot := range r.Pots {
			if !slices.Contains(plan.Feeds[pot], nutrition.Feed{Date: r.Date, Product: r.Product}) {
				t.Fatalf("pot %d is on the round of %v but has no feed", pot, r.Date)
			}
		}
	}
	for i, d := range demands {
		checkPot(t, d, rules, plan.Feeds[i], can, named[d.Pot])
	}
	if len(plan.Findings) == 0 && len(plan.Rounds) < plan.LowerBound {
		t.Fatalf("%d rounds are fewer than the bound %d", len(plan.Rounds), plan.LowerBound)
	}
}

func checkPot(t interface{ Fatalf(string, ...any) }, d nutrition.Demand, rules nutrition.RoundRules, feeds []nutrition.Feed, can map[civil.Date]int, named bool) {
	last, product := d.LastFed, d.LastProduct
	if last.IsZero() {
		product = nutrition.AnyProduct
	}
	for _, f := range feeds {
		if p, ok := can[f.Date]; !ok || p != f.Product {
			t.Fatalf("%s is fed %d on %v, when no round of it is held", d.Pot, f.Product, f.Date)
		}
		if product != nutrition.AnyProduct && f.Product != (product+1)%rules.Products {
			t.Fatalf("%s meets product %d after %d on %v", d.Pot, f.Product, product, f.Date)
		}
		if !slices.ContainsFunc(d.Open, func(s nutrition.Span) bool { return s.Holds(f.Date) }) || f.Date < d.NotBefore {
			t.Fatalf("%s is fed on %v, when it may not be", d.Pot, f.Date)
		}
		if !last.IsZero() && int(f.Date-last) < d.Interval.Shortest {
			t.Fatalf("%s is fed on %v, %d days after the last", d.Pot, f.Date, f.Date-last)
		}
		if !named && overdueOn(d, rules, last, f.Date) {
			t.Fatalf("%s is late on %v and no finding says so", d.Pot, f.Date)
		}
		last, product = f.Date, f.Product
	}
	if !named && overdueOn(d, rules, last, rules.Last) {
		t.Fatalf("%s is left unfed after %v and no finding says so", d.Pot, last)
	}
}

// overdueOn reports whether a pot last fed on a day has gone without past its
// interval and its grace on that day.
func overdueOn(d nutrition.Demand, rules nutrition.RoundRules, last, day civil.Date) bool {
	grace := rules.Grace
	if grace == 0 {
		grace = nutrition.UsualGrace
	}
	for _, s := range d.Open {
		until := s.First.AddDays(grace)
		if !last.IsZero() {
			until = max(until, last.AddDays(d.Interval.Longest))
			if last >= s.First {
				until = last.AddDays(d.Interval.Longest)
			}
		}
		// Overdue on a day after, while the span runs and the plan has begun.
		if until < s.Last && until < day && last <= s.Last && s.Last >= rules.First {
			return true
		}
	}
	return false
}

func TestRoundsKeepEveryPotsTurnAndInterval(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(1, 90).Draw(t, "days")
		rules := nutrition.RoundRules{First: spring, Last: spring.AddDays(n - 1), Products: rapid.IntRange(1, 3).Draw(t, "products"), Effort: 2_000_000}
		demands := make([]nutrition.Demand, rapid.IntRange(1, 12).Draw(t, "pots"))
		for i := range demands {
			demands[i] = demandOf(t, i, n, rapid.SampledFrom([]int{7, 14, 30}).Draw(t, "range"))
		}
		checkPlan(t, demands, rules, nutrition.PlanRounds(demands, rules))
	})
}

// Weekly pots and fortnightly ones: on a fixed weekly alternation the fortnightly
// ones would meet one product for ever.
func TestFortnightlyPotsDoNotAlwaysMeetTheSameProduct(t *testing.T) {
	season := []nutrition.Span{days(0, 120)}
	demands := []nutrition.Demand{
		{Pot: "weekly", Interval: nutrition.Interval{Shortest: 7, Longest: 9}, Open: season},
		{Pot: "fortnightly", Interval: nutrition.Interval{Shortest: 12, Longest: 15}, Open: season},
	}
	rules := nutrition.RoundRules{First: spring, Last: spring.AddDays(120), Products: 2}
	plan := nutrition.PlanRounds(demands, rules)
	checkPlan(t, demands, rules, plan)
	if len(plan.Findings) != 0 {
		t.Fatalf("findings: %+v", plan.Findings)
	}
	t.Logf("%d rounds, bound %d, proven %v", len(plan.Rounds), plan.LowerBound, plan.Proven)
}

// Feeder classes whose ranges share ten days need no more rounds than the hungriest.
func TestOneCanServesAllClasses(t *testing.T) {
	season := []nutrition.Span{days(0, 150)}
	var demands []nutrition.Demand
	for _, f := range nutrition.Feeders {
		demands = append(demands, nutrition.Demand{Pot: string(f), Interval: nutrition.ClassOf(f).Interval, Open: season})
	}
	rules := nutrition.RoundRules{First: spring, Last: spring.AddDays(150), Products: 2}
	plan := nutrition.PlanRounds(demands, rules)
	checkPlan(t, demands, rules, plan)
	if !plan.Proven || len(plan.Rounds) != plan.LowerBound || len(plan.Findings) != 0 {
		t.Fatalf("%d rounds, bound %d, proven %v, %v", len(plan.Rounds), plan.LowerBound, plan.Proven, plan.Findings)
	}
}

func TestRoundsOnSaturdaysAlone(t *testing.T) {
	demands := []nutrition.Demand{{Pot: "a", Interval: nutrition.Interval{Shortest: 7, Longest: 14}, Open: []nutrition.Span{days(0, 100)}}}
	rules := nutrition.RoundRules{First: spring, Last: spring.AddDays(100), Products: 2, Only: []time.Weekday{time.Saturday}}
	plan := nutrition.PlanRounds(demands, rules)
	checkPlan(t, demands, rules, plan)
	for _, r := range plan.Rounds {
		if r.Date.Weekday() != time.Saturday {
			t.Errorf("round on %v", r.Date.Weekday())
		}
	}
	if len(plan.Findings) != 0 || len(plan.Rounds) == 0 {
		t.Errorf("%d rounds, %v", len(plan.Rounds), plan.Findings)
	}
}

// Two pots that are both due on one day, each for another product, cannot share a can.
func TestConflictNamesThePot(t *testing.T) {
	exact := nutrition.Interval{Shortest: 7, Longest: 7}
	demands := []nutrition.Demand{
		{Pot: "a", Interval: exact, Open: []nutrition.Span{days(-30, 30)}, LastFed: spring.AddDays(-7), LastProduct: 0},
		{Pot: "b", Interval: exact, Open: []nutrition.Span{days(-30, 30)}, LastFed: spring.AddDays(-7), LastProduct: 1},
	}
	rules := nutrition.RoundRules{First: spring, Last: spring.AddDays(30), Products: 2}
	plan := nutrition.PlanRounds(demands, rules)
	checkPlan(t, demands, rules, plan)
	if len(plan.Findings) != 1 || plan.Findings[0].Code != "nutrition.rounds.conflict" {
		t.Fatalf("findings: %+v", plan.Findings)
	}
}

// Of plans with equally few rounds, one on the preferred days is chosen; their number
// is not raised for it.
func TestPreferredWeekdaysCostNoRound(t *testing.T) {
	demands := []nutrition.Demand{{Pot: "a", Interval: nutrition.Interval{Shortest: 7, Longest: 14}, Open: []nutrition.Span{days(0, 100)}}}
	rules := nutrition.RoundRules{First: spring, Last: spring.AddDays(100), Products: 2}
	free := nutrition.PlanRounds(demands, rules)
	rules.Prefer = []time.Weekday{time.Saturday, time.Sunday}
	plan := nutrition.PlanRounds(demands, rules)
	checkPlan(t, demands, rules, plan)
	if len(plan.Rounds) != len(free.Rounds) {
		t.Fatalf("%d rounds on preferred days, %d on any", len(plan.Rounds), len(free.Rounds))
	}
	for _, r := range plan.Rounds {
		if d := r.Date.Weekday(); d != time.Saturday && d != time.Sunday {
			t.Errorf("round on %v", d)
		}
	}
}

// Nothing to plan, and nothing that can be planned.
func TestRoundsAtTheEdges(t *testing.T) {
	rules := nutrition.RoundRules{First: spring, Last: spring.AddDays(30), Products: 2}
	if plan := nutrition.PlanRounds(nil, rules); len(plan.Rounds) != 0 || !plan.Proven || len(plan.Findings) != 0 {
		t.Errorf("no pots: %+v", plan)
	}
	closed := []nutrition.Demand{{Pot: "a", Interval: nutrition.Interval{Shortest: 7, Longest: 14}}}
	if plan := nutrition.PlanRounds(closed, rules); len(plan.Rounds) != 0 || !plan.Proven || len(plan.Findings) != 0 {
		t.Errorf("a pot that is never open: %+v", plan)
	}
	open := []nutrition.Span{days(0, 30)}
	for _, i := range []nutrition.Interval{{}, {Shortest: 0, Longest: 5}, {Shortest: 9, Longest: 8}, {Shortest: 1, Longest: nutrition.LongestInterval + 1}, {Shortest: 7, Longest: 9, Wanted: 10}} {
		plan := nutrition.PlanRounds([]nutrition.Demand{{Pot: "a", Interval: i, Open: open}}, rules)
		if len(plan.Findings) != 1 || plan.Findings[0].Code != "nutrition.rounds.interval" || len(plan.Rounds) != 0 {
			t.Errorf("%+v: %+v", i, plan.Findings)
		}
	}
	rules.Last = rules.First - 1
	if plan := nutrition.PlanRounds([]nutrition.Demand{{Pot: "a", Interval: nutrition.Interval{Shortest: 7, Longest: 14}, Open: open}}, rules); len(plan.Rounds) != 0 {
		t.Errorf("no days: %+v", plan)
	}
	longest := nutrition.Interval{Shortest: nutrition.LongestInterval, Longest: nutrition.LongestInterval}
	year := nutrition.RoundRules{First: spring, Last: spring.AddDays(365), Products: 3}
	demands := []nutrition.Demand{{Pot: "a", Interval: longest, Open: []nutrition.Span{days(-400, 400)}, LastFed: spring.AddDays(-30), LastProduct: 2}}
	plan := nutrition.PlanRounds(demands, year)
	checkPlan(t, demands, year, plan)
	if len(plan.Rounds) != 6 || len(plan.Findings) != 0 {
		t.Errorf("every 60 days: %+v, %+v", plan.Rounds, plan.Findings)
	}
}

// The same pots in the same order give the same plan, whatever the effort of others.
func TestRoundsAreDeterministic(t *testing.T) {
	demands, rules := yearOfPots(40, 5, 7)
	first := nutrition.PlanRounds(demands, rules)
	second := nutrition.PlanRounds(demands, rules)
	if diff := cmp.Diff(first.Rounds, second.Rounds); diff != "" {
		t.Error(diff)
	}
	checkPlan(t, demands, rules, first)
	if w := first.Working(); w.Result.Number != float64(len(first.Rounds)) || w.Inputs[0].Value.Number != float64(first.LowerBound) {
		t.Errorf("working: %+v", w)
	}
}

// A feed put off past its day, and one overdue before the plan begins, are named so.
func TestLateFeedsAreExplained(t *testing.T) {
	base := nutrition.Demand{Pot: "a", Interval: nutrition.Interval{Shortest: 7, Longest: 8}, Open: []nutrition.Span{days(-60, 60)}, LastFed: spring.AddDays(-6)}
	rules := nutrition.RoundRules{First: spring, Last: spring.AddDays(40), Products: 2}
	putOff, overdue := base, base
	putOff.NotBefore = spring.AddDays(4)
	overdue.LastFed = spring.AddDays(-12)
	saturdays := rules
	saturdays.Only = []time.Weekday{time.Saturday}
	for code, c := range map[string]struct {
		demand nutrition.Demand
		rules  nutrition.RoundRules
	}{
		"nutrition.rounds.put_off":  {putOff, rules},
		"nutrition.rounds.overdue":  {overdue, rules},
		"nutrition.rounds.weekdays": {base, saturdays}, // 1 March 2027 is a Monday: 7 or 8 days after 23 February is no Saturday
	} {
		plan := nutrition.PlanRounds([]nutrition.Demand{c.demand}, c.rules)
		checkPlan(t, []nutrition.Demand{c.demand}, c.rules, plan)
		if len(plan.Findings) == 0 || plan.Findings[0].Code != code || plan.Proven {
			t.Errorf("%s: %+v", code, plan.Findings)
		}
	}
}
