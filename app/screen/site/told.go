package site

import (
	"strings"

	"fourturn/app/words"
	"fourturn/planner"
	"fourturn/planner/civil"
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

// Figures returns the freeze dates and the length of the season.
func (s *Screen) Figures() []Figure {
	out := s.Outlook()
	if out == nil {
		return nil
	}
	var list []Figure
	for _, f := range out.Figures {
		trace := f.Working()
		list = append(list, Figure{
			Label: words.Capital(s.words.T(trace.Name)), Value: s.value(trace.Name, f.Value), Soft: trace.Soft(), Figure: f,
		})
	}
	return list
}

// value writes a figure of the site: days that come every year have no year.
func (s *Screen) value(name string, v working.Value) string {
	if v.Unit == working.DayNumber {
		return s.words.ShortDate(v.Date)
	}
	return s.words.Named(name, v, s.session.Plan().Units)
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
	out := s.Outlook()
	if out == nil {
		return nil
	}
	var list []Season
	for i, season := range out.Seasons {
		one := Season{Index: i, Name: s.words.T("plan.season." + string(season.Season)), Exists: season.Exists, Reason: words.Capital(s.words.T(season.Reason))}
		if !season.Start.IsZero() {
			trace := season.Start.Working()
			one.From = season.Start.Value.Date
			one.Start = Figure{Label: one.Name, Value: s.words.ShortDate(one.From), Soft: trace.Soft(), Figure: season.Start}
			one.Spread = s.words.T("site.spread", words.A{"range": s.words.DateRange(season.Earliest, season.Latest)})
		} else {
			one.Start = Figure{Label: one.Name, Value: s.words.T("site.no_season")}
		}
		list = append(list, one)
	}
	return list
}

// Source says where the climate is from.
func (s *Screen) Source() string {
	out := s.Outlook()
	if out == nil {
		return ""
	}
	key := "site.source"
	if out.Estimated {
		key = "site.source_estimated"
	}
	cite := out.Source.Cite
	if out.Period != "" && !strings.Contains(cite, out.Period) {
		cite += ", " + out.Period
	}
	return s.words.T(key, words.A{"place": out.Place, "source": cite})
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
		s.words.T("site.read_daylight", words.A{"hours": s.words.Value(working.Number(out.Daylight[day], working.Hour), s.session.Plan().Units)}),
	}
	return s.words.ShortDate(date), lines
}

func (s *Screen) temperature(c float64) string {
	return s.words.Temperature(quantity.Temperature(c), s.session.Plan().Units)
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
	if s.session.Plan().Units == quantity.USCustomary {
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
