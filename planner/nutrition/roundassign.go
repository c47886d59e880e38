package nutrition

import (
	"math"
	"slices"
)

// given is one feed of a group: the round it falls on and how late it is.
type given struct {
	round int // index of the chosen round
	due   int // day by which it was due
	late  int // running days past it
}

// A day late weighs more than any unevenness over three years.
const lateWeight = 1e9

// assign picks the rounds on which a group is fed: in turn, in its interval, with
// the fewest days late and then nearest to the wanted interval. A feed at the end
// that no round can serve is left out; see [season.lateFindings].
func (s *season) assign(g *group, rounds []mark) []given {
	cost := make([]float64, len(rounds))
	from := make([]int, len(rounds))
	steps := make([]given, len(rounds))
	best, end := s.tail(g, g.start), -1
	for j, r := range rounds {
		cost[j], from[j] = math.Inf(1), -1
		if g.days[r.day]&feedable == 0 || r.day <= g.lastFed {
			continue
		}
		if g.begins(r, s.rules.Products) {
			steps[j] = given{j, g.start, g.lateDays(g.start, r.day, s.rules.Grace)}
			cost[j] = lateWeight * float64(steps[j].late)
		}
		for i := j - 1; i >= 0; i-- {
			gap := r.day - rounds[i].day
			if math.IsInf(cost[i], 1) || gap < g.shortest || follows(rounds[i].product, s.rules.Products) != r.product {
				continue
			}
			due := g.dueAfter(rounds[i].day)
			late := g.lateDays(due, r.day, s.rules.Grace)
			c := cost[i] + lateWeight*float64(late)
			if gap <= g.longest {
				c += float64((gap - g.wanted) * (gap - g.wanted))
			}
			if c < cost[j] {
				cost[j], from[j], steps[j] = c, i, given{j, due, late}
			}
			if late > 0 && cost[j] < lateWeight {
				break // everything before is later still
			}
		}
		if c := cost[j] + s.tail(g, g.dueAfter(r.day)); c < best {
			best, end = c, j
		}
	}
	var path []given
	for j := end; j >= 0; j = from[j] {
		path = append(path, steps[j])
	}
	slices.Reverse(path)
	return path
}

// tail is the cost of giving no feed by a deadline nor after it.
func (s *season) tail(g *group, due int) float64 {
	return lateWeight * float64(g.lateDays(due, len(g.days)-1, s.rules.Grace))
}

// begins reports whether the group's first feed may fall on a round.
func (g *group) begins(r mark, products int) bool {
	if g.lastFed != longAgo && r.day-g.lastFed < g.shortest {
		return false
	}
	return g.lastProduct == AnyProduct || follows(g.lastProduct, products) == r.product
}

// lateness returns the pot-days late of the leading groups on some rounds, or any
// number above most once it is above.
func (s *season) lateness(rounds []mark, most int) int {
	total := 0
	for _, g := range s.leading {
		due := g.start
		for _, step := range s.assign(g, rounds) {
			total += step.late * len(g.pots)
			due = g.dueAfter(rounds[step.round].day)
		}
		total += g.lateDays(due, len(g.days)-1, s.rules.Grace) * len(g.pots)
		if total > most {
			break
		}
	}
	return total
}

// thin takes out rounds that all pots can do without.
func (s *season) thin(rounds []mark, bound int) []mark {
	if len(rounds) <= bound {
		return rounds
	}
	late := s.lateness(rounds, never)
	for i := len(rounds) - 1; i >= 0 && len(rounds) > bound; i-- {
		without := slices.Delete(slices.Clone(rounds), i, i+1)
		if s.lateness(without, late) <= late {
			rounds = without
		}
	}
	return rounds
}
