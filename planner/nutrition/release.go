package nutrition

import "math"

// curve is the release of the coated part of a product over its age in days at the
// reference temperature: nothing during the lag, then a steady rate up to the knee,
// then a decay that starts at that rate.
type curve struct {
	lag, steady, rate float64
	uncoated          float64 // share that dissolves at once
}

// curve fits the three phases so that the rated share is out at the end of the
// rating: rate × (L − lag) = s + (1 − s) × ln((1 − s)/(1 − rated)). It panics on a
// longevity that is not above zero, and on a coated share outside 0 to 1.
func (p SlowRelease) curve(k Kinetics) curve {
	k.check()
	if !(p.Longevity > 0) {
		panic("nutrition: a longevity must be above zero")
	}
	if !(p.Coated > 0 && p.Coated <= 1) {
		panic("nutrition: a coated share must be from 0 to 1")
	}
	life := p.Longevity * monthDays
	lag := min(k.Lag, life/4) // a rating of days cannot hold a lag of days
	shape := k.Steady + (1-k.Steady)*math.Log((1-k.Steady)/(1-k.Rated))
	return curve{lag: lag, steady: k.Steady, rate: shape / (life - lag), uncoated: 1 - p.Coated}
}

// knee is the age at which the decay begins.
func (c curve) knee() float64 { return c.lag + c.steady/c.rate }

// released returns the share of all nutrients that is out at an age.
func (c curve) released(age float64) float64 {
	if !(age > 0) {
		return 0
	}
	coated := 0.0
	switch {
	case age <= c.lag:
	case age <= c.knee():
		coated = c.rate * (age - c.lag)
	default:
		coated = 1 - (1-c.steady)*math.Exp(-c.rate*(age-c.knee())/(1-c.steady))
	}
	return c.uncoated + (1-c.uncoated)*coated
}

// ageAt returns the age at which a share of all nutrients is out, the inverse of
// released. The share must be below 1.
func (c curve) ageAt(share float64) float64 {
	coated := (share - c.uncoated) / (1 - c.uncoated)
	switch {
	case coated <= 0:
		return 0
	case coated <= c.steady:
		return c.lag + coated/c.rate
	}
	return c.knee() + (1-c.steady)/c.rate*math.Log((1-c.steady)/(1-coated))
}
