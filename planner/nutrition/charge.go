package nutrition

import (
	"fourturn/planner/quantity"
	"fourturn/planner/working"
)

// SlowRelease is a coated fertiliser as its label describes it.
type SlowRelease struct {
	Analysis   Analysis
	Longevity  float64              // months at the reference temperature
	Reference  quantity.Temperature // of the longevity; 0 means [UsualReference]
	Coated     float64              // share that is coated, 0 to 1; 0 means all of it
	Tablespoon quantity.Mass        // mass of a level US tablespoon; 0 means [PrillSpoon]
}

// UsualReference is the temperature that longevities are mostly given for; makers
// differ between 21 and 25 °C (hortidaily 6011235; HortTechnology 17(1):21, 2007).
const UsualReference quantity.Temperature = 21

// monthDays is the mean length of a month in the Gregorian calendar, 146097/4800.
const monthDays = 30.436875

// filled returns the product with its defaults in place.
func (p SlowRelease) filled() SlowRelease {
	if p.Reference == 0 {
		p.Reference = UsualReference
	}
	if p.Coated == 0 {
		p.Coated = 1
	}
	if p.Tablespoon == 0 {
		p.Tablespoon = PrillSpoon
	}
	return p
}

// Placement says where a charge lies.
type Placement int

// The placements. The zero placement is mixed in.
const (
	MixedIn Placement = iota // through the mix that it is for
	OnTop                    // scattered on the surface: less even, dries out
)

// TopDelivery is the share that a charge on top gives up compared with one mixed
// in. Surface prills dry out and swing in temperature (greenhousegrower.com,
// Misconceptions With Controlled Release Fertilizers); a fifth less is a judgement.
const TopDelivery = 0.8

// Basis says which mix a charge is reckoned on at a change-out.
type Basis int

// The bases. The zero basis is the whole pot.
const (
	AllMix   Basis = iota // every litre in the pot
	FreshMix              // only the fresh mix that went in
)

// Dose is one charge for one pot, by mass.
type Dose struct {
	Mass   quantity.Mass
	Spoons Spoons
	rate   Concentration
	volume quantity.Volume
	source working.Source
}

// DoseOf returns the charge of a product at a rate for a pot: on all its mix or
// on the fresh part, by basis. The rate is a class's ([Class.Rate]) or the label's
// own ([ParseRate]); source says which, and is shown in the working. It panics on
// a negative rate or volume.
func DoseOf(p SlowRelease, rate Concentration, all, fresh quantity.Volume, basis Basis, source working.Source) Dose {
	if rate < 0 || all < 0 || fresh < 0 {
		panic("nutrition: negative rate or volume of a charge")
	}
	volume := all
	if basis == FreshMix {
		volume = fresh
	}
	m := rate.Of(volume)
	return Dose{Mass: m, Spoons: SpoonsOf(m, p.filled().Tablespoon), rate: rate, volume: volume, source: source}
}

// ClassRateSource is the source of a rate taken from the feeder class.
func ClassRateSource() working.Source { return chargeSource }

// LabelRateSource is the source of a rate typed in from the label.
func LabelRateSource() working.Source { return working.Source{Status: working.Entered} }

// TotalMass returns the sum of doses, for a change-out of all pots or a season.
func TotalMass(doses []Dose) quantity.Mass {
	total := quantity.Mass(0)
	for _, d := range doses {
		total += d.Mass
	}
	return total
}

// Working returns the trace of the dose.
func (d Dose) Working() working.Trace {
	return working.Trace{
		Name:    "nutrition.dose",
		Formula: "m = r × V",
		Inputs: []working.Input{
			{Symbol: "r", Name: "nutrition.charge_rate", Value: working.Number(float64(d.rate), working.GramPerLitre), Source: d.source},
			{Symbol: "V", Name: "nutrition.charged_mix", Value: working.Number(float64(d.volume), working.Litre), Source: working.Source{Status: working.Derived}},
		},
		Result: working.Number(float64(d.Mass), working.Kilogram),
		Source: working.Source{Status: working.Definition},
		Notes:  []string{"nutrition.note_label_first", "nutrition.note_spoons"},
	}
}
