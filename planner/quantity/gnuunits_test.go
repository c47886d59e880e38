package quantity

import (
	"fmt"
	"math"
	"os"
	"os/exec"
	"strconv"
	"strings"
	"testing"
)

// inGNUUnits writes units of this package as GNU units knows them.
var inGNUUnits = map[string]string{
	`"`: "inch", "'": "foot", "in": "inch", "l": "liter", "dm³": "dm^3", "cm³": "cm^3", "m³": "m^3", "in³": "in^3", "ft³": "ft^3", "yd³": "yd^3",
	"dm3": "dm^3", "cm3": "cm^3", "m3": "m^3", "in3": "in^3", "ft3": "ft^3", "yd3": "yd^3", "hl": "hectoliter", "dl": "deciliter", "cl": "centiliter", "ml": "milliliter",
	"t": "tonne", "bu": "bushel", "bushels": "bushel", "cf": "ft^3", "cuft": "ft^3", "cc": "cm^3",
	"gal": "usgallon", "gallon": "usgallon", "gallons": "usgallon", "us gal": "usgallon", "us gallon": "usgallon", "us gallons": "usgallon", "u s gal": "usgallon", "liq gal": "usgallon",
	"cup": "uscup", "cups": "uscup", "tbsp": "ustablespoon", "tablespoon": "ustablespoon", "tablespoons": "ustablespoon",
	"tsp": "usteaspoon", "teaspoon": "usteaspoon", "teaspoons": "usteaspoon", "fl oz": "usfluidounce", "fluid ounce": "usfluidounce", "fluid ounces": "usfluidounce",
	"lbs": "lb", "cu m": "m^3",
}

// gnuName finds the name of a unit in GNU units by its parts.
func gnuName(name string) string {
	if gnu, ok := inGNUUnits[name]; ok {
		return gnu
	}
	first, last, two := strings.Cut(name, " ")
	if !two {
		return name
	}
	last = strings.TrimSuffix(last, "s")
	switch last {
	case "feet", "ft":
		last = "foot"
	case "inche", "inch", "in":
		last = "inch"
	case "qt":
		last = "quart"
	case "pt":
		last = "pint"
	case "gal":
		last = "gallon"
	case "yd":
		last = "yard"
	}
	switch first {
	case "cu", "cubic":
		return last + "^3"
	case "dry":
		return "dry" + last
	case "liq", "liquid":
		return "us" + last
	case "imp", "imperial":
		return "br" + last
	case "trade":
		return "3 usquart"
	}
	return name
}

// Every unit that can be typed has the value that GNU units gives it. GNU units is
// asked once for all of them; it has to be installed where CI is set.
func TestUnitsAgreeWithGNUUnits(t *testing.T) {
	program, err := exec.LookPath("units")
	if err != nil {
		if os.Getenv("CI") != "" {
			t.Fatal("GNU units is missing: install Debian's units")
		}
		t.Skip("GNU units is not installed (Debian's units): conversions are not compared with it")
	}
	base := map[Kind]string{KindLength: "m", KindVolume: "liter", KindMass: "kg"}
	type question struct {
		name string
		want float64
	}
	var asked []question
	var input strings.Builder
	for _, kind := range []Kind{KindLength, KindVolume, KindMass} {
		for name, value := range unitNames[kind] {
			fmt.Fprintf(&input, "%s\n%s\n", gnuName(name), base[kind])
			asked = append(asked, question{name, value})
		}
	}
	for _, rate := range []struct {
		from, to string
		want     float64
	}{
		{"lb/yd^3", "g/l", Pound.Grams() / CubicYard.Litres()},
		{"oz/usgallon", "g/l", Ounce.Grams() / Gallon.Litres()},
		{"oz/(100 usgallon)", "mg/l", Ounce.Grams() * 1000 / (100 * Gallon.Litres())},
		{"lb/ft^3", "kg/l", Pound.Kilograms() / CubicFoot.Litres()},
		{"lb/ft^2", "kg/m^2", Pound.Kilograms() / (Foot.Metres() * Foot.Metres())},
		{"ft^2", "m^2", Foot.Metres() * Foot.Metres()},
		{"ustablespoon/usgallon", "1", float64(Tablespoon / Gallon)},
	} {
		fmt.Fprintf(&input, "%s\n%s\n", rate.from, rate.to)
		asked = append(asked, question{rate.from, rate.want})
	}
	for _, f := range []float64{-40, 0, 32, 70, 98.6, 212} {
		fmt.Fprintf(&input, "tempF(%g)\ntempC\n", f)
		asked = append(asked, question{fmt.Sprintf("%g °F", f), float64(FromFahrenheit(f))})
	}
	run := exec.Command(program, "--terse", "--digits", "16", "--quiet")
	run.Env = append(os.Environ(), "UNITS_ENGLISH=US", "LC_ALL=C")
	run.Stdin = strings.NewReader(input.String())
	said, err := run.Output()
	if err != nil {
		t.Fatalf("GNU units: %v\n%s", err, said)
	}
	answers := strings.Split(strings.TrimSpace(string(said)), "\n")
	if len(answers) != len(asked) {
		t.Fatalf("GNU units gave %d answers to %d questions:\n%s", len(answers), len(asked), said)
	}
	for i, q := range asked {
		got, err := strconv.ParseFloat(strings.TrimSpace(answers[i]), 64)
		if err != nil {
			t.Errorf("%s: GNU units says %q", q.name, answers[i])
			continue
		}
		if math.Abs(got-q.want) > 1e-12*max(math.Abs(got), 1) {
			t.Errorf("%s: %.17g, GNU units %.17g", q.name, q.want, got)
		}
	}
}
