package mix

import (
	"fourturn/planner/quantity"
	"fourturn/planner/working"
)

// Settling by which loose mix shrinks when it is firmed and watered, as a share of
// the firm volume.
const (
	DefaultSettling = 0.15
	LeastSettling   = 0.10 // of the setting
	MostSettling    = 0.20
)

// FillInput is a pot to be filled for the first time.
type FillInput struct {
	Capacity  quantity.Volume // room to the fill line
	RootBalls quantity.Volume // of everything that is planted
	Settling  float64         // share; 0 means [DefaultSettling]
}

// Fill is how much mix a pot takes.
type Fill struct {
	Firm  quantity.Volume // in the pot, firmed and watered
	Loose quantity.Volume // from the bag
	in    FillInput
}

// ToFill returns the mix for a first filling: (V − R) × (1 + s), and none where the
// root balls fill the pot. It panics on a negative volume or share.
func ToFill(in FillInput) Fill {
	if !(in.Capacity >= 0 && in.RootBalls >= 0) {
		panic("mix: negative volume")
	}
	firm := max(0, in.Capacity-in.RootBalls)
	return Fill{Firm: firm, Loose: Loosened(firm, in.Settling), in: in}
}

// Loosened returns the loose mix that settles to a firm volume; a settling of 0
// means [DefaultSettling]. It panics on a settling that is not from 0 to 1.
func Loosened(firm quantity.Volume, settling float64) quantity.Volume {
	return firm * quantity.Volume(1+settlingOr(settling))
}

func settlingOr(s float64) float64 {
	if !(s >= 0 && s <= 1) {
		panic("mix: settling is not a share")
	}
	if s == 0 {
		return DefaultSettling
	}
	return s
}

var (
	entered    = working.Source{Status: working.Entered}
	definition = working.Source{Status: working.Definition}
)

func litres(v quantity.Volume) working.Value { return working.Number(float64(v), working.Litre) }

// settlingInput is the settling as it stands in a trace.
func settlingInput(s float64) working.Input {
	in := working.Input{Symbol: "s", Name: "mix.settling", Value: working.Number(settlingOr(s), working.Share), Source: entered}
	if s == 0 {
		in.Source = working.Source{Status: working.Judgement, Cite: "15-20 %: harvesttotable.com; UBC Botanical Garden forum 14039; 10-15 %: supplier of planters"}
	}
	return in
}

// Working returns the trace of the fill.
func (f Fill) Working() working.Trace {
	return working.Trace{
		Name: "mix.fill", Formula: "B = (V − R) × (1 + s)",
		Inputs: []working.Input{
			{Symbol: "V", Name: "mix.capacity", Value: litres(f.in.Capacity), Source: definition},
			{Symbol: "R", Name: "mix.root_balls", Value: litres(f.in.RootBalls), Source: entered},
			settlingInput(f.in.Settling),
		},
		Result: litres(f.Loose),
		Source: definition,
		Notes:  []string{"mix.note_settling"},
	}
}
