package rotation

import (
	"math"

	"fourturn/planner/civil"
)

// DayValue is the expected display of a planting on a day with what it is made of, each
// 0 to 1 and the mean of the parts by their shares: how far it has grown in, what heat
// and age have left, the look of the season, the chance that it is alive.
type DayValue struct {
	Value, Growth, Heat, Age, Season, Alive float64
}

// Story returns the days of a planting from its start up to the day before until. It
// panics when the days lie outside the climate.
func (o *Outlook) Story(p *Planting, start, until civil.Date) []DayValue {
	from, to := o.span(start, until)
	days := make([]DayValue, to-from)
	shares := 0.0
	for _, part := range p.Parts {
		shares += part.Share
		c := o.newCourse(part)
		for i := from; i < to; i++ {
			d := &days[i-from]
			d.Value += part.Share * c.value(i)
			d.Growth += part.Share * c.fullness
			d.Heat += part.Share * math.Exp(c.days.heat[from]-c.days.heat[i])
			d.Age += part.Share * c.fade()
			d.Season += part.Share * c.days.steady[i]
			d.Alive += part.Share * math.Exp(-c.days.danger(from, i, o.params.HardeningDays))
			c.step(i)
		}
	}
	if shares > 0 {
		for k := range days {
			d := &days[k]
			d.Growth, d.Heat, d.Age, d.Season, d.Alive = d.Growth/shares, d.Heat/shares, d.Age/shares, d.Season/shares, d.Alive/shares
		}
	}
	return days
}
