package plants_test

import (
	"errors"
	"fmt"
	"slices"
	"strings"
	"testing"

	"fourturn/plants"
)

// whole is a plant with everything that must be there; tests change one line.
const whole = `plants:
  - id: garden-aster
    names: [Garden aster]
    botanical: [Callistephus chinensis]
    family: Asteraceae
    kind: warm_annual
    seasons: [summer]
    role: filler
    light: [sun]
    water: medium
    feeder: medium
    height: 20-60 cm
    spread: 30 cm
    spacing: 22 cm
    frost_class: tender
    lowest_in_pot: 0 C
    planting_out_night: 8 C
    heat_limit: 32 C
    temperature_class: cold_intermediate
    base_temperature: 6 C
    optimum_temperature: 24 C
    toxicity: {dogs: not_listed, cats: not_listed, people: not_listed}
`

// unmark takes the mark ¶ out of a text and returns where it stood.
func unmark(t *testing.T, text string) (clean string, line, column int) {
	t.Helper()
	before, after, ok := strings.Cut(text, "¶")
	if !ok {
		t.Fatalf("no mark in %q", text)
	}
	line = strings.Count(before, "\n") + 1
	column = len([]rune(before[strings.LastIndexByte(before, '\n')+1:])) + 1
	return before + after, line, column
}

// changed is whole with one piece of text replaced.
func changed(t *testing.T, old, replacement string) string {
	t.Helper()
	return replaceOnce(t, whole, old, replacement)
}

func replaceOnce(t *testing.T, text, old, replacement string) string {
	t.Helper()
	if strings.Count(text, old) != 1 {
		t.Fatalf("%q does not stand once in the plant", old)
	}
	return strings.Replace(text, old, replacement, 1)
}

func TestWholePlantIsRead(t *testing.T) {
	_, book, err := plants.ReadOwn("own.yaml", []byte(whole), builtin(t))
	if err != nil {
		t.Fatal(err)
	}
	if p, ok := book.Plant("garden-aster"); !ok || p.Spacing.Centimetres() != 22 || p.Group != "" {
		t.Errorf("read as %+v", p)
	}
	if got, want := len(book.Plants()), len(builtin(t).Plants())+1; got != want {
		t.Errorf("%d plants, want %d", got, want)
	}
}

// TestFaultsNameTheirPlace: each row puts one fault into the plant; the mark
// stands where the loader must point.
func TestFaultsNameTheirPlace(t *testing.T) {
	for _, c := range []struct{ code, old, replacement string }{
		{"unknown_key", "water: medium", "¶watter: medium\n    water: medium"},
		{"key_twice", "water: medium", "water: medium\n    ¶water: low"},
		{"unknown_word", "water: medium", "water: ¶some"},
		{"empty", "water: medium", "water: ¶~"},
		{"not_a_text", "water: medium", "water: ¶[medium]"},
		{"not_a_list", "seasons: [summer]", "seasons: ¶{a: b}"},
		{"item_twice", "seasons: [summer]", "seasons: [summer, ¶summer]"},
		{"unknown_word", "seasons: [summer]", "seasons: [summer, ¶july]"},
		{"measure_no_unit", "spread: 30 cm", "spread: ¶30"},
		{"measure_unknown_unit", "spread: 30 cm", "spread: ¶30 hands"},
		{"measure_not_a_number", "spread: 30 cm", "spread: ¶wide"},
		{"measure_no_unit", "heat_limit: 32 C", "heat_limit: ¶32"},
		{"measure_unknown_unit", "heat_limit: 32 C", "heat_limit: ¶32 K"},
		{"measure_unknown_unit", "height: 20-60 cm", "height: ¶20-60 spans"},
		{"not_a_whole_number", "water: medium", "water: medium\n    usda_zone: ¶5.5"},
		{"not_a_number", "water: medium", "water: medium\n    sold: {quart: ¶soon}"},
		{"not_yes_or_no", "water: medium", "water: medium\n    foliage: {colours: [green], texture: fine, evergreen: ¶perhaps}"},
		{"missing", "toxicity: {dogs: not_listed, cats", "toxicity: ¶{cats"},
		{"not_an_id", "id: garden-aster", "id: ¶Garden Aster"},
		{"unknown_field", "water: medium", "water: medium\n    from: {¶watter: memory}"},
		{"from_without_value", "water: medium", "water: medium\n    from: {¶scent: memory}"},
		{"unknown_word", "water: medium", "water: medium\n    from: {water: ¶hearsay}"},
		{"unknown_key", "water: medium", "water: medium\n    drawing: {habit: mound, leaf: {form: ovate, ¶size: 4 cm}}"},
		{"unknown_source", "water: medium", "water: medium\n    from: {water: [¶no-such-book]}"},
		{"unknown_source", "water: medium", "water: medium\n    from: {water: {status: memory, cite: ¶no-such-book}}"},
		{"unknown_size", "water: medium", "water: medium\n    sold: ¶{bucket: 3}"},
		{"unknown_disease", "water: medium", "water: medium\n    diseases: ¶[gloom]"},
		{"not_a_host", "water: medium", "water: medium\n    diseases: ¶[clubroot]"},
		{"not_below", "planting_out_night: 8 C", "planting_out_night: ¶33 C"},
		{"spacing_against_spread", "spacing: 22 cm", "spacing: ¶5 cm"},
		{"family_name", "family: Asteraceae", "family: ¶Compositus"},
		{"not_utf8", "id: garden-aster", "id: garden-¶\xff"},
		{"alias", "water: medium", "water: ¶&w medium"},
	} {
		text, line, column := unmark(t, changed(t, c.old, c.replacement))
		_, _, err := plants.ReadOwn("own.yaml", []byte(text), builtin(t))
		var faults plants.Faults
		if !errors.As(err, &faults) {
			t.Errorf("%s in %q: no fault (%v)", c.code, c.replacement, err)
			continue
		}
		if !slices.ContainsFunc(faults, func(f plants.Fault) bool {
			return f.Code == "plants.fault."+c.code && f.File == "own.yaml" && f.Line == line && f.Column == column
		}) {
			t.Errorf("%s in %q: want it at %d:%d, got\n%v", c.code, c.replacement, line, column, err)
		}
	}
}

// The YAML library names the line of a fault of syntax; the column is that of
// the line's first character.
func TestBrokenYAML(t *testing.T) {
	faults := refused(t, "plants:\n  - id: a\n    names: [x\n    family: y\n  - {\n")
	if len(faults) != 1 || faults[0].Code != "plants.fault.yaml" || faults[0].Line < 2 || faults[0].Column < 1 {
		t.Errorf("broken YAML: %v", faults)
	}
}

func TestPlantWithoutID(t *testing.T) {
	faults := refused(t, "plants:\n  - names: [Aster]\n    water: low\n")
	if len(faults) != 1 || faults[0].Code != "plants.fault.missing" || faults[0].Line != 2 || faults[0].Column != 5 {
		t.Errorf("faults: %v", faults)
	}
}

func TestNewPlantMustBeWhole(t *testing.T) {
	faults := refused(t, "plants:\n  - id: garden-aster\n    names: [Garden aster]\n")
	missing := map[string]bool{}
	for _, f := range faults {
		if f.Code == "plants.fault.missing" && f.Plant == "garden-aster" && f.Line == 2 {
			missing[f.Args[0].Value.Text] = true
		}
	}
	for _, key := range []string{"family", "botanical", "kind", "seasons", "role", "light", "water", "height", "spread", "spacing", "toxicity"} {
		if !missing[key] {
			t.Errorf("%s may be left out", key)
		}
	}
}

func refused(t *testing.T, text string) plants.Faults {
	t.Helper()
	_, _, err := plants.ReadOwn("own.yaml", []byte(text), builtin(t))
	var faults plants.Faults
	if !errors.As(err, &faults) {
		t.Fatalf("read without a fault (%v):\n%s", err, text)
	}
	return faults
}

func TestLimits(t *testing.T) {
	bomb := "x0: &a0 [lol, lol]\n"
	for i := 1; i < 30; i++ {
		bomb += fmt.Sprintf("x%d: &a%d [*a%d, *a%d]\n", i, i, i-1, i-1)
	}
	for name, c := range map[string]struct{ text, code string }{
		"alias bomb":       {bomb, "alias"},
		"nesting":          {"plants: " + strings.Repeat("[", 40) + strings.Repeat("]", 40), "too_deep"},
		"deep nesting":     {"plants: " + strings.Repeat("[", 100_000), "yaml"},
		"long text":        {"plants:\n  - id: a\n    notes: " + strings.Repeat("x", 5000), "text_too_long"},
		"long list":        {"plants:\n  - id: a\n    names: [" + strings.Repeat("x, ", 200) + "y]", "list_too_long"},
		"huge file":        {"#" + strings.Repeat(" ", 25<<20), "file_too_large"},
		"second document":  {"plants: []\n---\nplants: []\n", "second_document"},
		"not a mapping":    {"- a\n- b\n", "not_a_mapping"},
		"unknown section":  {"animals: []\n", "unknown_key"},
		"merge key":        {"plants:\n  - <<: {id: a}\n", "unknown_key"},
		"source of a size": {"sizes:\n  - {id: x, name: y, root_ball: 1 L, from: [nowhere]}\n", "unknown_source"},
		"plant twice":      {"plants:\n  - {id: pansy, water: low}\n  - {id: pansy, water: high}\n", "plant_twice"},
	} {
		faults := refused(t, c.text)
		if !slices.ContainsFunc(faults, func(f plants.Fault) bool { return f.Code == "plants.fault."+c.code && f.Line > 0 && f.Column > 0 }) {
			t.Errorf("%s: %v", name, faults)
		}
	}
}

func TestEndlessFaultsAreCut(t *testing.T) {
	faults := refused(t, "plants:\n"+strings.Repeat("  - {watter: low}\n", 5000))
	if len(faults) > 200 {
		t.Errorf("%d faults", len(faults))
	}
	if lines := strings.Count(faults.Error(), "\n"); lines != 20 {
		t.Errorf("the error has %d line breaks", lines)
	}
}

func ExampleFaults() {
	book, _ := plants.Builtin()
	_, _, err := plants.ReadOwn("my-plants.yaml", []byte("plants:\n  - id: pansy\n    heat_limit: warm\n    watter: low\n"), book)
	fmt.Println(err)
	// Output:
	// my-plants.yaml:3:17: pansy: heat_limit: measure not a number text="warm" unit=""
	// my-plants.yaml:4:5: pansy: unknown key key="watter"
}
