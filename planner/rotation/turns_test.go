package rotation_test

import (
	"errors"
	"math"
	"slices"
	"testing"
	"time"

	"fourturn/planner/civil"
	"fourturn/planner/rotation"
)

// fourTurns is a year of given plantings near Chicago, twice over.
func fourTurns(t testing.TB) rotation.Request {
	today := civil.MustParse("2027-02-01")
	req := requestFor(t, "chicago", today, today.AddMonths(24))
	at := func(id string) int {
		return slices.IndexFunc(req.Candidates, func(p rotation.Planting) bool { return p.ID == id })
	}
	for _, turn := range []struct{ id, by string }{
		{"pansy", "2027-04-25"},
		{"petunia", "2027-07-15"},
		{"mum", "2027-10-15"},
		{"spruce_tips", "2028-01-15"},
		{"pansy", "2028-04-25"},
		{"petunia", "2028-07-15"},
		{"mum", "2028-10-15"},
		{"spruce_tips", "2029-01-15"},
	} {
		req.Turns = append(req.Turns, rotation.Turn{Candidate: at(turn.id), By: civil.MustParse(turn.by)})
	}
	return req
}

// Every turn comes once, in its order and its time.
func TestTurnsComeInOrder(t *testing.T) {
	req := fourTurns(t)
	r := mustPlan(t, req)
	var put []rotation.ChangeOut
	for _, c := range r.Best.ChangeOuts {
		if c.To >= 0 {
			put = append(put, c)
		}
	}
	if len(put) != len(req.Turns) {
		t.Fatalf("%d change-outs for %d turns: %v", len(put), len(req.Turns), ids(&req, r.Best))
	}
	before := req.Today.AddDays(-1)
	for k, c := range put {
		if c.To != req.Turns[k].Candidate || c.Day <= before || c.Day > req.Turns[k].By {
			t.Errorf("turn %d: %s on %v, due from %v to %v", k, id(&req, c.To), c.Day, before, req.Turns[k].By)
		}
		before = req.Turns[k].By
	}
}

// The days are the best of all: no other days of the same turns are worth more. The
// check goes through every pair of days of two turns, with nothing of the solver's.
func TestDaysOfTurnsAreTheBest(t *testing.T) {
	req := fourTurns(t)
	req.Until = civil.MustParse("2027-09-01")
	req.Turns = req.Turns[:2]
	req.Weights.ChargeDays = 0
	r := mustPlan(t, req)
	o, risk := req.Members[0].Outlook, req.Risk
	pansy, petunia := &req.Candidates[req.Turns[0].Candidate], &req.Candidates[req.Turns[1].Candidate]
	worth := func(p *rotation.Planting, from, until civil.Date) float64 {
		sum := -8 / req.Weights.DayWorth
		for _, part := range p.Parts {
			sum -= part.Count * part.Plant.Sizes[part.Size].Price / req.Weights.DayWorth
		}
		for _, v := range o.Curve(p, from, until) {
			sum += v - req.Weights.Tired*max(0, req.Weights.TiredBelow-v)
		}
		return sum
	}
	best := math.Inf(-1)
	for a := req.Today; a <= req.Turns[0].By; a++ {
		if !o.MayStart(pansy, a, risk) {
			continue
		}
		for b := max(a.AddDays(rotation.DefaultMinStand), req.Turns[0].By.AddDays(1)); b <= req.Turns[1].By; b++ {
			if !o.MayStart(petunia, b, risk) {
				continue
			}
			best = max(best, worth(pansy, a, b)+worth(petunia, b, req.Until)-req.Weights.Bare*float64(a-req.Today))
		}
	}
	if math.Abs(best-r.Best.Value.Total) > 1e-6 {
		t.Errorf("worth %v, the best of all days is worth %v", r.Best.Value.Total, best)
	}
}

// A turn that is fixed to a day goes out on it, whatever day it is.
func TestTurnOnItsDay(t *testing.T) {
	req := fourTurns(t)
	on := civil.MustParse("2027-04-29") // too early for petunias, and a Thursday
	req.Days.Weekdays = []time.Weekday{time.Saturday}
	req.Turns[1].On, req.MinStand = on, 14
	r, err := rotation.Plan(req)
	if err != nil {
		t.Fatal(err)
	}
	found := false
	for _, c := range r.Best.ChangeOuts {
		if found = found || c.Day == on; c.Day != on && c.To >= 0 && c.Day.Weekday() != time.Saturday {
			t.Errorf("work on %v, a %v", c.Day, c.Day.Weekday())
		}
	}
	if !found {
		t.Errorf("nothing goes out on %v", on)
	}
}

func TestTurnsWithoutDays(t *testing.T) {
	req := fourTurns(t)
	req.Days.Refused = []rotation.Window{{From: civil.MustParse("2027-04-26"), To: civil.MustParse("2027-07-15")}}
	if got := req.WithoutDays(); !slices.Equal(got, []int{1}) {
		t.Errorf("turns %v have no days, want the second", got)
	}
	if _, err := rotation.Plan(req); !errors.Is(err, rotation.ErrNoDays) {
		t.Errorf("planned with error %v", err)
	}
}

func TestTurnsRefused(t *testing.T) {
	for name, spoil := range map[string]func(*rotation.Request){
		"out of order":  func(r *rotation.Request) { r.Turns[0].By = r.Turns[1].By },
		"no candidate":  func(r *rotation.Request) { r.Turns[0].Candidate = 99 },
		"day of before": func(r *rotation.Request) { r.Turns[1].On = r.Turns[0].By },
		"no other":      func(r *rotation.Request) { r.Turns[0].Others = []int{-1} },
		"four years":    func(r *rotation.Request) { r.Until = r.Today.AddYears(4) },
	} {
		req := fourTurns(t)
		spoil(&req)
		if _, err := rotation.Plan(req); err == nil || errors.Is(err, rotation.ErrNoDays) {
			t.Errorf("%s: planned with error %v", name, err)
		}
	}
}

// BenchmarkDaysOfTurns is the search for the days of one pot with given plantings.
func BenchmarkDaysOfTurns(b *testing.B) {
	req := fourTurns(b)
	ratio(b, "plain-passes", func() {
		if _, err := rotation.Plan(req); err != nil {
			b.Fatal(err)
		}
	}, func() { plainPass(&req) })
}
