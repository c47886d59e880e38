package climate_test

import (
	"testing"

	"fourturn/planner/civil"
	"fourturn/planner/climate"
)

// station returns the first station that a search finds.
func station(t testing.TB, text string) climate.Station {
	t.Helper()
	found := climate.Find(text, 1)
	if len(found) == 0 {
		t.Fatalf("no station is found for %q", text)
	}
	return found[0]
}

// NOAA NCEI, U.S. Climate Normals 1991-2020, Lebanon Municipal Airport NH, 32 °F:
// last freeze 10/50/90 % 05-24, 05-09, 04-27; first 09-23, 10-06, 10-19.
func TestPublishedDatesComeBack(t *testing.T) {
	c := climate.FromStation(station(t, "Lebanon NH"))
	for _, want := range []struct {
		risk        climate.Risk
		last, first string
	}{
		{climate.Cautious, "05-24", "09-23"},
		{climate.Even, "05-09", "10-06"},
		{climate.Bold, "04-27", "10-19"},
	} {
		if got := c.LastFreeze(0, want.risk); got.Day.String() != want.last {
			t.Errorf("last freeze at %g: %s %s, want %s", want.risk, got.Outcome, got.Day, want.last)
		}
		if got := c.FirstFreeze(0, want.risk); got.Day.String() != want.first {
			t.Errorf("first freeze at %g: %s %s, want %s", want.risk, got.Outcome, got.Day, want.first)
		}
	}
}

func TestSeasonsOfAMidContinentalSite(t *testing.T) {
	s := climate.FromStation(station(t, "Chicago")).Seasons(climate.Cautious)
	for _, want := range []struct {
		name           climate.SeasonName
		earliest, last string
	}{
		{climate.CoolSpring, "03-20", "04-20"},
		{climate.Summer, "05-01", "05-25"}, // "near May": common practice, no source
		{climate.Autumn, "08-25", "10-10"},
		{climate.Winter, "10-15", "11-30"}, // "winter display by December"
	} {
		got := s.Get(want.name)
		lo, hi := civil.MustParseMonthDay(want.earliest), civil.MustParseMonthDay(want.last)
		if !got.Exists || got.Start.YearDay() < lo.YearDay() || got.Start.YearDay() > hi.YearDay() {
			t.Errorf("%s: exists %v, starts %s, want between %s and %s", want.name, got.Exists, got.Start, lo, hi)
		}
	}
}
