package climate

import (
	"cmp"
	"math"
	"slices"

	"fourturn/planner/quantity"
	"fourturn/planner/working"
)

// ExtremeMin is the mean of the yearly lowest temperatures, which hardiness
// zones go by, with its scatter between years.
type ExtremeMin struct {
	Mean   quantity.Temperature
	Spread float64 // K, standard deviation between years
	years  int     // behind the mean; 0 where it is estimated
	cold   float64 // mean minimum of the coldest month
	drop   float64 // of the extreme below it
	shift  float64 // by height and spot
	source working.Source
}

// Estimated reports whether the extreme is estimated from monthly means.
func (e ExtremeMin) Estimated() bool { return e.source.Status == working.Estimated }

// Source says what the extreme rests on.
func (e ExtremeMin) Source() working.Source { return e.source }

// Reaches returns the odds that the lowest temperature of a year reaches or
// passes a threshold: the extreme-value (Gumbel) distribution of minima with the
// mean and the scatter.
func (e ExtremeMin) Reaches(threshold quantity.Temperature) float64 {
	const euler = 0.5772156649015329 // Euler's constant, from the mean of the distribution
	scale := e.Spread * math.Sqrt(6) / math.Pi
	location := float64(e.Mean) + euler*scale
	return -math.Expm1(-math.Exp((float64(threshold) - location) / scale))
}

// spreadPerDrop is the scatter of the yearly extreme as a share of its drop below
// the coldest month's mean minimum: 0.28 in the middle of the daily series that
// the tests compare (0.10 to 0.37).
const spreadPerDrop = 0.28

// The drop of the mean yearly extreme below the coldest month's mean minimum, by
// that minimum: means of 1,537 stations of the station table's long form with at
// least ten years of extremes, 2003-2021. The rest of the stations about the line
// is 2.5 K, half a zone.
var dropByColdest = [...][2]float64{{-45, 9.5}, {-25, 12.1}, {-15, 13.2}, {-7.5, 12.1}, {-2.5, 10.3}, {2.5, 7.4}, {7.5, 6.6}, {15, 5.8}, {25, 3.1}}

func estimatedDrop(coldest float64) float64 {
	t := dropByColdest[:]
	if coldest <= t[0][0] {
		return t[0][1]
	}
	for i := 1; i < len(t); i++ {
		if coldest <= t[i][0] {
			w := (coldest - t[i-1][0]) / (t[i][0] - t[i-1][0])
			return t[i-1][1] + w*(t[i][1]-t[i-1][1])
		}
	}
	return t[len(t)-1][1]
}

// neighbourReach is how far a station's drop is taken to hold, metres, and
// neighbours how many stations are asked.
const (
	neighbourReach = quantity.Length(600e3)
	neighbours     = 3
)

// extremeAt works out the extreme at the place of measurement: the record's own,
// the station's, that of up to three neighbours within 600 km, or the line.
func (in Input) extremeAt(b *base, site Place) ExtremeMin {
	cold := coldestMonth(b.tmin)
	if in.Record != nil {
		mean, spread, years := in.Record.extremes(site.Southern())
		return ExtremeMin{
			Mean: quantity.Temperature(mean), Spread: spread, years: years, cold: cold, drop: cold - mean,
			source: working.Source{Status: working.Entered},
		}
	}
	if in.Digest != nil {
		return in.Digest.extreme(cold)
	}
	own := in.Means == nil && in.Station != nil
	if own && in.Station.ExtremeMin != nil {
		drop := cold - *in.Station.ExtremeMin
		return ExtremeMin{
			Mean: quantity.Temperature(*in.Station.ExtremeMin), Spread: max(1, spreadPerDrop*drop), years: in.Station.ExtremeFrom,
			cold: cold, drop: drop, source: in.Station.source(),
		}
	}
	drop, near := neighbourDrop(site)
	cite := "mean drop of the yearly extreme below the coldest month at the nearest stations of the table"
	if near == 0 {
		drop, cite = estimatedDrop(cold), "mean drop of the yearly extreme below the coldest month, 1,537 stations, 2003-2021"
	}
	return ExtremeMin{
		Mean: quantity.Temperature(cold - drop), Spread: max(1, spreadPerDrop*drop), cold: cold, drop: drop,
		source: working.Source{Status: working.Estimated, Cite: cite},
	}
}

// coldestMonth returns the lowest of the monthly means of the minima.
func coldestMonth(tmin *Year) float64 {
	cold := math.Inf(1)
	for m := range 12 {
		cold = min(cold, tmin.MonthMean(monthOf(m)))
	}
	return cold
}

// neighbourDrop returns the mean drop at the nearest stations whose extreme is
// known, and how many there are within reach.
func neighbourDrop(site Place) (drop float64, n int) {
	type near struct {
		distance quantity.Length
		drop     float64
	}
	var found []near
	for i := range Stations() {
		s := &Stations()[i]
		if s.ExtremeMin == nil {
			continue
		}
		d := site.Distance(s.Place)
		if d > neighbourReach || d == 0 {
			continue
		}
		found = append(found, near{d, slices.Min(s.Means.Tmin[:]) - *s.ExtremeMin})
	}
	slices.SortFunc(found, func(a, b near) int { return cmp.Compare(a.distance, b.distance) })
	found = found[:min(neighbours, len(found))]
	for _, f := range found {
		drop += f.drop / float64(len(found))
	}
	return drop, len(found)
}

// extremes returns mean and scatter of the lowest minimum of the seasons that
// count.
func (r *Record) extremes(southern bool) (mean, spread float64, n int) {
	var lowest []float64
	for _, s := range r.Seasons(southern) {
		if !s.Counts {
			continue
		}
		low := math.Inf(1)
		for d := s.From; d <= s.To; d++ {
			if v := r.On(d).Tmin; v < low {
				low = v
			}
		}
		lowest = append(lowest, low)
		mean += low
	}
	n = len(lowest)
	mean /= float64(n)
	for _, v := range lowest {
		spread += (v - mean) * (v - mean)
	}
	return mean, max(0.5, math.Sqrt(spread/float64(max(1, n-1)))), n
}

// ExtremeMin returns the mean yearly lowest temperature at the site.
func (c *Climate) ExtremeMin() ExtremeMin {
	e := c.base.extreme
	e.Mean += quantity.Temperature(c.minShift)
	e.shift = c.minShift
	return e
}

// HardinessZone returns the zone of the mean yearly lowest temperature.
func (c *Climate) HardinessZone() HardinessZone { return ZoneOf(c.ExtremeMin().Mean) }

// Working returns the trace of the extreme.
func (e ExtremeMin) Working() working.Trace {
	t := working.Trace{
		Name: "climate.extreme_min", Formula: "Textreme = Tcold − drop + shift",
		Inputs: []working.Input{
			{Symbol: "Tcold", Name: "climate.coldest_month", Value: working.Number(e.cold, working.Celsius), Source: e.source},
			{Symbol: "drop", Name: "climate.extreme_drop", Value: working.Number(e.drop, working.Kelvin), Source: e.source},
			{Symbol: "shift", Name: "climate.shift", Value: working.Number(e.shift, working.Kelvin), Source: working.Source{Status: working.Derived}},
		},
		Result: working.Number(float64(e.Mean), working.Celsius),
		Source: e.source,
	}
	if e.years > 0 {
		t.Inputs = append(t.Inputs, working.Input{Symbol: "n", Name: "climate.seasons", Value: working.Number(float64(e.years), working.None), Source: e.source})
	}
	if e.Estimated() {
		t.Notes = append(t.Notes, "climate.note_estimated")
	}
	return t
}
