package climate

import (
	"math"

	"gonum.org/v1/gonum/stat/distuv"

	"fourturn/planner/quantity"
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

// at returns the ladder of a threshold.
func (s sideOdds) at(threshold float64) ladder {
	i := 0
	for i < len(s) && s[i].threshold < threshold {
		i++
	}
	switch {
	case i == 0:
		return ladder{threshold, s[0].knots}
	case i == len(s):
		return ladder{threshold, s[i-1].knots}
	}
	lower, upper := s[i-1], s[i]
	w := (threshold - lower.threshold) / (upper.threshold - lower.threshold)
	mixed := make([]knot, len(lower.knots))
	for k := range mixed {
		mixed[k] = knot{(1-w)*lower.knots[k].margin + w*upper.knots[k].margin, lower.knots[k].z}
	}
	return ladder{threshold, mixed}
}

// odds returns the odds at a level of the curve.
func (l ladder) odds(level float64) float64 {
	return distuv.UnitNormal.CDF(l.z(level - l.threshold))
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

// calibration is a line through the levels of the curve, in kelvin above the
// threshold, at which freezes end or begin.
type calibration struct {
	level      float64 // at 40° of latitude, at sea level, with a drop of 11 K: the even (50 %) date
	perDegree  float64 // K per degree of latitude
	perDrop    float64 // K per K of the yearly extreme's drop
	perKm      float64 // K per km of height
	spread     float64 // K per unit of the normal scale, with a drop of 11 K
	spreadDrop float64 // per K of drop
	north      float64 // degrees of latitude up to which the line holds
}

// The calibration of odds from monthly means alone. Least squares through NOAA's
// 50 and 90 % dates 1981-2010 at 245 US stations and through the odds, at three
// thresholds, of twelve daily series in the US, France, Ireland, Canada, Germany
// and Australia; see the package's doc.
var (
	springCalibration = calibration{6.04, -0.191, 0.150, -0.63, 1.80, 0.162, 48}
	autumnCalibration = calibration{5.99, -0.078, 0.176, -1.10, 1.92, 0.080, 65}
)

// calibrationRest is how far single stations lie from the lines, K (standard
// deviation: 0.7 to 1.0 K at the US stations, 1.0 to 1.2 K at the series).
const calibrationRest = 1.1

// How far the calibration reaches; beyond, the nearest end is taken.
const (
	calibratedSouth                 = 25.0        // degrees of latitude
	calibratedMild, calibratedHarsh = 5.0, 15.0   // K of drop
	calibratedLow, calibratedHigh   = 0.0, 2200.0 // m
)

// side returns the odds of one side at a site.
func (k calibration) side(site Place, drop float64) sideOdds {
	north := clamp(math.Abs(site.Latitude), calibratedSouth, k.north) - 40
	harsh := clamp(drop, calibratedMild, calibratedHarsh) - 11
	km := clamp(float64(site.Elevation), calibratedLow, calibratedHigh) / 1000
	level := k.level + k.perDegree*north + k.perDrop*harsh + k.perKm*km
	spread := k.spread + k.spreadDrop*harsh
	return sideOdds{{0, []knot{{level + spread, -1}, {level, 0}, {level - spread, 1}}}}
}

// estimatedSides returns the odds of both sides from where a site is and how far
// its yearly extreme drops below the coldest month.
func estimatedSides(site Place, drop float64) (spring, autumn sideOdds) {
	return springCalibration.side(site, drop), autumnCalibration.side(site, drop)
}

func clamp(x, low, high float64) float64 { return min(high, max(low, x)) }

// marginOdds works out freeze odds from a curve of minima and what is known of
// its two sides, as odds over all years.
type marginOdds struct {
	limbs          *limbs
	spring, autumn sideOdds
	dated          bool       // the sides are dates, which hold through the whole season
	extreme        ExtremeMin // at the same place as the limbs: no odds pass those of the yearly extreme
	floor          annualFloor
	source         working.Source
}

// annualFloor is what dates say of the yearly odds: at and above a threshold that
// has dates they are at least this.
type annualFloor struct {
	threshold, odds float64
	shares          []shareAt // where the shares of years are known, by rising threshold; they decide alone
}

// noFloor is the floor where there are no dates.
var noFloor = annualFloor{threshold: math.Inf(1)}

// annual returns the odds of an event in a year by the yearly extreme.
func (f annualFloor) annual(e ExtremeMin, threshold float64) float64 {
	if len(f.shares) > 0 {
		return annualBy(f.shares, e, threshold)
	}
	odds := e.Reaches(quantity.Temperature(threshold))
	if threshold >= f.threshold-rounding {
		return max(f.odds, odds)
	}
	return odds
}

// at returns the odds for a threshold.
func (m *marginOdds) at(threshold float64) *FreezeOdds {
	o := &FreezeOdds{threshold: threshold, start: m.limbs.start, source: m.source, limbs: m.limbs}
	spring, autumn := m.spring.at(threshold), m.autumn.at(threshold)
	for i := range DaysPerYear {
		o.spring[i] = spring.odds(m.limbs.rising[i])
		o.autumn[i] = autumn.odds(m.limbs.falling[i])
	}
	c := m.limbs.coldest
	o.annual = m.floor.annual(m.extreme, threshold)
	if !m.dated {
		o.annual = min(o.annual, 1-(1-o.spring[c])*(1-o.autumn[c]))
		spreadOverSeason(o, c)
	}
	capOdds(o, o.annual)
	o.hazard = hazards(o, c)
	return o
}

// capOdds keeps all odds at or below those of a whole year: the sides know nothing
// of mild winters.
func capOdds(o *FreezeOdds, most float64) {
	for i := range o.spring {
		o.spring[i] = min(o.spring[i], most)
		o.autumn[i] = min(o.autumn[i], most)
	}
}

// spreadOverSeason puts the two sides together: before the coldest day the odds of an event still to come include
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
