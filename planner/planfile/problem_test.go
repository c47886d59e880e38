package planfile_test

import (
	"encoding/json"
	"errors"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"golang.org/x/tools/txtar"

	"fourturn/planner"
	"fourturn/planner/civil"
	"fourturn/planner/finding"
	"fourturn/planner/planfile"
	"fourturn/planner/quantity"
)

func TestProblemsNameLineColumnAndPath(t *testing.T) {
	paths, err := filepath.Glob(filepath.Join(plans, "bad", "*.txtar"))
	if err != nil || len(paths) == 0 {
		t.Fatal("no cases", err)
	}
	for _, path := range paths {
		t.Run(filepath.Base(path), func(t *testing.T) {
			archive, err := txtar.ParseFile(path)
			if err != nil {
				t.Fatal(err)
			}
			_, err = planfile.Decode(part(t, archive, "plan.yaml"))
			var problems *planfile.Problems
			if !errors.As(err, &problems) {
				t.Fatalf("Decode = %v", err)
			}
			if got, want := err.Error()+"\n", string(part(t, archive, "problems")); got != want {
				t.Errorf("got\n%s\nwant\n%s", got, want)
			}
			for _, p := range problems.List {
				if p.Line < 1 || p.Column < 1 || p.Severity != finding.Error {
					t.Errorf("%+v has no place or no severity", p)
				}
			}
		})
	}
}

// The words of problems are here for logs and in the translations for the
// screen: both must be the same.
func TestTextsAreThoseOfTheTranslations(t *testing.T) {
	data, err := os.ReadFile("../../app/words/translations/en/planfile.json")
	if err != nil {
		t.Fatal(err)
	}
	var words map[string]string
	if err := json.Unmarshal(data, &words); err != nil {
		t.Fatal(err)
	}
	for code, text := range planfile.Texts() {
		if words[code] != text {
			t.Errorf("%s is %q in the translations, want %q", code, words[code], text)
		}
	}
}

// Every code has a case somewhere that makes it.
func TestEveryCodeIsMade(t *testing.T) {
	if planfile.UnderRace {
		t.Skip("large inputs")
	}
	seen := map[string]bool{}
	note := func(err error) {
		var problems *planfile.Problems
		if errors.As(err, &problems) {
			for _, p := range problems.List {
				seen[p.Code] = true
			}
		}
	}
	paths, _ := filepath.Glob(filepath.Join(plans, "bad", "*.txtar"))
	for _, path := range paths {
		archive, err := txtar.ParseFile(path)
		if err != nil {
			t.Fatal(err)
		}
		_, err = planfile.Decode(part(t, archive, "plan.yaml"))
		note(err)
	}
	for _, text := range []string{
		"fourturn: 1\ntitle: \xff",
		strings.Repeat("[", 50) + strings.Repeat("]", 50),
		"fourturn: 1\nsites: " + strings.Repeat("{a: ", 40) + "x" + strings.Repeat("}", 40),
		"fourturn: 1\n" + strings.Repeat("#", planfile.MaxBytes),
		"fourturn: 1\n" + strings.Repeat("- ", planfile.MaxNodes+1),
	} {
		_, err := planfile.Decode([]byte(text))
		note(err)
	}
	note(planfile.Check(&planner.Plan{Title: "\xff"}))
	for code := range planfile.Texts() {
		if !seen[code] {
			t.Errorf("no case makes %s", code)
		}
	}
}

func TestManyProblemsAreCounted(t *testing.T) {
	_, err := planfile.Decode([]byte("fourturn: 1\n" + strings.Repeat("x: 1\n", 3*planfile.MaxProblems)))
	var problems *planfile.Problems
	if !errors.As(err, &problems) || len(problems.List) != planfile.MaxProblems || problems.More != 2*planfile.MaxProblems {
		t.Errorf("%d problems and %d more", len(problems.List), problems.More)
	}
}

// Check refuses plans that could not be read back, whatever made them.
func TestCheckRefuses(t *testing.T) {
	nan := func() float64 { var zero float64; return zero / zero }()
	far := quantity.Length(1e9)
	for name, plan := range map[string]*planner.Plan{
		"NaN":              {Risk: nan},
		"negative":         {Mix: planner.MixSettings{Settling: -0.1}},
		"absurd":           {Sites: []planner.Site{{ID: "a", Elevation: &far}}},
		"no id":            {Pots: []planner.Pot{{}}},
		"same id":          {Pots: []planner.Pot{{ID: "a"}, {ID: "a"}}},
		"path as id":       {Pots: []planner.Pot{{ID: "../a"}}},
		"no such spot":     {Pots: []planner.Pot{{ID: "a", Spot: "b"}}},
		"same season":      {Pots: []planner.Pot{{ID: "a", Plantings: []planner.Planting{{Season: planner.Spring}, {Season: planner.Spring}}}}},
		"unknown season":   {Pots: []planner.Pot{{ID: "a", Plantings: []planner.Planting{{Season: "monsoon"}}}}},
		"unknown light":    {Spots: []planner.Spot{{ID: "a", Light: "dim"}}},
		"unknown units":    {Units: 7},
		"long title":       {Title: strings.Repeat("x", planfile.MaxName+1)},
		"not UTF-8":        {Title: "\xff"},
		"half a day":       {Log: []planner.Entry{{ID: "a", Date: -5, Kind: planner.Fed}}},
		"no such date":     {Sites: []planner.Site{{ID: "a", Frost: planner.FrostDates{Last: civil.MonthDay{Month: 2, Day: 30}}}}},
		"currency":         {Currency: "€"},
		"analysis":         {Products: []planner.Product{{ID: "a", Kind: planner.Soluble, Analysis: "lots"}}},
		"negative count":   {Recipes: []planner.Recipe{{ID: "a", Parts: []planner.Part{{Plant: "x", Count: -1}}}}},
		"plant of no id":   {Recipes: []planner.Recipe{{ID: "a", Parts: []planner.Part{{Count: 1}}}}},
		"endless number":   {Feeding: planner.FeedingSettings{Can: quantity.Volume(1 / nan)}},
		"retired too late": {Mix: planner.MixSettings{RetireAfter: 101}},
		"no such blend":    {Mix: planner.MixSettings{Blend: "b"}},
		"blend of nothing": {Blends: []planner.Blend{{ID: "a", Parts: []planner.BlendPart{{Product: "b", Parts: 1}}}}},
		"minus a part":     {Products: []planner.Product{{ID: "b", Kind: planner.Ingredient}}, Blends: []planner.Blend{{ID: "a", Parts: []planner.BlendPart{{Product: "b", Parts: -1}}}}},
		"unknown mix":      {Mix: planner.MixSettings{Substrate: "mud"}},
		"product of none":  {Products: []planner.Product{{ID: "a"}}},
	} {
		if err := planfile.Check(plan); err == nil {
			t.Errorf("%s: Check finds nothing wrong", name)
		}
		if text, err := planfile.Encode(plan); err == nil {
			t.Errorf("%s: written as\n%s", name, text)
		}
	}
}

func TestPosition(t *testing.T) {
	const text = `fourturn: 1
title: A
spots:
  door: {name: Door, light: sun}
pots:
  urn:
    name: Urn
    plantings:
      summer:
        plants:
          - {plant: ivy, count: 2}
          - {plant: fern}
log:
  - {id: x1, date: 2027-05-01, kind: fed, pots: [urn]}
`
	d, err := planfile.Decode([]byte(text))
	if err != nil {
		t.Fatal(err)
	}
	for where, want := range map[string][3]int{
		"title":                                 {2, 1, 1},
		"spots.door.light":                      {4, 22, 1},
		"pots.urn":                              {6, 3, 1},
		"pots.urn.plantings.summer.plants.fern": {12, 13, 1},
		"pots.urn.diameter":                     {6, 3, 1}, // left out: the pot
		"log.x1.date":                           {14, 14, 1},
		"log.x1.pots.urn":                       {14, 50, 1},
		"nothing.at.all":                        {1, 1, 0},
		"":                                      {1, 1, 0},
	} {
		line, column, ok := d.Position(strings.Split(where, "."))
		if line != want[0] || column != want[1] || ok != (want[2] == 1) {
			t.Errorf("%s is at %d:%d (%v), want %v", where, line, column, ok, want)
		}
	}
}
