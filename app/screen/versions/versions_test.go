package versions_test

import (
	"encoding/json"
	"strings"
	"testing"

	"fourturn/app/screen/screentest"
	"fourturn/app/screen/versions"
	"fourturn/app/session"
	"fourturn/app/words"
	"fourturn/planner"
	"fourturn/planner/civil"
	"fourturn/planner/planfile"
	"fourturn/planner/quantity"
)

func decode(t *testing.T, text string) *planner.Plan {
	t.Helper()
	d, err := planfile.Decode([]byte(text))
	if err != nil {
		t.Fatal(err)
	}
	return d.Plan()
}

const base = `fourturn: 1
title: Yard
currency: EUR
household: {dogs: true}
sites:
  home: {name: Home, frost: {last: 04-20}}
spots:
  wall: {name: North wall, site: home, light: sun, shelter: south_wall}
  door: {name: Front door, site: home}
feeding: {can: 9 L, first_day: saturday}
products:
  feed: {name: 20-20-20 soluble, kind: soluble, packs: [{mass: 1 kg, price: 12}]}
recipes:
  warm: {name: Warm, plants: [{plant: petunia, count: 3}]}
pots:
  urn:
    name: Urn by the gate
    kind: round
    top_diameter: 40 cm
    spot: wall
    mix_since: 2026-03-01
    plantings:
      summer: {recipe: warm, plants: [{plant: petunia, count: 3}]}
  tub: {name: Old tub, notes: cracked}
log:
  - {id: a, date: 2027-05-01, kind: fed, pots: [urn], product: feed}
`

func reader(w *words.Words, plans ...*planner.Plan) *versions.Reader {
	names := map[string]string{"petunia": "Petunia", "fern": "Sword fern"}
	return versions.NewReader(w, func(id string) string { return names[id] }, plans...)
}

// Each difference names the pot, the planting or the entry by its name, and says the
// values in the units of the plan.
func TestDifferencesInWords(t *testing.T) {
	now := decode(t, base)
	for _, one := range []struct{ from, to, want string }{
		{"title: Yard", "title: Roof", "Title: Yard → Roof"},
		{"dogs: true", "cats: true", "Household: dogs: yes → no|Household: cats: no → yes"},
		{"04-20", "05-02", "Site Home: frost dates: last frost: 20 Apr → 2 May"},
		{"light: sun", "light: part", "Spot North wall: light: sun → part sun"},
		{"shelter: south_wall", "shelter: open", "Spot North wall: shelter: against a wall that faces the midday sun → in the open, on grass"},
		{"saturday", "monday", "Feeding: day of the week for rounds: Saturday → Monday"},
		{"can: 9 L", "can: 10 L", "Feeding: volume of the can: 9 L → 10 L"},
		{"price: 12", "price: 13.5", "Product 20-20-20 soluble · 1 kg: price: €12.00 → €13.50"},
		{"40 cm", "35 cm", "Urn by the gate: diameter at the top: 40 cm → 35 cm"},
		{"40 cm", "40.001 cm", "Urn by the gate: diameter at the top: 40 cm → 40.001 cm"},
		{"spot: wall", "spot: door", "Urn by the gate: spot: North wall → Front door"},
		{"    spot: wall\n", "", "Urn by the gate: spot: North wall → nothing"},
		{"2026-03-01", "2027-03-02", "Urn by the gate: filled with all fresh mix: 1 Mar 2026 → 2 Mar 2027"},
		{"{recipe: warm, plants: [{plant: petunia, count: 3}]}", "{recipe: warm, plants: [{plant: petunia, count: 5}, {plant: fern}]}", "Urn by the gate · Summer · Petunia: number of plants: 3 → 5|Urn by the gate · Summer · Sword fern: not there → plant Sword fern"},
		{"kind: fed", "kind: skipped", "Log of 1 May 2027: fed: kind: fed → feed left out"},
		{"  tub: {name: Old tub, notes: cracked}\n", "", "Old tub: name Old tub; notes cracked → not there"},
		{"warm: {name: Warm, plants: [{plant: petunia, count: 3}]}", "warm: {name: Warm, plants: [{plant: fern, count: 2}]}", "Recipe Warm · Petunia: plant Petunia; number of plants 3 → not there|Recipe Warm · Sword fern: not there → plant Sword fern; number of plants 2"},
	} {
		if !strings.Contains(base, one.from) {
			t.Fatalf("the plan has no %q", one.from)
		}
		then := decode(t, strings.Replace(base, one.from, one.to, 1))
		w := words.New("en-GB")
		var got []string
		for _, line := range reader(w, now, then).Lines(planfile.Differences(now, then)) {
			got = append(got, line.Place+": "+line.Before+" → "+line.After)
		}
		if joined := strings.Join(got, "|"); joined != one.want {
			t.Errorf("%q to %q is told as\n%s\nwant\n%s", one.from, one.to, joined, one.want)
		}
	}
}

func TestDifferencesInTheUnitsOfThePlan(t *testing.T) {
	now := decode(t, strings.Replace(base, "title: Yard", "title: Yard\nunits: us", 1))
	then := decode(t, strings.Replace(strings.Replace(base, "title: Yard", "title: Yard\nunits: us", 1), "40 cm", "18 in", 1))
	if now.Units != quantity.USCustomary {
		t.Fatal("the plan is not in customary units")
	}
	lines := reader(words.New("en-US"), now, then).Lines(planfile.Differences(now, then))
	if len(lines) != 1 || lines[0].Before != "15.7 in" || lines[0].After != "18 in" {
		t.Errorf("told as %+v", lines)
	}
}

// A whole pot that is only in one version is told by all that it has.
func TestAPotInWords(t *testing.T) {
	now := decode(t, base)
	then := decode(t, strings.SplitN(base, "\npots:", 2)[0]+"\n")
	lines := reader(words.New("en-GB"), now, then).Lines(planfile.Differences(now, then))
	var urn string
	for _, line := range lines {
		if strings.HasPrefix(line.Place, "Urn") {
			urn = line.Before
		}
	}
	for _, part := range []string{"spot North wall", "shape round, tapered", "diameter at the top 40 cm", "Summer (recipe Warm; plants Petunia (number of plants 3))"} {
		if !strings.Contains(urn, part) {
			t.Errorf("%q does not say %q", urn, part)
		}
	}
}

// No key of the plan file is shown to a person as it stands there, and no text is
// missing, for the example and every field in it.
func TestTheExampleInWords(t *testing.T) {
	plan := screentest.Example(t)
	empty := &planner.Plan{Risk: 0.5}
	w := words.New("en")
	r := reader(w, plan)
	lines := r.Lines(planfile.Differences(empty, plan))
	if len(lines) < 30 {
		t.Fatalf("only %d differences", len(lines))
	}
	for _, line := range lines {
		for _, text := range []string{line.Place, line.Before, line.After} {
			if strings.Contains(text, "⟦") || strings.ContainsAny(text, "{}") || strings.Contains(text, "_") {
				t.Errorf("%+v", line)
			}
		}
	}
}

// Every key of the plan file has words of its own, so that no key is shown to a
// person. The schema of the file lists them all.
func TestEveryFieldHasALabel(t *testing.T) {
	var schema any
	if err := json.Unmarshal([]byte(planfile.Schema()), &schema); err != nil {
		t.Fatal(err)
	}
	found := map[string]bool{}
	var walk func(part any)
	walk = func(part any) {
		switch p := part.(type) {
		case []any:
			for _, one := range p {
				walk(one)
			}
		case map[string]any:
			if properties, ok := p["properties"].(map[string]any); ok {
				for key := range properties {
					found[key] = true
				}
			}
			for _, one := range p {
				walk(one)
			}
		}
	}
	walk(schema)
	// A person is never shown the version of the file nor the id of an entry, and says
	// these within a section that has its own words for them.
	for _, key := range []string{"fourturn", "id", "last", "first", "slow_release"} {
		delete(found, key)
	}
	if len(found) < 100 {
		t.Fatalf("the schema has only %d keys", len(found))
	}
	w := words.New("en")
	for key := range found {
		if !w.Has("versions.field."+key) && !w.Has("vessel.field."+key) {
			t.Errorf("the field %s has no words", key)
		}
	}
}

func open(t *testing.T, mine, theirs string) *session.Merging {
	t.Helper()
	m, err := planfile.Merge(decode(t, base), decode(t, mine), decode(t, theirs), nil)
	if err != nil {
		t.Fatal(err)
	}
	kept, err := planfile.Merge(decode(t, base), decode(t, mine), decode(t, theirs), func(planfile.Conflict) planfile.Side { return planfile.Mine })
	if err != nil {
		t.Fatal(err)
	}
	return &session.Merging{Mine: decode(t, mine), Theirs: decode(t, theirs), Conflicts: m.Conflicts, Incoming: planfile.Differences(decode(t, mine), kept.Plan)}
}

func TestChoicesOfAMerge(t *testing.T) {
	mine := strings.NewReplacer("40 cm", "35 cm", "Old tub", "Trough", "spot: wall", "spot: door").Replace(base)
	theirs := strings.NewReplacer("40 cm", "50 cm", "  tub: {name: Old tub, notes: cracked}\n", "", "Yard", "Roof", "spot: wall", "spot: door").Replace(base)
	m := open(t, mine, theirs)
	w := words.New("en-GB")
	merge := versions.NewMerge(m, reader(w, m.Mine, m.Theirs, decode(t, base)))
	var got []string
	for _, row := range merge.Rows() {
		got = append(got, strings.Join([]string{row.Place, row.Was, row.Mine, row.Theirs, row.Remark}, " | "))
	}
	want := `Urn by the gate: diameter at the top | 40 cm | 35 cm | 50 cm | 
Trough | name Old tub; notes cracked | name Trough; notes cracked | removed | They removed this; you changed it.
Title | Yard | Yard | Roof | Only they changed this: it comes in.`
	if strings.Join(got, "\n") != want {
		t.Errorf("the rows are\n%s\nwant\n%s", strings.Join(got, "\n"), want)
	}
	if says := merge.Summary(w); says != "In 2 places both have something else: choose. 1 more change comes in by itself." {
		t.Errorf("summary %q", says)
	}
	sides := func() string {
		choose := merge.Chooser()
		var s []string
		for _, c := range m.Conflicts {
			s = append(s, map[planfile.Side]string{planfile.Mine: "mine", planfile.Theirs: "theirs"}[choose(c)])
		}
		return strings.Join(s, " ")
	}
	if sides() != "mine mine" {
		t.Errorf("at first %s", sides())
	}
	merge.Take(0, planfile.Theirs)
	merge.Turn(2) // comes in without a choice
	if sides() != "theirs mine" || merge.Rows()[2].Taken != planfile.Theirs {
		t.Errorf("after one choice %s", sides())
	}
	merge.TakeAll(planfile.Theirs)
	if sides() != "theirs theirs" {
		t.Errorf("all theirs: %s", sides())
	}
	merge.Turn(1)
	if sides() != "theirs mine" {
		t.Errorf("turned back: %s", sides())
	}
	merge.TakeAll(planfile.Mine)
	if sides() != "mine mine" {
		t.Errorf("all mine: %s", sides())
	}
	merged, err := planfile.Merge(decode(t, base), m.Mine, m.Theirs, merge.Chooser())
	if err != nil || merged.Plan.Pots[0].Vessel.TopDiameter != m.Mine.Pots[0].Vessel.TopDiameter || merged.Plan.Title != "Roof" {
		t.Errorf("%v, %+v", err, merged)
	}
	if day := civil.MustParse("2027-05-01"); merged.Plan.Log[0].Date != day {
		t.Error("the log changed")
	}
}

// A thing that one side removed and the other came to use is told once, as what
// stays.
func TestWhatStaysIsToldOnce(t *testing.T) {
	mine := strings.NewReplacer("  door: {name: Front door, site: home}\n", "").Replace(base)
	theirs := strings.Replace(base, "Old tub", "Old tub, spot: door", 1)
	m := open(t, mine, theirs)
	merge := versions.NewMerge(m, reader(words.New("en-GB"), m.Mine, m.Theirs, decode(t, base)))
	n := 0
	for _, row := range merge.Rows() {
		if row.Place == "Spot Front door" {
			n++
			if row.Choice || !strings.Contains(row.Remark, "it stays") {
				t.Errorf("told as %+v", row)
			}
		}
	}
	if n != 1 {
		t.Errorf("told %d times", n)
	}
}
