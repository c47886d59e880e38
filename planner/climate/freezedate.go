package climate

import (
	"math"

	"fourturn/planner/civil"
	"fourturn/planner/working"
)

// FreezeDate is the answer to a question for a date, with what it was asked of.
type FreezeDate struct {
	Outcome Outcome
	Day     civil.MonthDay // set when Dated
	name    string
	formula string
	spring  bool
	risk    float64
	odds    *FreezeOdds
}

// Known reports whether there is a day.
func (d FreezeDate) Known() bool { return d.Outcome == Dated }

// LastFreeze returns the date on or after which the last event of the cold
// season falls with the odds given, among the seasons that have an event: NOAA's
// PRBLST, so that 0.10 is the late, cautious date. NOAA states none where fewer
// than 10 % of seasons have an event, and neither does this.
func (o *FreezeOdds) LastFreeze(risk Risk) FreezeDate {
	d := FreezeDate{name: "climate.last_freeze", spring: true, formula: "P(last freeze ≥ day | freeze) = p", risk: risk.clamp(), odds: o}
	if o.annual < rareBelow {
		d.Outcome = TooRare
		return d
	}
	i := o.lastReaching(o.annual * d.risk)
	return d.on(i, i == DaysPerYear-1)
}

// FirstFreeze returns the date on or before which the first event of the cold
// season falls with the odds given, among the seasons that have an event: NOAA's
// PRBFST, so that 0.10 is the early, cautious date.
func (o *FreezeOdds) FirstFreeze(risk Risk) FreezeDate {
	d := FreezeDate{name: "climate.first_freeze", formula: "P(first freeze ≤ day | freeze) = p", risk: risk.clamp(), odds: o}
	if o.annual < rareBelow {
		d.Outcome = TooRare
		return d
	}
	i := o.firstReaching(o.annual * d.risk)
	return d.on(i, i == 0)
}

// SafeFrom returns the first day of spring from which the odds, over all years,
// of an event still to come are at or below the risk.
func (o *FreezeOdds) SafeFrom(risk Risk) FreezeDate {
	d := FreezeDate{name: "climate.safe_from", spring: true, formula: "P(freeze on or after day) ≤ r", risk: risk.clamp(), odds: o}
	if o.annual <= d.risk {
		d.Outcome = AlwaysSafe
		return d
	}
	i := o.lastReaching(d.risk + 2*rounding)
	return d.on(i+1, i == DaysPerYear-1)
}

// SafeUntil returns the last day of autumn up to which the odds, over all years,
// that an event has come are at or below the risk.
func (o *FreezeOdds) SafeUntil(risk Risk) FreezeDate {
	d := FreezeDate{name: "climate.safe_until", formula: "P(freeze on or before day) ≤ r", risk: risk.clamp(), odds: o}
	if o.annual <= d.risk {
		d.Outcome = AlwaysSafe
		return d
	}
	i := o.firstReaching(d.risk + 2*rounding)
	return d.on(i-1, i == 0)
}

func (d FreezeDate) on(season int, never bool) FreezeDate {
	if never {
		d.Outcome = NeverSafe
		return d
	}
	d.Outcome, d.Day = Dated, d.odds.dayOfYear(season)
	return d
}

// Uncertainty returns by how many days a date that is estimated from monthly
// means is typically off: the rest of the calibration over the slope of the curve
// on the day. In an ordinary spring that is a week, in a mild and even winter
// weeks. Zero for dates that are not estimated and where there is no date.
func (d FreezeDate) Uncertainty() int {
	if !d.Known() || !d.odds.Estimated() || d.odds.limbs == nil {
		return 0
	}
	levels := &d.odds.limbs.falling
	if d.spring {
		levels = &d.odds.limbs.rising
	}
	i := d.odds.seasonDay(d.Day)
	from, to := max(0, i-slopeDays), min(DaysPerYear-1, i+slopeDays)
	slope := math.Abs(levels[to]-levels[from]) / float64(to-from)
	return int(math.Ceil(calibrationRest / slope))
}

// slopeDays is the span either way over which the slope of the curve is taken.
const slopeDays = 7

// Working returns the trace of the date.
func (d FreezeDate) Working() working.Trace {
	t := working.Trace{
		Name: d.name, Formula: d.formula, Source: d.odds.source,
		Result: working.Text(string(d.Outcome)),
		Inputs: []working.Input{
			{Symbol: "θ", Name: "climate.threshold", Value: working.Number(d.odds.threshold, working.Celsius), Source: working.Source{Status: working.Entered}},
			{Symbol: "p", Name: "climate.risk", Value: working.Number(d.risk, working.Share), Source: working.Source{Status: working.Entered}},
			{Symbol: "A", Name: "climate.annual_odds", Value: working.Number(d.odds.annual, working.Share), Source: d.odds.source},
		},
	}
	if d.Known() {
		// A recurring day is shown in a common year; the surface leaves the year out.
		t.Result = working.Date(d.Day.In(commonYear))
	}
	if d.odds.Estimated() {
		t.Notes = append(t.Notes, "climate.note_estimated")
		if days := d.Uncertainty(); days > 0 {
			t.Inputs = append(t.Inputs, working.Input{
				Symbol: "±", Name: "climate.uncertainty", Value: working.Number(float64(days), working.Day), Source: d.odds.source,
			})
		}
	}
	return t
}

// commonYear stands for any year where a trace needs a date.
const commonYear = 2001

// FreeDays is a length of the freeze-free season.
type FreeDays struct {
	Days int // 365 where no event comes
	Odds float64
	odds *FreezeOdds
}

// FreeDays returns the length in days that the freeze-free season, from the last
// event of one cold season to the first of the next, reaches or passes with the
// odds given: NOAA's PRBGSL, so that 0.90 is the short, dependable length. The
// two ends are taken for independent.
func (o *FreezeOdds) FreeDays(odds Risk) FreeDays {
	f := FreeDays{Odds: odds.clamp(), odds: o}
	last := o.lastDays()
	// The odds only fall with the length: bisect for the longest that reaches them.
	short, long := 0, DaysPerYear+1
	for long-short > 1 {
		n := (short + long) / 2
		if o.reaches(&last, n) >= f.Odds-rounding {
			short = n
		} else {
			long = n
		}
	}
	f.Days = short
	return f
}

// reaches returns the odds that the season lasts at least n days: over the days i
// of the last event, that the first of the next season falls n days and one later.
func (o *FreezeOdds) reaches(last *Year, n int) float64 {
	sum := 0.0
	for i, p := range last {
		switch k := i + n - DaysPerYear; { // the latest season day that is too early
		case k < 0:
			sum += p
		case k < DaysPerYear:
			sum += p * (1 - o.autumn[k])
		}
	}
	return sum
}

// lastDays returns the odds of each season day to be that of the last event. A
// season without one leaves the days from its start free.
func (o *FreezeOdds) lastDays() Year {
	var last Year
	next := 0.0
	for i := DaysPerYear - 1; i >= 0; i-- {
		last[i] = o.spring[i] - next
		next = o.spring[i]
	}
	last[0] += 1 - next
	return last
}

// Working returns the trace of the length.
func (f FreeDays) Working() working.Trace {
	return working.Trace{
		Name: "climate.free_days", Formula: "P(first freeze − last freeze − 1 ≥ n) = p",
		Inputs: []working.Input{
			{Symbol: "θ", Name: "climate.threshold", Value: working.Number(f.odds.threshold, working.Celsius), Source: working.Source{Status: working.Entered}},
			{Symbol: "p", Name: "climate.odds", Value: working.Number(f.Odds, working.Share), Source: working.Source{Status: working.Entered}},
		},
		Result: working.Number(float64(f.Days), working.Day),
		Source: f.odds.source,
		Notes:  []string{"climate.note_independent_ends"},
	}
}
