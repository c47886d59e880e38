package year

import (
	"math"

	"fourturn/app/words"
	"fourturn/planner"
	"fourturn/planner/civil"
	"fourturn/planner/finding"
	"fourturn/planner/working"
)

// Move pins the start of a planting to a day. What has happened stays as it was
// logged, and a day outside the days shown is refused.
func (s *Screen) Move(row, segment int, day civil.Date) error {
	pot, stand := s.at(row, segment)
	if stand == nil {
		return nil
	}
	if stand.Happened {
		return &words.Refusal{Text: s.words.T("year.happened")}
	}
	if first, last := s.planned(); day < first || day > last {
		return &words.Refusal{Text: s.words.T("year.outside", words.A{"first": first, "last": last})}
	}
	return s.pin("year.edit_move", pot, stand.Season, day)
}

// Pin holds on to the day that a change-out has now.
func (s *Screen) Pin(row, segment int) error {
	_, stand := s.at(row, segment)
	if stand == nil || stand.Pinned {
		return nil
	}
	return s.Move(row, segment, stand.From)
}

// Unpin gives the day of a change-out back to the site. It does nothing to one that is
// not pinned.
func (s *Screen) Unpin(row, segment int) error {
	pot, stand := s.at(row, segment)
	if stand == nil || !stand.Pinned {
		return nil
	}
	return s.pin("year.edit_unpin", pot, stand.Season, 0)
}

// at returns the pot and the planting at a place of the strips, or nil.
func (s *Screen) at(row, segment int) (*planner.Pot, *planner.Stand) {
	p := s.pot(row)
	if p == nil || segment < 0 || segment >= len(p.Stands) {
		return nil, nil
	}
	return p.Pot, &p.Stands[segment]
}

func (s *Screen) pin(name string, of *planner.Pot, season planner.Season, day civil.Date) error {
	args := []finding.Arg{
		{Name: "pot", Value: working.Text(of.Label())},
		{Name: "season", Value: working.Text("plan.season." + string(season))},
	}
	return s.edit(name, args, of.ID, func(pot *planner.Pot) {
		for i := range pot.Plantings {
			if pot.Plantings[i].Season == season {
				pot.Plantings[i].Start = day
			}
		}
	})
}

// Moving is what is said of a change-out while it is moved.
type Moving struct {
	Title string
	Lines []string
	Bad   bool // the day is not safe or not sensible
}

// Moving returns what moving a change-out to a day would mean.
func (s *Screen) Moving(row, segment int, day civil.Date) Moving {
	_, st := s.at(row, segment)
	if st == nil {
		return Moving{}
	}
	m := Moving{Title: s.Day(day)}
	switch days := int(day - st.From); {
	case days < 0:
		m.Lines = append(m.Lines, s.words.T("year.days_earlier", words.A{"count": -days}))
	case days > 0:
		m.Lines = append(m.Lines, s.words.T("year.days_later", words.A{"count": days}))
	}
	if line, ok := s.cost(row, segment, day); ok {
		m.Lines = append(m.Lines, line)
	}
	switch {
	case st.Earliest.IsZero():
	case day < st.Earliest:
		m.Bad = true
		m.Lines = append(m.Lines, s.words.T("year.before_safe", words.A{"day": s.words.ShortDate(st.Earliest)}))
	case day > st.Latest:
		m.Bad = true
		m.Lines = append(m.Lines, s.words.T("year.after_sensible", words.A{"day": s.words.ShortDate(st.Latest)}))
	default:
		m.Lines = append(m.Lines, s.words.T("year.safe"))
	}
	return m
}

// cost says what moving a change-out to a day costs, where that is known.
func (s *Screen) cost(row, segment int, day civil.Date) (string, bool) {
	cost, ok := s.pot(row).CostOfMoving(segment, day)
	if !ok {
		return "", false
	}
	const noticed = 0.05 // display days: below it nobody sees a difference
	days := s.words.Number(math.Abs(cost), 1)
	switch {
	case cost > noticed:
		return s.words.T("year.costs", words.A{"days": days}), true
	case cost < -noticed:
		return s.words.T("year.gains", words.A{"days": days}), true
	}
	return s.words.T("year.costs_nothing"), true
}
