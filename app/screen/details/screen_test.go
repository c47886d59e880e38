package details_test

import (
	"errors"
	"testing"

	"fourturn/app/screen/details"
	"fourturn/app/screen/screentest"
	"fourturn/app/words"
	"fourturn/planner"
	"fourturn/planner/quantity"
)

func TestDetailsAreOneEdit(t *testing.T) {
	d := screentest.Open(t, screentest.Example(t), screentest.SummerDay)
	s := details.New(d.Session, d.Words)
	if err := s.Keep(s.Now()); err != nil || d.UndoName() != "" {
		t.Errorf("nothing changed is an edit: %v, %q", err, d.UndoName())
	}
	want := details.Details{Title: " Roof ", Units: 1, Currency: "eur", Risk: "20", Household: planner.Household{Cats: true}}
	if err := s.Keep(want); err != nil {
		t.Fatal(err)
	}
	p := d.Plan()
	if p.Title != "Roof" || p.Units != quantity.USCustomary || p.Currency != "EUR" || p.Risk != 0.2 || !p.Household.Cats || p.Household.Dogs {
		t.Errorf("%q, %v, %q, %v, %+v", p.Title, p.Units, p.Currency, p.Risk, p.Household)
	}
	if d.UndoName() != "change the details of the plan" {
		t.Errorf("undo is called %q", d.UndoName())
	}
	d.Undo()
	if d.Plan().Title != "Copper Kettle Yard" || d.Plan().Currency != "USD" {
		t.Error("undo left something")
	}
}

func TestFaultyDetailsAreRefused(t *testing.T) {
	d := screentest.Open(t, screentest.Example(t), screentest.SummerDay)
	s := details.New(d.Session, d.Words)
	var refused *words.Refusal
	for _, typed := range []string{"", "0", "100 %", "-5", "often", "0.5"} {
		if err := s.CheckRisk(typed); !errors.As(err, &refused) {
			t.Errorf("a risk of %q: %v", typed, err)
		}
	}
	for _, typed := range []string{"EURO", "x", "12"} {
		now := s.Now()
		now.Currency = typed
		if err := s.Keep(now); !errors.As(err, &refused) {
			t.Errorf("a currency %q: %v", typed, err)
		}
	}
	for _, typed := range []string{"1", "99", "12.5 %", "10%"} {
		if err := s.CheckRisk(typed); err != nil {
			t.Errorf("a risk of %q: %v", typed, err)
		}
	}
	if err := s.CheckCurrency(" "); err != nil {
		t.Errorf("no currency: %v", err)
	}
}

// A risk that is written rounded keeps its value while nobody types another.
func TestRiskKeepsItsDecimals(t *testing.T) {
	plan := screentest.Example(t)
	plan.Risk = 0.12345
	d := screentest.Open(t, plan, screentest.SummerDay)
	s := details.New(d.Session, d.Words)
	now := s.Now()
	now.Title = "Else"
	if err := s.Keep(now); err != nil || d.Plan().Risk != 0.12345 {
		t.Errorf("the risk became %v: %v", d.Plan().Risk, err)
	}
}
