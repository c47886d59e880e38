package civil_test

import (
	"fmt"
	"testing"
	"time"

	"pgregory.net/rapid"

	"fourturn/planner/civil"
)

// Reingold and Dershowitz, Calendrical Calculations, appendix C sample data (row
// quoted from memory): fixed day 710347 is Monday 12 November 1945.
func ExampleNew() {
	d := civil.New(1945, time.November, 12)
	fmt.Println(int(d), d.Weekday())
	// Output: 710347 Monday
}

func TestFixedDayNumbers(t *testing.T) {
	// Calendrical Calculations, table 1.2 (epochs) and ISO 8601 (2000-01-01 is a Saturday).
	if got := civil.New(1, time.January, 1); got != 1 {
		t.Errorf("0001-01-01 is day %d, want 1", got)
	}
	if got := civil.New(1970, time.January, 1); got != 719163 {
		t.Errorf("1970-01-01 is day %d, want 719163", got)
	}
	if got := civil.New(2000, time.January, 1).Weekday(); got != time.Saturday {
		t.Errorf("2000-01-01 is a %v, want Saturday", got)
	}
}

func TestAddMonthsClamps(t *testing.T) {
	for _, c := range []struct {
		from   string
		months int
		want   string
	}{
		{"2027-01-31", 1, "2027-02-28"},
		{"2028-01-31", 1, "2028-02-29"},
		{"2028-02-29", 12, "2029-02-28"},
		{"2027-12-31", 2, "2028-02-29"},
		{"2027-03-31", -1, "2027-02-28"},
		{"2027-01-15", -13, "2025-12-15"},
	} {
		if got := civil.MustParse(c.from).AddMonths(c.months).String(); got != c.want {
			t.Errorf("%s + %d months = %s, want %s", c.from, c.months, got, c.want)
		}
	}
}

func TestParseRefuses(t *testing.T) {
	for _, s := range []string{"", "2027-02-29", "2027-13-01", "27-01-01", "2027-1-1", "1899-12-31", "2400-01-01", "tomorrow"} {
		if d, err := civil.Parse(s); err == nil {
			t.Errorf("Parse(%q) = %v, want an error", s, d)
		}
	}
}

func TestMonthDayLeap(t *testing.T) {
	leap := civil.MustParseMonthDay("02-29")
	if got := leap.In(2027).String(); got != "2027-02-28" {
		t.Errorf("29 February in 2027 = %s", got)
	}
	if got := leap.In(2028).String(); got != "2028-02-29" {
		t.Errorf("29 February in 2028 = %s", got)
	}
}

func TestLaws(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := civil.Date(rapid.IntRange(int(civil.New(civil.MinYear, 1, 1)), int(civil.New(civil.MaxYear, 12, 31))).Draw(t, "day"))
		back, err := civil.Parse(d.String())
		if err != nil || back != d {
			t.Fatalf("Parse(String(%d)) = %d, %v", d, back, err)
		}
		if got := civil.Of(d.Time()); got != d {
			t.Fatalf("Of(Time(%v)) = %v", d, got)
		}
		if d.Weekday() != d.Time().Weekday() {
			t.Fatalf("weekday of %v: %v, the time package says %v", d, d.Weekday(), d.Time().Weekday())
		}
		n := rapid.IntRange(-5000, 5000).Draw(t, "n")
		if got := int(d.AddDays(n) - d); got != n {
			t.Fatalf("(%v + %d) - %v = %d", d, n, d, got)
		}
		m := rapid.IntRange(-600, 600).Draw(t, "months")
		y, mo, _ := d.Date()
		gy, gm, _ := d.AddMonths(m).Date()
		if want := y*12 + int(mo) - 1 + m; gy*12+int(gm)-1 != want {
			t.Fatalf("%v + %d months lands in %d-%02d", d, m, gy, gm)
		}
	})
}

func FuzzParse(f *testing.F) {
	f.Add("2028-02-29")
	f.Fuzz(func(t *testing.T, s string) {
		if d, err := civil.Parse(s); err == nil && d.String() != s {
			t.Errorf("Parse(%q) writes back as %q", s, d)
		}
	})
}
