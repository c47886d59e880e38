package climate_test

import (
	"math"
	"strconv"
	"testing"

	"pgregory.net/rapid"

	"fourturn/planner/civil"
	"fourturn/planner/climate"
	"fourturn/planner/climate/climatetest"
	"fourturn/planner/quantity"
)

// NOAA NCEI, U.S. Climate Normals 1981-2010, Richmond VA: mean days a year with a
// maximum of at least 70, 80 and 90 °F, estimated from the monthly means alone.
// The tolerance is nine days.
func TestHotDaysAgainstPublished(t *testing.T) {
	for _, row := range published(t, "climate_days.csv") {
		var m climate.Means
		for i := range 12 {
			column := "tmax_" + strconv.Itoa(100 + i + 1)[1:] + "_F"
			m.Tmax[i] = float64(quantity.FromFahrenheit(num(t, row[column])))
			m.Tmin[i] = m.Tmax[i] - 10
		}
		c := mustNew(t, climate.Input{Means: &m, Place: &climate.Place{Latitude: num(t, row["latitude"])}})
		// At least 80 °F in whole degrees is above 79.5.
		limit := quantity.FromFahrenheit(num(t, row["limit_F"]) - 0.5)
		got := c.HotDays(limit)
		want := num(t, row["mean_days"])
		t.Logf("%s, %s %s °F: %.1f days estimated, %.1f published", row["place"], row["element"], row["limit_F"], got.Days, want)
		if !got.Estimated() || math.Abs(got.Days-want) > 9 {
			t.Errorf("%.1f days, published %.1f", got.Days, want)
		}
	}
}

// Days above 30 °C, spells and single cold nights estimated from the means of a
// daily series against those counted in it. The differences are printed.
func TestHeatFromMeansAgainstSeries(t *testing.T) {
	for _, x := range []struct {
		id    string
		place climate.Place
	}{
		{"USW00094728", climate.Place{Latitude: 40.78, Longitude: -73.97, Elevation: 40}},
		{"USC00317202", climate.Place{Latitude: 36.38, Longitude: -79.69, Elevation: 271}},
		{"USW00093209", climate.Place{Latitude: 35.67, Longitude: -120.63, Elevation: 247}},
		{"USC00323621", climate.Place{Latitude: 47.92, Longitude: -97.1, Elevation: 253}},
		{"IE518", climate.Place{Latitude: 52.69, Longitude: -8.92, Elevation: 15}},
	} {
		r := climatetest.Record(t, x.id).Between(civil.MustParse("1981-01-01"), civil.MustParse("2015-12-31"))
		counted := mustNew(t, climate.Input{Record: r, Place: &x.place})
		means, _, _ := r.Between(r.Last().AddYears(-30)+1, r.Last()).Means()
		estimated := mustNew(t, climate.Input{Means: &means, Place: &x.place})
		a, b := estimated.HotDays(30), counted.HotDays(30)
		t.Logf("%s: %.1f days above 30 °C estimated, %.1f counted", x.id, a.Days, b.Days)
		if math.Abs(a.Days-b.Days) > 5 || b.Estimated() {
			t.Errorf("%s: %.1f days estimated, %.1f counted", x.id, a.Days, b.Days)
		}
		spell := climate.HotSpell{Above: 26.7, Days: 5}
		january := civil.MonthDay{Month: 1, Day: 1}
		p, q := estimated.HotSpellOdds(spell, january), counted.HotSpellOdds(spell, january)
		for _, day := range []string{"05-15", "06-01", "06-15", "07-01", "08-01"} {
			i := climate.MonthDayIndex(civil.MustParseMonthDay(day))
			t.Logf("   five days above 26.7 °C by %s: odds %.2f estimated, %.2f counted", day, p[i], q[i])
			if math.Abs(p[i]-q[i]) > 0.22 {
				t.Errorf("%s by %s: odds %.2f estimated, %.2f counted", x.id, day, p[i], q[i])
			}
		}
		u, v := estimated.ProbMinBelow(0), counted.ProbMinBelow(0)
		sum := 0.0
		for i := range u {
			sum += math.Abs(u[i]-v[i]) / climate.DaysPerYear
		}
		t.Logf("   single nights at or below 0 °C: mean difference of the odds %.3f", sum)
		if sum > 0.06 {
			t.Errorf("%s: odds of single nights differ by %.3f", x.id, sum)
		}
	}
}

// Hotter limits and longer runs are rarer; odds grow with the days counted.
func TestHeatLaws(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := anyClimate(t)
		limit := rapid.Float64Range(5, 40).Draw(t, "limit")
		step := rapid.Float64Range(0, 8).Draw(t, "step")
		cool, hot := c.HotDays(quantity.Temperature(limit)).Days, c.HotDays(quantity.Temperature(limit+step)).Days
		if hot > cool+1e-9 || cool > 365.0001 || hot < 0 {
			t.Fatalf("%v days above %v, %v above %v", cool, limit, hot, limit+step)
		}
		n := rapid.IntRange(1, 10).Draw(t, "days")
		from := climate.MonthDayAt(rapid.IntRange(0, 364).Draw(t, "from"))
		a := c.HotSpellOdds(climate.HotSpell{Above: quantity.Temperature(limit), Days: n}, from)
		b := c.HotSpellOdds(climate.HotSpell{Above: quantity.Temperature(limit), Days: n + 2}, from)
		before := 0.0
		for i := range a {
			if !(a[i] >= before && a[i] <= 1) {
				t.Fatalf("day %d: odds %v after %v", i, a[i], before)
			}
			before = a[i]
		}
		if b[364] > a[364]+0.02 {
			t.Fatalf("runs of %d days odds %v, of %d days %v", n, a[364], n+2, b[364])
		}
	})
}
