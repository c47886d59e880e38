package pots

import (
	"slices"

	"fourturn/app/words"
	"fourturn/planner"
	"fourturn/planner/quantity"
	"fourturn/planner/vessel"
)

// linerGroup is the pot that stands in this one and holds the mix.
func (s *Screen) linerGroup(pot *planner.Pot) Group {
	w := s.words
	spec := &pot.Vessel
	g := Group{Key: groupLiner, Summary: w.T("pots.liner_none")}
	liner := s.yesNo("liner", "pots.liner", "pots.liner_none", "pots.liner_there", spec.Liner != nil, func(spec *vessel.Spec, there bool) {
		spec.Liner = nil
		if there {
			spec.Liner = linerFor(*spec)
		}
	})
	for _, f := range spec.Validate() {
		if f.Field == vessel.FieldLiner && !f.InLiner {
			liner.Error = w.T("pots.short.liner", words.A{"highest": w.Value(f.Highest, s.session.Plan().Units)})
		}
	}
	g.Fields = []Field{liner}
	if spec.Liner == nil {
		g.Notes = []string{w.T("pots.liner_text")}
		return g
	}
	kinds := linerKinds()
	shapes := Choice{Chosen: slices.Index(kinds, spec.Liner.Kind)}
	for _, k := range kinds {
		shapes.Options = append(shapes.Options, w.T("vessel.kind."+string(k)))
	}
	g.Fields = append(g.Fields, s.choice("liner.kind", w.T("pots.shape"), shapes, func(i int) error {
		if i < 0 || i >= len(kinds) || kinds[i] == spec.Liner.Kind {
			return nil
		}
		return s.editSpec(vessel.FieldLiner, func(spec *vessel.Spec) { *spec.Liner = reshaped(*spec.Liner, kinds[i]) })
	}))
	g.Fields = append(g.Fields, s.dimensions(ofLiner)...)
	g.Fields = append(g.Fields, s.linerSurface(spec.Liner), s.linerMaterial(spec.Liner),
		s.measure(ofLiner, vessel.FieldWall, "pots.help_optional", s.given(spec.Liner.Wall)),
		s.measure(ofLiner, vessel.FieldBase, "pots.help_base", s.given(spec.Liner.Base)),
		s.measure(ofLiner, vessel.FieldRim, "pots.help_rim", s.rim(spec.Liner, built(pot))),
		s.yesNo("liner.no_holes", "pots.holes", "pots.holes_there", "pots.holes_none", spec.Liner.NoHoles, func(spec *vessel.Spec, none bool) { spec.Liner.NoHoles = none }))
	g.Summary = s.sizeSummary(spec.Liner)
	return g
}

// linerKinds are the shapes that a liner can have: one pot, not a cluster.
func linerKinds() []vessel.Kind {
	return slices.DeleteFunc(slices.Clone(vessel.Kinds[:]), func(k vessel.Kind) bool { return k == vessel.Pockets })
}

func (s *Screen) linerSurface(liner *vessel.Spec) Field {
	c := Choice{Options: []string{s.words.T("pots.inside"), s.words.T("pots.outside")}}
	if liner.MeasuredOn == vessel.Outside {
		c.Chosen = 1
	}
	return s.choice("liner.measured_on", s.words.T("vessel.field.measured_on"), c, func(i int) error {
		if i == c.Chosen {
			return nil
		}
		return s.editSpec(vessel.FieldLiner, func(spec *vessel.Spec) {
			spec.Liner.MeasuredOn = [...]vessel.Surface{vessel.Inside, vessel.Outside}[i]
		})
	})
}

func (s *Screen) linerMaterial(liner *vessel.Spec) Field {
	c := s.materialsOf(liner.Material)
	return s.choice("liner.material", s.words.T("vessel.field.material"), c, func(i int) error {
		if i == c.Chosen {
			return nil
		}
		return s.editSpec(vessel.FieldLiner, func(spec *vessel.Spec) {
			spec.Liner.Material = ""
			if i > 0 {
				spec.Liner.Material = vessel.Materials[i-1]
			}
		})
	})
}

// linerFor returns a plastic liner of the pot's own shape that goes into it, until
// somebody measures the real one.
func linerFor(outer vessel.Spec) *vessel.Spec {
	outer.Liner = nil
	for _, share := range []quantity.Length{0.9, 0.8, 0.7, 0.6, 0.5} {
		liner := scaled(outer, share)
		outer.Liner = &liner
		if len(outer.Validate()) == 0 {
			break
		}
	}
	return outer.Liner
}

// scaled returns a bare plastic pot of the same shape in another size.
func scaled(spec vessel.Spec, share quantity.Length) vessel.Spec {
	out := reshaped(vessel.Spec{
		TopDiameter: spec.TopDiameter * share, MiddleDiameter: spec.MiddleDiameter * share, BottomDiameter: spec.BottomDiameter * share,
		TopLength: spec.TopLength * share, TopWidth: spec.TopWidth * share, BottomLength: spec.BottomLength * share, BottomWidth: spec.BottomWidth * share,
		Height: spec.Height * share, Material: vessel.Plastic, Wall: 3 * quantity.Millimetre, MeasuredOn: vessel.Outside,
	}, linerKindOf(&spec))
	if spec.Kind == vessel.Turned {
		out.Rings = nil
		for _, r := range spec.Rings {
			out.Rings = append(out.Rings, vessel.Ring{Height: r.Height * share, Diameter: r.Diameter * share})
		}
	}
	return out
}

// linerKindOf is the shape of a liner for a pot: its own, that of one pocket, or round.
func linerKindOf(spec *vessel.Spec) vessel.Kind {
	switch spec.Kind {
	case vessel.Pockets:
		return spec.Cell
	case vessel.Measured:
		return vessel.Round
	default:
		return spec.Kind
	}
}
