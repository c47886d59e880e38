package climate

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/stat/distuv"

	"fourturn/planner/civil"
)

// FreezeLevel is one published or typed date at a level.
type FreezeLevel struct {
	Odds float64 // such as 0.10: the odds of the last freeze on or after the day, of the first on or before it
	Day  civil.MonthDay
}

// FreezeDates are dates of last and first freeze at one threshold, at any levels
// and in any order, as a publisher gives them or a person types them.
type FreezeDates struct {
	Threshold float64 // °C
	Last      []FreezeLevel
	First     []FreezeLevel
}

// dates returns the table's dates that were published.
func (t FreezeTable) dates() FreezeDates {
	d := FreezeDates{Threshold: t.Threshold}
	for i, p := range tableLevels {
		if !t.Last[i].IsZero() {
			d.Last = append(d.Last, FreezeLevel{p, t.Last[i]})
		}
		if !t.First[i].IsZero() {
			d.First = append(d.First, FreezeLevel{p, t.First[i]})
		}
	}
	return d
}

// datedOdds turns dates into odds by the level of the curve on each day. NOAA's
// levels are among the years with a freeze: the odds of a freeze in a year make
// them odds over all years. Where a side has a single date, the spread about it is
// the calibration's.
func datedOdds(l *limbs, tables []FreezeDates, floor annualFloor, extreme ExtremeMin, site Place) *marginOdds {
	m := &marginOdds{limbs: l, dated: true, extreme: extreme, floor: floor}
	guessSpring, guessAutumn := estimatedSides(site, extreme.drop)
	m.spring = completeSide(m.side(&l.rising, tables, func(d FreezeDates) []FreezeLevel { return d.Last }), guessSpring)
	m.autumn = completeSide(m.side(&l.falling, tables, func(d FreezeDates) []FreezeLevel { return d.First }), guessAutumn)
	return m
}

func (m *marginOdds) side(levels *Year, tables []FreezeDates, side func(FreezeDates) []FreezeLevel) sideOdds {
	l := m.limbs
	var s sideOdds
	for _, t := range tables {
		var knots []knot
		annual := m.floor.annual(m.extreme, t.Threshold)
		for _, d := range side(t) {
			margin := levels[l.seasonDay(MonthDayIndex(d.Day))] - t.Threshold
			knots = append(knots, knot{margin, normalQuantile(annual * d.Odds)})
		}
		if len(knots) > 0 {
			s = append(s, ladder{t.Threshold, knots})
		}
	}
	slices.SortFunc(s, func(a, b ladder) int {
		if a.threshold < b.threshold {
			return -1
		}
		return 1
	})
	return s
}

// normalQuantile is the inverse of the normal distribution, held within the odds
// of one year in ten thousand.
func normalQuantile(p float64) float64 {
	return distuv.UnitNormal.Quantile(min(0.9999, max(0.0001, p)))
}

// leastStep is the least fall of the margin, in kelvin, per unit of the normal
// scale: it keeps odds apart where two levels share a day.
const leastStep = 0.05

// farZ is where the normal scale ends for all purposes, odds of one in a billion:
// crossings are ironed out up to there.
const farZ = 6

// completeSide gives every ladder the same steps of odds, fills in what a side
// lacks from the estimate, and irons out crossings.
func completeSide(s, guess sideOdds) sideOdds {
	if len(s) == 0 {
		return guess
	}
	steps := []float64{-farZ, farZ}
	for i, l := range s {
		slices.SortFunc(l.knots, func(a, b knot) int {
			if a.z < b.z {
				return -1
			}
			return 1
		})
		if len(l.knots) == 1 {
			s[i].knots = besideGuess(l.knots[0], guess[0])
		}
		for k := 1; k < len(s[i].knots); k++ {
			a, b := s[i].knots[k-1], &s[i].knots[k]
			b.margin = min(b.margin, a.margin-leastStep*(b.z-a.z))
		}
		for _, k := range s[i].knots {
			steps = append(steps, k.z)
		}
	}
	slices.Sort(steps)
	steps = slices.CompactFunc(steps, func(a, b float64) bool { return math.Abs(a-b) < 1e-9 })
	for i := range s {
		s[i].knots = resample(s[i].knots, steps)
		for k := range s[i].knots {
			if i > 0 {
				least := s[i-1].threshold + s[i-1].knots[k].margin - s[i].threshold
				s[i].knots[k].margin = max(s[i].knots[k].margin, least)
			}
		}
	}
	return s
}

// besideGuess surrounds a single known point by the spread of the estimate.
func besideGuess(known knot, guess ladder) []knot {
	spread := guess.knots[0].margin - guess.knots[1].margin
	return []knot{
		{known.margin + spread, known.z - 1}, known, {known.margin - spread, known.z + 1},
	}
}

// resample returns the margins at other steps of the normal scale.
func resample(knots []knot, steps []float64) []knot {
	out := make([]knot, len(steps))
	for n, z := range steps {
		i := 1
		for i < len(knots)-1 && knots[i].z < z {
			i++
		}
		a, b := knots[i-1], knots[i]
		out[n] = knot{a.margin + (b.margin-a.margin)*(z-a.z)/(b.z-a.z), z}
	}
	return out
}
