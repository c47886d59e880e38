package climate_test

import (
	"testing"

	"pgregory.net/rapid"

	"fourturn/planner/civil"
	"fourturn/planner/climate"
	"fourturn/planner/quantity"
)

// within reports whether a day lies between two others in the round of the year.
func within(d civil.MonthDay, from, to string) bool {
	a, b, x := civil.MustParseMonthDay(from).YearDay(), civil.MustParseMonthDay(to).YearDay(), d.YearDay()
	if a <= b {
		return x >= a && x <= b
	}
	return x >= a || x <= b
}

// The seasons of very different places, each against published season guidance
// where there is some (plants reference, section 5) and against common practice
// (no source) where there is none.
func TestSeasonsAround(t *testing.T) {
	for _, c := range []struct {
		place, season, from, to string // empty from: the season does not exist
		why                     climate.Reason
	}{
		// Illinois: warm annuals after the last frost, early May in Chicago; autumn plants
		// as nights cool, first frost about mid October (plants reference S76, S117, S118).
		{"Chicago", "summer", "05-01", "05-25", ""},
		{"Chicago", "autumn", "09-01", "10-05", ""},
		{"Chicago", "winter", "10-15", "12-01", ""},
		// Louisiana: cool plants October to early May, warm plants April to October (LSU
		// AgCenter, S114): no winter break, one cool planting from autumn to spring.
		{"New Orleans", "autumn", "10-01", "11-30", ""},
		{"New Orleans", "winter", "", "", climate.ReasonRunsOn},
		{"New Orleans", "spring", "", "", climate.ReasonRunsOn},
		{"New Orleans", "summer", "02-15", "04-30", ""},
		// South Florida: warm season May to October, cool November to April (quoting
		// UF, S115).
		{"Miami", "summer", "03-15", "05-15", ""},
		{"Miami", "autumn", "11-01", "12-15", ""},
		{"Miami", "winter", "", "", climate.ReasonRunsOn},
		// Mild oceanic: bedding out in late May, winter pots from late autumn: common
		// practice, no source.
		{"Heathrow", "summer", "05-10", "06-05", ""},
		{"Heathrow", "spring", "02-20", "04-05", ""},
		{"Heathrow", "winter", "10-15", "12-10", ""},
		// The southern hemisphere has its spring in September.
		{"Canberra", "spring", "08-15", "10-15", ""},
		{"Canberra", "summer", "10-20", "12-01", ""},
		{"Canberra", "autumn", "02-15", "04-10", ""},
		{"Canberra", "winter", "04-15", "06-20", ""},
		// Sydney: no freezes, no winter; warm annuals from about October.
		{"Sydney", "summer", "09-01", "10-31", ""},
		{"Sydney", "autumn", "04-01", "05-31", ""},
		{"Sydney", "winter", "", "", climate.ReasonRunsOn},
		// The tropics: one season that never ends, and the heat never lets cool annuals in.
		{"Kuala Lumpur", "summer", "all", "", climate.ReasonAllYear},
		{"Kuala Lumpur", "autumn", "", "", climate.ReasonAlwaysHot},
		{"Kuala Lumpur", "winter", "", "", climate.ReasonRunsOn},
		// Tropical height: neither heat nor frost, and no swing to part the year.
		{"Bogota", "autumn", "", "", climate.ReasonNoSwing},
		// Summits and the high north have no summer.
		{"Mt Washington", "summer", "", "", climate.ReasonTooCool},
		{"Ojmjakon", "summer", "", "", climate.ReasonTooCool},
	} {
		s := climate.FromStation(station(t, c.place)).Seasons(climate.Cautious).Get(climate.SeasonName(c.season))
		switch c.from {
		case "":
			if s.Exists || c.why != s.Why {
				t.Errorf("%s, %s: exists %v, starts %s, why %s; want none, %s", c.place, c.season, s.Exists, s.Start, s.Why, c.why)
			}
		case "all":
			if !s.Exists || !s.AllYear {
				t.Errorf("%s, %s: %+v, want all year", c.place, c.season, s)
			}
		default:
			if !s.Exists || !within(s.Start, c.from, c.to) {
				t.Errorf("%s, %s: exists %v, starts %s (%s), want %s to %s", c.place, c.season, s.Exists, s.Start, s.Why, c.from, c.to)
			}
		}
	}
}

// At any place and risk the seasons that exist follow each other through the
// year, fill it without gap or overlap, and each lasts at least the shortest.
func TestSeasonsFillTheYear(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := anyClimate(t)
		risk := climate.Risk(rapid.Float64Range(0.01, 0.99).Draw(t, "risk"))
		seasons := c.Seasons(risk)
		total, n := 0, 0
		for _, s := range seasons.List {
			if s.Exists && s.AllYear {
				return
			}
			if !s.Exists {
				if s.Why == "" || !s.Start.IsZero() {
					t.Fatalf("%s does not exist without a reason: %+v", s.Name, s)
				}
				continue
			}
			if s.Days < climate.DefaultSeasonRules.ShortestDay {
				t.Fatalf("%s lasts %d days", s.Name, s.Days)
			}
			total, n = total+s.Days, n+1
			if later(s.End, s.Start) != (s.Days-1+182+365)%365-182 {
				t.Fatalf("%s from %s to %s is not %d days", s.Name, s.Start, s.End, s.Days)
			}
		}
		if n > 0 && total != 365 {
			t.Fatalf("%d seasons last %d days together: %+v", n, total, seasons.List)
		}
	})
}

// One slider moves all: more caution never brings warm annuals out earlier.
func TestCautionIsLater(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := anyClimate(t)
		spread := c.Seasons(climate.Even).Get(climate.Summer).Spread
		days := []civil.MonthDay{spread.Bold, spread.Even, spread.Cautious}
		mean, coldest := c.Daily().Tmean, 0
		for i := range mean {
			if mean[i] < mean[coldest] {
				coldest = i
			}
		}
		from := func(d civil.MonthDay) int { return (climate.MonthDayIndex(d) - coldest + 365) % 365 }
		for i := 1; i < len(days); i++ {
			if !days[i].IsZero() && !days[i-1].IsZero() && from(days[i]) < from(days[i-1]) {
				t.Fatalf("summer starts %s bold, %s even, %s cautious", spread.Bold, spread.Even, spread.Cautious)
			}
		}
	})
}

// A sheltered spot has its summer earlier and its winter later than the open.
func TestShelterLengthensTheSeason(t *testing.T) {
	c := climate.FromStation(station(t, "Berlin"))
	wall, ok := climate.SpotByKey("south_wall_eaves")
	if !ok {
		t.Fatal("no such spot")
	}
	open, sheltered := c.Seasons(climate.Cautious), c.At(wall).Seasons(climate.Cautious)
	if a, b := open.Get(climate.Summer).Start, sheltered.Get(climate.Summer).Start; later(b, a) > -5 {
		t.Errorf("summer: open %s, sheltered %s", a, b)
	}
	if a, b := open.Get(climate.Winter).Start, sheltered.Get(climate.Winter).Start; later(b, a) < 3 {
		t.Errorf("winter: open %s, sheltered %s", a, b)
	}
}

func TestSpotKeys(t *testing.T) {
	for _, s := range climate.Spots() {
		got, ok := climate.SpotByKey(s.Key)
		if !ok || got != s {
			t.Errorf("%s is not found by its key", s.Key)
		}
		if s.Shelter < 0 || s.Shelter > 1 {
			t.Errorf("%s: shelter %g", s.Key, s.Shelter)
		}
	}
	if s, ok := climate.SpotByKey("nowhere"); ok || s != climate.Open {
		t.Errorf("%+v, %v", s, ok)
	}
}

// A wide pot dampens the day more than a narrow one; any pot is colder in winter
// than its day's mean and warmer than the air's night.
func TestRootZone(t *testing.T) {
	c := climate.FromStation(station(t, "Chicago"))
	d := c.Daily()
	narrow, wide := c.RootZone(0.15, climate.PotShaded), c.RootZone(0.6, climate.PotShaded)
	for i := range climate.DaysPerYear {
		n, w := narrow.Lowest()[i], wide.Lowest()[i]
		if !(d.Tmin[i] < n && n < w && w < d.Tmean[i]) {
			t.Fatalf("day %d: air %g, narrow %g, wide %g, mean %g", i, d.Tmin[i], n, w, d.Tmean[i])
		}
		if hot := c.RootZone(0.15, climate.SunOnDarkPot).Highest()[i]; hot <= narrow.Highest()[i] {
			t.Fatalf("day %d: sun on a dark pot does not warm it", i)
		}
	}
	if a, b, e := narrow.ExtremeMin(), wide.ExtremeMin(), c.ExtremeMin().Mean; !(e < a && a < b && b < e+10) {
		t.Errorf("extremes: air %g, narrow %g, wide %g", e, a, b)
	}
	// Half-space of diffusivity 1.4e-7 m²/s: the day's wave falls to 1/e at 6.2 cm
	// (√(2a/ω), Carslaw and Jaeger §2.6); at a quarter of 24.8 cm the share is 1/e.
	if s := c.RootZone(quantity.Length(0.2482), climate.PotShaded).Share; s < 0.366 || s > 0.370 {
		t.Errorf("share %g, want 0.368", s)
	}
}
