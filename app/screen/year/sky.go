package year

import (
	"math"

	"fourturn/app/words"
	"fourturn/planner"
	"fourturn/planner/civil"
	"fourturn/planner/quantity"
)

// Sky is the weather over the strips, as it normally is: one value for each day of the
// span. It is empty where no climate is known.
type Sky struct {
	Name      string
	Low, High []float64 // °C
	Freeze    []float64 // odds
	Values    []float64 // °C, of the scale
	Labels    []string
}

// site returns the site of the pot that is looked at, or the first with a climate.
func (s *Screen) site() *planner.SiteOutlook {
	all := s.outlook()
	if all == nil {
		return nil
	}
	if i := all.Plan.PotIndex(s.chosen); i >= 0 && all.Pots[i].Site != nil && all.Pots[i].Site.Known {
		return all.Pots[i].Site
	}
	for i := range all.Sites {
		if all.Sites[i].Known {
			return &all.Sites[i]
		}
	}
	return nil
}

// Sky returns the weather of the site of the pot that is looked at, or of the first.
func (s *Screen) Sky() Sky {
	site := s.site()
	if site == nil {
		return Sky{}
	}
	first, last := s.Span()
	days := int(last - first)
	sky := Sky{Name: site.Site.Label(), Low: make([]float64, days), High: make([]float64, days), Freeze: make([]float64, days)}
	low, high := site.Low[0], site.High[0]
	for d := range days {
		k := normalDay(first.AddDays(d))
		sky.Low[d], sky.High[d], sky.Freeze[d] = site.Low[k], site.High[k], site.Freeze[k]
		low, high = min(low, site.Low[k]), max(high, site.High[k])
	}
	sky.Values, sky.Labels = s.scale(low, high)
	return sky
}

// normalDay returns the number of a day in the lists of a common year, from 0.
func normalDay(d civil.Date) int { return d.MonthDay().YearDay() - 1 }

// scale returns few values of a temperature scale that holds the year: the freezing
// point is one of them, and the ends hold all there is.
func (s *Screen) scale(low, high float64) (values []float64, labels []string) {
	step := 15.0 // °C
	if s.session.Plan().Units == quantity.USCustomary {
		step = 25 / 1.8 // 25 °F
	}
	from, to := 0.0, step
	for from > low {
		from -= step
	}
	for to < high {
		to += step
	}
	const slack = 0.01 // of a degree, in sums of steps
	for v := from; v <= to+slack; v += step {
		values = append(values, v)
		labels = append(labels, s.temperature(v))
	}
	return values, labels
}

// temperature writes out a temperature in whole degrees.
func (s *Screen) temperature(c float64) string {
	system := s.session.Plan().Units
	if system == quantity.USCustomary {
		const perKelvin, zero = 1.8, 32 // °F
		c = (math.Round(c*perKelvin+zero) - zero) / perKelvin
	} else {
		c = math.Round(c)
	}
	return s.words.Temperature(quantity.Temperature(c), system)
}

// Reading writes out the weather of a day in few lines.
func (s *Screen) Reading(day civil.Date) []string {
	site := s.site()
	if site == nil {
		return nil
	}
	k := normalDay(day)
	return []string{
		s.words.ShortDate(day),
		s.words.T("year.read_temperature", words.A{"low": s.temperature(site.Low[k]), "high": s.temperature(site.High[k])}),
		s.words.T("year.read_freeze", words.A{"odds": s.words.Percent(site.Freeze[k])}),
	}
}
