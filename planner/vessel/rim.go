package vessel

import (
	"fourturn/planner/quantity"
	"fourturn/planner/working"
)

// The classes of pots for the default watering rim. The rims are published, the
// widths at which one class ends and the next begins are not: they are a judgement.
const (
	smallRim = 1 * quantity.Centimetre
	largeRim = 2.5 * quantity.Centimetre
	bigRim   = 5 * quantity.Centimetre

	largeFrom = 15 * quantity.Centimetre // across the narrower way
	bigFrom   = 45 * quantity.Centimetre

	// deepestRim keeps the rim of a wide, shallow bowl in proportion (judgement).
	deepestRim = 0.2 // of the depth
)

// DefaultRim returns the watering rim of a pot by how wide its opening is, across
// the narrower way, and how deep its hollow is: 1 cm for small pots, 2.5 cm for
// larger ones, 5 cm for big tubs, and at most a fifth of the depth.
//
// Sources: 1 cm and 2 cm, Vital Force Wellness, "How much potting mix does a garden
// pot hold" (2021); 2.5 cm, a UK garden centre (2018); 2 in on big tubs, Detroit
// News, 15 June 2017. Where the classes end is a judgement.
func DefaultRim(across, depth quantity.Length) quantity.Length { return defaultRim(across, depth) }

func defaultRim(across, depth quantity.Length) quantity.Length {
	rim := bigRim
	switch {
	case across < largeFrom:
		rim = smallRim
	case across < bigFrom:
		rim = largeRim
	}
	return min(rim, deepestRim*depth)
}

// rimOf returns the rim of a hollow: the person's, or the default.
func rimOf(s *Spec, in *solid) quantity.Length {
	if s.Rim != nil {
		return *s.Rim
	}
	l, w := in.at(in.height)
	return defaultRim(quantity.Length(min(l, w)), quantity.Length(in.height))
}

// rimSource says where the rim is from.
func (s *Spec) rimSource() working.Source {
	if s.Rim != nil {
		return working.Source{Status: working.Entered}
	}
	return working.Source{
		Status: working.Judgement,
		Cite:   "rims: Vital Force Wellness 2021 (1 and 2 cm), UK garden centre 2018 (2.5 cm), Detroit News 2017-06-15 (2 in); size classes by judgement",
	}
}
