package nutrition

import (
	"math/bits"
	"slices"
)

// What is known of a group on a day is one word for each product: bit k says that
// its last feed could have been that product, k days ago.
const (
	waiting = uint64(1) << 62 // it rested; its first feed may be any day of the grace
	overdue = uint64(1) << 63 // no way was found to feed it in time
	aged    = waiting - 1     // the bits that are days
)

// state is everything that could be true of all leading groups on a day after some
// rounds.
type state struct {
	words             []uint64 // of each leading group, one for each product
	late, rounds, off int      // pot-days late; rounds so far; those on days not preferred
	need              int      // rounds still needed at least
	promise           int      // rounds expected in all
	hunger            int      // of all groups: how far their next deadlines are past, in per mille of their interval
	choices           int      // ways open
	hash              uint64
	trail             *trail
}

// trail is the rounds so far, newest first.
type trail struct {
	mark
	before *trail
}

func (st *state) marks() []mark {
	var marks []mark
	for t := st.trail; t != nil; t = t.before {
		marks = append(marks, t.mark)
	}
	slices.Reverse(marks)
	return marks
}

// opening is the state of the evening before the first day.
func (s *season) opening() *state {
	st := &state{words: make([]uint64, len(s.leading)*s.rules.Products)}
	for i, g := range s.leading {
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
	for i, g := range s.leading {
		row := words[i*s.rules.Products : (i+1)*s.rules.Products]
		if g.age(row, from.words[i*s.rules.Products:], t) {
			st.late += len(g.pots)
		}
		if p >= 0 && g.days[t]&feedable != 0 && g.give(row, p) {
			useful = true
		}
		if t == g.lastFed {
			g.enter(row)
		}
		st.reckon(g, row, t, s.rules.Grace)
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
			if past && t-g.longest-1 < g.resume[t] { // the feed was before the rest
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
func (g *group) give(row []uint64, p int) bool {
	before := (p + len(row) - 1) % len(row)
	if row[before]&(g.eligible|waiting|overdue) == 0 {
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

// FNV-1a, 64 bits (RFC 9923, section 5), with a shift that mixes whole words.
const (
	fnvOffset = 14695981039346656037
	fnvPrime  = 1099511628211
)

// reckon adds a group to the sums of a state on day t.
func (st *state) reckon(g *group, row []uint64, t, grace int) {
	known := uint64(0)
	for _, w := range row {
		known |= w
		st.hash = (st.hash ^ w) * fnvPrime
		st.hash ^= st.hash >> 29
		st.choices += bits.OnesCount64(w)
	}
	due := never
	switch {
	case known&aged != 0:
		due = g.dueAfter(t - bits.TrailingZeros64(known))
	case known&waiting != 0:
		due = g.graceDue(t, grace)
	case known&overdue != 0:
		due = t
	case g.lastFed > t:
		due = g.start
	}
	st.need = max(st.need, int(g.needs(due)))
	st.hunger += 1000 - 1000*min(due-t, 2*g.longest)/g.longest
}
