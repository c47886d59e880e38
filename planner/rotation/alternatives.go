package rotation

import (
	"cmp"
	"context"
	"math"
	"slices"

	"fourturn/planner/civil"
)

// Alternative is another good sequence for the pot, and how it differs from the
// best one.
type Alternative struct {
	Sequence Sequence
	Loss     float64 // display days by which its total falls short of the best
	Without  int     // the candidate of the best sequence that it does without
	Days     int     // of the horizon on which it has something else in the pot
	Gains    []Trade // what it does better
	Losses   []Trade // what it does worse
	Swaps    []Swap
}

// Trade is one kind of gain or loss: a key of [Decomposition] and its amount,
// positive, in display days.
type Trade struct {
	Name   string
	Amount float64
}

// Swap is a stretch of days with another planting in the pot.
type Swap struct {
	From, Until   civil.Date
	Best, Instead int // candidates, or [Bare] or [Stood]
}

const (
	// Two sequences count as different when they have different plantings on four
	// weeks and on a tenth of the horizon: judgements.
	leastDifferent      = 28
	leastDifferentShare = 0.1
	// At least four are sought, whatever they cost; up to eight, while they cost no
	// more than a quarter of the best.
	leastAlternatives = 4
	mostAlternatives  = 8
	mostLoss          = 0.25
	// mostRefused is how many plantings of a sequence an alternative does without.
	mostRefused = 2
)

// Alternatives returns sequences that really differ from the best one and from each
// other, the best first. Each is the best of all that do without one or two plantings
// in the seasons in which they stood. There are fewer than four only where the
// candidates allow no more. They are worked out on demand.
func (r *Result) Alternatives() []Alternative {
	found, _ := r.AlternativesContext(context.Background())
	return found
}

// AlternativesContext is [Result.Alternatives] that gives up, with the context's error,
// between one sequence and the next.
func (r *Result) AlternativesContext(ctx context.Context) ([]Alternative, error) {
	s := newSolver(r.problem, mostRefused)
	var queue []idea
	push := func(path []segment, refused []refusal) {
		for _, seg := range path {
			if counted(seg.option) && len(refused) < mostRefused {
				more := append(slices.Clone(refused), refusal{seg.option, seg.start, seg.end})
				bounds := s.bounds.under(refuse(more))
				queue = append(queue, idea{more, bounds, bounds.best()})
			}
		}
	}
	push(r.path, nil)
	taken := [][]segment{r.path}
	var found []Alternative
	for len(queue) > 0 && len(found) < mostAlternatives {
		next := bestIdea(queue)
		loss := r.score - queue[next].bound
		if len(found) >= leastAlternatives && loss > mostLoss*math.Abs(r.score) {
			break
		}
		if err := ctx.Err(); err != nil {
			return nil, err
		}
		path, score, ok := s.solveUnder(queue[next].bounds)
		refused := queue[next].refused
		queue = slices.Delete(queue, next, next+1)
		if !ok {
			continue
		}
		path = r.tidied(path)
		if r.differs(path, taken) {
			taken = append(taken, path)
			found = append(found, r.alternative(path, score, refused[0].option))
		}
		push(path, refused)
	}
	slices.SortStableFunc(found, func(a, b Alternative) int { return cmp.Compare(a.Loss, b.Loss) })
	return found, nil
}

// idea is a set of refusals to be tried, with the most that it can be worth.
type idea struct {
	refused []refusal
	bounds  *bounds
	bound   float64
}

func bestIdea(queue []idea) int {
	best := 0
	for i := range queue {
		if queue[i].bound > queue[best].bound {
			best = i
		}
	}
	return best
}

// refusal keeps an option from standing on any of some days.
type refusal struct{ option, start, end int }

func refuse(list []refusal) restriction {
	return func(o, start, end int) bool {
		for _, r := range list {
			if o == r.option && start < r.end && end > r.start {
				return false
			}
		}
		return true
	}
}

// differs reports whether a path has other plantings than each of a list on enough
// days.
func (r *Result) differs(path []segment, from [][]segment) bool {
	for _, other := range from {
		if apart := daysApart(path, other); apart < leastDifferent || float64(apart) < leastDifferentShare*float64(r.problem.days) {
			return false
		}
	}
	return true
}

func daysApart(a, b []segment) int {
	apart := 0
	walkBoth(a, b, func(from, to, x, y int) {
		if x != y {
			apart += to - from
		}
	})
	return apart
}

// walkBoth visits the stretches of days on which two paths have one option each.
func walkBoth(a, b []segment, visit func(from, to, x, y int)) {
	day := 0
	for i, j := 0, 0; i < len(a) && j < len(b); {
		to := min(a[i].end, b[j].end)
		if to > day {
			visit(day, to, a[i].option, b[j].option)
			day = to
		}
		if a[i].end == to {
			i++
		}
		if b[j].end == to {
			j++
		}
	}
}

func (r *Result) alternative(path []segment, score float64, without int) Alternative {
	alt := Alternative{
		Sequence: r.sequence(path),
		Loss:     r.score - score,
		Without:  without,
		Days:     daysApart(r.path, path),
	}
	alt.Gains, alt.Losses = trades(r.Best.Value, alt.Sequence.Value)
	walkBoth(r.path, path, func(from, to, x, y int) {
		if x == y {
			return
		}
		if n := len(alt.Swaps); n > 0 && alt.Swaps[n-1].Best == x && alt.Swaps[n-1].Instead == y && alt.Swaps[n-1].Until == r.req.Today.AddDays(from) {
			alt.Swaps[n-1].Until = r.req.Today.AddDays(to)
			return
		}
		alt.Swaps = append(alt.Swaps, Swap{r.req.Today.AddDays(from), r.req.Today.AddDays(to), x, y})
	})
	return alt
}

// trades sets two totals against each other, term by term.
func trades(best, other Decomposition) (gains, losses []Trade) {
	for _, term := range []struct {
		name string
		gain float64
	}{
		{"rotation.display", other.Display - best.Display},
		{"rotation.tired", best.Tired - other.Tired},
		{"rotation.bare", best.Bare - other.Bare},
		{"rotation.plants", best.Plants - other.Plants},
		{"rotation.labour", best.ChangeOuts - other.ChangeOuts},
		{"rotation.mix", best.Mix - other.Mix},
	} {
		const noticed = 0.05 // display days: below it nobody sees a difference
		switch {
		case term.gain > noticed:
			gains = append(gains, Trade{term.name, term.gain})
		case term.gain < -noticed:
			losses = append(losses, Trade{term.name, -term.gain})
		}
	}
	return gains, losses
}
