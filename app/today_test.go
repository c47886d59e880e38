package main

import (
	"strings"
	"testing"

	"fourturn/planner/civil"
)

func TestClockStopsOnTheDayOfTheEnvironment(t *testing.T) {
	now, err := clock(func(string) string { return "2028-02-29" })
	if err != nil {
		t.Fatal(err)
	}
	if got := civil.Of(now()); got != civil.MustParse("2028-02-29") {
		t.Errorf("the clock shows %s", got)
	}
	if first, second := now(), now(); !first.Equal(second) {
		t.Errorf("the clock goes on from %s to %s", first, second)
	}
}

func TestClockRunsWhereNobodyStopsIt(t *testing.T) {
	running, err := clock(func(string) string { return "" })
	if err != nil {
		t.Fatal(err)
	}
	// Only the time of a running clock carries a monotonic reading (package time).
	if got := running().String(); !strings.Contains(got, " m=") {
		t.Errorf("nothing stops the clock at %s", got)
	}
}

func TestClockRefusesWhatIsNoDay(t *testing.T) {
	for _, text := range []string{"tomorrow", "2027-02-29", "08.06.2027", " "} {
		now, err := clock(func(string) string { return text })
		if err == nil || now != nil || !strings.Contains(err.Error(), todayVariable) {
			t.Errorf("%q gives %v", text, err)
		}
	}
}
