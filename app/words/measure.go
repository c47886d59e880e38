package words

import (
	"strconv"
	"strings"

	"fourturn/planner/quantity"
)

// Length writes a length in centimetres or inches, and a long one, such as a
// height above the sea, in metres or feet.
func (w *Words) Length(l quantity.Length, s quantity.System) string {
	// A pot is shorter than 10 m; what is longer is a distance.
	if l < 10*quantity.Metre && l > -10*quantity.Metre {
		return w.localized(l.Format(s))
	}
	if s == quantity.USCustomary {
		return w.Significant(float64(l/quantity.Foot), 3) + " ft"
	}
	return w.Significant(l.Metres(), 3) + " m"
}

// Volume writes a volume of mix: litres, or dry quarts and cubic feet.
func (w *Words) Volume(v quantity.Volume, s quantity.System) string {
	return w.localized(v.Format(s))
}

// Water writes a volume of liquid: litres, or fluid ounces and gallons.
func (w *Words) Water(v quantity.Volume, s quantity.System) string {
	return w.localized(v.FormatWater(s))
}

// Mass writes a mass: grams and kilograms, or ounces and pounds.
func (w *Words) Mass(m quantity.Mass, s quantity.System) string {
	return w.localized(m.Format(s))
}

// Temperature writes a temperature in °C or °F.
func (w *Words) Temperature(t quantity.Temperature, s quantity.System) string {
	return w.localized(t.Format(s))
}

// localized puts a measure that [quantity] wrote into the numbers of the language.
// Which unit suits which size is decided there alone.
func (w *Words) localized(measure string) string {
	digits, unit, _ := strings.Cut(measure, " ")
	x, err := strconv.ParseFloat(digits, 64)
	if err != nil {
		panic("words: measure without a number: " + measure)
	}
	_, fraction, _ := strings.Cut(digits, ".")
	return w.Number(x, len(fraction)) + " " + unit
}

// Refusal says in words why a typed measure cannot be read.
func (w *Words) Refusal(e *quantity.ParseError) string {
	return w.T("words.measure."+string(e.Fault), A{
		"kind": w.T("words.kind." + string(e.Kind)),
		"text": e.Text,
		"unit": e.Unit,
	})
}
