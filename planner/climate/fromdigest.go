package climate

import (
	"math"

	"gonum.org/v1/gonum/stat/distuv"

	"fourturn/planner/quantity"
)

// check refuses a digest that no record gives, as a hand may have changed it.
func (d *Digest) check(site Place) error {
	if d.Southern != site.Southern() {
		return &Error{Code: "climate.record_other_hemisphere"}
	}
	if err := d.Means.check(); err != nil {
		return err
	}
	for m := range 12 {
		for _, s := range [2]float64{d.Scatter.Tmin[m], d.Scatter.Tmax[m]} {
			if !(s > 0 && s <= widestScatter) {
				return &Error{"climate.record_scatter", map[string]float64{"month": float64(m + 1)}}
			}
		}
	}
	if n := len(d.counted()); n < minSeasons {
		return &Error{"climate.record_too_short", map[string]float64{"seasons": float64(n), "needed": minSeasons}}
	}
	for _, f := range d.Freezes {
		if len(f.Last) != len(f.First) || len(f.Last) != 0 && len(f.Last) != len(DigestLevels) {
			return &Error{"climate.record_levels", map[string]float64{"threshold": f.Threshold, "needed": float64(len(DigestLevels))}}
		}
		for _, day := range append(f.Last[:len(f.Last):len(f.Last)], f.First...) {
			if day.Month < 1 || day.Month > 12 || day.Day < 1 || day.Day > 31 {
				return &Error{"climate.record_levels", map[string]float64{"threshold": f.Threshold, "needed": float64(len(DigestLevels))}}
			}
		}
	}
	return nil
}

// widestScatter is more than single days are scattered about their normals
// anywhere, K: half as much again as the minima of Siberian winters.
const widestScatter = 25

func (d *Digest) counted() []SeasonDigest {
	var list []SeasonDigest
	for _, s := range d.Seasons {
		if s.Counts() {
			list = append(list, s)
		}
	}
	return list
}

// fromDigest takes normals and freeze odds from a digest.
func (b *base) fromDigest(d *Digest, site Place) error {
	if err := d.check(site); err != nil {
		return err
	}
	b.digest = d
	b.fromMeans(d.Means, d.source())
	return nil
}

// extreme returns mean and scatter of the lowest minimum of the seasons that count.
func (d *Digest) extreme(cold float64) ExtremeMin {
	mean, square := 0.0, 0.0
	seasons := d.counted()
	n := float64(len(seasons))
	for _, s := range seasons {
		mean += s.Lowest / n
	}
	for _, s := range seasons {
		square += (s.Lowest - mean) * (s.Lowest - mean)
	}
	return ExtremeMin{
		Mean: quantity.Temperature(mean), Spread: max(0.5, math.Sqrt(square/max(1, n-1))), years: len(seasons),
		cold: cold, drop: cold - mean, source: d.source(),
	}
}

// addDigestFreezes makes the odds of a digest's dates, which carry the share of
// seasons at every threshold. Where no threshold has dates, as in the tropics, the
// yearly extreme alone decides.
func (b *base) addDigestFreezes(d *Digest, l *limbs, site Place) {
	var tables []FreezeDates
	var shares []shareAt
	for _, f := range d.Freezes {
		shares = append(shares, shareAt{f.Threshold, normalQuantile(f.Share)})
		if len(f.Last) == 0 {
			continue
		}
		t := FreezeDates{Threshold: f.Threshold}
		for i, p := range DigestLevels {
			t.Last, t.First = append(t.Last, FreezeLevel{p, f.Last[i]}), append(t.First, FreezeLevel{p, f.First[i]})
		}
		tables = append(tables, t)
	}
	beyond := datedOdds(l, tables, annualFloor{shares: shares}, b.extreme, site)
	beyond.source = d.source()
	odds := &digestOdds{beyond: beyond, start: l.start}
	for _, t := range tables {
		odds.rungs = append(odds.rungs, rungOf(t, l))
	}
	b.freeze, b.freezeSource = odds, beyond.source
}

// shareAt is the share of years that reach a threshold, on the normal scale.
type shareAt struct{ threshold, z float64 }

// annualBy returns the odds of an event in a year at a threshold from known shares:
// straight on the normal scale between them, beyond as the yearly extreme changes.
func annualBy(shares []shareAt, e ExtremeMin, threshold float64) float64 {
	extreme := func(t float64) float64 { return normalQuantile(e.Reaches(quantity.Temperature(t))) }
	i := 0
	for i < len(shares) && shares[i].threshold < threshold {
		i++
	}
	switch {
	case i < len(shares) && (i == 0 || shares[i].threshold == threshold):
		s := shares[i]
		return distuv.UnitNormal.CDF(s.z + min(0, extreme(threshold)-extreme(s.threshold)))
	case i == len(shares):
		s := shares[i-1]
		return distuv.UnitNormal.CDF(s.z + max(0, extreme(threshold)-extreme(s.threshold)))
	}
	a, z := shares[i-1], shares[i]
	w := (threshold - a.threshold) / (z.threshold - a.threshold)
	return distuv.UnitNormal.CDF(a.z + w*(z.z-a.z))
}

// hotDays returns the mean number of days a year above a limit: between the limits
// that were counted straight on the normal scale, beyond them none or by the scatter.
func (d *Digest) hotDays(limit float64) (days float64, ok bool) {
	if n := len(d.Hot); n > 0 && limit > d.Hot[n-1].Limit {
		return 0, true
	}
	for i := 1; i < len(d.Hot); i++ {
		a, b := d.Hot[i-1], d.Hot[i]
		if limit < a.Limit || limit > b.Limit {
			continue
		}
		w := (limit - a.Limit) / (b.Limit - a.Limit)
		low, high := normalQuantile(a.Days/DaysPerYear), normalQuantile(b.Days/DaysPerYear)
		return DaysPerYear * distuv.UnitNormal.CDF(low+w*(high-low)), true
	}
	return 0, false
}

// scattered returns the scatter of a day in the course of the year.
func scattered(months [12]float64) *Year {
	y := Smooth(months)
	for i := range y {
		y[i] = max(leastScatter, y[i])
	}
	return y
}
