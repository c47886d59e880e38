package plants_test

import (
	"slices"
	"testing"

	"fourturn/planner/working"
	"fourturn/plants"
)

// TestEachLawIsKept: each change breaks one law, and that one is named.
func TestEachLawIsKept(t *testing.T) {
	for _, c := range []struct{ code, old, replacement string }{
		{"family_name", "Asteraceae", "Compositae"},
		{"botanical_name", "Callistephus chinensis", "callistephus chinensis"},
		{"range_upside_down", "20-60 cm", "60-20 cm"},
		{"outside_range", "20-60 cm", "20-6000 cm"},
		{"outside_range", "height: 20-60 cm", "height: 0.5-60 cm"},
		{"outside_range", "heat_limit: 32 C", "heat_limit: 90 F\n    root_zone_limit: -60 C"},
		{"outside_range", "heat_limit: 32 C", "heat_limit: 32 C\n    usda_zone: 14"},
		{"outside_range", "heat_limit: 32 C", "heat_limit: 32 C\n    shows: 20-90"},
		{"outside_range", "heat_limit: 32 C", "heat_limit: 32 C\n    shows: 20-10"},
		{"outside_range", "heat_limit: 32 C", "heat_limit: 32 C\n    sold: {quart: -1}"},
		{"spacing_against_spread", "spacing: 22 cm", "spacing: 40 cm"},
		{"not_below", "planting_out_night: 8 C", "planting_out_night: 0 C"},
		{"not_below", "heat_limit: 32 C", "heat_limit: 46 F"},
		{"not_below", "optimum_temperature: 24 C", "optimum_temperature: 42 F\n    notes: below the base"},
		{"frost_class", "lowest_in_pot: 0 C", "lowest_in_pot: -9 C"},
		{"frost_class", "frost_class: tender", "frost_class: hardy"},
		{"temperature_class", "base_temperature: 6 C", "base_temperature: 2 C"},
		{"temperature_class", "temperature_class: cold_intermediate", "temperature_class: cold_sensitive"},
		{"missing", "    heat_limit: 32 C\n", ""},
		{"missing", "    planting_out_night: 8 C\n", ""},
		{"missing", "    feeder: medium\n", ""},
		{"cut_stems_do_not_grow", "kind: warm_annual", "kind: cut_stems"},
		{"lily_not_dangerous", "Callistephus chinensis", "Lilium regale"},
		{"lily_not_dangerous", "Callistephus chinensis", "Hemerocallis fulva"},
		{"conflict_of_one", "water: medium", "water: medium\n    conflicts:\n      - {field: water, versions: [{says: wet}], why: so}"},
		{"from_without_value", "water: medium", "water: medium\n    from: {scent: memory}"},
		{"edible_but_listed", "people: not_listed", "people: listed_toxic}\n    edible: [leaves]\n    foliage: {colours: [green], texture: fine"},
	} {
		faults := refused(t, changed(t, c.old, c.replacement))
		if !slices.ContainsFunc(faults, func(f plants.Fault) bool { return f.Code == "plants.fault."+c.code }) {
			t.Errorf("%q: want %s, got %v", c.replacement, c.code, faults)
		}
	}
}

// The two-zone rule: zone 4 in a pot stands -10 °F (-23.3 °C), not less.
func TestHardinessInAPotFollowsTheZone(t *testing.T) {
	hardy := changed(t, "kind: warm_annual", "kind: perennial\n    usda_zone: 4")
	for _, c := range []struct {
		lowest string
		good   bool
	}{{"-23.3 C", true}, {"-10 F", true}, {"-20 C", true}, {"-25 C", false}, {"-40 C", false}} {
		text := hardy
		for _, r := range [][2]string{{"frost_class: tender", "frost_class: hardy"}, {"lowest_in_pot: 0 C", "lowest_in_pot: " + c.lowest}} {
			text = replaceOnce(t, text, r[0], r[1])
		}
		_, _, err := plants.ReadOwn("own.yaml", []byte(text), builtin(t))
		if (err == nil) != c.good {
			t.Errorf("zone 4 with %s: %v", c.lowest, err)
		}
	}
}

func TestBookHasWhatThePlannerNeeds(t *testing.T) {
	b := builtin(t)
	if got := len(b.Plants()); got < 160 {
		t.Errorf("%d plants, want 160 or more", got)
	}
	needs := []plants.Field{
		plants.FieldColours, plants.FieldFoliage, plants.FieldScent, plants.FieldDrawing, plants.FieldSold, plants.FieldShows,
	}
	growing := []plants.Field{plants.FieldBaseTemperature, plants.FieldOptimumTemperature}
	for _, p := range b.Plants() {
		for _, f := range needs {
			if !p.Has(f) {
				t.Errorf("%s has no %s", p.ID, f)
			}
		}
		for _, f := range growing {
			if p.Kind.Growing() != p.Has(f) {
				t.Errorf("%s, %s: has %s: %v", p.ID, p.Kind, f, p.Has(f))
			}
		}
		if p.Kind == plants.Bulb && p.FrostClass == plants.Hardy && !p.Has(plants.FieldChill) && p.Genus() != "Cyclamen" {
			t.Errorf("%s is a hardy bulb without its cold", p.ID)
		}
		if p.Group == "" || len(p.Own) > 0 {
			t.Errorf("%s is in group %q with own values %v", p.ID, p.Group, p.Own)
		}
		if len(p.Names) < 2 {
			t.Errorf("%s has one name only", p.ID)
		}
	}
}

// Every value stands on something, and what is published names its source.
func TestEveryValueHasItsProvenance(t *testing.T) {
	b := builtin(t)
	published := 0
	for _, p := range b.Plants() {
		for _, f := range fieldsOf(p) {
			from := p.Provenance(f)
			switch from.Status {
			case working.Published, working.Derived:
				published++
				if len(from.Cites) == 0 {
					t.Errorf("%s %s is %s without a source", p.ID, f, from.Status)
				}
				if source := b.Source(p, f); source.Cite == "" || source.Soft() {
					t.Errorf("%s %s: %+v", p.ID, f, source)
				}
			case working.Entered, working.Definition, "":
				t.Errorf("%s %s is %q in the built-in book", p.ID, f, from.Status)
			case working.Estimated, working.CommonPractice, working.Memory, working.Judgement:
				if !p.Soft(f) {
					t.Errorf("%s %s is %s but not soft", p.ID, f, from.Status)
				}
			}
		}
	}
	if published < 200 {
		t.Errorf("only %d values are published", published)
	}
}

// A group of diseases is worth its name only with hosts and a stay.
func TestDiseaseGroupsSayWhomAndHowLong(t *testing.T) {
	b := builtin(t)
	named := map[string]bool{}
	for _, p := range b.Plants() {
		for _, id := range p.Diseases {
			named[id] = true
		}
	}
	for _, d := range b.Diseases() {
		if d.Hosts.Scope != plants.Everywhere && len(d.Hosts.Names) == 0 {
			t.Errorf("%s has no hosts", d.ID)
		}
		if d.Stays.Why == "" || d.Stays.Years.Low > d.Stays.Years.High || d.Stays.Years.High > 25 {
			t.Errorf("%s stays %+v", d.ID, d.Stays)
		}
		if d.Way == plants.SoilBorne && d.NewMix == plants.NoMatter {
			t.Errorf("%s lives in soil, but new mix does not matter", d.ID)
		}
		if !named[d.ID] {
			t.Errorf("no plant names %s", d.ID)
		}
	}
}

func TestSourcesAreUsedAndWhole(t *testing.T) {
	b := builtin(t)
	used := map[string]bool{}
	note := func(cites []string) {
		for _, id := range cites {
			used[id] = true
			if _, ok := b.Citation(id); !ok {
				t.Errorf("no source %s", id)
			}
		}
	}
	for _, p := range b.Plants() {
		for _, f := range fieldsOf(p) {
			note(p.Provenance(f).Cites)
		}
		for _, s := range p.Sold {
			note(p.Provenance(plants.Field("sold." + s.Size)).Cites)
		}
		for _, c := range p.Conflicts {
			for _, v := range c.Versions {
				note(v.Cites)
			}
		}
	}
	for _, d := range b.Diseases() {
		note(d.Ground.Cites)
	}
	for _, s := range b.Sizes() {
		note(s.Ground.Cites)
	}
	for _, c := range b.Citations() {
		if !used[c.ID] {
			t.Errorf("nothing cites %s", c.ID)
		}
	}
}

// Sizes grow, and a bigger size is sooner full.
func TestBiggerSizesAreSoonerFull(t *testing.T) {
	b := builtin(t)
	for _, p := range b.Plants() {
		for i := 1; i < len(p.Sold); i++ {
			before, _ := b.Size(p.Sold[i-1].Size)
			after, _ := b.Size(p.Sold[i].Size)
			if before.RootBall >= after.RootBall {
				t.Errorf("%s: %s before %s", p.ID, before.ID, after.ID)
			}
			w0, ok0 := p.Sold[i-1].WeeksToFull.Get()
			w1, ok1 := p.Sold[i].WeeksToFull.Get()
			if ok0 && ok1 && w1 > w0 {
				t.Errorf("%s: full sooner from %s", p.ID, before.ID)
			}
		}
	}
	if gallon, _ := b.Size("gallon"); gallon.RootBall < 2.83 || gallon.RootBall > 2.85 {
		t.Errorf("a trade gallon is %v", gallon.RootBall) // 3 liquid quarts = 2.84 L
	}
}

// A drawing routine must be able to tell any two plants apart.
func TestDrawingsAreDistinct(t *testing.T) {
	seen := map[plants.Drawing]string{}
	for _, p := range builtin(t).Plants() {
		if other, ok := seen[p.Drawing]; ok {
			t.Errorf("%s is drawn as %s", p.ID, other)
		}
		seen[p.Drawing] = p.ID
		if (p.Drawing.Flower.Form == plants.NoFlower) != (p.Drawing.Arrangement == plants.NoArrangement) {
			t.Errorf("%s: a flower without an arrangement, or the other way", p.ID)
		}
		if w := p.Drawing.Flower.Width; w > p.Spread {
			t.Errorf("%s: a flower of %v on a plant of %v", p.ID, w, p.Spread)
		}
		if l := p.Drawing.Leaf.Length; l > p.Height.High*2 && l > p.Spread {
			t.Errorf("%s: a leaf of %v on a plant of %v", p.ID, l, p.Height.High)
		}
		if len(p.Foliage.Colours) > 1 && p.Drawing.Leaf.Form == plants.NoLeaf {
			t.Errorf("%s: coloured leaves but no leaf", p.ID)
		}
	}
}

func TestNamesAreDistinct(t *testing.T) {
	seen := map[string]string{}
	for _, p := range builtin(t).Plants() {
		if other, ok := seen[p.Name()]; ok {
			t.Errorf("%s and %s are both called %s", p.ID, other, p.Name())
		}
		seen[p.Name()] = p.ID
	}
}

// Plants of both hemispheres and all seasons: enough of each for a bench.
func TestBenchesAreFilled(t *testing.T) {
	kinds, seasons := map[plants.Kind]int{}, map[plants.Season]int{}
	for _, p := range builtin(t).Plants() {
		kinds[p.Kind]++
		for _, s := range p.Seasons {
			seasons[s]++
		}
	}
	for _, k := range plants.Kinds {
		if kinds[k] < 5 {
			t.Errorf("%d plants of kind %s", kinds[k], k)
		}
	}
	for _, s := range plants.Seasons {
		if seasons[s] < 40 {
			t.Errorf("%d plants for %s", seasons[s], s)
		}
	}
}
