package mix_test

import (
	"slices"
	"strings"
	"testing"

	"fourturn/app/screen/mix"
	"fourturn/app/screen/screentest"
	"fourturn/planner"
	"fourturn/planner/civil"
)

func open(t *testing.T, plan *planner.Plan, today civil.Date) (*screentest.Desk, *mix.Screen) {
	t.Helper()
	d := screentest.Open(t, plan, today)
	return d, mix.New(d.Session, d.Words)
}

func TestALongerTimeNeedsMore(t *testing.T) {
	for _, today := range []civil.Date{screentest.SummerDay, screentest.WinterDay} {
		_, s := open(t, screentest.Example(t), today)
		names, chosen := s.Spans()
		if chosen != 0 || len(names) != 3 {
			t.Fatalf("spans %v, chosen %d", names, chosen)
		}
		s.ChooseSpan(1)
		season := len(s.Rows())
		s.ChooseSpan(2)
		year := len(s.Rows())
		s.ChooseSpan(99) // nothing
		if _, chosen := s.Spans(); chosen != 2 {
			t.Errorf("chosen %d", chosen)
		}
		s.ChooseSpan(0)
		next := len(s.Rows())
		if next == 0 || next > year || season > year || year < 30 {
			t.Errorf("%v: %d change-outs next, %d in a season, %d in a year", today, next, season, year)
		}
		for _, r := range s.Rows() {
			if r.Pot == "" || r.Season == "" || r.When == "" || r.Mix.Figure.IsZero() {
				t.Errorf("row %+v", r)
			}
			if r.Spoons.Value != "–" && !strings.HasSuffix(r.Spoons.Value, "L") {
				t.Errorf("spoons %q", r.Spoons.Value)
			}
		}
		if s.Days() == "" {
			t.Error("the days are not said")
		}
	}
}

func TestThePurchaseCoversTheRows(t *testing.T) {
	_, s := open(t, screentest.Example(t), screentest.SummerDay)
	s.ChooseSpan(2)
	p := s.Purchases()[0]
	if p.Trouble != "" || len(p.Lines) == 0 || !strings.HasPrefix(p.Cost.Value, "US$") && !strings.HasPrefix(p.Cost.Value, "$") || p.Cost.Figure.IsZero() || p.LeftOver.Figure.IsZero() || p.Need.Figure.IsZero() {
		t.Errorf("purchase %+v", p)
	}
	loose, charge := s.Totals()
	if !strings.HasSuffix(loose, " L") || !strings.HasSuffix(charge, "g") {
		t.Errorf("totals %q and %q", loose, charge)
	}
	if len(s.Feeds()) == 0 {
		t.Error("no fertiliser for the year")
	}
	for _, f := range s.Feeds() {
		if f.Name == "" || f.Need.Figure.IsZero() {
			t.Errorf("feed %+v", f)
		}
	}
	_, us := open(t, screentest.Customary(t), screentest.SummerDay)
	if loose, _ := us.Totals(); !strings.HasSuffix(loose, " cu ft") && !strings.HasSuffix(loose, " dry qt") {
		t.Errorf("in US units %q", loose)
	}
}

func TestTroubleIsSaid(t *testing.T) {
	plan := screentest.Example(t)
	plan.Products = slices.Clone(plan.Products)
	plan.Products[0].Packs = nil
	plan.Products[0].InShed = 0
	_, s := open(t, plan, screentest.SummerDay)
	if p := s.Purchases()[0]; p.Trouble != "The plan lists no bags of potting mix with a size and a price." {
		t.Errorf("purchase %+v", p)
	}
	plan = screentest.Example(t)
	plan.Products[0].InShed = 1e6
	_, s = open(t, plan, screentest.SummerDay)
	if p := s.Purchases()[0]; !slices.Equal(p.Lines, []string{"Nothing: the shed has enough."}) {
		t.Errorf("purchase %+v", p)
	}
}

func TestClients(t *testing.T) {
	plan := screentest.Example(t)
	plan.Pots[0].Client, plan.Pots[1].Client, plan.Pots[2].Client = "Mill Lane", "Mill Lane", "Annex"
	d, s := open(t, plan, screentest.SummerDay)
	s.ChooseSpan(2)
	names, chosen := s.Clients()
	if chosen != 0 || !slices.Equal(names, []string{"all pots", "Mill Lane", "Annex"}) {
		t.Fatalf("clients %v, chosen %d", names, chosen)
	}
	all := len(s.Rows())
	s.ChooseClient(1)
	if _, chosen := s.Clients(); chosen != 1 || len(s.Rows()) == 0 || len(s.Rows()) >= all {
		t.Errorf("chosen %d, %d rows of %d", chosen, len(s.Rows()), all)
	}
	for _, r := range s.Rows() {
		if !strings.HasPrefix(r.Pot, "Door pot") {
			t.Errorf("%s is not the client's", r.Pot)
		}
	}
	d.Edit(func(p *planner.Plan) {
		p.Pots = slices.Clone(p.Pots)
		p.Pots[0].Client, p.Pots[1].Client = "", ""
	})
	if _, chosen := s.Clients(); chosen != 0 || len(s.Rows()) != all {
		t.Errorf("of a client without pots: chosen %d, %d rows of %d", chosen, len(s.Rows()), all)
	}
	s.ChooseClient(-1)
	s.ChooseClient(99)
	if _, chosen := s.Clients(); chosen != 0 {
		t.Errorf("chosen %d", chosen)
	}
}

func TestAnEmptyPlanBuysNothing(t *testing.T) {
	_, s := open(t, screentest.Empty(), screentest.SummerDay)
	for span := range 3 {
		s.ChooseSpan(span)
		if len(s.Rows()) != 0 || len(s.Feeds()) != 0 || s.Days() == "" {
			t.Error("an empty plan needs something")
		}
	}
	if names, _ := s.Clients(); len(names) != 1 {
		t.Errorf("clients %v", names)
	}
}

func TestBuyingBeforeTheOutlookIsThere(t *testing.T) {
	d := screentest.Waiting(t, screentest.Example(t), screentest.SummerDay)
	s := mix.New(d.Session, d.Words)
	loose, charge := s.Totals()
	if s.Known() || s.Rows() != nil || s.Days() != "" || s.Feeds() != nil || loose+charge != "" || len(s.Purchases()) != 0 {
		t.Error("something is known before it is worked out")
	}
	d.Settle()
	if !s.Known() || len(s.Rows()) == 0 {
		t.Error("the outlook is there and not shown")
	}
}
