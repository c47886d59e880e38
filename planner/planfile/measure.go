package planfile

import (
	"errors"
	"math"
	"strconv"
	"strings"

	"fourturn/planner/quantity"
	"fourturn/planner/working"
)

// measure is a kind of number in a plan file: how it is read, and how a value is
// written so that reading it gives exactly the same value again.
type measure struct {
	name    string // the last part of its text key, such as "length"
	unit    working.Unit
	shown   bool   // to be shown to a person as it is written
	example string // what a good value looks like
	parse   func(text string) (float64, error)
	metric  []unit // spellings to write with, favourite first; each reads back through parse
	us      []unit
}

// unit is one way to write a measure. from turns the inside value into the
// number to write; it is exact for one unit of
// every list.
type unit struct {
	suffix string
	from   func(float64) float64
	signed bool    // write a plus sign, for offsets
	below  float64 // from here on a larger unit reads better; 0 for no limit
}

func scaled(suffix string, scale float64) unit {
	return unit{suffix: suffix, from: func(x float64) float64 { return x / scale }}
}

var (
	grams       = unit{suffix: " g", from: func(kg float64) float64 { return kg / 0.001 }, below: 1}
	centimetres = unit{suffix: " cm", from: func(m float64) float64 { return m / 0.01 }, below: 3}
)

var (
	lengthMeasure = &measure{
		name: "length", unit: working.Metre, example: "35 cm",
		parse:  func(s string) (float64, error) { v, err := quantity.ParseLength(s, 0); return float64(v), err },
		metric: []unit{centimetres, scaled(" in", float64(quantity.Inch)), scaled(" m", 1), scaled(" mm", 0.001)},
		us:     []unit{scaled(" in", float64(quantity.Inch)), centimetres, scaled(" m", 1), scaled(" mm", 0.001)},
	}
	elevationMeasure = &measure{
		name: "length", unit: working.Metre, example: "250 m",
		parse:  lengthMeasure.parse,
		metric: []unit{scaled(" m", 1)},
		us:     []unit{scaled(" ft", float64(quantity.Foot)), scaled(" m", 1)},
	}
	volumeMeasure = &measure{
		name: "volume", unit: working.Litre, example: "50 L",
		parse:  func(s string) (float64, error) { v, err := quantity.ParseVolume(s, 0); return float64(v), err },
		metric: []unit{scaled(" L", 1)},
		us: []unit{
			scaled(" cu ft", float64(quantity.CubicFoot)), scaled(" dry qt", float64(quantity.DryQuart)),
			scaled(" gal", float64(quantity.Gallon)), scaled(" fl oz", float64(quantity.FluidOunce)), scaled(" L", 1),
		},
	}
	massMeasure = &measure{
		name: "mass", unit: working.Kilogram, example: "450 g",
		parse:  func(s string) (float64, error) { v, err := quantity.ParseMass(s, 0); return float64(v), err },
		metric: []unit{grams, scaled(" kg", 1)},
		us:     []unit{scaled(" lb", float64(quantity.Pound)), scaled(" oz", float64(quantity.Ounce)), grams, scaled(" kg", 1)},
	}
	temperatureMeasure = &measure{
		name: "temperature", unit: working.Celsius, example: "21 °C", parse: parseTemperature,
		metric: []unit{scaled(" °C", 1)},
		us: []unit{
			{suffix: " °F", from: func(c float64) float64 { return quantity.Temperature(c).Fahrenheit() }},
			scaled(" °C", 1),
		},
	}
	offsetMeasure = plain("offset", working.Kelvin, "+2 K", unit{suffix: " K", from: func(x float64) float64 { return x }, signed: true}, "K", "°C", "C")
	shareMeasure  = &measure{
		name: "share", unit: working.Share, example: "10 %", parse: parseShare,
		metric: []unit{scaled(" %", 0.01), scaled("", 1)},
		us:     []unit{scaled(" %", 0.01), scaled("", 1)},
	}
	lapseMeasure        = plain("lapse", working.KelvinPerKm, "6.5 K/km", scaled(" K/km", 1), "K/km", "°C/km")
	spreadMeasure       = plain("spread", working.Kelvin, "3.8 K", scaled(" K", 1), "K", "°C")
	latitudeMeasure     = degrees("latitude", "51.5° N", "N", "S")
	longitudeMeasure    = degrees("longitude", "0.13° W", "E", "W")
	monthsMeasure       = plain("months", working.Month, "3.5 months", scaled(" months", 1), "months", "month")
	daysMeasure         = plain("days", working.Day, "10 days", scaled(" days", 1), "days", "day")
	minutesMeasure      = plain("minutes", working.Minute, "20 min", scaled(" min", 1), "min", "minutes", "minute")
	hoursMeasure        = plain("hours", working.Hour, "8 h", scaled(" h", 1), "h", "hours", "hour")
	rateMeasure         = plain("rate", working.GramPerLitre, "4 g/L", scaled(" g/L", 1), "g/L", "kg/m3", "kg/m³")
	strengthMeasure     = plain("strength", working.MilligramPerLitre, "150 ppm", scaled(" ppm", 1), "ppm", "mg/L")
	countMeasure        = plain("count", working.None, "3", scaled("", 1), "")
	priceMeasure        = plain("price", working.Money, "12.50", scaled("", 1), "")
	weeksMeasure        = plain("weeks", working.Week, "2 weeks", scaled(" weeks", 1), "weeks", "week")
	energyMeasure       = plain("energy", working.KilojoulePerMole, "41.5 kJ/mol", scaled(" kJ/mol", 1), "kJ/mol")
	conductivityMeasure = plain("conductivity", working.MilliSiemensPerCM, "0.6 mS/cm", scaled(" mS/cm", 1), "mS/cm", "dS/m")
)

// plain is a measure with one unit in one or more spellings.
func plain(name string, in working.Unit, example string, write unit, spellings ...string) *measure {
	m := &measure{name: name, unit: in, example: example, metric: []unit{write}, us: []unit{write}}
	m.parse = func(s string) (float64, error) {
		x, rest, err := splitNumber(s)
		if err != nil {
			return 0, err
		}
		for _, spelling := range spellings {
			if rest == spelling {
				return x, nil
			}
		}
		return 0, unitError(s, rest)
	}
	return m
}

// degrees is a measure of a latitude or longitude: positive towards the first letter.
// Maps give bare numbers with a sign, which are read too.
func degrees(name, example, positive, negative string) *measure {
	write := []unit{scaled("° "+positive, 1), scaled("° "+negative, -1)}
	return &measure{
		name: name, shown: true, example: example, metric: write, us: write,
		parse: func(s string) (float64, error) {
			x, rest, err := splitNumber(s)
			letter := strings.TrimSpace(strings.TrimPrefix(rest, "°"))
			switch {
			case err != nil:
				return 0, err
			case letter == "":
				return x, nil
			case letter == positive && x >= 0:
				return x, nil
			case letter == negative && x >= 0:
				return -x, nil
			}
			return 0, unitError(s, rest)
		},
	}
}

func parseTemperature(s string) (float64, error) {
	if _, rest, err := splitNumber(s); err == nil && rest == "" {
		return 0, unitError(s, "")
	}
	v, err := quantity.ParseTemperature(s, quantity.Metric)
	return float64(v), err
}

// parseShare reads "10 %", or a bare number from 0 to 1.
func parseShare(s string) (float64, error) {
	x, rest, err := splitNumber(s)
	switch {
	case err != nil:
		return 0, err
	case rest == "%":
		return x / 100, nil
	case rest != "":
		return 0, unitError(s, rest)
	case math.Abs(x) > 1:
		return 0, unitError(s, "")
	}
	return x, nil
}

func splitNumber(s string) (float64, string, error) {
	s = strings.TrimSpace(s)
	end := 0
	for end < len(s) && strings.IndexByte("+-.,0123456789", s[end]) >= 0 {
		end++
	}
	if s == "" {
		return 0, "", &quantity.ParseError{Fault: quantity.FaultEmpty, Text: s}
	}
	const longest = 400 // digits; the smallest float64 has 326
	x, err := strconv.ParseFloat(strings.Replace(s[:min(end, longest)], ",", ".", 1), 64)
	if err != nil || end > longest {
		fault := quantity.FaultNotANumber
		if math.IsInf(x, 0) || end > longest {
			fault = quantity.FaultNotFinite
		}
		return 0, "", &quantity.ParseError{Fault: fault, Text: s}
	}
	return x, strings.TrimSpace(s[end:]), nil
}

func unitError(text, rest string) error {
	if rest == "" {
		return &quantity.ParseError{Fault: quantity.FaultNoUnit, Text: text}
	}
	return &quantity.ParseError{Fault: quantity.FaultUnknownUnit, Text: text, Unit: rest}
}

// format writes x so that parse reads exactly x again, with as few digits as any
// of the units allows: 0.3556 m was typed as "14 in", not as "35.56 cm".
func (m *measure) format(x float64, system quantity.System) string {
	units := m.metric
	if system == quantity.USCustomary {
		units = m.us
	}
	best, fewest := "", math.MaxInt
	for _, u := range units {
		text, ok := m.exact(x, u)
		if !ok {
			continue
		}
		digits := significantDigits(text)
		if u.below > 0 && math.Abs(x) >= u.below {
			digits++
		}
		if digits < fewest {
			best, fewest = text, digits
		}
	}
	if best == "" { // not a number, or one that Check refuses: only ever shown
		return strconv.FormatFloat(x, 'g', -1, 64)
	}
	return best
}

// exact writes x in a unit if some decimal number reads back as exactly x.
func (m *measure) exact(x float64, u unit) (string, bool) {
	y := u.from(x)
	rounded, _ := strconv.ParseFloat(strconv.FormatFloat(y, 'g', 12, 64), 64)
	for _, candidate := range [...]float64{rounded, y, math.Nextafter(y, math.Inf(1)), math.Nextafter(y, math.Inf(-1))} {
		if candidate == 0 {
			candidate = 0 // no minus sign on a zero
		}
		text := strconv.FormatFloat(candidate, 'f', -1, 64) + u.suffix
		if u.signed && candidate >= 0 {
			text = "+" + text
		}
		if back, err := m.parse(text); err == nil && back == x {
			return text, true
		}
	}
	return "", false
}

func significantDigits(text string) int {
	digits := make([]byte, 0, len(text))
	for i := 0; i < len(text) && strings.IndexByte("+-.0123456789", text[i]) >= 0; i++ {
		if text[i] >= '0' && text[i] <= '9' {
			digits = append(digits, text[i])
		}
	}
	return len(strings.Trim(string(digits), "0"))
}

// measureProblem turns a fault of reading into a problem for the person.
func measureProblem(m *measure, at *place, text string, err error) Problem {
	var fault *quantity.ParseError
	if !errors.As(err, &fault) {
		return problem("planfile.not_a_number", at, "text", text, "example", m.example)
	}
	switch fault.Fault {
	case quantity.FaultEmpty:
		return problem("planfile.empty", at)
	case quantity.FaultNoUnit:
		return problem("planfile.no_unit", at, "text", text, "example", m.example)
	case quantity.FaultUnknownUnit:
		return problem("planfile.unknown_unit", at, "text", text, "unit", strings.TrimSpace(fault.Unit), "example", m.example)
	case quantity.FaultAmbiguous:
		return problem("planfile.ambiguous_unit", at, "text", text, "unit", strings.TrimSpace(fault.Unit))
	case quantity.FaultNotFinite:
		return problem("planfile.too_large", at, "text", text)
	}
	return problem("planfile.not_a_number", at, "text", text, "example", m.example)
}
