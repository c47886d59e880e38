package planner_test

import (
	"testing"

	"fourturn/planner"
)

// outlookOf works out the yard with two round pots of one size, after an edit.
func outlookOf(t *testing.T, edit func(*planner.Plan)) *planner.Outlook {
	t.Helper()
	plan := yard()
	twin := plan.Pots[0]
	twin.ID = "twin"
	plan.Pots = append([]planner.Pot{plan.Pots[0], twin}, plan.Pots[1:]...)
	edit(&plan)
	return planner.WorkOut(&plan, reference(t), today)
}

// Each figure has a place of its own, and two pots of one size are not confused.
func TestFiguresAreFoundAgain(t *testing.T) {
	same := func(*planner.Plan) {}
	all, again := outlookOf(t, same), outlookOf(t, same)
	for i := range all.Pots {
		p := &all.Pots[i]
		for _, f := range []planner.Figure{p.Mix, p.Wet, p.Stands[0].Start, p.Stands[len(p.Stands)-1].Plants[0].Count} {
			at := all.PlaceOf(f)
			if at == "" || all.FigureAt(at).Value != f.Value || all.PlaceOf(all.FigureAt(at)) != at {
				t.Fatalf("%s: a figure stands at %q", p.Pot.ID, at)
			}
			if got := again.FigureAt(at); got.Value != f.Value {
				t.Errorf("%s: worked out again it is %v, not %v", at, got.Value, f.Value)
			}
		}
		if i > 0 && all.PlaceOf(p.Mix) == all.PlaceOf(all.Pots[i-1].Mix) {
			t.Errorf("two pots have one place")
		}
	}
	if all.PlaceOf(again.Pots[0].Mix) != "" || all.PlaceOf(planner.Figure{}) != "" || !all.FigureAt("").IsZero() {
		t.Error("a figure of another outlook has a place")
	}
}

func TestAFigureFollowsItsPot(t *testing.T) {
	all := outlookOf(t, func(*planner.Plan) {})
	at := all.PlaceOf(all.Pots[1].Mix)
	changed := outlookOf(t, func(p *planner.Plan) {
		p.Pots = append([]planner.Pot(nil), p.Pots[1:]...)
		p.Pots[0].Vessel.Height *= 1.2
	})
	if got := changed.FigureAt(at); got.IsZero() || got.Number() <= all.Pots[1].Mix.Number() {
		t.Errorf("a higher pot takes %v instead of %v", got.Value, all.Pots[1].Mix.Value)
	}
	gone := outlookOf(t, func(p *planner.Plan) { p.Pots = p.Pots[:1] })
	if !gone.FigureAt(at).IsZero() {
		t.Error("the figure of a pot that is gone is still there")
	}
}
