package climate_test

import (
	"encoding/json"
	"go/ast"
	"go/parser"
	"go/token"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"fourturn/planner/civil"
	"fourturn/planner/climate"
	"fourturn/planner/working"
)

// words reads the English text of this chapter's keys.
func words(t *testing.T) map[string]string {
	t.Helper()
	data, err := os.ReadFile(filepath.Join("..", "..", "app", "words", "translations", "en", "climate.json"))
	if err != nil {
		t.Fatal(err)
	}
	m := map[string]string{}
	if err := json.Unmarshal(data, &m); err != nil {
		t.Fatal(err)
	}
	return m
}

// constants returns the values of the string constants of each type of the package.
func constants(t *testing.T) map[string][]string {
	t.Helper()
	files, err := filepath.Glob("*.go")
	if err != nil {
		t.Fatal(err)
	}
	found := map[string][]string{}
	for _, name := range files {
		if strings.HasSuffix(name, "_test.go") {
			continue
		}
		f, err := parser.ParseFile(token.NewFileSet(), name, nil, 0)
		if err != nil {
			t.Fatal(err)
		}
		ast.Inspect(f, func(n ast.Node) bool {
			switch n := n.(type) {
			case *ast.ValueSpec:
				kind, ok := n.Type.(*ast.Ident)
				for _, v := range n.Values {
					if lit, isLit := v.(*ast.BasicLit); ok && isLit && lit.Kind == token.STRING {
						s, _ := strconv.Unquote(lit.Value)
						found[kind.Name] = append(found[kind.Name], s)
					}
				}
			case *ast.BasicLit:
				if s, err := strconv.Unquote(n.Value); err == nil && strings.HasPrefix(s, "climate.") && !strings.HasSuffix(s, "_") {
					found["key"] = append(found["key"], s)
				}
			}
			return true
		})
	}
	return found
}

// Every key that this package makes has English text, and no text is left over
// from a key that is gone.
func TestEveryKeyHasWords(t *testing.T) {
	text, found := words(t), constants(t)
	prefixes := map[string]string{
		"Fault": "fault_", "Layout": "layout_", "Certainty": "certainty_", "DateOrder": "order_", "Unit": "unit_",
		"Outcome": "outcome_", "PlaceKind": "kind_", "Reason": "reason_", "SeasonName": "season_", "FreezeNote": "freeze_note_",
	}
	wanted := map[string]bool{}
	for _, key := range found["key"] {
		wanted[key] = true
	}
	for kind, prefix := range prefixes {
		if len(found[kind]) == 0 {
			t.Errorf("no constants of type %s", kind)
		}
		for _, v := range found[kind] {
			if v != "" {
				wanted["climate."+prefix+v] = true
			}
		}
	}
	for _, s := range climate.Spots() {
		wanted["climate.spot_"+s.Key] = true
	}
	for key := range wanted {
		if text[key] == "" {
			t.Errorf("%s has no words", key)
		}
	}
	for key := range text {
		if !wanted[key] {
			t.Errorf("%s is not made anywhere", key)
		}
	}
}

// Every figure has a working with a name, a formula, inputs and sources; those
// that rest on an estimate say so.
func TestWorkings(t *testing.T) {
	text := words(t)
	day := civil.MustParse("2027-05-10")
	for _, place := range []string{"Chicago", "Heathrow", "Sydney", "Kuala Lumpur"} {
		c := climate.FromStation(station(t, place))
		wall, _ := climate.SpotByKey("south_wall")
		c = c.At(wall)
		seasons := c.Seasons(climate.Cautious)
		traces := []working.Trace{
			c.NormalsOn(day).Working(), c.LastFreeze(0, climate.Cautious).Working(), c.FirstFreeze(0, climate.Even).Working(),
			c.Freeze(0).SafeFrom(climate.Even).Working(), c.Freeze(0).SafeUntil(climate.Even).Working(),
			c.Freeze(0).FreeDays(climate.Bold).Working(), c.Freeze(-2).SpringOddsOn(day.MonthDay()).Working(),
			c.Freeze(-2).AutumnOddsOn(day.MonthDay()).Working(), c.ExtremeMin().Working(), c.HotDays(30).Working(),
			c.ReferenceET(day).Working(), c.DayLength(day).Working(), c.Shift().Working(),
			c.RootZone(0.3, climate.SunOnDarkPot).Working(), c.RootZone(0.3, climate.SunOnDarkPot).HottestWorking(),
			c.RadiationOn(day).Working(), c.MonthLow(3).Working(), c.MonthHigh(7).Working(), c.HardinessWorking(), c.HeatWorking(), c.HotSpellRisk(climate.HotSpell{Above: 30, Days: 3}).Working(),
			seasons.Working(climate.CoolSpring), seasons.Working(climate.Summer), seasons.Working(climate.Autumn), seasons.Working(climate.Winter),
		}
		for _, trace := range traces {
			if text[trace.Name] == "" || trace.Formula == "" || len(trace.Inputs) == 0 || trace.Source.Status == "" {
				t.Errorf("%s: thin trace %+v", place, trace)
			}
			for _, in := range trace.Inputs {
				if text[in.Name] == "" || in.Symbol == "" || in.Source.Status == "" {
					t.Errorf("%s, %s: thin input %+v", place, trace.Name, in)
				}
			}
			for _, note := range trace.Notes {
				if text[note] == "" {
					t.Errorf("%s, %s: note %s has no words", place, trace.Name, note)
				}
			}
		}
		estimated := c.LastFreeze(0, climate.Even)
		trace := estimated.Working()
		if c.Freeze(0).Estimated() != trace.Soft() {
			t.Errorf("%s: estimated %v, soft %v", place, c.Freeze(0).Estimated(), trace.Soft())
		}
	}
}

func TestCredits(t *testing.T) {
	notice, err := os.ReadFile(filepath.Join("..", "..", "NOTICE"))
	if err != nil {
		t.Fatal(err)
	}
	total := 0
	for _, c := range climate.Credits() {
		if c.Publisher == "" || c.Title == "" || c.Licence == "" || c.Stations == 0 {
			t.Errorf("%+v", c)
		}
		if c.Source != climate.SourceFreezeUS {
			total += c.Stations
		}
		for _, must := range []string{c.Title, c.Licence, c.Statement} {
			if !strings.Contains(strings.Join(strings.Fields(string(notice)), " "), must) {
				t.Errorf("NOTICE lacks %q", must)
			}
		}
	}
	if total != len(climate.Stations()) {
		t.Errorf("credits for %d of %d stations", total, len(climate.Stations()))
	}
}
