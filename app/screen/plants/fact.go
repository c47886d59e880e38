package plants

import (
	"fourturn/app/words"
	"fourturn/planner"
	"fourturn/planner/quantity"
	"fourturn/planner/working"
	catalogue "fourturn/plants"
)

// Fact is one value of the chosen plant, written out. Soft is one that rests on an
// estimate, on memory or on practice, and not on a source that was read.
type Fact struct {
	Label  string
	Value  string
	Soft   bool
	Figure planner.Figure // with where the value is from
}

// Told is the chosen plant.
type Told struct {
	Name      string
	Botanical string
	Others    string // further names: common, botanical, former
	Notes     string
	Conflicts []string // where sources disagree, what each says, and why one was taken
}

// Told returns the names of the chosen plant and what is remarked on it; ok is false
// where none is chosen.
func (s *Screen) Told() (told Told, ok bool) {
	p := s.plant()
	if p == nil {
		return Told{}, false
	}
	told = Told{Name: p.Name(), Notes: p.Notes}
	others := append([]string(nil), p.Names[min(1, len(p.Names)):]...)
	if len(p.Botanical) > 0 {
		told.Botanical = p.Botanical[0]
		others = append(others, p.Botanical[1:]...)
	}
	if others = append(others, p.Synonyms...); len(others) > 0 {
		told.Others = s.words.T("plant_book.others", words.A{"names": s.words.List(others...)})
	}
	for _, c := range p.Conflicts {
		var versions []string
		for _, v := range c.Versions {
			versions = append(versions, v.Says)
		}
		told.Conflicts = append(told.Conflicts, s.words.T("plant_book.conflict", words.A{
			"field": s.words.T(c.Field.Key()), "versions": s.words.List(versions...), "why": c.Why,
		}))
	}
	return told, true
}

// told apart from facts: names stand at the head, listings and regions among the
// cautions, and drawings are not in words.
var notFacts = map[catalogue.Field]bool{
	catalogue.FieldNames: true, catalogue.FieldBotanical: true, catalogue.FieldSynonyms: true,
	catalogue.FieldToxicity: true, catalogue.FieldInvasive: true,
	catalogue.FieldDrawing: true, catalogue.FieldNotes: true, catalogue.FieldConflicts: true,
}

// Facts returns what is known of the chosen plant, each with where it is from.
func (s *Screen) Facts() []Fact {
	p := s.plant()
	if p == nil {
		return nil
	}
	var list []Fact
	for _, f := range catalogue.Fields() {
		switch {
		case notFacts[f] || !p.Has(f):
		case f == catalogue.FieldSold:
			for _, sold := range p.Sold {
				list = append(list, s.soldFact(p, sold))
			}
		default:
			list = append(list, s.fact(p, f, s.words.T(f.Key()), s.value(p, f)))
		}
	}
	return list
}

func (s *Screen) fact(p *catalogue.Plant, f catalogue.Field, label string, v working.Value) Fact {
	return Fact{
		Label: label, Value: s.words.Named(f.Key(), v, s.units()), Soft: p.Soft(f),
		Figure: planner.NewFigure(v, func() working.Trace { return s.ground(p, f, v) }),
	}
}

// ground is where a value is from: the value, its source, and the remark on it.
func (s *Screen) ground(p *catalogue.Plant, f catalogue.Field, v working.Value) working.Trace {
	trace := working.Trace{Name: f.Key(), Result: v, Source: s.book.Source(p, f)}
	if note := p.Provenance(f).Note; note != "" {
		trace.Inputs = append(trace.Inputs, working.Input{Name: "plant_book.remark", Value: working.Text(note), Source: trace.Source})
	}
	if p.Soft(f) {
		trace.Notes = append(trace.Notes, "plant_book.soft")
	}
	return trace
}

func (s *Screen) soldFact(p *catalogue.Plant, sold catalogue.Sold) Fact {
	size, _ := s.book.Size(sold.Size)
	text := s.words.T("plant_book.to_full_unknown")
	if weeks, ok := sold.WeeksToFull.Get(); ok {
		text = s.words.T("plant_book.to_full", words.A{"weeks": s.weeks(catalogue.Weeks{Low: weeks, High: weeks})})
	}
	f := catalogue.FieldSold + catalogue.Field("."+sold.Size)
	return s.fact(p, f, s.words.T("plant_book.sold_as", words.A{"size": size.Name}), working.Text(text))
}

// value returns one value of a plant as a working shows it.
func (s *Screen) value(p *catalogue.Plant, f catalogue.Field) working.Value {
	switch f {
	case catalogue.FieldFamily:
		return working.Text(p.Family)
	case catalogue.FieldKind:
		return working.Text(p.Kind.Key())
	case catalogue.FieldSeasons:
		return s.list(named(s, p.Seasons))
	case catalogue.FieldRole:
		return working.Text(p.Role.Key())
	case catalogue.FieldLight:
		return s.list(named(s, p.Light))
	case catalogue.FieldWater:
		return working.Text(p.Water.Key())
	case catalogue.FieldFeeder:
		return working.Text(p.Feeder.Key())
	case catalogue.FieldFrostClass:
		return working.Text(p.FrostClass.Key())
	case catalogue.FieldTemperatureClass:
		return working.Text(p.TemperatureClass.Key())
	case catalogue.FieldDiseases:
		return s.list(s.diseases(p))
	}
	if v, ok := s.measure(p, f); ok {
		return v
	}
	return s.looks(p, f)
}

func (s *Screen) measure(p *catalogue.Plant, f catalogue.Field) (working.Value, bool) {
	degrees := func(t catalogue.Maybe[quantity.Temperature]) (working.Value, bool) {
		return working.Number(float64(t.Or(0)), working.Celsius), true
	}
	switch f {
	case catalogue.FieldHeight:
		return working.Text(s.span(p.Height)), true
	case catalogue.FieldSpread:
		return working.Number(float64(p.Spread), working.Metre), true
	case catalogue.FieldSpacing:
		return working.Number(float64(p.Spacing), working.Metre), true
	case catalogue.FieldLowestInPot:
		return degrees(p.LowestInPot)
	case catalogue.FieldPlantingOutNight:
		return degrees(p.PlantingOutNight)
	case catalogue.FieldHeatLimit:
		return degrees(p.HeatLimit)
	case catalogue.FieldRootZoneLimit:
		return degrees(p.RootZoneLimit)
	case catalogue.FieldBaseTemperature:
		return degrees(p.BaseTemperature)
	case catalogue.FieldOptimumTemperature:
		return degrees(p.OptimumTemperature)
	case catalogue.FieldZone:
		return working.Number(float64(p.Zone.Or(0)), working.None), true
	case catalogue.FieldShows:
		return working.Text(s.weeks(p.Shows.Or(catalogue.Weeks{}))), true
	case catalogue.FieldChill:
		return working.Text(s.weeks(p.Chill.Or(catalogue.Weeks{}))), true
	}
	return working.Value{}, false
}

func (s *Screen) looks(p *catalogue.Plant, f catalogue.Field) working.Value {
	switch f {
	case catalogue.FieldColours:
		return s.list(named(s, p.Colours))
	case catalogue.FieldFoliage:
		parts := named(s, p.Foliage.Colours)
		if p.Foliage.Texture != "" {
			parts = append(parts, s.words.T(p.Foliage.Texture.Key()))
		}
		if p.Foliage.Evergreen {
			parts = append(parts, s.words.T("plant_book.evergreen"))
		}
		return s.list(parts)
	case catalogue.FieldScent:
		return working.Text(p.Scent.Key())
	case catalogue.FieldPollinators:
		return s.list(named(s, p.Pollinators))
	case catalogue.FieldEdible:
		return s.list(named(s, p.Edible))
	}
	panic("plants: field " + string(f) + " has no form in words")
}

func (s *Screen) list(items []string) working.Value { return working.Text(s.words.List(items...)) }

func (s *Screen) diseases(p *catalogue.Plant) []string {
	names := make([]string, 0, len(p.Diseases))
	for _, id := range p.Diseases {
		if d, ok := s.book.Disease(id); ok {
			names = append(names, d.Name)
		}
	}
	return names
}

func (s *Screen) span(span catalogue.Span) string {
	high := s.words.Length(span.High, s.units())
	if span.Low == span.High {
		return high
	}
	return s.words.T("plant_book.range", words.A{"low": s.words.Length(span.Low, s.units()), "high": high})
}

func (s *Screen) weeks(w catalogue.Weeks) string {
	high := s.words.Value(working.Number(w.High, working.Week), s.units())
	if w.Low == w.High {
		return high
	}
	return s.words.T("plant_book.range", words.A{"low": s.words.Number(w.Low, 1), "high": high})
}
