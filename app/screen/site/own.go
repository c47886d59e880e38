package site

import (
	"strings"
	"time"

	"fourturn/app/words"
	"fourturn/planner"
	"fourturn/planner/civil"
	"fourturn/planner/climate"
	"fourturn/planner/quantity"
)

// Frost returns the person's own last and first frost, written MM-DD, or "".
func (s *Screen) Frost() (last, first string) {
	site := s.Chosen()
	if site == nil {
		return "", ""
	}
	return site.Frost.Last.String(), site.Frost.First.String()
}

// SetFrost takes the person's own last (or first) frost.
func (s *Screen) SetFrost(last bool, typed string) error {
	var day civil.MonthDay
	if typed = strings.TrimSpace(typed); typed != "" {
		parsed, err := civil.ParseMonthDay(typed)
		if err != nil {
			return &words.Refusal{Text: s.words.T("site.frost_format")}
		}
		day = parsed
	}
	return s.edit("site.edit_frost", func(site *planner.Site) {
		if last {
			site.Frost.Last = day
		} else {
			site.Frost.First = day
		}
	})
}

// FrostLevels returns the words for how the person's own frost dates are meant, with
// the number of the one that holds.
func (s *Screen) FrostLevels() (list []string, chosen int) {
	chosen = 1 // even
	for i, mark := range s.RiskMarks() {
		list = append(list, mark.Label)
		if site := s.Chosen(); site != nil && percent(site.Frost.Odds) == mark.Percent {
			chosen = i
		}
	}
	return list, chosen
}

// SetFrostLevel says how the own dates are meant, by the number of the words.
func (s *Screen) SetFrostLevel(i int) error {
	marks := s.RiskMarks()
	if i < 0 || i >= len(marks) {
		return nil
	}
	odds := float64(marks[i].Percent) / 100
	if odds == float64(climate.Even) {
		odds = 0
	}
	return s.edit("site.edit_frost", func(site *planner.Site) { site.Frost.Odds = odds })
}

// MeanField is one of the 24 means that a person may type.
type MeanField struct {
	Label string
	Value string // as typed by the person, or ""
	Help  string // what stands in for it where nothing is typed
}

// Means returns the fields of the monthly means: twelve minima, then twelve maxima.
func (s *Screen) Means() []MeanField {
	var list []MeanField
	out, site := s.Outlook(), s.Chosen()
	for k := range 24 {
		month, high := k%12, k >= 12
		key := "site.mean_low"
		if high {
			key = "site.mean_high"
		}
		f := MeanField{Label: s.words.T(key, words.A{"month": s.words.ShortMonth(time.Month(month + 1))})}
		if site != nil {
			if t := typed(site, month, high); t != nil {
				f.Value = s.words.Temperature(*t, s.units())
			}
		}
		if out != nil && f.Value == "" {
			figure := out.Months[month].Low
			if high {
				figure = out.Months[month].High
			}
			f.Help = s.meanHelp(figure, site)
		}
		list = append(list, f)
	}
	return list
}

// meanHelp says what is used for a month that was not typed.
func (s *Screen) meanHelp(f planner.Figure, site *planner.Site) string {
	value := s.words.Temperature(quantity.Temperature(f.Number()), s.units())
	if len(site.Means) > 0 {
		return "≈ " + value
	}
	return value
}

// typed returns the mean that was typed for a month, or nil.
func typed(site *planner.Site, month int, high bool) *quantity.Temperature {
	for _, m := range site.Means {
		if m.Month.Index() != month {
			continue
		}
		if high {
			return m.Tmax
		}
		return m.Tmin
	}
	return nil
}

// SetMean takes a mean by the number of its field; nothing typed takes it away.
func (s *Screen) SetMean(field int, text string) error {
	site := s.Chosen()
	if site == nil || field < 0 || field >= 24 {
		return nil
	}
	month, high := field%12, field >= 12
	var value *quantity.Temperature
	if strings.TrimSpace(text) != "" {
		t, err := s.readTemperature(text, 0)
		if err != nil {
			return err
		}
		value = &t
		other := typed(site, month, !high)
		if other != nil && (high && *other > t || !high && *other < t) {
			return &words.Refusal{Text: s.words.T("site.mean_crossed")}
		}
	}
	return s.edit("site.edit_means", func(site *planner.Site) { site.Means = withMean(site.Means, month, high, value) })
}

// withMean returns the months with one mean changed, in the order of the year.
func withMean(old []planner.MonthMeans, month int, high bool, value *quantity.Temperature) []planner.MonthMeans {
	var list []planner.MonthMeans
	for i, name := range planner.Months {
		m := planner.MonthMeans{Month: name}
		for _, was := range old {
			if was.Month == name {
				m = was
			}
		}
		if i == month && high {
			m.Tmax = value
		} else if i == month {
			m.Tmin = value
		}
		if m.Tmin != nil || m.Tmax != nil {
			list = append(list, m)
		}
	}
	return list
}

// HasMeans reports whether the site has means that were typed.
func (s *Screen) HasMeans() bool {
	site := s.Chosen()
	return site != nil && len(site.Means) > 0
}

// ClearMeans takes all typed means away.
func (s *Screen) ClearMeans() error {
	return s.edit("site.edit_means", func(site *planner.Site) { site.Means = nil })
}
