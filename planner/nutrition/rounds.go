package nutrition

import (
	"time"

	"fourturn/planner/civil"
	"fourturn/planner/finding"
	"fourturn/planner/working"
)

// UsualGrace is the days within which a pot should have its first feed once it may
// be fed: the published first feed is "after 2 to 3 weeks" (Minnesota Extension,
// 2018), a week's leeway.
const UsualGrace = 7

// RoundRules say how rounds are planned.
type RoundRules struct {
	First, Last civil.Date     // days planned for, both included
	Products    int            // in the turn, 1 to [MostProducts]
	Grace       int            // days for a first feed after opening; 0 means [UsualGrace]
	Only        []time.Weekday // rounds fall on these days alone; empty allows all
	Prefer      []time.Weekday // of plans with equally few rounds, these days are chosen
	Keep        []civil.Date   // days of an earlier plan, in order: up to the last of them they are preferred instead
	Effort      int            // steps that the search may take; 0 means [UsualEffort]
}

// MostProducts is the longest turn that rounds are planned for.
const MostProducts = 6

// MostRoundDays is the longest time that rounds are planned for, in days.
const MostRoundDays = 3 * 366

// Round is one shared feeding day.
type Round struct {
	Date    civil.Date
	Product int   // index in the turn: what is in the can
	Pots    []int // indices of the demands that are fed, in order
}

// Rounds are the feeding days found for a set of pots.
type Rounds struct {
	Rounds     []Round
	Feeds      [][]Feed // of each demand, in order of date
	LowerBound int      // no plan without a late feed has fewer rounds
	Proven     bool     // no plan without a late feed has fewer rounds than this one
	Findings   []finding.Finding
	rules      RoundRules
	pots       int
}

// PlanRounds returns the fewest rounds it can find on which one product is mixed
// for all that are due. In the result every pot takes the products in turn,
// counted over its own feeds. The days between its feeds are in its own range,
// but for a rest in which it may not be fed, and but for feeds that a finding
// names: where demands contradict each other the least days late are chosen.
// The first feed after a rest falls within the grace. It panics on rules without a
// product, with more than [MostProducts], or whose days run backwards or past
// [MostRoundDays].
func PlanRounds(demands []Demand, rules RoundRules) Rounds {
	rules = checkRules(rules)
	plan := Rounds{Feeds: make([][]Feed, len(demands)), rules: rules, pots: len(demands)}
	groups, unsound := groupDemands(demands, rules)
	plan.Findings = unsound
	if len(groups) == 0 {
		plan.Proven = true
		return plan
	}
	season := newSeason(groups, rules)
	plan.LowerBound = season.lowerBound()
	chosen, proven := season.fewest(plan.LowerBound)
	chosen = season.thin(chosen, plan.LowerBound)
	late := plan.hand(season, demands, chosen)
	plan.Proven = !late && (proven && len(plan.Rounds) <= len(chosen) || len(plan.Rounds) == plan.LowerBound)
	if plan.Proven {
		plan.LowerBound = len(plan.Rounds)
	}
	return plan
}

func checkRules(r RoundRules) RoundRules {
	if r.Products < 1 || r.Products > MostProducts {
		panic("nutrition: a turn holds 1 to 6 products")
	}
	if r.Last < r.First-1 || int(r.Last-r.First) > MostRoundDays {
		panic("nutrition: rounds are planned for days in order, three years at most")
	}
	if r.Grace <= 0 {
		r.Grace = UsualGrace
	}
	if r.Effort <= 0 {
		r.Effort = UsualEffort
	}
	return r
}

// hand gives every pot its feeds on the chosen rounds, drops rounds that nobody
// needs and reports late feeds.
func (plan *Rounds) hand(s *season, demands []Demand, chosen []mark) (late bool) {
	members := make([][]int, len(chosen))
	for _, g := range s.groups {
		steps := s.assign(g, chosen)
		for _, pot := range g.pots {
			feeds := make([]Feed, len(steps))
			for i, step := range steps {
				feeds[i] = Feed{Date: s.rules.First.AddDays(chosen[step.round].day), Product: chosen[step.round].product}
				members[step.round] = append(members[step.round], pot)
			}
			plan.Feeds[pot] = feeds
		}
		found := s.lateFindings(g, demands, chosen, steps)
		late = late || len(found) > 0
		plan.Findings = append(plan.Findings, found...)
	}
	for i, pots := range members {
		if len(pots) > 0 {
			plan.Rounds = append(plan.Rounds, Round{
				Date: s.rules.First.AddDays(chosen[i].day), Product: chosen[i].product, Pots: inOrder(pots),
			})
		}
	}
	return late
}

// Working returns the trace of the number of rounds.
func (plan Rounds) Working() working.Trace {
	trace := working.Trace{
		Name:    "nutrition.rounds",
		Formula: "R ≥ R₀",
		Inputs: []working.Input{
			{Symbol: "R₀", Name: "nutrition.rounds_bound", Value: working.Number(float64(plan.LowerBound), working.None), Source: working.Source{Status: working.Derived}},
			{Symbol: "pots", Name: "nutrition.rounds_pots", Value: working.Number(float64(plan.pots), working.None), Source: working.Source{Status: working.Entered}},
			{Symbol: "products", Name: "nutrition.turn", Value: working.Number(float64(plan.rules.Products), working.None), Source: working.Source{Status: working.Entered}},
		},
		Result: working.Number(float64(len(plan.Rounds)), working.None),
		Source: working.Source{Status: working.Derived},
		Notes:  []string{"nutrition.note_turn_by_count"},
	}
	if plan.Proven {
		trace.Notes = append(trace.Notes, "nutrition.note_rounds_proven")
	} else {
		trace.Notes = append(trace.Notes, "nutrition.note_rounds_bounded")
	}
	return trace
}
