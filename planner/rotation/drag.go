package rotation

import (
	"math"

	"fourturn/planner/civil"
)

// Drag moves one change-out of a best sequence and lets all others give way to it.
// What does not change from one day to the next is worked out once, at the start,
// so that a handle can be dragged. A Drag is for one goroutine.
type Drag struct {
	r      *Result
	i      int // in the path, of the stay that begins on the moved morning
	bounds *bounds
	before [][]float64 // by day of planting: running own score of the one that stands
}

// Moved is a plan with one change-out on another day.
type Moved struct {
	Cost float64 // display days lost against the best sequence
	Best Sequence
	// Settled says that the other change-outs are the best for the moved one. It is
	// false where the best would break the rotation of the mix; then they stay.
	Settled bool
}

// StartDrag prepares to move a change-out of the best sequence.
func (r *Result) StartDrag(changeOut int) *Drag {
	d := &Drag{r: r, i: r.boundary(changeOut), bounds: newBounds(r.problem, 1)}
	p := r.problem
	if before := r.path[d.i-1].option; counted(before) {
		d.before = make([][]float64, p.days)
		for start := range p.days {
			if limit := p.mayStand(before, start); p.open[start] && limit > start {
				d.before[start] = p.row(before, start, make([]float64, limit-start+1))
			}
		}
	}
	return d
}

// To returns the plan with the change-out on a day: the same two plantings meet on
// it, and all else is the best for that. It is false where the day is closed, the
// coming planting may not go out on it, or nothing can be made to fit.
func (d *Drag) To(day civil.Date) (Moved, bool) {
	r, p := d.r, d.r.problem
	to := int(day - r.req.Today)
	if to < 0 || to >= p.days || !p.open[to] || !r.allowed(r.path[d.i].option, to) {
		return Moved{}, false
	}
	if path, score, ok := d.settle(to); ok {
		return Moved{Cost: r.score - score, Best: r.briefly(r.tidied(path)), Settled: true}, true
	}
	m := r.newMover(r.path, d.i)
	if !m.within(to) {
		return Moved{}, false
	}
	cost, ok := m.cost(to)
	if !ok {
		return Moved{}, false
	}
	return Moved{Cost: cost, Best: r.briefly(m.scratch)}, true
}

// settle returns the best path on which the two plantings meet on a day; false where
// there is none, or where it would break the rotation of the mix.
func (d *Drag) settle(day int) ([]segment, float64, bool) {
	p := d.r.problem
	b := *d.bounds
	b.joint, b.upTo, b.after = d.joint(day), nil, nil
	b.lookBack()
	best := b.best()
	if math.IsInf(best, -1) {
		return nil, 0, false
	}
	path := b.path()
	score := p.scoreOf(path)
	if len(p.violated(path)) > 0 || score < best-rounding*math.Max(1, math.Abs(best)) {
		return nil, 0, false
	}
	return path, score, true
}

// standing returns the solver's option for one of a tidied path: a pot that stands
// empty today begins with what stands.
func (d *Drag) standing(o int) int {
	if o == bareOption && d.i == 1 {
		return standingOption
	}
	return o
}

func (d *Drag) joint(day int) *joint {
	p := d.r.problem
	j := &joint{day: day, before: d.standing(d.r.path[d.i-1].option), after: d.r.path[d.i].option, scores: make([]float64, p.days)}
	for start := range j.scores {
		j.scores[start] = math.Inf(-1)
		if d.before != nil && start <= day && len(d.before[start]) > day-start {
			j.scores[start] = d.before[start][day-start] - p.options[j.before].cost
		}
	}
	if counted(j.after) {
		j.row = p.row(j.after, day, make([]float64, p.days-day+1))
	}
	return j
}

// briefly tells a path without the spread of its change-outs.
func (r *Result) briefly(path []segment) Sequence {
	var seq Sequence
	for i, seg := range path {
		if i > 0 {
			seq.ChangeOuts = append(seq.ChangeOuts, ChangeOut{
				Day: r.req.Today.AddDays(seg.start), From: path[i-1].option, To: seg.option, MixReplaced: seg.replaced,
			})
		}
		if seg.end > seg.start {
			seq.Stays = append(seq.Stays, r.stay(seg))
		}
	}
	for _, stay := range seq.Stays {
		seq.Value.add(stay.Value)
	}
	return seq
}
