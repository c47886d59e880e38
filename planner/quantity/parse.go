package quantity

import (
	"fmt"
	"math"
	"strconv"
	"strings"
	"unicode"
)

// Kind names what a measure is of; it is the argument of a [ParseError].
type Kind string

// The kinds that people type.
const (
	KindLength      Kind = "length"
	KindVolume      Kind = "volume"
	KindMass        Kind = "mass"
	KindTemperature Kind = "temperature"
)

// Fault says what is wrong with a measure that was typed.
type Fault string

// The faults of a typed measure.
const (
	FaultEmpty       Fault = "empty"        // nothing was typed
	FaultNotANumber  Fault = "not_a_number" // it does not begin with a number
	FaultUnknownUnit Fault = "unknown_unit" // the unit is not one of this kind
	FaultNoUnit      Fault = "no_unit"      // a number alone, where a unit is needed
	FaultNotFinite   Fault = "not_finite"   // the number is too large to hold
	FaultAmbiguous   Fault = "ambiguous"    // "qt" alone: dry or liquid?
)

// ParseError reports a measure that cannot be read. The words for a person are
// made from Fault, Kind and Text at the surface.
type ParseError struct {
	Kind  Kind
	Fault Fault
	Text  string // what was typed
	Unit  string // the part that is not a unit, for FaultUnknownUnit and FaultAmbiguous
}

// Error describes the fault for a log or a file error.
func (e *ParseError) Error() string {
	switch e.Fault {
	case FaultEmpty:
		return fmt.Sprintf("a %s is empty", e.Kind)
	case FaultNoUnit:
		return fmt.Sprintf("%s %q has no unit", e.Kind, e.Text)
	case FaultUnknownUnit:
		return fmt.Sprintf("%s %q: %q is not a unit of %s", e.Kind, e.Text, e.Unit, e.Kind)
	case FaultAmbiguous:
		return fmt.Sprintf("%s %q: write %q as dry or liquid, such as \"dry qt\" or \"liq qt\"", e.Kind, e.Text, e.Unit)
	case FaultNotFinite:
		return fmt.Sprintf("%s %q is too large", e.Kind, e.Text)
	}
	return fmt.Sprintf("%s %q is not a number with a unit", e.Kind, e.Text)
}

// unitNames lists, for each kind, every spelling that is understood, in SI.
var unitNames = map[Kind]map[string]float64{
	KindLength: {
		"m": 1, "metre": 1, "metres": 1, "meter": 1, "meters": 1,
		"cm": float64(Centimetre), "mm": float64(Millimetre),
		"in": float64(Inch), "inch": float64(Inch), "inches": float64(Inch), `"`: float64(Inch), "″": float64(Inch),
		"ft": float64(Foot), "foot": float64(Foot), "feet": float64(Foot), "'": float64(Foot), "′": float64(Foot),
	},
	KindVolume: {
		"l": 1, "litre": 1, "litres": 1, "liter": 1, "liters": 1, "ml": float64(Millilitre),
		"m3": 1000, "m³": 1000, "cu m": 1000, "cubic metre": 1000, "cubic metres": 1000, "cubic meter": 1000, "cubic meters": 1000,
		"cu in": float64(CubicInch), "in3": float64(CubicInch), "in³": float64(CubicInch),
		"cu ft": float64(CubicFoot), "ft3": float64(CubicFoot), "ft³": float64(CubicFoot), "cubic foot": float64(CubicFoot), "cubic feet": float64(CubicFoot),
		"cu yd": float64(CubicYard), "yd3": float64(CubicYard), "yd³": float64(CubicYard), "cubic yard": float64(CubicYard), "cubic yards": float64(CubicYard),
		"gal": float64(Gallon), "gallon": float64(Gallon), "gallons": float64(Gallon), "us gal": float64(Gallon), "liq gal": float64(Gallon),
		"dry gal": float64(DryGallon), "trade gal": float64(TradeGallon),
		"dry qt": float64(DryQuart), "dry quart": float64(DryQuart), "dry quarts": float64(DryQuart),
		"liq qt": float64(LiquidQuart), "liquid qt": float64(LiquidQuart), "liquid quart": float64(LiquidQuart), "liquid quarts": float64(LiquidQuart),
		"pt": float64(Pint), "liq pt": float64(Pint), "fl oz": float64(FluidOunce), "cup": float64(Cup), "cups": float64(Cup),
		"tbsp": float64(Tablespoon), "tsp": float64(Teaspoon),
	},
	KindMass: {
		"kg": 1, "g": float64(Gram), "mg": 1e-6, "t": 1000,
		"lb": float64(Pound), "lbs": float64(Pound), "pound": float64(Pound), "pounds": float64(Pound),
		"oz": float64(Ounce), "ounce": float64(Ounce), "ounces": float64(Ounce),
	},
}

// ParseLength reads "35 cm", "14 in", "3 ft 6 in" or 3'6". A number without a
// unit is taken in fallback, or refused where fallback is 0.
func ParseLength(s string, fallback Length) (Length, error) {
	v, err := parse(KindLength, s, float64(fallback))
	return Length(v), err
}

// ParseVolume reads "12 L", "1.5 cu ft", "6 dry qt". A number without a unit is
// taken in fallback, or refused where fallback is 0. A bare "qt" is refused: dry
// and liquid quarts differ by 16 %.
func ParseVolume(s string, fallback Volume) (Volume, error) {
	v, err := parse(KindVolume, s, float64(fallback))
	return Volume(v), err
}

// ParseMass reads "450 g", "1 lb 4 oz". A number without a unit is taken in
// fallback, or refused where fallback is 0.
func ParseMass(s string, fallback Mass) (Mass, error) {
	v, err := parse(KindMass, s, float64(fallback))
	return Mass(v), err
}

// ParseTemperature reads "-2.2 C", "28 °F". A number without a unit is taken in
// the system's unit.
func ParseTemperature(s string, system System) (Temperature, error) {
	number, unit, err := splitNumber(KindTemperature, strings.TrimSpace(s))
	if err != nil {
		return 0, err
	}
	switch strings.ToLower(strings.TrimLeft(strings.TrimSpace(unit), "° ")) {
	case "c":
		return Temperature(number), nil
	case "f":
		return FromFahrenheit(number), nil
	case "":
		if system == USCustomary {
			return FromFahrenheit(number), nil
		}
		return Temperature(number), nil
	}
	return 0, &ParseError{Kind: KindTemperature, Fault: FaultUnknownUnit, Text: s, Unit: unit}
}

// parse sums the number-and-unit pairs of s, such as "3 ft 6 in".
func parse(kind Kind, s string, fallback float64) (float64, error) {
	rest := strings.TrimSpace(s)
	if rest == "" {
		return 0, &ParseError{Kind: kind, Fault: FaultEmpty, Text: s}
	}
	total := 0.0
	for first := true; rest != ""; first = false {
		number, after, err := splitNumber(kind, rest)
		if err != nil {
			return 0, err
		}
		end := strings.IndexFunc(after, unicode.IsDigit)
		// "m3", "ft3": the digit belongs to the unit unless a space stands before it.
		for end > 0 && !unicode.IsSpace(rune(after[end-1])) && !strings.ContainsAny(after[end-1:end], `"'`) && after[end] == '3' {
			next := strings.IndexFunc(after[end+1:], unicode.IsDigit)
			if next < 0 {
				end = -1
			} else {
				end += 1 + next
			}
		}
		name := after
		rest = ""
		if end >= 0 {
			name, rest = after[:end], after[end:]
		}
		scale, err := unitScale(kind, s, name, fallback, first && rest == "")
		if err != nil {
			return 0, err
		}
		total += number * scale
	}
	if math.IsInf(total, 0) || math.IsNaN(total) {
		return 0, &ParseError{Kind: kind, Fault: FaultNotFinite, Text: s}
	}
	return total, nil
}

func unitScale(kind Kind, whole, name string, fallback float64, alone bool) (float64, error) {
	name = strings.ToLower(strings.Join(strings.Fields(strings.ReplaceAll(name, ".", "")), " "))
	if name == "" {
		if fallback == 0 || !alone {
			return 0, &ParseError{Kind: kind, Fault: FaultNoUnit, Text: whole}
		}
		return fallback, nil
	}
	if scale, ok := unitNames[kind][name]; ok {
		return scale, nil
	}
	if kind == KindVolume && (name == "qt" || name == "quart" || name == "quarts") {
		return 0, &ParseError{Kind: kind, Fault: FaultAmbiguous, Text: whole, Unit: name}
	}
	return 0, &ParseError{Kind: kind, Fault: FaultUnknownUnit, Text: whole, Unit: name}
}

// splitNumber takes the number at the head of s. A decimal comma is understood;
// a number with both a comma and a point is not, since it could mean two things.
func splitNumber(kind Kind, s string) (number float64, rest string, err error) {
	if s == "" {
		return 0, "", &ParseError{Kind: kind, Fault: FaultEmpty, Text: s}
	}
	end := 0
	for end < len(s) && strings.IndexByte("+-.,0123456789", s[end]) >= 0 {
		end++
	}
	digits := strings.Replace(s[:end], ",", ".", 1)
	number, err = strconv.ParseFloat(digits, 64)
	if err != nil {
		fault := FaultNotANumber
		if math.IsInf(number, 0) {
			fault = FaultNotFinite
		}
		return 0, "", &ParseError{Kind: kind, Fault: fault, Text: s}
	}
	return number, s[end:], nil
}
