package climate

import (
	"math"

	"gonum.org/v1/gonum/stat/distuv"

	"fourturn/planner/civil"
	"fourturn/planner/quantity"
	"fourturn/planner/working"
)

// The scatter of single days about the smooth normals, and how much of it a day
// hands on to the next, where there is no record. Means of the daily series that
// the tests compare (summer maxima 2.8 to 5.0 K, spring and autumn
// minima 1.9 to 5.2 K, correlation from day to day mostly 0.55 to 0.7).
const (
	tmaxScatter = 3.8 // K, standard deviation of a day's maximum in high summer
	turnScatter = 8.0 // K more for each K/d by which the normals rise or fall: air of both seasons meets
	tminScatter = 3.5 // K, of a day's minimum in the growing season
	persistence = 0.6 // correlation of neighbouring days
)

// HotDays is a mean number of days a year above a limit.
type HotDays struct {
	Days   float64
	Limit  quantity.Temperature
	source working.Source
	years  int
}

// heatZoneLimit is the limit of the heat-zone map, 86 °F.
const heatZoneLimit quantity.Temperature = 30

// HotDays returns the mean number of days a year with a maximum above a limit:
// counted in a record, otherwise estimated from the normals as if a day's maximum
// were scattered about them normally.
func (c *Climate) HotDays(limit quantity.Temperature) HotDays {
	h := HotDays{Limit: limit, source: working.Source{Status: working.Estimated, Cite: "normal scatter of daily maxima about the normals, 3.8 K in summer"}}
	if r := c.base.record; r != nil {
		h.source = working.Source{Status: working.Entered}
		h.Days, h.years = r.hotDays(float64(limit) - c.maxShift)
		if h.years > 0 {
			return h
		}
	}
	if d := c.base.digest; d != nil {
		if days, ok := d.hotDays(float64(limit) - c.maxShift); ok {
			h.source, h.Days, h.years = d.source(), days, len(d.counted())
			return h
		}
	}
	for _, t := range c.tmax {
		h.Days += 1 - distuv.UnitNormal.CDF((float64(limit)-t)/tmaxScatter)
	}
	return h
}

// dayScatter returns the standard deviation of a day's maximum about the normals
// for runs of days. Counts of single days take the summer's alone, with which they
// agree better: great heat is bounded, early heat is not.
func (c *Climate) dayScatter(index int) float64 {
	slope := (c.tmax[wrap(index+slopeDays)] - c.tmax[wrap(index-slopeDays)]) / (2 * slopeDays)
	return tmaxScatter + turnScatter*math.Abs(slope)
}

// hotDays counts the days above a limit, as a mean over the year: each calendar
// month weighs by its own days on record, so that gaps do not count as cool.
func (r *Record) hotDays(limit float64) (days float64, years int) {
	var hot, seen [12]float64
	for i, v := range r.tmax {
		if isMissing(v) {
			continue
		}
		m := r.first.AddDays(i).Month() - 1
		seen[m]++
		if float64(v) > limit+0.005 {
			hot[m]++
		}
	}
	for m := range hot {
		if seen[m] == 0 {
			return 0, 0
		}
		days += hot[m] / seen[m] * float64(monthDays[m])
	}
	return days, max(1, len(r.tmax)/DaysPerYear)
}

// HeatZone returns the heat zone of the days above 30 °C.
func (c *Climate) HeatZone() HeatZone { return HeatZoneOf(c.HotDays(heatZoneLimit).Days) }

// Estimated reports whether the days are estimated from monthly means.
func (h HotDays) Estimated() bool { return h.source.Status == working.Estimated }

// Working returns the trace of the days.
func (h HotDays) Working() working.Trace {
	t := working.Trace{
		Name: "climate.hot_days", Formula: "n = Σ P(Tmax > limit)",
		Inputs: []working.Input{{Symbol: "limit", Name: "climate.limit", Value: working.Number(float64(h.Limit), working.Celsius), Source: working.Source{Status: working.Entered}}},
		Result: working.Number(h.Days, working.Day), Source: h.source,
	}
	if h.Estimated() {
		t.Notes = append(t.Notes, "climate.note_estimated")
	}
	return t
}

// ProbMinBelow returns, by day of the year, the odds that a single night's
// minimum is at or below a threshold: the share of nights within a week either
// way in a record, otherwise a normal scatter about the normals.
func (c *Climate) ProbMinBelow(threshold quantity.Temperature) *Year {
	limit := float64(threshold)
	if r := c.base.record; r != nil {
		return r.shareBelow(limit - c.minShift)
	}
	y, scatter := new(Year), new(Year)
	for i := range scatter {
		scatter[i] = tminScatter
	}
	if d := c.base.digest; d != nil {
		scatter = scattered(d.Scatter.Tmin)
	}
	for i, t := range c.tmin {
		y[i] = distuv.UnitNormal.CDF((limit - t) / scatter[i])
	}
	return y
}

// week is the window either way in which a record's nights are pooled.
const week = 7

// shareBelow returns by day of the year the share of minima at or below a limit
// within a week either way.
func (r *Record) shareBelow(limit float64) *Year {
	var below, seen Year
	for i, v := range r.tmin {
		if isMissing(v) {
			continue
		}
		k := DayIndex(r.first.AddDays(i))
		seen[k]++
		if v <= float32(limit+0.005) {
			below[k]++
		}
	}
	share := new(Year)
	for i := range share {
		n, b := 0.0, 0.0
		for k := i - week; k <= i+week; k++ {
			n, b = n+seen[wrap(k)], b+below[wrap(k)]
		}
		share[i] = b / max(1, n)
	}
	return share
}

// HotSpell is a question after runs of hot days.
type HotSpell struct {
	Above quantity.Temperature // a day is hot when its maximum is above this
	Days  int                  // at least so many in a row
}

// HotSpellOdds returns, by days from one date to the next 364, the odds that a
// run of hot days has been completed on that day or before it, in a year taken at
// random. In a record it is the share of years; from normals the days are taken
// to hang together as a chain with the usual persistence.
func (c *Climate) HotSpellOdds(spell HotSpell, from civil.MonthDay) *Year {
	if spell.Days < 1 {
		panic("climate: a run of hot days needs at least one day")
	}
	start := MonthDayIndex(from)
	if r := c.base.record; r != nil {
		if odds, ok := r.spellOdds(float64(spell.Above)-c.maxShift, spell.Days, from); ok {
			return odds
		}
	}
	scatter, persists := new(Year), persistence
	for i := range scatter {
		scatter[i] = c.dayScatter(i)
	}
	if d := c.base.digest; d != nil {
		scatter, persists = scattered(d.Scatter.Tmax), d.Persistence
	}
	odds := new(Year)
	free := 1.0
	for i := range odds {
		k := wrap(start + i)
		free *= 1 - c.spellHazard(spell, k, scatter[k], persists)
		odds[i] = 1 - free
	}
	return odds
}

// spellHazard returns the odds that a run that is just long enough ends on a day:
// a day that is not hot, then the run, by the odds of a hot day after a hot one.
func (c *Climate) spellHazard(spell HotSpell, index int, scatter, persists float64) float64 {
	z := (float64(spell.Above) - c.tmax[index]) / scatter
	p := 1 - distuv.UnitNormal.CDF(z)
	if p <= 0 {
		return 0
	}
	stay := min(0.999, bivariateTail(z, persists)/p)
	run := p * math.Pow(stay, float64(spell.Days-1))
	return min(1, run*(1-stay)+run*p*rareStart)
}

// rareStart adds the runs that are under way when the count begins.
const rareStart = 0.02

// bivariateTail returns the odds that two standard normal numbers with a
// correlation both pass z, by integration of the density of the correlation
// (Plackett 1954): dP/dρ = exp(−z²/(1+ρ)) / (2π√(1−ρ²)).
func bivariateTail(z, correlation float64) float64 {
	const steps = 64
	tail := 1 - distuv.UnitNormal.CDF(z)
	sum := 0.0
	for i := range steps {
		r := correlation * (float64(i) + 0.5) / steps
		sum += math.Exp(-z*z/(1+r)) / (2 * math.Pi * math.Sqrt(1-r*r))
	}
	return tail*tail + sum*correlation/steps
}

// spellOdds counts, among the years of a record with few days missing, those in
// which a run has been completed by each day.
func (r *Record) spellOdds(above float64, days int, from civil.MonthDay) (*Year, bool) {
	odds := new(Year)
	years := 0
	for year := r.first.Year(); year <= r.Last().Year(); year++ {
		start := from.In(year)
		if start < r.first || start.AddDays(DaysPerYear-1) > r.Last() {
			continue
		}
		run, missing, done := 0, 0, -1
		for i := range DaysPerYear {
			v := r.On(start.AddDays(i)).Tmax
			switch {
			case math.IsNaN(v):
				missing++
				run = 0
			case v > above+0.005:
				run++
			default:
				run = 0
			}
			if run >= days && done < 0 {
				done = i
			}
		}
		if missing > MaxMissing {
			continue
		}
		years++
		for i := max(0, done); i < DaysPerYear && done >= 0; i++ {
			odds[i]++
		}
	}
	if years < minSeasons {
		return nil, false
	}
	for i := range odds {
		odds[i] /= float64(years)
	}
	return odds, true
}
