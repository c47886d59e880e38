package words

import (
	"strconv"
	"time"

	"fourturn/planner/civil"
)

// Date writes a date with its year and a short month: "14 Apr 2027". No date is
// written as nothing.
func (w *Words) Date(d civil.Date) string { return w.date(w.habits.dayMonthYear, d) }

// ShortDate writes a date without its year: "14 Apr".
func (w *Words) ShortDate(d civil.Date) string { return w.date(w.habits.dayMonth, d) }

// WeekdayDate writes a date with a short weekday and without its year: "Wed 14 Apr".
func (w *Words) WeekdayDate(d civil.Date) string { return w.date(w.habits.weekdayDayMonth, d) }

// LongDate writes a date in full: "Wednesday 14 April 2027".
func (w *Words) LongDate(d civil.Date) string { return w.date(w.habits.long, d) }

// MonthYear writes the month of a date: "April 2027".
func (w *Words) MonthYear(d civil.Date) string { return w.date(w.habits.monthYear, d) }

// MonthDay writes a day that comes round every year: "14 Apr".
func (w *Words) MonthDay(m civil.MonthDay) string {
	if m.IsZero() {
		return ""
	}
	return w.date(w.habits.dayMonth, m.In(2000)) // a leap year, which has every day
}

// Month writes the name of a month: "April".
func (w *Words) Month(m time.Month) string { return w.habits.months[m-time.January] }

// ShortMonth writes the short name of a month: "Apr".
func (w *Words) ShortMonth(m time.Month) string { return w.habits.monthsShort[m-time.January] }

// Weekday writes the name of a weekday: "Wednesday".
func (w *Words) Weekday(d time.Weekday) string { return w.habits.days[d] }

// ShortWeekday writes the short name of a weekday: "Wed".
func (w *Words) ShortWeekday(d time.Weekday) string { return w.habits.daysShort[d] }

// DateRange writes two dates as one stretch, naming no more than it must:
// "14 – 21 Apr", "28 Apr – 3 May", "28 Dec 2027 – 3 Jan 2028". Where both are the
// same day it is written once.
func (w *Words) DateRange(from, to civil.Date) string {
	fromYear, fromMonth, _ := from.Date()
	toYear, toMonth, _ := to.Date()
	switch {
	case from == to:
		return w.ShortDate(from)
	case fromYear != toYear:
		return w.Date(from) + " – " + w.Date(to)
	case fromMonth != toMonth:
		return w.ShortDate(from) + " – " + w.ShortDate(to)
	}
	return fill(w.habits.sameMonth, func(name string) (string, bool) {
		if name == "d2" {
			return strconv.Itoa(to.Day()), true
		}
		return w.datePart(name, from)
	})
}

func (w *Words) date(pattern string, d civil.Date) string {
	if d.IsZero() {
		return ""
	}
	return fill(pattern, func(name string) (string, bool) { return w.datePart(name, d) })
}

func (w *Words) datePart(name string, d civil.Date) (string, bool) {
	switch name {
	case "d":
		return strconv.Itoa(d.Day()), true
	case "mon":
		return w.ShortMonth(d.Month()), true
	case "month":
		return w.Month(d.Month()), true
	case "y":
		return strconv.Itoa(d.Year()), true
	case "wd":
		return w.ShortWeekday(d.Weekday()), true
	case "weekday":
		return w.Weekday(d.Weekday()), true
	}
	return "", false
}
