package due_test

import (
	"testing"

	"fourturn/app/screen/screentest"
	"fourturn/planner"
)

func TestASnoozedRoundMovesAndCanBeTakenBack(t *testing.T) {
	d, s := open(t, screentest.Example(t), screentest.SummerDay)
	first := task(t, s, planner.DueFeed)
	until := s.NextSaturday().AddDays(7)
	if s.Snooze(first, screentest.SummerDay) == nil || s.SnoozeUntil(first, "soon") == nil || len(d.Plan().Snoozed) != 0 {
		t.Fatal("a snooze until today, or until no day, was taken")
	}
	if err := s.SnoozeUntil(first, until.String()); err != nil {
		t.Fatal(err)
	}
	d.Settle()
	outlook, _ := d.Outlook()
	for _, r := range outlook.Rounds {
		if r.Date < until {
			t.Errorf("a round on %v, and the feeds sleep until %v", r.Date, until)
		}
	}
	if after := task(t, s, planner.DueFeed); after.When == first.When {
		t.Errorf("the round is still on %s", after.When)
	}
	if got, want := d.UndoName(), "snooze: "+first.Title; got != want {
		t.Errorf("the undo is called %q, want %q", got, want)
	}
	d.Undo()
	d.Settle()
	if again := task(t, s, planner.DueFeed); again.When != first.When || len(d.Plan().Snoozed) != 0 {
		t.Errorf("after the undo it is on %s", again.When)
	}
}

func TestASnoozedChangeOutSleepsOnItsDay(t *testing.T) {
	d, s := open(t, screentest.Example(t), screentest.WinterDay.AddDays(60))
	change := task(t, s, planner.DueChangeOut)
	if err := s.Snooze(change, s.Tomorrow()); err != nil {
		t.Fatal(err)
	}
	d.Settle()
	groups := s.Groups()
	last := groups[len(groups)-1]
	if last.Title != "Asleep" || len(last.Tasks) != 1 || last.Tasks[0].When != change.When {
		t.Errorf("the last group is %+v", last)
	}
}
