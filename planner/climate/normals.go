package climate

import (
	"time"

	"fourturn/planner/civil"
	"fourturn/planner/quantity"
	"fourturn/planner/working"
)

// DayNormals are the normals of one date.
type DayNormals struct {
	Tmin, Tmax, Tmean quantity.Temperature
	date              civil.Date
	climate           *Climate
}

// NormalsOn returns the normals of a date.
func (c *Climate) NormalsOn(d civil.Date) DayNormals {
	return DayNormals{c.Tmin(d), c.Tmax(d), c.Tmean(d), d, c}
}

// Working returns the trace of the mean: the smooth curve through the monthly
// means, moved by height and spot.
func (n DayNormals) Working() working.Trace {
	month := n.date.Month()
	shift := n.climate.Shift().Working()
	source := n.climate.Temperatures()
	t := working.Trace{
		Name: "climate.daily_normals", Formula: "T = ((s(Tn) + ΔTn) + (s(Tx) + ΔTx)) / 2",
		Inputs: []working.Input{
			{Symbol: "day", Name: "climate.day", Value: working.Date(n.date), Source: working.Source{Status: working.Entered}},
			{Symbol: "Tn", Name: "climate.month_tmin", Value: working.Number(n.climate.base.tmin.MonthMean(month), working.Celsius), Source: source},
			{Symbol: "Tx", Name: "climate.month_tmax", Value: working.Number(n.climate.base.tmax.MonthMean(month), working.Celsius), Source: source},
			{Symbol: "s(Tn) + ΔTn", Name: "climate.tmin", Value: working.Number(float64(n.Tmin), working.Celsius), Source: source},
			{Symbol: "s(Tx) + ΔTx", Name: "climate.tmax", Value: working.Number(float64(n.Tmax), working.Celsius), Source: source},
			{Symbol: "ΔTn", Name: "climate.shift", Value: working.Number(n.climate.minShift, working.Kelvin), Source: shift.Source, From: &shift},
		},
		Result: working.Number(float64(n.Tmean), working.Celsius),
		Source: working.Source{Status: working.Derived, Cite: "least-bending curve that keeps each month's mean"},
		Notes:  []string{"climate.note_smooth"},
	}
	if source.Status == working.Estimated {
		t.Notes = append(t.Notes, "climate.note_estimated")
	}
	return t
}

// MonthNormal is the mean daily minimum or maximum of a month.
type MonthNormal struct {
	Mean    quantity.Temperature
	month   time.Month
	maxima  bool
	climate *Climate
}

// MonthLow returns the mean daily minimum of a month.
func (c *Climate) MonthLow(m time.Month) MonthNormal {
	return MonthNormal{quantity.Temperature(c.tmin.MonthMean(m)), m, false, c}
}

// MonthHigh returns the mean daily maximum of a month.
func (c *Climate) MonthHigh(m time.Month) MonthNormal {
	return MonthNormal{quantity.Temperature(c.tmax.MonthMean(m)), m, true, c}
}

// Working returns the trace of the mean: what is known at the place of measurement,
// moved by height and spot.
func (n MonthNormal) Working() working.Trace {
	c, name, symbol := n.climate, "climate.month_tmin", "Tn"
	measured, shift := c.base.tmin.MonthMean(n.month), c.minShift
	if n.maxima {
		name, symbol, measured, shift = "climate.month_tmax", "Tx", c.base.tmax.MonthMean(n.month), c.maxShift
	}
	source, from := c.Temperatures(), c.Shift().Working()
	move := working.Input{Symbol: "ΔT", Name: "climate.shift", Value: working.Number(shift, working.Kelvin), Source: from.Source}
	if !n.maxima {
		move.From = &from
	}
	t := working.Trace{
		Name: name, Formula: symbol + " + ΔT",
		Inputs: []working.Input{{Symbol: symbol, Name: name, Value: working.Number(measured, working.Celsius), Source: source}, move},
		Result: working.Number(float64(n.Mean), working.Celsius),
		Source: working.Source{Status: working.Definition},
	}
	if source.Status == working.Estimated {
		t.Notes = append(t.Notes, "climate.note_estimated")
	}
	return t
}

// OddsOn is the odds of a freeze before or after a day.
type OddsOn struct {
	Odds   float64
	Day    civil.MonthDay
	Spring bool // the odds that one still comes; otherwise that one has come
	odds   *FreezeOdds
}

// SpringOddsOn is [FreezeOdds.SpringRisk] with its working.
func (o *FreezeOdds) SpringOddsOn(day civil.MonthDay) OddsOn {
	return OddsOn{o.SpringRisk(day), day, true, o}
}

// AutumnOddsOn is [FreezeOdds.AutumnRisk] with its working.
func (o *FreezeOdds) AutumnOddsOn(day civil.MonthDay) OddsOn {
	return OddsOn{o.AutumnRisk(day), day, false, o}
}

// Working returns the trace of the odds.
func (o OddsOn) Working() working.Trace {
	name, formula := "climate.autumn_odds", "P(freeze on or before day)"
	if o.Spring {
		name, formula = "climate.spring_odds", "P(freeze on or after day)"
	}
	t := working.Trace{
		Name: name, Formula: formula,
		Inputs: []working.Input{
			{Symbol: "day", Name: "climate.day", Value: working.Date(o.Day.In(commonYear)), Source: working.Source{Status: working.Entered}},
			{Symbol: "θ", Name: "climate.threshold", Value: working.Number(o.odds.threshold, working.Celsius), Source: working.Source{Status: working.Entered}},
			{Symbol: "A", Name: "climate.annual_odds", Value: working.Number(o.odds.annual, working.Share), Source: o.odds.source},
		},
		Result: working.Number(o.Odds, working.Share),
		Source: o.odds.source,
	}
	if o.odds.Estimated() {
		t.Notes = append(t.Notes, "climate.note_estimated")
	}
	return t
}

// Rain returns the mean rain of each month in mm, January first; ok is false where
// it is not known, as for a site without a station.
func (c *Climate) Rain() (monthly [12]float64, ok bool) {
	if c.base.station == nil || c.base.station.Rain == nil {
		return monthly, false
	}
	return *c.base.station.Rain, true
}
