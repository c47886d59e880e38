package feeding_test

import (
	"errors"
	"strings"
	"testing"

	"fourturn/app/screen/feeding"
	"fourturn/app/screen/screentest"
	"fourturn/app/words"
	"fourturn/planner"
	"fourturn/planner/civil"
	"fourturn/planner/quantity"
)

func open(t *testing.T, plan *planner.Plan, today civil.Date) (*screentest.Desk, *feeding.Screen) {
	t.Helper()
	d := screentest.Open(t, plan, today)
	return d, feeding.New(d.Session, d.Words, d.NewID)
}

func refused(t *testing.T, err error) string {
	t.Helper()
	var field *words.Refusal
	if !errors.As(err, &field) {
		t.Fatalf("the error is %v", err)
	}
	if strings.Contains(field.Text, "⟦") || len([]rune(field.Text)) > 34 {
		t.Errorf("the refusal is %q", field.Text)
	}
	return field.Text
}

func TestTheRoundsTakeTurnsFromOneCan(t *testing.T) {
	_, s := open(t, screentest.Example(t), screentest.SummerDay)
	products := s.Products()
	if len(products) != 2 || products[0].Letter != "A" || products[1].Name != "10-30-20 soluble" {
		t.Fatalf("products %+v", products)
	}
	rounds := s.Rounds(26)
	if len(rounds) == 0 || len(s.Rounds(1)) != 1 || len(s.Past(5)) != 0 {
		t.Fatalf("%d rounds", len(rounds))
	}
	for _, r := range rounds {
		if r.Letter != "A" && r.Letter != "B" || r.Product == "" || r.Pots == "" || r.When == "" || r.Done {
			t.Errorf("round %+v", r)
		}
		if r.Water.Figure.IsZero() || r.Dose.Figure.IsZero() || r.Cans.Figure.IsZero() || !strings.HasSuffix(r.Spoons.Value, " tsp") {
			t.Errorf("the can of %s: %+v", r.When, r)
		}
	}
	next := 0
	for _, p := range products {
		if p.Next {
			next++
			if p.Letter != rounds[0].Letter {
				t.Errorf("next is %s and the first round %s", p.Letter, rounds[0].Letter)
			}
		}
	}
	if next != 1 {
		t.Errorf("%d products are next", next)
	}
}

func TestATickTurnsTheTurn(t *testing.T) {
	d, s := open(t, screentest.Example(t), screentest.SummerDay)
	first := s.Rounds(1)[0]
	if err := s.Tick(first, ""); err != nil {
		t.Fatal(err)
	}
	if got, want := d.UndoName(), "feed "+first.Pots+" with "+first.Product; got != want {
		t.Errorf("the undo is called %q, want %q", got, want)
	}
	d.Settle()
	if next := s.Rounds(1)[0]; next.Letter == first.Letter {
		t.Errorf("after %s comes %s again", first.Letter, next.Letter)
	}
	if past := s.Past(5); len(past) != 1 || !past[0].Done || past[0].Letter != first.Letter || past[0].Water.Value != "–" {
		t.Errorf("past %+v", past)
	}
	d.Undo()
	d.Settle()
	if again := s.Rounds(1)[0]; again.Letter != first.Letter || len(s.Past(5)) != 0 {
		t.Error("the undo did not give the round back")
	}
}

// What was really in the can decides whose turn it is.
func TestTheWrongProductTurnsTheTurnToo(t *testing.T) {
	d, s := open(t, screentest.Example(t), screentest.SummerDay)
	first := s.Rounds(1)[0]
	wrong := ""
	for _, p := range s.Products() {
		if p.Letter != first.Letter {
			wrong = p.ID
		}
	}
	if err := s.Tick(first, wrong); err != nil {
		t.Fatal(err)
	}
	if got := d.UndoName(); strings.HasSuffix(got, first.Product) {
		t.Errorf("the undo is called %q, and %s was not fed", got, first.Product)
	}
	d.Settle()
	if next := s.Rounds(1)[0]; next.Letter != first.Letter {
		t.Errorf("after the wrong product comes %s", next.Letter)
	}
}

func TestARoundIsLeftOutInItsWeekOnly(t *testing.T) {
	d, s := open(t, screentest.Example(t), screentest.SummerDay)
	rounds := s.Rounds(26)
	last := rounds[len(rounds)-1]
	if s.CanLeaveOut(last) {
		t.Fatalf("the round of %s can be left out", last.When)
	}
	var field *words.Refusal
	if err := s.LeaveOut(last); !errors.As(err, &field) || len(d.Plan().Log) != 0 {
		t.Errorf("left out: %v", err)
	}
	if !s.CanLeaveOut(rounds[0]) {
		t.Skip("no round this week")
	}
	if err := s.LeaveOut(rounds[0]); err != nil {
		t.Fatal(err)
	}
	if e := d.Plan().Log[0]; e.Kind != planner.Skipped || e.Product != "" || len(e.Pots) == 0 || e.Date != screentest.SummerDay {
		t.Errorf("logged %+v", e)
	}
	if got, want := d.UndoName(), "leave out "+rounds[0].Product; got != want {
		t.Errorf("the undo is called %q, want %q", got, want)
	}
}

func TestARoundOfPotsThatAreGoneDoesNothing(t *testing.T) {
	d, s := open(t, screentest.Example(t), screentest.SummerDay)
	r := s.Rounds(1)[0]
	d.Edit(func(p *planner.Plan) { p.Pots = nil })
	if err := s.Tick(r, ""); err != nil || len(d.Plan().Log) != 0 {
		t.Errorf("%v, log %v", err, d.Plan().Log)
	}
}

func TestTheCan(t *testing.T) {
	for _, one := range []struct {
		units       quantity.System
		typed, want string
	}{
		{quantity.Metric, "5", "5 L"},
		{quantity.Metric, "500 mL", "500 mL"},
		{quantity.Metric, "2 gal", "7.57 L"},
		{quantity.Metric, "1,000 L", "1,000 L"},
		{quantity.Metric, "", "9 L"},
		{quantity.USCustomary, "2", "2 gal"},
		{quantity.USCustomary, "9 L", "2.38 gal"},
	} {
		plan := screentest.Example(t)
		plan.Units = one.units
		d, s := open(t, plan, screentest.SummerDay)
		if err := s.SetCan(one.typed); err != nil || s.Can() != one.want {
			t.Errorf("%q: %v, %q", one.typed, err, s.Can())
		}
		if got := d.UndoName(); got != "change the can" {
			t.Errorf("the undo is called %q", got)
		}
		if err := s.SetCan(s.Can()); err != nil {
			t.Errorf("%q cannot be typed again: %v", s.Can(), err)
		}
	}
	d, s := open(t, screentest.Example(t), screentest.SummerDay)
	revision := d.Revision()
	for typed, want := range map[string]string{
		"big": "a number and a unit", "-9 L": "100 mL to 2,000 L", "0": "100 mL to 2,000 L", "80 m": "“m” is no unit of volume",
		"5 qt": "dry qt or liq qt?", "3000 L": "100 mL to 2,000 L",
	} {
		if got := refused(t, s.SetCan(typed)); got != want {
			t.Errorf("%q is refused with %q, want %q", typed, got, want)
		}
	}
	if d.Revision() != revision {
		t.Error("a refused can changed the plan")
	}
}

func TestTheInterval(t *testing.T) {
	d, s := open(t, screentest.Example(t), screentest.SummerDay)
	if s.Interval() != "" {
		t.Errorf("the interval is %q", s.Interval())
	}
	for typed, want := range map[string]string{"10": "10 days", " 7 days ": "7 days", "": "", "60": "60 days"} {
		if err := s.SetInterval(typed); err != nil || s.Interval() != want || d.UndoName() != "change the days between feeds" {
			t.Errorf("%q: %v, %q, %q", typed, err, s.Interval(), d.UndoName())
		}
	}
	revision := d.Revision()
	for _, typed := range []string{"-7", "0", "2", "61", "7.5", "weekly", "80 m", "99999999999999999999"} {
		if got := refused(t, s.SetInterval(typed)); got != "3 to 60 days" {
			t.Errorf("%q is refused with %q", typed, got)
		}
	}
	if d.Revision() != revision {
		t.Error("a refused interval changed the plan")
	}
}

func TestChargesNameTheirPotAndDay(t *testing.T) {
	for _, today := range []civil.Date{screentest.SummerDay, screentest.WinterDay} {
		_, s := open(t, screentest.Example(t), today)
		charges := s.Charges()
		if len(charges) == 0 {
			t.Errorf("%v: no slow release", today)
		}
		for _, c := range charges {
			if c.Pot == "" || c.Season == "" || c.When == "" || !strings.HasSuffix(c.Spoons.Value, " tbsp") || c.Mass.Figure.IsZero() {
				t.Errorf("charge %+v", c)
			}
		}
	}
}

func TestAWinterDayAndAnEmptyPlan(t *testing.T) {
	_, s := open(t, screentest.Example(t), screentest.WinterDay)
	if r := s.Rounds(3); len(r) > 0 && r[0].Late {
		t.Errorf("a round of winter is late: %+v", r[0])
	}
	_, s = open(t, screentest.Empty(), screentest.SummerDay)
	if !s.Known() || s.Products() != nil || s.Rounds(9) != nil || s.Past(9) != nil || s.Charges() != nil || s.Can() != "9 L" {
		t.Error("an empty plan has feeds")
	}
}

func TestFeedsBeforeTheOutlookIsThere(t *testing.T) {
	d := screentest.Waiting(t, screentest.Example(t), screentest.SummerDay)
	s := feeding.New(d.Session, d.Words, d.NewID)
	if s.Known() || s.Rounds(9) != nil || s.Past(9) != nil || s.Charges() != nil || len(s.Products()) != 2 || s.Products()[0].Next {
		t.Error("feeds are known before they are worked out")
	}
	if err := s.SetCan("5 L"); err != nil || s.Can() != "5 L" {
		t.Errorf("the can is the plan's: %v", err)
	}
	if s.Tick(feeding.Round{}, "even") != nil || len(d.Plan().Log) != 0 {
		t.Error("a round that is not there was ticked")
	}
}
