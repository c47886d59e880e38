package nutrition_test

import (
	"testing"

	"pgregory.net/rapid"

	"fourturn/planner/civil"
	"fourturn/planner/nutrition"
)

// everyPlan tries every way of holding rounds on a few days, and for each every way
// of feeding every pot on them, by the rules alone. It returns the fewest rounds
// that leave nobody late; ok is false where there are none.
func everyPlan(demands []nutrition.Demand, rules nutrition.RoundRules) (fewest int, ok bool) {
	days := int(rules.Last-rules.First) + 1
	var rounds []nutrition.Feed
	var try func(day int)
	try = func(day int) {
		if ok && len(rounds) >= fewest {
			return
		}
		if day == days {
			for _, d := range demands {
				product := d.LastProduct
				if d.LastFed.IsZero() {
					product = nutrition.AnyProduct
				}
				if !canBeFed(d, rules, rounds, d.LastFed, product) {
					return
				}
			}
			fewest, ok = len(rounds), true
			return
		}
		try(day + 1)
		for p := range rules.Products {
			rounds = append(rounds, nutrition.Feed{Date: rules.First.AddDays(day), Product: p})
			try(day + 1)
			rounds = rounds[:len(rounds)-1]
		}
	}
	try(0)
	return fewest, ok
}

// canBeFed reports whether a pot can go through the rounds without ever being late.
func canBeFed(d nutrition.Demand, rules nutrition.RoundRules, rounds []nutrition.Feed, last civil.Date, product int) bool {
	for i, r := range rounds {
		if overdueOn(d, rules, last, r.Date) {
			return false
		}
		open := false
		for _, s := range d.Open {
			open = open || s.Holds(r.Date)
		}
		if !open || r.Date < d.NotBefore || !last.IsZero() && int(r.Date-last) < d.Interval.Shortest ||
			product != nutrition.AnyProduct && r.Product != (product+1)%rules.Products {
			continue
		}
		if canBeFed(d, rules, rounds[i+1:], r.Date, r.Product) {
			return true
		}
	}
	return !overdueOn(d, rules, last, rules.Last)
}

// On a few days and pots the plan has exactly as few rounds as the best of all plans,
// or reports a pot where no plan serves them all.
func TestRoundsAreTheFewestOfAll(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		rules := nutrition.RoundRules{First: spring, Last: spring.AddDays(rapid.IntRange(0, 6).Draw(t, "days")), Products: rapid.IntRange(1, 3).Draw(t, "products"), Grace: rapid.IntRange(1, 4).Draw(t, "grace")}
		demands := make([]nutrition.Demand, rapid.IntRange(1, 4).Draw(t, "pots"))
		for i := range demands {
			demands[i] = demandOf(t, i, 10, 5)
		}
		fewest, ok := everyPlan(demands, rules)
		plan := nutrition.PlanRounds(demands, rules)
		switch {
		case ok && len(plan.Findings) > 0:
			t.Fatalf("%d rounds serve all, but %+v", fewest, plan.Findings)
		case !ok && len(plan.Findings) == 0:
			t.Fatalf("no rounds serve all, but the plan claims to: %+v", plan.Feeds)
		case ok && len(plan.Rounds) != fewest:
			t.Fatalf("%d rounds where %d do", len(plan.Rounds), fewest)
		case ok && plan.LowerBound > fewest:
			t.Fatalf("a bound of %d, but %d rounds do", plan.LowerBound, fewest)
		}
	})
}
