package rotation

import (
	"fmt"
	"slices"

	"fourturn/planner/civil"
)

// Actual is one thing that really happened to a pot. Exactly one of the kinds is
// set: Planted, Emptied, Condition or Disease.
type Actual struct {
	Day    civil.Date
	Member int // of the request's pots; -1 is all of them

	Planted     *Planting // went out on the day
	MixReplaced bool      // with Planted: all the mix was replaced
	Emptied     bool      // the pot was cleared
	// Condition is how well what stands looked, 0 to 1: 0 when frost took it, near
	// 1 when it was still lovely.
	Condition *float64
	Disease   string // a disease group that was seen
}

// WithActuals returns the request as it stands on a later day after what really
// happened, so that planning it works out the rest of the year again. The actual
// entries may come in any order; those after today are an error. What stood before
// a planting is remembered as a host in the mix, unless the mix was replaced.
//
// A condition counts until the next planting, from the day it was seen: later
// entries take the place of earlier ones, and one that is not of today stays as it
// was, which is a limit where long ago.
func (r Request) WithActuals(today civil.Date, actuals []Actual) (Request, error) {
	if r.YearFrom.IsZero() {
		r.YearFrom = r.Today
	}
	before := r.YearFrom
	for r.YearFrom.AddYears(1) <= today {
		r.YearFrom = r.YearFrom.AddYears(1)
	}
	if r.YearFrom != before {
		r.Done = 0
	}
	r.Members = slices.Clone(r.Members)
	r.History = slices.Clone(r.History)
	if len(r.Weights.Days) > 0 {
		r.Weights.Days = r.Weights.Days[min(max(int(today-r.Today), 0), len(r.Weights.Days)):]
	}
	r.Today = today
	actuals = slices.Clone(actuals)
	slices.SortStableFunc(actuals, func(a, b Actual) int { return int(a.Day - b.Day) })
	for _, a := range actuals {
		if a.Day > today {
			return Request{}, fmt.Errorf("what is said to have happened on %v lies after today, %v", a.Day, today)
		}
		if a.Member < -1 || a.Member >= len(r.Members) {
			return Request{}, fmt.Errorf("no pot %d", a.Member+1)
		}
		r.happened(a)
	}
	return r, nil
}

func (r *Request) happened(a Actual) {
	counted := false
	for i := range r.Members {
		if a.Member >= 0 && a.Member != i {
			continue
		}
		s := &r.Members[i].Standing
		switch {
		case a.Planted != nil:
			r.leave(s, a.Day)
			if a.MixReplaced {
				r.History = nil
			}
			*s = Standing{Planting: a.Planted, Since: a.Day}
			// Pots that match are changed in one go, which counts once.
			if a.Day >= r.YearFrom && !counted {
				r.Done++
				counted = true
			}
		case a.Emptied:
			r.leave(s, a.Day)
			*s = Standing{}
		case a.Condition != nil:
			s.Condition = a.Condition
		case a.Disease != "":
			r.History = append(r.History, Host{Group: a.Disease, Last: a.Day, Diseased: true})
		}
	}
}

// leave records the plants that are taken out as hosts in the mix.
func (r *Request) leave(s *Standing, day civil.Date) {
	if s.Planting == nil {
		return
	}
	ill := func(group string) bool {
		return slices.ContainsFunc(r.History, func(h Host) bool { return h.Group == group && h.Diseased && h.Last >= s.Since })
	}
	for _, part := range s.Planting.Parts {
		if part.Plant.Cut {
			continue
		}
		r.History = append(r.History, Host{Plant: part.Plant.ID, Last: day})
		if _, ok := r.Lingers.Families[part.Plant.Family]; ok {
			r.History = append(r.History, Host{Family: part.Plant.Family, Last: day})
		}
		for _, group := range part.Plant.Groups {
			r.History = append(r.History, Host{Group: group, Last: day, Diseased: ill(group)})
		}
	}
}
