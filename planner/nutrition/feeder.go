package nutrition

import (
	"fourturn/planner/quantity"
	"fourturn/planner/working"
)

// Feeder is how much a plant is fed: the class that plant books print.
type Feeder string

// The feeder classes, and none for what takes nothing up, such as cut stems.
const (
	NoFeeder     Feeder = ""
	LightFeeder  Feeder = "light"
	MediumFeeder Feeder = "medium"
	HeavyFeeder  Feeder = "heavy"
)

// Feeders lists the classes, lightest first.
var Feeders = [...]Feeder{LightFeeder, MediumFeeder, HeavyFeeder}

// Known reports whether f is one of the three classes.
func (f Feeder) Known() bool { return f == LightFeeder || f == MediumFeeder || f == HeavyFeeder }

// Key returns the key of the class's words.
func (f Feeder) Key() string { return "nutrition.feeder." + string(f) }

// Heavier returns the class that is fed more: a pot of several kinds follows its
// hungriest plant.
func (f Feeder) Heavier(o Feeder) Feeder {
	rank := map[Feeder]int{LightFeeder: 1, MediumFeeder: 2, HeavyFeeder: 3}
	if rank[o] > rank[f] {
		return o
	}
	return f
}

// Band is a range of a quantity, both ends allowed.
type Band struct{ Low, High float64 }

// Middle returns the middle of the band.
func (b Band) Middle() float64 { return (b.Low + b.High) / 2 }

// Holds reports whether x is within the band.
func (b Band) Holds(x float64) bool { return x >= b.Low && x <= b.High }

// Class is what a feeder class means in numbers. Each field may be replaced by the
// person's own.
type Class struct {
	Feeder   Feeder
	Charge   Band     // g of a coated product of about 16 % N, rated 3 to 6 months, per litre of mix
	Strength Band     // ppm N of a soluble feed
	Interval Interval // days between soluble feeds
	Weekly   Band     // mg N per litre of mix per week, from charge and feeds together
}

// classNitrogen is the nitrogen of the coated product that the rates were tested
// with, in per cent: 16N-3.9P-10K (HortTechnology 23(2):157, 2013).
const classNitrogen = 16

// basketWeeks is the season over which the leanest supply is spread: about 20 weeks
// for an outdoor basket (greenhousegrower.com, Fertilizing Containers).
const basketWeeks = 20

// ClassOf returns the numbers of a feeder class. It panics on a class that is not
// [Feeder.Known].
//
// Charges lie inside the 3.4 to 6.8 kg/m³ that gave acceptable plants
// (HortTechnology 23(2):157, 2013), the light class down to the rate of home
// sheets. Strengths are those of MSU Extension's trial table (2024). Intervals
// divide the usual 7 to 14 days (Minnesota Extension 2018: every one to two weeks;
// Illinois Extension: about every two) by judgement. The weekly supply lies between
// the two ways that sources call right: at least the leanest charge of the class
// spread over 20 weeks, at most its strongest feed at its shortest interval.
func ClassOf(f Feeder) Class {
	c := Class{Feeder: f}
	switch f {
	case LightFeeder:
		c.Charge, c.Strength, c.Interval = Band{1.8, 3.4}, Band{100, 150}, Interval{Shortest: 10, Longest: 14}
	case MediumFeeder:
		c.Charge, c.Strength, c.Interval = Band{3.4, 5.0}, Band{150, 200}, Interval{Shortest: 7, Longest: 14}
	case HeavyFeeder:
		c.Charge, c.Strength, c.Interval = Band{5.0, 6.8}, Band{200, 300}, Interval{Shortest: 7, Longest: 10}
	case NoFeeder:
		panic("nutrition: no feeder class")
	default:
		panic("nutrition: unknown feeder class " + string(f))
	}
	pour := PourFor(1, 0, 0).Volume.Litres() // of feed per litre of mix
	c.Weekly = Band{
		Low:  c.Charge.Low * classNitrogen * 10 / basketWeeks,
		High: c.Strength.High * pour * 7 / float64(c.Interval.Shortest),
	}
	return c
}

// Rate returns the charge of the class in g of product per litre of mix for a
// product of the given nitrogen: the middle of the band, so that the nitrogen is
// that of the tested product. Without nitrogen in the product the mass stands.
func (c Class) Rate(a Analysis) Concentration {
	if a.N == 0 {
		return Concentration(c.Charge.Middle())
	}
	return Concentration(c.Charge.Middle() * classNitrogen / a.N)
}

// Nitrogen returns the strength of the class: the middle of its band.
func (c Class) Nitrogen() PPM { return PPM(c.Strength.Middle()) }

// SeedlingStrength is the strength for seedlings in stages 2 and 3, in ppm N (MSU
// Extension trial table, 2024).
var SeedlingStrength = Band{25, 50}

// HighestCharge is the highest rate that gave acceptable plants, in g of a product
// of 16 % N per litre; 10.2 and 13.6 did not (HortTechnology 23(2):157, 2013).
const HighestCharge Concentration = 6.8

// PPM is a strength in milligrams per litre, which is parts per million of water.
type PPM float64

// Concentration is grams per litre: of product in the mix, or of product in water.
type Concentration float64

// Of returns the mass in a volume.
func (c Concentration) Of(v quantity.Volume) quantity.Mass {
	return quantity.Mass(float64(c)*v.Litres()) * quantity.Gram
}

var (
	chargeSource = working.Source{
		Status: working.Derived,
		Cite:   "HortTechnology 23(2):157 (2013): 3.4 to 6.8 kg/m³ of 16-9-12 acceptable",
	}
	strengthSource = working.Source{
		Status: working.Published,
		Cite:   "MSU Extension, Consider maintenance when choosing plants (2024), table 1",
	}
)

// SharedStrength returns the strength for a can that serves several classes at once:
// the middle of what their bands have in common. Where they have nothing in common it
// is the most that the lightest bears, too strong for none of them, and within is
// false: the hungrier ones are then fed at shorter intervals. It panics on no classes.
func SharedStrength(classes ...Class) (n PPM, within bool) {
	if len(classes) == 0 {
		panic("nutrition: a can for no feeder class")
	}
	common := classes[0].Strength
	for _, c := range classes[1:] {
		common = Band{max(common.Low, c.Strength.Low), min(common.High, c.Strength.High)}
	}
	if common.Low > common.High {
		return PPM(common.High), false
	}
	return PPM(common.Middle()), true
}
