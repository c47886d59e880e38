package nutrition

import (
	"errors"

	"fourturn/planner/quantity"
)

// Batch is what is mixed at once: a can, or a bucket of stock for an injector.
type Batch struct {
	Analysis Analysis
	Nitrogen PPM             // at the pot
	Mass     quantity.Mass   // of product
	Volume   quantity.Volume // of the can, or of stock
	Injector Injector        // [NoInjector] for a can
}

// Unknown says which figure of a [Batch] is asked for.
type Unknown int

// The figures that follow from the others.
const (
	UnknownNitrogen Unknown = iota
	UnknownMass
	UnknownVolume
	UnknownRatio
)

// ErrUnsolvable reports that the figures given for a batch do not determine the one
// asked for: one is missing, or zero where it may not be.
var ErrUnsolvable = errors.New("nutrition: the figures given do not determine the one asked for")

// Solve returns the batch with one figure worked out from the others, by
// m = V × D × ppm / (10 × %N) with the dilution D of the injector. It fails with
// [ErrNoNitrogen] or [ErrUnsolvable].
func (b Batch) Solve(unknown Unknown) (Batch, error) {
	if b.Analysis.N == 0 {
		return b, ErrNoNitrogen
	}
	if unknown != UnknownRatio && !(b.Injector.Ratio > 0) {
		return b, ErrUnsolvable
	}
	given := b
	perPPM := 1 / (10 * b.Analysis.N) // g/L of product for 1 ppm
	n, grams, litres := float64(b.Nitrogen), b.Mass.Grams(), b.Volume.Litres()
	var divisor float64
	switch unknown {
	case UnknownNitrogen:
		divisor = litres * b.Injector.Dilution() * perPPM
		b.Nitrogen = PPM(grams / divisor)
	case UnknownMass:
		divisor = 1
		b.Mass = quantity.Mass(litres*b.Injector.Dilution()*n*perPPM) * quantity.Gram
	case UnknownVolume:
		divisor = b.Injector.Dilution() * n * perPPM
		b.Volume = quantity.Volume(grams / divisor)
	case UnknownRatio:
		divisor = litres * n * perPPM
		b.Injector.Ratio = grams / divisor
		if b.Injector.Convention == PartsAdded {
			b.Injector.Ratio--
		}
	default:
		panic("nutrition: unknown figure of a batch")
	}
	if !(divisor > 0) || !(b.Injector.Ratio > 0) {
		return given, ErrUnsolvable
	}
	return b, nil
}

// Makes returns the volume of feed that the batch becomes at the pots.
func (b Batch) Makes() quantity.Volume { return b.Volume * quantity.Volume(b.Injector.Dilution()) }

// Concentrate returns the grams of product per litre in the can or the stock.
func (b Batch) Concentrate() Concentration {
	if b.Volume == 0 {
		return 0
	}
	return Concentration(b.Mass.Grams() / b.Volume.Litres())
}
