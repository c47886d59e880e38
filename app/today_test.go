package main

import (
	"strings"
	"testing"

	"fourturn/planner/civil"
)

func TestClockStopsOnTheDayOfTheEnvironment(t *testing.T) {
	now := clock(func(string) string { return "2028-02-29" })
	if got := civil.Of(now()); got != civil.MustParse("2028-02-29") {
		t.Errorf("the clock shows %s", got)
	}
	if first, second := now(), now(); !first.Equal(second) {
		t.Errorf("the clock goes on from %s to %s", first, second)
	}
	for _, text := range []string{"", "tomorrow", "2027-02-29"} {
		running := clock(func(string) string { return text })
		// Only the time of a running clock carries a monotonic reading (package time).
		if got := running().String(); !strings.Contains(got, " m=") {
			t.Errorf("%q stops the clock at %s", text, got)
		}
	}
}
