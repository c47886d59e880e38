package pots

import (
	"strings"

	"fourturn/app/words"
	"fourturn/planner"
	"fourturn/planner/planfile"
)

// placeGroup is what the pot is called, where it stands, whose it is, and notes.
func (s *Screen) placeGroup(pot *planner.Pot) Group {
	w := s.words
	g := Group{Key: groupPlace}
	spots := s.Spots()
	parts := []string{pot.Label()}
	if spots.Chosen >= 0 {
		parts = append(parts, spots.Options[spots.Chosen])
	}
	if pot.Client != "" {
		parts = append(parts, pot.Client)
	}
	g.Summary = strings.Join(parts, " · ")
	g.Fields = []Field{
		{Key: "name", Label: w.T("pots.name"), Value: pot.Name, Take: s.SetName},
		s.choice("spot", w.T("pots.spot"), spots, s.SetSpot),
		{Key: "client", Label: w.T("pots.client"), Help: w.T("pots.help_client"), Value: pot.Client, Take: s.SetClient},
		{Key: "notes", Label: w.T("pots.notes"), Value: pot.Notes, Lines: true, Take: s.SetNotes},
	}
	return g
}

// SetClient says whose the chosen pot is; "" for one's own.
func (s *Screen) SetClient(client string) error {
	return s.setText("pots.edit_client", strings.TrimSpace(client), planfile.MaxName, func(p *planner.Pot) *string { return &p.Client })
}

// SetNotes changes the notes of the chosen pot.
func (s *Screen) SetNotes(notes string) error {
	return s.setText("pots.edit_notes", strings.TrimRight(notes, " \n"), planfile.MaxNotes, func(p *planner.Pot) *string { return &p.Notes })
}

func (s *Screen) setText(edit, text string, longest int, of func(*planner.Pot) *string) error {
	pot := s.Chosen()
	if pot == nil || *of(pot) == text {
		return nil
	}
	if len([]rune(text)) > longest {
		return &words.Refusal{Text: s.words.T("pots.list.long_name", words.A{"most": longest})}
	}
	return s.do(edit, s.about(pot), func(p *planner.Pot) { *of(p) = text })
}
