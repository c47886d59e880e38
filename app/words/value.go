package words

import (
	"fmt"
	"strings"

	"fourturn/planner/quantity"
	"fourturn/planner/working"
)

// Value writes a value in the person's units. A word that is a key gets its text,
// any other stands as it is. Litres are taken as mix; see [Words.Named].
func (w *Words) Value(v working.Value, s quantity.System) string { return w.value(v, s, false) }

// Named writes a value as [Words.Value] does, as a measure of liquid where the
// name says that it is one: water is sold and measured in gallons, mix in dry
// quarts.
func (w *Words) Named(name string, v working.Value, s quantity.System) string {
	return w.value(v, s, isLiquid(name))
}

// liquidWords are the parts of a key that speak of liquid.
var liquidWords = map[string]bool{
	"water": true, "can": true, "solution": true, "irrigation": true, "rain": true,
	"drink": true, "leach": true, "runoff": true, "reservoir": true,
}

// isLiquid reports whether a key, such as "nutrition.can_volume", speaks of liquid.
func isLiquid(name string) bool {
	parts := strings.FieldsFunc(name, func(r rune) bool { return r == '.' || r == '_' })
	for _, part := range parts {
		if liquidWords[part] {
			return true
		}
	}
	return false
}

// US customary units of a metric unit, from the exact ones in [quantity].
const (
	ouncesPerGallon  = float64(quantity.Gram/quantity.Ounce) * float64(quantity.Gallon)    // per g/L
	poundsPerCuYard  = float64(quantity.Gram/quantity.Pound) * float64(quantity.CubicYard) // per g/L
	squareFeet       = 1 / float64(quantity.Foot*quantity.Foot)                            // per m²
	poundsPerSqFoot  = 1 / float64(quantity.Pound) / squareFeet                            // per kg/m²
	inches           = float64(quantity.Millimetre / quantity.Inch)                        // per mm
	fahrenheitDegree = 1.8                                                                 // per kelvin
	perThousandFeet  = float64(quantity.Foot)                                              // of a quantity per km
)

func (w *Words) value(v working.Value, s quantity.System, liquid bool) string {
	if v.Text != "" {
		if w.Has(v.Text) {
			return w.T(v.Text)
		}
		return v.Text
	}
	x := v.Number
	us := s == quantity.USCustomary
	switch v.Unit {
	case working.None:
		return w.Significant(x, 4)
	case working.Share:
		return w.Percent(x)
	case working.DayNumber:
		return w.Date(v.Date)
	case working.Money:
		return w.Money(x)
	case working.Metre:
		return w.Length(quantity.Length(x), s)
	case working.Litre:
		if liquid {
			return w.Water(quantity.Volume(x), s)
		}
		return w.Volume(quantity.Volume(x), s)
	case working.Kilogram:
		return w.Mass(quantity.Mass(x), s)
	case working.Celsius:
		return w.Temperature(quantity.Temperature(x), s)
	case working.Day, working.Week, working.Month, working.Hour, working.Minute:
		return w.duration(x, v.Unit)
	case working.DisplayDay:
		return w.T("words.unit.display_days", A{"count": x, "number": w.Significant(x, 3)})
	case working.SquareMetre:
		return w.either(us, x, "m²", x*squareFeet, "sq ft")
	case working.GramPerLitre:
		if liquid {
			return w.either(us, x, "g/L", x*ouncesPerGallon, "oz/gal")
		}
		return w.either(us, x, "g/L", x*poundsPerCuYard, "lb/cu yd")
	case working.MilligramPerLitre:
		return w.either(us, x, "mg/L", x, "ppm")
	case working.Kelvin:
		return w.either(us, x, "°C", x*fahrenheitDegree, "°F")
	case working.KelvinPerKm:
		return w.either(us, x, "°C/km", x*fahrenheitDegree*perThousandFeet, "°F/1000 ft")
	case working.DegreeDay:
		return w.either(us, x, "°C·d", x*fahrenheitDegree, "°F·d")
	case working.KilogramPerM2:
		return w.either(us, x, "kg/m²", x*poundsPerSqFoot, "lb/sq ft")
	case working.MillimetrePerDay:
		return w.either(us, x, "mm/d", x*inches, "in/d")
	case working.MegajoulePerM2Day:
		return w.measure(x, "MJ/m²/d")
	case working.MilliSiemensPerCM, working.KilojoulePerMole:
		return w.measure(x, string(v.Unit))
	}
	panic(fmt.Sprintf("words: unit %q has no form in words", v.Unit))
}

func (w *Words) either(us bool, metric float64, metricUnit string, customary float64, customaryUnit string) string {
	if us {
		return w.measure(customary, customaryUnit)
	}
	return w.measure(metric, metricUnit)
}

func (w *Words) measure(x float64, unit string) string {
	return w.Significant(x, 3) + " " + unit
}

// durationKeys are the texts of the units of time.
var durationKeys = map[working.Unit]string{
	working.Day:    "words.unit.days",
	working.Week:   "words.unit.weeks",
	working.Month:  "words.unit.months",
	working.Hour:   "words.unit.hours",
	working.Minute: "words.unit.minutes",
}

// duration writes a duration in words: "1 day", "2.5 months".
func (w *Words) duration(x float64, unit working.Unit) string {
	// The plural must suit the number as it is shown: 1.04 days is "1 day".
	shown := roundTo(x, 1)
	return w.T(durationKeys[unit], A{"count": shown, "number": w.Number(shown, 1)})
}

// Days writes a whole number of days: "1 day", "14 days".
func (w *Words) Days(n int) string { return w.duration(float64(n), working.Day) }
