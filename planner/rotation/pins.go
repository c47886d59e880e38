package rotation

import (
	"slices"

	"fourturn/planner/civil"
	"fourturn/planner/finding"
	"fourturn/planner/working"
)

// solve finds the best path with all pins that can hold, and says of the others
// why they cannot. A pin gives way to those before it in the list.
func (r *Result) solve() {
	for i := range r.req.Pins {
		if f := r.hopeless(&r.req.Pins[i]); f != nil {
			r.Findings = append(r.Findings, *f)
			continue
		}
		r.pins = append(r.pins, r.req.Pins[i])
	}
	if r.tryPins(r.pins) {
		r.warnOfPins()
		return
	}
	r.makeFeasible()
	wanted := r.pins
	r.pins = nil
	for _, pin := range wanted {
		with := append(append([]Pin(nil), r.pins...), pin)
		if r.feasible(with, 0) {
			r.pins = with
			continue
		}
		r.Findings = append(r.Findings, r.clash(pin))
	}
	if !r.tryPins(r.pins) {
		// Each pin held when it was added, and without pins a pot may stay as it is
		// where no change-outs are wanted.
		panic("rotation: no sequence for pins that hold")
	}
	r.warnOfPins()
}

// makeFeasible asks for fewer change-outs a year where even without pins so many as
// the person wants at least cannot be made.
func (r *Result) makeFeasible() {
	wanted := r.req.AtLeast
	for r.req.AtLeast > 0 && !r.feasible(nil, 0) {
		r.req.AtLeast--
	}
	if r.req.AtLeast == wanted {
		return
	}
	r.Findings = append(r.Findings, finding.Finding{
		Code: "rotation.fewer_change_outs", Severity: finding.Note,
		Args: []finding.Arg{
			{Name: "wanted", Value: working.Number(float64(wanted), working.None)},
			{Name: "made", Value: working.Number(float64(r.req.AtLeast), working.None)},
		},
	})
}

func (r *Result) tryPins(pins []Pin) bool {
	r.problem = r.compile(pins)
	path, score, ok := newSolver(r.problem, 0).solve()
	if !ok {
		return false
	}
	r.path, r.score = r.tidied(path), score
	return true
}

// tidied joins stays of an empty pot that follow each other, that of a pot which
// stands empty today among them.
func (r *Result) tidied(path []segment) []segment {
	path = slices.Clone(path)
	if r.standsEmpty() {
		path[0].option = bareOption
	}
	return joined(path)
}

func joined(path []segment) []segment {
	var tidy []segment
	for _, seg := range path {
		if n := len(tidy); n > 0 && seg.option == bareOption && tidy[n-1].option == bareOption && tidy[n-1].carry == seg.carry {
			tidy[n-1].end = seg.end
			continue
		}
		tidy = append(tidy, seg)
	}
	return tidy
}

// feasible reports whether any sequence keeps the pins, with some more change-outs
// a year than the person wants.
func (r *Result) feasible(pins []Pin, more int) bool {
	p := r.compile(pins)
	// Worth does not matter here.
	p.row = func(_, _ int, space []float64) []float64 {
		clear(space)
		return space
	}
	p.stayRow = p.row
	for year := range p.most {
		p.most[year] += more
	}
	_, _, ok := newSolver(p, 0).solve()
	return ok
}

func (r *Result) pinFinding(code string, pin *Pin, args ...finding.Arg) *finding.Finding {
	args = append([]finding.Arg{
		{Name: "from", Value: working.Date(pin.From)},
		{Name: "to", Value: working.Date(pin.last())},
	}, args...)
	return &finding.Finding{Code: code, Severity: finding.Warning, Where: finding.Where{"pins", pin.ID}, Args: args}
}

// hopeless returns why a pin cannot hold whatever the others are, and what would.
func (r *Result) hopeless(pin *Pin) *finding.Finding {
	first := r.req.Today.AddDays(r.req.LeadDays)
	switch {
	case pin.From < r.req.Today || pin.last() >= r.req.Until || pin.last() < pin.From:
		return r.pinFinding("rotation.pin_outside", pin,
			finding.Arg{Name: "today", Value: working.Date(r.req.Today)}, finding.Arg{Name: "until", Value: working.Date(r.req.Until)})
	case pin.Start && pin.last() < first:
		return r.pinFinding("rotation.pin_too_soon", pin, finding.Arg{Name: "would", Value: working.Date(first)})
	case pin.onOneDay() && !(DayRules{Refused: r.req.Days.Refused}).Allows(pin.From):
		return r.refusedDay(pin)
	}
	return r.noPlantingFor(pin)
}

// refusedDay names the nearest day on which the change-out could be made.
func (r *Result) refusedDay(pin *Pin) *finding.Finding {
	var args []finding.Arg
	first := r.req.Today.AddDays(r.req.LeadDays)
	for away := 1; away < int(r.req.Until-r.req.Today); away++ {
		for _, day := range []civil.Date{pin.From.AddDays(away), pin.From.AddDays(-away)} {
			if len(args) == 0 && day >= first && day < r.req.Until && r.req.Days.Allows(day) {
				args = append(args, finding.Arg{Name: "would", Value: working.Date(day)})
			}
		}
	}
	if len(args) == 0 {
		return r.pinFinding("rotation.pin_refused_always", pin)
	}
	return r.pinFinding("rotation.pin_refused_day", pin, args...)
}

// noPlantingFor returns a finding where no planting meets the pin: none suits at
// all, all that do are refused, or none may go out in time.
func (r *Result) noPlantingFor(pin *Pin) *finding.Finding {
	if pin.Planting == "" && pin.Plant == "" && pin.Colour == "" {
		return nil
	}
	if !pin.Start && suits(r.req, standingOption, pin.Planting, pin.Plant, pin.Colour) {
		return nil
	}
	one := []Pin{*pin}
	p := r.compile(one)
	known, in, nearest := false, false, -1
	for o := range p.options {
		if !suits(r.req, o, pin.Planting, pin.Plant, pin.Colour) {
			continue
		}
		known = true
		for start := range p.days {
			if !p.options[o].allowed.has(start) || !p.open[start] {
				continue
			}
			if r.meets(p, pin, o, start) {
				in = true
			}
			if nearest < 0 || far(start, pin, r.req.Today) < far(nearest, pin, r.req.Today) {
				nearest = start
			}
		}
	}
	switch {
	case !known:
		return r.pinFinding("rotation.pin_unknown", pin)
	case in:
		return nil
	case nearest < 0:
		return r.pinFinding("rotation.pin_never", pin)
	}
	return r.pinFinding("rotation.pin_not_then", pin, finding.Arg{Name: "would", Value: working.Date(r.req.Today.AddDays(nearest))})
}

// meets reports whether an option put out on a day stands through the pin.
func (r *Result) meets(p *problem, pin *Pin, o, start int) bool {
	from, to := int(pin.From-r.req.Today), int(pin.last()-r.req.Today)
	if pin.Start {
		from = to
	}
	// A planting of an earlier day may hold the first of the pin's days, this one the rest.
	return start <= to && p.limit(o, start) > max(start, from)
}

// far is how many days a day lies from the days of a pin.
func far(day int, pin *Pin, today civil.Date) int {
	return max(int(pin.From-today)-day, day-int(pin.last()-today), 0)
}

// clash says why a pin that could hold alone cannot hold with those before it.
func (r *Result) clash(pin Pin) finding.Finding {
	const most = 5
	for more := 1; more <= most; more++ {
		if r.feasible(append(append([]Pin(nil), r.pins...), pin), more) {
			return *r.pinFinding("rotation.pin_too_many", &pin,
				finding.Arg{Name: "would", Value: working.Number(float64(r.req.PerYear+more), working.None)})
		}
	}
	for i, other := range r.pins {
		without := append(append([]Pin(nil), r.pins[:i]...), r.pins[i+1:]...)
		if r.feasible(append(without, pin), 0) {
			return *r.pinFinding("rotation.pin_clash", &pin, finding.Arg{Name: "other", Value: working.Text(other.ID)})
		}
	}
	return *r.pinFinding("rotation.pin_cannot", &pin)
}

// warnOfPins tells of plantings that the person fixed to a day on which they would
// not be put out.
func (r *Result) warnOfPins() {
	for _, seg := range r.path {
		date := r.req.Today.AddDays(seg.start)
		for i := range r.pins {
			if !counted(seg.option) || !r.pins[i].onOneDay() || r.pins[i].From != date {
				continue
			}
			chance := 0.0
			for _, m := range r.req.Members {
				for _, part := range r.req.Candidates[seg.option].Parts {
					chance = max(chance, m.Outlook.SettlingRisk(part.Plant, date))
				}
			}
			if chance > r.req.Risk {
				r.Findings = append(r.Findings, *r.pinFinding("rotation.pin_risky", &r.pins[i],
					finding.Arg{Name: "chance", Value: working.Number(chance, working.Share)}))
			}
		}
	}
}
