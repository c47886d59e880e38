package climate

import (
	"math"
	"slices"

	"fourturn/planner/civil"
)

// DayValue is one day of a daily series: °C, NaN for what is missing.
type DayValue struct {
	Date       civil.Date
	Tmin, Tmax float64
}

// Record is a daily series without doubles, in order of dates, with gaps as
// missing days. It is immutable.
type Record struct {
	first      civil.Date
	tmin, tmax []float32 // °C by day from first, NaN where missing; tenths are exact enough
}

// NewRecord makes a record of days in any order. Of two values for one day the
// first that is not missing counts. It returns nil when no day has a value.
func NewRecord(days []DayValue) *Record {
	first, last := civil.Date(0), civil.Date(0)
	for _, d := range days {
		if math.IsNaN(d.Tmin) && math.IsNaN(d.Tmax) {
			continue
		}
		if first == 0 || d.Date < first {
			first = d.Date
		}
		last = max(last, d.Date)
	}
	if first == 0 {
		return nil
	}
	r := &Record{first: first}
	n := int(last-first) + 1
	r.tmin, r.tmax = missing(n), missing(n)
	for _, d := range days {
		if d.Date < first || d.Date > last {
			continue
		}
		i := d.Date - first
		if isMissing(r.tmin[i]) {
			r.tmin[i] = float32(d.Tmin)
		}
		if isMissing(r.tmax[i]) {
			r.tmax[i] = float32(d.Tmax)
		}
	}
	return r
}

func missing(n int) []float32 {
	return slices.Repeat([]float32{float32(math.NaN())}, n)
}

func isMissing(v float32) bool { return math.IsNaN(float64(v)) }

// First returns the first day of the record.
func (r *Record) First() civil.Date { return r.first }

// Last returns the last day of the record.
func (r *Record) Last() civil.Date { return r.first.AddDays(len(r.tmin) - 1) }

// On returns the values of a day, NaN where missing or outside the record.
func (r *Record) On(d civil.Date) DayValue {
	i := int(d - r.first)
	if i < 0 || i >= len(r.tmin) {
		return DayValue{d, math.NaN(), math.NaN()}
	}
	return DayValue{d, float64(r.tmin[i]), float64(r.tmax[i])}
}

// Between returns the part of a record from one day to another, both included,
// or nil when no day of the record lies there.
func (r *Record) Between(from, to civil.Date) *Record {
	from, to = max(from, r.first), min(to, r.Last())
	if to < from {
		return nil
	}
	i, k := int(from-r.first), int(to-r.first)+1
	return &Record{first: from, tmin: r.tmin[i:k:k], tmax: r.tmax[i:k:k]}
}

// normalYears is how many of a record's last years count unless the person says
// otherwise: the thirty years of a climatological normal (WMO-No. 1203).
const normalYears = 30

// recent returns the last years of a record.
func (r *Record) recent(years int) *Record {
	if years <= 0 {
		years = normalYears
	}
	return r.Between(r.Last().AddYears(-years)+1, r.Last())
}

// Days returns the numbers of days with a minimum and with a maximum, and of all
// days from first to last.
func (r *Record) Days() (tmin, tmax, all int) {
	for i := range r.tmin {
		if !isMissing(r.tmin[i]) {
			tmin++
		}
		if !isMissing(r.tmax[i]) {
			tmax++
		}
	}
	return tmin, tmax, len(r.tmin)
}

// The completeness that is asked of a season and of a month.
const (
	// MaxMissing is how many minima of a cold season may be missing: of some 270
	// days that matter one in 27, so that a single spell of cold is rarely lost.
	// The published comparisons of the tests use the same.
	MaxMissing = 10
	// minMonthDays is how many days a month needs to count for a mean (as the
	// station table was made).
	minMonthDays = 22
)

// SeasonCheck tells whether a cold season of a record counts.
type SeasonCheck struct {
	From, To civil.Date
	Missing  int // days without a minimum
	Counts   bool
}

// Seasons checks every cold season that the record touches, in order. A season
// runs from 1 August to 31 July, south of the equator from 1 February to
// 31 January.
func (r *Record) Seasons(southern bool) []SeasonCheck {
	month := monthOf(7)
	if southern {
		month = monthOf(1)
	}
	var checks []SeasonCheck
	for year := r.first.Year() - 1; ; year++ {
		c := SeasonCheck{From: civil.New(year, month, 1), To: civil.New(year+1, month, 1) - 1}
		if c.From > r.Last() {
			return checks
		}
		if c.To < r.first {
			continue
		}
		for d := c.From; d <= c.To; d++ {
			if i := int(d - r.first); i < 0 || i >= len(r.tmin) || isMissing(r.tmin[i]) {
				c.Missing++
			}
		}
		c.Counts = c.Missing <= MaxMissing
		checks = append(checks, c)
	}
}

// Gap is a run of days without a minimum or without a maximum.
type Gap struct {
	From, To civil.Date
}

// Days returns the length of the gap.
func (g Gap) Days() int { return int(g.To-g.From) + 1 }

// Gaps returns the runs of days on which a value is missing, in order.
func (r *Record) Gaps() []Gap {
	var gaps []Gap
	for i := range r.tmin {
		if !isMissing(r.tmin[i]) && !isMissing(r.tmax[i]) {
			continue
		}
		d := r.first.AddDays(i)
		if n := len(gaps); n > 0 && gaps[n-1].To == d-1 {
			gaps[n-1].To = d
		} else {
			gaps = append(gaps, Gap{d, d})
		}
	}
	return gaps
}

// Means returns the monthly means of the record over the months that have at
// least 22 days of both values, each month of each year weighing the same, and
// how many years are behind the month with the fewest; ok is false when a
// calendar month has none.
func (r *Record) Means() (m Means, years int, ok bool) {
	var tmin, tmax [12]float64
	var n [12]int
	year, month, _ := r.first.Date()
	for first := civil.New(year, month, 1); first <= r.Last(); first = first.AddMonths(1) {
		lo, hi, days := 0.0, 0.0, 0
		for d := first; d < first.AddMonths(1); d++ {
			if v := r.On(d); !math.IsNaN(v.Tmin) && !math.IsNaN(v.Tmax) {
				lo, hi, days = lo+v.Tmin, hi+v.Tmax, days+1
			}
		}
		if days >= minMonthDays {
			k := first.Month() - 1
			tmin[k] += lo / float64(days)
			tmax[k] += hi / float64(days)
			n[k]++
		}
	}
	years = slices.Min(n[:])
	if years == 0 {
		return m, 0, false
	}
	for k := range n {
		m.Tmin[k], m.Tmax[k] = tmin[k]/float64(n[k]), tmax[k]/float64(n[k])
	}
	return m, years, true
}
