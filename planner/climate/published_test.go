package climate_test

import (
	"math"
	"strconv"
	"strings"
	"testing"

	"fourturn/planner/civil"
	"fourturn/planner/climate"
	"fourturn/planner/climate/climatetest"
	"fourturn/planner/quantity"
)

// A complete published table comes back day for day: levels 10 to 90 % at 32 °F.
func TestCompleteTablesComeBack(t *testing.T) {
	for key, tables := range freezeTables(t) {
		s := baseOf(t, key)
		for _, table := range tables {
			c, err := climate.New(climate.Input{Station: &s, Frost: &table})
			if err != nil {
				t.Fatal(err)
			}
			for _, side := range []struct {
				name string
				days []climate.FreezeLevel
				ask  func(climate.Risk) climate.FreezeDate
			}{
				{"last", table.Last, c.Freeze(quantity.Temperature(table.Threshold)).LastFreeze},
				{"first", table.First, c.Freeze(quantity.Temperature(table.Threshold)).FirstFreeze},
			} {
				for _, want := range side.days {
					if got := side.ask(climate.Risk(want.Odds)); later(got.Day, want.Day) != 0 {
						t.Errorf("%s, %g °C, %s %g: %s %s, published %s", key, table.Threshold, side.name, want.Odds, got.Outcome, got.Day, want.Day)
					}
				}
			}
		}
	}
}

// From the 32 °F table alone, or from its 50 and 90 % levels alone, the rest of
// NOAA's complete tables is worked out; the differences in days are printed.
// The tolerances, in days, are what the method reached when it was made. Westchester
// lies on the curve of another station, for lack of its own means.
func TestTablesFromTheirParts(t *testing.T) {
	tolerance := map[string]int{"36": 6, "32": 6, "28": 7, "24": 8, "20": 7, "16": 5}
	var worst int
	for _, row := range published(t, "climate_freeze.csv") {
		key := row["ghcn_id"] + " " + row["period"]
		if row["element"] == "PRBGSL" {
			continue
		}
		var known climate.FreezeDates
		for _, table := range freezeTables(t)[key] {
			if table.Threshold == 0 {
				known = climate.FreezeDates{
					Last:  []climate.FreezeLevel{table.Last[4], table.Last[8]},
					First: []climate.FreezeLevel{table.First[4], table.First[8]},
				}
			}
		}
		s := baseOf(t, key)
		c, err := climate.New(climate.Input{Station: &s, Frost: &known})
		if err != nil {
			t.Fatal(err)
		}
		o := c.Freeze(quantity.Temperature(fahrenheit(t, row["threshold_F"])))
		var diffs []string
		for p := 1; p <= 9; p++ {
			risk := climate.Risk(float64(p) / 10)
			got := o.LastFreeze(risk)
			if row["element"] == "PRBFST" {
				got = o.FirstFreeze(risk)
			}
			d := later(got.Day, civil.MustParseMonthDay(row["p"+strconv.Itoa(p)+"0"]))
			diffs = append(diffs, strconv.Itoa(d))
			worst = max(worst, d, -d)
			if d > tolerance[row["threshold_F"]] || -d > tolerance[row["threshold_F"]] {
				t.Errorf("%s %s %s °F p%d0: off by %d days", key, row["element"], row["threshold_F"], p, d)
			}
		}
		t.Logf("%s %s %s °F, days off at p10..p90: %s", key, row["element"], row["threshold_F"], strings.Join(diffs, " "))
	}
	t.Logf("worst: %d days", worst)
}

// NOAA's lengths of the freeze-free season from its own dates of both ends: the
// two ends are taken for independent. Tolerance 4 days.
func TestSeasonLengths(t *testing.T) {
	for _, row := range published(t, "climate_freeze.csv") {
		if row["element"] != "PRBGSL" {
			continue
		}
		key := row["ghcn_id"] + " " + row["period"]
		for _, table := range freezeTables(t)[key] {
			if table.Threshold != fahrenheit(t, row["threshold_F"]) {
				continue
			}
			s := baseOf(t, key)
			c, err := climate.New(climate.Input{Station: &s, Frost: &table})
			if err != nil {
				t.Fatal(err)
			}
			for p := 1; p <= 9; p++ {
				want := int(num(t, row["p"+strconv.Itoa(p)+"0"]))
				got := c.Freeze(quantity.Temperature(table.Threshold)).FreeDays(climate.Risk(float64(p) / 10)).Days
				if d := got - want; d > 4 || d < -4 {
					t.Errorf("%s %s °F p%d0: %d days, published %d", key, row["threshold_F"], p, got, want)
				}
			}
		}
	}
}

// The daily series 1981-2010 against NOAA's published 50 and 90 % dates. The
// difference of each station is printed, beside that of plain percentiles of the
// seasons, which is what the smoothing is for.
func TestDailySeriesAgainstPublished(t *testing.T) {
	total, totalPlain := 0, 0
	for _, row := range published(t, "climate_daily_freeze.csv") {
		r := climatetest.Record(t, row["ghcn_id"]).Between(civil.MustParse("1980-08-01"), civil.MustParse("2010-12-31"))
		c, err := climate.New(climate.Input{Record: r, RecordYears: 40, Place: &climate.Place{Latitude: num(t, row["latitude"])}})
		if err != nil {
			t.Fatalf("%s: %v", row["ghcn_id"], err)
		}
		o := c.Freeze(0)
		t.Logf("%s: last 10/50/90 %% %s %s %s, first %s %s %s", row["ghcn_id"],
			o.LastFreeze(climate.Cautious).Day, o.LastFreeze(climate.Even).Day, o.LastFreeze(climate.Bold).Day,
			o.FirstFreeze(climate.Cautious).Day, o.FirstFreeze(climate.Even).Day, o.FirstFreeze(climate.Bold).Day)
		plain := plainPercentiles(r)
		for _, x := range []struct {
			column, tolerance string
			got               climate.FreezeDate
			plain             civil.MonthDay
		}{
			{"last_p50", "tolerance_p50_d", o.LastFreeze(climate.Even), plain[0]},
			{"last_p90", "tolerance_p90_d", o.LastFreeze(climate.Bold), plain[1]},
			{"first_p50", "tolerance_p50_d", o.FirstFreeze(climate.Even), plain[2]},
			{"first_p90", "tolerance_p90_d", o.FirstFreeze(climate.Bold), plain[3]},
		} {
			if row[x.column] == "" {
				continue
			}
			want := civil.MustParseMonthDay(row[x.column])
			d := later(x.got.Day, want)
			t.Logf("   %s: %s, published %s: %+d days (plain percentile %+d)", x.column, x.got.Day, want, d, later(x.plain, want))
			total, totalPlain = total+max(d, -d), totalPlain+max(later(x.plain, want), -later(x.plain, want))
			limit := int(num(t, row[x.tolerance]))
			if limit == 0 || x.column == "last_p90" && row["last_p90_counts"] == "no" {
				continue
			}
			if d > limit || d < -limit {
				t.Errorf("%s %s: %+d days from the published date, tolerance %d", row["ghcn_id"], x.column, d, limit)
			}
		}
	}
	t.Logf("all dates: %d days off, plain percentiles %d", total, totalPlain)
	if total >= totalPlain {
		t.Errorf("the smoothing is %d days off in all, plain percentiles %d", total, totalPlain)
	}
}

// plainPercentiles returns the 50 and 90 % dates of last and first freeze by
// linear interpolation among the seasons.
func plainPercentiles(r *climate.Record) [4]civil.MonthDay {
	var last, first []float64
	for _, s := range r.Seasons(false) {
		if !s.Counts {
			continue
		}
		l, f := -1, -1
		for d := s.From; d <= s.To; d++ {
			if r.On(d).Tmin <= 0.001 {
				l = int(d - s.From)
				if f < 0 {
					f = l
				}
			}
		}
		if f >= 0 {
			last, first = append(last, float64(l)), append(first, float64(f))
		}
	}
	at := func(x []float64, p float64) civil.MonthDay {
		sorted := append([]float64(nil), x...)
		for i := range sorted {
			for k := i + 1; k < len(sorted); k++ {
				if sorted[k] < sorted[i] {
					sorted[i], sorted[k] = sorted[k], sorted[i]
				}
			}
		}
		pos := p * float64(len(sorted)-1)
		i := min(int(pos), len(sorted)-2)
		v := sorted[i] + (pos-float64(i))*(sorted[i+1]-sorted[i])
		return civil.New(2000, 8, 1).AddDays(int(math.Round(v))).MonthDay()
	}
	return [4]civil.MonthDay{at(last, 0.5), at(last, 0.1), at(first, 0.5), at(first, 0.9)}
}
