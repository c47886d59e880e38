package arrange

import (
	"math"

	"fourturn/planner/quantity"
	"fourturn/planner/working"
)

// Opening is the outline of a pot's surface at the fill line, convex.
type Opening struct {
	Area      quantity.Area
	Perimeter quantity.Length
}

// Kind is one kind of plant to be set in the opening.
type Kind struct {
	Spacing quantity.Length // in the pot, centre to centre; must be above 0
	Share   float64         // of the surface, 0 to 1; 0 takes an even part of what is left
	Fixed   int             // a number the person chose; 0 lets it be counted
}

// Count is how many plants of one kind go into a pot.
type Count struct {
	Plants  int     // at least 1
	Exact   float64 // before rounding
	kind    Kind
	share   float64
	opening Opening
}

// hexagonal is the surface that one plant holds at spacing 1 in the closest
// arrangement of equal circles in the plane, √3/2 (Lagrange, 1773).
var hexagonal = math.Sqrt(3) / 2

// Capacity returns how many plants at one spacing fill the opening, unrounded.
// It panics on a spacing that is not above zero.
func Capacity(o Opening, spacing quantity.Length) float64 {
	s := float64(spacing)
	if !(s > 0) {
		panic("arrange: spacing must be above zero")
	}
	widened := float64(o.Area) + float64(o.Perimeter)*s/2 + math.Pi*s*s/4
	return widened / (s * s * hexagonal)
}

// Counts returns the number of plants of each kind. Shares that are given are
// taken as they are, the rest of the surface is divided evenly among the kinds
// without one; shares that sum to more than 1 are scaled down to 1. Every kind
// gets at least one plant.
func Counts(o Opening, kinds []Kind) []Count {
	shares := divide(kinds)
	counts := make([]Count, len(kinds))
	for i, k := range kinds {
		exact := shares[i] * Capacity(o, k.Spacing)
		plants := max(1, int(math.Round(exact)))
		if k.Fixed > 0 {
			plants = k.Fixed
		}
		counts[i] = Count{Plants: plants, Exact: exact, kind: k, share: shares[i], opening: o}
	}
	return counts
}

func divide(kinds []Kind) []float64 {
	given, open := 0.0, 0
	for _, k := range kinds {
		if k.Share > 0 {
			given += k.Share
		} else {
			open++
		}
	}
	scale := 1.0
	if given > 1 || open == 0 && given > 0 {
		scale = 1 / given
	}
	shares := make([]float64, len(kinds))
	for i, k := range kinds {
		if k.Share > 0 {
			shares[i] = k.Share * scale
		} else {
			shares[i] = max(0, 1-given) / float64(open)
		}
	}
	return shares
}

// Working returns the trace of the count.
func (c Count) Working() working.Trace {
	source := working.Source{Status: working.Derived, Cite: "Steiner's formula; hexagonal packing (Lagrange 1773)"}
	if c.kind.Fixed > 0 {
		return working.Trace{
			Name: "arrange.plants", Formula: "n",
			Result: working.Number(float64(c.Plants), working.None),
			Source: working.Source{Status: working.Entered},
		}
	}
	return working.Trace{
		Name:    "arrange.plants",
		Formula: "n = share × (A + P·s/2 + π·s²/4) / (s²·√3/2), at least 1",
		Inputs: []working.Input{
			{Symbol: "share", Name: "arrange.share", Value: working.Number(c.share, working.Share), Source: working.Source{Status: working.Entered}},
			{Symbol: "A", Name: "arrange.opening_area", Value: working.Number(float64(c.opening.Area), working.SquareMetre), Source: working.Source{Status: working.Definition}},
			{Symbol: "P", Name: "arrange.opening_perimeter", Value: working.Number(float64(c.opening.Perimeter), working.Metre), Source: working.Source{Status: working.Definition}},
			{Symbol: "s", Name: "arrange.spacing", Value: working.Number(float64(c.kind.Spacing), working.Metre), Source: working.Source{Status: working.Memory}},
		},
		Result: working.Number(float64(c.Plants), working.None),
		Source: source,
		Notes:  []string{"arrange.note_widened"},
	}
}
