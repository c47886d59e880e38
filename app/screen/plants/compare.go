package plants

import (
	"slices"

	"fourturn/app/words"
	catalogue "fourturn/plants"
)

// mostCompared is how many plants stand side by side in the width of a small window.
const mostCompared = 4

// Compared reports whether the chosen plant is among those to compare, and how many
// those are.
func (s *Screen) Compared() (chosen bool, count int) {
	return slices.Contains(s.compared, s.chosen), len(s.compared)
}

// ToggleCompared puts the chosen plant with those to compare, or takes it away. A
// fifth is refused; the error is a [*words.Refusal].
func (s *Screen) ToggleCompared() error {
	if s.plant() == nil {
		return nil
	}
	if at := slices.Index(s.compared, s.chosen); at >= 0 {
		s.compared = slices.Delete(s.compared, at, at+1)
		return nil
	}
	if len(s.compared) == mostCompared {
		return &words.Refusal{Text: s.words.T("plant_book.compare_most", words.A{"most": mostCompared})}
	}
	s.compared = append(s.compared, s.chosen)
	return nil
}

// Comparison is some plants side by side.
type Comparison struct {
	Plants []string // their names
	Drawn  []*catalogue.Plant
	Rows   []ComparedRow
}

// ComparedRow is one thing that is compared, with what each plant has, or "".
type ComparedRow struct {
	Label  string
	Values []ComparedValue // in the order of the plants
}

// ComparedValue is what one plant has.
type ComparedValue struct {
	Text    string // with the sign ≈ where Soft
	Soft    bool   // rests on an estimate, on memory or on practice
	Harmful bool   // a list names the plant
}

// comparedFields are those whose values are short and tell plants apart.
var comparedFields = [...]catalogue.Field{
	catalogue.FieldRole, catalogue.FieldWater, catalogue.FieldFeeder,
	catalogue.FieldHeight, catalogue.FieldSpread, catalogue.FieldSpacing, catalogue.FieldShows,
	catalogue.FieldFrostClass, catalogue.FieldLowestInPot, catalogue.FieldPlantingOutNight, catalogue.FieldHeatLimit,
}

// Comparison returns the plants to compare, in the order in which they were taken.
func (s *Screen) Comparison() Comparison {
	var c Comparison
	var list []*catalogue.Plant
	for _, id := range s.compared {
		if p, ok := s.book.Plant(id); ok {
			list, c.Plants, c.Drawn = append(list, p), append(c.Plants, p.Name()), append(c.Drawn, p)
		}
	}
	row := func(label string, value func(*catalogue.Plant) ComparedValue) {
		r := ComparedRow{Label: label}
		for _, p := range list {
			r.Values = append(r.Values, value(p))
		}
		c.Rows = append(c.Rows, r)
	}
	for _, creature := range catalogue.Creatures {
		row(s.words.T("plant_book.lists_for", words.A{"creature": s.words.T(creature.Key())}), func(p *catalogue.Plant) ComparedValue {
			l := listingOf(p, creature)
			return ComparedValue{Text: s.words.T("plant_book.short." + string(l)), Harmful: l.Harmful() || l == catalogue.Conflicting}
		})
	}
	for _, season := range catalogue.Seasons {
		row(s.words.T("plant_book.sold_for", words.A{"season": s.words.T(season.Key())}), func(p *catalogue.Plant) ComparedValue {
			return s.yes(slices.Contains(p.Seasons, season), p.Soft(catalogue.FieldSeasons))
		})
	}
	for _, light := range catalogue.Lights {
		row(s.words.T("plant_book.suits", words.A{"light": s.words.T(light.Key())}), func(p *catalogue.Plant) ComparedValue {
			return s.yes(slices.Contains(p.Light, light), p.Soft(catalogue.FieldLight))
		})
	}
	for _, f := range comparedFields {
		row(s.words.T(f.Key()), func(p *catalogue.Plant) ComparedValue {
			if !p.Has(f) {
				return ComparedValue{}
			}
			fact := s.fact(p, f, "", s.value(p, f))
			return s.comparedAs(fact.Value, fact.Soft)
		})
	}
	return c
}

func (s *Screen) yes(is, soft bool) ComparedValue {
	if !is {
		return ComparedValue{}
	}
	return s.comparedAs(s.words.T("plant_book.yes"), soft)
}

func (s *Screen) comparedAs(text string, soft bool) ComparedValue {
	if soft {
		text = s.words.T("plant_book.about", words.A{"value": text})
	}
	return ComparedValue{Text: text, Soft: soft}
}
