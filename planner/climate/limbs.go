package climate

// seasonStart returns the day index on which the cold season begins: 1 August
// north of the equator (NOAA's definition), 1 February south of it.
func seasonStart(southern bool) int {
	if southern {
		return firstOfMonth[1]
	}
	return firstOfMonth[7]
}

// limbs are the falling and the rising side of a year's curve of minima, laid
// out by the day of the cold season. On each side a day has a level: the
// temperature of the curve there, stretched so that the levels keep changing by
// at least a little each day where the curve is nearly flat and run on past its
// turn. A level and a day can so be told from each other everywhere, which the
// temperature alone does not allow in mid-winter.
type limbs struct {
	start   int  // day index of the season's first day
	rising  Year // levels in spring, ever increasing through the season
	falling Year // levels in autumn, ever decreasing through the season
	coldest int  // season day of the curve's lowest point
}

// flattest is the least daily change of a level, as a share of the mean change
// along the side. A judgement: half is far from the steep middle of the sides,
// where all ordinary dates lie, and bridges the turns.
const flattest = 0.5

// leastSlope is the least daily change of a level in K/d, for places without
// seasons.
const leastSlope = 0.005

func newLimbs(tmin *Year, southern bool) *limbs {
	l := &limbs{start: seasonStart(southern)}
	var season Year
	warmest := 0
	for i := range season {
		season[i] = tmin[wrap(l.start+i)]
		if season[i] < season[l.coldest] {
			l.coldest = i
		}
		if season[i] > season[warmest] {
			warmest = i
		}
	}
	rise := season[warmest] - season[l.coldest]
	risingDays := wrap(warmest - l.coldest)
	l.rising = levels(&season, l.coldest, rise, risingDays, 1)
	l.falling = levels(&season, l.coldest, rise, DaysPerYear-risingDays, -1)
	return l
}

// levels stretches one side. The levels agree with the curve where it is
// steepest on that side; sign is 1 on the rising side and -1 on the falling one.
func levels(season *Year, coldest int, rise float64, days int, sign float64) Year {
	least := max(leastSlope, flattest*rise/float64(max(1, days)))
	steepest, anchor := -1.0, coldest
	for i := 1; i < DaysPerYear; i++ {
		onSide := (sign > 0) == (i > coldest)
		if slope := sign * (season[i] - season[i-1]); onSide && slope > steepest {
			steepest, anchor = slope, i
		}
	}
	var out Year
	out[anchor] = season[anchor]
	for i := anchor + 1; i < DaysPerYear; i++ {
		out[i] = out[i-1] + sign*max(least, sign*(season[i]-season[i-1]))
	}
	for i := anchor - 1; i >= 0; i-- {
		out[i] = out[i+1] - sign*max(least, sign*(season[i+1]-season[i]))
	}
	return out
}

// seasonDay returns the day of the cold season of a day index.
func (l *limbs) seasonDay(index int) int { return wrap(index - l.start) }
