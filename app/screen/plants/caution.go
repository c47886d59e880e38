package plants

import (
	"cmp"
	"slices"
	"strings"

	"fourturn/app/words"
	"fourturn/planner/finding"
	"fourturn/planner/working"
	catalogue "fourturn/plants"
)

// Listing is what the lists of poisonous plants say of the chosen plant for one kind
// of creature.
type Listing struct {
	Fact
	Harmful bool // so that a sign goes with the words
}

// Listings returns what the lists say for dogs, cats and people. A plant that is not
// listed is called that, and nothing better.
func (s *Screen) Listings() []Listing {
	p := s.plant()
	if p == nil {
		return nil
	}
	list := make([]Listing, 0, len(catalogue.Creatures))
	for _, c := range catalogue.Creatures {
		listing := listingOf(p, c)
		text := s.words.T("plant_book.says."+string(listing), words.A{"creature": s.words.T(c.Key())})
		fact := s.fact(p, catalogue.FieldToxicity+catalogue.Field("."+string(c)), "", working.Text(text))
		list = append(list, Listing{Fact: fact, Harmful: listing.Harmful() || listing == catalogue.Conflicting})
	}
	return list
}

func listingOf(p *catalogue.Plant, c catalogue.Creature) catalogue.Listing {
	if l := p.Toxicity.For(c); l != "" {
		return l
	}
	return catalogue.NotListed
}

// listedShort names those whom the plant is listed as harmful to, for the list.
func (s *Screen) listedShort(p *catalogue.Plant) (text string, harmful bool) {
	var harmed []string
	conflicting, listed := false, false
	for _, c := range catalogue.Creatures {
		l := listingOf(p, c)
		if l.Harmful() {
			harmed = append(harmed, s.words.T(c.Key()))
		}
		conflicting = conflicting || l == catalogue.Conflicting
		listed = listed || l != catalogue.NotListed
	}
	switch {
	case len(harmed) > 0:
		return strings.Join(harmed, s.words.T("plant_book.comma")), true
	case conflicting:
		return s.words.T(catalogue.Conflicting.Key()), true
	case listed:
		return s.words.T("plant_book.not_as_harmful"), false
	}
	return s.words.T(catalogue.NotListed.Key()), false
}

// Handling says how the chosen plant is handled, one line a hazard, and what is
// remarked on its listing.
func (s *Screen) Handling() []string {
	p := s.plant()
	if p == nil {
		return nil
	}
	var lines []string
	for _, h := range p.Toxicity.Hazards {
		lines = append(lines, s.words.T("plant_book.handling", words.A{"hazard": s.words.T(h.Key()), "handling": s.words.T(h.HandlingKey())}))
	}
	if p.Toxicity.Note != "" {
		lines = append(lines, p.Toxicity.Note)
	}
	return lines
}

// Notice is what must be said of the chosen plant.
type Notice struct {
	Severity finding.Severity
	Title    string
	Text     string
}

// Notices returns the cautions on the chosen plant for the plan's household, the
// gravest first, and the regions where it escapes from gardens.
func (s *Screen) Notices() []Notice {
	p := s.plant()
	if p == nil {
		return nil
	}
	found := append(catalogue.Cautions(p, s.household()), s.invasive(p)...)
	slices.SortStableFunc(found, func(a, b finding.Finding) int { return cmp.Compare(b.Severity, a.Severity) })
	list := make([]Notice, len(found))
	for i, f := range found {
		list[i] = Notice{Severity: f.Severity, Title: s.words.T("plant_book.notice_" + f.Severity.String()), Text: s.words.Finding(f, s.units())}
	}
	return list
}

// invasive joins the notes on all regions into one, since they give the same advice.
func (s *Screen) invasive(p *catalogue.Plant) []finding.Finding {
	notes := catalogue.InvasiveNotes(p)
	if len(notes) < 2 {
		return notes
	}
	var regions []string
	for _, note := range notes {
		for _, arg := range note.Args {
			if arg.Name == "region" {
				regions = append(regions, arg.Value.Text)
			}
		}
	}
	whole := notes[0]
	whole.Args = []finding.Arg{
		{Name: "plant", Value: working.Text(p.Name())},
		{Name: "region", Value: working.Text(strings.Join(regions, s.words.T("plant_book.semicolon")))},
	}
	return []finding.Finding{whole}
}

func (s *Screen) household() catalogue.Household {
	return catalogue.Household(s.session.Plan().Household)
}
