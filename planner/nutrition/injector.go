package nutrition

import "fourturn/planner/quantity"

// RatioConvention says what the second number of an injector's ratio counts.
type RatioConvention int

// The two conventions; they differ by one part. The zero convention is the one
// that this package uses unless told otherwise.
const (
	PartsMade  RatioConvention = iota // 1:100 is 1 part stock that makes 100 parts (UMass Extension chart)
	PartsAdded                        // 1:100 is 1 part stock added to 100 parts of water (a distributor's newsletter)
)

// Injector dilutes a stock concentrate by a fixed ratio.
type Injector struct {
	Ratio      float64 // the 100 of 1:100; 1 means no injector
	Convention RatioConvention
}

// NoInjector is a plain can: what is mixed is what reaches the pot.
var NoInjector = Injector{Ratio: 1}

// Dilution returns how many parts one part of stock ends up in. It panics on a
// ratio that is not above zero.
func (i Injector) Dilution() float64 {
	if !(i.Ratio > 0) {
		panic("nutrition: an injector's ratio must be above zero")
	}
	if i.Convention == PartsAdded && i != NoInjector {
		return i.Ratio + 1
	}
	return i.Ratio
}

// Stock returns the concentrate to mix for the injector, in g of product per litre
// of stock.
func (s Solution) Stock(i Injector) Concentration {
	return s.Product * Concentration(i.Dilution())
}

// StockVolume returns the stock that the injector draws for a volume of solution.
func (i Injector) StockVolume(v quantity.Volume) quantity.Volume {
	return v / quantity.Volume(i.Dilution())
}

// UsualSolubility is the limit of a soluble feed's stock: 4 lb a US gallon, as one
// label gives it (MSU Extension, Ensuring proper fertilizer concentration). The
// product's own label outranks it.
const UsualSolubility = Concentration(4 * 453.59237 / 3.785411784)
