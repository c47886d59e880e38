package planner

import "fourturn/planner/quantity"

// ProductKind says what a product is for.
type ProductKind string

// The kinds of product.
const (
	SlowRelease ProductKind = "slow_release"
	Soluble     ProductKind = "soluble"
	PottingMix  ProductKind = "mix"
	Ingredient  ProductKind = "ingredient" // of a blend: peat, bark, perlite and the like
)

// ByVolume reports whether a product is sold and kept by volume; else it is by mass.
func (k ProductKind) ByVolume() bool { return k == PottingMix || k == Ingredient }

// Product is something bought: a fertiliser by its analysis, or a mix by the bag.
// Products carry no brand: the name is what the person calls it.
type Product struct {
	ID        string
	Name      string
	Kind      ProductKind
	Analysis  string               // N-P2O5-K2O in per cent, such as "14-14-14"; empty for mix
	Longevity float64              // months at the reference temperature, for slow release
	Reference quantity.Temperature // of the longevity; 0 means 21 °C
	Coated    float64              // share of slow release that is coated, 0 to 1; 0 means all of it
	Rate      float64              // g per litre of mix, for slow release; 0 takes the rate of the feeder class
	RateLabel string               // the rate in the label's own words, such as "1/2 tbsp/gal"; it outranks Rate
	Strength  float64              // ppm N, for soluble feeds; 0 takes the strength of the feeder class

	Solubility   float64 // g per litre that dissolve in a stock, for soluble feeds; 0 takes the usual limit
	Conductivity float64 // mS/cm that 100 ppm N add to water, for soluble feeds; 0 takes the published value, if any

	SpoonMass quantity.Mass // mass of a level US tablespoon (14.79 mL); 0 takes the usual one
	Packs     []Pack
	Bulk      Bulk    // delivered loose, for mix and ingredients; zero where it is not
	Expansion float64 // loose volume from one volume as sold, for mix and ingredients; 0 means 1
	InShed    float64 // what is left: kg of fertiliser, litres as sold of mix and ingredients
}

// Loosens returns the loose volume from one volume as sold.
func (p *Product) Loosens() float64 {
	if p.Expansion == 0 {
		return 1
	}
	return p.Expansion
}

// Bulk is an offer of mix delivered loose.
type Bulk struct {
	Price    float64         // of Per, in the plan's currency; 0 where there is no offer
	Per      quantity.Volume // 0 means 1 m³
	Step     quantity.Volume // sold in multiples of this; 0 means Per
	Minimum  quantity.Volume // of one delivery
	Delivery float64         // charge for it
}

// Blend is a mix that the person makes of parts by volume.
type Blend struct {
	ID        string
	Name      string
	Parts     []BlendPart
	Shrinkage *float64 // share lost on mixing; nil means the usual
}

// BlendPart is one part of a blend.
type BlendPart struct {
	Product string  // id of an ingredient or of a ready mix
	Parts   float64 // by volume, loose
}

// Pack is a size that a product is sold in.
type Pack struct {
	Volume quantity.Volume // for mix and ingredients
	Mass   quantity.Mass   // for fertiliser
	Price  float64         // in the plan's currency
}
