package pots

import (
	"slices"
	"strings"

	"fourturn/app/words"
	"fourturn/planner"
	"fourturn/planner/finding"
	"fourturn/planner/quantity"
	"fourturn/planner/vessel"
)

// Choice is a list to choose from; Chosen is -1 where nothing is.
type Choice struct {
	Options []string
	Chosen  int
}

// Name returns the name of the chosen pot.
func (s *Screen) Name() string {
	if pot := s.Chosen(); pot != nil {
		return pot.Name
	}
	return ""
}

// SetName renames the chosen pot.
func (s *Screen) SetName(name string) error {
	pot := s.Chosen()
	name = strings.TrimSpace(name)
	if pot == nil || name == pot.Name {
		return nil
	}
	if name == "" {
		return &words.Refusal{Text: s.words.T("pots.name_empty")}
	}
	return s.do("pots.edit_name", s.about(pot), func(p *planner.Pot) { p.Name = name })
}

func (s *Screen) about(pot *planner.Pot) []finding.Arg {
	return []finding.Arg{{Name: "pot", Value: text(pot.Label())}}
}

// Shapes returns the shapes with that of the chosen pot.
func (s *Screen) Shapes() Choice {
	c := Choice{Chosen: -1}
	for _, k := range vessel.Kinds {
		c.Options = append(c.Options, s.words.T("vessel.kind."+string(k)))
	}
	if pot := s.Chosen(); pot != nil {
		c.Chosen = slices.Index(vessel.Kinds[:], pot.Vessel.Kind)
	}
	return c
}

// SetShape gives the chosen pot another shape. Dimensions that the new shape needs
// and that are not known yet are taken from the old one as near as may be, so that
// the pot stays about as large.
func (s *Screen) SetShape(i int) error {
	pot := s.Chosen()
	if pot == nil || i < 0 || i >= len(vessel.Kinds) || pot.Vessel.Kind == vessel.Kinds[i] {
		return nil
	}
	return s.setSpec("pots.edit_shape", vessel.FieldKind, reshaped(pot.Vessel, vessel.Kinds[i]))
}

// Sizes that a pot has before anybody measured it: a common 30 cm pot.
const (
	usualAcross = 30 * quantity.Centimetre
	usualHeight = 28 * quantity.Centimetre
	usualTaper  = 0.75 // bottom to top
)

// reshaped returns the Spec with another kind, with every dimension filled in that
// the kind needs.
func reshaped(spec vessel.Spec, kind vessel.Kind) vessel.Spec {
	across := first(spec.TopDiameter, spec.TopWidth, usualAcross)
	spec.Kind = kind
	spec.TopDiameter = first(spec.TopDiameter, across)
	spec.BottomDiameter = first(spec.BottomDiameter, spec.TopDiameter*usualTaper)
	spec.TopWidth = first(spec.TopWidth, across)
	spec.BottomWidth = first(spec.BottomWidth, spec.TopWidth*usualTaper)
	spec.TopLength = first(spec.TopLength, spec.TopWidth)
	spec.BottomLength = first(spec.BottomLength, spec.TopLength*usualTaper)
	spec.Height = first(spec.Height, usualHeight)
	switch kind {
	case vessel.Bowl: // a cap of a sphere is at most half of it
		spec.Height = min(spec.Height, spec.TopDiameter/2)
	case vessel.Turned:
		if len(spec.Rings) == 0 {
			spec.Rings = []vessel.Ring{{Height: 0, Diameter: spec.BottomDiameter}, {Height: spec.Height, Diameter: spec.TopDiameter}}
		}
	case vessel.Pockets:
		spec.Cells = max(spec.Cells, 4)
		if spec.Cell == "" {
			spec.Cell = vessel.Round
		}
	case vessel.Measured:
		if spec.Water == 0 {
			spec.Water = 10 * quantity.Litre
		}
	default:
	}
	return spec
}

func first(lengths ...quantity.Length) quantity.Length {
	for _, l := range lengths {
		if l > 0 {
			return l
		}
	}
	return 0
}

// Materials returns the materials with that of the chosen pot, "not said" first.
func (s *Screen) Materials() Choice {
	if pot := s.Chosen(); pot != nil {
		return s.materialsOf(pot.Vessel.Material)
	}
	return s.materialsOf("")
}

func (s *Screen) materialsOf(material vessel.Material) Choice {
	c := Choice{Options: []string{s.words.T("pots.material_not_said")}}
	for i, m := range vessel.Materials {
		c.Options = append(c.Options, s.words.T("vessel.material."+string(m)))
		if m == material {
			c.Chosen = i + 1
		}
	}
	return c
}

// SetMaterial says what the chosen pot is made of.
func (s *Screen) SetMaterial(i int) error {
	pot := s.Chosen()
	if pot == nil || i < 0 || i > len(vessel.Materials) {
		return nil
	}
	spec := pot.Vessel
	spec.Material = ""
	if i > 0 {
		spec.Material = vessel.Materials[i-1]
	}
	if spec.Material == pot.Vessel.Material {
		return nil
	}
	return s.setSpec("pots.edit_material", vessel.FieldMaterial, spec)
}

// Cells returns the shapes that a pocket can have, with that of the chosen pot, or no
// options where it has no pockets.
func (s *Screen) Cells() Choice {
	c := Choice{Chosen: -1}
	pot := s.Chosen()
	if pot == nil || pot.Vessel.Kind != vessel.Pockets {
		return c
	}
	for i, k := range cellKinds() {
		c.Options = append(c.Options, s.words.T("vessel.kind."+string(k)))
		if pot.Vessel.Cell == k {
			c.Chosen = i
		}
	}
	return c
}

// cellKinds are the shapes that are described by dimensions, as a pocket's must be.
func cellKinds() (kinds []vessel.Kind) {
	for _, k := range vessel.Kinds {
		if len(vessel.Dimensions(k, "")) > 0 && k != vessel.Measured {
			kinds = append(kinds, k)
		}
	}
	return kinds
}

// SetCell gives the pockets of the chosen pot another shape.
func (s *Screen) SetCell(i int) error {
	pot, kinds := s.Chosen(), cellKinds()
	if pot == nil || pot.Vessel.Kind != vessel.Pockets || i < 0 || i >= len(kinds) || pot.Vessel.Cell == kinds[i] {
		return nil
	}
	spec := reshaped(pot.Vessel, kinds[i])
	spec.Kind, spec.Cell = vessel.Pockets, kinds[i]
	return s.setSpec("pots.edit_size", vessel.FieldCell, spec)
}

// Spots returns the spots of the plan with that of the chosen pot.
func (s *Screen) Spots() Choice {
	c := Choice{Chosen: -1}
	pot := s.Chosen()
	for i, spot := range s.session.Plan().Spots {
		c.Options = append(c.Options, spot.Label())
		if pot != nil && pot.Spot == spot.ID {
			c.Chosen = i
		}
	}
	return c
}

// SetSpot moves the chosen pot to another spot.
func (s *Screen) SetSpot(i int) error {
	pot := s.Chosen()
	spots := s.session.Plan().Spots
	if pot == nil || i < 0 || i >= len(spots) || pot.Spot == spots[i].ID {
		return nil
	}
	return s.do("pots.edit_spot", s.about(pot), func(p *planner.Pot) { p.Spot = spots[i].ID })
}

// Measured returns whether dimensions are those of the inside, with the other choice.
func (s *Screen) Measured() Choice {
	c := Choice{Options: []string{s.words.T("pots.inside"), s.words.T("pots.outside")}}
	if pot := s.Chosen(); pot != nil && pot.Vessel.MeasuredOn == vessel.Outside {
		c.Chosen = 1
	}
	return c
}

// SetMeasured says on which surfaces the dimensions lie.
func (s *Screen) SetMeasured(i int) error {
	pot := s.Chosen()
	if pot == nil || i < 0 || i > 1 {
		return nil
	}
	spec := pot.Vessel
	spec.MeasuredOn = [...]vessel.Surface{vessel.Inside, vessel.Outside}[i]
	if spec.MeasuredOn == pot.Vessel.MeasuredOn || i == 0 && pot.Vessel.MeasuredOn == "" {
		return nil
	}
	return s.setSpec("pots.edit_measured_on", vessel.FieldMeasuredOn, spec)
}
