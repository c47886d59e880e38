package nutrition

import (
	"math"

	"fourturn/planner/quantity"
	"fourturn/planner/working"
)

// LeachingBand is the share of a watering that should run through (10 to 15 %:
// Florida nursery BMP manual; below 15 %: UF/IFAS ENH1268).
var LeachingBand = Band{0.10, 0.15}

// TakenUpBand is the water that a mix takes up when it is ready for watering, as a
// share of its volume: a container capacity of 60 % less the 20 to 28 % at which
// uptake of two shrubs began to fall (UGA thesis 18890).
var TakenUpBand = Band{0.32, 0.40}

// Pour is how much feed one pot gets.
type Pour struct {
	Volume   quantity.Volume // poured
	Wets     quantity.Volume // held by the mix
	mix      quantity.Volume
	takenUp  float64
	leaching float64
}

// PourFor returns the feed that wets a pot's mix and lets a share run through:
// V × u / (1 − f). takenUp is the water that the mix is short of, as a share of its
// volume, and leaching the share that runs through; 0 takes the middle of
// [TakenUpBand] or of [LeachingBand]. It panics on shares outside 0 to 1.
func PourFor(mix quantity.Volume, takenUp, leaching float64) Pour {
	if takenUp == 0 {
		takenUp = TakenUpBand.Middle()
	}
	if leaching == 0 {
		leaching = LeachingBand.Middle()
	}
	if !(mix >= 0) || !(takenUp > 0 && takenUp <= 1) || !(leaching > 0 && leaching < 1) {
		panic("nutrition: unsound shares of a pour")
	}
	wets := mix * quantity.Volume(takenUp)
	return Pour{Volume: wets / quantity.Volume(1-leaching), Wets: wets, mix: mix, takenUp: takenUp, leaching: leaching}
}

// RunsThrough returns what leaves the pot.
func (p Pour) RunsThrough() quantity.Volume { return p.Volume - p.Wets }

// Working returns the trace of the pour.
func (p Pour) Working() working.Trace {
	return working.Trace{
		Name:    "nutrition.pour",
		Formula: "W = V × u / (1 − f)",
		Inputs: []working.Input{
			{Symbol: "V", Name: "nutrition.mix_volume", Value: working.Number(float64(p.mix), working.Litre), Source: working.Source{Status: working.Derived}},
			{Symbol: "u", Name: "nutrition.taken_up", Value: working.Number(p.takenUp, working.Share), Source: working.Source{Status: working.Derived, Cite: "container capacity of 60 % (greenhousegrower.com) less 20 to 28 % (UGA thesis 18890)"}},
			{Symbol: "f", Name: "nutrition.leaching", Value: working.Number(p.leaching, working.Share), Source: working.Source{Status: working.Published, Cite: "UF/IFAS ENH1268; Florida nursery BMP manual"}},
		},
		Result: working.Number(float64(p.Volume), working.Litre),
		Source: working.Source{Status: working.Definition},
		Notes:  []string{"nutrition.note_runoff_saucers"},
	}
}

// Cans is how a volume of feed is carried out.
type Cans struct {
	Full    int             // cans filled to the mark
	Part    quantity.Volume // in a last can, or 0
	PerCan  quantity.Mass   // of product in a full can
	InPart  quantity.Mass   // of product in the last can
	Refills int             // times the can is filled after the first
}

// UsualCan is a can of two gallons, near enough 9 L. Common practice, no source.
const UsualCan quantity.Volume = 9

// CansOf returns the cans for a volume of a solution. can 0 takes [UsualCan]. It
// panics on a can below zero.
func CansOf(s Solution, total, can quantity.Volume) Cans {
	if can == 0 {
		can = UsualCan
	}
	if !(can > 0) {
		panic("nutrition: a can must hold more than nothing")
	}
	full := math.Floor(float64(total/can) + 1e-9)
	part := max(0, total-can*quantity.Volume(full))
	if part < can*1e-6 {
		part = 0
	}
	c := Cans{Full: int(full), Part: part, PerCan: s.For(can), InPart: s.For(part)}
	fills := c.Full
	if part > 0 {
		fills++
	}
	c.Refills = max(0, fills-1)
	return c
}
