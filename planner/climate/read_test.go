package climate_test

import (
	"errors"
	"fmt"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"fourturn/planner/civil"
	"fourturn/planner/climate"
)

// days writes a record as lines of date, minimum and maximum.
func days(r *climate.Record) string {
	var b strings.Builder
	for d := r.First(); d <= r.Last(); d++ {
		v := r.On(d)
		fmt.Fprintf(&b, "%s %.1f %.1f\n", d, v.Tmin, v.Tmax)
	}
	return b.String()
}

const twoDays = "2020-02-28 -2.2 8.9\n2020-02-29 0.0 11.1\n"

func TestReadLayouts(t *testing.T) {
	for name, c := range map[string]struct {
		text   string
		layout climate.Layout
		unit   climate.Unit
		order  climate.DateOrder
		want   string
	}{
		"plain °C": {"date,tmin,tmax\n2020-02-28,-2.2,8.9\n2020-02-29,0.0,11.1\n", climate.LayoutColumns, climate.Celsius, climate.YearMonthDay, twoDays},
		"°F in names": {
			"Date,Max (°F),Min (°F)\n2020-02-28,48,28\n2020-02-29,52,32\n", climate.LayoutColumns, climate.Fahrenheit, climate.YearMonthDay, twoDays,
		},
		"°F by the values":            {"date\ttmax\ttmin\n02/28/2020\t48\t28\n02/29/2020\t52\t32\n06/30/2020\t90\t70\n", climate.LayoutColumns, climate.Fahrenheit, climate.MonthDayYear, ""},
		"semicolon, comma, day first": {"Datum;TNK;TXK\n28.02.2020;-2,2;8,9\n29.02.2020;0,0;11,1\n", climate.LayoutColumns, climate.Celsius, climate.DayMonthYear, twoDays},
		"daily summaries, tenths and flags": {
			"\"STATION\",\"NAME\",\"DATE\",\"PRCP\",\"TMAX\",\"TMAX_ATTRIBUTES\",\"TMIN\",\"TMIN_ATTRIBUTES\"\n" +
				"\"USX\",\"A, B\",\"2020-02-28\",\"0\",\"   89\",\",,W\",\"  -22\",\",,W\"\n" +
				"\"USX\",\"A, B\",\"2020-02-29\",\"0\",\"  111\",\",,W\",\"    0\",\",,W\"\n" +
				"\"USX\",\"A, B\",\"2020-03-01\",\"0\",\"  340\",\",,W\",\"    0\",\",I,W\"\n",
			climate.LayoutColumns, climate.TenthsC, climate.YearMonthDay, twoDays + "2020-03-01 NaN 34.0\n",
		},
		"rows by element": {
			"USX,20200228,TMAX,89,,,W,\nUSX,20200228,TMIN,-22,,,W,\nUSX,20200228,PRCP,0,,,W,\nUSX,20200229,TMAX,111,,,W,\nUSX,20200229,TMIN,0,,,W,2400\n",
			climate.LayoutLong, climate.TenthsC, climate.YearMonthDay, twoDays,
		},
		"year, month, day": {"year;month;day;maxtp;mintp\n2020;2;28;8.9;-2.2\n2020;2;29;11.1;0.0\n", climate.LayoutColumns, climate.Celsius, climate.SplitColumns, twoDays},
		"notes before": {
			"Station: 7\nUnits: C\n\ndate,maxtp,mintp\n28-feb,1,1\n2020-02-28,8.9,-2.2\n2020-02-29T00:00:00,11.1,0.0\n",
			climate.LayoutColumns, climate.Celsius, climate.YearMonthDay, twoDays,
		},
		"compact dates, byte order mark": {"\ufeffYYYYMMDD,TN,TX\r\n20200228,-2.2,8.9\r\n20200229,0,11.1\r\n", climate.LayoutColumns, climate.Celsius, climate.YearMonthDay, twoDays},
		"fixed width":                    {dly(t), climate.LayoutDly, climate.TenthsC, climate.MonthInRecord, twoDays},
	} {
		t.Run(name, func(t *testing.T) {
			r, report, err := climate.ReadDaily(strings.NewReader(c.text), climate.ReadOptions{})
			if err != nil {
				t.Fatalf("%v; report %+v", err, report)
			}
			if report.Layout != c.layout || report.Unit != c.unit || report.Order != c.order {
				t.Errorf("layout %q, unit %q, order %q; want %q, %q, %q", report.Layout, report.Unit, report.Order, c.layout, c.unit, c.order)
			}
			if c.want == "" {
				return
			}
			if diff := cmp.Diff(c.want, days(r)); diff != "" {
				t.Errorf("days (-want +got):\n%s", diff)
			}
		})
	}
}

// dly is a month in NOAA's fixed width, its third-last value with a failed
// quality check.
func dly(t *testing.T) string {
	t.Helper()
	var b strings.Builder
	for _, row := range []struct {
		element string
		values  map[int]string
	}{
		{"TMAX", map[int]string{27: "  300 I ", 28: "   89  W", 29: "  111  W"}},
		{"TMIN", map[int]string{27: "-9999   ", 28: "  -22  W", 29: "    0  W"}},
		{"PRCP", map[int]string{28: "    0  W"}},
	} {
		b.WriteString("USX00000001202002" + row.element)
		for d := 1; d <= 31; d++ {
			v, ok := row.values[d]
			if !ok {
				v = "-9999   "
			}
			b.WriteString(v)
		}
		b.WriteByte('\n')
	}
	return b.String()
}

// Every kind of fault is counted and located by its line.
func TestReadFaults(t *testing.T) {
	text := "date,tmin,tmax\n" +
		"2020-01-01,1,5\n" + // 2
		"2020-01-02,7,3\n" + // 3: crossed
		"2020-01-03,1,5\n" +
		"2020-01-03,1,5\n" + // 5: double
		"2020-01-03,2,5\n" + // 6: conflict
		"2020-01-06,1,5\n" +
		"2020-01-05,1,5\n" + // 8: order
		"2020-02-30,1,5\n" + // 9: date
		"1850-01-01,1,5\n" + // 10: year
		"2020-01-07,abc,5\n" + // 11: number
		"2020-01-08,1,99\n" + // 12: range
		"2020-01-09,,\n" + // 13: no value
		"2020-01-10\n" + // 14: short
		"2020-01-11,\"1,5\n" + // 15: stray quote
		"2020-01-12,-5.5,5\n" +
		"2020-01-13," + strings.Repeat("1", 20000) + ",5\n" // 17: long
	r, report, err := climate.ReadDaily(strings.NewReader(text), climate.ReadOptions{Unit: climate.Celsius})
	if err != nil {
		t.Fatal(err)
	}
	want := map[climate.Fault][]int{
		climate.FaultCrossed: {3}, climate.FaultDuplicate: {5}, climate.FaultConflict: {6}, climate.FaultOrder: {8},
		climate.FaultDate: {9}, climate.FaultYear: {10}, climate.FaultNumber: {11}, climate.FaultRange: {12},
		climate.FaultEmpty: {13}, climate.FaultShortRow: {14}, climate.FaultPunctuated: {15}, climate.FaultLongLine: {17},
	}
	got := map[climate.Fault][]int{}
	for _, f := range report.Faults {
		got[f.Fault] = f.Lines
		if f.Count != len(f.Lines) {
			t.Errorf("%s: count %d with lines %v", f.Fault, f.Count, f.Lines)
		}
	}
	if diff := cmp.Diff(want, got); diff != "" {
		t.Errorf("faults (-want +got):\n%s", diff)
	}
	if v := r.On(civil.MustParse("2020-01-03")); v.Tmin != 1 {
		t.Errorf("the first of two values for a day must stay, got %v", v)
	}
}

func TestReadTakesOneStation(t *testing.T) {
	text := "STATION,DATE,TMIN,TMAX\nA,2020-01-01,1.5,5\nB,2020-01-01,-9.5,0\n"
	_, report, err := climate.ReadDaily(strings.NewReader(text), climate.ReadOptions{Station: "B"})
	if err != nil || report.Station != "B" || report.Count(climate.FaultStation) != 1 || !cmp.Equal(report.OtherStations, []string{"A"}) {
		t.Errorf("%v, %+v", err, report)
	}
}

func TestReadRefusesWhatIsNoTable(t *testing.T) {
	for _, text := range []string{"", "\n\n", "hello\nworld\n", "\x00\x01\x02", "date,rain\n2020-01-01,5\n", "a,b,c\n1,2,3\n"} {
		r, report, err := climate.ReadDaily(strings.NewReader(text), climate.ReadOptions{})
		if !errors.Is(err, climate.ErrNoDays) || r != nil || report.Layout != climate.LayoutNone {
			t.Errorf("%q: %v, layout %q, error %v", text, r, report.Layout, err)
		}
	}
}

func TestReadStopsAtTheLimit(t *testing.T) {
	text := "date,tmin,tmax\n2020-01-01,-1.5,5\n2020-01-02,-1.5,5\n"
	r, report, err := climate.ReadDaily(strings.NewReader(text), climate.ReadOptions{MaxBytes: 45})
	if err != nil || !report.Truncated || r.Last() != civil.MustParse("2020-01-01") {
		t.Errorf("%v, %+v", err, report)
	}
}

// An ambiguous order of dates is guessed and said to be.
func TestReadSaysWhatItGuesses(t *testing.T) {
	text := "date,tmin,tmax\n01/02/2020,-10.5,5\n02/02/2020,-10.5,5\n03/02/2020,-10.5,5\n"
	_, report, err := climate.ReadDaily(strings.NewReader(text), climate.ReadOptions{})
	if err != nil || report.Order != climate.DayMonthYear || report.OrderBy != climate.Guessed || !report.Doubtful() {
		t.Errorf("%v, %+v", err, report)
	}
}

func FuzzReadDaily(f *testing.F) {
	f.Add("date,tmin,tmax\n2020-02-28,-2.2,8.9\n", "")
	f.Add("Datum;TNK;TXK\n28.02.2020;-2,2;8,9\n", "C")
	f.Add("USX00000001202002TMIN  -22  W    0 I \n", "F")
	f.Add("USX,20200228,TMAX,89,,,W,\nUSX,20200228,TMIN,-22,,I,W,\n", "tenths_C")
	f.Add("\"date\",\"tmin\",\"tmin_attributes\"\n\"2020-02-28\",\"-2\"\",\",,I,\"\n", "")
	f.Add("year,month,day,min,max\n2020,2,30,1,2\n9999999999,2,3,1,2\n", "")
	f.Fuzz(func(t *testing.T, text, unit string) {
		r, report, err := climate.ReadDaily(strings.NewReader(text), climate.ReadOptions{Unit: climate.Unit(unit), MaxBytes: 1 << 20})
		if (err == nil) != (r != nil) {
			t.Fatalf("record %v with error %v", r, err)
		}
		if r == nil {
			return
		}
		if r.Last() < r.First() || report.First != r.First() || report.AllDays != int(r.Last()-r.First())+1 {
			t.Fatalf("record from %v to %v, report %+v", r.First(), r.Last(), report)
		}
		for d := r.First(); d <= r.Last(); d++ {
			if v := r.On(d); v.Tmin > v.Tmax || v.Tmin < -90 || v.Tmax > 57 {
				t.Fatalf("%v: %v", d, v)
			}
		}
		r.Seasons(false)
		r.Seasons(true)
	})
}
