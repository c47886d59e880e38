package rotation

import (
	"errors"
	"fmt"
	"math"
	"slices"

	"fourturn/planner/civil"
)

// Turn is one change-out of a year whose plantings are given, so that only its days
// are looked for. Turns come in their order, each once.
type Turn struct {
	Candidate int // in the request's list
	// Others may go out in the place of Candidate: the best of them is looked for.
	Others []int
	// By is the last day on which it may go out: on it, the planting stands. The days
	// of the turns rise, and a turn goes out after that of the one before.
	By civil.Date
	// On is the day on which it goes out whatever the season, the risk and the weekday;
	// zero leaves the day open.
	On civil.Date
	// AnyDay lets it go out on days on which it is not sold, or is at risk.
	AnyDay bool
	// Optional says that it may be left out.
	Optional bool
}

// ErrNoDays is the error of turns that have no days: those that work may be done on,
// that are within the risk and far enough apart.
var ErrNoDays = errors.New("rotation: the turns have no days")

// checkTurns names the first fault of the turns.
func (r *Request) checkTurns() error {
	before := r.Today.AddDays(-1)
	for i, turn := range r.Turns {
		switch {
		case !turn.within(len(r.Candidates)):
			return fmt.Errorf("turn %d is of no candidate", i+1)
		case turn.By <= before:
			return fmt.Errorf("turn %d is to go out by %v, the one before by %v", i+1, turn.By, before)
		case !turn.On.IsZero() && (turn.On <= before || turn.On > turn.By):
			return fmt.Errorf("turn %d goes out on %v, not from %v to %v", i+1, turn.On, before.AddDays(1), turn.By)
		}
		before = turn.By
	}
	return nil
}

// within reports whether all plantings of the turn are among so many candidates.
func (t *Turn) within(candidates int) bool {
	for _, c := range append([]int{t.Candidate}, t.Others...) {
		if c < 0 || c >= candidates {
			return false
		}
	}
	return true
}

// may reports whether an option may go out in the turn.
func (t *Turn) may(o int) bool { return o == t.Candidate || slices.Contains(t.Others, o) }

// free reports whether more is looked for than days.
func (r *Request) free() bool {
	return len(r.Pins) > 0 || len(r.Bans) > 0 || slices.ContainsFunc(r.Turns, func(t Turn) bool { return len(t.Others) > 0 })
}

// takeTurns makes a problem one of days alone. Each turn is a planning year of its own,
// with one change-out: what keeps change-outs a year keeps the order as well.
func (r *Request) takeTurns(p *problem) {
	window := make([]int, p.days) // by day: the turn that goes out, len(Turns) after the last
	from := 0
	p.most, p.least = nil, nil
	for k, turn := range r.Turns {
		to := min(int(turn.By-r.Today), p.days-1)
		for day := from; day <= to; day++ {
			window[day] = k
		}
		p.most, p.least = append(p.most, 1), append(p.least, 0)
		if within := turn.By < r.Until; within && !turn.Optional {
			p.least[k] = 1
			p.pins = append(p.pins, standing(&r.Turns[k], from, to))
		}
		from = to + 1
	}
	for day := from; day < p.days; day++ {
		window[day] = len(r.Turns)
	}
	p.most, p.least = append(p.most, 0), append(p.least, 0)
	p.block, p.done = window, 0
	r.allowTurns(p, window)
}

// standing is the checkpoint of a turn: on its last day a planting stands that went out
// within the turn.
func standing(turn *Turn, from, to int) checkpoint {
	return checkpoint{from: to, to: to, holds: func(o, start int) bool { return turn.may(o) && start >= from && start <= to }}
}

// allowTurns leaves each planting the days of its own turns.
func (r *Request) allowTurns(p *problem, window []int) {
	for o := range p.options {
		own, may := newDayset(p.days), slices.Clone(p.options[o].allowed)
		for day, k := range window {
			if k == len(r.Turns) || !r.Turns[k].may(o) {
				continue
			}
			turn := &r.Turns[k]
			switch {
			case !turn.On.IsZero():
				if r.Today.AddDays(day) == turn.On {
					own.set(day)
					p.open[day] = true
				}
			case turn.AnyDay || p.options[o].allowed.has(day):
				own.set(day)
				may.set(day)
			}
		}
		p.options[o].may, p.options[o].allowed = may, own
	}
}

// WithoutDays returns the turns for which there is no day on which work may be done and
// the planting may go out at the risk. The request must be sound.
func (r *Request) WithoutDays() []int {
	limit := -math.Log1p(-r.Risk)
	var none []int
	from := r.Today
	for k, turn := range r.Turns {
		found := !turn.On.IsZero() || turn.Optional || turn.By >= r.Until
		for day := from; day <= turn.By && !found; day++ {
			open := r.Days.Allows(day)
			for _, c := range append([]int{turn.Candidate}, turn.Others...) {
				found = found || open && (turn.AnyDay || mayStart(r, &r.Candidates[c], int(day-r.Today), limit))
			}
		}
		if !found {
			none = append(none, k)
		}
		from = turn.By.AddDays(1)
	}
	return none
}

func (t Turn) same(other Turn) bool {
	return t.Candidate == other.Candidate && t.By == other.By && t.On == other.On && t.AnyDay == other.AnyDay &&
		t.Optional == other.Optional && slices.Equal(t.Others, other.Others)
}
