package rotation

import (
	"math"

	"fourturn/planner/civil"
	"fourturn/planner/quantity"
)

// Spells of killing cold are taken as a Poisson process: on each day a threshold
// has an intensity λ, and the chance that none comes from day s up to day t is
//
//	exp(−Σ λ(d), d = s … t−1)
//
// The intensities are those that give back the odds of the last and the first
// freeze: with L(d) the chance of one on or after d and F(d) of one on or before d,
//
//	spring:  λ(d) = ln(1 − L(d+1)) − ln(1 − L(d))
//	autumn:  λ(d) = ln(1 − F(d−1)) − ln(1 − F(d))
//
// so that a planting of day s lives to summer with chance 1 − L(s), and one that
// lived the summer is alive on day t with 1 − F(t−1). Deep in winter, where the
// odds are as good as one and say nothing of a single day, and wherever there are
// no odds, the intensity is that of a normal distribution of the daily minimum:
//
//	λ(d) = −ln(1 − Φ((θ − Tmin)/sd)) × share of cold days that begin a spell
//
// since the second day of a spell kills nothing that the first has spared.

// The thresholds of the table, °C, one a kelvin; plants outside take the end rows.
const (
	lowestThreshold  = -45
	highestThreshold = 20
)

// Odds above this say that a freeze comes, no longer when.
const saturated = 0.98 // judgement

// Of the days at or below 0 °C in half-months whose mean minimum is 2 to 9 °C, 40 to
// 50 % follow a day above it: daily series of Central Park, JFK, Grand Forks and
// Reidsville (NOAA GHCN-Daily) and Shannon (Met Éireann), worked out for this.
const newSpell = 0.45

// The most intense day: a chance of 1e-9 to live through it.
const mostIntense = 20.7

// hazardTable holds the intensity of every threshold and day.
type hazardTable struct {
	rows [][]float64 // by threshold, coldest first; each one a day
}

// newHazardTable works out the intensities from the odds, where given, and the
// spread of the daily minima.
func newHazardTable(normals Normals, odds FreezeOdds) hazardTable {
	warming := warmingDays(normals.Tmin)
	return tableOf(len(normals.Tmin), func(row []float64, threshold quantity.Temperature) {
		for i := range row {
			row[i] = normalIntensity(float64(threshold), normals.Tmin[i], normals.TminSD[i])
		}
		if odds != nil {
			fromOdds(row, odds, threshold, normals.From, warming)
		}
	})
}

// tableOf fills a table threshold by threshold, coldest first.
func tableOf(days int, fill func(row []float64, threshold quantity.Temperature)) hazardTable {
	rows := make([][]float64, highestThreshold-lowestThreshold+1)
	for k := range rows {
		rows[k] = make([]float64, days)
		fill(rows[k], quantity.Temperature(lowestThreshold+k))
		if k > 0 {
			// A freeze to a lower threshold is one to a higher threshold as well.
			for i, x := range rows[k-1] {
				rows[k][i] = max(rows[k][i], x)
			}
		}
	}
	return hazardTable{rows}
}

// fromOdds puts the intensities that the odds imply in place of those of the
// normal distribution, wherever the odds still tell one day from the next.
func fromOdds(row []float64, odds FreezeOdds, threshold quantity.Temperature, from civil.Date, warming []bool) {
	for i := range row {
		day := from.AddDays(i)
		var early, late float64 // chances, the later-read one larger
		if warming[i] {
			early, late = odds.LastOnOrAfter(threshold, day.AddDays(1)), odds.LastOnOrAfter(threshold, day)
		} else {
			early, late = odds.FirstOnOrBefore(threshold, day.AddDays(-1)), odds.FirstOnOrBefore(threshold, day)
		}
		// Odds that are not a number leave the normal distribution in place.
		if early <= late && late < saturated {
			row[i] = min(math.Log1p(-early)-math.Log1p(-late), mostIntense)
		}
	}
}

func normalIntensity(threshold, mean, sd float64) float64 {
	// Φ(−z) by the complementary error function keeps its digits in the tail.
	above := 0.5 * math.Erfc((threshold-mean)/(sd*math.Sqrt2))
	return min(-math.Log(above)*newSpell, mostIntense)
}

// at returns the intensity of a threshold (°C) on day i, linear between rows.
func (h hazardTable) at(threshold float64, i int) float64 {
	x := min(max(threshold-lowestThreshold, 0), float64(len(h.rows)-1))
	k := min(int(x), len(h.rows)-2)
	f := x - float64(k)
	return h.rows[k][i]*(1-f) + h.rows[k+1][i]*f
}

// warmingDays tells the half of the year in which nights grow warmer, by the
// coldest and the warmest day of the mean year, smoothed over a month.
func warmingDays(tmin []float64) []bool {
	const halfWindow = 15 // days; half a month on either side
	smooth := make([]float64, len(tmin))
	for i := range tmin {
		sum, count := 0.0, 0
		for j := max(i-halfWindow, 0); j <= min(i+halfWindow, len(tmin)-1); j++ {
			sum, count = sum+tmin[j], count+1
		}
		smooth[i] = sum / float64(count)
	}
	coldest, warmest := 0, 0
	year := min(len(tmin), 365)
	for i := range year {
		if smooth[i] < smooth[coldest] {
			coldest = i
		}
		if smooth[i] > smooth[warmest] {
			warmest = i
		}
	}
	warming := make([]bool, len(tmin))
	for i := range warming {
		day := i % 365
		if coldest < warmest {
			warming[i] = day >= coldest && day < warmest
		} else {
			warming[i] = day >= coldest || day < warmest
		}
	}
	return warming
}
