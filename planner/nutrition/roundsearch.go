package nutrition

import (
	"cmp"
	"slices"
	"time"

	"fourturn/planner/civil"
)

// UsualEffort is the steps that the search for rounds may take: well under a second
// on a desktop of 2025.
const UsualEffort = 12_000_000

// season is the search for rounds over a run of days.
type season struct {
	groups    []*group // all of them
	leading   []*group // those that no other group speaks for, see [leaders]
	rules     RoundRules
	allowed   []bool // days on which a round may fall
	preferred []bool
}

func newSeason(groups []*group, rules RoundRules) *season {
	n := int(rules.Last-rules.First) + 1
	s := &season{groups: groups, leading: leaders(groups), rules: rules, allowed: make([]bool, n), preferred: make([]bool, n)}
	for t := range n {
		day := rules.First.AddDays(t).Weekday()
		s.allowed[t] = onWeekday(day, rules.Only)
		s.preferred[t] = preferredOn(rules, rules.First.AddDays(t))
	}
	return s
}

// preferredOn reports whether a round is best held on a day: one of an earlier plan, as
// far as that reached, or one of the weekdays.
func preferredOn(rules RoundRules, day civil.Date) bool {
	if n := len(rules.Keep); n > 0 && day <= rules.Keep[n-1] {
		return slices.Contains(rules.Keep, day)
	}
	return onWeekday(day.Weekday(), rules.Prefer)
}

func onWeekday(day time.Weekday, days []time.Weekday) bool {
	return len(days) == 0 || slices.Contains(days, day)
}

// fewest searches twice: narrowly for a good plan, then as widely as the effort
// allows for a better one. It reports whether no better plan exists.
func (s *season) fewest(bound int) (best []mark, proven bool) {
	words := len(s.leading) * s.rules.Products
	perState := max(1, len(s.allowed)*(s.rules.Products+1)*words)
	const narrow, widest = 24, 2_000
	wide := min(max(narrow/2, s.rules.Effort/perState), widest)
	first, proven := s.search(min(narrow, wide), nil)
	done := first.late == 0 && first.rounds == bound && first.off == 0
	if done || proven || wide <= narrow {
		return first.marks(), proven
	}
	better, proven := s.search(wide, first)
	if better == nil {
		better = first
	}
	return better.marks(), proven
}

// search keeps the width most promising states of each day. It returns the best
// state of the last day, better than rival unless rival is nil, or nil; and whether
// nothing was dropped that could have been better.
func (s *season) search(width int, rival *state) (best *state, complete bool) {
	products := s.rules.Products
	words := len(s.leading) * products
	complete = true
	kept := []*state{s.opening()}
	guide := guide{season: s}
	// Where every turn may begin anywhere, plans differ by the names of their
	// products alone: the first round has the first.
	alike := !slices.ContainsFunc(s.groups, func(g *group) bool { return g.lastProduct != AnyProduct })
	for t := range s.allowed {
		slab := make([]uint64, 0, len(kept)*(products+1)*words)
		var next []*state
		for _, from := range kept {
			for p := -1; p < products; p++ {
				if p >= 0 && !s.allowed[t] || p > 0 && from.trail == nil && alike {
					continue
				}
				slab = slab[:len(slab)+words]
				st, useful := s.step(from, t, p, slab[len(slab)-words:])
				if !useful || hopeless(st, rival) {
					slab = slab[:len(slab)-words]
					continue
				}
				st.promise = st.rounds + st.need + guide.extra(st.words, t)
				next = append(next, st)
			}
		}
		kept = undominated(next)
		if len(kept) > width {
			kept = widely(kept, width, t)
			complete = false
		}
	}
	if len(kept) == 0 {
		return nil, complete
	}
	return slices.MinFunc(kept, func(a, b *state) int {
		return cmp.Or(cmp.Compare(a.late, b.late), cmp.Compare(a.rounds, b.rounds), cmp.Compare(a.off, b.off))
	}), complete
}

// hopeless reports whether nothing that follows from st can be better than rival.
func hopeless(st, rival *state) bool {
	if rival == nil {
		return false
	}
	if rival.late > 0 {
		return st.late > rival.late
	}
	rounds := st.rounds + st.need
	return st.late > 0 || rounds > rival.rounds || rounds == rival.rounds && st.off >= rival.off
}
