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
	return c.left * c.days.steady[i] * c.fade() * c.fullness
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

// run fills values with the display on the days from i on and takes the part
// through them.
func (c *course) run(i int, values []float64) {
	if c.plant.Cut || c.plant.Bulb != nil {
		for k := range values {
			values[k] = c.value(i + k)
			c.step(i + k)
		}
		return
	}
	for len(values) > 0 {
		// A stretch of days on which neither the hardening nor the fading begins.
		n := len(values)
		keep := c.days.keep
		if c.stood < c.params.HardeningDays {
			keep = c.days.keepSoft
			n = min(n, c.params.HardeningDays-c.stood)
		}
		fading := c.age > c.life
		if !fading && c.life-c.age < float64(n) {
			n = min(n, int(c.life-c.age)+1)
		}
		if fading {
			c.runFading(values[:n], keep[i:i+n], c.days.steady[i:i+n])
		} else {
			c.runFull(values[:n], keep[i:i+n], c.days.steady[i:i+n])
		}
		c.runGrowth(values[:n], c.days.growth[i:i+n])
		c.stood += n
		values, i = values[n:], i+n
	}
}

// runFull fills in health and season of days before the fading.
func (c *course) runFull(values, keep, steady []float64) {
	left := c.left
	for k := range values {
		values[k] = left * steady[k]
		left *= keep[k]
	}
	c.left = left
	c.age += float64(len(values))
}

func (c *course) runFading(values, keep, steady []float64) {
	for k := range values {
		values[k] = c.left * steady[k] * c.fade()
		c.left *= keep[k]
		c.age++
	}
}

// runGrowth multiplies in the fullness.
func (c *course) runGrowth(values, growth []float64) {
	for k := range values {
		if c.fullness >= 1 {
			return
		}
		values[k] *= c.fullness
		c.fullness = min(1, c.fullness+c.perDay*growth[k])
	}
}
