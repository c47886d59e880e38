package climate

import (
	"math"

	"gonum.org/v1/gonum/stat/distuv"

	"fourturn/planner/working"
)

// knot is one known point of the odds on a side: at this many degrees between
// the curve's level and the threshold, the odds are p; z is the normal quantile
// of p.
type knot struct {
	margin float64
	z      float64
}

// ladder holds the knots of one side at one threshold, by falling margin and so
// by rising odds. Between knots the odds run straight on the normal scale;
// beyond the ends they keep the slope.
type ladder struct {
	threshold float64
	knots     []knot
}

// sideOdds are the ladders of one side by rising threshold. Margins between two
// thresholds are interpolated straight, so that the dates of a colder threshold
// never pass those of a warmer one; beyond the ends the margins stay.
type sideOdds []ladder

// odds returns the odds at a level of the curve for a threshold.
func (s sideOdds) odds(level, threshold float64) float64 {
	return distuv.UnitNormal.CDF(s.z(level, threshold))
}

func (s sideOdds) z(level, threshold float64) float64 {
	i := 0
	for i < len(s) && s[i].threshold < threshold {
		i++
	}
	switch {
	case i == 0:
		return s[0].z(level - threshold)
	case i == len(s):
		return s[i-1].z(level - threshold)
	}
	lower, upper := s[i-1], s[i]
	w := (threshold - lower.threshold) / (upper.threshold - lower.threshold)
	mixed := make([]knot, len(lower.knots))
	for k := range mixed {
		mixed[k] = knot{(1-w)*lower.knots[k].margin + w*upper.knots[k].margin, lower.knots[k].z}
	}
	return ladder{threshold, mixed}.z(level - threshold)
}

func (l ladder) z(margin float64) float64 {
	k := l.knots
	i := 1
	for i < len(k)-1 && k[i].margin > margin {
		i++
	}
	slope := (k[i].z - k[i-1].z) / (k[i].margin - k[i-1].margin)
	return k[i-1].z + slope*(margin-k[i-1].margin)
}

// The calibration of odds from monthly means alone, for 215 US stations that
// have both means and NOAA's dates: the level of the curve at NOAA's even (50 %)
// date, and the distance to that at the 90 % date, as a line in latitude. Rest of
// the levels about the line: spring 1.1 K, autumn 0.9 K. See the package's doc.
const (
	springLevelAt40  = 6.1   // K above the threshold, at 40° of latitude
	springPerDegree  = -0.16 // K per degree of latitude
	autumnLevelAt40  = 5.9   // K above the threshold
	autumnPerDegree  = -0.044
	springSpreadZ    = 1.90 // K per unit of the normal scale: (6.08 − 3.62 K)/1.2816
	autumnSpreadZ    = 2.10 // K: (5.90 − 3.19 K)/1.2816
	calibratedSouth  = 25.0 // degrees of latitude that the calibration reaches down to
	calibratedNorth  = 65.0
	calibratedMiddle = 40.0
)

// estimatedSides returns the odds of both sides from the latitude alone.
func estimatedSides(latitude float64) (spring, autumn sideOdds) {
	north := min(calibratedNorth, max(calibratedSouth, math.Abs(latitude))) - calibratedMiddle
	side := func(level, spread float64) sideOdds {
		return sideOdds{{0, []knot{{level + spread, -1}, {level, 0}, {level - spread, 1}}}}
	}
	return side(springLevelAt40+springPerDegree*north, springSpreadZ),
		side(autumnLevelAt40+autumnPerDegree*north, autumnSpreadZ)
}

// marginOdds works out freeze odds from a curve of minima and what is known of
// its two sides.
type marginOdds struct {
	limbs          *limbs
	spring, autumn sideOdds
	conditional    bool // the sides state odds among years with an event, as NOAA does
	source         working.Source
	basis          []working.Input
}

// at returns the odds for a threshold.
func (m *marginOdds) at(threshold float64) *FreezeOdds {
	o := &FreezeOdds{threshold: threshold, start: m.limbs.start, source: m.source, basis: m.basis}
	c := m.limbs.coldest
	p := m.spring.odds(m.limbs.rising[c], threshold)
	q := m.autumn.odds(m.limbs.falling[c], threshold)
	o.annual = 1 - (1-p)*(1-q)
	scale := 1.0
	if m.conditional {
		o.annual = annualFromConditional(p, q)
		scale = o.annual
	}
	for i := range DaysPerYear {
		o.spring[i] = scale * m.spring.odds(m.limbs.rising[i], threshold)
		o.autumn[i] = scale * m.autumn.odds(m.limbs.falling[i], threshold)
	}
	if !m.conditional {
		spreadOverSeason(o, c)
	}
	o.hazard = hazards(o, c)
	return o
}

// spreadOverSeason puts the two sides together where the sides state odds over
// all years: before the coldest day the odds of an event still to come include
// the rest of the autumn, and the other way round.
func spreadOverSeason(o *FreezeOdds, coldest int) {
	spring, autumn := o.spring, o.autumn
	before, gone := 1.0, 1.0
	for i := range coldest {
		rest := (1 - autumn[coldest]) / survive(before)
		o.spring[i] = 1 - (1-spring[coldest])*min(1, rest)
		before = 1 - autumn[i]
	}
	for i := DaysPerYear - 1; i > coldest; i-- {
		rest := (1 - spring[coldest]) / survive(gone)
		o.autumn[i] = 1 - (1-autumn[coldest])*min(1, rest)
		gone = 1 - spring[i]
	}
	makeMonotone(o)
}

// survive keeps odds of survival above zero, so that they can be divided.
func survive(p float64) float64 { return max(p, 1e-12) }

// annualFromConditional returns the odds A of any event that agree with the odds
// p and q, among years with an event, that one comes after and before the coldest
// day: taking the two for independent, A = 1 − (1 − A·p)(1 − A·q).
func annualFromConditional(p, q float64) float64 {
	if p <= 0 || q <= 0 {
		return 1
	}
	return min(1, max(rareBelow, (p+q-1)/(p*q)))
}

// makeMonotone irons out the seams, so that odds only fall through the season in
// spring and only rise in autumn.
func makeMonotone(o *FreezeOdds) {
	for i := DaysPerYear - 2; i >= 0; i-- {
		o.spring[i] = max(o.spring[i], o.spring[i+1])
	}
	for i := 1; i < DaysPerYear; i++ {
		o.autumn[i] = max(o.autumn[i], o.autumn[i-1])
	}
}

// hazards returns by season day what the day adds to -ln of the odds that no
// event comes: from the autumn side up to the coldest day and from the spring
// side after it.
func hazards(o *FreezeOdds, coldest int) Year {
	var h Year
	before := 0.0
	for i := range coldest {
		now := -math.Log(survive(1 - o.autumn[i]))
		h[i] = max(0, now-before)
		before = now
	}
	after := 0.0
	for i := DaysPerYear - 1; i >= coldest; i-- {
		now := -math.Log(survive(1 - o.spring[i]))
		h[i] = max(0, now-after)
		after = now
	}
	return h
}
