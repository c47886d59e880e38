package quantity

import (
	"fmt"
	"math"
	"strings"
	"unicode"
	"unicode/utf8"
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
	FaultNotANumber  Fault = "not_a_number" // it does not begin with a number, or goes on with what is none
	FaultUnknownUnit Fault = "unknown_unit" // the unit is not one of this kind
	FaultNoUnit      Fault = "no_unit"      // a number alone, where a unit is needed
	FaultNotFinite   Fault = "not_finite"   // the number is too large to hold
	FaultAmbiguous   Fault = "ambiguous"    // "qt" alone: dry or liquid?
	FaultSeparators  Fault = "separators"   // "1,500": one and a half, or fifteen hundred?
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
	case FaultSeparators:
		return fmt.Sprintf("%s %q can be read in two ways; write it without a separator of thousands", e.Kind, e.Text)
	case FaultNotANumber:
	}
	return fmt.Sprintf("%s %q is not a number with a unit", e.Kind, e.Text)
}

// Reader reads measures as people of a language write numbers. The zero Reader is
// that of plan files and of anyone whose habits are not known.
type Reader struct {
	// Decimal is the sign before the decimals, '.' or ','; the other one then groups
	// thousands. Where it is 0 both are read as a decimal sign, and a comma before
	// three digits, as in "1,500", is refused.
	Decimal rune
}

// ParseLength reads "35 cm", "14 in", "3 ft 6 in" or 3'6". A number without a
// unit is taken in fallback, or refused where fallback is 0.
func ParseLength(s string, fallback Length) (Length, error) { return Reader{}.Length(s, fallback) }

// ParseVolume reads "12 L", "1.5 cu ft", "6 dry qt". A number without a unit is
// taken in fallback, or refused where fallback is 0. A bare "qt" or "pt" is
// refused: dry and liquid ones differ by 16 %.
func ParseVolume(s string, fallback Volume) (Volume, error) { return Reader{}.Volume(s, fallback) }

// ParseMass reads "450 g", "1 lb 4 oz". A number without a unit is taken in
// fallback, or refused where fallback is 0.
func ParseMass(s string, fallback Mass) (Mass, error) { return Reader{}.Mass(s, fallback) }

// ParseTemperature reads "-2.2 C", "28 °F". A number without a unit is taken in
// the system's unit.
func ParseTemperature(s string, system System) (Temperature, error) {
	return Reader{}.Temperature(s, system)
}

// Length reads a length as [ParseLength] does.
func (r Reader) Length(s string, fallback Length) (Length, error) {
	v, err := r.parse(KindLength, s, float64(fallback))
	return Length(v), err
}

// Volume reads a volume as [ParseVolume] does.
func (r Reader) Volume(s string, fallback Volume) (Volume, error) {
	v, err := r.parse(KindVolume, s, float64(fallback))
	return Volume(v), err
}

// Mass reads a mass as [ParseMass] does.
func (r Reader) Mass(s string, fallback Mass) (Mass, error) {
	v, err := r.parse(KindMass, s, float64(fallback))
	return Mass(v), err
}

// Temperature reads a temperature as [ParseTemperature] does.
func (r Reader) Temperature(s string, system System) (Temperature, error) {
	p := r.begin(KindTemperature, s)
	if p.rest == "" {
		return 0, p.fault(FaultEmpty)
	}
	negative := p.sign()
	x, err := p.number()
	if err != nil {
		return 0, err
	}
	if negative {
		x = -x
	}
	unit := tidy(p.rest)
	t := Temperature(x)
	switch strings.TrimSpace(strings.TrimPrefix(strings.TrimPrefix(unit, "°"), "deg")) {
	case "c", "celsius":
	case "f", "fahrenheit":
		t = FromFahrenheit(x)
	case "":
		if system == USCustomary {
			t = FromFahrenheit(x)
		}
	default:
		return 0, p.unitFault(FaultUnknownUnit, unit)
	}
	if math.IsInf(float64(t), 0) {
		return 0, p.fault(FaultNotFinite)
	}
	return t, nil
}

// Number reads a number without a unit, such as a count or a price, as a measure's
// number is read: "12.50", "1,234", "2 1/2". It returns false for anything else.
func (r Reader) Number(s string) (float64, bool) {
	p := r.begin("", s)
	negative := p.sign()
	x, err := p.number()
	if err != nil || strings.TrimSpace(p.rest) != "" {
		return 0, false
	}
	if negative {
		x = -x
	}
	return x, true
}

// measure is what is left to read of a typed measure.
type measure struct {
	reader Reader
	kind   Kind
	text   string // as typed
	rest   string
}

// spellings are other ways to type a sign that is understood.
var spellings = strings.NewReplacer(
	"\u2212", "-", "\u2013", "-", "\u2011", "-", // minus, en dash, no-break hyphen
	"''", `"`, "″", `"`, "”", `"`, "“", `"`, "′", "'", "’", "'", "‘", "'",
	"ℓ", "l", "º", "°", "℃", "°c", "℉", "°f", "⁄", "/",
)

func (r Reader) begin(kind Kind, s string) *measure {
	return &measure{reader: r, kind: kind, text: s, rest: strings.TrimFunc(spellings.Replace(s), unicode.IsSpace)}
}

func (p *measure) fault(f Fault) error { return &ParseError{Kind: p.kind, Fault: f, Text: p.text} }

func (p *measure) unitFault(f Fault, unit string) error {
	return &ParseError{Kind: p.kind, Fault: f, Text: p.text, Unit: unit}
}

// sign takes a sign off the head and reports whether it is a minus.
func (p *measure) sign() bool {
	negative := strings.HasPrefix(p.rest, "-")
	if negative || strings.HasPrefix(p.rest, "+") {
		p.rest = strings.TrimLeftFunc(p.rest[1:], unicode.IsSpace)
	}
	return negative
}

// parse sums the number-and-unit pairs of s, such as "3 ft 6 in", each unit smaller
// than the one before. A sign is that of the whole.
func (r Reader) parse(kind Kind, s string, fallback float64) (float64, error) {
	p := r.begin(kind, s)
	if p.rest == "" {
		return 0, p.fault(FaultEmpty)
	}
	negative := p.sign()
	if p.rest == "" {
		return 0, p.fault(FaultNotANumber)
	}
	total, last := 0.0, math.Inf(1)
	for afterFeet, first := false, true; p.rest != ""; first = false {
		x, err := p.number()
		if err != nil {
			return 0, err
		}
		name := p.unit()
		scale := fallback
		switch {
		case name == "" && p.rest == "" && afterFeet:
			scale = float64(Inch) // 3'6
		case name == "" && (fallback == 0 || !first || p.rest != ""):
			return 0, p.fault(FaultNoUnit)
		case name != "":
			if scale, err = p.scale(name); err != nil {
				return 0, err
			}
		}
		if scale >= last {
			return 0, p.fault(FaultNotANumber)
		}
		total += x * scale
		last, afterFeet = scale, name == "'"
	}
	if math.IsInf(total, 0) || math.IsNaN(total) {
		return 0, p.fault(FaultNotFinite)
	}
	if negative {
		total = -total
	}
	return total, nil
}

// unit takes the name of a unit off the head: up to the next number, where the 3 of
// "ft3" belongs to the name.
func (p *measure) unit() string {
	end := strings.IndexFunc(p.rest, startsNumber)
	switch {
	case end < 0:
		end = len(p.rest)
	case end > 0 && p.rest[end] == '3' && (isLetter(p.rest[end-1]) || p.rest[end-1] == '^'):
		// The digit belongs to the name unless more digits follow: "2 m 30 cm".
		after, _ := utf8.DecodeRuneInString(p.rest[end+1:])
		if end+1 == len(p.rest) || !startsNumber(after) && after != '.' && after != ',' && after != '/' {
			end++
		}
	}
	name := p.rest[:end]
	p.rest = strings.TrimLeftFunc(p.rest[end:], unicode.IsSpace)
	if name == "'-" { // the joint of 3'-6"
		name = "'"
	}
	return tidy(name)
}

func startsNumber(r rune) bool {
	_, vulgar := vulgarFractions[r]
	return r >= '0' && r <= '9' || vulgar
}

func isLetter(b byte) bool { return b >= 'a' && b <= 'z' || b >= 'A' && b <= 'Z' }

// tidy writes the name of a unit in small letters, without points and with single
// spaces.
func tidy(name string) string {
	name = strings.ReplaceAll(strings.ReplaceAll(name, ".", " "), "^", "")
	return strings.ToLower(strings.Join(strings.Fields(name), " "))
}

func (p *measure) scale(name string) (float64, error) {
	if scale, ok := unitNames[p.kind][name]; ok {
		return scale, nil
	}
	if p.kind == KindVolume && dryOrLiquid[name] {
		return 0, p.unitFault(FaultAmbiguous, name)
	}
	return 0, p.unitFault(FaultUnknownUnit, name)
}
