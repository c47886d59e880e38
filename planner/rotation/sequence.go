package rotation

import (
	"math"
	"slices"
)

// solver finds best sequences of a problem, and of the same problem with more
// rules, and keeps what they share.
type solver struct {
	p      *problem
	bounds *bounds
	pool   *pool   // nil until needed
	gap    float64 // below the bound that is searched first
}

// newSolver prepares a problem for restrictions that refuse so many of its options.
func newSolver(p *problem, refused int) *solver {
	return &solver{p: p, bounds: newBounds(p, refused+1), gap: firstGap}
}

// restriction is a rule on top of the problem's own: whether an option may be put
// out on a day and stand up to another. Nil allows all.
type restriction func(o, start, end int) bool

// solve returns the sequence of greatest score, or false where the checkpoints
// leave none. It begins with the stay of what stands today, of no days where that
// goes at once.
//
// The bounds leave the rotation of the mix out; a sequence that reaches them and
// breaks no rule is the best. Else labels of the state of the pot are extended by
// every stay of the pool: day, change-outs made in the year, when each disease group
// is gone, what stays on. A label is dropped where another is no worse in every
// respect, or where its value and the bound on what may follow stay below a target.
// A best sequence worth at least the target is the best of all; else the target is
// lowered.
//
// Disease groups are tracked only once a sequence breaks their rule: a relaxation
// whose best sequence keeps all rules is the best of all (decremental state space
// relaxation: Righini and Salani 2008, Networks 51:155-170, from memory).
func (s *solver) solve() ([]segment, float64, bool) { return s.solveUnder(s.bounds) }

// restricted is solve under a further rule.
func (s *solver) restricted(may restriction) ([]segment, float64, bool) {
	return s.solveUnder(s.bounds.under(may))
}

func (s *solver) solveUnder(bounds *bounds) ([]segment, float64, bool) {
	best := bounds.best()
	if math.IsInf(best, -1) {
		return nil, 0, false
	}
	path := bounds.path()
	score := s.p.scoreOf(path)
	if len(s.p.violated(path)) == 0 && score >= best-rounding*math.Max(1, math.Abs(best)) {
		return path, score, true
	}
	return s.search(bounds, best)
}

// search finds the best sequence that keeps all rules, by labels.
func (s *solver) search(bounds *bounds, best float64) ([]segment, float64, bool) {
	var tracked []int
	// The first target is a guess at what the rules cost; only speed depends on it.
	for gap := s.gap; ; {
		target := best - gap
		if gap > lastGap {
			target = math.Inf(-1)
		}
		if s.pool == nil || s.pool.target > target {
			s.pool = s.bounds.poolAbove(target)
		}
		search := newSearch(bounds, s.pool, tracked, target)
		path, score, ok := search.run()
		switch {
		case ok && score >= target:
			broken := s.p.violated(path)
			if len(broken) == 0 {
				return path, score, true
			}
			tracked = append(tracked, s.newlyBroken(tracked, broken)...)
		case math.IsInf(target, -1):
			return nil, 0, false
		default:
			gap = max(4*gap, smallestGap)
		}
	}
}

// Gaps below the bound that are searched, in display days: judgements.
const (
	smallestGap = 0.1
	firstGap    = 4.0
	lastGap     = 2000.0
)

func (s *solver) newlyBroken(tracked, broken []int) []int {
	for _, g := range broken {
		if slices.Contains(tracked, g) {
			panic("rotation: a tracked disease group broke its rule")
		}
	}
	return broken
}
