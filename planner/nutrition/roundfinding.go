package nutrition

import (
	"fourturn/planner/finding"
	"fourturn/planner/working"
)

// lateFindings reports the feeds of a group that come late or not at all, for each
// of its pots, with the reason.
func (s *season) lateFindings(g *group, demands []Demand, rounds []mark, steps []given) []finding.Finding {
	var found []finding.Finding
	due, last := g.start, g.lastFed
	for _, step := range steps {
		day := rounds[step.round].day
		if step.late > 0 {
			code, other := s.reason(g, demands, rounds, last, due)
			for _, pot := range g.pots {
				found = append(found, s.lateFinding(code, demands[pot].Pot, other, due, day, step.late, rounds[step.round].product))
			}
		}
		due, last = g.deadline(day, s.rules.Grace), day
	}
	if late := g.lateDays(due, len(g.days)-1, s.rules.Grace); late > 0 {
		for _, pot := range g.pots {
			found = append(found, s.lateFinding("nutrition.rounds.missed", demands[pot].Pot, "", due, len(g.days)-1, late, 0))
		}
	}
	return found
}

// reason says why a feed after one on day last, due by day due, comes late. other
// is the pot whose product was in the can instead.
func (s *season) reason(g *group, demands []Demand, rounds []mark, last, due int) (code, other string) {
	if due < 0 {
		return "nutrition.rounds.overdue", ""
	}
	if g.notBefore > due {
		return "nutrition.rounds.put_off", ""
	}
	day := max(0, due)
	anyDay := false
	for t := max(0, last+g.shortest); t <= day; t++ {
		anyDay = anyDay || s.allowed[t] && g.days[t]&feedable != 0
	}
	if !anyDay {
		return "nutrition.rounds.weekdays", ""
	}
	for _, h := range s.groups {
		if h == g {
			continue
		}
		for _, step := range s.assign(h, rounds) {
			if d := rounds[step.round].day; d >= max(0, last+g.shortest) && d <= day {
				return "nutrition.rounds.conflict", demands[h.pots[0]].Pot
			}
		}
	}
	return "nutrition.rounds.late", ""
}

func (s *season) lateFinding(code, pot, other string, due, day, late, product int) finding.Finding {
	return finding.Finding{
		Code: code, Severity: finding.Warning, Where: finding.Where{"pots", pot},
		Args: []finding.Arg{
			{Name: "pot", Value: working.Text(pot)},
			{Name: "other", Value: working.Text(other)},
			{Name: "due", Value: working.Date(s.rules.First.AddDays(due))},
			{Name: "date", Value: working.Date(s.rules.First.AddDays(day))},
			{Name: "days", Value: working.Number(float64(late), working.Day)},
			{Name: "product", Value: working.Number(float64(product+1), working.None)},
		},
	}
}
