package pots

import (
	"fourturn/app/words"
	"fourturn/planner"
	"fourturn/planner/finding"
	"fourturn/planner/vessel"
)

// Group is a fold of the page: a few fields that belong together, what is to be said
// about them, and one line that says it all while the fold is closed.
type Group struct {
	Key     string
	Title   string
	Summary string
	Fields  []Field
	Figures []Figure
	Remarks []Remark
	Notes   []string // explaining text
}

// Worst returns the gravest remark or error of the group, and false where there is none
// that must be seen while it is folded.
func (g *Group) Worst() (finding.Severity, bool) {
	worst, marked := finding.Note, false
	for _, r := range g.Remarks {
		if r.Severity >= finding.Caution {
			worst, marked = max(worst, r.Severity), true
		}
	}
	for _, f := range g.Fields {
		if f.Error != "" {
			worst, marked = finding.Error, true
		}
	}
	return worst, marked
}

// The groups by their keys, in the order of the page.
const (
	groupPlace  = "place"
	groupSize   = "size"
	groupInside = "inside"
	groupLiner  = "liner"
	groupMix    = "mix"
	groupWeight = "weight"
)

// Groups returns the folds of the chosen pot, or nil where the plan has none.
func (s *Screen) Groups() []Group {
	pot := s.Chosen()
	if pot == nil {
		return nil
	}
	groups := []Group{s.placeGroup(pot), s.sizeGroup(pot), s.insideGroup(pot), s.linerGroup(pot), s.mixGroup(pot), s.weightGroup(pot)}
	said := s.saidOf(pot)
	for i := range groups {
		groups[i].Title = s.words.T("pots.group." + groups[i].Key)
		groups[i].Remarks = append(groups[i].Remarks, said[groups[i].Key]...)
	}
	return groups
}

// placeOf says in which group a finding of the vessel or of the mix is shown, by its
// code; what is not here stands among the remarks.
var placeOf = map[string]string{
	"vessel.no_holes":         groupInside,
	"vessel.drainage_layer":   groupInside,
	"vessel.empty_outer_pot":  groupLiner,
	"vessel.frost_tender":     groupSize,
	"vessel.measured_differs": groupSize,
	"vessel.sketch_only":      groupSize,

	"mix.root_balls_too_large": groupMix,
	"mix.diseased":             groupMix,
	"mix.retired":              groupMix,
	"mix.dust":                 groupMix,
	"mix.lift":                 groupWeight,
	"mix.lift_wet":             groupWeight,
	"mix.floor_load":           groupWeight,
}

// saidOf returns what is to be said about the pot as it is now, by group: of the vessel
// at once, of the mix as soon as it is worked out.
func (s *Screen) saidOf(pot *planner.Pot) map[string][]Remark {
	said := map[string][]Remark{}
	seen := map[string]bool{}
	add := func(list []finding.Finding) {
		for _, f := range list {
			group, ok := placeOf[f.Code]
			text := s.words.Finding(f, s.session.Plan().Units)
			if ok && !seen[text] {
				seen[text] = true
				said[group] = append(said[group], Remark{Severity: f.Severity, Text: text})
			}
		}
	}
	if v := built(pot); v != nil {
		add(v.Findings(nil))
	}
	if out := s.outlook(pot); out != nil && out.Vessel != nil {
		add(out.Weight.Findings(nil))
		all, _ := s.session.Outlook()
		for i := range out.Stands {
			if out.Stands[i].From >= all.Today {
				add(out.Stands[i].Balance.Findings(nil))
			}
		}
	}
	return said
}

// choice is a field that is chosen.
func (s *Screen) choice(key, label string, c Choice, choose func(int) error) Field {
	return Field{Key: key, Label: words.Capital(label), Options: c.Options, Chosen: c.Chosen, Choose: choose}
}

// yesNo is a choice between no and yes, in these words.
func (s *Screen) yesNo(key, label, no, yes string, is bool, set func(*vessel.Spec, bool)) Field {
	c := Choice{Options: []string{s.words.T(no), s.words.T(yes)}}
	if is {
		c.Chosen = 1
	}
	return s.choice(key, s.words.T(label), c, func(i int) error {
		if (i == 1) == is {
			return nil
		}
		return s.editSpec(vessel.Field(key), func(spec *vessel.Spec) { set(spec, i == 1) })
	})
}

// editSpec is one edit of the chosen pot's shape.
func (s *Screen) editSpec(field vessel.Field, edit func(*vessel.Spec)) error {
	spec := copied(s.Chosen().Vessel)
	edit(&spec)
	return s.setSpec("pots.edit_size", field, spec)
}
