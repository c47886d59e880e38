package planner

import "fourturn/planner/quantity"

// ProductKind says what a product is for.
type ProductKind string

// The kinds of product.
const (
	SlowRelease ProductKind = "slow_release"
	Soluble     ProductKind = "soluble"
	PottingMix  ProductKind = "mix"
)

// Product is something bought: a fertiliser by its analysis, or a mix by the bag.
// Products carry no brand: the name is what the person calls it.
type Product struct {
	ID        string
	Name      string
	Kind      ProductKind
	Analysis  string               // N-P2O5-K2O in per cent, such as "14-14-14"; empty for mix
	Longevity float64              // months at the reference temperature, for slow release
	Reference quantity.Temperature // of the longevity; 0 means 21 °C
	Rate      float64              // g per litre of mix, for slow release; 0 takes the rate of the feeder class
	Strength  float64              // ppm N, for soluble feeds; 0 takes the strength of the feeder class
	SpoonMass quantity.Mass        // mass of a level US tablespoon (14.79 mL); 0 takes the usual one
	Packs     []Pack
	InShed    float64 // what is left: kg of fertiliser, litres of mix
}

// Pack is a size that a product is sold in.
type Pack struct {
	Volume quantity.Volume // for mix
	Mass   quantity.Mass   // for fertiliser
	Price  float64         // in the plan's currency
}

// FeedingSettings says how the alternating feeds go.
type FeedingSettings struct {
	SlowRelease string          // id of the product worked into the mix
	Turn        []string        // ids of the soluble products, in the order they take turns
	Interval    int             // days between a pot's feeds; 0 takes the interval of the feeder class
	Can         quantity.Volume // volume of the can; 0 means 9 L
	FirstDay    string          // weekday that rounds prefer, such as "saturday"; empty for any
}
