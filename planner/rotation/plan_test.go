package rotation_test

import (
	"math"
	"slices"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"

	"fourturn/planner/civil"
	"fourturn/planner/rotation"
)

func mustPlan(t testing.TB, req rotation.Request) *rotation.Result {
	t.Helper()
	r, err := rotation.Plan(req)
	if err != nil {
		t.Fatal(err)
	}
	checkSequence(t, &req, r.Best)
	return r
}

// checkSequence checks what every sequence must be: stays without a gap over the
// horizon, change-outs between them on open days, a total that adds up.
func checkSequence(t testing.TB, req *rotation.Request, seq rotation.Sequence) {
	t.Helper()
	day, total := req.Today, 0.0
	for _, stay := range seq.Stays {
		if stay.From != day || stay.Until <= stay.From {
			t.Errorf("a stay runs from %v to %v, the one before to %v", stay.From, stay.Until, day)
		}
		day = stay.Until
		v := stay.Value
		if sum := v.Display - v.Tired - v.Bare - v.Plants - v.ChangeOuts - v.Mix; math.Abs(sum-v.Total) > 1e-6 {
			t.Errorf("the stay from %v is worth %v, its parts %v", stay.From, v.Total, sum)
		}
		total += v.Total
	}
	if day != req.Until {
		t.Errorf("the stays end on %v, the horizon on %v", day, req.Until)
	}
	if math.Abs(total-seq.Value.Total) > 1e-6 {
		t.Errorf("the stays are worth %v, the sequence %v", total, seq.Value.Total)
	}
	for _, c := range seq.ChangeOuts {
		pinned := slices.ContainsFunc(req.Pins, func(p rotation.Pin) bool { return p.Start && p.From == c.Day })
		if !pinned && !req.Days.Allows(c.Day) {
			t.Errorf("a change-out falls on %v, a closed day", c.Day)
		}
		if !c.Good.From.IsZero() && (!c.Good.Has(c.Day) || c.Safe > c.Day || c.Latest < c.Day || len(c.Reasons) == 0) {
			t.Errorf("change-out %+v", c)
		}
	}
}

func chicago(t testing.TB) rotation.Request {
	today := civil.MustParse("2027-02-01")
	return requestFor(t, "chicago", today, today.AddMonths(18))
}

func id(req *rotation.Request, candidate int) string {
	switch candidate {
	case rotation.Bare:
		return "bare"
	case rotation.Stood:
		return "stood"
	}
	return req.Candidates[candidate].ID
}

func ids(req *rotation.Request, seq rotation.Sequence) []string {
	var list []string
	for _, stay := range seq.Stays {
		list = append(list, id(req, stay.Candidate))
	}
	return list
}

func standsOn(req *rotation.Request, seq rotation.Sequence, day civil.Date) string {
	for _, stay := range seq.Stays {
		if day >= stay.From && day < stay.Until {
			return id(req, stay.Candidate)
		}
	}
	return ""
}

func TestSaturdaysOnlyAndRefusedDays(t *testing.T) {
	req := chicago(t)
	free := mustPlan(t, req).Best.Value.Total
	req.Days.Weekdays = []time.Weekday{time.Saturday}
	saturdays := mustPlan(t, req)
	first := saturdays.Best.ChangeOuts[0].Day
	req.Days.Refused = []rotation.Window{{From: first, To: first.AddDays(10)}}
	refused := mustPlan(t, req)
	if a, b := saturdays.Best.Value.Total, refused.Best.Value.Total; a > free || b > a {
		t.Errorf("worth %v on any day, %v on Saturdays, %v with days refused", free, a, b)
	}
	for _, c := range refused.Best.ChangeOuts {
		if c.Day.Weekday() != time.Saturday || req.Days.Refused[0].Has(c.Day) {
			t.Errorf("a change-out on %v, %v", c.Day.Weekday(), c.Day)
		}
	}
}

func TestLeadTimeAndAvailability(t *testing.T) {
	req := chicago(t)
	req.LeadDays = 70 // past 2 April, the first safe day of pansies
	r := mustPlan(t, req)
	for _, c := range r.Best.ChangeOuts {
		if c.Day < req.Today.AddDays(70) {
			t.Errorf("a change-out on %v, before the plants can be here", c.Day)
		}
		for _, part := range req.Candidates[max(c.To, 0)].Parts {
			sold := len(part.Plant.Sold) == 0
			for _, w := range part.Plant.Sold {
				sold = sold || w.Has(c.Day)
			}
			if c.To >= 0 && !sold {
				t.Errorf("%s goes out on %v, when it is not sold", part.Plant.ID, c.Day)
			}
		}
	}
}

func TestTwoPetuniasWantFreshMix(t *testing.T) {
	req := chicago(t)
	req.Candidates = slices.DeleteFunc(slices.Clone(req.Candidates), func(p rotation.Planting) bool { return p.ID != "petunia" })
	req.History = []rotation.Host{{Plant: "petunia", Last: civil.MustParse("2026-10-20"), Diseased: true}}
	r := mustPlan(t, req)
	first := r.Best.Stays[slices.IndexFunc(r.Best.Stays, func(s rotation.Stay) bool { return s.Candidate >= 0 })]
	if !first.MixReplaced || first.Value.Mix == 0 {
		t.Errorf("petunias follow diseased ones in the same mix: %+v", first)
	}
	req.Members[0].Costs.ReplaceMix = 1e6
	if got := ids(&req, mustPlan(t, req).Best); slices.Contains(got, "petunia") {
		t.Errorf("%v, though fresh mix costs a fortune", got)
	}
}

// Two doors, two pots, one planting: matching pots are worth what each is worth with
// the same plan, and pots alike are worth twice one.
func TestPotsThatMatch(t *testing.T) {
	req := chicago(t)
	one := mustPlan(t, req)
	req.Members = []rotation.Member{req.Members[0], req.Members[0]}
	two := mustPlan(t, req)
	if diff := cmp.Diff(ids(&req, one.Best), ids(&req, two.Best)); diff != "" {
		t.Error(diff)
	}
	if math.Abs(two.Best.Value.Total-2*one.Best.Value.Total) > 1e-6 {
		t.Errorf("one pot is worth %v, two alike %v", one.Best.Value.Total, two.Best.Value.Total)
	}
	// A sunny and a cool door: the pair cannot beat each pot planned alone.
	warm := requestFor(t, "new_orleans", req.Today, req.Until)
	req.Members[1] = warm.Members[0]
	pair := mustPlan(t, req)
	alone := one.Best.Value.Total + func() float64 {
		r := chicago(t)
		r.Members = warm.Members
		return mustPlan(t, r).Best.Value.Total
	}()
	if pair.Best.Value.Total > alone+1e-6 {
		t.Errorf("the pair is worth %v, each alone %v together", pair.Best.Value.Total, alone)
	}
}

// Ivy that stays keeps its growth and its share, and is not bought again.
func TestIvyStaysOn(t *testing.T) {
	req := chicago(t)
	plants := plantsOf(t, req.Today, 600, false)
	with := func(name string, count float64) rotation.Planting {
		return rotation.Planting{ID: name + " and ivy", Parts: []rotation.Part{
			{Plant: plants[name], Share: 0.7, Count: count}, {Plant: plants["ivy"], Share: 0.3, Count: 2, Role: rotation.Spiller, Stays: true},
		}}
	}
	req.Candidates = append(req.Candidates, with("pansy", 3))
	r := mustPlan(t, req)
	at := slices.IndexFunc(r.Best.Stays, func(s rotation.Stay) bool { return s.Kept != nil })
	if at < 0 {
		t.Fatalf("nothing stays on: %v", ids(&req, r.Best))
	}
	stay := r.Best.Stays[at]
	if id(&req, stay.Kept.Candidate) != "pansy and ivy" || math.Abs(stay.Kept.Share-0.3) > 1e-9 || stay.Kept.Since > stay.From {
		t.Errorf("kept %+v", stay.Kept)
	}
	// The same plantings without the ivy that stays are worth no more.
	for i := range req.Candidates {
		for k := range req.Candidates[i].Parts {
			req.Candidates[i].Parts[k].Stays = false
		}
	}
	if without := mustPlan(t, req); without.Best.Value.Total > r.Best.Value.Total+1e-6 {
		t.Errorf("worth %v with ivy that stays, %v without", r.Best.Value.Total, without.Best.Value.Total)
	}
}

func TestManyPotsAtOnce(t *testing.T) {
	req := chicago(t)
	other := chicago(t)
	other.PerYear = 2
	wrong := chicago(t)
	wrong.PerYear = 9
	requests := []rotation.Request{req, other, req, wrong, other}
	results, errs := rotation.PlanAll(requests)
	if results[0] != results[2] || results[1] != results[4] || results[0] == results[1] {
		t.Error("requests that ask the same do not share their result, or others do")
	}
	if errs[3] == nil || results[3] != nil || errs[0] != nil {
		t.Errorf("errors %v", errs)
	}
	if diff := cmp.Diff(mustPlan(t, other).Best, results[1].Best); diff != "" {
		t.Error(diff)
	}
}

func TestPlanIsDeterministic(t *testing.T) {
	req := chicago(t)
	if diff := cmp.Diff(mustPlan(t, req).Best, mustPlan(t, req).Best); diff != "" {
		t.Error(diff)
	}
}

func TestRequestsRefused(t *testing.T) {
	for name, spoil := range map[string]func(*rotation.Request){
		"no horizon":           func(r *rotation.Request) { r.Until = r.Today },
		"ten years":            func(r *rotation.Request) { r.Until = r.Today.AddYears(10) },
		"no pot":               func(r *rotation.Request) { r.Members = nil },
		"six a year":           func(r *rotation.Request) { r.PerYear = 6 },
		"more least than most": func(r *rotation.Request) { r.AtLeast = 5 },
		"no risk":              func(r *rotation.Request) { r.Risk = 0 },
		"worthless days":       func(r *rotation.Request) { r.Weights.DayWorth = 0 },
		"shares above one": func(r *rotation.Request) {
			r.Candidates[0].Parts = append(r.Candidates[0].Parts, r.Candidates[0].Parts[0])
		},
		"no such size": func(r *rotation.Request) { r.Candidates[0].Parts[0].Size = 3 },
		"planted tomorrow": func(r *rotation.Request) {
			r.Members[0].Standing = rotation.Standing{Planting: &r.Candidates[0], Since: r.Today + 1}
		},
		"climate too short": func(r *rotation.Request) { r.Until = r.Today.AddMonths(26) },
	} {
		req := chicago(t)
		spoil(&req)
		if _, err := rotation.Plan(req); err == nil {
			t.Errorf("%s: planned", name)
		}
	}
}

// The working of the total adds up, and every term has a name.
func TestWorkingAddsUp(t *testing.T) {
	r := mustPlan(t, chicago(t))
	trace := r.Working()
	stays := 0.0
	for _, in := range trace.Inputs {
		if in.Name == "" {
			t.Error("an input without a name")
		}
		if in.Name == "rotation.stay" {
			stays += in.Value.Number
		}
	}
	if math.Abs(stays-trace.Result.Number) > 1e-6 {
		t.Errorf("the stays come to %v, the total is %v", stays, trace.Result.Number)
	}
	for _, in := range rotation.DefaultParams().Working().Inputs {
		if in.Source.Status == "" {
			t.Errorf("%s has no source", in.Name)
		}
	}
}
