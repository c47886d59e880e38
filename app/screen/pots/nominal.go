package pots

import (
	"fourturn/app/words"
	"fourturn/planner"
	"fourturn/planner/finding"
	"fourturn/planner/vessel"
	"fourturn/planner/working"
)

// Nominals returns the sizes that the trade has names for, "own measures" first, with
// that of the chosen pot. They stand in until somebody measures.
func (s *Screen) Nominals() Choice {
	c := Choice{Options: []string{s.words.T("pots.own_measures")}}
	pot := s.Chosen()
	for i, n := range vessel.Nominals() {
		c.Options = append(c.Options, s.words.T("pots.nominal_name", words.A{"size": s.words.T(n.Key)}))
		if pot != nil && c.Chosen == 0 && sameSize(pot.Vessel, n.Spec) {
			c.Chosen = i + 1
		}
	}
	return c
}

// sameSize reports whether a pot has the shape and the dimensions of another.
func sameSize(a, b vessel.Spec) bool {
	if a.Kind != b.Kind {
		return false
	}
	for _, d := range vessel.Dimensions(b.Kind, b.Cell) {
		if d.Of(a) != d.Of(b) {
			return false
		}
	}
	return true
}

// SetNominal gives the chosen pot the dimensions that stand for a size of the trade.
// Its material stays as the person said; 0 changes nothing.
func (s *Screen) SetNominal(i int) error {
	pot := s.Chosen()
	sizes := vessel.Nominals()
	if pot == nil || i < 1 || i > len(sizes) || sameSize(pot.Vessel, sizes[i-1].Spec) {
		return nil
	}
	spec := withNominal(pot.Vessel, sizes[i-1])
	args := append(s.about(pot), finding.Arg{Name: "size", Value: working.Text(sizes[i-1].Key)})
	return s.do("pots.edit_nominal", args, func(p *planner.Pot) { p.Vessel = spec })
}

// withNominal returns a pot with the dimensions of a nominal size, which are those of
// the inside.
func withNominal(spec vessel.Spec, n vessel.Nominal) vessel.Spec {
	size := n.Spec
	spec.Kind, spec.MeasuredOn = size.Kind, vessel.Inside
	spec.TopDiameter, spec.BottomDiameter, spec.Height = size.TopDiameter, size.BottomDiameter, size.Height
	if spec.Material == "" {
		spec.Material = size.Material
	}
	return spec
}

// Published says which volume is published for the nominal size of the chosen pot,
// beside the computed one, or "" where it has measures of its own.
func (s *Screen) Published() string {
	chosen := s.Nominals().Chosen
	pot := s.Chosen()
	if chosen == 0 {
		return ""
	}
	n := vessel.Nominals()[chosen-1]
	a := words.A{
		"low": s.volume(n.Low), "high": s.volume(n.High), "computed": "–",
		"status": s.words.T("words.status." + string(n.Source.Status)), "cite": n.Source.Cite,
	}
	if v := built(pot); v != nil {
		a["computed"] = s.volume(v.BrimVolume())
	}
	if n.Low == n.High {
		return s.words.T("pots.published_one", a)
	}
	return s.words.T("pots.published", a)
}
