package climate

import (
	"math"

	"fourturn/planner/working"
)

// leastMonths is how many of the 24 monthly means must be typed for the rest to be
// estimated.
const leastMonths = 3

// filled returns typed means with the missing ones, which are NaN, estimated from
// the year of a station: its own month moved by the mean difference of the months
// that are known, of the same kind where there are any and of the other kind
// otherwise. estimated is true when any was missing; ok is false when too few are
// known.
func (m Means) filled(like Means) (full Means, estimated, ok bool) {
	low, nLow := meanDifference(m.Tmin, like.Tmin)
	high, nHigh := meanDifference(m.Tmax, like.Tmax)
	if nLow+nHigh < leastMonths {
		return m, true, false
	}
	if nLow == 0 {
		low = high
	}
	if nHigh == 0 {
		high = low
	}
	full, estimated = m, nLow+nHigh < 24
	for i := range 12 {
		if math.IsNaN(m.Tmin[i]) {
			full.Tmin[i] = like.Tmin[i] + low
		}
		if math.IsNaN(m.Tmax[i]) {
			full.Tmax[i] = like.Tmax[i] + high
		}
		// A typed half may lie beyond the estimate of the other.
		switch {
		case full.Tmin[i] <= full.Tmax[i]:
		case math.IsNaN(m.Tmin[i]):
			full.Tmin[i] = full.Tmax[i]
		case math.IsNaN(m.Tmax[i]):
			full.Tmax[i] = full.Tmin[i]
		}
	}
	return full, estimated, true
}

// meanDifference returns the mean difference of the months that are known.
func meanDifference(known, like [12]float64) (difference float64, n int) {
	for i, v := range known {
		if !math.IsNaN(v) {
			difference += v - like[i]
			n++
		}
	}
	return difference / float64(max(1, n)), n
}

// typedMeans returns the typed means, completed where months are missing, and
// what they rest on.
func (in Input) typedMeans(site Place) (Means, working.Source, error) {
	like := in.Station
	if like == nil {
		like = &Nearest(site, 1)[0].Station
	}
	full, estimated, ok := in.Means.filled(like.Means)
	if !ok {
		return full, working.Source{}, &Error{Code: "climate.too_few_means"}
	}
	if err := full.check(); err != nil {
		return full, working.Source{}, err
	}
	if !estimated {
		return full, working.Source{Status: working.Entered}, nil
	}
	return full, working.Source{
		Status: working.Estimated, Cite: "months that were not typed, after the year of " + like.Name,
	}, nil
}
