package nutrition

import (
	"fmt"
	"slices"

	"fourturn/planner/finding"
	"fourturn/planner/working"
)

// Days in the search for rounds are counted from the first day planned for.

// never is a day after every plan, for deadlines that do not come.
const never = 1 << 30

// longAgo is the day of the last feed of a pot that never had one.
const longAgo = -(1 << 30)

// mark is one round in the search: a day and what is in the can.
type mark struct{ day, product int }

// dayKind says what one day is to a group of pots.
type dayKind uint8

const (
	running  dayKind = 1 << iota // the days since the last feed count against the longest interval
	feedable                     // a feed may be given
	graced                       // within the grace after a rest
	ended                        // no running day from here on
)

// group is the pots that ask for exactly the same.
type group struct {
	shortest, longest, wanted int

	pots        []int // indices of the demands
	days        []dayKind
	resume      []int  // first day of the running span that the day is in, or of the next one
	lastFed     int    // longAgo if never
	lastProduct int    // AnyProduct if free
	open        string // its open days, to tell groups apart
	start       int    // deadline of the first feed, below 0 if it is past
	notBefore   int
	needBy      []int32 // feeds still needed when the next is due by this day
	due         []int32 // day by which a pot fed on day d is due, at index d + LongestInterval
	eligible    uint64  // the ages in days at which it may be fed, as bits
}

// groupDemands gathers demands that are alike and leaves out, with a finding, those
// whose interval cannot be planned for.
func groupDemands(demands []Demand, rules RoundRules) ([]*group, []finding.Finding) {
	byKey := map[string]*group{}
	var groups []*group
	var found []finding.Finding
	for i, d := range demands {
		if !d.Interval.Sound() {
			found = append(found, finding.Finding{
				Code: "nutrition.rounds.interval", Severity: finding.Error, Where: finding.Where{"pots", d.Pot},
				Args: []finding.Arg{
					{Name: "pot", Value: working.Text(d.Pot)},
					{Name: "shortest", Value: working.Number(float64(d.Interval.Shortest), working.Day)},
					{Name: "longest", Value: working.Number(float64(d.Interval.Longest), working.Day)},
				},
			})
			continue
		}
		key := fmt.Sprint(d.Interval, d.Open, d.LastFed, d.LastProduct, d.NotBefore)
		g := byKey[key]
		if g == nil {
			g = newGroup(d, rules)
			byKey[key] = g
			groups = append(groups, g)
		}
		g.pots = append(g.pots, i)
	}
	return groups, found
}

func newGroup(d Demand, rules RoundRules) *group {
	n := int(rules.Last-rules.First) + 1
	g := &group{
		shortest: d.Interval.Shortest, longest: d.Interval.Longest, wanted: d.Interval.wanted(),
		days: make([]dayKind, n), resume: make([]int, n),
		open: fmt.Sprint(d.Open), lastFed: longAgo, lastProduct: AnyProduct, notBefore: int(d.NotBefore - rules.First),
	}
	if !d.LastFed.IsZero() {
		g.lastFed = int(d.LastFed - rules.First)
		if d.LastProduct >= 0 && d.LastProduct < rules.Products {
			g.lastProduct = d.LastProduct
		}
	}
	if d.NotBefore.IsZero() {
		g.notBefore = longAgo
	}
	opened := g.layOut(d.Open, rules)
	g.start = g.firstDeadline(opened, rules.Grace)
	g.eligible = uint64(1)<<(g.longest+1) - uint64(1)<<g.shortest
	g.due = make([]int32, n+LongestInterval)
	for i := range g.due {
		g.due[i] = int32(g.deadline(i-LongestInterval, rules.Grace))
	}
	g.countNeeds()
	return g
}

// layOut marks the days of the plan with what they are to the group, and returns the
// first day of the span that is already running when the plan begins, or never.
func (g *group) layOut(open []Span, rules RoundRules) (opened int) {
	n := len(g.days)
	opened = never
	for t := range g.resume {
		g.resume[t] = never
	}
	for _, span := range open {
		first, last := int(span.First-rules.First), int(span.Last-rules.First)
		if first <= 0 && last >= 0 {
			opened = first
		}
		for t := max(0, first); t <= min(last, n-1); t++ {
			g.days[t] |= running
			g.resume[t] = first
			if t >= g.notBefore {
				g.days[t] |= feedable
			}
			if t <= first+rules.Grace {
				g.days[t] |= graced
			}
		}
	}
	next, rest := never, true
	for t := n - 1; t >= 0; t-- {
		if g.days[t]&running != 0 {
			rest = false
			next = max(0, g.resume[t])
			continue
		}
		g.resume[t] = next
		if rest {
			g.days[t] |= ended
		}
	}
	return opened
}

// firstDeadline returns the day by which the group's first feed is due. opened is
// the first day of the span that is already running, or never.
func (g *group) firstDeadline(opened, grace int) int {
	if g.lastFed >= 0 {
		return g.deadline(g.lastFed, grace)
	}
	if opened > 0 || len(g.days) == 0 { // a rest runs on the day before, or a span starts later
		return g.deadline(max(g.lastFed, -1-g.longest), grace)
	}
	due := opened + grace
	if g.lastFed >= opened {
		due = g.lastFed + g.longest
	} else if g.lastFed != longAgo {
		due = max(due, g.lastFed+g.longest)
	}
	if due < 0 {
		return due
	}
	return g.settle(due, max(g.lastFed, -1), grace)
}

// graceDue returns the day by which a pot that waits for its first feed after a rest,
// on day t, must have it, or never.
func (g *group) graceDue(t, grace int) int {
	return g.settle(g.resume[t]+grace, g.resume[t]-1, grace)
}

// deadline returns the day by which a pot fed on day d must be fed again, or never.
// It does not fall as d grows, which the lower bound rests on.
func (g *group) deadline(d, grace int) int { return g.settle(d+g.longest, d, grace) }

// settle moves a deadline x to the end of the grace after a rest, where the rest
// begins before the pot is overdue or ended shortly before. d is the day of the feed
// before. A pot due on the last day before a rest may go without.
func (g *group) settle(x, d, grace int) int {
	for {
		x = max(x, -1)
		if x+1 >= len(g.days) {
			return never
		}
		s := g.resume[x+1]
		switch {
		case s == never:
			return never
		case s <= d || s+grace <= x:
			return x
		}
		x = s + grace
	}
}

// countNeeds fills needBy: each feed is given as late as may be.
func (g *group) countNeeds() {
	g.needBy = make([]int32, len(g.days))
	for x := len(g.days) - 1; x >= 0; x-- {
		g.needBy[x] = 1 + g.needs(g.dueAfter(x))
	}
}

// dueAfter is [group.deadline], looked up, for a feed at most LongestInterval before
// the plan.
func (g *group) dueAfter(d int) int { return int(g.due[d+LongestInterval]) }

// needs returns the feeds still needed when the next is due by day x.
func (g *group) needs(x int) int32 {
	if x >= len(g.needBy) {
		return 0
	}
	return g.needBy[max(0, x)]
}

// lateDays counts the days that a pot due by day x is overdue, up to and with day
// t. A rest ends being overdue; the grace after it begins afresh.
func (g *group) lateDays(x, t, grace int) int {
	t = min(t, len(g.days)-1)
	days := 0
	for x < t {
		k := max(0, x+1)
		for ; k <= t && g.days[k]&running != 0; k++ {
			days++
		}
		if k > t || g.resume[k] == never {
			break
		}
		x = g.settle(g.resume[k]+grace, k, grace)
	}
	return days
}

// leaders returns the groups that the search must keep in sight: a group is left out
// where another has the same days and history and an interval within its own, since
// whatever feeds that one in time can feed it too.
func leaders(groups []*group) []*group {
	type sameDays struct {
		lastFed, lastProduct, notBefore int
		open                            string
	}
	byDays := map[sameDays][]*group{}
	key := func(g *group) sameDays { return sameDays{g.lastFed, g.lastProduct, g.notBefore, g.open} }
	for _, g := range groups {
		byDays[key(g)] = append(byDays[key(g)], g)
	}
	var leading []*group
	for _, g := range groups {
		if !slices.ContainsFunc(byDays[key(g)], func(o *group) bool {
			return o != g && o.shortest >= g.shortest && o.longest <= g.longest &&
				(o.shortest > g.shortest || o.longest < g.longest || o.first() < g.first())
		}) {
			leading = append(leading, g)
		}
	}
	return leading
}

// first returns the index of the group's first pot, by which groups are in order.
func (g *group) first() int { return g.pots[0] }

func inOrder(pots []int) []int {
	slices.Sort(pots)
	return pots
}
