package begin_test

import (
	"errors"
	"slices"
	"strings"
	"testing"

	"fourturn/app/screen/begin"
	"fourturn/app/screen/screentest"
	"fourturn/app/words"
	"fourturn/planner"
	"fourturn/planner/finding"
	"fourturn/planner/planfile"
	"fourturn/planner/quantity"
	"fourturn/plants"
)

func open(t *testing.T, plan *planner.Plan) (*screentest.Desk, *begin.Screen) {
	t.Helper()
	d := screentest.Open(t, plan, screentest.SummerDay)
	ref := planner.Reference{Book: screentest.Book(t)}
	return d, begin.New(d.Session, d.Words, ref, screentest.SummerDay)
}

// Place, pots, taste: the year is there, in one edit that undo takes back.
func TestThreeAnswersMakeAYear(t *testing.T) {
	d, s := open(t, screentest.Empty())
	s.SearchPlace("des moines")
	if !s.HasPlace() || !strings.Contains(s.Climate(), "out from ") || strings.Contains(s.Climate(), "from .") {
		t.Fatalf("place %v, said %q", s.Places(), s.Climate())
	}
	if err := s.SetCount("4"); err != nil {
		t.Fatal(err)
	}
	if err := s.Finish(); err != nil {
		t.Fatal(err)
	}
	d.Settle()
	all, _ := d.Outlook()
	if len(all.Pots) != 4 || all.Plan.Units != quantity.USCustomary || !all.Sites[0].Known {
		t.Fatalf("%d pots, units %v", len(all.Pots), all.Plan.Units)
	}
	for _, pot := range all.Pots {
		if len(pot.Stands) < 4 || len(pot.Feeds) == 0 || pot.Charge.IsZero() {
			t.Errorf("%s has %d plantings, %d feeds", pot.Pot.Name, len(pot.Stands), len(pot.Feeds))
		}
	}
	if len(all.Rounds) == 0 || all.Rounds[0].Product == all.Rounds[1].Product {
		t.Error("the feeds do not take turns")
	}
	for _, f := range all.Findings {
		if f.Severity >= finding.Error {
			t.Errorf("the new plan has an error: %s", d.Words.Finding(f, quantity.Metric))
		}
	}
	if got := d.UndoName(); got != "new plan for Des Moines" {
		t.Errorf("undo is called %q", got)
	}
	d.Undo()
	if len(d.Plan().Pots) != 0 {
		t.Error("undo left the new plan")
	}
	d.Redo()
	if len(d.Plan().Pots) != 4 {
		t.Error("redo did not bring it back")
	}
}

func TestUnsavedWorkIsNotLost(t *testing.T) {
	d, s := open(t, screentest.Example(t))
	d.Edit(func(p *planner.Plan) { p.Title = "Changed" })
	s.SearchPlace("oslo")
	if err := s.Finish(); err == nil || d.Plan().Title != "Changed" {
		t.Errorf("unsaved work was replaced: %v, %q", err, d.Plan().Title)
	}
}

func TestPlacesAreSearchedByName(t *testing.T) {
	_, s := open(t, screentest.Empty())
	for typed, want := range map[string]quantity.System{"München": quantity.Metric, "Muenchen": quantity.Metric, "Nashville": quantity.USCustomary} {
		s.SearchPlace(typed)
		if !s.HasPlace() {
			t.Errorf("%q is not found", typed)
			continue
		}
		plan := s.Plan()
		if plan.Units != want {
			t.Errorf("%q reads %v", typed, plan.Units)
		}
	}
	s.SearchPlace("xqxq")
	if s.HasPlace() || len(s.Places()) != 0 || s.Climate() != "" || s.Preview() != nil {
		t.Error("nonsense is a place")
	}
	s.SearchPlace("san")
	first := s.Places()[0]
	s.ChoosePlace(2)
	if plan := s.Plan(); !strings.HasPrefix(s.Places()[2].Name, plan.Sites[0].Name) || plan.Sites[0].Name == first.Name && s.Places()[2] != first {
		t.Errorf("chose %q", plan.Sites[0].Name)
	}
}

func TestPotsBySizeAndByMeasure(t *testing.T) {
	_, s := open(t, screentest.Empty())
	s.SearchPlace("hamburg")
	if err := s.AddPots(); err != nil { // the usual size
		t.Fatal(err)
	}
	s.ChooseSize(0) // round, to be measured
	var refused *words.Refusal
	if err := s.AddPots(); !errors.As(err, &refused) {
		t.Errorf("a pot without measures: %v", err)
	}
	for i, typed := range []string{"40", "30 cm", "0.4 m"} {
		if err := s.SetField(i, typed); err != nil {
			t.Errorf("field %d refuses %q: %v", i, typed, err)
		}
	}
	for _, typed := range []string{"", "wide", "90 m", "-3 cm"} {
		if err := s.SetField(0, typed); !errors.As(err, &refused) || refused.Text == "" {
			t.Errorf("%q as a diameter: %v", typed, err)
		}
	}
	for _, typed := range []string{"", "0", "-1", "1.5", "501", "many"} {
		if err := s.SetCount(typed); !errors.As(err, &refused) {
			t.Errorf("%q pots: %v", typed, err)
		}
	}
	if err := s.SetCount(" 2 "); err != nil {
		t.Error(err)
	}
	if err := s.AddPots(); err != nil {
		t.Error(err)
	}
	if lines := s.Lines(); len(lines) != 2 || !strings.Contains(lines[1], "2 × round, tapered") || strings.Contains(lines[1], "⟦") {
		t.Errorf("on the list: %q", lines)
	}
	plan := s.Plan()
	if len(plan.Pots) != 5 || plan.Pots[4].Vessel.TopDiameter != 40*quantity.Centimetre || plan.Pots[4].ID != "pot-5" {
		t.Errorf("%d pots, the last %+v", len(plan.Pots), plan.Pots[len(plan.Pots)-1])
	}
	s.RemovePots(0)
	s.RemovePots(7)
	if len(s.Plan().Pots) != 2 {
		t.Error("a line was not taken off")
	}
}

// Every combination of answers makes a plan that a file can hold, in which every plant
// suits light and season and harms nobody who lives there.
func TestEveryTasteIsAnswered(t *testing.T) {
	_, s := open(t, screentest.Empty())
	book := screentest.Book(t)
	for _, place := range []string{"hamburg", "phoenix", "sydney", "oslo", "darwin"} {
		s.SearchPlace(place)
		if !s.HasPlace() {
			t.Fatalf("no %s", place)
		}
		for light := range s.Lights() {
			for colours := range s.Palettes() {
				for style := range s.Styles() {
					for house := range 8 {
						h := planner.Household{Cats: house&1 > 0, Dogs: house&2 > 0, Children: house&4 > 0}
						s.SetTaste(begin.Taste{Light: light, Colours: colours, Style: style, Household: h})
						plan := s.Plan()
						if house%7 == 0 {
							if err := planfile.Check(&plan); err != nil {
								t.Fatal(err)
							}
						}
						checkRecipes(t, book, plan)
					}
				}
			}
		}
	}
}

func checkRecipes(t *testing.T, book *plants.Book, plan planner.Plan) {
	t.Helper()
	for _, r := range plan.Recipes {
		total := 0.0
		for _, part := range r.Parts {
			p, ok := book.Plant(part.Plant)
			if !ok || !slices.Contains(p.Light, plants.Light(plan.Spots[0].Light)) || !slices.Contains(p.Seasons, plants.Season(r.Season)) {
				t.Errorf("%s in %s, %s", part.Plant, r.Season, plan.Spots[0].Light)
			}
			h := plan.Household
			for _, f := range plants.Cautions(p, plants.Household{Cats: h.Cats, Dogs: h.Dogs, Children: h.Children}) {
				if f.Severity >= finding.Caution {
					t.Errorf("%s is listed harmful in this household: %s", p.ID, f.Code)
				}
			}
			total += part.Share
		}
		if total > 1.0001 {
			t.Errorf("%s fills %.2f of the pot", r.Season, total)
		}
	}
}

func TestTasteShows(t *testing.T) {
	_, s := open(t, screentest.Empty())
	s.SearchPlace("hamburg")
	said := map[string]bool{}
	for colours := range s.Palettes() {
		taste := s.Taste()
		taste.Colours = colours
		s.SetTaste(taste)
		text := ""
		for _, p := range s.Preview() {
			text += p.Season + ": " + p.Plants + "\n"
		}
		if strings.Contains(text, "⟦") || text == "" {
			t.Errorf("preview %q", text)
		}
		said[text] = true
	}
	if len(said) < 4 {
		t.Errorf("five palettes give %d different years", len(said))
	}
}
