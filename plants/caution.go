package plants

import (
	"slices"

	"fourturn/planner/finding"
)

// Household says who lives with the pots.
type Household struct {
	Cats, Dogs, Children bool
}

// lilyGenera are the true lilies and the daylilies: every part, the pollen and
// the water of the vase cause kidney failure in cats within one to three days
// (US Food and Drug Administration).
var lilyGenera = [...]string{"Lilium", "Hemerocallis"}

func (p *Plant) lily() bool {
	return slices.ContainsFunc(p.Genera(), func(genus string) bool {
		return slices.Contains(lilyGenera[:], genus)
	})
}

// Refused reports whether the plant must not come into the household at all:
// lilies and daylilies where cats live. The finding is that of [Cautions].
func Refused(p *Plant, h Household) (finding.Finding, bool) {
	if !h.Cats || !p.lily() {
		return finding.Finding{}, false
	}
	return finding.Finding{
		Code: "plants.lily_and_cats", Severity: finding.Error,
		Where: finding.Where{p.ID, string(FieldToxicity)}, Args: []finding.Arg{word("plant", p.Name())},
	}, true
}

// Cautions returns what must be said of a plant in a household: whether it is
// refused, and for each creature that lives there what the lists say, unless
// they list it as non-toxic. A plant that is not listed gets a note: it is not
// called safe.
func Cautions(p *Plant, h Household) []finding.Finding {
	var out []finding.Finding
	if refusal, refused := Refused(p, h); refused {
		out = append(out, refusal)
	}
	for _, c := range []struct {
		lives    bool
		creature Creature
	}{{h.Dogs, Dogs}, {h.Cats, Cats}, {h.Children, People}} {
		if !c.lives {
			continue
		}
		if f, ok := listingFinding(p, c.creature); ok {
			out = append(out, f)
		}
	}
	return out
}

func listingFinding(p *Plant, c Creature) (finding.Finding, bool) {
	listing := p.Toxicity.For(c)
	severity := finding.Caution
	switch listing {
	case ListedNonToxic:
		return finding.Finding{}, false
	case NotListed, "":
		listing, severity = NotListed, finding.Note
	case Conflicting, ListedIrritant, ListedMild, ListedToxic, ListedDangerous:
	}
	return finding.Finding{
		Code: "plants.caution." + string(listing), Severity: severity,
		Where: finding.Where{p.ID, string(FieldToxicity)},
		Args:  []finding.Arg{word("plant", p.Name()), word("creature", c.Key())},
	}, true
}

// InvasiveNotes returns a note for each region where the plant is known to
// escape from gardens. That a region is not named does not mean that the plant
// is harmless there: local lists and laws come first.
func InvasiveNotes(p *Plant) []finding.Finding {
	var out []finding.Finding
	for _, i := range p.Invasive {
		region := i.Region
		if i.Note != "" {
			region += " (" + i.Note + ")"
		}
		out = append(out, finding.Finding{
			Code: "plants.invasive", Severity: finding.Note,
			Where: finding.Where{p.ID, string(FieldInvasive)},
			Args:  []finding.Arg{word("plant", p.Name()), word("region", region)},
		})
	}
	return out
}
