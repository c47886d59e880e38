package words

import (
	"errors"
	"testing"

	"fourturn/planner/civil"
	"fourturn/planner/finding"
	"fourturn/planner/quantity"
	"fourturn/planner/working"

	"github.com/google/go-cmp/cmp"
)

// TestValuesInBothSystems compares conversions with GNU units 2.22, such as
// "units -t '1 g/L' 'lb/yd^3'" = 1.6855549.
func TestValuesInBothSystems(t *testing.T) {
	w := New("en")
	for _, c := range []struct {
		name       string // of the figure; says whether litres are liquid
		value      working.Value
		metric, us string
	}{
		{"mix.fill", working.Number(38.2, working.Litre), "38.2 L", "1.35 cu ft"},
		{"mix.fill", working.Number(12, working.Litre), "12 L", "10.9 dry qt"},
		{"nutrition.can", working.Number(5, working.Litre), "5 L", "1.32 gal"},
		{"water.daily_use", working.Number(0.2, working.Litre), "200 mL", "6.8 fl oz"},
		{"mix.weight", working.Number(31, working.Kilogram), "31 kg", "68.3 lb"},
		{"vessel.depth", working.Number(0.42, working.Metre), "42 cm", "16.5 in"},
		{"climate.elevation", working.Number(12, working.Metre), "12 m", "39.4 ft"},
		{"climate.elevation", working.Number(1234, working.Metre), "1,234 m", "4,049 ft"},
		{"nutrition.rate", working.Number(1, working.GramPerLitre), "1 g/L", "1.69 lb/cu yd"},
		{"nutrition.solution", working.Number(1, working.GramPerLitre), "1 g/L", "0.134 oz/gal"},
		{"nutrition.strength", working.Number(150, working.MilligramPerLitre), "150 mg/L", "150 ppm"},
		{"mix.floor", working.Number(100, working.KilogramPerM2), "100 kg/m²", "20.5 lb/sq ft"},
		{"water.et0", working.Number(5, working.MillimetrePerDay), "5 mm/d", "0.197 in/d"},
		{"climate.lapse", working.Number(6.5, working.KelvinPerKm), "6.5 °C/km", "3.57 °F/1000 ft"},
		{"arrange.area", working.Number(0.5, working.SquareMetre), "0.5 m²", "5.38 sq ft"},
		{"climate.min", working.Number(-40, working.Celsius), "-40 °C", "-40 °F"},
		{"climate.offset", working.Number(-2, working.Kelvin), "-2 °C", "-3.6 °F"},
		{"mix.settling", working.Number(0.15, working.Share), "15%", "15%"},
		{"x.y", working.Number(1, working.Day), "1 day", "1 day"},
		{"x.y", working.Number(1.04, working.Day), "1 day", "1 day"},
		{"x.y", working.Number(2.5, working.Month), "2.5 months", "2.5 months"},
		{"x.y", working.Number(1, working.DisplayDay), "1 display day", "1 display day"},
		{"x.y", working.Date(civil.MustParse("2028-02-29")), "29 Feb 2028", "29 Feb 2028"},
		{"x.y", working.Text("south wall"), "south wall", "south wall"},
		{"x.y", working.Text("words.kind.mass"), "weight", "weight"},
		{"x.y", working.Number(nan(), working.Litre), "– L", "– dry qt"},
	} {
		if got := w.Named(c.name, c.value, quantity.Metric); got != c.metric {
			t.Errorf("%s %v is %q in metric units, want %q", c.name, c.value, got, c.metric)
		}
		if got := w.Named(c.name, c.value, quantity.USCustomary); got != c.us {
			t.Errorf("%s %v is %q in US units, want %q", c.name, c.value, got, c.us)
		}
	}
}

func TestEveryUnitHasAForm(t *testing.T) {
	units := []working.Unit{
		working.None, working.Share, working.Metre, working.SquareMetre, working.Litre, working.Kilogram,
		working.GramPerLitre, working.MilligramPerLitre, working.Celsius, working.Kelvin, working.Day,
		working.Month, working.Week, working.Money, working.KilogramPerM2, working.MillimetrePerDay,
		working.MilliSiemensPerCM, working.KilojoulePerMole, working.Minute, working.KelvinPerKm,
		working.MegajoulePerM2Day, working.Hour, working.DegreeDay, working.DisplayDay,
	}
	w := New("en")
	for _, unit := range units {
		for _, s := range []quantity.System{quantity.Metric, quantity.USCustomary} {
			if got := w.Value(working.Number(7, unit), s); got == "" {
				t.Errorf("%q is written as nothing", unit)
			}
		}
	}
}

func TestTraceShowsTheWorkingOfItsInputs(t *testing.T) {
	// The names are those of a made-up figure; a key without a text shows itself.
	inner := working.Trace{
		Name: "words.kind.volume", Formula: "V = A × h",
		Inputs: []working.Input{{Symbol: "h", Name: "words.kind.length", Value: working.Number(0.3, working.Metre), Source: working.Source{Status: working.Entered}}},
		Result: working.Number(12, working.Litre), Source: working.Source{Status: working.Definition},
	}
	trace := working.Trace{
		Name: "words.kind.mass", Formula: "m = V × ρ",
		Inputs: []working.Input{
			{Symbol: "V", Name: "words.kind.volume", Value: inner.Result, From: &inner},
			{Symbol: "ρ", Name: "words.kind.density", Value: working.Number(500, working.GramPerLitre), Source: working.Source{Status: working.Memory, Cite: "a handbook"}},
		},
		Result: working.Number(6, working.Kilogram), Source: working.Source{Status: working.Definition},
		Notes: []string{"words.list"},
	}
	want := []Line{
		{Kind: FigureLine, Text: "weight", Value: "6 kg", Soft: true},
		{Kind: FormulaLine, Text: "m = V × ρ", Source: "by definition"},
		{Kind: InputLine, Symbol: "V", Text: "volume", Value: "12 L"},
		{Kind: FormulaLine, Depth: 1, Text: "V = A × h", Source: "by definition"},
		{Kind: InputLine, Depth: 1, Symbol: "h", Text: "length", Value: "30 cm", Source: "entered by you"},
		{Kind: InputLine, Symbol: "ρ", Text: "⟦words.kind.density⟧", Value: "500 g/L", Source: "from memory, not checked: a handbook", Soft: true},
		{Kind: NoteLine, Text: "⟦items⟧ and ⟦last⟧"},
	}
	if diff := cmp.Diff(want, New("en").Trace(trace, quantity.Metric)); diff != "" {
		t.Error(diff)
	}
}

func TestFindingTakesItsNumbersAndPlural(t *testing.T) {
	all := map[string]catalogue{"en": {
		"mix.short#one": "{pot} lacks {volume}, {count} bag", "mix.short#other": "{pot} lacks {volume}, {count} bags",
	}}
	w := newWords(all, "en")
	f := finding.Finding{Code: "mix.short", Severity: finding.Warning, Where: finding.Where{"pots", "trough"}, Args: []finding.Arg{
		{Name: "pot", Value: working.Text("Trough")},
		{Name: "volume", Value: working.Number(20, working.Litre)},
		{Name: "count", Value: working.Number(1, working.None)},
	}}
	if got, want := w.Finding(f, quantity.USCustomary), "Trough lacks 18.2 dry qt, 1 bag"; got != want {
		t.Errorf("got %q, want %q", got, want)
	}
	if got, want := w.Place(f.Where), "pots › trough"; got != want {
		t.Errorf("got %q, want %q", got, want)
	}
	if got, want := New("en").Severity(finding.Caution), "caution"; got != want {
		t.Errorf("got %q, want %q", got, want)
	}
}

func TestRefusalsNameWhatWasTyped(t *testing.T) {
	w := New("en")
	for text, want := range map[string]string{
		"":          "fill in a volume",
		"6":         "“6” needs a unit",
		"6 qt":      "“6 qt”: qt can be dry or liquid; write “dry qt” or “liq qt”",
		"6 furlong": "“furlong” is not a unit of volume",
		"six":       "“six” does not begin with a number",
	} {
		_, err := quantity.ParseVolume(text, 0)
		var fault *quantity.ParseError
		if !errors.As(err, &fault) {
			t.Fatalf("%q was read", text)
		}
		if got := w.Refusal(fault); got != want {
			t.Errorf("%q is refused with %q, want %q", text, got, want)
		}
	}
}
