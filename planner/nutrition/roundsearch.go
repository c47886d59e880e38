package nutrition

import (
	"cmp"
	"math/bits"
	"slices"
	"time"
)

// UsualEffort is the steps that the search for rounds may take: about a tenth of a
// second on a desktop of 2025.
const UsualEffort = 4_000_000

// What is known of a group on a day is one word for each product: bit k says that
// its last feed could have been that product, k days ago.
const (
	waiting = uint64(1) << 62 // it rested; its first feed may be any day of the grace
	overdue = uint64(1) << 63 // no way was found to feed it in time
	aged    = waiting - 1     // the bits that are days
)

// season is the search for rounds over a run of days.
type season struct {
	groups    []*group
	rules     RoundRules
	allowed   []bool // days on which a round may fall
	preferred []bool
	eligible  []uint64  // of each group, the ages at which it may be fed
	needAfter [][]int32 // of each group, feeds needed after one on day d, at index d + LongestInterval
}

// state is everything that could be true of all groups on a day after some rounds.
type state struct {
	words                  []uint64 // of each group, one for each product
	late, rounds, off      int      // pot-days late; rounds so far; those on days not preferred
	need, needSum, choices int      // rounds still needed at least; feeds needed by all; ways open
	hash                   uint64
	trail                  *trail
}

// trail is the rounds so far, newest first.
type trail struct {
	mark
	before *trail
}

func newSeason(groups []*group, rules RoundRules) *season {
	n := int(rules.Last-rules.First) + 1
	s := &season{groups: groups, rules: rules, allowed: make([]bool, n), preferred: make([]bool, n)}
	for t := range n {
		day := rules.First.AddDays(t).Weekday()
		s.allowed[t] = onWeekday(day, rules.Only)
		s.preferred[t] = onWeekday(day, rules.Prefer)
	}
	for _, g := range groups {
		s.eligible = append(s.eligible, uint64(1)<<(g.longest+1)-uint64(1)<<g.shortest)
		after := make([]int32, n+LongestInterval)
		for i := range after {
			after[i] = g.needs(g.deadline(i-LongestInterval, rules.Grace))
		}
		s.needAfter = append(s.needAfter, after)
	}
	return s
}

func onWeekday(day time.Weekday, days []time.Weekday) bool {
	return len(days) == 0 || slices.Contains(days, day)
}

// fewest searches twice: narrowly for a good plan, then as widely as the effort
// allows for a better one. It reports whether no better plan exists.
func (s *season) fewest(bound int) (best []mark, proven bool) {
	words := len(s.groups) * s.rules.Products
	perState := max(1, len(s.allowed)*(s.rules.Products+1)*words)
	const narrow, widest = 12, 20_000
	wide := min(max(4, s.rules.Effort/perState), widest)
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

func (st *state) marks() []mark {
	var marks []mark
	for t := st.trail; t != nil; t = t.before {
		marks = append(marks, t.mark)
	}
	slices.Reverse(marks)
	return marks
}

// search keeps the width most promising states of each day. It returns the best
// state of the last day, better than rival unless rival is nil, or nil; and whether
// nothing was dropped that could have been better.
func (s *season) search(width int, rival *state) (best *state, complete bool) {
	products := s.rules.Products
	words := len(s.groups) * products
	complete = true
	kept := []*state{s.opening()}
	for t := range s.allowed {
		slab := make([]uint64, 0, len(kept)*(products+1)*words)
		var next []*state
		for _, from := range kept {
			for p := -1; p < products; p++ {
				if p >= 0 && !s.allowed[t] {
					continue
				}
				slab = slab[:len(slab)+words]
				st, useful := s.step(from, t, p, slab[len(slab)-words:])
				if !useful || hopeless(st, rival) {
					slab = slab[:len(slab)-words]
					continue
				}
				next = append(next, st)
			}
		}
		kept = undominated(next)
		if len(kept) > width {
			kept = kept[:width]
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

// opening is the state of the evening before the first day.
func (s *season) opening() *state {
	st := &state{words: make([]uint64, len(s.groups)*s.rules.Products)}
	for i, g := range s.groups {
		if g.lastFed >= 0 {
			continue // enters when its feed is reached
		}
		word := uint64(0)
		switch age := -1 - g.lastFed; {
		case g.start < 0:
			word = overdue
		case age <= g.longest:
			word = 1 << age
		case len(g.days) > 0 && g.days[0]&running != 0 && g.resume[0] < 0:
			word = waiting
		default:
			word = 1 << g.longest
		}
		for p := range s.rules.Products {
			if g.lastProduct == AnyProduct || g.lastProduct == p {
				st.words[i*s.rules.Products+p] = word
			}
		}
	}
	return st
}

// step moves a state to day t with product p in the can, or no round for p < 0.
// words takes the new state's. A round that gives nobody a new choice is not useful.
func (s *season) step(from *state, t, p int, words []uint64) (st *state, useful bool) {
	st = &state{words: words, late: from.late, rounds: from.rounds, off: from.off, trail: from.trail, hash: fnvOffset}
	useful = p < 0
	for i, g := range s.groups {
		row := words[i*s.rules.Products : (i+1)*s.rules.Products]
		if g.age(row, from.words[i*s.rules.Products:], t) {
			st.late += len(g.pots)
		}
		if p >= 0 && g.days[t]&feedable != 0 && g.give(row, p, s.eligible[i]) {
			useful = true
		}
		if t == g.lastFed {
			g.enter(row)
		}
		s.reckon(st, i, row, t)
	}
	if p >= 0 {
		st.rounds++
		if !s.preferred[t] {
			st.off++
		}
		st.trail = &trail{mark{t, p}, from.trail}
	}
	return st, useful
}

// age fills row with what is known of the group a day after before, and reports
// whether it is overdue.
func (g *group) age(row, before []uint64, t int) (late bool) {
	kind := g.days[t]
	if kind&ended != 0 {
		clear(row)
		return false
	}
	over, known := uint64(1)<<(g.longest+1), uint64(0)
	for p := range row {
		w := before[p]
		marks := w &^ aged
		w = (w & aged) << 1
		past := w&over != 0
		w &^= over
		switch {
		case kind&running == 0: // at rest, age stands still at the longest interval
			if past || marks != 0 {
				w |= over >> 1
			}
			marks = 0
		case kind&graced != 0:
			if past {
				marks |= waiting
			}
		default:
			marks &^= waiting
		}
		row[p] = w | marks
		known |= row[p]
	}
	if known == 0 && kind&running != 0 {
		for p := range row {
			if before[p] != 0 {
				row[p] = overdue
				known = overdue
			}
		}
	}
	return known == overdue
}

// give feeds the group product p where that can be its turn, and reports whether it can.
func (g *group) give(row []uint64, p int, eligible uint64) bool {
	before := (p + len(row) - 1) % len(row)
	if row[before]&(eligible|waiting|overdue) == 0 {
		return false
	}
	for q := range row {
		row[q] &^= overdue
	}
	row[p] |= 1
	return true
}

// enter brings in a feed that was already given on a day of the plan.
func (g *group) enter(row []uint64) {
	for p := range row {
		row[p] = 0
		if g.lastProduct == AnyProduct || g.lastProduct == p {
			row[p] = 1
		}
	}
}

// FNV-1a, 64 bits (RFC 9923, section 5).
const (
	fnvOffset = 14695981039346656037
	fnvPrime  = 1099511628211
)

// reckon adds group i to the sums of a state on day t.
func (s *season) reckon(st *state, i int, row []uint64, t int) {
	g := s.groups[i]
	known := uint64(0)
	for _, w := range row {
		known |= w
		st.hash = (st.hash ^ w) * fnvPrime
		st.hash ^= st.hash >> 29
		st.choices += bits.OnesCount64(w)
	}
	need := 0
	switch {
	case known&aged != 0:
		youngest := bits.TrailingZeros64(known)
		need = int(s.needAfter[i][t-youngest+LongestInterval])
	case known&waiting != 0:
		need = int(g.needs(g.resume[t] + s.rules.Grace))
	case known&overdue != 0:
		need = int(g.needs(t))
	case g.lastFed > t:
		need = int(g.needs(g.start))
	}
	st.need = max(st.need, need)
	st.needSum += need * len(g.pots)
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

// undominated sorts states by promise and leaves out those that are like another,
// or clearly worse than one of the most promising.
func undominated(states []*state) []*state {
	slices.SortFunc(states, func(a, b *state) int {
		return cmp.Or(
			cmp.Compare(a.late, b.late), cmp.Compare(a.rounds+a.need, b.rounds+b.need), cmp.Compare(a.off, b.off),
			cmp.Compare(a.needSum, b.needSum), cmp.Compare(b.choices, a.choices), cmp.Compare(a.hash, b.hash),
			slices.Compare(a.words, b.words),
		)
	})
	const compared = 24 // of the most promising, each state is held against so many
	seen := make(map[uint64]bool, len(states))
	kept := states[:0]
	for _, st := range states {
		// Two states of one hash in 2^64 are taken for one; the plan stays right,
		// only its proof of fewness rests on their not meeting.
		if seen[st.hash] && dominatedByAny(st, kept, len(kept)) {
			continue
		}
		seen[st.hash] = true
		if dominatedByAny(st, kept, compared) {
			continue
		}
		kept = append(kept, st)
	}
	return kept
}

func dominatedByAny(st *state, kept []*state, most int) bool {
	for _, k := range kept[:min(most, len(kept))] {
		if k.late <= st.late && k.rounds <= st.rounds && k.off <= st.off && covers(k.words, st.words) {
			return true
		}
	}
	return false
}

// covers reports whether every choice of b is open in a. An overdue mark is no
// choice to be compared: it must be the same.
func covers(a, b []uint64) bool {
	for i := range a {
		if b[i]&^a[i] != 0 || (a[i]^b[i])&overdue != 0 {
			return false
		}
	}
	return true
}
