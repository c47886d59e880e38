package rotation

import (
	"maps"
	"runtime"
	"slices"
	"sync"
	"sync/atomic"
)

// PlanAll plans many pots at once, on as many goroutines as there are processors.
// Requests that ask the same are worked out once and share their result; those that
// share site, spot, horizon and weights share the value of each planting. Results and
// errors are in the order of the requests; each pot has one or the other.
func PlanAll(requests []Request) ([]*Result, []error) {
	results, errs := make([]*Result, len(requests)), make([]error, len(requests))
	first, distinct := sameRequests(requests)
	for _, group := range sharingRows(requests, distinct) {
		plan := func(i int) (*Result, error) { return Plan(requests[i]) }
		if group.shared {
			plan = sharedPlan(requests, group.members)
		}
		var next atomic.Int64
		var workers sync.WaitGroup
		for range min(runtime.GOMAXPROCS(0), len(group.members)) {
			workers.Go(func() {
				for k := next.Add(1) - 1; int(k) < len(group.members); k = next.Add(1) - 1 {
					i := group.members[k]
					results[i], errs[i] = plan(i)
				}
			})
		}
		workers.Wait()
	}
	for i, j := range first {
		results[i], errs[i] = results[j], errs[j]
	}
	return results, errs
}

// sharedPlan returns a planner of the requests of a group, which share their rows.
func sharedPlan(requests []Request, group []int) func(i int) (*Result, error) {
	var sound []*Request
	for _, i := range group {
		if requests[i].check() == nil {
			sound = append(sound, &requests[i])
		}
	}
	if len(sound) == 0 {
		return func(i int) (*Result, error) { return nil, requests[i].check() }
	}
	cache := newRowCache(sound, int(sound[0].Until-sound[0].Today))
	return func(i int) (*Result, error) { return plan(requests[i], cache) }
}

// rowGroup is a set of requests, by number, that share their rows or do not.
type rowGroup struct {
	members []int
	shared  bool
}

// sharingRows sorts requests into groups that share their rows; those that share
// with none make the last group.
func sharingRows(requests []Request, distinct []int) []rowGroup {
	var groups []rowGroup
next:
	for _, i := range distinct {
		for k := range groups {
			if requests[groups[k].members[0]].sharesRows(&requests[i]) {
				groups[k].members = append(groups[k].members, i)
				groups[k].shared = true
				continue next
			}
		}
		groups = append(groups, rowGroup{members: []int{i}})
	}
	var alone rowGroup
	groups = slices.DeleteFunc(groups, func(g rowGroup) bool {
		if !g.shared {
			alone.members = append(alone.members, g.members...)
		}
		return !g.shared
	})
	return append(groups, alone)
}

// sameRequests returns for each request the first one that asks the same, and the
// list of those that are the first.
func sameRequests(requests []Request) (first, distinct []int) {
	first = make([]int, len(requests))
	type outline struct {
		outlook                     *Outlook
		candidates, pins, standings int
		costs                       Costs
		plants                      float64
	}
	known := make(map[outline][]int)
	for i := range requests {
		r := &requests[i]
		o := outline{candidates: len(r.Candidates), pins: len(r.Pins), standings: len(r.Members)}
		if len(r.Members) > 0 {
			o.outlook, o.costs, o.plants = r.Members[0].Outlook, r.Members[0].Costs, r.Members[0].Plants
		}
		at := slices.IndexFunc(known[o], func(j int) bool { return r.same(&requests[j]) })
		if at >= 0 {
			first[i] = known[o][at]
			continue
		}
		first[i] = i
		known[o] = append(known[o], i)
		distinct = append(distinct, i)
	}
	return first, distinct
}

// same reports whether two requests ask the same. Plants and outlooks are the same
// only where they are the same in memory.
func (r *Request) same(other *Request) bool {
	return r.Today == other.Today && r.Until == other.Until &&
		r.PerYear == other.PerYear && r.AtLeast == other.AtLeast && r.YearFrom == other.YearFrom && r.Done == other.Done &&
		r.LeadDays == other.LeadDays && r.TellOnly == other.TellOnly && r.Risk == other.Risk && r.MinStand == other.MinStand &&
		slices.EqualFunc(r.Members, other.Members, Member.same) &&
		slices.EqualFunc(r.Candidates, other.Candidates, Planting.same) &&
		r.Weights.same(&other.Weights) && r.Lingers.same(&other.Lingers) &&
		slices.Equal(r.History, other.History) && slices.Equal(r.Pins, other.Pins) && slices.Equal(r.Bans, other.Bans) && slices.EqualFunc(r.Turns, other.Turns, Turn.same) &&
		slices.Equal(r.Days.Weekdays, other.Days.Weekdays) && slices.Equal(r.Days.Refused, other.Days.Refused)
}

func (m Member) same(other Member) bool {
	s, t := m.Standing, other.Standing
	return m.Outlook == other.Outlook && m.Costs == other.Costs && m.Plants == other.Plants && s.Since == t.Since &&
		samePointed(s.Condition, t.Condition, func(a, b float64) bool { return a == b }) &&
		samePointed(s.Planting, t.Planting, Planting.same)
}

func (p Planting) same(other Planting) bool {
	return p.ID == other.ID && p.Taste == other.Taste && slices.Equal(p.Parts, other.Parts) && slices.Equal(p.Out, other.Out)
}

func samePointed[T any](a, b *T, same func(a, b T) bool) bool {
	if a == nil || b == nil {
		return a == b
	}
	return same(*a, *b)
}

func (w *Weights) same(other *Weights) bool {
	return w.Tired == other.Tired && w.TiredBelow == other.TiredBelow && w.Bare == other.Bare && w.DayWorth == other.DayWorth &&
		w.ChargeDays == other.ChargeDays && slices.Equal(w.Days, other.Days)
}

func (l *Lingers) same(other *Lingers) bool {
	return l.Host == other.Host && l.Other == other.Other &&
		maps.Equal(l.Families, other.Families) && maps.Equal(l.Groups, other.Groups)
}
