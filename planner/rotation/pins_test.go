package rotation_test

import (
	"slices"
	"testing"
	"time"

	"fourturn/planner/civil"
	"fourturn/planner/finding"
	"fourturn/planner/rotation"
)

func TestPinsAndBans(t *testing.T) {
	may10 := civil.MustParse("2027-05-10")
	req := chicago(t)
	req.Pins = []rotation.Pin{{ID: "wedding", Planting: "impatiens", From: civil.MustParse("2027-07-01"), To: civil.MustParse("2027-07-20")}}
	req.Bans = []rotation.Ban{{Plant: "begonia"}, {Planting: "spruce_tips", From: civil.MustParse("2027-12-01"), To: civil.MustParse("2027-12-10")}}
	r := mustPlan(t, req)
	for day := req.Pins[0].From; day <= req.Pins[0].To; day++ {
		if got := standsOn(&req, r.Best, day); got != "impatiens" {
			t.Errorf("%s stands on %v", got, day)
		}
	}
	if slices.Contains(ids(&req, r.Best), "begonia") || standsOn(&req, r.Best, civil.MustParse("2027-12-05")) == "spruce_tips" {
		t.Errorf("a refused planting stands: %v", ids(&req, r.Best))
	}
	if len(r.Findings) > 0 {
		t.Errorf("findings %v", r.Findings)
	}

	// A day pinned by the person overrules risk and weekday, and is told so.
	req = chicago(t)
	req.Days.Weekdays = []time.Weekday{time.Saturday}
	early := civil.MustParse("2027-04-14") // a Wednesday in frost
	req.Pins = []rotation.Pin{{ID: "now", Plant: "petunia", From: early, Start: true}}
	r = mustPlan(t, req)
	if got := standsOn(&req, r.Best, early); got != "petunia" {
		t.Errorf("%s stands on the pinned day", got)
	}
	if codes := codesOf(r.Findings); !slices.Contains(codes, "rotation.pin_risky") {
		t.Errorf("findings %v", codes)
	}

	// A change-out in a window.
	req = chicago(t)
	req.Pins = []rotation.Pin{{ID: "may", From: may10, To: may10.AddDays(5), Start: true}}
	r = mustPlan(t, req)
	if !slices.ContainsFunc(r.Best.ChangeOuts, func(c rotation.ChangeOut) bool { return c.Day >= may10 && c.Day <= may10.AddDays(5) }) {
		t.Errorf("no change-out in the window: %v", r.Best.ChangeOuts)
	}
}

func codesOf(findings []finding.Finding) []string {
	var codes []string
	for _, f := range findings {
		codes = append(codes, f.Code)
	}
	return codes
}

func dateArg(f finding.Finding, name string) civil.Date {
	for _, arg := range f.Args {
		if arg.Name == name {
			return arg.Value.Date
		}
	}
	return 0
}

func TestPinsThatCannotHold(t *testing.T) {
	day := civil.MustParse
	for _, c := range []struct {
		name   string
		pins   []rotation.Pin
		change func(*rotation.Request)
		code   string
		would  string // a date, where one is named
	}{
		{"before today", []rotation.Pin{{From: day("2027-01-15"), Start: true}}, nil, "rotation.pin_outside", ""},
		{"no such plant", []rotation.Pin{{Plant: "orchid", From: day("2027-06-01")}}, nil, "rotation.pin_unknown", ""},
		{"before delivery", []rotation.Pin{{From: day("2027-02-10"), Start: true}}, func(r *rotation.Request) { r.LeadDays = 20 }, "rotation.pin_too_soon", "2027-02-21"},
		{"on a closed day", []rotation.Pin{{From: day("2027-06-10"), Start: true}}, func(r *rotation.Request) {
			r.Days.Refused = []rotation.Window{{From: day("2027-06-09"), To: day("2027-06-12")}}
		}, "rotation.pin_refused_day", "2027-06-08"},
		{"too cold", []rotation.Pin{{Plant: "vinca", From: day("2027-03-01"), To: day("2027-03-20")}}, nil, "rotation.pin_not_then", "2027-06-15"},
		{"not sold", []rotation.Pin{{Plant: "mum", From: day("2027-05-01"), To: day("2027-05-30"), Start: true}}, nil, "rotation.pin_not_then", "2027-08-15"},
		{"two plantings at once", []rotation.Pin{
			{ID: "a", Plant: "petunia", From: day("2027-07-01")},
			{ID: "b", Plant: "begonia", From: day("2027-07-01")},
		}, nil, "rotation.pin_clash", ""},
		{"too many", []rotation.Pin{
			{ID: "a", Plant: "pansy", From: day("2027-05-01")},
			{ID: "b", Plant: "petunia", From: day("2027-07-20")},
		}, func(r *rotation.Request) { r.PerYear = 1 }, "rotation.pin_too_many", ""},
	} {
		req := chicago(t)
		req.Pins = c.pins
		if c.change != nil {
			c.change(&req)
		}
		r := mustPlan(t, req)
		if len(r.Findings) != 1 || r.Findings[0].Code != c.code {
			t.Errorf("%s: findings %v, want %s", c.name, codesOf(r.Findings), c.code)
			continue
		}
		if got := dateArg(r.Findings[0], "would").String(); got != c.would {
			t.Errorf("%s: %q would do, want %q", c.name, got, c.would)
		}
	}
}

func TestMoreChangeOutsThanCanBeMade(t *testing.T) {
	req := chicago(t)
	req.PerYear, req.AtLeast, req.MinStand = 5, 5, 120
	r := mustPlan(t, req)
	if codes := codesOf(r.Findings); !slices.Equal(codes, []string{"rotation.fewer_change_outs"}) {
		t.Errorf("findings %v", codes)
	}
}
