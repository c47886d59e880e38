// Package year is every pot as a strip through the year: its plantings from change-out
// to change-out, the days on which each change-out can fall, and the feeds, under the
// weather of the site.
//
// It draws nothing. Days are the day numbers of [civil.Date]. Moving a change-out pins
// its day; the rest of the year goes around it. Rows are the pots that answer what is
// asked by name, client, place and shape, in the order of the plan.
package year

import (
	"fourturn/app/session"
	"fourturn/app/words"
	"fourturn/planner"
	"fourturn/planner/civil"
	"fourturn/plants"
)

// Session is the open plan with what is worked out for it.
type Session = session.Session[*planner.Outlook]

// Screen is the page of the year.
type Screen struct {
	session *Session
	words   *words.Words

	asked  asked
	shown  []int            // pots that answer, as indices into the outlook's
	forAll *planner.Outlook // that shown was worked out for
	texts  []string         // by which each pot of the outlook is found
	textOf *planner.Outlook // that texts are of
	chosen string           // id of the pot that is looked at

	plantsBy map[string]*plants.Plant // that the outlook's pots hold, by id
	plantsOf *planner.Outlook         // that they are of
}

// New returns the page of a session.
func New(s *Session, w *words.Words) *Screen { return &Screen{session: s, words: w} }

func (s *Screen) outlook() *planner.Outlook {
	all, _ := s.session.Outlook()
	return all
}

// Known reports whether anything is worked out yet.
func (s *Screen) Known() bool { return s.outlook() != nil }

// Empty reports whether the plan has no pots at all.
func (s *Screen) Empty() bool { return len(s.session.Plan().Pots) == 0 }

// Today returns the day that the outlook was worked out for, or no day before that.
func (s *Screen) Today() civil.Date {
	if all := s.outlook(); all != nil {
		return all.Today
	}
	return 0
}

// shownMonths is how many months the strips reach at least, planned or not.
const shownMonths = 24

// Span returns the first day shown and the day after the last, or no days while
// nothing is worked out.
func (s *Screen) Span() (first, last civil.Date) {
	all := s.outlook()
	if all == nil {
		return 0, 0
	}
	return all.First, max(all.Last.AddDays(1), all.First.AddMonths(shownMonths))
}

// planned returns the first and the last day that is planned for.
func (s *Screen) planned() (first, last civil.Date) {
	all := s.outlook()
	if all == nil {
		return 0, 0
	}
	return all.First, all.Last
}

// Day writes a day out.
func (s *Screen) Day(d civil.Date) string { return s.words.WeekdayDate(d) }

// Choose looks at the pot of a row; the weather is then that of its site.
func (s *Screen) Choose(row int) {
	if p := s.pot(row); p != nil {
		s.chosen = p.Pot.ID
	}
}

// ChosenRow returns the row of the pot that is looked at, or -1 where it is not shown.
func (s *Screen) ChosenRow() int { return s.RowOf(s.chosen) }

// RowOf returns the row of a pot, or -1 where it is not shown.
func (s *Screen) RowOf(id string) int {
	all := s.outlook()
	for row, i := range s.visible() {
		if all.Pots[i].Pot.ID == id {
			return row
		}
	}
	return -1
}

// pot returns the pot of a row, or nil.
func (s *Screen) pot(row int) *planner.PotOutlook {
	shown := s.visible()
	if row < 0 || row >= len(shown) {
		return nil
	}
	return &s.outlook().Pots[shown[row]]
}
