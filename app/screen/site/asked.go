package site

import (
	"strconv"
	"strings"

	"fourturn/app/words"
	"fourturn/planner"
	"fourturn/planner/climate"
	"fourturn/planner/quantity"
	"fourturn/planner/working"
)

// The thresholds, limits and runs that may be asked for.
const (
	coldestAsked quantity.Temperature = -60
	hottestAsked quantity.Temperature = 60
	longestRun                        = 60 // days
)

// Threshold returns the temperature whose last and first days are shown.
func (s *Screen) Threshold() string { return s.words.Temperature(s.threshold, s.units()) }

// SetThreshold asks for the days of another temperature.
func (s *Screen) SetThreshold(typed string) error {
	t, err := s.readTemperature(typed, firstThreshold)
	if err == nil {
		s.threshold = t
	}
	return err
}

// readTemperature reads a temperature; nothing typed is the usual one.
func (s *Screen) readTemperature(typed string, usual quantity.Temperature) (quantity.Temperature, error) {
	if strings.TrimSpace(typed) == "" {
		return usual, nil
	}
	t, err := s.words.Reader().Temperature(typed, s.units())
	if err != nil {
		return 0, s.words.Unread(err)
	}
	if t < coldestAsked || t > hottestAsked {
		return 0, &words.Refusal{Text: s.words.T("site.range", words.A{
			"lowest": s.words.Temperature(coldestAsked, s.units()), "highest": s.words.Temperature(hottestAsked, s.units()),
		})}
	}
	return t, nil
}

// Freezes returns the last and the first day at or below the threshold at the risk, how
// long lies between them, and in how many years it comes at all.
func (s *Screen) Freezes() []Figure {
	out := s.Outlook()
	if out == nil {
		return nil
	}
	return s.freezesOf(out.Climate())
}

func (s *Screen) freezesOf(c *climate.Climate) []Figure {
	risk := climate.Risk(float64(s.Risk()) / 100)
	odds := c.Freeze(s.threshold)
	free := odds.FreeDays(1 - risk)
	list := []Figure{
		s.freezeDate(odds.LastFreeze(risk), "site.last_at"), s.freezeDate(odds.FirstFreeze(risk), "site.first_at"),
		s.figure(planner.NewFigure(working.Number(float64(free.Days), working.Day), free.Working), s.words.T("site.free_at")),
	}
	list[2].Note = s.words.T("site.free_note", words.A{"odds": s.words.Percent(1 - float64(risk))})
	return append(list, Figure{Label: s.words.T("site.years_at"), Value: s.words.Percent(odds.Annual()), Soft: odds.Estimated()})
}

// freezeDate writes a date, or why there is none, with the error of an estimate.
func (s *Screen) freezeDate(d climate.FreezeDate, label string) Figure {
	heading := s.words.T(label, words.A{"threshold": s.words.Temperature(s.threshold, s.units())})
	if !d.Known() {
		return Figure{Label: heading, Value: s.words.T("site.no_date"), Note: words.Capital(s.words.T(d.Outcome.Key()))}
	}
	f := s.figure(planner.DateFigure(d, s.Today()), heading)
	if days := d.Uncertainty(); days > 0 {
		f.Note = s.words.T("site.uncertain", words.A{"days": s.words.Days(days)})
	}
	return f
}

// Run returns the run of hot days that is asked for: how many days, above what.
func (s *Screen) Run() (days, above string) {
	return strconv.Itoa(s.spell.Days), s.words.Temperature(s.spell.Above, s.units())
}

// SetRunDays asks for another length of hot runs.
func (s *Screen) SetRunDays(typed string) error {
	n, err := strconv.Atoi(strings.TrimSpace(typed))
	if err != nil || n < 1 || n > longestRun {
		return &words.Refusal{Text: s.words.T("site.run_range", words.A{"most": longestRun})}
	}
	s.spell.Days = n
	return nil
}

// SetRunAbove asks for runs of other heat.
func (s *Screen) SetRunAbove(typed string) error {
	t, err := s.readTemperature(typed, firstHot)
	if err == nil {
		s.spell.Above = t
	}
	return err
}

// Heat returns the odds of a run of hot days in a year and the day by which it has come
// with the odds of the risk.
func (s *Screen) Heat() []Figure {
	out := s.Outlook()
	if out == nil {
		return nil
	}
	risk := out.Climate().HotSpellRisk(s.spell)
	odds := s.figure(planner.NewFigure(working.Number(risk.Odds, working.Share), risk.Working), s.words.T("site.run_odds"))
	by := Figure{Label: s.words.T("site.run_by", words.A{"odds": s.words.Percent(float64(s.Risk()) / 100)}), Value: s.words.T("site.no_date"), Soft: risk.Estimated()}
	if day, ok := risk.By(climate.Risk(float64(s.Risk()) / 100)); ok {
		by.Value = s.words.ShortDate(day.In(s.Today().Year()))
	}
	return []Figure{odds, by}
}

// Extremes returns the mean yearly lowest temperature, the hardiness zone, the days of
// heat and the heat zone.
func (s *Screen) Extremes() []Figure {
	out := s.Outlook()
	if out == nil {
		return nil
	}
	var list []Figure
	for i, f := range out.Extremes {
		label := ""
		if i == 2 { // of the days above a limit, the limit
			label = s.words.T("site.days_above", words.A{"limit": s.words.Temperature(firstHot, s.units())})
		}
		list = append(list, s.figure(f, label))
	}
	return list
}
