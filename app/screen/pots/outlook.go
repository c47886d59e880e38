package pots

import (
	"fourturn/planner"
	"fourturn/planner/finding"
)

// index finds what an outlook says of a pot without a search.
type index struct {
	of    *planner.Outlook
	pots  map[string]int // by id
	worst map[string]finding.Severity
}

// outlook returns what is worked out for a pot, or nil while it is not known.
func (s *Screen) outlook(pot *planner.Pot) *planner.PotOutlook {
	all, _ := s.session.Outlook()
	if all == nil || pot == nil {
		return nil
	}
	if s.index.of != all {
		s.index = indexOf(all)
	}
	i, ok := s.index.pots[pot.ID]
	if !ok {
		return nil
	}
	return &all.Pots[i]
}

func indexOf(all *planner.Outlook) index {
	x := index{of: all, pots: make(map[string]int, len(all.Pots)), worst: map[string]finding.Severity{}}
	for i := range all.Pots {
		x.pots[all.Pots[i].Pot.ID] = i
	}
	for _, f := range all.Findings {
		if id, ok := potOf(f); ok {
			x.worst[id] = max(x.worst[id], f.Severity)
		}
	}
	return x
}

// potOf returns which pot a finding is about.
func potOf(f finding.Finding) (id string, ok bool) {
	if len(f.Where) < 2 || f.Where[0] != "pots" {
		return "", false
	}
	return f.Where[1], true
}

// Working reports whether figures are being worked out for the latest change.
func (s *Screen) Working() bool {
	_, current := s.session.Outlook()
	return !current
}

// Remark is one finding in words.
type Remark struct {
	Severity finding.Severity
	Text     string
}

// Findings returns the remarks on the chosen pot in words, gravest first, but for those
// that stand in one of its groups.
func (s *Screen) Findings() []Remark {
	pot := s.Chosen()
	all, _ := s.session.Outlook()
	if pot == nil || all == nil {
		return nil
	}
	var remarks []Remark
	for _, f := range all.Findings { // they come gravest first
		if id, ok := potOf(f); ok && id == pot.ID && placeOf[f.Code] == "" {
			remarks = append(remarks, Remark{Severity: f.Severity, Text: s.words.Finding(f, s.session.Plan().Units)})
		}
	}
	return remarks
}

// Figure is a worked-out value with its name, written out.
type Figure struct {
	Label  string
	Value  string
	Soft   bool
	Figure planner.Figure
}

// spoons are the figures that are written with the unit of a spoon.
var spoons = map[string]string{"pots.spoons": "pots.tablespoons"}

func (s *Screen) figure(key string, f planner.Figure) (Figure, bool) {
	if f.IsZero() {
		return Figure{}, false
	}
	trace := f.Working()
	value := s.words.Named(key, f.Value, s.session.Plan().Units)
	if unit, ok := spoons[key]; ok {
		value = s.words.T(unit, map[string]any{"n": value})
	}
	return Figure{Label: s.words.T(key), Value: value, Soft: trace.Soft(), Figure: f}, true
}

// keyed is a figure with the key of its label.
type keyed struct {
	key    string
	figure planner.Figure
}

// figures writes those out that are there.
func (s *Screen) figures(of []keyed) []Figure {
	var list []Figure
	for _, one := range of {
		if f, ok := s.figure(one.key, one.figure); ok {
			list = append(list, f)
		}
	}
	return list
}

// Figures returns what is worked out for the chosen pot: volumes, mix and slow release.
func (s *Screen) Figures() []Figure {
	out := s.outlook(s.Chosen())
	if out == nil {
		return nil
	}
	return s.figures([]keyed{
		{"pots.brim", out.Brim},
		{"pots.fill", out.Fill},
		{"pots.mix", out.Mix},
		{"pots.refresh", out.Refresh},
		{"pots.charge", out.Charge},
		{"pots.spoons", out.Spoons},
		{"pots.wet", out.Wet},
	})
}
