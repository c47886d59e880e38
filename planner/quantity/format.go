package quantity

import (
	"math"
	"strconv"
)

// Format writes a length for a person: centimetres or inches, to a tenth.
func (l Length) Format(s System) string {
	if s == USCustomary {
		return number(float64(l/Inch), 1) + " in"
	}
	return number(float64(l/Centimetre), 1) + " cm"
}

// Format writes a volume of mix for a person: litres, or US dry quarts up to a
// cubic foot and cubic feet from there.
func (v Volume) Format(s System) string {
	if s == USCustomary {
		if math.Abs(float64(v)) >= float64(CubicFoot) {
			return number(float64(v/CubicFoot), 2) + " cu ft"
		}
		return significant(float64(v/DryQuart), 3) + " dry qt"
	}
	return significant(float64(v), 3) + " L"
}

// FormatWater writes a volume of liquid for a person: litres or US gallons,
// fluid ounces below a quart.
func (v Volume) FormatWater(s System) string {
	size := math.Abs(float64(v))
	if s == USCustomary {
		if size < float64(LiquidQuart) {
			return significant(float64(v/FluidOunce), 2) + " fl oz"
		}
		return significant(float64(v/Gallon), 3) + " gal"
	}
	if size < 0.9995 { // what is rounded to 1000 mL is written as 1 L
		return significant(float64(v/Millilitre), 2) + " mL"
	}
	return significant(float64(v), 3) + " L"
}

// Format writes a mass for a person: grams up to a kilogram, then kilograms;
// or ounces up to a pound, then pounds.
func (m Mass) Format(s System) string {
	size := math.Abs(float64(m))
	if s == USCustomary {
		switch ounces := float64(m / Ounce); {
		case size < 10*float64(Ounce):
			return significant(ounces, 2) + " oz"
		case size < 15.95*float64(Ounce): // what is rounded to 16 oz is written in pounds
			return number(ounces, 1) + " oz"
		}
		return significant(float64(m/Pound), 3) + " lb"
	}
	if size < 0.9995 { // what is rounded to 1000 g is written as 1 kg
		return significant(m.Grams(), 3) + " g"
	}
	return significant(float64(m), 3) + " kg"
}

// Format writes a temperature for a person, to a tenth of a degree in °C and to
// a degree in °F.
func (t Temperature) Format(s System) string {
	if s == USCustomary {
		return number(t.Fahrenheit(), 0) + " °F"
	}
	return number(float64(t), 1) + " °C"
}

// mostDecimals is how small a part of a unit is still written.
const mostDecimals = 6

// number writes x with at most places decimals and no trailing zeros.
func number(x float64, places int) string {
	scale := math.Pow10(min(places, mostDecimals))
	rounded := math.Round(x*scale) / scale
	switch {
	case rounded == 0:
		rounded = 0 // no minus sign on a zero
	case math.IsInf(rounded, 0):
		rounded = x // too large to have decimals
	}
	return strconv.FormatFloat(rounded, 'f', -1, 64)
}

// significant writes x to the given number of significant digits, but never
// rounds away whole units.
func significant(x float64, digits int) string {
	if x == 0 || math.IsNaN(x) || math.IsInf(x, 0) {
		return number(x, 0)
	}
	before := int(math.Floor(math.Log10(math.Abs(x)))) + 1
	return number(x, max(0, digits-before))
}
