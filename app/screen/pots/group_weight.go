package pots

import (
	"strings"

	"fourturn/app/words"
	"fourturn/planner"
	"fourturn/planner/quantity"
)

// weightGroup is what the pot weighs and what it bears on the floor.
func (s *Screen) weightGroup(pot *planner.Pot) Group {
	w := s.words
	g := Group{Key: groupWeight}
	own := ""
	if pot.PlantMass > 0 {
		own = w.Mass(pot.PlantMass, s.session.Plan().Units)
	}
	g.Fields = []Field{{Key: "plant_mass", Label: w.T("pots.plant_mass"), Help: w.T("pots.help_plant_mass"), Value: own, Take: s.setPlantMass}}
	g.Notes = []string{w.T("pots.floor_words")}
	out := s.outlook(pot)
	if out == nil {
		return g
	}
	if !out.Wet.IsZero() {
		g.Summary = w.T("pots.summary_weight", words.A{
			"wet": w.Value(out.Wet.Value, s.session.Plan().Units), "dry": w.Value(out.Dry.Value, s.session.Plan().Units),
		})
		if out.Empty.IsZero() {
			g.Notes = append(g.Notes, w.T("vessel.note_no_material"))
		}
	}
	g.Figures = s.figures([]keyed{
		{"pots.wet", out.Wet},
		{"pots.dry", out.Dry},
		{"pots.empty", out.Empty},
		{"pots.tops", out.Tops},
		{"pots.reservoir_water", out.Reservoir},
		{"pots.layer", out.Layer},
		{"pots.load", out.Load},
	})
	return g
}

// SetPlantMass says what the plants of the chosen pot weigh; "" lets it be estimated.
func (s *Screen) setPlantMass(typed string) error {
	pot := s.Chosen()
	if pot == nil {
		return nil
	}
	mass := quantity.Mass(0)
	if typed = strings.TrimSpace(typed); typed != "" {
		unit := quantity.Kilogram
		if s.customary() {
			unit = quantity.Pound
		}
		m, err := s.words.Reader().Mass(typed, unit)
		if err != nil {
			return s.words.Unread(err)
		}
		const least, most = quantity.Gram, 5 * quantity.Tonne
		if m < least || m > most {
			units := s.session.Plan().Units
			return &words.Refusal{Text: s.words.T("pots.short.range", words.A{"lowest": s.words.Mass(least, units), "highest": s.words.Mass(most, units)})}
		}
		mass = m
	}
	return s.do("pots.edit_plant_mass", s.about(pot), func(p *planner.Pot) { p.PlantMass = mass })
}
