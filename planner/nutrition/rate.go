package nutrition

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"fourturn/planner/quantity"
)

// RateFault says what is wrong with a rate that was typed.
type RateFault string

// The faults of a typed rate.
const (
	RateShape  RateFault = "shape"  // not a dose per volume, such as "1/2 tbsp/gal"
	RateDose   RateFault = "dose"   // the dose is not a mass or a number of spoons
	RateVolume RateFault = "volume" // what follows "per" is not a volume
	RateRange  RateFault = "range"  // below zero, or too large to hold
)

// Key returns the key of the fault's words.
func (f RateFault) Key() string { return "nutrition.fault.rate_" + string(f) }

// RateError reports a rate of a label that cannot be read.
type RateError struct {
	Fault RateFault
	Text  string // what was typed
	Part  string // the part at fault
}

// Error describes the fault for a log or a file error.
func (e *RateError) Error() string {
	switch e.Fault {
	case RateDose:
		return fmt.Sprintf("rate %q: %q is not a mass or a number of spoons", e.Text, e.Part)
	case RateVolume:
		return fmt.Sprintf("rate %q: %q is not a volume", e.Text, e.Part)
	case RateRange:
		return fmt.Sprintf("rate %q is below zero or too large", e.Text)
	case RateShape:
	}
	return fmt.Sprintf("rate %q is not a dose per volume, such as \"1/2 tbsp/gal\" or \"3.5 g/L\"", e.Text)
}

// spoonsInTablespoon are the spoons that labels use, in tablespoons.
var spoonsInTablespoon = map[string]float64{
	"tbsp": 1, "tablespoon": 1, "tablespoons": 1, "tbs": 1,
	"tsp": 1.0 / 3, "teaspoon": 1.0 / 3, "teaspoons": 1.0 / 3,
	"cup": 16, "cups": 16,
}

// ParseRate reads the rate of a label in its own words and returns it in grams per
// litre: "5.9 lb/yd3", "3.5 kg/m3", "1/2 tbsp per gal", "6 g/L". A tablespoon of
// the product weighs tablespoon. A gallon is the US liquid gallon.
func ParseRate(s string, tablespoon quantity.Mass) (Concentration, error) {
	text := strings.ReplaceAll(strings.ToLower(strings.TrimSpace(s)), " per ", "/")
	cut := strings.LastIndexByte(text, '/')
	if cut < 0 {
		return 0, &RateError{Fault: RateShape, Text: s}
	}
	dose, per := strings.TrimSpace(text[:cut]), strings.TrimSpace(text[cut+1:])
	if dose == "" || per == "" {
		return 0, &RateError{Fault: RateShape, Text: s}
	}
	mass, err := parseDose(dose, tablespoon)
	if err != nil {
		return 0, &RateError{Fault: RateDose, Text: s, Part: dose}
	}
	if per[0] < '0' || per[0] > '9' {
		per = "1 " + per
	}
	volume, err := quantity.ParseVolume(per, 0)
	if err != nil {
		return 0, &RateError{Fault: RateVolume, Text: s, Part: per}
	}
	rate := mass.Grams() / volume.Litres()
	if !(volume > 0) || !(rate >= 0) || math.IsInf(rate, 0) {
		return 0, &RateError{Fault: RateRange, Text: s}
	}
	return Concentration(rate), nil
}

// parseDose reads "1/2 tbsp", "1 1/2 lb", "250 g".
func parseDose(s string, tablespoon quantity.Mass) (quantity.Mass, error) {
	amount, unit, err := splitAmount(s)
	if err != nil {
		return 0, err
	}
	if spoons, ok := spoonsInTablespoon[strings.TrimSuffix(strings.TrimPrefix(unit, "level "), ".")]; ok {
		return tablespoon * quantity.Mass(amount*spoons), nil
	}
	one, err := quantity.ParseMass("1 "+unit, 0)
	return one * quantity.Mass(amount), err
}

var vulgarFractions = strings.NewReplacer("½", " 1/2", "¼", " 1/4", "¾", " 3/4", "⅓", " 1/3", "⅔", " 2/3")

// splitAmount takes the number at the head of s, which may be "2", "1/2" or "1 1/2".
func splitAmount(s string) (amount float64, unit string, err error) {
	s = strings.TrimSpace(vulgarFractions.Replace(s))
	end := 0
	for end < len(s) && strings.IndexByte("0123456789.,/ ", s[end]) >= 0 {
		end++
	}
	fields := strings.Fields(s[:end])
	if len(fields) == 0 || len(fields) > 2 {
		return 0, "", strconv.ErrSyntax
	}
	for i, field := range fields {
		top, bottom, fraction := strings.Cut(field, "/")
		if i == 1 && !fraction {
			return 0, "", strconv.ErrSyntax
		}
		x, err := strconv.ParseFloat(strings.Replace(top, ",", ".", 1), 64)
		if err != nil {
			return 0, "", err
		}
		if fraction {
			below, err := strconv.ParseFloat(bottom, 64)
			if err != nil || below == 0 {
				return 0, "", strconv.ErrSyntax
			}
			x /= below
		}
		amount += x
	}
	return amount, strings.TrimSpace(s[end:]), nil
}
