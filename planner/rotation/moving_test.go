package rotation_test

import (
	"math"
	"slices"
	"testing"

	"fourturn/planner/civil"
	"fourturn/planner/rotation"
)

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
