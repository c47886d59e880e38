package rotation

import (
	"fourturn/planner/civil"
	"fourturn/planner/finding"
)

// Not candidates but states of the pot, where a candidate's number would stand.
const (
	Bare  = bareOption     // an empty pot
	Stood = standingOption // what stood in the pot on the day of planning
)

// Result is the best year of a pot, with what it was worked out from.
type Result struct {
	Best     Sequence
	Findings []finding.Finding

	req     *Request
	problem *problem
	scorer  *scorer
	pins    []Pin // those that hold
	cache   *rowCache
	path    []segment
	score   float64
}

// Sequence is what stands in a pot over the horizon.
type Sequence struct {
	Stays      []Stay
	ChangeOuts []ChangeOut
	Value      Decomposition
}

// Stay is the time from one change-out to the next.
type Stay struct {
	Candidate   int        // in the request's list, or [Bare] or [Stood]
	From, Until civil.Date // within the horizon; Until is the day of the next change-out
	MixReplaced bool       // all the mix was replaced before it
	Kept        *Kept      // what stayed on from an earlier planting, or nil
	Value       Decomposition
}

// Kept is the part of an earlier planting that stays on.
type Kept struct {
	Candidate int // whose part it is, or [Stood]
	Since     civil.Date
	Share     float64 // of the pot
}

// Decomposition is what the total of a stay or of a sequence is made of. All but
// Money are in display days; Total = Display − Tired − Bare − Plants − ChangeOuts − Mix.
type Decomposition struct {
	Days       int     // in the horizon
	Display    float64 // expected display, weighted by day and taste
	Tired      float64 // lost to tired days
	Bare       float64 // lost to empty pots
	Plants     float64 // cost of plants
	ChangeOuts float64 // cost of labour and refreshed mix
	Mix        float64 // cost of replacing all the mix
	Total      float64
	Money      float64 // what was charged for plants, labour and mix
}

// Plan works out the best sequence of plantings and change-out days. An error
// names the first fault in the data; wishes that cannot hold are findings.
func Plan(req Request) (*Result, error) { return plan(req, nil) }

// plan is Plan with rows that may be shared.
func plan(req Request, cache *rowCache) (*Result, error) {
	if err := req.check(); err != nil {
		return nil, err
	}
	r := &Result{req: &req, scorer: newScorer(&req), cache: cache}
	switch turns := len(req.Turns) > 0; {
	case turns && !req.free():
		if !r.tryPins(nil) {
			return nil, ErrNoDays
		}
	case turns && !r.feasible(nil, 0):
		return nil, ErrNoDays
	default:
		r.solve()
	}
	// Results live long; the rows that they shared do not.
	r.cache = nil
	r.problem.row = r.scorer.rowsOf(req.Candidates, false)
	r.Best = r.sequence(r.path)
	return r, nil
}

// sequence tells a path of the solver in the request's terms.
func (r *Result) sequence(path []segment) Sequence {
	seq := r.briefly(path)
	seq.ChangeOuts = r.changeOuts(path)
	return seq
}

func (r *Result) stay(seg segment) Stay {
	return Stay{
		Candidate:   seg.option,
		From:        r.req.Today.AddDays(seg.start),
		Until:       r.req.Today.AddDays(seg.end),
		MixReplaced: seg.replaced,
		Kept:        r.kept(seg.carry),
		Value:       r.decompose(seg),
	}
}

func (r *Result) kept(c carry) *Kept {
	if !c.kept {
		return nil
	}
	since := r.req.Today.AddDays(c.start)
	if c.option == standingOption {
		since = r.req.Members[0].Standing.Since
	}
	return &Kept{Candidate: c.option, Since: since, Share: r.problem.carryShare(c)}
}

func (d *Decomposition) add(e Decomposition) {
	d.Days += e.Days
	d.Display += e.Display
	d.Tired += e.Tired
	d.Bare += e.Bare
	d.Plants += e.Plants
	d.ChangeOuts += e.ChangeOuts
	d.Mix += e.Mix
	d.Total += e.Total
	d.Money += e.Money
}

// decompose works out what the score of a segment is made of: the total is the
// solver's own, the display that without the penalty for tired days.
func (r *Result) decompose(seg segment) Decomposition {
	p := r.problem
	d := Decomposition{Days: seg.end - seg.start, Total: p.segmentScore(seg)}
	if counted(seg.option) {
		charge := p.charge(seg.start, seg.end)
		d.Plants = charge * (1 - p.carryShare(seg.carry)) * p.options[seg.option].cost
		d.ChangeOuts = charge * p.fixed
		if seg.replaced {
			d.Mix = charge * p.replace
		}
	}
	costs := d.Plants + d.ChangeOuts + d.Mix
	d.Money = costs * r.req.Weights.DayWorth
	d.Bare = r.bareLoss(seg)
	d.Display = r.display(seg)
	d.Tired = d.Display - d.Bare - costs - d.Total
	if d.Tired < rounding*float64(d.Days) {
		d.Tired = 0 // what the order of sums leaves
	}
	return d
}

// bareLoss is what a segment loses to empty pots: all of them, or those of a match
// that are empty today.
func (r *Result) bareLoss(seg segment) float64 {
	loss := float64(seg.end-seg.start) * r.req.Weights.Bare * (1 - r.problem.carryShare(seg.carry))
	switch seg.option {
	case bareOption:
		return loss * float64(len(r.req.Members))
	case standingOption:
		empty := 0
		for _, m := range r.req.Members {
			if m.Standing.Planting == nil {
				empty++
			}
		}
		return loss * float64(empty)
	}
	return 0
}

// display is the expected display of a segment, weighted by day and taste.
func (r *Result) display(seg segment) float64 {
	plain := r.scorer.plain()
	running := func(o, start int, onlyStaying bool) []float64 {
		switch o {
		case bareOption:
			return make([]float64, r.problem.days+1)
		case standingOption:
			return plain.standing(onlyStaying)
		}
		row := make([]float64, seg.end-start+1)
		plain.row(&r.req.Candidates[o], start, onlyStaying, row)
		return row
	}
	// A state of the pot has its row from the first day, a planting from its own.
	over := func(o, start int, onlyStaying bool) float64 {
		row := running(o, start, onlyStaying)
		if o < 0 {
			return row[seg.end] - row[seg.start]
		}
		return row[seg.end-start] - row[seg.start-start]
	}
	display := (1 - r.problem.carryShare(seg.carry)) * over(seg.option, seg.start, false)
	if seg.carry.kept {
		display += over(seg.carry.option, seg.carry.start, true)
	}
	return display
}
