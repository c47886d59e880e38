package rotation_test

import (
	"slices"
	"testing"

	"fourturn/planner/civil"
	"fourturn/planner/rotation"
)

// bloom returns the first and last day on which tulips planted on a day show.
func bloom(t *testing.T, site, planted string) (first, last civil.Date) {
	t.Helper()
	start := civil.MustParse(planted)
	o := outlookOf(t, site, start.AddDays(-10), 400)
	p := single(plantsOf(t, start, 400, false)["tulip"])
	for i, v := range o.Curve(&p, start, start.AddDays(380)) {
		if v > 0.05 {
			if first.IsZero() {
				first = start.AddDays(i)
			}
			last = start.AddDays(i)
		}
	}
	return first, last
}

// Tulips want 12 to 16 weeks of chill (Iowa State University Extension) and must chill
// but not freeze hard (landscape designers' association, 2020). In a mild winter they
// flower in spring for their weeks; where winter days stay above the chill they never
// do, and are chilled before they are planted (LSU by way of NOLA, 2017); in an exposed
// pot in the Midwest they freeze.
func TestTulipsWantTheirChill(t *testing.T) {
	first, last := bloom(t, "heathrow", "2027-10-15")
	if first < civil.MustParse("2028-03-15") || first > civil.MustParse("2028-05-15") {
		t.Errorf("tulips of October flower at Heathrow from %v", first)
	}
	if days := int(last-first) + 1; days != 21 {
		t.Errorf("they flower for %d days, want three weeks", days)
	}
	for _, site := range []string{"new_orleans", "chicago"} {
		if first, _ := bloom(t, site, "2027-10-15"); !first.IsZero() {
			t.Errorf("%s: tulips in an exposed pot flower on %v", site, first)
		}
	}
}

func TestColoursCanBePinnedAndRefused(t *testing.T) {
	req := chicago(t)
	for i := range req.Candidates {
		plant := req.Candidates[i].Parts[0].Plant
		plant.Colours = []string{"green"}
		if plant.ID == "impatiens" {
			plant.Colours = []string{"white", "green"}
		}
	}
	july := civil.MustParse("2027-07-10")
	req.Pins = []rotation.Pin{{ID: "white in July", Colour: "white", From: july}}
	if got := standsOn(&req, mustPlan(t, req).Best, july); got != "impatiens" {
		t.Errorf("%s stands on the day that is to be white", got)
	}
	req.Pins = nil
	req.Bans = []rotation.Ban{{Colour: "green"}}
	if got := ids(&req, mustPlan(t, req).Best); slices.ContainsFunc(got, func(id string) bool { return id != "bare" }) {
		t.Errorf("%v, though all have the refused colour", got)
	}
}

// Nobody plants for a day in the year that does not come: 29 February, the 31st and
// the turn of the year are days like others.
func TestOddDaysAreDays(t *testing.T) {
	for _, today := range []string{"2028-02-29", "2027-12-31", "2027-01-31", "2028-01-01"} {
		for _, site := range []string{"chicago", "brisbane"} {
			day := civil.MustParse(today)
			req := requestFor(t, site, day, day.AddMonths(12))
			r := mustPlan(t, req)
			if len(r.Best.Stays) == 0 || len(r.Curve(r.Best)) != int(req.Until-day) {
				t.Errorf("%s from %s: %d stays", site, today, len(r.Best.Stays))
			}
		}
	}
}

// A horizon of one day, a single candidate that never fits, and none at all.
func TestSmallestRequests(t *testing.T) {
	req := chicago(t)
	req.Until = req.Today + 1
	mustPlan(t, req)
	req = chicago(t)
	req.Candidates = nil
	if got := ids(&req, mustPlan(t, req).Best); !slices.Equal(got, []string{"bare"}) {
		t.Errorf("without plantings stands %v", got)
	}
	req.Candidates = chicago(t).Candidates[:1]
	req.Candidates[0].Parts[0].Plant.Sold = []rotation.Window{{From: 1, To: 2}}
	if got := ids(&req, mustPlan(t, req).Best); !slices.Equal(got, []string{"bare"}) {
		t.Errorf("with a planting that is never sold stands %v", got)
	}
	if r := mustPlan(t, req); len(r.Alternatives()) != 0 {
		t.Error("alternatives to nothing")
	}
}
