package rotation

import (
	"math"

	"fourturn/planner/civil"
)

// ChangeOut is a day on which one planting replaces another, with its spread.
type ChangeOut struct {
	Day      civil.Date
	From, To int // candidates, or [Bare] or [Stood]
	// Good are the days about the best one that cost less than 5 % of the value of
	// the coming season, all else as it is.
	Good Window
	// Safe is the earliest day about the best one on which the coming planting may
	// go out at the person's risk.
	Safe civil.Date
	// Latest is the last sensible day: the coming planting may still go out, and the
	// one that stands is neither tired nor likelier than the risk to have been killed;
	// of an empty pot, the last good day.
	Latest civil.Date
	// SeasonValue is the display that the coming stay is expected to give.
	SeasonValue float64
	Reasons     []Reason
	MixReplaced bool
}

// Reason is a key of why a change-out falls on its day.
type Reason string

// The reasons, as keys of their texts.
const (
	Pinned    Reason = "rotation.why_pinned"     // the person fixed the day
	Empty     Reason = "rotation.why_empty"      // the pot is empty
	Heat      Reason = "rotation.why_heat"       // heat is about to end what stands
	Frost     Reason = "rotation.why_frost"      // cold is about to kill what stands
	Cold      Reason = "rotation.why_cold"       // nights are too cold for what stands to look well
	Faded     Reason = "rotation.why_faded"      // what stands is past its display weeks
	Season    Reason = "rotation.why_season"     // what stands is going out of its season
	FirstSafe Reason = "rotation.why_first_safe" // the first safe day of what comes
	FirstSold Reason = "rotation.why_first_sold" // the first day on which what comes is sold
	LastSafe  Reason = "rotation.why_last_safe"  // the last safe day of what comes
	LastSold  Reason = "rotation.why_last_sold"  // the last day on which what comes is sold
	Better    Reason = "rotation.why_better"     // what comes is simply worth more
)

const (
	goodShare   = 0.05 // of the season's value: what "good days" may cost
	reasonDays  = 28   // looked ahead for what would happen to what stands: judgement
	reasonShare = 0.25 // of its display or its life lost in those days: judgement
)

// changeOuts describes every change of a path, of which those to an empty pot are
// clearings.
func (r *Result) changeOuts(path []segment) []ChangeOut {
	var list []ChangeOut
	for i := 1; i < len(path); i++ {
		list = append(list, r.changeOut(path, i))
	}
	return list
}

func (r *Result) changeOut(path []segment, i int) ChangeOut {
	before, after := path[i-1], path[i]
	c := ChangeOut{
		Day:         r.req.Today.AddDays(after.start),
		From:        before.option,
		To:          after.option,
		SeasonValue: r.display(after),
		MixReplaced: after.replaced,
		Reasons:     r.reasons(before, after),
	}
	first, last := r.goodDays(path, i, goodShare*c.SeasonValue)
	c.Good = Window{r.req.Today.AddDays(first), r.req.Today.AddDays(last)}
	safe := after.start
	for !r.allowed(after.option, safe) && safe < after.end-1 {
		safe++
	}
	for safe > before.start && r.allowed(after.option, safe-1) {
		safe--
	}
	c.Safe = r.req.Today.AddDays(safe)
	c.Latest = r.req.Today.AddDays(r.latest(before, after))
	if before.option == bareOption {
		c.Latest = c.Good.To // every day that the pot is empty is lost
	}
	return c
}

// allowed reports whether an option may go out on a day of the horizon, whatever
// the weekday.
func (r *Result) allowed(o, day int) bool {
	if day < 0 || day >= r.problem.days {
		return false
	}
	if !counted(o) {
		return true
	}
	if may := r.problem.options[o].may; may != nil {
		return may.has(day)
	}
	return r.problem.options[o].allowed.has(day)
}

// goodDays returns the first and the last day about a change-out to which it could
// move for less than the limit. Days closed to work are passed over.
func (r *Result) goodDays(path []segment, i int, limit float64) (first, last int) {
	best := path[i].start
	first, last = best, best
	m := r.newMover(path, i)
	for day := best - 1; m.within(day); day-- {
		if cost, ok := m.cost(day); ok && cost >= limit || !r.allowed(path[i].option, day) {
			break
		} else if ok {
			first = day
		}
	}
	for day := best + 1; m.within(day); day++ {
		if cost, ok := m.cost(day); ok && cost >= limit || !r.allowed(path[i].option, day) {
			break
		} else if ok {
			last = day
		}
	}
	return first, last
}

func (r *Result) latest(before, after segment) int {
	latest := after.start
	for day := after.start + 1; day < after.end && r.allowed(after.option, day); day++ {
		if after.end < r.problem.days && counted(after.option) && after.end-day < r.problem.minStand {
			break
		}
		if !r.stillSensible(before, after.start, day) {
			break
		}
		latest = day
	}
	return latest
}

// stillSensible reports whether what stands may be kept from one day to another:
// it is not expected to look tired, and cold is no likelier than the risk to kill
// its plants on the way.
func (r *Result) stillSensible(before segment, from, to int) bool {
	lost, display, shares := 0.0, 0.0, 0.0
	r.eachPart(before, func(o *Outlook, part Part, course *course, today int) {
		for day := before.start; day < to; day++ {
			course.step(today + day)
		}
		display += part.Share * course.value(today+to)
		lost += part.Share * -math.Expm1(course.days.hard[today+from]-course.days.hard[today+to])
		shares += part.Share
	})
	if shares == 0 {
		return true
	}
	return lost <= r.req.Risk*shares && display >= r.req.Weights.TiredBelow*shares
}

// eachPart visits the parts of a segment's planting in every pot, each at the
// segment's start.
func (r *Result) eachPart(seg segment, visit func(o *Outlook, part Part, c *course, today int)) {
	for i := range r.req.Members {
		m := &r.req.Members[i]
		today := m.Outlook.index(r.req.Today)
		planting := m.Standing.Planting
		if seg.option >= 0 {
			planting = &r.req.Candidates[seg.option]
		}
		if planting == nil || seg.option == bareOption {
			continue
		}
		for _, part := range planting.Parts {
			c := m.Outlook.newCourse(part)
			if seg.option == standingOption {
				c = m.Outlook.courseToday(part, &m.Standing, today)
			}
			visit(m.Outlook, part, &c, today)
		}
	}
}

func (r *Result) reasons(before, after segment) []Reason {
	var list []Reason
	if r.pinnedTo(after.start) {
		list = append(list, Pinned)
	}
	if before.option == bareOption {
		list = append(list, Empty)
	}
	list = append(list, r.pushed(before, after.start)...)
	list = append(list, r.pulled(after)...)
	if len(list) == 0 {
		list = append(list, Better)
	}
	return list
}

func (r *Result) standsEmpty() bool {
	for _, m := range r.req.Members {
		if m.Standing.Planting != nil {
			return false
		}
	}
	return true
}

// pushed says what would become of the planting that stands in the days after.
func (r *Result) pushed(before segment, day int) []Reason {
	var heat, frost, cold, faded, season, shares float64
	r.eachPart(before, func(o *Outlook, part Part, c *course, today int) {
		for i := before.start; i < day; i++ {
			c.step(today + i)
		}
		d := c.days
		from := today + day
		to := min(from+reasonDays, len(d.keep)-1)
		heat += part.Share * -math.Expm1(d.heat[from]-d.heat[to])
		frost += part.Share * -math.Expm1(d.hard[from]-d.hard[to])
		if !part.Plant.Cut && part.Plant.Bulb == nil {
			cold += part.Share * (1 - o.coldToTheEye(part.Plant, o.climate.tmin[to]))
		}
		if !within(part.Plant.Shows, o.climate.from.AddDays(to)) {
			season += part.Share
		}
		for i := from; i < to; i++ {
			c.step(i)
		}
		faded += part.Share * (1 - c.fade())
		shares += part.Share
	})
	var list []Reason
	for _, push := range []struct {
		lost   float64
		reason Reason
	}{{heat, Heat}, {frost, Frost}, {cold, Cold}, {faded, Faded}, {season, Season}} {
		if shares > 0 && push.lost >= reasonShare*shares {
			list = append(list, push.reason)
		}
	}
	return list
}

// pulled says why the coming planting goes out neither earlier nor later.
func (r *Result) pulled(after segment) []Reason {
	if !counted(after.option) {
		return nil
	}
	var list []Reason
	if after.start > 0 && !r.allowed(after.option, after.start-1) {
		list = append(list, r.why(after.option, after.start-1, FirstSold, FirstSafe))
	}
	if after.start+1 < r.problem.days && !r.allowed(after.option, after.start+1) {
		list = append(list, r.why(after.option, after.start+1, LastSold, LastSafe))
	}
	return list
}

// why tells whether an option may not go out on a day because it is not sold.
func (r *Result) why(o, day int, notSold, notSafe Reason) Reason {
	date := r.req.Today.AddDays(day)
	for _, part := range r.req.Candidates[o].Parts {
		if !within(part.Plant.Sold, date) {
			return notSold
		}
	}
	return notSafe
}

func (r *Result) pinnedTo(day int) bool {
	date := r.req.Today.AddDays(day)
	for i := range r.pins {
		if r.pins[i].onOneDay() && r.pins[i].From == date {
			return true
		}
	}
	return false
}
