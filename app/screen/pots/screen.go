package pots

import (
	"fourturn/app/session"
	"fourturn/app/words"
	"fourturn/planner"
	"fourturn/planner/finding"
	"fourturn/planner/vessel"
	"fourturn/planner/working"
)

// Screen is the state of the bench.
type Screen struct {
	session *session.Session[*planner.Outlook]
	words   *words.Words
	chosen  string // id of the chosen pot
	filter  string // folded text that names must contain
}

// New returns the bench of a session, with its first pot chosen.
func New(s *session.Session[*planner.Outlook], w *words.Words) *Screen {
	return &Screen{session: s, words: w}
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
	return &plan.Pots[0]
}

// Choose chooses a pot; an id that is not there is passed over.
func (s *Screen) Choose(id string) {
	if s.session.Plan().Pot(id) != nil {
		s.chosen = id
	}
}

// outlook returns what is worked out for a pot, or nil while it is not known.
func (s *Screen) outlook(pot *planner.Pot) *planner.PotOutlook {
	all, _ := s.session.Outlook()
	if all == nil || pot == nil {
		return nil
	}
	for i := range all.Pots {
		if all.Pots[i].Pot.ID == pot.ID {
			return &all.Pots[i]
		}
	}
	return nil
}

// Working reports whether figures are being worked out for the latest change.
func (s *Screen) Working() bool {
	_, current := s.session.Outlook()
	return !current
}

// Findings returns the remarks on the chosen pot in words, gravest first.
func (s *Screen) Findings() []Remark {
	pot := s.Chosen()
	all, _ := s.session.Outlook()
	if pot == nil || all == nil {
		return nil
	}
	var remarks []Remark
	for severity := finding.Error; severity >= finding.Note; severity-- {
		for _, f := range all.Findings {
			if f.Severity == severity && len(f.Where) > 1 && f.Where[0] == "pots" && f.Where[1] == pot.ID {
				remarks = append(remarks, Remark{Severity: severity, Text: s.words.Finding(f, s.session.Plan().Units)})
			}
		}
	}
	return remarks
}

// Remark is one finding in words.
type Remark struct {
	Severity finding.Severity
	Text     string
}

// Figure is a worked-out value with its name, written out.
type Figure struct {
	Label  string
	Value  string
	Soft   bool
	Figure planner.Figure
}

func (s *Screen) figure(key string, f planner.Figure) (Figure, bool) {
	if f.IsZero() {
		return Figure{}, false
	}
	trace := f.Working()
	return Figure{
		Label: s.words.T(key), Value: s.words.Named(key, f.Value, s.session.Plan().Units),
		Soft: trace.Soft(), Figure: f,
	}, true
}

// Figures returns what is worked out for the chosen pot: volumes, mix, slow release
// and weight.
func (s *Screen) Figures() []Figure {
	out := s.outlook(s.Chosen())
	if out == nil {
		return nil
	}
	var list []Figure
	for _, one := range []struct {
		key    string
		figure planner.Figure
	}{
		{"pots.fill", out.Fill},
		{"pots.mix", out.Mix},
		{"pots.refresh", out.Refresh},
		{"pots.charge", out.Charge},
		{"pots.spoons", out.Spoons},
		{"pots.wet", out.Wet},
		{"pots.dry", out.Dry},
	} {
		if f, ok := s.figure(one.key, one.figure); ok {
			list = append(list, f)
		}
	}
	return list
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
