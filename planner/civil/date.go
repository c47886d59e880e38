package civil

import (
	"fmt"
	"time"
)

// Date is a day in the proleptic Gregorian calendar, counted from 0001-01-01 = 1.
// Dates compare with < and subtract to a number of days. The zero Date is no date.
type Date int32

// The years that a plan may hold. Anything outside is a slip of the keyboard:
// no planting is planned for before 1900 or after 2399.
const (
	MinYear = 1900
	MaxYear = 2399
)

// The epoch of the fixed day numbers as a time, and the Unix day number of that epoch.
const unixDayOfEpoch = -719163 // 1970-01-01 is fixed day 719163; Calendrical Calculations, table 1.2

// New returns the date of a year, month and day. A day past the end of its month
// runs on into the next, as in [time.Date]; use [Valid] to refuse such days.
func New(year int, month time.Month, day int) Date {
	unix := time.Date(year, month, day, 0, 0, 0, 0, time.UTC).Unix()
	return Date(unix/86400 - unixDayOfEpoch)
}

// Valid reports whether the year, month and day name a real day within
// [MinYear] and [MaxYear].
func Valid(year int, month time.Month, day int) bool {
	if year < MinYear || year > MaxYear || month < time.January || month > time.December {
		return false
	}
	return day >= 1 && day <= DaysIn(year, month)
}

// Of returns the calendar day that the clock of t shows in t's own zone.
func Of(t time.Time) Date { return New(t.Date()) }

// Parse reads an ISO 8601 calendar date, YYYY-MM-DD.
func Parse(s string) (Date, error) {
	t, err := time.Parse(time.DateOnly, s)
	if err != nil {
		return 0, fmt.Errorf("date %q is not a day written as YYYY-MM-DD", s)
	}
	if t.Year() < MinYear || t.Year() > MaxYear {
		return 0, fmt.Errorf("date %q is outside the years %d to %d", s, MinYear, MaxYear)
	}
	return Of(t), nil
}

// MustParse is [Parse] for dates fixed in code; it panics on a malformed one.
func MustParse(s string) Date {
	d, err := Parse(s)
	if err != nil {
		panic("civil: " + err.Error())
	}
	return d
}

// Time returns midnight UTC of the date.
func (d Date) Time() time.Time {
	return time.Unix((int64(d)+unixDayOfEpoch)*86400, 0).UTC()
}

// IsZero reports whether d is no date.
func (d Date) IsZero() bool { return d == 0 }

// Date returns the year, month and day.
func (d Date) Date() (year int, month time.Month, day int) { return d.Time().Date() }

// Year returns the calendar year.
func (d Date) Year() int { return d.Time().Year() }

// Month returns the calendar month.
func (d Date) Month() time.Month { return d.Time().Month() }

// Day returns the day of the month.
func (d Date) Day() int { return d.Time().Day() }

// YearDay returns the day of the year, 1 to 366.
func (d Date) YearDay() int { return d.Time().YearDay() }

// Weekday returns the day of the week: the fixed day number modulo 7
// (Calendrical Calculations, 1.60).
func (d Date) Weekday() time.Weekday { return time.Weekday(((int(d) % 7) + 7) % 7) }

// AddDays returns the date n days later, or earlier for a negative n.
func (d Date) AddDays(n int) Date { return d + Date(n) }

// AddMonths returns the same day n months later, or the last day of that month
// where it is shorter: a month after 31 January is 28 or 29 February.
func (d Date) AddMonths(n int) Date {
	year, month, day := d.Date()
	first := New(year, month+time.Month(n), 1)
	return first.AddDays(min(day, DaysIn(first.Year(), first.Month())) - 1)
}

// AddYears returns the same day n years later; 29 February becomes the 28th in
// a common year.
func (d Date) AddYears(n int) Date { return d.AddMonths(12 * n) }

// MonthDay returns the day of the year that d is.
func (d Date) MonthDay() MonthDay { return MonthDay{d.Month(), d.Day()} }

// String returns the ISO 8601 date, or "" for no date.
func (d Date) String() string {
	if d.IsZero() {
		return ""
	}
	return d.Time().Format(time.DateOnly)
}

// MarshalText writes the ISO 8601 date.
func (d Date) MarshalText() ([]byte, error) { return []byte(d.String()), nil }

// UnmarshalText reads an ISO 8601 date; empty text is no date.
func (d *Date) UnmarshalText(text []byte) error {
	if len(text) == 0 {
		*d = 0
		return nil
	}
	parsed, err := Parse(string(text))
	if err != nil {
		return err
	}
	*d = parsed
	return nil
}

// DaysIn returns the number of days in a month, 29 for February of a leap year.
func DaysIn(year int, month time.Month) int {
	return time.Date(year, month+1, 0, 0, 0, 0, 0, time.UTC).Day()
}

// DaysInYear returns 365, or 366 in a leap year.
func DaysInYear(year int) int {
	return int(New(year+1, time.January, 1) - New(year, time.January, 1))
}
