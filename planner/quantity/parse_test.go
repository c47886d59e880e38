package quantity_test

import (
	"errors"
	"math"
	"strconv"
	"testing"

	"pgregory.net/rapid"

	"fourturn/planner/quantity"
)

func close(a, b float64) bool {
	return a == b || math.Abs(a-b) <= 1e-12*max(math.Abs(a), math.Abs(b))
}

func TestLengthsAsPeopleTypeThem(t *testing.T) {
	const in, ft, cm = float64(quantity.Inch), float64(quantity.Foot), 0.01
	for text, want := range map[string]float64{
		"35 cm": 35 * cm, "35cm": 35 * cm, " 35  CM ": 35 * cm, "35.5 cm": 35.5 * cm, "35,5 cm": 35.5 * cm, ".5 m": 0.5, "5. m": 5,
		"14 in": 14 * in, "14 In.": 14 * in, `14"`: 14 * in, "14″": 14 * in, "14”": 14 * in, "14''": 14 * in,
		"3 ft 6 in": 42 * in, `3'6"`: 42 * in, `3' 6"`: 42 * in, `3′ 6″`: 42 * in, `3’6”`: 42 * in, `3'-6"`: 42 * in, "3'6": 42 * in, "3ft6in": 42 * in,
		"1/2 in": in / 2, "6 1/2 in": 6.5 * in, "6-1/2 in": 6.5 * in, "6½ in": 6.5 * in, "6 ½ in": 6.5 * in, "½ in": in / 2, "3' 6 1/2\"": 42.5 * in, "1⁄4 in": in / 4,
		"2 m 30 cm": 2.3, "2m30cm": 2.3, "1 m 5 cm 3 mm": 1.053, "1 yd 1 ft": 4 * ft,
		"-3 ft 6 in": -42 * in, "\u22125 cm": -5 * cm, "+5 cm": 5 * cm, "- 5 cm": -5 * cm,
		"12": 12 * cm, "12,5": 12.5 * cm, "0": 0, "0 m": 0, "1\u00a0234 mm": 1.234, "1\u202f234,5 mm": 1.2345, "35\u00a0cm": 35 * cm,
		"1,234,567 mm": 1234.567, "1,234.5 mm": 1.2345, "1.234,5 mm": 1.2345, "1.234 m": 1.234, "0,500 m": 0.5, "1234,567 m": 1234.567,
	} {
		got, err := quantity.ParseLength(text, quantity.Centimetre)
		if err != nil || !close(float64(got), want) {
			t.Errorf("%q is %v m, %v; want %v", text, float64(got), err, want)
		}
	}
}

func TestVolumesAndMassesAsPeopleTypeThem(t *testing.T) {
	for text, want := range map[string]quantity.Volume{
		"12 L": 12, "1,5 L": 1.5, "12 l": 12, "12 litres": 12, "750 mL": 0.75, "7 dl": 0.7, "1 L 250 mL": 1.25, "0.5 m3": 500, "0.5 m³": 500, "2 cubic meters": 2000,
		"1.5 ft3": 1.5 * quantity.CubicFoot, "1.5 ft^3": 1.5 * quantity.CubicFoot, "1.5 cu ft": 1.5 * quantity.CubicFoot, "1.5 Cu. Ft.": 1.5 * quantity.CubicFoot,
		"1½ cubic feet": 1.5 * quantity.CubicFoot, "1 yd3 3 ft3": 30 * quantity.CubicFoot, "67.200625 cu in": quantity.DryQuart, "67.200625 in³": quantity.DryQuart,
		"6 dry qt": 6 * quantity.DryQuart, "6 liq qt": 6 * quantity.LiquidQuart, "6 liquid quarts": 6 * quantity.LiquidQuart, "1 bushel": 32 * quantity.DryQuart,
		"2 gal": 2 * quantity.Gallon, "2 U.S. gal": 2 * quantity.Gallon, "2 trade gal": 6 * quantity.LiquidQuart, "1 imp gal": 4.54609,
		"2 gal 1 liq qt": 9 * quantity.LiquidQuart, "1/2 tbsp": quantity.Tablespoon / 2, "2 tbsp 1 tsp": 7 * quantity.Teaspoon, "3 fl. oz.": 3 * quantity.FluidOunce,
	} {
		got, err := quantity.ParseVolume(text, 0)
		if err != nil || !close(float64(got), float64(want)) {
			t.Errorf("%q is %v L, %v; want %v", text, float64(got), err, float64(want))
		}
	}
	for text, want := range map[string]quantity.Mass{
		"450 g": 0.45, "1 lb 4 oz": 20 * quantity.Ounce, "1.5 lbs": 1.5 * quantity.Pound, "2 kg 50 g": 2.05, "1 t": 1000, "12 mg": 12e-6,
	} {
		got, err := quantity.ParseMass(text, 0)
		if err != nil || !close(float64(got), float64(want)) {
			t.Errorf("%q is %v kg, %v; want %v", text, float64(got), err, float64(want))
		}
	}
	for text, want := range map[string]float64{
		"-2.2 C": -2.2, "28 °F": -20.0 / 9, "28F": -20.0 / 9, "28° F": -20.0 / 9, "\u22125 ℃": -5, "70 deg F": 190.0 / 9, "21": 21, "20,5 °C": 20.5,
	} {
		got, err := quantity.ParseTemperature(text, quantity.Metric)
		if err != nil || math.Abs(float64(got)-want) > 1e-12 {
			t.Errorf("%q is %v °C, %v; want %v", text, float64(got), err, want)
		}
	}
	if got, err := quantity.ParseTemperature("50", quantity.USCustomary); err != nil || math.Abs(float64(got)-10) > 1e-12 {
		t.Errorf("50 in US units is %v °C, %v", got, err)
	}
}

func TestWhatIsRefused(t *testing.T) {
	length := func(s string) error { _, err := quantity.ParseLength(s, 0); return err }
	volume := func(s string) error { _, err := quantity.ParseVolume(s, 0); return err }
	mass := func(s string) error { _, err := quantity.ParseMass(s, quantity.Kilogram); return err }
	degrees := func(s string) error { _, err := quantity.ParseTemperature(s, quantity.Metric); return err }
	for _, c := range []struct {
		parse func(string) error
		text  string
		fault quantity.Fault
		unit  string
	}{
		{length, "", quantity.FaultEmpty, ""},
		{length, " \u00a0\t", quantity.FaultEmpty, ""},
		{length, "six", quantity.FaultNotANumber, ""},
		{length, "cm", quantity.FaultNotANumber, ""},
		{length, "-", quantity.FaultNotANumber, ""},
		{length, "--5 cm", quantity.FaultNotANumber, ""},
		{length, ".", quantity.FaultNotANumber, ""},
		{length, "1..5 cm", quantity.FaultNotANumber, ""},
		{length, "1,23,45 cm", quantity.FaultNotANumber, ""},
		{length, "1/0 in", quantity.FaultNotANumber, ""},
		{length, "Inf cm", quantity.FaultNotANumber, ""},
		{length, "NaN", quantity.FaultNotANumber, ""},
		{length, "0x1p3 cm", quantity.FaultUnknownUnit, "x"},
		{length, "1e3 cm", quantity.FaultUnknownUnit, "e3"},
		{length, "1e400", quantity.FaultUnknownUnit, "e"},
		{length, "1e400 cm", quantity.FaultUnknownUnit, "e"},
		{length, "35", quantity.FaultNoUnit, ""},
		{length, "3 ft 6", quantity.FaultNoUnit, ""},
		{length, "3 6 in", quantity.FaultNoUnit, ""},
		{length, "35 furlongs", quantity.FaultUnknownUnit, "furlongs"},
		{length, "2 m3", quantity.FaultUnknownUnit, "m3"},
		{length, "2 ft -6 in", quantity.FaultUnknownUnit, "ft -"},
		{length, "10-20 cm", quantity.FaultUnknownUnit, "-"},
		{length, "10 x 20 cm", quantity.FaultUnknownUnit, "x"},
		{length, "6 in 3 ft", quantity.FaultNotANumber, ""}, // the larger unit comes first
		{length, "14 in 10 in", quantity.FaultNotANumber, ""},
		{length, "1,500 mm", quantity.FaultSeparators, ""},
		{length, "12,345 mm", quantity.FaultSeparators, ""},
		{volume, "6 qt", quantity.FaultAmbiguous, "qt"},
		{volume, "6 Quarts", quantity.FaultAmbiguous, "quarts"},
		{volume, "6 pt.", quantity.FaultAmbiguous, "pt"},
		{volume, "6 oz", quantity.FaultUnknownUnit, "oz"},
		{volume, "6 kg", quantity.FaultUnknownUnit, "kg"},
		{mass, "6 fl oz", quantity.FaultUnknownUnit, "fl oz"},
		{mass, "3'6", quantity.FaultUnknownUnit, "'"},
		{mass, "1" + zeros(390) + " t", quantity.FaultNotFinite, ""},
		{mass, "1" + zeros(500) + " g", quantity.FaultNotFinite, ""},
		{degrees, "", quantity.FaultEmpty, ""},
		{degrees, "warm", quantity.FaultNotANumber, ""},
		{degrees, "20 K", quantity.FaultUnknownUnit, "k"},
		{degrees, "1" + zeros(500), quantity.FaultNotFinite, ""},
	} {
		err := c.parse(c.text)
		var fault *quantity.ParseError
		if !errors.As(err, &fault) {
			t.Errorf("%.40q is read: %v", c.text, err)
			continue
		}
		if fault.Fault != c.fault || fault.Unit != c.unit || fault.Text != c.text || fault.Error() == "" {
			t.Errorf("%.40q: %s, unit %q, text %.40q; want %s, unit %q", c.text, fault.Fault, fault.Unit, fault.Text, c.fault, c.unit)
		}
	}
}

func zeros(n int) string {
	b := make([]byte, n)
	for i := range b {
		b[i] = '0'
	}
	return string(b)
}

// A person whose habits are known is read by them.
func TestReaderOfALanguage(t *testing.T) {
	english, german := quantity.Reader{Decimal: '.'}, quantity.Reader{Decimal: ','}
	for _, c := range []struct {
		reader quantity.Reader
		text   string
		want   quantity.Volume
	}{
		{english, "1,234 L", 1234},
		{english, "1,234.5 L", 1234.5},
		{english, "1.234 L", 1.234},
		{english, "1,5 L", 1.5},
		{german, "1.234 L", 1234},
		{german, "1.234,5 L", 1234.5},
		{german, "1,234 L", 1.234},
		{german, "1.5 L", 1.5},
		{german, "1\u00a0234,5 L", 1234.5},
	} {
		if got, err := c.reader.Volume(c.text, 0); err != nil || !close(float64(got), float64(c.want)) {
			t.Errorf("%q with decimal %q is %v, %v; want %v", c.text, c.reader.Decimal, got, err, c.want)
		}
	}
}

// What is written for a person reads back as what was written, to the digits shown.
func TestFormatReadsBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		x := rapid.Float64Range(-1e5, 1e5).Draw(t, "x")
		if rapid.Bool().Draw(t, "small") {
			x /= 1e4
		}
		system := rapid.SampledFrom([]quantity.System{quantity.Metric, quantity.USCustomary}).Draw(t, "system")
		// lengths to a tenth of an inch or centimetre; the others to three digits, which
		// is at worst half of one in a hundred, or to a millionth of a unit
		check := func(text string, back float64, err error, absolute float64) {
			if err != nil || math.Abs(back-x) > max(0.00501*math.Abs(x), absolute) {
				t.Fatalf("%v is written %q and read as %v, %v", x, text, back, err)
			}
		}
		const tenthOfInch, millionth = 0.0501 * float64(quantity.Inch), 2e-6
		text := quantity.Length(x).Format(system)
		l, err := quantity.ParseLength(text, 0)
		check(text, float64(l), err, tenthOfInch)
		text = quantity.Volume(x).Format(system)
		v, err := quantity.ParseVolume(text, 0)
		check(text, float64(v), err, millionth)
		text = quantity.Volume(x).FormatWater(system)
		v, err = quantity.ParseVolume(text, 0)
		if math.Abs(x) > 1 { // below, two digits are written
			check(text, float64(v), err, millionth)
		}
		text = quantity.Mass(x).Format(system)
		if m, err := quantity.ParseMass(text, 0); math.Abs(x) > 0.5 {
			check(text, float64(m), err, millionth)
		}
		text = quantity.Temperature(x).Format(system)
		if d, err := quantity.ParseTemperature(text, system); err != nil || math.Abs(float64(d)-x) > 0.3 {
			t.Fatalf("%v is written %q and read as %v, %v", x, text, d, err)
		}
	})
}

func TestFormat(t *testing.T) {
	for got, want := range map[string]string{
		quantity.Length(0.3556).Format(quantity.USCustomary):                        "14 in",
		quantity.Length(0.3556).Format(quantity.Metric):                             "35.6 cm",
		quantity.Length(-0.0001).Format(quantity.Metric):                            "0 cm",
		quantity.Volume(38.25).Format(quantity.Metric):                              "38.3 L",
		quantity.Volume(1234.4).Format(quantity.Metric):                             "1234 L",
		quantity.CubicFoot.Format(quantity.USCustomary):                             "1 cu ft",
		(6 * quantity.DryQuart).Format(quantity.USCustomary):                        "6 dry qt",
		quantity.Volume(0.9996).FormatWater(quantity.Metric):                        "1 L",
		quantity.Volume(0.25).FormatWater(quantity.Metric):                          "250 mL",
		(2 * quantity.Gallon).FormatWater(quantity.USCustomary):                     "2 gal",
		(8 * quantity.FluidOunce).FormatWater(quantity.USCustomary):                 "8 fl oz",
		quantity.Mass(0.99996).Format(quantity.Metric):                              "1 kg",
		quantity.Mass(0.0523).Format(quantity.Metric):                               "52.3 g",
		(15.6 * quantity.Ounce).Format(quantity.USCustomary):                        "15.6 oz",
		quantity.Pound.Format(quantity.USCustomary):                                 "1 lb",
		quantity.Mass(1e-300).Format(quantity.Metric):                               "0 g",
		quantity.Volume(1e-320).Format(quantity.Metric):                             "0 L",
		quantity.Length(5e-324).Format(quantity.USCustomary):                        "0 in",
		quantity.Temperature(-0.04).Format(quantity.Metric):                         "0 °C",
		quantity.Temperature(21).Format(quantity.USCustomary):                       "70 °F",
		strconv.Itoa(len(quantity.Length(1e300).Format(quantity.Metric))) + " long": "306 long",
	} {
		if got != want {
			t.Errorf("written %q, want %q", got, want)
		}
	}
}

func FuzzParse(f *testing.F) {
	for _, seed := range []string{"3 ft 6 in", `3'-6 1/2"`, "1.5 ft3", "1,5 L", "1,500 L", "1e400", "½ cu ft", "1\u202f234,5 mm", "−5 °C", "1 lb 4 oz", "6 qt", "1..2", "9/0 g", "'6\"", "\xff1 L"} {
		f.Add(seed, uint8(0))
		f.Add(seed, uint8(1))
	}
	f.Fuzz(func(t *testing.T, s string, habit uint8) {
		r := quantity.Reader{Decimal: []rune{0, '.', ','}[habit%3]}
		length, errL := r.Length(s, quantity.Centimetre)
		volume, errV := r.Volume(s, quantity.Litre)
		mass, errM := r.Mass(s, 0)
		degrees, errT := r.Temperature(s, quantity.USCustomary)
		for _, one := range []struct {
			x   float64
			err error
		}{{float64(length), errL}, {float64(volume), errV}, {float64(mass), errM}, {float64(degrees), errT}} {
			if math.IsNaN(one.x) || math.IsInf(one.x, 0) {
				t.Fatalf("%q is %v", s, one.x)
			}
			var fault *quantity.ParseError
			if one.err == nil {
				continue
			}
			if !errors.As(one.err, &fault) || fault.Text != s || one.x != 0 {
				t.Fatalf("%q: %v with value %v", s, one.err, one.x)
			}
		}
		if errL == nil && errV == nil && length != 0 && close(float64(length)*100, float64(volume)) {
			return // a bare number, in centimetres or in litres
		}
		if errL == nil && errV == nil && length != 0 {
			t.Fatalf("%q is both a length and a volume", s)
		}
	})
}

func TestNumbersWithoutUnits(t *testing.T) {
	for typed, want := range map[string]float64{"12.50": 12.5, "1,234": 1234, " 7 ": 7, "2 1/2": 2.5, "-3": -3, "0": 0} {
		if got, ok := (quantity.Reader{Decimal: '.'}).Number(typed); !ok || got != want {
			t.Errorf("%q is read as %v, %v", typed, got, ok)
		}
	}
	if got, ok := (quantity.Reader{Decimal: ','}).Number("12,50"); !ok || got != 12.5 {
		t.Errorf("12,50 is read as %v, %v", got, ok)
	}
	for _, typed := range []string{"", "much", "12 L", "1e3", "12 %", "1..2", "--1", "∞"} {
		if got, ok := (quantity.Reader{}).Number(typed); ok {
			t.Errorf("%q is read as %v", typed, got)
		}
	}
}
