package due_test

import (
	"errors"
	"strings"
	"testing"

	"fourturn/app/screen/due"
	"fourturn/app/screen/screentest"
	"fourturn/app/words"
	"fourturn/planner"
	"fourturn/planner/civil"
)

func open(t *testing.T, plan *planner.Plan, today civil.Date) (*screentest.Desk, *due.Screen) {
	t.Helper()
	d := screentest.Open(t, plan, today)
	return d, due.New(d.Session, d.Words, d.NewID)
}

// task returns the first task of a kind.
func task(t *testing.T, s *due.Screen, kind planner.DueKind) due.Task {
	t.Helper()
	for _, g := range s.Groups() {
		for _, one := range g.Tasks {
			if one.Kind == kind {
				return one
			}
		}
	}
	t.Fatalf("no task of kind %s", kind)
	return due.Task{}
}

func TestGroupsAreInTheOrderOfTheCalendarAndNeverEmpty(t *testing.T) {
	for _, today := range []civil.Date{screentest.SummerDay, screentest.WinterDay, screentest.MayDay} {
		_, s := open(t, screentest.Example(t), today)
		for _, g := range s.Groups() {
			if g.Title == "" || len(g.Tasks) == 0 {
				t.Errorf("%v: group %q holds %d tasks", today, g.Title, len(g.Tasks))
			}
			for _, one := range g.Tasks {
				if strings.Contains(one.Title+one.Detail+one.When+one.Count+one.Late, "⟦") {
					t.Errorf("%v: a text is missing in %+v", today, one)
				}
				if (one.Late != "") != (g.Title == "Late") {
					t.Errorf("%v: %q is in group %q", today, one.Late, g.Title)
				}
			}
		}
	}
}

func TestATickedRoundIsRememberedAndTheOtherProductComesNext(t *testing.T) {
	d, s := open(t, screentest.Example(t), screentest.SummerDay)
	first := task(t, s, planner.DueFeed)
	if err := s.Tick(first); err != nil {
		t.Fatal(err)
	}
	d.Settle()
	log := d.Plan().Log
	if len(log) != 1 || log[0].Kind != planner.Fed || log[0].Date != screentest.SummerDay || log[0].ID != "entry-1" {
		t.Fatalf("the log holds %+v", log)
	}
	if got, want := d.UndoName(), "tick: "+first.Title; got != want {
		t.Errorf("the undo is called %q, want %q", got, want)
	}
	fed := map[string]bool{}
	for _, pot := range log[0].Pots {
		fed[pot] = true
	}
	all, _ := d.Outlook()
	for _, r := range all.Rounds {
		if r.Done {
			continue
		}
		for _, i := range r.Pots {
			if id := all.Pots[i].Pot.ID; fed[id] {
				if r.Product == log[0].Product {
					t.Errorf("%s gets %s twice in turn", id, r.Product)
				}
				delete(fed, id)
			}
		}
	}
	d.Undo()
	if len(d.Plan().Log) != 0 {
		t.Error("the undo left the entry")
	}
}

func TestATickedChangeOutIsLoggedToday(t *testing.T) {
	d, s := open(t, screentest.Example(t), screentest.SummerDay.AddDays(80))
	change := task(t, s, planner.DueChangeOut)
	if err := s.Tick(change); err != nil {
		t.Fatal(err)
	}
	log := d.Plan().Log
	if len(log) != 1 || log[0].Kind != planner.Planted || log[0].Season == "" || log[0].Product != "" || log[0].Date != screentest.SummerDay.AddDays(80) {
		t.Fatalf("the log holds %+v", log)
	}
	d.Settle()
	for _, g := range s.Groups() {
		for _, one := range g.Tasks {
			if one.Title == change.Title && one.When == change.When {
				t.Errorf("%q is still asked for", one.Title)
			}
		}
	}
}

func TestARoundIsLeftOutInItsWeekOnly(t *testing.T) {
	d, s := open(t, screentest.Example(t), screentest.SummerDay)
	refused, left := 0, 0
	for _, g := range s.Groups() {
		for _, one := range g.Tasks {
			if one.Kind != planner.DueFeed {
				continue
			}
			var refusal *words.Refusal
			switch err := s.PutOff(one); {
			case errors.As(err, &refusal):
				refused++
			case err != nil:
				t.Fatal(err)
			default:
				left++
			}
		}
	}
	if refused == 0 {
		t.Error("a round of a later week was left out today")
	}
	if len(d.Plan().Log) != left {
		t.Errorf("%d were left out, the log holds %d", left, len(d.Plan().Log))
	}
	for _, e := range d.Plan().Log {
		if e.Kind != planner.Skipped || e.Product != "" {
			t.Errorf("logged %+v", e)
		}
	}
}

func TestALeftOutRoundKeepsItsProductNext(t *testing.T) {
	// All pots had a feed of "even" two weeks ago, so that "bloom" is next.
	d, s := open(t, screentest.Example(t), screentest.SummerDay)
	d.Edit(func(p *planner.Plan) {
		e := planner.Entry{ID: "x", Date: screentest.SummerDay.AddDays(-14), Kind: planner.Fed, Product: "even"}
		for _, pot := range p.Pots {
			e.Pots = append(e.Pots, pot.ID)
		}
		*p = p.WithEntry(e)
	})
	const product = "bloom"
	feed := task(t, s, planner.DueFeed)
	all, _ := d.Outlook()
	var first planner.Round
	for _, r := range all.Rounds {
		if !r.Done {
			first = r
			break
		}
	}
	if first.Product != product {
		t.Fatalf("the next round is of %s", first.Product)
	}
	if err := s.PutOff(feed); err != nil {
		t.Fatal(err)
	}
	if got := d.UndoName(); !strings.HasPrefix(got, "leave out: ") {
		t.Errorf("the undo is called %q", got)
	}
	d.Settle()
	skipped := map[string]bool{}
	for _, pot := range d.Plan().Log[1].Pots {
		skipped[pot] = true
	}
	after, _ := d.Outlook()
	for _, r := range after.Rounds {
		if r.Done {
			continue
		}
		for _, i := range r.Pots {
			if id := after.Pots[i].Pot.ID; skipped[id] {
				if r.Date <= first.Date {
					t.Errorf("%s is still fed on %v", id, r.Date)
				}
				if r.Product != product {
					t.Errorf("%s was to get %s and now gets %s", id, product, r.Product)
				}
				delete(skipped, id)
			}
		}
	}
}

func TestAChangeOutIsPutOffByAWeek(t *testing.T) {
	today := screentest.SummerDay.AddDays(80)
	d, s := open(t, screentest.Example(t), today)
	change := task(t, s, planner.DueChangeOut)
	if err := s.PutOff(change); err != nil {
		t.Fatal(err)
	}
	if got, want := d.UndoName(), "put off: "+change.Title; got != want {
		t.Errorf("the undo is called %q, want %q", got, want)
	}
	pinned := 0
	for _, pot := range d.Plan().Pots {
		for _, p := range pot.Plantings {
			if !p.Start.IsZero() {
				pinned++
				if p.Start < today.AddDays(7) {
					t.Errorf("%s is put off to %v", pot.ID, p.Start)
				}
			}
		}
	}
	if pinned == 0 {
		t.Error("nothing was put off")
	}
}

func TestATaskOfPotsThatAreGoneDoesNothing(t *testing.T) {
	d, s := open(t, screentest.Example(t), screentest.SummerDay)
	feed := task(t, s, planner.DueFeed)
	d.Edit(func(p *planner.Plan) { p.Pots = p.Pots[:0:0] })
	before := d.Revision()
	if err := s.Tick(feed); err != nil {
		t.Fatal(err)
	}
	if d.Revision() != before {
		t.Error("a task of pots that are gone changed the plan")
	}
}

func TestAnEmptyPlanHasNothingDue(t *testing.T) {
	_, s := open(t, screentest.Empty(), screentest.SummerDay)
	if !s.Known() || len(s.Groups()) != 0 || s.Next() != "" {
		t.Errorf("known %v, groups %v, next %q", s.Known(), s.Groups(), s.Next())
	}
}

func TestNothingIsDueBeforeTheOutlookIsThere(t *testing.T) {
	d := screentest.Waiting(t, screentest.Example(t), screentest.SummerDay)
	s := due.New(d.Session, d.Words, d.NewID)
	if s.Known() || s.Groups() != nil || s.Next() != "" {
		t.Error("something is due before the outlook is there")
	}
	d.Settle()
	if !s.Known() || len(s.Groups()) == 0 || !strings.HasPrefix(s.Next(), "The next work comes on ") {
		t.Errorf("after the outlook: known %v, next %q", s.Known(), s.Next())
	}
}

func TestALongListOfPotsIsShortened(t *testing.T) {
	_, s := open(t, screentest.Many(t, 40), screentest.SummerDay.AddDays(80))
	change := task(t, s, planner.DueChangeOut)
	if !strings.Contains(change.Detail, " more") {
		t.Errorf("the detail is %q", change.Detail)
	}
}
