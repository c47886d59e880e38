package rotation

import (
	"math"
	"slices"

	"fourturn/planner/civil"
)

// compile turns a request into the solver's terms, with the pins given.
func (r *Result) compile(pins []Pin) *problem {
	req, s := r.req, r.scorer
	p := &problem{
		days:     s.days,
		open:     openDays(req, s.days, pins),
		minStand: req.MinStand,
		standing: s.standing(false),
		bare:     s.empty(),
		done:     req.Done,
		charged:  make([]float64, s.days),
	}
	if p.minStand == 0 {
		p.minStand = DefaultMinStand
	}
	p.block, p.most, p.least = planningYears(req, s.days)
	for day := range p.charged {
		p.charged[day] = 1
		if req.Weights.ChargeDays > 0 {
			p.charged[day] = min(1, float64(s.days-day)/float64(req.Weights.ChargeDays))
		}
	}
	for _, m := range req.Members {
		p.fixed += m.Costs.ChangeOut / req.Weights.DayWorth
		p.replace += m.Costs.ReplaceMix / req.Weights.DayWorth
	}
	groups := newGroupIndex(req)
	plants := plantCounts(req)
	for i := range req.Candidates {
		p.options = append(p.options, compileOption(req, groups, plants, i))
	}
	p.row = s.rowsOf(req.Candidates, false)
	if r.cache != nil {
		p.row = r.cache.through(req.Candidates, s)
	}
	p.stayRow = s.rowsOf(req.Candidates, true)
	compileStanding(req, s, groups, p)
	p.stays, p.standingStays, p.release = groups.stays, groups.standingStays, groups.release
	p.tellOnly, p.groupNames = req.TellOnly, groups.names
	for i := range pins {
		p.pins = append(p.pins, compilePin(req, &pins[i]))
		allowPinned(req, p, &pins[i])
	}
	for i := range req.Bans {
		compileBan(req, p, &req.Bans[i])
	}
	if len(req.Turns) > 0 {
		req.takeTurns(p)
	}
	return p
}

// openDays are the days on which work may be done. A change-out pinned to one day
// overrules the weekdays, but not the days that are refused.
func openDays(req *Request, days int, pins []Pin) []bool {
	open := make([]bool, days)
	for i := req.LeadDays; i < days; i++ {
		open[i] = req.Days.Allows(req.Today.AddDays(i))
	}
	anyDay := DayRules{Refused: req.Days.Refused}
	for i := range pins {
		day := int(pins[i].From - req.Today)
		if pins[i].onOneDay() && day >= 0 && day < days {
			open[day] = open[day] || anyDay.Allows(pins[i].From)
		}
	}
	return open
}

// planningYears numbers the planning year of each day and says how many
// change-outs each may have: what is wanted a year, and of a year that the horizon
// cuts off the part that falls within, rounded up. A year of which a part is cut
// off at the end need not have any.
func planningYears(req *Request, days int) (block, most, least []int) {
	begin := req.YearFrom
	if begin.IsZero() {
		begin = req.Today
	}
	for begin.AddYears(1) <= req.Today {
		begin = begin.AddYears(1)
	}
	block = make([]int, days)
	for year := 0; begin.AddYears(year) < req.Until; year++ {
		from, to := begin.AddYears(year), begin.AddYears(year+1)
		within := float64(min(to, req.Until)-from) / float64(to-from)
		most = append(most, int(math.Ceil(float64(req.PerYear)*within-1e-9)))
		least = append(least, 0)
		if to <= req.Until {
			least[year] = req.AtLeast
		}
		for day := max(from, req.Today); day < min(to, req.Until); day++ {
			block[int(day-req.Today)] = year
		}
	}
	return block, most, least
}

func plantCounts(req *Request) float64 {
	sum := 0.0
	for _, m := range req.Members {
		if m.Plants == 0 {
			sum++
		}
		sum += m.Plants
	}
	return sum
}

func compileOption(req *Request, groups *groupIndex, plants float64, i int) option {
	c := &req.Candidates[i]
	days := int(req.Until - req.Today)
	o := option{
		allowed: newDayset(days),
		cost:    c.price() * plants / req.Weights.DayWorth,
		groups:  groups.of(c, false),
		kept:    groups.of(c, true),
		carry:   stayingShare(c),
	}
	limit := -math.Log1p(-req.Risk)
	for day := range days {
		if mayStart(req, c, day, limit) {
			o.allowed.set(day)
		}
	}
	return o
}

// mayStart reports whether a planting may go out in every pot on a day; the limit
// is that on the sum of intensities which the risk allows.
func mayStart(req *Request, c *Planting, day int, limit float64) bool {
	if !within(c.Out, req.Today.AddDays(day)) {
		return false
	}
	for i := range req.Members {
		o := req.Members[i].Outlook
		at := o.index(req.Today) + day
		for k := range c.Parts {
			d := o.plant(c.Parts[k].Plant)
			until := min(at+o.params.SettleDays, len(d.keep))
			if !d.mayStart[at] || d.danger(at, until, o.params.HardeningDays) > limit {
				return false
			}
		}
	}
	return true
}

func stayingShare(p *Planting) float64 {
	sum := 0.0
	for _, part := range p.Parts {
		if part.Stays {
			sum += part.Share
		}
	}
	return min(sum, 1)
}

// compileStanding describes what stands today. Parts of it may stay on only where
// the same planting stands in all pots that match.
func compileStanding(req *Request, s *scorer, groups *groupIndex, p *problem) {
	first := req.Members[0].Standing.Planting
	same := first != nil
	for _, m := range req.Members {
		if m.Standing.Planting == nil {
			continue
		}
		p.standingGroups = union(p.standingGroups, groups.of(m.Standing.Planting, false))
		same = same && m.Standing.Planting == first
	}
	if same && stayingShare(first) > 0 {
		p.standingCarry = stayingShare(first)
		p.standingStay = s.standing(true)
		p.standingKept = groups.of(first, true)
	}
}

func union(a, b []int) []int {
	for _, x := range b {
		if !slices.Contains(a, x) {
			a = append(a, x)
		}
	}
	return a
}

func (pin *Pin) last() civil.Date {
	if pin.To.IsZero() {
		return pin.From
	}
	return pin.To
}

// onOneDay reports whether the pin fixes a change-out to one day.
func (pin *Pin) onOneDay() bool { return pin.Start && pin.last() == pin.From }

func compilePin(req *Request, pin *Pin) checkpoint {
	from, to := int(pin.From-req.Today), int(pin.last()-req.Today)
	suits := func(o int) bool { return suits(req, o, pin.Planting, pin.Plant, pin.Colour) }
	if pin.Start {
		return checkpoint{from: to, to: to, holds: func(o, start int) bool {
			return counted(o) && start >= from && start <= to && suits(o)
		}}
	}
	return checkpoint{from: from, to: to, holds: func(o, _ int) bool { return suits(o) }}
}

// allowPinned lets a planting out on the one day that it is pinned to, whatever
// the season or the risk: the person has decided.
func allowPinned(req *Request, p *problem, pin *Pin) {
	if !pin.onOneDay() || pin.Planting == "" && pin.Plant == "" {
		return
	}
	day := int(pin.From - req.Today)
	for o := range p.options {
		if suits(req, o, pin.Planting, pin.Plant, pin.Colour) {
			p.options[o].allowed.set(day)
		}
	}
}

func compileBan(req *Request, p *problem, ban *Ban) {
	from, to := 0, p.days-1
	if !ban.From.IsZero() {
		from = int(ban.From - req.Today)
	}
	if !ban.To.IsZero() {
		to = int(ban.To - req.Today)
	}
	p.pins = append(p.pins, checkpoint{from: from, to: to, holds: func(o, _ int) bool {
		return !counted(o) || !suits(req, o, ban.Planting, ban.Plant, ban.Colour)
	}})
}

// suits reports whether an option is the planting, has the plant and shows the
// colour named, each as far as it is given.
func suits(req *Request, o int, planting, plant, colour string) bool {
	if planting == "" && plant == "" && colour == "" {
		return true
	}
	if o == standingOption {
		for _, m := range req.Members {
			if m.Standing.Planting == nil || !m.Standing.Planting.suits(planting, plant, colour) {
				return false
			}
		}
		return true
	}
	return o >= 0 && req.Candidates[o].suits(planting, plant, colour)
}

func (p *Planting) suits(planting, plant, colour string) bool {
	hasPlant, hasColour := plant == "", colour == ""
	for _, part := range p.Parts {
		hasPlant = hasPlant || part.Plant.ID == plant
		for _, c := range part.Plant.Colours {
			hasColour = hasColour || c == colour
		}
	}
	return hasPlant && hasColour && (planting == "" || p.ID == planting)
}
