package rotation

import (
	"math"

	"fourturn/planner/civil"
)

// Curve returns the expected display value, 0 to 1, of each day from start up to
// the day before until, of a planting put out on the day start. It panics when the
// days lie outside the climate.
func (o *Outlook) Curve(p *Planting, start, until civil.Date) []float64 {
	from, to := o.span(start, until)
	curve, own := make([]float64, to-from), make([]float64, to-from)
	for _, part := range p.Parts {
		c := o.newCourse(part)
		c.run(from, own)
		for k, v := range own {
			curve[k] += part.Share * v
		}
	}
	return curve
}

// Value returns the expected display value on one day of a planting put out on
// the day start; 0 before that day.
func (o *Outlook) Value(p *Planting, start, day civil.Date) float64 {
	if day < start {
		return 0
	}
	curve := o.Curve(p, start, day.AddDays(1))
	return curve[len(curve)-1]
}

// Alive returns the chance that a plant put out on the day start still lives on
// the morning of a later day.
func (o *Outlook) Alive(p *Plant, start, day civil.Date) float64 {
	from, to := o.span(start, day)
	return math.Exp(-o.plant(p).danger(from, to, o.params.HardeningDays))
}

// Fullness returns how far a part has grown in on a day, 0 to 1, were it alive.
func (o *Outlook) Fullness(part Part, start, day civil.Date) float64 {
	from, to := o.span(start, day)
	c := o.newCourse(part)
	for i := from; i < to; i++ {
		c.step(i)
	}
	return c.fullness
}

// danger is the sum of the intensities of killing cold from day s up to day t of
// a plant put out on day s.
func (d *plantDays) danger(s, t, hardeningDays int) float64 {
	hardens := min(s+hardeningDays, t)
	return d.soft[hardens] - d.soft[s] + d.hard[t] - d.hard[hardens]
}

// MayStart reports whether a planting may go out on a day at a risk: each plant is
// sold, the mean night is warm enough for it and the mean day not too hot, and the chance that cold kills it
// within the days that it takes to settle is at most the risk.
func (o *Outlook) MayStart(p *Planting, day civil.Date, risk float64) bool {
	if !within(p.Out, day) {
		return false
	}
	i, _ := o.span(day, day.AddDays(1))
	for _, part := range p.Parts {
		days := o.plant(part.Plant)
		if !days.mayStart[i] || o.settlingRisk(days, i) > risk {
			return false
		}
	}
	return true
}

// SettlingRisk returns the chance that cold kills a plant put out on the day
// before it has settled.
func (o *Outlook) SettlingRisk(p *Plant, day civil.Date) float64 {
	i, _ := o.span(day, day.AddDays(1))
	return o.settlingRisk(o.plant(p), i)
}

func (o *Outlook) settlingRisk(d *plantDays, i int) float64 {
	until := min(i+o.params.SettleDays, len(d.keep))
	return -math.Expm1(-d.danger(i, until, o.params.HardeningDays))
}

// span returns two days as positions in the climate.
func (o *Outlook) span(from, to civil.Date) (int, int) {
	i, j := o.index(from), o.index(to)
	if i < 0 || j > o.climate.days() || i > j {
		panic("rotation: days outside the climate")
	}
	return i, j
}
