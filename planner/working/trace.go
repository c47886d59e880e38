package working

import "fourturn/planner/civil"

// Unit names the unit of a value in a trace. The surface converts it to the
// person's system and writes it out.
type Unit string

// The units that figures come in.
const (
	None              Unit = ""          // a pure number, a count
	Share             Unit = "share"     // 0 to 1, shown as per cent
	Metre             Unit = "m"         // length
	SquareMetre       Unit = "m2"        // area
	Litre             Unit = "L"         // volume of mix or water
	Kilogram          Unit = "kg"        // mass
	GramPerLitre      Unit = "g/L"       // rate in mix, strength in water, density (= kg/m³)
	MilligramPerLitre Unit = "mg/L"      // ppm in water
	Celsius           Unit = "degC"      // temperature
	Kelvin            Unit = "K"         // difference of temperatures
	Day               Unit = "d"         // duration
	Month             Unit = "month"     // duration as labels give it
	Week              Unit = "week"      // duration
	DayNumber         Unit = "date"      // a calendar date
	Money             Unit = "money"     // in the plan's currency
	KilogramPerM2     Unit = "kg/m2"     // floor load
	MillimetrePerDay  Unit = "mm/d"      // evapotranspiration
	MilliSiemensPerCM Unit = "mS/cm"     // electrical conductivity
	KilojoulePerMole  Unit = "kJ/mol"    // activation energy
	Minute            Unit = "min"       // labour
	KelvinPerKm       Unit = "K/km"      // lapse rate
	MegajoulePerM2Day Unit = "MJ/m2/d"   // radiation
	Hour              Unit = "h"         // day length
	DegreeDay         Unit = "degC d"    // heat sum
	DisplayDay        Unit = "display d" // display value summed over days
)

// Value is one number with its unit, or one date, or one word.
type Value struct {
	Number float64
	Unit   Unit
	Date   civil.Date // set for Unit DayNumber
	Text   string     // a name or a key; then Number and Unit are not used
}

// Number returns a value with a unit.
func Number(x float64, unit Unit) Value { return Value{Number: x, Unit: unit} }

// Date returns a date as a value.
func Date(d civil.Date) Value { return Value{Date: d, Unit: DayNumber} }

// Text returns a word as a value.
func Text(s string) Value { return Value{Text: s} }

// Input is one quantity that went into a formula.
type Input struct {
	Symbol string // as it stands in the formula, such as "V"
	Name   string // key of its name, such as "mix.settling"
	Value  Value
	Source Source
	From   *Trace // how it was itself worked out, or nil
}

// Trace is how a figure was worked out.
type Trace struct {
	Name    string  // key of the figure's name, such as "mix.fill"
	Formula string  // in symbols, such as "B = (V − R) × (1 + s)"
	Inputs  []Input // in the order of the formula
	Result  Value
	Source  Source   // of the formula
	Notes   []string // keys of remarks, such as limits of the method
}

// Soft reports whether the figure rests anywhere on a value that is not from a
// checked source.
func (t *Trace) Soft() bool {
	if t.Source.Soft() {
		return true
	}
	for _, in := range t.Inputs {
		if in.Source.Soft() || in.From != nil && in.From.Soft() {
			return true
		}
	}
	return false
}

// Beneath returns the trace with the working of the input of a name shown beneath it.
func (t Trace) Beneath(name string, from Trace) Trace {
	t.Inputs = append([]Input(nil), t.Inputs...)
	for i := range t.Inputs {
		if t.Inputs[i].Name == name {
			t.Inputs[i].From = &from
		}
	}
	return t
}
