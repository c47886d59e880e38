package climate

import (
	"fourturn/planner/civil"
	"fourturn/planner/working"
)

// minSeasons is the fewest whole cold seasons that odds are worked out from: with
// eight, the levels 10 and 90 % lie just within the seasons seen.
const minSeasons = 8

// maxOffset is by how many days either way the method of NOAA's freeze
// probabilities moves a month of one year when it draws years anew.
const maxOffset = 14

// fromRecord takes normals and freeze odds from a daily series.
func (b *base) fromRecord(r *Record, site Place) error {
	seasons := countedSeasons(r, site.Southern())
	if len(seasons) < minSeasons {
		return &Error{"climate.record_too_short", map[string]float64{"seasons": float64(len(seasons)), "needed": minSeasons}}
	}
	means, _, ok := r.Means()
	if !ok {
		return &Error{Code: "climate.record_lacks_months"}
	}
	b.fromMeans(means, working.Source{Status: working.Entered})
	b.freezeSource = working.Source{Status: working.Entered}
	b.freeze = &recordOdds{
		record: r, seasons: seasons, start: seasonStart(site.Southern()),
		coldest: newLimbs(b.tmin, site.Southern()).coldest, source: b.freezeSource,
	}
	return nil
}

// countedSeasons returns the first days of the seasons that count.
func countedSeasons(r *Record, southern bool) []civil.Date {
	var starts []civil.Date
	for _, c := range r.Seasons(southern) {
		if c.Counts {
			starts = append(starts, c.From)
		}
	}
	return starts
}

// recordOdds works out freeze odds from the seasons of a record that count.
//
// It is the exact expectation of the method behind NOAA's published dates, which
// draws ten thousand years at random: each month of a drawn year is that month of
// a random year, moved by a random number of days up to 14 either way. Months are
// so independent, and the odds that no event comes in the rest of a season are the
// product over its months of the share of (year, move) pairs without one. No
// random numbers are needed, and a day's odds change smoothly.
type recordOdds struct {
	record  *Record
	seasons []civil.Date // first days
	start   int          // day index of the season's first day
	coldest int          // season day
	source  working.Source
}

// at returns the odds for a threshold.
func (m *recordOdds) at(threshold float64) *FreezeOdds {
	o := &FreezeOdds{threshold: threshold, start: m.start, source: m.source}
	previous, next := m.events(threshold)
	firstMonth := int(MonthDayAt(m.start).Month) - 1
	var months [12]monthOdds
	for k := range months {
		months[k] = m.month((firstMonth+k)%12, previous, next)
	}
	day, none := 0, 1.0
	for k := range months {
		for _, p := range months[k].by {
			o.autumn[day] = 1 - none*(1-p)
			day++
		}
		none *= 1 - months[k].by[len(months[k].by)-1]
	}
	o.annual = 1 - none
	none = 1
	for k := 11; k >= 0; k-- {
		for i := len(months[k].from) - 1; i >= 0; i-- {
			day--
			o.spring[day] = 1 - none*(1-months[k].from[i])
		}
		none *= 1 - months[k].from[0]
	}
	o.hazard = hazards(o, m.coldest)
	return o
}

// events returns for every day of the record the index of the last event on or
// before it and of the first event on or after it, -1 and the length where there
// is none. A missing day is no event.
func (m *recordOdds) events(threshold float64) (previous, next []int32) {
	tmin := m.record.tmin
	n := len(tmin)
	previous, next = make([]int32, n), make([]int32, n)
	// The values are tenths in single precision: half a hundredth keeps equality.
	limit := float32(threshold + 0.005)
	seen := int32(-1)
	for i, v := range tmin {
		if v <= limit {
			seen = int32(i)
		}
		previous[i] = seen
	}
	seen = int32(n)
	for i := n - 1; i >= 0; i-- {
		if tmin[i] <= limit {
			seen = int32(i)
		}
		next[i] = seen
	}
	return previous, next
}

// monthOdds are the odds within one month of an event on or before each of its
// days, and of one on or after it.
type monthOdds struct {
	by, from []float64
}

// month pools a calendar month, 0 for January, over seasons and moves.
func (m *recordOdds) month(month int, previous, next []int32) monthOdds {
	length := monthDays[month]
	by, from := make([]float64, length), make([]float64, length)
	windows := 0.0
	for _, season := range m.seasons {
		year := season.Year()
		if month < int(season.Month())-1 {
			year++
		}
		first := int(civil.New(year, monthOf(month), 1) - m.record.first)
		for move := -maxOffset; move <= maxOffset; move++ {
			a := first + move
			z := a + length - 1
			if a < 0 || z >= len(previous) {
				continue
			}
			windows++
			if e := int(next[a]); e <= z {
				by[e-a]++
			}
			if e := int(previous[z]); e >= a {
				from[e-a]++
			}
		}
	}
	if windows == 0 {
		return monthOdds{by, from}
	}
	sum := 0.0
	for i := range by {
		sum += by[i]
		by[i] = sum / windows
	}
	sum = 0
	for i := length - 1; i >= 0; i-- {
		sum += from[i]
		from[i] = sum / windows
	}
	return monthOdds{by, from}
}
