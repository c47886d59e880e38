package climate_test

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"fourturn/planner/civil"
	"fourturn/planner/climate"
	"fourturn/planner/climate/climatetest"
	"fourturn/planner/quantity"
)

// anyMeans draws a year of means from the arctic to the tropics, of either
// hemisphere, with a few rough edges.
func anyMeans(t *rapid.T) (climate.Means, float64) {
	latitude := rapid.Float64Range(-70, 75).Draw(t, "latitude")
	mean := rapid.Float64Range(-15, 20).Draw(t, "mean")
	swing := rapid.Float64Range(0, 22).Draw(t, "swing")
	var m climate.Means
	for i := range 12 {
		angle := 2 * math.Pi * (float64(i) - 0.4) / 12
		season := -swing * math.Cos(angle)
		if latitude < 0 {
			season = -season
		}
		m.Tmin[i] = mean + season + rapid.Float64Range(-1, 1).Draw(t, "edge")
		m.Tmax[i] = m.Tmin[i] + rapid.Float64Range(2, 16).Draw(t, "spread")
	}
	return m, latitude
}

// anyClimate draws a climate from means, a station, dates or a record.
func anyClimate(t *rapid.T) *climate.Climate {
	stations := climate.Stations()
	s := stations[rapid.IntRange(0, len(stations)-1).Draw(t, "station")]
	in := climate.Input{Station: &s}
	switch rapid.IntRange(0, 3).Draw(t, "kind") {
	case 0:
		m, latitude := anyMeans(t)
		in = climate.Input{Means: &m, Place: &climate.Place{Latitude: latitude}}
	case 1:
		near := climate.NearestFreeze(s.Place, 1)[0].Station
		in.Nearby = &near
	case 2:
		height := quantity.Length(rapid.Float64Range(-400, 5000).Draw(t, "height"))
		in.Elevation = &height
	}
	c, err := climate.New(in)
	if err != nil {
		t.Fatalf("%v", err)
	}
	return c
}

var risks = []climate.Risk{0.01, 0.05, 0.1, 0.25, 0.5, 0.75, 0.9, 0.95, 0.99}

// checkOdds is what holds for any odds: they are odds, they fall through spring
// and rise through autumn, and dates at risks stand in order.
func checkOdds(t interface{ Fatalf(string, ...any) }, o *climate.FreezeOdds, start civil.Date) {
	if a := o.Annual(); !(a >= 0 && a <= 1) {
		t.Fatalf("annual odds %v", a)
	}
	spring, autumn := 2.0, -1.0
	for i := range climate.DaysPerYear {
		d := start.AddDays(i).MonthDay()
		s, a := o.SpringRisk(d), o.AutumnRisk(d)
		if !(s >= 0 && s <= spring+1e-12 && a <= 1 && a >= autumn-1e-12 && s <= o.Annual()+1e-9 && a <= o.Annual()+1e-9) {
			t.Fatalf("%s: spring %v after %v, autumn %v after %v, annual %v", d, s, spring, a, autumn, o.Annual())
		}
		spring, autumn = s, a
	}
	last, first, from, until := -1, -1, -1, -1
	order := func(d climate.FreezeDate, before *int, sign int) {
		if !d.Known() {
			return
		}
		k := int(d.Day.In(2001)-start+2*365) % 365
		if *before >= 0 && sign*(k-*before) > 0 {
			t.Fatalf("dates out of order: %s", d.Day)
		}
		*before = k
	}
	for _, r := range risks {
		order(o.LastFreeze(r), &last, 1)
		order(o.FirstFreeze(r), &first, -1)
		order(o.SafeFrom(r), &from, 1)
		order(o.SafeUntil(r), &until, -1)
	}
}

func seasonStart(c *climate.Climate) civil.Date {
	if c.Southern() {
		return civil.New(2001, 2, 1)
	}
	return civil.New(2001, 8, 1)
}

func TestOddsAreOdds(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := anyClimate(t)
		threshold := quantity.Temperature(rapid.Float64Range(-35, 15).Draw(t, "threshold"))
		checkOdds(t, c.Freeze(threshold), seasonStart(c))
	})
}

// A colder threshold never has greater odds than a warmer one, on any day of
// spring or autumn, whatever the odds rest on: dates never cross.
func TestThresholdsNeverCross(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := anyClimate(t)
		a := rapid.Float64Range(-30, 14).Draw(t, "colder")
		b := a + rapid.Float64Range(0.01, 8).Draw(t, "step")
		cold, warm := c.Freeze(quantity.Temperature(a)), c.Freeze(quantity.Temperature(b))
		if cold.Annual() > warm.Annual()+1e-9 {
			t.Fatalf("annual: %v at %v, %v at %v", cold.Annual(), a, warm.Annual(), b)
		}
		start := seasonStart(c)
		for i := range climate.DaysPerYear {
			d := start.AddDays(i).MonthDay()
			if cold.SpringRisk(d) > warm.SpringRisk(d)+1e-9 || cold.AutumnRisk(d) > warm.AutumnRisk(d)+1e-9 {
				t.Fatalf("%s: spring %v above %v or autumn %v above %v", d,
					cold.SpringRisk(d), warm.SpringRisk(d), cold.AutumnRisk(d), warm.AutumnRisk(d))
			}
		}
	})
}

// The same laws for odds from a daily record, at every tenth of a degree about
// freezing and at extremes.
func TestRecordOddsKeepTheLaws(t *testing.T) {
	r := climatetest.Record(t, "IE518")
	c, err := climate.New(climate.Input{Record: r, Place: &climate.Place{Latitude: 52.7, Longitude: -8.9, Elevation: 15}})
	if err != nil {
		t.Fatal(err)
	}
	var before *climate.FreezeOdds
	for tenths := -400; tenths <= 200; tenths += 5 {
		o := c.Freeze(quantity.Temperature(float64(tenths) / 10))
		checkOdds(t, o, seasonStart(c))
		if before != nil {
			for i := range climate.DaysPerYear {
				d := climate.MonthDayAt(i)
				if before.SpringRisk(d) > o.SpringRisk(d)+1e-9 || before.AutumnRisk(d) > o.AutumnRisk(d)+1e-9 {
					t.Fatalf("%d tenths, %s: odds fall with a warmer threshold", tenths, d)
				}
			}
		}
		before = o
	}
	if a := c.Freeze(-40).Annual(); a != 0 {
		t.Errorf("-40 °C at Shannon: annual odds %v", a)
	}
}

// A spot that is warmer at night by an offset has the odds of the open site at a
// threshold colder by the offset.
func TestSpotShiftsThresholds(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := anyClimate(t)
		night := rapid.Float64Range(-4, 4).Draw(t, "night")
		spot := c.At(climate.Open.With(&night, nil))
		threshold := rapid.Float64Range(-10, 5).Draw(t, "threshold")
		d := climate.MonthDayAt(rapid.IntRange(0, 364).Draw(t, "day"))
		a := spot.Freeze(quantity.Temperature(threshold)).SpringRisk(d)
		b := c.Freeze(quantity.Temperature(threshold - night)).SpringRisk(d)
		if math.Abs(a-b) > 1e-9 {
			t.Fatalf("odds at the spot %v, at the shifted threshold %v", a, b)
		}
		if back := spot.At(climate.Open); back.Daily().Tmin != c.Daily().Tmin {
			t.Fatal("coming back to the open changes the nights")
		}
	})
}

// The odds over a span are those of its days put together, and grow with it.
func TestBetweenPutsDaysTogether(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := anyClimate(t)
		o := c.Freeze(quantity.Temperature(rapid.Float64Range(-8, 4).Draw(t, "threshold")))
		from := civil.New(2023, 1, 1).AddDays(rapid.IntRange(0, 800).Draw(t, "from"))
		days := rapid.IntRange(0, 900).Draw(t, "days")
		daily, survive := o.DailyOdds(), 1.0
		for d := from; d <= from.AddDays(days); d++ {
			survive *= 1 - daily[climate.DayIndex(d)]
		}
		got := o.Between(from, from.AddDays(days))
		// A whole year more or less the leap day.
		if math.Abs(got-(1-survive)) > 0.02 {
			t.Fatalf("Between = %v, days put together %v", got, 1-survive)
		}
		if longer := o.Between(from, from.AddDays(days+30)); longer < got-0.02 {
			t.Fatalf("a longer span is safer: %v, %v", longer, got)
		}
		if o.Between(from, from-1) != 0 {
			t.Fatal("an empty span has odds")
		}
	})
}

// The same weather south of the equator, half a year later, has the same dates
// half a year later. 1 August is 181 days after 1 February.
func TestHemispheresMirror(t *testing.T) {
	r := climatetest.Record(t, "USC00317202")
	var moved []climate.DayValue
	for d := r.First(); d <= r.Last(); d++ {
		v := r.On(d)
		// From 1 August to the 1 February after it.
		v.Date = d.AddDays(184)
		moved = append(moved, v)
	}
	north, err := climate.New(climate.Input{Record: r, Place: &climate.Place{Latitude: 36}})
	if err != nil {
		t.Fatal(err)
	}
	south, err := climate.New(climate.Input{Record: climate.NewRecord(moved), Place: &climate.Place{Latitude: -36}})
	if err != nil {
		t.Fatal(err)
	}
	for _, risk := range risks {
		for _, pair := range [][2]climate.FreezeDate{
			{north.LastFreeze(0, risk), south.LastFreeze(0, risk)},
			{north.FirstFreeze(0, risk), south.FirstFreeze(0, risk)},
		} {
			d := later(pair[1].Day, climate.MonthDayAt(climate.MonthDayIndex(pair[0].Day)+184))
			// Months have other lengths half a year on, and pool other days.
			if d > 4 || d < -4 {
				t.Errorf("at %g: %s north, %s south, %d days from half a year", risk, pair[0].Day, pair[1].Day, d)
			}
		}
	}
}

// Height cools by the lapse rate: 1000 m make 6.5 K.
func TestHeightCools(t *testing.T) {
	s := station(t, "Wien")
	up := s.Place.Elevation + 1000
	low, high := climate.FromStation(s), mustNew(t, climate.Input{Station: &s, Elevation: &up})
	for i := range climate.DaysPerYear {
		if d := low.Daily().Tmin[i] - high.Daily().Tmin[i]; math.Abs(d-6.5) > 1e-9 {
			t.Fatalf("day %d: %g K colder, want 6.5", i, d)
		}
	}
	if a, b := low.LastFreeze(0, climate.Even), high.LastFreeze(0, climate.Even); later(b.Day, a.Day) < 20 {
		t.Errorf("last freeze %s, 1000 m higher %s", a.Day, b.Day)
	}
}

func mustNew(t testing.TB, in climate.Input) *climate.Climate {
	t.Helper()
	c, err := climate.New(in)
	if err != nil {
		t.Fatal(err)
	}
	return c
}
