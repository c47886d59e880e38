package climate

import (
	"fourturn/planner/civil"
	"fourturn/planner/working"
)

// The parts of a cold season, in days from its start, in which a last and a first
// freeze can lie: a last one from 1 November on (1 May in the south), a first one
// up to 30 April (31 October). Dates beyond are of the other hemisphere or
// swapped.
const (
	lastNotBefore = 92
	firstNotAfter = 272
)

// check refuses dates without a level and dates that no site of the hemisphere
// has.
func (f FreezeDates) check(southern bool) error {
	if len(f.Last) == 0 && len(f.First) == 0 {
		return &Error{Code: "climate.frost_without_dates"}
	}
	start := seasonStart(southern)
	for _, d := range f.Last {
		if err := d.check(); err != nil {
			return err
		}
		if wrap(MonthDayIndex(d.Day)-start) < lastNotBefore {
			return outOfSeason("climate.last_frost_out_of_season", d.Day)
		}
	}
	for _, d := range f.First {
		if err := d.check(); err != nil {
			return err
		}
		if wrap(MonthDayIndex(d.Day)-start) > firstNotAfter {
			return outOfSeason("climate.first_frost_out_of_season", d.Day)
		}
	}
	return nil
}

func (d FreezeLevel) check() error {
	if d.Day.Month < 1 || d.Day.Month > 12 || d.Day.Day < 1 || d.Day.Day > 31 || !(d.Odds >= 0.01 && d.Odds <= 0.99) {
		return &Error{"climate.freeze_level", map[string]float64{"odds": d.Odds, "month": float64(d.Day.Month), "day": float64(d.Day.Day)}}
	}
	return nil
}

func outOfSeason(code string, d civil.MonthDay) error {
	return &Error{code, map[string]float64{"month": float64(d.Month), "day": float64(d.Day)}}
}

// fromFrost estimates a year of temperatures where only frost dates are known:
// the year of the nearest station of the table, shifted as a whole so that its
// nights agree with the dates by the calibration.
func (b *base) fromFrost(f FreezeDates, site Place) {
	near := Nearest(site, 1)[0].Station
	shift := frostShift(f, Smooth(near.Means.Tmin), site)
	means := near.Means
	for m := range 12 {
		means.Tmin[m] += shift
		means.Tmax[m] += shift
	}
	b.fromMeans(means, working.Source{
		Status: working.Estimated,
		Cite:   "year of the nearest station of the table, " + near.Name + ", shifted to the frost dates",
	})
}

// frostShift returns the mean distance of the curve from where the calibration
// puts it on the dates.
func frostShift(f FreezeDates, tmin *Year, site Place) float64 {
	l := newLimbs(tmin, site.Southern())
	spring, autumn := estimatedSides(site, estimatedDrop(coldestMonth(tmin)))
	sum, n := 0.0, 0.0
	add := func(levels *Year, days []FreezeLevel, guess ladder) {
		for _, d := range days {
			z := normalQuantile(d.Odds)
			margin := guess.knots[1].margin - z*(guess.knots[0].margin-guess.knots[1].margin)
			sum += f.Threshold + margin - levels[l.seasonDay(MonthDayIndex(d.Day))]
			n++
		}
	}
	add(&l.rising, f.Last, spring[0])
	add(&l.falling, f.First, autumn[0])
	return sum / n
}
