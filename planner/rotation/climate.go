package rotation

import (
	"fmt"
	"math"

	"fourturn/planner/civil"
	"fourturn/planner/quantity"
)

// Normals are the daily means of a spot, one entry a day from From on. They run
// from before the first planting that stands to past the end of the horizon, over
// absolute dates, so that a year may begin in any month and either hemisphere works.
type Normals struct {
	From   civil.Date
	Tmin   []float64 // °C, mean of the daily minima of the air at the pot
	Tmax   []float64 // °C, mean of the daily maxima
	Tmean  []float64 // °C, mean over the day; nil takes the middle of Tmin and Tmax
	TminSD []float64 // K, spread (standard deviation) of the daily minima about Tmin
	// RootMin is the mean daily minimum of the potting mix, °C. Nil takes it a
	// share of the way from the air's minimum to its mean: see [Params.RootDamping].
	RootMin []float64
}

// FreezeOdds are the odds that a threshold is reached, by NOAA's definitions but
// for every year rather than for those alone in which it happens: a place that
// reaches the threshold in half of its winters never shows odds above one half.
type FreezeOdds interface {
	// LastOnOrAfter returns the chance that in the cold season about the day the
	// minimum still falls to the threshold on or after the day.
	LastOnOrAfter(threshold quantity.Temperature, day civil.Date) float64
	// FirstOnOrBefore returns the chance that in the cold season about the day the
	// minimum has fallen to the threshold on or before the day.
	FirstOnOrBefore(threshold quantity.Temperature, day civil.Date) float64
}

// Climate is the weather to be expected at one spot: means and the chance of
// killing cold, day by day. It is immutable and safe for concurrent use.
type Climate struct {
	from    civil.Date
	tmin    []float64
	tmax    []float64
	tmean   []float64
	rootMin []float64 // nil: from the air
	hazard  hazardTable
}

// DailyOdds returns the chance that a day brings cold of a threshold when the days
// before it brought none.
type DailyOdds func(threshold quantity.Temperature, day civil.Date) float64

// NewClimateOfDays builds the climate of a spot from the odds of each day, which
// leave nothing to be estimated: TminSD is then not used and may be nil.
func NewClimateOfDays(normals Normals, odds DailyOdds) (*Climate, error) {
	if odds == nil {
		panic("rotation: a climate without odds")
	}
	return newClimate(normals, func(normals Normals) hazardTable {
		return tableOf(len(normals.Tmin), func(row []float64, threshold quantity.Temperature) {
			for i := range row {
				// Odds that are not a number are taken for none.
				if chance := odds(threshold, normals.From.AddDays(i)); chance > 0 {
					row[i] = min(-math.Log1p(-min(chance, 1)), mostIntense)
				}
			}
		})
	}, true)
}

// NewClimate builds the climate of a spot. Odds may be nil; then the chance of
// cold comes from Tmin and TminSD alone. An error names the first fault in the data.
func NewClimate(normals Normals, odds FreezeOdds) (*Climate, error) {
	return newClimate(normals, func(normals Normals) hazardTable { return newHazardTable(normals, odds) }, false)
}

func newClimate(normals Normals, table func(Normals) hazardTable, noSpread bool) (*Climate, error) {
	n := len(normals.Tmin)
	if n == 0 {
		return nil, fmt.Errorf("the climate has no days")
	}
	if normals.From.IsZero() {
		return nil, fmt.Errorf("the climate has no first day")
	}
	for _, v := range []struct {
		name   string
		values []float64
		may    bool // may be left out
	}{
		{"Tmin", normals.Tmin, false},
		{"Tmax", normals.Tmax, false},
		{"Tmean", normals.Tmean, true},
		{"TminSD", normals.TminSD, noSpread},
		{"RootMin", normals.RootMin, true},
	} {
		if v.values == nil && v.may {
			continue
		}
		if err := checkDays(v.name, v.values, n, normals.From); err != nil {
			return nil, err
		}
	}
	for i, sd := range normals.TminSD {
		if sd <= 0 {
			return nil, fmt.Errorf("TminSD on %v is %g, not above 0", normals.From.AddDays(i), sd)
		}
	}
	c := &Climate{
		from:    normals.From,
		tmin:    clone(normals.Tmin),
		tmax:    clone(normals.Tmax),
		tmean:   clone(normals.Tmean),
		rootMin: clone(normals.RootMin),
	}
	if c.tmean == nil {
		c.tmean = make([]float64, n)
		for i := range c.tmean {
			c.tmean[i] = (c.tmin[i] + c.tmax[i]) / 2
		}
	}
	c.hazard = table(normals)
	return c, nil
}

func checkDays(name string, values []float64, n int, from civil.Date) error {
	if len(values) != n {
		return fmt.Errorf("%s has %d days, Tmin has %d", name, len(values), n)
	}
	for i, x := range values {
		if math.IsNaN(x) || math.Abs(x) > 100 {
			return fmt.Errorf("%s on %v is %g, no temperature", name, from.AddDays(i), x)
		}
	}
	return nil
}

func clone(values []float64) []float64 {
	if values == nil {
		return nil
	}
	return append([]float64(nil), values...)
}

// From returns the first day of the climate.
func (c *Climate) From() civil.Date { return c.from }

// Until returns the day after the last one of the climate.
func (c *Climate) Until() civil.Date { return c.from.AddDays(len(c.tmin)) }

func (c *Climate) days() int { return len(c.tmin) }
