package rotation

import "math"

// course walks one part of a planting through its days from the day of planting.
type course struct {
	days     *plantDays
	plant    *Plant
	params   *Params
	start    float64 // fullness as bought
	perDay   float64 // fullness gained in a day at the reference temperature
	life     float64 // age in days at which it begins to fade; infinite where the weather alone decides
	fullness float64
	left     float64 // chance to be alive, times what heat has left of the display
	age      float64 // days since planting; of cut stems at the reference temperature
	chilled  float64
	forced   float64
	flowered float64
	stood    int
}

func (o *Outlook) newCourse(part Part) course {
	size := part.Plant.Sizes[part.Size]
	c := course{
		days:   o.plant(part.Plant),
		plant:  part.Plant,
		params: &o.params,
		start:  size.Fullness,
		life:   math.Inf(1),
		left:   1,
	}
	if c.start == 0 {
		c.start = o.params.Fullness
	}
	if part.Plant.Cut {
		c.start = 1
	}
	c.fullness = c.start
	if size.WeeksToFull > 0 {
		c.perDay = (1 - c.start) / (7 * size.WeeksToFull)
	} else {
		c.fullness = 1
	}
	switch {
	case part.Plant.DisplayWeeks == 0 && (part.Plant.Overwinters || part.Plant.Cut || part.Plant.Bulb != nil):
	case part.Plant.DisplayWeeks == 0:
		c.life = 7 * o.params.AnnualWeeks
	case part.Plant.Cut || part.Plant.Bulb != nil:
		c.life = 7 * part.Plant.DisplayWeeks
	default:
		c.life = 7 * (size.WeeksToFull + part.Plant.DisplayWeeks)
	}
	if part.Plant.Bulb != nil && part.Plant.DisplayWeeks == 0 {
		c.life = float64(o.params.BulbFlowerDays)
	}
	return c
}

// value returns the display on day i of the climate, before the part is shared.
func (c *course) value(i int) float64 {
	if c.plant.Bulb != nil {
		return c.left * c.days.steady[i] * c.flower()
	}
	return c.left * c.days.steady[i] * c.fullness * c.fade()
}

// fade is 1 through the display weeks and then falls in a line to nothing.
func (c *course) fade() float64 {
	if c.age <= c.life {
		return 1
	}
	return max(0, 1-(c.age-c.life)/float64(max(c.params.FadeDays, 1)))
}

// flower is 1 while a chilled and warmed bulb flowers.
func (c *course) flower() float64 {
	if c.flowered > 0 && c.flowered <= c.life {
		return 1
	}
	return 0
}

// step takes the part through day i.
func (c *course) step(i int) {
	if c.stood < c.params.HardeningDays {
		c.left *= c.days.keepSoft[i]
	} else {
		c.left *= c.days.keep[i]
	}
	c.stood++
	switch {
	case c.plant.Cut:
		c.age += c.days.ageing[i]
	case c.plant.Bulb != nil:
		c.stepBulb(i)
	default:
		c.age++
		c.fullness = min(1, c.fullness+c.perDay*c.days.growth[i])
	}
}

func (c *course) stepBulb(i int) {
	need := 7 * c.plant.Bulb.ChillWeeks
	switch {
	case c.forced >= c.plant.Bulb.HeatSum && c.chilled >= need:
		c.flowered++
	case c.chilled >= need:
		c.forced += c.days.forcing[i]
		if c.forced >= c.plant.Bulb.HeatSum {
			c.flowered = 1
		}
	default:
		c.chilled += c.days.chill[i]
	}
}
