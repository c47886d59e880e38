package vessel

import (
	"fourturn/planner/quantity"
	"fourturn/planner/working"
)

// Nominal is a size as the trade names it, with dimensions that stand for it until
// the person measures, and the volume that is published for it. Trade names are not
// volumes: pots of one name differ, and so do published tables.
type Nominal struct {
	Key  string // of its name, such as "vessel.nominal.class_3"
	Spec Spec
	// Low and High are the published volume, to the brim for classes and of mix for
	// nominal sizes.
	Low, High quantity.Volume
	// Printed is the true volume that a Colorado garden centre prints for the class, as
	// its state asks for (bookcliffgardens.com, plant catalog); 0 where it has none. That
	// of #3 lies below the class: trade names are not volumes.
	Printed quantity.Volume
	Class   bool // a container class; else a nominal size
	Source  working.Source
	// Proportions is the ground for the dimensions.
	Proportions working.Source
}

const (
	z60Seen   = "ANSI Z60.1-2004 container classes, as summarised by ozarksoutdoorsolutions.com, plant pot sizes"
	z60Memory = "ANSI Z60.1-2014 container class table (AmericanHort)"
	growers   = "wholesale grower container list, parksbrothers.com"
	tipSheet  = "nevadagardens.com tip 1026 (2006), in liquid quarts"
	ausTable  = "vitalforcewellness.net 2021, how much potting mix does a garden pot hold"
	spread    = "knowitgrowit.blogspot.com, compilation of tables"
	trials    = "university and grower trials"
)

var (
	standardPot = working.Source{Status: working.Derived, Cite: "standard pot: height = diameter (jfjm100.com, greenhouse containers); bottom 0.8 of the top by judgement"}
	azaleaPot   = working.Source{Status: working.Derived, Cite: "azalea pot: height = 3/4 diameter (jfjm100.com, greenhouse containers); bottom 0.8 of the top by judgement"}
	clayPot     = working.Source{Status: working.Published, Cite: "clay pots of the 6-inch family: Shelby County Reporter 2006-03-28; bottom 0.8 of the top by judgement"}
	classPot    = working.Source{Status: working.Derived, Cite: "height = diameter, bottom 0.8 of the top, sized to the middle of the class"}
	wideBowl    = working.Source{Status: working.Judgement, Cite: "a bowl a third as deep as wide, at which the published volumes of 24 and 30 in hold"}
	halfSphere  = working.Source{Status: working.Definition, Cite: "half a sphere"}
	deepBasket  = working.Source{Status: working.Derived, Cite: "straight sides, as deep as the published volume asks for"}
)

const in = quantity.Inch

// tapering is a round pot of a diameter and a height whose bottom is 0.8 as wide as
// its top.
func tapering(diameter, height quantity.Length) Spec {
	const taper = 0.8
	return Spec{Kind: Round, TopDiameter: diameter, BottomDiameter: taper * diameter, Height: height, Material: Plastic}
}

func clay(diameter, height quantity.Length) Spec {
	s := tapering(diameter, height)
	s.Material = Terracotta
	return s
}

func class(key string, diameter quantity.Length, lowIn3, highIn3 float64, printed quantity.Volume, source working.Source) Nominal {
	return Nominal{
		Key: "vessel.nominal." + key, Spec: tapering(diameter, diameter), Class: true,
		Low: quantity.Volume(lowIn3) * quantity.CubicInch, High: quantity.Volume(highIn3) * quantity.CubicInch,
		Printed: printed, Source: source, Proportions: classPot,
	}
}

func size(key string, s Spec, low, high quantity.Volume, source, proportions working.Source) Nominal {
	return Nominal{Key: "vessel.nominal." + key, Spec: s, Low: low, High: high, Source: source, Proportions: proportions}
}

// Nominals returns the container classes and the nominal sizes, small to large.
func Nominals() []Nominal { return append(classes(), sizes()...) }

func classes() []Nominal {
	seen, memory := published(z60Seen), fromMemory(z60Memory)
	return []Nominal{
		class("class_sp4", 4.5*in, 51, 63, 0, memory),
		class("class_sp5", 5.75*in, 93, 136, 0, memory),
		class("class_1", 6.75*in, 152, 251, 2.8, seen),
		class("class_2", 8.5*in, 320, 474, 6, seen),
		class("class_3", 10.25*in, 628, 742, 9, seen),
		class("class_5", 11.75*in, 785, 1242, 14.9, seen),
		class("class_7", 13.5*in, 1337, 1790, 24.6, memory),
		class("class_10", 15.5*in, 2080, 2646, 34.1, memory),
		class("class_15", 17.25*in, 2768, 3696, 54.9, memory),
		class("class_20", 19.75*in, 4520, 5152, 74.2, memory),
		class("class_25", 21.5*in, 5775, 6861, 104.5, memory),
	}
}

func sizes() []Nominal {
	seen := published
	bowlOf := func(d quantity.Length) Spec {
		return Spec{Kind: Bowl, TopDiameter: d, Height: d / 3, Material: Plastic}
	}
	basket := func(d quantity.Length) Spec {
		return Spec{Kind: HemisphereBasket, TopDiameter: d, Material: WireAndCoir}
	}
	deep := func(d, h quantity.Length) Spec {
		return Spec{Kind: Cylinder, TopDiameter: d, Height: h, Material: Plastic}
	}
	sixInch := seen(tipSheet + "; " + ausTable)
	return []Nominal{
		size("round_3_5", tapering(3.5*in, 3.5*in), 0.365, 0.365, seen(growers), standardPot),
		size("round_4", tapering(4*in, 4*in), 0.44, 0.50, seen(growers), standardPot),
		size("round_6", tapering(6*in, 6*in), 1.19, 1.90, sixInch, standardPot),
		size("round_8", tapering(8*in, 8*in), 2.8, 4.5, sixInch, standardPot),
		size("azalea_4_5", tapering(4.5*in, 3.375*in), 0.6, 0.7, fromMemory(trials), azaleaPot),
		size("azalea_6", tapering(6*in, 4.5*in), 1.2, 1.6, fromMemory(trials), azaleaPot),
		size("azalea_6_5", tapering(6.5*in, 4.875*in), 1.6, 1.9, fromMemory(trials), azaleaPot),
		size("azalea_8", tapering(8*in, 6*in), 3.0, 3.6, fromMemory(trials), azaleaPot),
		size("clay_standard_6", clay(6.25*in, 5.5*in), 1.19, 1.90, sixInch, clayPot),
		size("clay_azalea_6", clay(6.25*in, 4.25*in), 1.19, 1.90, sixInch, clayPot),
		size("clay_bulb_pan_6", clay(6.62*in, 4.25*in), 1.19, 1.90, sixInch, clayPot),
		size("clay_cactus_pan_6", clay(6.62*in, 3.25*in), 1.19, 1.90, sixInch, clayPot),
		size("clay_rose_6", clay(6.5*in, 7.5*in), 1.19, 1.90, sixInch, clayPot),
		size("patio_10", tapering(10*in, 7.5*in), 4.7, 8, sixInch, azaleaPot),
		size("patio_12", tapering(12*in, 9*in), 11.4, 13.5, sixInch, azaleaPot),
		size("patio_14", tapering(14*in, 10.5*in), 17, 18.9, seen(tipSheet+"; "+spread), azaleaPot),
		size("patio_16", tapering(16*in, 12*in), 20.8, 28, sixInch, azaleaPot),
		size("patio_20", tapering(20*in, 15*in), 26.5, 52, sixInch, azaleaPot),
		size("bowl_24", bowlOf(24*in), 34.1, 34.1, seen(tipSheet), wideBowl),
		size("bowl_30", bowlOf(30*in), 68.1, 68.1, seen(tipSheet), wideBowl),
		size("bowl_36", bowlOf(36*in), 90.8, 90.8, seen(tipSheet), wideBowl),
		size("basket_10", basket(10*in), 4, 6, fromMemory("grower charts"), halfSphere),
		size("basket_12", basket(12*in), 7, 11, fromMemory("grower charts"), halfSphere),
		size("deep_basket_10", deep(10*in, 11*in), 14, 14, seen("greenhousegrower.com, Basket Bonanza: about 0.5 ft³"), deepBasket),
		size("deep_basket_11", deep(11*in, 13.5*in), 21, 21, seen("greenhousegrower.com, Basket Bonanza: about 0.75 ft³"), deepBasket),
	}
}
