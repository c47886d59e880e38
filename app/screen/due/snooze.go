package due

import (
	"slices"
	"strings"
	"time"

	"fourturn/app/words"
	"fourturn/planner"
	"fourturn/planner/civil"
)

// Tomorrow returns the day after today, and NextSaturday the first Saturday after it.
func (s *Screen) Tomorrow() civil.Date { return s.today() + 1 }

// NextSaturday returns the first Saturday after today.
func (s *Screen) NextSaturday() civil.Date {
	day := s.today() + 1
	for day.Weekday() != time.Saturday {
		day++
	}
	return day
}

// SnoozeUntil is [Screen.Snooze] until a day that was typed, as 2027-06-12.
func (s *Screen) SnoozeUntil(t Task, typed string) error {
	day, err := civil.Parse(strings.TrimSpace(typed))
	if err != nil {
		return &words.Refusal{Text: s.words.T("due.no_day")}
	}
	return s.Snooze(t, day)
}

// Snooze puts the reminder of a task off to a day that is to come. It is an edit of the
// plan like any other: it can be taken back, and whoever shares the plan sees it. A round
// of feeds moves with it, since its pots are then fed that day; a change-out keeps its
// day, which plants and frost decide, and only the reminder sleeps.
func (s *Screen) Snooze(t Task, until civil.Date) error {
	today := s.today()
	if until <= today {
		return &words.Refusal{Text: s.words.T("due.snooze_past")}
	}
	return s.change("due.edit_snooze", t, func(p planner.Plan, pots []string) (planner.Plan, error) {
		kept := make([]planner.Snooze, 0, len(p.Snoozed)+1)
		for _, old := range p.Snoozed {
			same := old.Kind == t.Kind && old.Season == t.due.Season && slices.Equal(old.Pots, pots)
			if old.Until > today && !same {
				kept = append(kept, old)
			}
		}
		p.Snoozed = append(kept, planner.Snooze{Kind: t.Kind, Pots: pots, Season: t.due.Season, Until: until, Set: today})
		return p, nil
	})
}
