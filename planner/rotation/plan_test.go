package rotation_test

import (
	"math"
	"slices"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"

	"fourturn/planner/civil"
	"fourturn/planner/finding"
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

func TestAlternativesReallyDiffer(t *testing.T) {
	req := chicago(t)
	r := mustPlan(t, req)
	alternatives := r.Alternatives()
	if len(alternatives) < 4 {
		t.Fatalf("%d alternatives", len(alternatives))
	}
	all := []rotation.Sequence{r.Best}
	for i, a := range alternatives {
		checkSequence(t, &req, a.Sequence)
		if a.Loss < -1e-9 || i > 0 && a.Loss < alternatives[i-1].Loss {
			t.Errorf("alternative %d loses %v", i, a.Loss)
		}
		net := 0.0
		for _, g := range a.Gains {
			net += g.Amount
		}
		for _, l := range a.Losses {
			net -= l.Amount
		}
		// Trades too small to be noticed are left out.
		if math.Abs(net+a.Loss) > 0.3 {
			t.Errorf("alternative %d loses %v, its trades come to %v", i, a.Loss, net)
		}
		for _, other := range all {
			apart := 0
			for day := req.Today; day < req.Until; day++ {
				if standsOn(&req, other, day) != standsOn(&req, a.Sequence, day) {
					apart++
				}
			}
			if apart < 28 {
				t.Errorf("alternative %d differs from another on %d days only", i, apart)
			}
		}
		all = append(all, a.Sequence)
	}
}

// Moving a handle costs nothing on the best day, never less than nothing elsewhere,
// and no more than where the others may give way to it.
func TestMovingAChangeOut(t *testing.T) {
	req := chicago(t)
	r := mustPlan(t, req)
	for i, c := range r.Best.ChangeOuts {
		if cost, ok := r.CostOfMoving(i, c.Day); !ok || math.Abs(cost) > 1e-9 {
			t.Errorf("staying on %v costs %v, %v", c.Day, cost, ok)
		}
		d := r.StartDrag(i)
		settled := 0
		for away := -20; away <= 20; away += 5 {
			day := c.Day.AddDays(away)
			fixed, ok := r.CostOfMoving(i, day)
			moved, may := d.To(day)
			if ok && !may {
				t.Errorf("%v: the move is possible for %v but cannot be dragged", day, fixed)
			}
			if ok && (fixed < -1e-9 || moved.Cost > fixed+1e-6 || moved.Cost < -1e-6) {
				t.Errorf("%v: costs %v with the others fixed, %v with them free", day, fixed, moved.Cost)
			}
			if may {
				checkSequence(t, &req, moved.Best)
				if math.Abs(r.Best.Value.Total-moved.Cost-moved.Best.Value.Total) > 1e-6 {
					t.Errorf("%v: %v less %v is not %v", day, r.Best.Value.Total, moved.Cost, moved.Best.Value.Total)
				}
			}
			if moved.Settled {
				settled++
			}
		}
		if settled == 0 {
			t.Errorf("no move of change-out %d settled", i)
		}
	}
	// Every good day costs less than 5 % of the season.
	for i, c := range r.Best.ChangeOuts {
		for day := c.Good.From; day <= c.Good.To; day++ {
			if cost, ok := r.CostOfMoving(i, day); ok && cost >= 0.05*c.SeasonValue {
				t.Errorf("%v is called good and costs %v of %v", day, cost, c.SeasonValue)
			}
		}
	}
}

func TestWhatReallyHappened(t *testing.T) {
	req := chicago(t)
	day := civil.MustParse
	petunia := &req.Candidates[slices.IndexFunc(req.Candidates, func(p rotation.Planting) bool { return p.ID == "petunia" })]
	dead, lovely := 0.0, 1.0

	planted, err := req.WithActuals(day("2027-06-20"), []rotation.Actual{{Day: day("2027-06-12"), Planted: petunia, Member: -1}})
	if err != nil {
		t.Fatal(err)
	}
	if planted.Done != 1 || planted.Members[0].Standing.Since != day("2027-06-12") || planted.YearFrom != req.Today {
		t.Errorf("after planting: %d done, %+v", planted.Done, planted.Members[0].Standing)
	}
	kept := mustPlan(t, planted)
	if got := standsOn(&planted, kept.Best, day("2027-07-15")); got != "stood" {
		t.Errorf("healthy petunias are replaced by %s", got)
	}

	frost, err := planted.WithActuals(day("2027-06-25"), []rotation.Actual{{Day: day("2027-06-24"), Condition: &dead}})
	if err != nil {
		t.Fatal(err)
	}
	replaced := mustPlan(t, frost)
	if got := standsOn(&frost, replaced.Best, day("2027-07-15")); got == "stood" || got == "bare" {
		t.Errorf("frost took the petunias and %s stands in July", got)
	}

	// Late in autumn the model has long given the petunias up; if they are still
	// lovely, they stay at least as long.
	late := day("2027-10-05")
	asModelled, err := planted.WithActuals(late, nil)
	if err != nil {
		t.Fatal(err)
	}
	asSeen, err := planted.WithActuals(late, []rotation.Actual{{Day: late, Condition: &lovely}})
	if err != nil {
		t.Fatal(err)
	}
	a, b := mustPlan(t, asModelled).Best.Stays[0], mustPlan(t, asSeen).Best.Stays[0]
	if b.Candidate != rotation.Stood || a.Candidate == rotation.Stood && b.Until < a.Until {
		t.Errorf("modelled: %+v, still lovely: %+v", a, b)
	}

	// Disease seen in what stands keeps its hosts out of the mix for years.
	ill, err := planted.WithActuals(day("2027-09-01"), []rotation.Actual{
		{Day: day("2027-08-20"), Disease: "black root rot"},
		{Day: day("2027-08-25"), Emptied: true, Member: 0},
	})
	if err != nil {
		t.Fatal(err)
	}
	if ill.Members[0].Standing.Planting != nil || !slices.ContainsFunc(ill.History, func(h rotation.Host) bool { return h.Group == "black root rot" && h.Diseased }) {
		t.Errorf("after disease: %+v", ill.History)
	}
	if _, err := req.WithActuals(day("2027-06-20"), []rotation.Actual{{Day: day("2027-06-21"), Emptied: true}}); err == nil {
		t.Error("what will happen was taken for what has")
	}
	// A new planning year begins with none made.
	next, err := planted.WithActuals(day("2028-02-29"), nil)
	if err != nil {
		t.Fatal(err)
	}
	if next.Done != 0 || next.YearFrom != day("2028-02-01") {
		t.Errorf("in the next year: %d done since %v", next.Done, next.YearFrom)
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
