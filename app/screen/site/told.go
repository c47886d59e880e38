package site

import (
	"slices"
	"strings"

	"fourturn/app/words"
	"fourturn/planner"
	"fourturn/planner/civil"
	"fourturn/planner/climate"
	"fourturn/planner/quantity"
	"fourturn/planner/working"
)

// Figure is a value with its working, written out.
type Figure struct {
	Label  string
	Value  string
	Note   string
	Soft   bool
	Figure planner.Figure
}

// figure writes a figure out, under its own name where no other is given.
func (s *Screen) figure(f planner.Figure, label string) Figure {
	trace := f.Working()
	if label == "" {
		label = words.Capital(s.words.T(trace.Name))
	}
	return Figure{Label: label, Value: s.value(trace.Name, f.Value), Soft: trace.Soft(), Figure: f}
}

// value writes a figure of the site: days that come every year have no year.
func (s *Screen) value(name string, v working.Value) string {
	if v.Unit == working.DayNumber {
		return s.words.ShortDate(v.Date)
	}
	return s.words.Named(name, v, s.units())
}

// Told returns what has to be said of the place's year where it is not the usual one:
// that there is no frost, that no part of the year is safe from it, that a season does
// not exist there and why.
func (s *Screen) Told() []string {
	out := s.Outlook()
	if out == nil {
		return nil
	}
	var list []string
	for _, key := range out.Told {
		list = append(list, s.words.T("site.told."+strings.TrimPrefix(key, "climate.")))
	}
	for _, season := range out.Seasons {
		if season.Exists && !season.AllYear {
			continue
		}
		key := "site.told.no_season"
		if season.AllYear {
			key = "site.told.all_year"
		}
		list = append(list, s.words.T(key, words.A{
			"season": s.words.T("plan.season." + string(season.Season)), "reason": s.words.T(season.Reason),
		}))
	}
	if out.Warmth || out.Estimated && !slices.Contains(out.Told, climate.NeverFreezes.Key()) {
		key := "site.told.estimated"
		if !out.Warmth {
			key = "site.told.freezes_estimated"
		}
		list = append(list, s.words.T(key))
	}
	return list
}

// Season is one planting season at the site.
type Season struct {
	Index  int
	Name   string
	Exists bool
	Start  Figure
	Spread string
	Reason string
	From   civil.Date
}

// Seasons returns the four planting seasons.
func (s *Screen) Seasons() []Season {
	s.settleRisk()
	out := s.Outlook()
	if out == nil {
		return nil
	}
	var list []Season
	for i, season := range out.Seasons {
		one := Season{Index: i, Name: s.words.T("plan.season." + string(season.Season)), Exists: season.Exists, Reason: words.Capital(s.words.T(season.Reason))}
		switch {
		case !season.Start.IsZero():
			one.From = season.Start.Value.Date
			one.Start = s.figure(season.Start, one.Name)
			one.Spread = s.words.T("site.spread", words.A{"range": s.words.DateRange(season.Earliest, season.Latest)})
		case season.AllYear:
			one.Start = Figure{Label: one.Name, Value: s.words.T("site.all_year")}
		default:
			one.Start = Figure{Label: one.Name, Value: s.words.T("site.no_season")}
		}
		list = append(list, one)
	}
	return list
}

// Reading writes out one day of the year: day of the axis, from 0.
func (s *Screen) Reading(day int) (heading string, lines []string) {
	out := s.Outlook()
	if out == nil || day < 0 || day >= len(out.Low) {
		return "", nil
	}
	date := civil.New(s.Today().Year(), 1, 1).AddDays(day)
	lines = []string{
		s.words.T("site.read_temperature", words.A{"low": s.temperature(out.Low[day]), "high": s.temperature(out.High[day])}),
		s.words.T("site.read_freeze", words.A{"odds": s.words.Percent(out.Freeze[day])}),
		s.words.T("site.read_daylight", words.A{"hours": s.words.Value(working.Number(out.Daylight[day], working.Hour), s.units())}),
	}
	return s.words.ShortDate(date), lines
}

// ReadingAt writes out a temperature: the last and the first night at or below it, at
// the risk.
func (s *Screen) ReadingAt(c float64) []string {
	out := s.Outlook()
	if out == nil {
		return nil
	}
	at := Screen{session: s.session, words: s.words, chosen: s.chosen, tried: s.tried, threshold: quantity.Temperature(c)}
	freezes := at.freezesOf(out.Climate())
	return []string{
		s.words.T("site.read_at", words.A{"threshold": s.temperature(c), "risk": s.words.Percent(float64(s.Risk()) / 100)}),
		s.words.T("site.read_last", words.A{"date": freezes[0].Value}), s.words.T("site.read_first", words.A{"date": freezes[1].Value}),
	}
}

func (s *Screen) temperature(c float64) string {
	return s.words.Temperature(quantity.Temperature(c), s.units())
}

// Scale returns values of a temperature scale that holds the year, with their labels,
// in steps of 5 °C or 10 °F.
func (s *Screen) Scale() (values []float64, labels []string) {
	out := s.Outlook()
	if out == nil {
		return nil, nil
	}
	low, high := out.Low[0], out.High[0]
	for i := range out.Low {
		low, high = min(low, out.Low[i]), max(high, out.High[i])
	}
	step, from := 5.0, 0.0
	if s.units() == quantity.USCustomary {
		step, from = 10/1.8, -32/1.8
	}
	for from > low {
		from -= step
	}
	for from+step <= low {
		from += step
	}
	for v := from; ; v += step {
		values = append(values, v)
		labels = append(labels, s.temperature(v))
		if v >= high {
			return values, labels
		}
	}
}

// Month is the first day of a month on the axis.
type Month struct {
	Day   int
	Label string
}

// Months returns the months of the axis.
func (s *Screen) Months() []Month {
	var list []Month
	first := civil.New(s.Today().Year(), 1, 1)
	for m := range 12 {
		d := first.AddMonths(m)
		list = append(list, Month{Day: int(d - first), Label: s.words.ShortMonth(d.Month())})
	}
	return list
}

// MonthRow is a month in the table of the year.
type MonthRow struct {
	Name                                        string
	Low, High, Daylight, Radiation, Evaporation Figure
	Rain                                        string
}

// MonthRows returns the months as they normally are, with what the sun brings.
func (s *Screen) MonthRows() []MonthRow {
	out := s.Outlook()
	if out == nil {
		return nil
	}
	var list []MonthRow
	for _, m := range out.Months {
		row := MonthRow{
			Name: s.words.Month(m.Month), Low: s.figure(m.Low, ""), High: s.figure(m.High, ""), Daylight: s.figure(m.Daylight, ""),
			Radiation: s.figure(m.Radiation, ""), Evaporation: s.figure(m.Evaporation, ""),
		}
		if m.RainKnown {
			row.Rain = s.rain(m.Rain)
		}
		list = append(list, row)
	}
	return list
}

// rain writes the rain of a month.
func (s *Screen) rain(millimetres float64) string {
	if s.units() == quantity.USCustomary {
		return s.words.T("site.rain_in", words.A{"depth": s.words.Number(millimetres/25.4, 1)}) // mm in an inch
	}
	return s.words.T("site.rain_mm", words.A{"depth": s.words.Number(millimetres, 0)})
}

// Degree returns the step of one degree in the person's unit, in kelvin, and where such
// steps begin, in °C.
func (s *Screen) Degree() (step, zero float64) {
	if s.units() == quantity.USCustomary {
		return degreeF, -32 * degreeF
	}
	return 1, 0
}
