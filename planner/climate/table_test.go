package climate_test

import (
	"math"
	"os"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"fourturn/planner/climate"
	"fourturn/planner/quantity"
)

func TestTableIsWhole(t *testing.T) {
	stations := climate.Stations()
	if len(stations) != 879 {
		t.Errorf("%d stations, want 879", len(stations))
	}
	south := 0
	for _, s := range stations {
		if !s.Place.Valid() || s.Name == "" || s.Country == "" || s.Period == "" {
			t.Errorf("%s: %+v", s.ID, s.Place)
		}
		if s.Place.Southern() {
			south++
		}
		for m := range 12 {
			if s.Means.Tmin[m] > s.Means.Tmax[m] {
				t.Errorf("%s month %d: minimum above maximum", s.ID, m+1)
			}
		}
		if climate.FromStation(s).Temperatures().Cite == "" {
			t.Errorf("%s has no source", s.ID)
		}
	}
	if south < 200 {
		t.Errorf("%d stations in the south", south)
	}
	if n := len(climate.FreezeStations()); n != 5808 {
		t.Errorf("%d freeze stations, want 5808", n)
	}
	if !slices.IsSortedFunc(stations, func(a, b climate.Station) int { return strings.Compare(a.ID, b.ID) }) {
		t.Error("the table is not in the order of ids")
	}
}

// The data stays far under a megabyte in the program.
func TestTableIsSmall(t *testing.T) {
	total := int64(0)
	for _, name := range []string{"stations.csv.gz", "us_freeze.csv.gz"} {
		info, err := os.Stat("data/" + name)
		if err != nil {
			t.Fatal(err)
		}
		total += info.Size()
	}
	if total > 1<<20 {
		t.Errorf("%d bytes", total)
	}
	t.Logf("%d bytes", total)
}

func TestLookUp(t *testing.T) {
	s, ok := climate.StationByID("UKMO-heathrow")
	if !ok || s.Name != "Heathrow" || s.Source != climate.SourceMetOffice {
		t.Errorf("%v, %+v", ok, s)
	}
	// Met Office historic station data, means 1991-2020: January 8.4 and 2.7 °C, July
	// 23.9 and 14.2 °C (spot check of the table's making).
	if s.Means.Tmax[0] != 8.4 || s.Means.Tmin[0] != 2.7 || s.Means.Tmax[6] != 23.9 || s.Means.Tmin[6] != 14.2 {
		t.Errorf("%+v", s.Means)
	}
	f, ok := climate.FreezeStationByID("USW00094765")
	if !ok || f.Freezes.Last[1].String() != "05-09" || f.Freezes.First[1].String() != "10-05" {
		t.Errorf("%v, %+v", ok, f)
	}
	for _, id := range []string{"", "zzz", "UKMO-heathro"} {
		if _, ok := climate.StationByID(id); ok {
			t.Errorf("%q is found", id)
		}
	}
}

// Published normals: NOAA NCEI 1991-2020, Central Park and Lebanon NH.
func TestPublishedNormals(t *testing.T) {
	for _, want := range []struct {
		name     string
		month    int
		max, min float64
	}{
		{"New York Central Park", 1, 4.2, -2.3},
		{"New York Central Park", 7, 29.4, 21.2},
		{"Lebanon NH", 1, -0.9, -12.6},
		{"Lebanon NH", 7, 28.2, 14.3},
	} {
		s := station(t, want.name)
		if got := s.Means; got.Tmax[want.month-1] != want.max || got.Tmin[want.month-1] != want.min {
			t.Errorf("%s month %d: %g and %g", want.name, want.month, got.Tmax[want.month-1], got.Tmin[want.month-1])
		}
	}
}

func TestFind(t *testing.T) {
	for text, want := range map[string]string{
		"chicago": "Chicago Ohare Intl Airport", "London": "Heathrow", "münchen": "Muenchen-Stadt", "Muenchen": "Muenchen-Stadt",
		"munch": "Muenchen-Stadt", "Zürich": "Zuerich/Fluntern", "zurich": "Zuerich/Fluntern", "Köln": "Koeln/Bonn",
		"Springfield": "Springfield Capital Airport", "portland or": "Portland Intl Airport", "portland maine": "Portland Intl Jetport",
		"São Paulo": "Sao Paulo", "sao p": "Sao Paulo", "  WELLINGTON ": "Wellington Airport", "Tromsø": "Tromso",
		"Vienna": "Wien", "wash": "Washington Reagan Airport", "St. Louis": "St Louis Lambert Intl Airport", "Perth": "Perth",
	} {
		found := climate.Find(text, 5)
		if len(found) == 0 || found[0].Name != want {
			names := []string{}
			for _, s := range found {
				names = append(names, s.Name)
			}
			t.Errorf("%q finds %v, want %q first", text, names, want)
		}
	}
	for _, text := range []string{"", "  ", "xyzzy", "chicago florida", "***"} {
		if found := climate.Find(text, 5); len(found) != 0 {
			t.Errorf("%q finds %d stations", text, len(found))
		}
	}
	if n := len(climate.Find("a", 7)); n != 7 {
		t.Errorf("%d found, want the limit 7", n)
	}
	// A country's name brings its stations.
	for _, s := range climate.Find("uruguay", 50) {
		if s.Country != "Uruguay" {
			t.Errorf("%s is in %s", s.Name, s.Country)
		}
	}
}

// Whatever is typed, each further letter only narrows what is found.
func TestFindNarrows(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := climate.Stations()[rapid.IntRange(0, 878).Draw(t, "station")]
		runes := []rune(s.Name)
		n := rapid.IntRange(1, len(runes)).Draw(t, "letters")
		found := climate.Find(string(runes[:n]), 1000)
		if strings.TrimSpace(string(runes[:n])) != "" && !slices.ContainsFunc(found, func(x climate.Station) bool { return x.ID == s.ID }) {
			t.Fatalf("%q does not find %q", string(runes[:n]), s.Name)
		}
	})
}

func TestNearest(t *testing.T) {
	near := climate.Nearest(climate.Place{Latitude: 48.2, Longitude: 16.37, Elevation: 170}, 3)
	if len(near) != 3 || near[0].Station.Name != "Wien" {
		t.Fatalf("%+v", near)
	}
	if near[0].Higher != near[0].Station.Place.Elevation-170 {
		t.Errorf("height difference %v", near[0].Higher)
	}
	if !slices.IsSortedFunc(near, func(a, b climate.Near[climate.Station]) int { return int(a.Distance - b.Distance) }) {
		t.Error("not by distance")
	}
	// Across the date line: Fiji lies at 177° E.
	if got := climate.Nearest(climate.Place{Latitude: -17, Longitude: -179.5}, 1)[0]; got.Station.Name != "Nadi" || got.Distance > 400e3 {
		t.Errorf("%s at %v", got.Station.Name, got.Distance)
	}
	if n := len(climate.Nearest(climate.Place{}, 0)); n != 0 {
		t.Errorf("%d of none", n)
	}
	if f := climate.NearestFreeze(climate.Place{Latitude: 41.9, Longitude: -87.8}, 1)[0]; f.Station.State != "IL" || f.Distance > 40e3 {
		t.Errorf("%+v", f)
	}
}

// A degree of the equator is 111.195 km on the mean sphere; a pole is 10,007.5 km
// away from it.
func TestDistance(t *testing.T) {
	for _, c := range []struct {
		a, b climate.Place
		km   float64
	}{
		{climate.Place{}, climate.Place{Longitude: 1}, 111.195},
		{climate.Place{}, climate.Place{Latitude: 90}, 10007.557},
		{climate.Place{Longitude: 179.5}, climate.Place{Longitude: -179.5}, 111.195},
		{climate.Place{Latitude: 50, Longitude: 10}, climate.Place{Latitude: 50, Longitude: 10}, 0},
	} {
		if got := float64(c.a.Distance(c.b)) / 1000; math.Abs(got-c.km) > 0.01 {
			t.Errorf("%v to %v: %.3f km, want %.3f", c.a, c.b, got, c.km)
		}
	}
}

// The table's zones were worked out from the extremes apart from this package; at
// every station that has both they agree.
func TestZonesOfTheTable(t *testing.T) {
	n := 0
	for _, row := range rawTable(t) {
		if row["ann_ext_min_c"] == "" || row["zone"] == "" {
			continue
		}
		n++
		s, _ := climate.StationByID(row["station_id"])
		c := climate.FromStation(s)
		// The table's zones are of extremes before rounding to a tenth of a degree; and
		// beyond 70 °F it writes 13a where this package writes 13b, the last zone.
		mean := c.ExtremeMin().Mean
		if mean > quantity.FromFahrenheit(70)-0.05 {
			continue
		}
		below, above := climate.ZoneOf(mean-0.051).String(), climate.ZoneOf(mean+0.051).String()
		if got := c.HardinessZone().String(); got != row["zone"] && below != row["zone"] && above != row["zone"] {
			t.Errorf("%s: %s, table %s at %g °C", s.Name, got, row["zone"], float64(c.ExtremeMin().Mean))
		}
	}
	t.Logf("%d stations", n)
	if n < 600 {
		t.Errorf("only %d stations have a zone", n)
	}
}

// The bands of the map: 1a begins at -60 °F, 13b ends at 70 °F.
func TestZoneBands(t *testing.T) {
	for f, want := range map[float64]string{
		-70: "1a", -60: "1a", -55.1: "1a", -55: "1b", -10: "6a", -5.01: "6a", -5: "6b", 0: "7a", 29.9: "9b", 30: "10a", 65: "13b", 99: "13b",
	} {
		if got := climate.ZoneOf(quantity.FromFahrenheit(f) + 1e-9).String(); got != want {
			t.Errorf("%g °F: %s, want %s", f, got, want)
		}
	}
	for days, want := range map[float64]climate.HeatZone{0: 1, 0.9: 1, 1: 2, 7: 2, 7.1: 3, 14: 3, 30: 4, 45: 5, 60: 6, 90: 7, 120: 8, 150: 9, 180: 10, 210: 11, 211: 12, 365: 12} {
		if got := climate.HeatZoneOf(days); got != want {
			t.Errorf("%g days: heat zone %d, want %d", days, got, want)
		}
	}
}

// The extreme that is estimated from neighbours, at the stations whose own is
// known: within half a zone (2.8 K) as a root mean square.
func TestExtremesOfNeighbours(t *testing.T) {
	n, sum := 0.0, 0.0
	for _, s := range climate.Stations() {
		if s.ExtremeMin == nil {
			continue
		}
		got := mustNew(t, climate.Input{Means: &s.Means, Place: &s.Place}).ExtremeMin()
		if !got.Estimated() {
			t.Fatalf("%s: not marked estimated", s.Name)
		}
		d := float64(got.Mean) - *s.ExtremeMin
		n, sum = n+1, sum+d*d
	}
	rms := math.Sqrt(sum / n)
	t.Logf("root mean square %.2f K at %g stations", rms, n)
	if rms > 2.8 {
		t.Errorf("%.2f K", rms)
	}
}
