package climate

import (
	"math"

	"gonum.org/v1/gonum/stat/distuv"
)

// digestOdds works out freeze odds between the thresholds of a digest: at every level
// the date runs straight from one threshold to the next, so that the dates of a colder
// one never pass those of a warmer one, and between levels the odds run straight on the
// normal scale. Beyond the thresholds that have dates the margins of the curve stay.
type digestOdds struct {
	rungs  []rung // by rising threshold
	beyond *marginOdds
	start  int
}

// rung are the dates of one threshold as days of the cold season, by [DigestLevels].
type rung struct {
	threshold   float64
	last, first [len(DigestLevels)]float64
}

func rungOf(t FreezeDates, l *limbs) rung {
	r := rung{threshold: t.Threshold}
	for i := range DigestLevels {
		r.last[i] = float64(l.seasonDay(MonthDayIndex(t.Last[i].Day)))
		r.first[i] = float64(l.seasonDay(MonthDayIndex(t.First[i].Day)))
	}
	return r
}

// at returns the odds for a threshold.
func (m *digestOdds) at(threshold float64) *FreezeOdds {
	r, ok := m.rung(threshold)
	if !ok {
		return m.beyond.at(threshold)
	}
	o := &FreezeOdds{threshold: threshold, start: m.start, source: m.beyond.source}
	o.annual = m.beyond.floor.annual(m.beyond.extreme, threshold)
	for i := range DaysPerYear {
		o.spring[i] = o.annual * levelOn(&r.last, float64(-i), -1)
		o.autumn[i] = o.annual * levelOn(&r.first, float64(i), 1)
	}
	o.hazard = hazards(o, m.beyond.limbs.coldest)
	return o
}

// rung returns the dates of a threshold between two that are known.
func (m *digestOdds) rung(threshold float64) (rung, bool) {
	n := len(m.rungs)
	if n == 0 || threshold < m.rungs[0].threshold-rounding || threshold > m.rungs[n-1].threshold+rounding {
		return rung{}, false
	}
	for i := range m.rungs {
		if math.Abs(m.rungs[i].threshold-threshold) < rounding {
			return m.rungs[i], true
		}
	}
	i := 1
	for m.rungs[i].threshold < threshold {
		i++
	}
	a, b := &m.rungs[i-1], &m.rungs[i]
	w := (threshold - a.threshold) / (b.threshold - a.threshold)
	mixed := rung{threshold: threshold}
	for k := range mixed.last {
		mixed.last[k] = (1-w)*a.last[k] + w*b.last[k]
		mixed.first[k] = (1-w)*a.first[k] + w*b.first[k]
	}
	return mixed, true
}

// levelOn returns the odds on a day from the days of the levels. Days and odds rise
// together when both are counted in the direction of sign.
func levelOn(days *[len(DigestLevels)]float64, day, sign float64) float64 {
	n := len(DigestLevels)
	// The last level that is reached on or before the day; where levels share a day, the
	// one before a gap is the highest and that behind it the lowest of them.
	k := n - 1
	for k >= 0 && sign*days[k] > day+rounding {
		k--
	}
	if k >= 0 && math.Abs(sign*days[k]-day) < rounding {
		return DigestLevels[k]
	}
	left, right := k, k+1
	switch {
	case k < 0:
		left, right = 0, 1
		for right < n-1 && days[right] == days[left] {
			right++
		}
	case k == n-1:
		left, right = n-2, n-1
		for left > 0 && days[left] == days[right] {
			left--
		}
	default:
		for right < n-1 && days[right+1] == days[right] {
			right++
		}
	}
	a, b := sign*days[left], sign*days[right]
	if b <= a {
		b = a + 1
	}
	low, high := normalQuantile(DigestLevels[left]), normalQuantile(DigestLevels[right])
	return normalCDF(low + (day-a)/(b-a)*(high-low))
}

func normalCDF(z float64) float64 { return distuv.UnitNormal.CDF(z) }
