package pots

import (
	"strings"

	"fourturn/app/words"
	"fourturn/planner"
	"fourturn/planner/vessel"
)

// sizeGroup is the shape with its dimensions, how they were taken, and the material.
func (s *Screen) sizeGroup(pot *planner.Pot) Group {
	w := s.words
	spec := &pot.Vessel
	g := Group{Key: groupSize, Summary: s.sizeSummary(spec)}
	g.Fields = append(g.Fields,
		s.choice("kind", w.T("pots.shape"), s.Shapes(), s.SetShape),
		s.choice("nominal", w.T("pots.nominal"), s.Nominals(), s.SetNominal))
	if cells := s.Cells(); len(cells.Options) > 0 {
		g.Fields = append(g.Fields, s.choice("cell", w.T("pots.cell"), cells, s.SetCell))
	}
	g.Fields = append(g.Fields, s.dimensions(ofPot)...)
	g.Fields = append(g.Fields,
		s.choice("measured_on", w.T("vessel.field.measured_on"), s.Measured(), s.SetMeasured),
		s.choice("material", w.T("vessel.field.material"), s.Materials(), s.SetMaterial),
		s.measure(ofPot, vessel.FieldWall, "pots.help_optional", s.given(spec.Wall)),
		s.measure(ofPot, vessel.FieldBase, "pots.help_base", s.given(spec.Base)))
	if text := s.Published(); text != "" {
		g.Notes = append(g.Notes, text)
	}
	return g
}

// sizeSummary writes a shape with its dimensions in one line: "round, tapered,
// 45 × 32 × 40 cm outside, terracotta".
func (s *Screen) sizeSummary(spec *vessel.Spec) string {
	w := s.words
	parts := []string{w.T("vessel.kind." + string(spec.Kind))}
	var lengths []string
	for _, d := range vessel.Dimensions(spec.Kind, spec.Cell) {
		if l := d.Of(*spec); l > 0 {
			lengths = append(lengths, s.Length(l))
		}
	}
	for i := range lengths[:max(0, len(lengths)-1)] {
		lengths[i], _, _ = strings.Cut(lengths[i], " ")
	}
	size := strings.Join(lengths, " × ")
	if spec.Kind == vessel.Measured && spec.Water > 0 {
		size = w.Water(spec.Water, s.session.Plan().Units)
	}
	if size != "" {
		surface := "pots.inside"
		if spec.MeasuredOn == vessel.Outside {
			surface = "pots.outside"
		}
		parts = append(parts, w.T("pots.size_on", words.A{"size": size, "surface": w.T(surface)}))
	}
	if spec.Material != "" {
		parts = append(parts, w.T("vessel.material."+string(spec.Material)))
	}
	return strings.Join(parts, ", ")
}
