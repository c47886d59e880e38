package civil

import (
	"fmt"
	"time"
)

// MonthDay is a day that comes round every year. The zero MonthDay is no day.
type MonthDay struct {
	Month time.Month
	Day   int
}

// ParseMonthDay reads MM-DD, such as 05-24; 29 February is allowed.
func ParseMonthDay(s string) (MonthDay, error) {
	// 2000 is a leap year, so that 29 February is read.
	t, err := time.Parse(time.DateOnly, "2000-"+s)
	if err != nil {
		return MonthDay{}, fmt.Errorf("%q is not a day of the year written as MM-DD", s)
	}
	return MonthDay{t.Month(), t.Day()}, nil
}

// MustParseMonthDay is [ParseMonthDay] for days fixed in code; it panics on a malformed one.
func MustParseMonthDay(s string) MonthDay {
	m, err := ParseMonthDay(s)
	if err != nil {
		panic("civil: " + err.Error())
	}
	return m
}

// IsZero reports whether m is no day.
func (m MonthDay) IsZero() bool { return m == MonthDay{} }

// In returns the day in a year; 29 February falls on the 28th of a common year.
func (m MonthDay) In(year int) Date {
	return New(year, m.Month, min(m.Day, DaysIn(year, m.Month)))
}

// YearDay returns the day number in a common year, 1 to 365.
func (m MonthDay) YearDay() int { return m.In(2001).YearDay() }

// String returns MM-DD, or "" for no day.
func (m MonthDay) String() string {
	if m.IsZero() {
		return ""
	}
	return fmt.Sprintf("%02d-%02d", int(m.Month), m.Day)
}

// MarshalText writes MM-DD.
func (m MonthDay) MarshalText() ([]byte, error) { return []byte(m.String()), nil }

// UnmarshalText reads MM-DD; empty text is no day.
func (m *MonthDay) UnmarshalText(text []byte) error {
	if len(text) == 0 {
		*m = MonthDay{}
		return nil
	}
	parsed, err := ParseMonthDay(string(text))
	if err != nil {
		return err
	}
	*m = parsed
	return nil
}
