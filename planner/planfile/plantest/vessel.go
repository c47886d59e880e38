package plantest

import (
	"pgregory.net/rapid"

	"fourturn/planner/quantity"
	"fourturn/planner/vessel"
)

// Vessel draws the shape and size of a pot. The numbers are within their ranges;
// whether they make a pot is left to chance.
func Vessel(t *rapid.T) vessel.Spec {
	s := spec(t)
	if rapid.IntRange(0, 4).Draw(t, "liner") == 0 {
		liner := spec(t)
		if liner.Kind == "" {
			liner.Kind = vessel.Round
		}
		s.Liner = &liner
	}
	return s
}

func spec(t *rapid.T) vessel.Spec {
	length := func(label string, low, high float64) quantity.Length {
		if rapid.Bool().Draw(t, "no "+label) {
			return 0
		}
		if rapid.Bool().Draw(t, "in inches") {
			return quantity.Length(decimal(t, low/0.0254+1, high/0.0254-1, 1)) * quantity.Inch
		}
		return quantity.Length(decimal(t, low*100, high*100, 0.01))
	}
	s := vessel.Spec{
		Kind:           rapid.SampledFrom(append([]vessel.Kind{""}, vessel.Kinds[:]...)).Draw(t, "kind"),
		MeasuredOn:     rapid.SampledFrom([]vessel.Surface{"", vessel.Inside, vessel.Outside}).Draw(t, "on"),
		TopDiameter:    length("top diameter", 0.1, 2),
		MiddleDiameter: length("middle diameter", 0.1, 2),
		BottomDiameter: length("bottom diameter", 0.1, 2),
		TopLength:      length("top length", 0.1, 6),
		TopWidth:       length("top width", 0.1, 2),
		BottomLength:   length("bottom length", 0.1, 6),
		BottomWidth:    length("bottom width", 0.1, 2),
		Height:         length("height", 0.1, 2),
		Cells:          rapid.IntRange(0, 40).Draw(t, "cells"),
		Cell:           rapid.SampledFrom([]vessel.Kind{"", vessel.Round, vessel.Square}).Draw(t, "cell"),
		Water:          quantity.Volume(decimal(t, 1, 200, 1)),
		Wall:           length("wall", 0, 0.2),
		Base:           length("base", 0, 0.2),
		Material:       rapid.SampledFrom(append([]vessel.Material{""}, vessel.Materials[:]...)).Draw(t, "material"),
		Rim:            maybe(t, quantity.Length(decimal(t, 0, 10, 0.01))),
		FalseBottom:    length("false bottom", 0, 0.3),
		Reservoir:      rapid.Bool().Draw(t, "reservoir"),
		ReservoirWater: quantity.Volume(decimal(t, 0, 50, 1)),
		DrainageLayer:  length("layer", 0, 0.3),
		NoHoles:        rapid.Bool().Draw(t, "no holes"),
	}
	height := quantity.Length(0)
	for range rapid.IntRange(0, 4).Draw(t, "rings") {
		s.Rings = append(s.Rings, vessel.Ring{Height: height, Diameter: quantity.Length(decimal(t, 10, 90, 0.01))})
		height += quantity.Length(decimal(t, 1, 30, 0.01))
	}
	return s
}
