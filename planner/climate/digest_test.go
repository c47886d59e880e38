package climate_test

import (
	"errors"
	"math"
	"testing"

	"github.com/google/go-cmp/cmp"

	"fourturn/planner/civil"
	"fourturn/planner/climate"
	"fourturn/planner/climate/climatetest"
	"fourturn/planner/quantity"
)

var seriesOfTheTests = []string{"IE518", "USC00275868", "USC00317202", "USC00323621", "USW00023230", "USW00093209", "USW00094728", "USW00094789"}

// bothOf returns the climate of a record and that of its digest.
func bothOf(t testing.TB, r *climate.Record, latitude float64) (record, digest *climate.Climate) {
	t.Helper()
	place := climate.Place{Latitude: latitude, Elevation: 50}
	record, err := climate.New(climate.Input{Record: r, Place: &place})
	if err != nil {
		t.Fatal(err)
	}
	d, err := r.Digest("own.csv", latitude < 0, 0)
	if err != nil {
		t.Fatal(err)
	}
	digest, err = climate.New(climate.Input{Digest: d, Place: &place})
	if err != nil {
		t.Fatal(err)
	}
	return record, digest
}

// A digest stands in for its record: normals to a hundredth of a kelvin; dates of
// freeze to the day at the thresholds and levels that it holds; between them within
// three days in the mean of a series, where the record itself jumps with the whole
// degrees Fahrenheit that most of these series were read in; yearly odds within 4 %.
func TestADigestStandsInForItsRecord(t *testing.T) {
	held := map[climate.Risk]bool{0.01: true, 0.05: true, 0.1: true, 0.5: true, 0.9: true, 0.95: true, 0.99: true}
	thresholds := []float64{-8.9, -6.7, -4.4, -2.2, 0, 2.2, -5.5, -2.7, -0.6, 1.6, 3.1}
	const whole = 6 // of them are held
	for _, id := range seriesOfTheTests {
		record, digest := bothOf(t, climatetest.Record(t, id), 45)
		worst, sum, n := 0, 0.0, 0.0
		for i, threshold := range thresholds {
			a, b := record.Freeze(quantity.Temperature(threshold)), digest.Freeze(quantity.Temperature(threshold))
			if math.Abs(a.Annual()-b.Annual()) > 0.04 {
				t.Errorf("%s at %g °C: yearly odds %.3f, of the digest %.3f", id, threshold, a.Annual(), b.Annual())
			}
			if a.Annual() < 0.15 { // near 10 % the one may state dates and the other not
				continue
			}
			for _, risk := range []climate.Risk{0.01, 0.05, 0.1, 0.15, 0.25, 0.5, 0.75, 0.85, 0.9, 0.95, 0.99} {
				for k, dates := range [2][2]climate.FreezeDate{
					{a.LastFreeze(risk), b.LastFreeze(risk)}, {a.FirstFreeze(risk), b.FirstFreeze(risk)},
				} {
					if dates[0].Outcome != dates[1].Outcome && risk >= 0.05 {
						t.Errorf("%s at %g °C, side %d, %g: %s, of the digest %s", id, threshold, k, risk, dates[0].Outcome, dates[1].Outcome)
						continue
					}
					if !dates[0].Known() || !dates[1].Known() {
						continue
					}
					d := later(dates[1].Day, dates[0].Day)
					d = max(d, -d)
					if i < whole && held[risk] && d > 0 {
						t.Errorf("%s at %g °C, side %d, %g: %s, of the digest %s", id, threshold, k, risk, dates[0].Day, dates[1].Day)
					} else if i >= whole {
						worst, sum, n = max(worst, d), sum+float64(d), n+1
					}
				}
			}
		}
		t.Logf("%s between what is held: mean %.1f days, worst %d", id, sum/n, worst)
		limit := 3.0
		if id == "USW00023230" { // thirteen seasons, some without a frost: a degree is weeks
			limit = 7
		}
		if sum/n > limit {
			t.Errorf("%s between what is held: mean %.1f days", id, sum/n)
		}
		if a, b := record.ExtremeMin().Mean, digest.ExtremeMin().Mean; math.Abs(float64(a-b)) > 0.01 {
			t.Errorf("%s: extreme %v, of the digest %v", id, a, b)
		}
		da, db := record.Daily(), digest.Daily()
		for i := range da.Tmin {
			if math.Abs(da.Tmin[i]-db.Tmin[i]) > 0.02 || math.Abs(da.Tmax[i]-db.Tmax[i]) > 0.02 {
				t.Fatalf("%s: normals of day %d differ", id, i)
			}
		}
	}
}

// Heat of a digest against that of its record: days a year above 30 °C to a
// hundredth, above other limits as near as the whole degrees Fahrenheit of most series
// allow; odds of a run of five hot days within a quarter on any day and an eighth at the
// end of the year.
func TestHeatOfADigest(t *testing.T) {
	const degreeF = quantity.Temperature(1 / 1.8)
	for _, id := range seriesOfTheTests {
		record, digest := bothOf(t, climatetest.Record(t, id), 45)
		for _, limit := range []quantity.Temperature{21.1, 25, 26.7, 30, 32.2, 35} {
			most, least := record.HotDays(limit-degreeF), record.HotDays(limit+degreeF)
			a, b := record.HotDays(limit), digest.HotDays(limit)
			t.Logf("%s: %.1f days above %g °C, of the digest %.1f", id, a.Days, float64(limit), b.Days)
			if b.Days > most.Days+0.1 || b.Days < least.Days-0.1 || limit == 30 && math.Abs(a.Days-b.Days) > 0.01 {
				t.Errorf("%s: %.2f days above %g °C, of the digest %.2f", id, a.Days, float64(limit), b.Days)
			}
		}
		spell := climate.HotSpell{Above: 26.7, Days: 5}
		a, b := record.HotSpellOdds(spell, civil.MonthDay{Month: 1, Day: 1}), digest.HotSpellOdds(spell, civil.MonthDay{Month: 1, Day: 1})
		worst, at := 0.0, 0
		for i := range a {
			if d := math.Abs(a[i] - b[i]); d > worst {
				worst, at = d, i
			}
		}
		t.Logf("%s: odds of a run of hot days differ by up to %.2f, on %s; at the end %.2f and %.2f", id, worst, climate.MonthDayAt(at), a[364], b[364])
		if worst > 0.25 || math.Abs(a[364]-b[364]) > 0.12 {
			t.Errorf("%s: odds of a run of hot days differ by %.2f", id, worst)
		}
		pa, pb := record.ProbMinBelow(0), digest.ProbMinBelow(0)
		for i := range pa {
			if d := math.Abs(pa[i] - pb[i]); d > 0.15 {
				t.Errorf("%s: odds of a freezing night on day %d: %.2f, of the digest %.2f", id, i, pa[i], pb[i])
				break
			}
		}
	}
}

// Half a year later a northern record is a southern one.
func TestADigestOfTheSouth(t *testing.T) {
	north := climatetest.Record(t, "USW00094789")
	var days []climate.DayValue
	for d := north.First(); d <= north.Last(); d++ {
		v := north.On(d)
		v.Date += 184 // 1 August falls on 1 February, in all but some years
		days = append(days, v)
	}
	record, digest := bothOf(t, climate.NewRecord(days), -40)
	for _, risk := range []climate.Risk{0.1, 0.5, 0.9} {
		if a, b := record.LastFreeze(0, risk).Day, digest.LastFreeze(0, risk).Day; a != b || a.Month < 8 || a.Month > 11 {
			t.Errorf("last freeze %s, of the digest %s", a, b)
		}
	}
	d, err := climate.NewRecord(days).Digest("", true, 0)
	if err != nil {
		t.Fatal(err)
	}
	_, err = climate.New(climate.Input{Digest: d, Place: &climate.Place{Latitude: 40}})
	if e := new(climate.Error); !errors.As(err, &e) || e.Code != "climate.record_other_hemisphere" {
		t.Errorf("a southern digest in the north: %v", err)
	}
}

// A record without frost makes a climate without frost.
func TestADigestOfTheTropics(t *testing.T) {
	var days []climate.DayValue
	for d := civil.New(1995, 1, 1); d < civil.New(2015, 1, 1); d++ {
		wave := math.Sin(float64(d)) + math.Sin(float64(d)/9)
		days = append(days, climate.DayValue{Date: d, Tmin: 22 + wave, Tmax: 31 + wave})
	}
	record, digest := bothOf(t, climate.NewRecord(days), 5)
	if a, b := record.Freeze(0).Kind(), digest.Freeze(0).Kind(); a != climate.NeverFreezes || b != a {
		t.Errorf("it %s, by the digest it %s", a, b)
	}
	if a, b := digest.Seasons(climate.Cautious).List, record.Seasons(climate.Cautious).List; !cmp.Equal(a, b) {
		t.Errorf("seasons %v, of the digest %v", b, a)
	}
}

// The seasons of a digest say which do not count; a faulty digest is refused.
func TestDigestsThatAreRefused(t *testing.T) {
	r := climatetest.Record(t, "USC00275868")
	whole, err := r.Digest("own", false, 100)
	if err != nil {
		t.Fatal(err)
	}
	counted, left := 0, 0
	for i, s := range r.Seasons(false) {
		if d := whole.Seasons[i]; d.Year != s.From.Year() || d.Counts() != s.Counts || d.Missing != s.Missing {
			t.Errorf("season %d: %+v, of the record %+v", i, d, s)
		}
		if s.Counts {
			counted++
		} else {
			left++
		}
	}
	if counted < 8 || left < 8 {
		t.Fatalf("%d seasons count and %d do not: this series is no test", counted, left)
	}
	for code, spoil := range map[string]func(*climate.Digest){
		"climate.record_too_short": func(d *climate.Digest) { d.Seasons = d.Seasons[:4] },
		"climate.record_levels": func(d *climate.Digest) {
			d.Freezes = []climate.FreezeDigest{{Share: 1, Last: make([]civil.MonthDay, 2)}}
		},
		"climate.record_scatter":          func(d *climate.Digest) { d.Scatter.Tmax[3] = 0 },
		"climate.tmin_above_tmax":         func(d *climate.Digest) { d.Means.Tmin[3] = d.Means.Tmax[3] + 1 },
		"climate.record_other_hemisphere": func(d *climate.Digest) { d.Southern = true },
	} {
		d := *whole
		spoil(&d)
		_, err := climate.New(climate.Input{Digest: &d, Place: &climate.Place{Latitude: 43}})
		if e := new(climate.Error); !errors.As(err, &e) || e.Code != code {
			t.Errorf("want %s, got %v", code, err)
		}
	}
	if _, err := r.Between(r.First(), r.First()+900).Digest("", false, 0); err == nil {
		t.Error("three years make a digest")
	}
}
