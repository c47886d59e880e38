package climate

import (
	"time"

	"fourturn/planner/civil"
)

// DaysPerYear is the length of the climatological year. It has no 29 February,
// as in NOAA's daily normals: that day's value lies between its neighbours.
const DaysPerYear = 365

// Year is one number for each day of a common year, 1 January first.
type Year [DaysPerYear]float64

// The day index, counted from 0, of 28 February.
const february28 = 31 + 28 - 1

// DayIndex returns where a date stands in a [Year], 0 to 364. 29 February stands
// with the 28th.
func DayIndex(d civil.Date) int { return MonthDayIndex(d.MonthDay()) }

// MonthDayIndex returns where a day of the year stands in a [Year], 0 to 364.
// 29 February stands with the 28th.
func MonthDayIndex(m civil.MonthDay) int {
	return firstOfMonth[m.Month-1] + min(m.Day, monthDays[m.Month-1]) - 1
}

// MonthDayAt returns the day of the year at an index of a [Year]; indices past
// either end run on into the next or the last year.
func MonthDayAt(index int) civil.MonthDay {
	i := wrap(index)
	m := 11
	for firstOfMonth[m] > i {
		m--
	}
	return civil.MonthDay{Month: time.Month(m + 1), Day: i - firstOfMonth[m] + 1}
}

// On returns the value on a date; on 29 February the mean of its two neighbours.
func (y *Year) On(d civil.Date) float64 {
	m := d.MonthDay()
	if m.Month == time.February && m.Day == 29 {
		return (y[february28] + y[february28+1]) / 2
	}
	return y[MonthDayIndex(m)]
}

// MonthMean returns the mean over a month of the common year.
func (y *Year) MonthMean(m time.Month) float64 {
	sum := 0.0
	for i := range monthDays[m-1] {
		sum += y[firstOfMonth[m-1]+i]
	}
	return sum / float64(monthDays[m-1])
}

// monthDays are the lengths of the months of a common year and firstOfMonth the
// index of their first days.
var (
	monthDays    = [12]int{31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31}
	firstOfMonth = [12]int{0, 31, 59, 90, 120, 151, 181, 212, 243, 273, 304, 334}
)

// wrap brings a day index into 0 to 364.
func wrap(i int) int {
	i %= DaysPerYear
	if i < 0 {
		i += DaysPerYear
	}
	return i
}

// monthOf returns the month at an index from 0.
func monthOf(i int) time.Month { return time.Month(i + 1) }
