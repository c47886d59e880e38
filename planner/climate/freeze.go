package climate

import (
	"math"

	"fourturn/planner/civil"
	"fourturn/planner/quantity"
	"fourturn/planner/working"
)

// Risk is a share of years, 0.01 to 0.99: the odds that a person accepts to be
// caught by a freeze.
type Risk float64

// The risks that have a name.
const (
	Cautious Risk = 0.10
	Even     Risk = 0.50
	Bold     Risk = 0.90
)

// clamp brings a risk into 0.01 to 0.99; not a number becomes cautious.
func (r Risk) clamp() float64 {
	if math.IsNaN(float64(r)) {
		return float64(Cautious)
	}
	return min(0.99, max(0.01, float64(r)))
}

// PlaceKind says how a place stands to freezes at a threshold.
type PlaceKind string

// The kinds of place.
const (
	Freezes        PlaceKind = "freezes"          // a cold season and a warm season
	RarelyFreezes  PlaceKind = "rarely_freezes"   // in fewer than one year of ten; NOAA states no dates
	NeverFreezes   PlaceKind = "never_freezes"    // in fewer than one year of a hundred
	FreezesAllYear PlaceKind = "freezes_all_year" // less than a month is safe at the cautious risk
)

// The limits between the kinds of place. NOAA computes no dates below 10 % of
// years (special value -6666); 1 % is the finest risk that this package works to.
const (
	rareBelow  = 0.10
	neverBelow = 0.01
)

// shortestSeason is the least number of days from the cautious last freeze to the
// cautious first one in which a place still has a freeze-free season to plant by.
// A judgement: NOAA flags the risk as lasting all year (-4444) as soon as a freeze
// is possible at all in high summer, which [Climate.FreezeNote] tells.
const shortestSeason = 30

// Outcome says what kind of answer a question for a date has.
type Outcome string

// The outcomes of a question for a date.
const (
	Dated      Outcome = "dated"       // the day is given
	AlwaysSafe Outcome = "always_safe" // the odds stay at or below the risk all year
	NeverSafe  Outcome = "never_safe"  // the odds never fall to the risk
	TooRare    Outcome = "too_rare"    // the threshold is reached in fewer than 10 % of years, for which NOAA states no date
)

// FreezeOdds are the odds, through one cold season, that the night's minimum
// reaches or passes a threshold. The cold season runs from 1 August, south of
// the equator from 1 February, for a year. A FreezeOdds is immutable.
type FreezeOdds struct {
	threshold float64
	start     int
	annual    float64 // odds of at least one event in a season
	spring    Year    // by season day: odds that the last event falls on or after it
	autumn    Year    // by season day: odds that the first event falls on or before it
	hazard    Year    // by season day: -ln of the odds that the day brings no new event
	source    working.Source
	limbs     *limbs // of the curve that odds are estimated from; nil for a record
}

// Threshold returns the temperature that counts as an event when it is reached.
func (o *FreezeOdds) Threshold() quantity.Temperature { return quantity.Temperature(o.threshold) }

// Annual returns the odds of at least one event in a cold season.
func (o *FreezeOdds) Annual() float64 { return o.annual }

// Source says what the odds rest on.
func (o *FreezeOdds) Source() working.Source { return o.source }

// Estimated reports whether the odds are estimated from means alone.
func (o *FreezeOdds) Estimated() bool { return o.source.Status == working.Estimated }

// Kind tells how the place stands to the threshold.
func (o *FreezeOdds) Kind() PlaceKind {
	switch {
	case o.annual < neverBelow:
		return NeverFreezes
	case o.annual < rareBelow:
		return RarelyFreezes
	}
	last, first := o.lastReaching(float64(Cautious)), o.firstReaching(float64(Cautious))
	if last == DaysPerYear-1 || first == 0 || first-last+DaysPerYear-1 < shortestSeason {
		return FreezesAllYear
	}
	return Freezes
}

// rounding keeps odds that equal a level in exact arithmetic on its right side.
const rounding = 1e-9

// lastReaching returns the last season day on or after which an event comes with
// odds of at least p.
func (o *FreezeOdds) lastReaching(p float64) int {
	i := DaysPerYear - 1
	for i > 0 && o.spring[i] < p-rounding {
		i--
	}
	return i
}

// firstReaching returns the first season day on or before which an event comes
// with odds of at least p.
func (o *FreezeOdds) firstReaching(p float64) int {
	i := 0
	for i < DaysPerYear-1 && o.autumn[i] < p-rounding {
		i++
	}
	return i
}

// SpringRisk returns the odds, over all years, that an event still comes on the
// day or later in its cold season (NOAA: last freeze on or after the date).
func (o *FreezeOdds) SpringRisk(day civil.MonthDay) float64 { return o.spring[o.seasonDay(day)] }

// AutumnRisk returns the odds, over all years, that an event has come by the day
// in its cold season (NOAA: first freeze on or before the date).
func (o *FreezeOdds) AutumnRisk(day civil.MonthDay) float64 { return o.autumn[o.seasonDay(day)] }

// Between returns the odds of at least one event from one date to another, both
// included; it takes spells of cold in different months for independent. Zero
// when to is before from.
func (o *FreezeOdds) Between(from, to civil.Date) float64 {
	if to < from {
		return 0
	}
	years := int(to-from) / DaysPerYear
	sum := 0.0
	if years > 0 {
		whole := 0.0
		for _, h := range o.hazard {
			whole += h
		}
		sum = whole * float64(years)
		from = from.AddDays(years * DaysPerYear)
	}
	for d := from; d <= to; d++ {
		sum += o.hazard[wrap(DayIndex(d)-o.start)]
	}
	return -math.Expm1(-sum)
}

// DailyOdds returns, by day of the year, the odds that the day brings an event
// when the days before it brought none. Over a span of days
// 1 − Π(1 − odds) is the odds of at least one event, as [FreezeOdds.Between].
func (o *FreezeOdds) DailyOdds() *Year {
	y := new(Year)
	for i, h := range o.hazard {
		y[wrap(o.start+i)] = -math.Expm1(-h)
	}
	return y
}

func (o *FreezeOdds) seasonDay(day civil.MonthDay) int { return wrap(MonthDayIndex(day) - o.start) }

// dayOfYear returns the day of the year at a day of the season.
func (o *FreezeOdds) dayOfYear(season int) civil.MonthDay { return MonthDayAt(o.start + season) }
