package pots

import (
	"fourturn/app/session"
	"fourturn/app/words"
	"fourturn/planner"
	"fourturn/planner/vessel"
	"fourturn/planner/working"
)

// Session is the open plan with what is worked out for it.
type Session = session.Session[*planner.Outlook]

// Screen is the state of the bench.
type Screen struct {
	session *Session
	words   *words.Words
	chosen  string // id of the chosen pot
	filter  string // folded text that names must contain
	shown   shown
	index   index
	newID   func() string
}

// New returns the bench of a session, with its first pot chosen. newID makes the ids of
// log entries; it must never give the same twice, even on two machines.
func New(s *Session, w *words.Words, newID func() string) *Screen {
	return &Screen{session: s, words: w, newID: newID}
}

// Chosen returns the pot that is chosen, or nil where the plan has none. A pot that
// is gone gives way to the first.
func (s *Screen) Chosen() *planner.Pot {
	plan := s.session.Plan()
	if pot := plan.Pot(s.chosen); pot != nil {
		return pot
	}
	if len(plan.Pots) == 0 {
		return nil
	}
	s.chosen = plan.Pots[0].ID
	return &plan.Pots[0]
}

// Choose chooses a pot; an id that is not there is passed over.
func (s *Screen) Choose(id string) {
	if s.session.Plan().Pot(id) != nil {
		s.chosen = id
	}
}

// Vessel returns the chosen pot as a solid to be drawn to scale, or nil where its
// size is faulty.
func (s *Screen) Vessel() *vessel.Vessel {
	pot := s.Chosen()
	if pot == nil {
		return nil
	}
	return built(pot)
}

func built(pot *planner.Pot) *vessel.Vessel {
	v, err := vessel.New(pot.Vessel)
	if err != nil {
		return nil
	}
	return &v
}

func text(s string) working.Value { return working.Text(s) }
