package plants_test

import (
	"bytes"
	"errors"
	"slices"
	"testing"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"fourturn/planner/quantity"
	"fourturn/planner/working"
	"fourturn/plants"
)

func own(t *testing.T, text string) (*plants.Own, *plants.Book) {
	t.Helper()
	o, book, err := plants.ReadOwn("own.yaml", []byte(text), builtin(t))
	if err != nil {
		t.Fatal(err)
	}
	return o, book
}

func TestOwnValueOverridesOneValueOnly(t *testing.T) {
	_, book := own(t, "plants:\n  - id: pansy\n    heat_limit: 29 C\n")
	p, _ := book.Plant("pansy")
	base := plant(t, "pansy")
	if got, _ := p.HeatLimit.Get(); got != 29 {
		t.Errorf("heat limit is %v", got)
	}
	if p.Provenance(plants.FieldHeatLimit).Status != working.Entered || p.Soft(plants.FieldHeatLimit) {
		t.Errorf("an entered value is %v", p.Provenance(plants.FieldHeatLimit))
	}
	if p.LowestInPot != base.LowestInPot || !slices.Equal(p.Names, base.Names) || p.Group != "cool-annuals" {
		t.Error("other values changed")
	}
	if diff := cmp.Diff(base.Provenance(plants.FieldLowestInPot), p.Provenance(plants.FieldLowestInPot)); diff != "" {
		t.Error("provenance of another value changed", diff)
	}
	if !slices.Equal(p.Own, []plants.Field{plants.FieldHeatLimit}) {
		t.Errorf("own values are %v", p.Own)
	}
	if again := plant(t, "pansy"); again != base || len(again.Own) > 0 {
		t.Error("the built-in book changed")
	}
}

// An own value is checked against the built-in ones it meets.
func TestOwnValueMustAgreeWithTheRest(t *testing.T) {
	faults := refused(t, "plants:\n  - id: pansy\n    heat_limit: 1 C\n")
	if len(faults) == 0 || faults[0].Plant != "pansy" {
		t.Errorf("faults: %v", faults)
	}
	codes := map[string]bool{}
	for _, f := range faults {
		codes[f.Code] = true
	}
	if !codes["plants.fault.not_below"] || !codes["plants.fault.outside_range"] {
		t.Errorf("faults: %v", faults)
	}
}

func TestOwnBookTakesValuesAway(t *testing.T) {
	o, book := own(t, "plants:\n  - id: rosemary\n    without: [edible, root_zone_limit]\n")
	p, _ := book.Plant("rosemary")
	if len(p.Edible) > 0 || p.RootZoneLimit.Known() || !p.Has(plants.FieldHeatLimit) {
		t.Errorf("edible: %v, roots: %v", p.Edible, p.RootZoneLimit)
	}
	if again, _ := own(t, string(o.Format())); !slices.Equal(again.Plants(), o.Plants()) {
		t.Errorf("written as %s", o.Format())
	}
	for _, text := range []string{
		"plants:\n  - {id: rosemary, without: [spread]}\n",
		"plants:\n  - {id: rosemary, without: [wetness]}\n",
		"plants:\n  - {id: rosemary, without: [edible], edible: [leaves]}\n",
		"plants:\n  - {id: rosemary, without: [edible], from: {edible: memory}}\n",
		"plants:\n  - {id: rosemary, water: low, from: {edible: memory}}\n",
	} {
		refused(t, text)
	}
}

func TestSetUnsetAndRemove(t *testing.T) {
	base := builtin(t)
	edit := plant(t, "zinnia").Clone()
	edit.HeatLimit = plants.Some[quantity.Temperature](38)
	edit.Spacing = 25 * quantity.Centimetre
	note := plants.Provenance{Status: working.Judgement, Note: "three summers on the roof"}

	var none *plants.Own
	o := none.Set(edit, map[plants.Field]plants.Provenance{plants.FieldHeatLimit: note}, plants.FieldHeatLimit, plants.FieldSpacing)
	book, err := o.On(base)
	if err != nil {
		t.Fatal(err)
	}
	p, _ := book.Plant("zinnia")
	if got, _ := p.HeatLimit.Get(); got != 38 || p.Spacing != edit.Spacing {
		t.Errorf("after Set: %v, %v", got, p.Spacing)
	}
	if diff := cmp.Diff(note, p.Provenance(plants.FieldHeatLimit)); diff != "" {
		t.Error(diff)
	}

	less := o.Unset("zinnia", plants.FieldHeatLimit)
	if given, _ := less.Given("zinnia"); !slices.Equal(given, []plants.Field{plants.FieldSpacing}) {
		t.Errorf("after Unset: %v", given)
	}
	if given, _ := o.Given("zinnia"); len(given) != 2 {
		t.Error("Unset changed the book it was called on")
	}
	book, err = less.On(base)
	if err != nil {
		t.Fatal(err)
	}
	if p, _ = book.Plant("zinnia"); p.HeatLimit != plant(t, "zinnia").HeatLimit {
		t.Error("the built-in value does not show again")
	}
	if gone := o.Remove("zinnia"); len(gone.Plants()) != 0 {
		t.Errorf("after Remove: %v", gone.Plants())
	}

	nowhere := map[plants.Field]plants.Provenance{plants.FieldSpacing: {Status: working.Published, Cites: []string{"nowhere"}}}
	if _, err = o.Set(edit, nowhere, plants.FieldSpacing).On(base); err == nil {
		t.Error("a source that does not exist is accepted")
	}

	edit.HeatLimit = plants.Some[quantity.Temperature](2)
	_, err = o.Set(edit, nil, plants.FieldHeatLimit).On(base)
	var faults plants.Faults
	if !errors.As(err, &faults) || faults[0].Plant != "zinnia" || faults[0].Line != 0 {
		t.Errorf("an edit that breaks a rule: %v", err)
	}
}

// compare looks into books as far as callers can.
var compare = cmp.Options{
	cmp.AllowUnexported(plants.Maybe[quantity.Temperature]{}, plants.Maybe[int]{}, plants.Maybe[float64]{}, plants.Maybe[plants.Weeks]{}),
	cmp.FilterPath(func(p cmp.Path) bool { return p.Last().String() == ".ground" }, cmp.Ignore()),
}

func TestOwnBookIsWrittenBack(t *testing.T) {
	text := `unless_said:
  any: memory
sources:
  - id: my-notes
    cite: My garden diary
    grade: low
sizes:
  - {id: tray, name: tray of six, root_ball: 0.05 L, from: judgement}
diseases:
  - {id: wilt, name: wilt, way: soil, hosts: {scope: listed, names: [Asteraceae]}, stays: {years: 2-5, why: spores}, new_mix: clears, from: [my-notes]}
` + whole + `    sold: {tray: 7, quart: unknown}
    shows: 10-14
    diseases: [wilt]
    invasive:
      - {region: "yes", note: "3"}
    drawing:
      habit: bushy
      leaf: {form: ovate, length: 6 cm, edge: toothed}
      flower: {form: daisy, width: 5.5 cm, petals: 24, eye: yellow}
      arrangement: solitary
    notes: "a: b # c"
    conflicts:
      - field: heat_limit
        versions: [{says: 30 C, cite: [my-notes]}, {says: 34 C}]
        why: the middle
    from:
      height: [my-notes]
      sold.tray: {status: judgement, note: counted}
      spacing: common_practice
  - id: pansy
    spacing: 20 cm
`
	first, firstBook := own(t, text)
	written := first.Format()
	second, secondBook := own(t, string(written))
	if diff := cmp.Diff(firstBook.Plants(), secondBook.Plants(), compare); diff != "" {
		t.Errorf("not the same after writing:\n%s\n%s", diff, written)
	}
	for _, b := range []*plants.Book{firstBook, secondBook} {
		p, _ := b.Plant("garden-aster")
		if got := p.Provenance("sold.tray"); got.Status != working.Judgement || got.Note != "counted" {
			t.Errorf("sold.tray is from %v", got)
		}
		if got := b.Source(p, plants.FieldHeight); got.Status != working.Published || got.Cite != "My garden diary" {
			t.Errorf("height is from %v", got)
		}
		if p.Provenance(plants.FieldWater).Status != working.Memory || p.Provenance(plants.FieldSpacing).Status != working.CommonPractice {
			t.Error("the file's own default is lost")
		}
		if d, ok := b.Disease("wilt"); !ok || d.Stays.Years.High != 5 {
			t.Errorf("the disease is %v", d)
		}
	}
	if again := second.Format(); !bytes.Equal(written, again) {
		t.Errorf("written twice, two ways:\n%s\n%s", written, again)
	}
}

func TestEmptyOwnBook(t *testing.T) {
	for _, text := range []string{"", "\n", "# nothing yet\n", "plants: []\n"} {
		o, book := own(t, text)
		if len(o.Plants()) != 0 || len(book.Plants()) != len(builtin(t).Plants()) {
			t.Errorf("%q reads as %v", text, o.Plants())
		}
		own(t, string(o.Format()))
	}
}

// The whole built-in book survives being written as an own book.
func TestEveryPlantIsWrittenBack(t *testing.T) {
	base := builtin(t)
	var o *plants.Own
	for _, p := range base.Plants() {
		o = o.Set(p, nil, fieldsOf(p)...)
	}
	_, book, err := plants.ReadOwn("own.yaml", o.Format(), base)
	if err != nil {
		t.Fatal(err)
	}
	for i, p := range book.Plants() {
		p = p.Clone()
		p.Own = nil
		if diff := cmp.Diff(base.Plants()[i], p, compare); diff != "" {
			t.Fatalf("%s changed: %s", p.ID, diff)
		}
	}
}

func fieldsOf(p *plants.Plant) []plants.Field {
	var fields []plants.Field
	for _, f := range plants.Fields() {
		if p.Has(f) {
			fields = append(fields, f)
		}
	}
	return fields
}

// Law: whatever values are overridden with those of another plant of the same
// kind, either a rule is broken and named, or the book reads back the same.
func TestLawOwnBookRoundTrip(t *testing.T) {
	base := builtin(t)
	rapid.Check(t, func(t *rapid.T) {
		p := rapid.SampledFrom(base.Plants()).Draw(t, "plant").Clone()
		q := rapid.SampledFrom(base.Plants()).Draw(t, "other")
		fields := rapid.SliceOfNDistinct(rapid.SampledFrom(plants.Fields()), 1, 6, rapid.ID).Draw(t, "fields")
		from := q.Clone()
		from.ID = p.ID
		var none *plants.Own
		o := none.Set(from, nil, fields...)
		book, err := o.On(base)
		var faults plants.Faults
		if err != nil {
			if !errors.As(err, &faults) || len(faults) == 0 || faults[0].Plant != p.ID {
				t.Fatalf("error without a plant: %v", err)
			}
			return
		}
		_, again, err := plants.ReadOwn("own.yaml", o.Format(), base)
		if err != nil {
			t.Fatalf("%v\n%s", err, o.Format())
		}
		first, _ := book.Plant(p.ID)
		second, _ := again.Plant(p.ID)
		if diff := cmp.Diff(first, second, compare); diff != "" {
			t.Fatalf("%s\n%s", diff, o.Format())
		}
	})
}

func FuzzReadOwn(f *testing.F) {
	f.Add([]byte(whole))
	f.Add([]byte("plants:\n  - {id: pansy, heat_limit: 29 C, from: {heat_limit: memory}}\n"))
	f.Add([]byte("unless_said: {any: entered}\nsizes:\n  - {id: x, name: y, root_ball: 1 L, from: memory}\n"))
	f.Add([]byte("a: &a [*a]\n"))
	f.Add([]byte("\ufeffplants: []"))
	f.Add([]byte("? {a: b}\n: c\n"))
	base, err := plants.Builtin()
	if err != nil {
		f.Fatal(err)
	}
	f.Fuzz(func(t *testing.T, data []byte) {
		o, _, err := plants.ReadOwn("own.yaml", data, base)
		var faults plants.Faults
		if err != nil {
			if !errors.As(err, &faults) || len(faults) == 0 {
				t.Fatalf("not a list of faults: %v", err)
			}
			for _, fault := range faults {
				if fault.Line < 1 || fault.Column < 1 {
					t.Fatalf("no place: %v", fault)
				}
			}
			return
		}
		written := o.Format()
		again, _, err := plants.ReadOwn("own.yaml", written, base)
		if err != nil {
			t.Fatalf("%q writes as what cannot be read: %v\n%s", data, err, written)
		}
		if !bytes.Equal(again.Format(), written) {
			t.Fatalf("%q is written two ways", data)
		}
	})
}
