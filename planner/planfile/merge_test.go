package planfile_test

import (
	"bytes"
	"fmt"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"fourturn/planner"
	"fourturn/planner/civil"
	"fourturn/planner/planfile"
	"fourturn/planner/planfile/plantest"
	"fourturn/planner/vessel"
	"fourturn/planner/working"
)

func merge(t interface{ Fatal(...any) }, base, mine, theirs *planner.Plan) *planfile.Merged {
	m, err := planfile.Merge(base, mine, theirs, nil)
	if err != nil {
		t.Fatal(err)
	}
	return m
}

func TestMergeWithOneselfIsIdentity(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		base, plan := plantest.Plan().Draw(t, "base"), plantest.Plan().Draw(t, "plan")
		m := merge(t, base, plan, plan)
		if diff := equalPlans(plan, m.Plan); diff != "" || len(m.Conflicts) != 0 {
			t.Fatalf("%v\n%s", m.Conflicts, diff)
		}
	})
}

func TestMergeWithTheUnchangedIsTheChanged(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		base, plan := plantest.Plan().Draw(t, "base"), plantest.Plan().Draw(t, "plan")
		for _, m := range []*planfile.Merged{merge(t, base, plan, base), merge(t, base, base, plan)} {
			if diff := equalPlans(plan, m.Plan); diff != "" || len(m.Conflicts) != 0 {
				t.Fatalf("%v\n%s", m.Conflicts, diff)
			}
		}
	})
}

// manyPots draws a plan with at least two pots.
func manyPots(t *rapid.T) *planner.Plan {
	plan := *plantest.Plan().Filter(func(p *planner.Plan) bool { return len(p.Pots) >= 2 }).Draw(t, "plan")
	return &plan
}

// changePot returns the plan with one of its pots changed at random.
func changePot(t *rapid.T, plan *planner.Plan, i int, label string) *planner.Plan {
	changed := *plan
	changed.Pots = append([]planner.Pot(nil), plan.Pots...)
	pot := &changed.Pots[i]
	pot.Name = plantest.Text().Draw(t, label+" name")
	pot.Notes = plantest.Text().Draw(t, label+" notes")
	if rapid.Bool().Draw(t, label+" clear") {
		pot.Plantings = nil
	} else if len(pot.Plantings) > 0 {
		pot.Plantings = append([]planner.Planting(nil), pot.Plantings...)
		pot.Plantings[0].Plants = []planner.Part{{Plant: "fern", Count: rapid.IntRange(1, 9).Draw(t, label+" count")}}
	}
	return &changed
}

func TestEditsToDifferentPotsCommute(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		base := manyPots(t)
		mine, theirs := changePot(t, base, 0, "mine"), changePot(t, base, 1, "theirs")
		one, other := merge(t, base, mine, theirs), merge(t, base, theirs, mine)
		if len(one.Conflicts)+len(other.Conflicts) != 0 {
			t.Fatalf("conflicts: %v %v", one.Conflicts, other.Conflicts)
		}
		if diff := equalPlans(one.Plan, other.Plan); diff != "" {
			t.Fatal(diff)
		}
		both := changeBoth(base, mine, theirs)
		if diff := equalPlans(both, one.Plan); diff != "" {
			t.Fatal(diff)
		}
	})
}

func changeBoth(base, mine, theirs *planner.Plan) *planner.Plan {
	both := *base
	both.Pots = append([]planner.Pot(nil), base.Pots...)
	both.Pots[0], both.Pots[1] = mine.Pots[0], theirs.Pots[1]
	return &both
}

// Whatever two people do, every pot, spot, product and so on of either side is in
// the merged plan, unless the other side deleted it; and what a conflict passes
// over is in the conflict.
func TestNothingVanishesThatNobodyDeleted(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		base, mine, theirs := plantest.Plan().Draw(t, "base"), plantest.Plan().Draw(t, "mine"), plantest.Plan().Draw(t, "theirs")
		m := merge(t, base, mine, theirs)
		got := names(m.Plan)
		inBase, inMine, inTheirs := names(base), names(mine), names(theirs)
		for name := range inMine {
			if !got[name] && (!inBase[name] || inTheirs[name]) {
				t.Fatalf("%s vanished", name)
			}
		}
		for name := range inTheirs {
			if !got[name] && (!inBase[name] || inMine[name]) {
				t.Fatalf("%s vanished", name)
			}
		}
		for name := range got {
			if !inMine[name] && !inTheirs[name] && !inUse(m.Conflicts, name) {
				t.Fatalf("%s came from nowhere", name)
			}
		}
		for _, c := range m.Conflicts {
			if c.Kind == planfile.BothChanged && c.Mine.String() == c.Theirs.String() {
				t.Fatalf("no conflict at all: %+v", c)
			}
		}
	})
}

// TestHalfALinerIsNone merges a liner that one side took out and the other widened.
func TestHalfALinerIsNone(t *testing.T) {
	with := func(liner *vessel.Spec) *planner.Plan {
		pot := planner.Pot{ID: "tub", Vessel: vessel.Spec{Kind: vessel.Cylinder, TopDiameter: 0.4, Height: 0.4, Liner: liner}}
		return &planner.Plan{Risk: planner.DefaultRisk, Pots: []planner.Pot{pot}}
	}
	base := with(&vessel.Spec{Kind: vessel.Cylinder, TopDiameter: 0.3, Height: 0.3})
	wider := with(&vessel.Spec{Kind: vessel.Cylinder, TopDiameter: 0.35, Height: 0.3})
	m := merge(t, base, with(nil), wider)
	if len(m.Conflicts) != 1 || m.Conflicts[0].Kind != planfile.DeletedMine {
		t.Fatalf("conflicts %+v", m.Conflicts)
	}
	if liner := m.Plan.Pots[0].Vessel.Liner; liner == nil || liner.TopDiameter != 0.35 {
		t.Errorf("liner %+v", liner)
	}
}

func inUse(conflicts []planfile.Conflict, name string) bool {
	for _, c := range conflicts {
		if c.Kind == planfile.StillInUse && strings.Join(c.Where, "/") == name {
			return true
		}
	}
	return false
}

// names lists everything in a plan that has an id.
func names(p *planner.Plan) map[string]bool {
	all := map[string]bool{}
	for _, s := range p.Sites {
		all["sites/"+s.ID] = true
	}
	for _, s := range p.Spots {
		all["spots/"+s.ID] = true
	}
	for _, s := range p.Products {
		all["products/"+s.ID] = true
	}
	for _, s := range p.Blends {
		all["blends/"+s.ID] = true
	}
	for _, s := range p.Recipes {
		all["recipes/"+s.ID] = true
	}
	for _, s := range p.Log {
		all["log/"+s.ID] = true
	}
	for _, s := range p.Pots {
		all["pots/"+s.ID] = true
	}
	return all
}

// Taking the other side of every conflict gives the merge with the sides
// exchanged.
func TestChoosingTheirsExchangesTheSides(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		base := manyPots(t)
		mine, theirs := changePot(t, base, 0, "mine"), changePot(t, base, 0, "theirs")
		one, err := planfile.Merge(base, mine, theirs, func(planfile.Conflict) planfile.Side { return planfile.Theirs })
		if err != nil {
			t.Fatal(err)
		}
		other, err := planfile.Merge(base, theirs, mine, func(planfile.Conflict) planfile.Side { return planfile.Mine })
		if err != nil {
			t.Fatal(err)
		}
		if diff := equalPlans(one.Plan, other.Plan); diff != "" {
			t.Fatal(diff)
		}
	})
}

func decode(t testing.TB, text string) *planner.Plan {
	t.Helper()
	d, err := planfile.Decode([]byte(text))
	if err != nil {
		t.Fatal(err)
	}
	return d.Plan()
}

func TestMergeConflicts(t *testing.T) {
	const base = `fourturn: 1
title: Base
spots:
  door: {name: Door}
  wall: {name: Wall}
pots:
  urn: {name: Urn, spot: door, notes: old}
  tub: {name: Tub}
log:
  - {id: a, date: 2027-05-01, kind: fed, pots: [urn]}
`
	edit := func(pairs ...string) *planner.Plan { return decode(t, strings.NewReplacer(pairs...).Replace(base)) }
	for _, c := range []struct {
		name         string
		mine, theirs *planner.Plan
		want         string
		plan         func(p *planner.Plan) bool
	}{
		{
			"the same field", edit("name: Urn", "name: Vase"), edit("name: Urn", "name: Jar", "notes: old", "notes: new"),
			"[pots urn name] both_changed Urn|Vase|Jar mine",
			func(p *planner.Plan) bool { return p.Pots[0].Name == "Vase" && p.Pots[0].Notes == "new" },
		},
		{
			"the same field to the same value", edit("name: Urn", "name: Vase"), edit("name: Urn", "name: Vase"), "",
			func(p *planner.Plan) bool { return p.Pots[0].Name == "Vase" },
		},
		{
			"deleted here, changed there", edit("  tub: {name: Tub}\n", ""), edit("name: Tub", "name: Trough"),
			"[pots tub] deleted_mine {name: Tub}||{name: Trough} theirs",
			func(p *planner.Plan) bool { return len(p.Pots) == 2 && p.Pots[1].Name == "Trough" },
		},
		{
			"deleted there, changed here", edit("name: Tub", "name: Trough"), edit("  tub: {name: Tub}\n", ""),
			"[pots tub] deleted_theirs {name: Tub}|{name: Trough}| mine",
			func(p *planner.Plan) bool { return len(p.Pots) == 2 && p.Pots[1].Name == "Trough" },
		},
		{
			"deleted here, left alone there", edit("  tub: {name: Tub}\n", ""), edit("title: Base", "title: New"), "",
			func(p *planner.Plan) bool { return len(p.Pots) == 1 && p.Title == "New" },
		},
		{
			"a spot deleted here and used there", edit("  wall: {name: Wall}\n", ""), edit("tub: {name: Tub}", "tub: {name: Tub, spot: wall}"),
			"[spots wall] still_in_use {name: Wall}|| mine",
			func(p *planner.Plan) bool { return len(p.Spots) == 2 && p.Pots[1].Spot == "wall" },
		},
		{
			"two log entries", edit("log:\n", "log:\n  - {id: b, date: 2027-05-02, kind: fed, pots: [tub]}\n"),
			edit("pots: [urn]}\n", "pots: [urn]}\n  - {id: c, date: 2027-05-03, kind: noted, text: hot}\n"), "",
			func(p *planner.Plan) bool { return len(p.Log) == 3 && p.Log[0].ID == "b" && p.Log[2].ID == "c" },
		},
	} {
		t.Run(c.name, func(t *testing.T) {
			m := merge(t, decode(t, base), c.mine, c.theirs)
			var got []string
			for _, f := range m.Conflicts {
				side := map[planfile.Side]string{planfile.Mine: "mine", planfile.Theirs: "theirs"}[f.Taken]
				got = append(got, fmt.Sprintf("%v %s %s|%s|%s %s", f.Where, f.Kind, f.Base, f.Mine, f.Theirs, side))
			}
			if strings.Join(got, "\n") != c.want {
				t.Errorf("conflicts\n%s\nwant\n%s", strings.Join(got, "\n"), c.want)
			}
			if !c.plan(m.Plan) {
				t.Errorf("merged plan: %+v", m.Plan)
			}
		})
	}
}

// Of two copies without a known beginning nothing is lost, whoever is asked first.
func TestMergeCopyKeepsEverything(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		mine, theirs := plantest.Plan().Draw(t, "mine"), plantest.Plan().Draw(t, "theirs")
		m, err := planfile.MergeCopy(nil, mine, theirs, nil)
		if err != nil {
			t.Fatal(err)
		}
		got := names(m.Plan)
		for _, side := range []*planner.Plan{mine, theirs} {
			for name := range names(side) {
				if !got[name] {
					t.Fatalf("%s vanished", name)
				}
			}
		}
		same, err := planfile.MergeCopy(nil, mine, mine, nil)
		if err != nil || len(same.Conflicts) != 0 {
			t.Fatal(err, same)
		}
		if diff := equalPlans(mine, same.Plan); diff != "" {
			t.Fatal(diff)
		}
	})
}

func TestDifferences(t *testing.T) {
	a := decode(t, "fourturn: 1\ntitle: A\npots:\n  urn: {name: Urn}\n  tub: {name: Tub}\n  can: {top_diameter: 20 cm}\n")
	b := decode(t, "fourturn: 1\ntitle: A\nmix: {settling: 20 %}\nspots:\n  wall: {name: Wall}\npots:\n  can: {top_diameter: 8 in, spot: wall}\n  urn: {name: Vase, notes: x}\n  jar: {name: Jar}\n")
	var got []string
	for _, d := range planfile.Differences(a, b) {
		order := ""
		if d.Order {
			order = " in another order"
		}
		got = append(got, fmt.Sprintf("%v %s -> %s%s", d.Where, d.Before, d.After, order))
	}
	want := `[pots]  ->  in another order
[pots urn name] Urn -> Vase
[pots urn notes]  -> x
[pots tub] {name: Tub} -> 
[pots can top_diameter] 20 cm -> 8 in
[pots can spot]  -> wall
[pots jar]  -> {name: Jar}
[spots wall]  -> {name: Wall}
[mix settling]  -> 20 %`
	if strings.Join(got, "\n") != want {
		t.Errorf("differences\n%s\nwant\n%s", strings.Join(got, "\n"), want)
	}
}

// Two plans differ in nothing exactly where their files would be the same.
func TestDifferencesMissNothing(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a, b := plantest.Plan().Draw(t, "a"), plantest.Plan().Draw(t, "b")
		if n := len(planfile.Differences(a, a)); n != 0 {
			t.Fatalf("a plan differs from itself in %d places", n)
		}
		one, err := planfile.Encode(a)
		if err != nil {
			t.Fatal(err)
		}
		other, err := planfile.Encode(b)
		if err != nil {
			t.Fatal(err)
		}
		if n := len(planfile.Differences(a, b)); (n == 0) != bytes.Equal(one, other) {
			t.Fatalf("%d differences between\n%s\nand\n%s", n, one, other)
		}
	})
}

// What a conflict says can be put into words: measures with their units, days,
// ids of things, fixed words.
func TestContentIsTyped(t *testing.T) {
	base := "fourturn: 1\nspots:\n  wall: {name: Wall}\n  door: {name: Door}\npots:\n  urn: {top_diameter: 40 cm, spot: wall, mix_since: 2026-03-01, refresh: fresh, name: Urn}\n"
	edited := func(pairs ...string) *planner.Plan { return decode(t, strings.NewReplacer(pairs...).Replace(base)) }
	m := merge(t, decode(t, base),
		edited("40 cm", "35 cm", "spot: wall", "spot: door", "2026-03-01", "2026-04-01", "refresh: fresh", "refresh: top_up", "name: Urn", "name: Vase"),
		edited("40 cm", "50 cm", "spot: wall, ", "", "2026-03-01", "2026-05-01", "refresh: fresh", "refresh: share", "name: Urn", "name: Pot"))
	var got []string
	for _, c := range m.Conflicts {
		names, fixed := c.Mine.Names, c.Mine.Fixed
		got = append(got, fmt.Sprintf("%v %.4g %s %s %q %v", c.Steps, c.Mine.Value.Number, c.Mine.Value.Unit, c.Mine.Value.Text, names, fixed))
	}
	want := []string{
		`[{pots false} {urn true} {name false}] 0  Vase "" false`,
		`[{pots false} {urn true} {spot false}] 0  door "spots" false`,
		`[{pots false} {urn true} {top_diameter false}] 0.35 m  "" false`,
		`[{pots false} {urn true} {refresh false}] 0  top_up "" true`,
	}
	for _, line := range want {
		if !slices.Contains(got, line) {
			t.Errorf("no conflict %s in\n%s", line, strings.Join(got, "\n"))
		}
	}
	day := slices.IndexFunc(m.Conflicts, func(c planfile.Conflict) bool { return slices.Contains(c.Where, "mix_since") })
	if day < 0 || m.Conflicts[day].Theirs.Value != working.Date(civil.MustParse("2026-05-01")) || m.Conflicts[day].Base.String() != "2026-03-01" {
		t.Errorf("no conflict on the day in %s", got)
	}
}

// A version that both may have begun from tells who changed a value; it decides
// nothing that is not told.
func TestMergeCopyGoesByWhatWas(t *testing.T) {
	was := decode(t, "fourturn: 1\ntitle: Yard\ncurrency: EUR\npots:\n  urn: {name: Urn}\n  tub: {name: Tub}\n")
	mine := decode(t, "fourturn: 1\ntitle: Roof\ncurrency: EUR\npots:\n  urn: {name: Urn}\n  tub: {name: Trough}\n")
	theirs := decode(t, "fourturn: 1\ntitle: Yard\ncurrency: CHF\npots:\n  urn: {name: Urn}\n  tub: {name: Bucket}\n  jar: {name: Jar}\n")
	m, err := planfile.MergeCopy(was, mine, theirs, nil)
	if err != nil {
		t.Fatal(err)
	}
	var got []string
	for _, c := range m.Conflicts {
		got = append(got, fmt.Sprintf("%v %s|%s|%s %v %v", c.Where, c.Base, c.Mine, c.Theirs, c.Taken == planfile.Theirs, c.OneSided))
	}
	want := "[title] Yard|Roof|Yard false true\n[currency] EUR|EUR|CHF true true\n[pots tub name] Tub|Trough|Bucket false false"
	if strings.Join(got, "\n") != want {
		t.Errorf("conflicts\n%s\nwant\n%s", strings.Join(got, "\n"), want)
	}
	if m.Plan.Title != "Roof" || m.Plan.Currency != "CHF" || len(m.Plan.Pots) != 3 {
		t.Errorf("merged into %+v", m.Plan)
	}
}
