package rotation_test

import (
	"math"
	"slices"
	"testing"

	"fourturn/planner/civil"
	"fourturn/planner/quantity"
	"fourturn/planner/rotation"
)

// publishedOdds are the odds of a station's published table: between its levels in
// a line of the normal score, between its thresholds in a line of the day.
type publishedOdds struct {
	last, first []publishedRow // by threshold
}

type publishedRow struct {
	threshold float64
	days      []civil.MonthDay // at 10 % … 90 %
}

func readOdds(t testing.TB, site string) publishedOdds {
	var odds publishedOdds
	for _, row := range table(t, "rotation_freeze.csv") {
		if row["site"] != site {
			continue
		}
		r := publishedRow{threshold: number(t, row["threshold_c"])}
		for _, p := range []string{"p10", "p20", "p30", "p40", "p50", "p60", "p70", "p80", "p90"} {
			r.days = append(r.days, civil.MustParseMonthDay(row[p]))
		}
		if row["element"] == "last" {
			odds.last = append(odds.last, r)
		} else {
			odds.first = append(odds.first, r)
		}
	}
	for _, rows := range [][]publishedRow{odds.last, odds.first} {
		slices.SortFunc(rows, func(a, b publishedRow) int { return int(math.Copysign(1, a.threshold-b.threshold)) })
	}
	return odds
}

// score is the normal score of a chance.
func score(p float64) float64 { return math.Sqrt2 * math.Erfinv(2*p-1) }

// chance reads the chance off a row on a day of the year.
func (r publishedRow) chance(day float64) float64 {
	// Levels as (day, score), in the order of days.
	var xs, ys []float64
	for i, d := range r.days {
		xs, ys = append(xs, float64(d.YearDay())), append(ys, score(float64(i+1)/10))
	}
	if xs[0] > xs[len(xs)-1] {
		slices.Reverse(xs)
		slices.Reverse(ys)
	}
	k := 0
	for k < len(xs)-2 && xs[k+1] <= day {
		k++
	}
	y := ys[k] + (ys[k+1]-ys[k])*(day-xs[k])/(xs[k+1]-xs[k])
	return 0.5 * math.Erfc(-y/math.Sqrt2)
}

// at reads the chance between two thresholds, or beyond the last by their distance.
func at(rows []publishedRow, threshold float64, day civil.Date) float64 {
	k := 0
	for k < len(rows)-2 && rows[k+1].threshold <= threshold {
		k++
	}
	f := (threshold - rows[k].threshold) / (rows[k+1].threshold - rows[k].threshold)
	a, b := score(rows[k].chance(float64(day.YearDay()))), score(rows[k+1].chance(float64(day.YearDay())))
	return 0.5 * math.Erfc(-(a+(b-a)*f)/math.Sqrt2)
}

func (o publishedOdds) LastOnOrAfter(threshold quantity.Temperature, day civil.Date) float64 {
	return at(o.last, float64(threshold), day)
}

func (o publishedOdds) FirstOnOrBefore(threshold quantity.Temperature, day civil.Date) float64 {
	return at(o.first, float64(threshold), day)
}

func lebanon(t testing.TB, odds rotation.FreezeOdds) *rotation.Climate {
	t.Helper()
	for _, site := range table(t, "rotation_sites.csv") {
		if site["site"] == "lebanon_nh" {
			climate, err := rotation.NewClimate(normalsOf(t, site, civil.MustParse("2027-01-01"), 730), odds)
			if err != nil {
				t.Fatal(err)
			}
			return climate
		}
	}
	t.Fatal("no normals for Lebanon")
	return nil
}

// A plant that dies at the threshold, put out on the day of a published level of the
// last freeze, lives to midsummer with the chance that is left; one that stood in
// midsummer lives through the day of a level of the first freeze with the same.
// Source: NOAA NCEI US Climate Normals 1991-2020, Lebanon NH.
func TestSurvivalGivesBackPublishedOdds(t *testing.T) {
	odds := readOdds(t, "lebanon_nh")
	o := rotation.NewOutlook(lebanon(t, odds), rotation.DefaultParams())
	midsummer := civil.MustParse("2027-07-20")
	// Thresholds between the table's whole kelvins cost up to 0.02.
	const tolerance = 0.025
	for _, rows := range [][]publishedRow{odds.last, odds.first} {
		for _, row := range rows {
			plant := &rotation.Plant{ID: "at threshold", Lowest: quantity.Temperature(row.threshold), Hardened: true}
			for i, level := range row.days {
				want := 1 - float64(i+1)/10
				day := level.In(2027)
				got := 0.0
				if day < midsummer {
					got = o.Alive(plant, day, midsummer)
				} else {
					got = o.Alive(plant, midsummer, day.AddDays(1))
				}
				if math.Abs(got-want) > tolerance {
					t.Errorf("%g °C, %v: alive with %.3f, published %.1f", row.threshold, level, got, want)
				}
			}
		}
	}
}

// From means and spread alone the even dates come out within a week of NOAA's where
// winters are cold, and within two where a freeze is the matter of a few nights and
// the curve of the minima is flat: there half a kelvin, the difference between the
// years of the means (2003-21) and of the dates (1981-2010), is a week by itself. Such
// odds are estimates; a climate should come with its own.
func TestSurvivalFromNormalsAlone(t *testing.T) {
	for _, site := range table(t, "rotation_sites.csv") {
		if site["last_p50"] == "" {
			continue
		}
		cold := normalsOf(t, site, civil.MustParse("2027-01-01"), 730)
		climate, err := rotation.NewClimate(cold, nil)
		if err != nil {
			t.Fatal(err)
		}
		o := rotation.NewOutlook(climate, rotation.DefaultParams())
		plant := &rotation.Plant{ID: "at threshold", Lowest: 0, Hardened: true}
		midsummer := civil.MustParse("2027-07-20")
		last, first := midsummer, midsummer
		for last > civil.MustParse("2027-01-01") && o.Alive(plant, last, midsummer) > 0.5 {
			last--
		}
		for o.Alive(plant, midsummer, first.AddDays(1)) > 0.5 {
			first++
		}
		for _, d := range []struct {
			got  civil.Date
			want string
		}{{last, site["last_p50"]}, {first, site["first_p50"]}} {
			off := int(d.got - civil.MustParseMonthDay(d.want).In(2027))
			t.Logf("%s: %v, published %s: %+d days", site["site"], d.got, d.want, off)
			tolerance := 7
			if number(t, site["tmin_01"]) > 0 {
				tolerance = 14
			}
			if off < -tolerance || off > tolerance {
				t.Errorf("%s: %v is %d days from the published %s", site["site"], d.got, off, d.want)
			}
		}
	}
}

// The odds of single days serve as well as those of the season.
func TestClimateOfDays(t *testing.T) {
	n := rotation.Normals{From: civil.MustParse("2027-02-27")}
	for range 10 {
		n.Tmin, n.Tmax = append(n.Tmin, 5), append(n.Tmax, 15)
	}
	climate, err := rotation.NewClimateOfDays(n, func(threshold quantity.Temperature, day civil.Date) float64 {
		if threshold >= 0 && day >= civil.MustParse("2027-03-01") {
			return 0.1
		}
		return 0
	})
	if err != nil {
		t.Fatal(err)
	}
	o := rotation.NewOutlook(climate, rotation.DefaultParams())
	plant := &rotation.Plant{Lowest: 0, Hardened: true}
	if got := o.Alive(plant, n.From, civil.MustParse("2027-03-01")); got != 1 {
		t.Errorf("alive with %v before the first cold day", got)
	}
	if got, want := o.Alive(plant, n.From, civil.MustParse("2027-03-04")), 0.9*0.9*0.9; math.Abs(got-want) > 1e-12 {
		t.Errorf("alive with %v after three cold days, want %v", got, want)
	}
}
