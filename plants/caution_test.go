package plants_test

import (
	"strings"
	"testing"

	"fourturn/planner/finding"
	"fourturn/plants"
)

var (
	withCats = plants.Household{Cats: true}
	withAll  = plants.Household{Cats: true, Dogs: true, Children: true}
)

// True lilies and daylilies: kidney failure in cats (US Food and Drug
// Administration). What is only called a lily is not refused.
func TestLiliesAreRefusedWhereCatsLive(t *testing.T) {
	refused := map[string]bool{"pot-lily": true, "daylily": true}
	for _, p := range builtin(t).Plants() {
		f, got := plants.Refused(p, withCats)
		if got != refused[p.ID] {
			t.Errorf("%s is refused: %v", p.ID, got)
		}
		if got && (f.Severity != finding.Error || f.Code != "plants.lily_and_cats") {
			t.Errorf("%s: %+v", p.ID, f)
		}
		if _, got := plants.Refused(p, plants.Household{Dogs: true, Children: true}); got {
			t.Errorf("%s is refused without cats", p.ID)
		}
	}
	for _, id := range []string{"calla", "african-lily", "canna", "lilyturf", "pineapple-lily"} {
		if _, got := plants.Refused(plant(t, id), withCats); got {
			t.Errorf("%s is not a lily", id)
		}
	}
}

// A lily of the person's own cannot be entered as harmless, whatever its name.
func TestOwnLilyIsRefused(t *testing.T) {
	text := changed(t, "Callistephus chinensis", "Lilium regale")
	text = strings.Replace(text, "cats: not_listed", "cats: listed_dangerous", 1)
	_, book := own(t, strings.Replace(text, "Asteraceae", "Liliaceae", 1))
	p, _ := book.Plant("garden-aster")
	if _, got := plants.Refused(p, withCats); !got {
		t.Error("a lily under another name is let in")
	}
}

func TestCautions(t *testing.T) {
	for _, c := range []struct {
		plant string
		home  plants.Household
		codes string
	}{
		{"pansy", withAll, "plants.caution.not_listed"}, // people only
		{"pansy", withCats, ""},
		{"nemesia", withCats, "plants.caution.not_listed"},
		{"snapdragon", withCats, "plants.caution.conflicting"},
		{"dwarf-yew", withAll, "plants.caution.listed_dangerous plants.caution.listed_dangerous plants.caution.listed_dangerous"},
		{"pot-lily", withCats, "plants.lily_and_cats plants.caution.listed_dangerous"},
		{"pot-lily", plants.Household{}, ""},
	} {
		var codes []string
		for _, f := range plants.Cautions(plant(t, c.plant), c.home) {
			codes = append(codes, f.Code)
		}
		if got := strings.Join(codes, " "); got != c.codes {
			t.Errorf("%s in %+v: %q, want %q", c.plant, c.home, got, c.codes)
		}
	}
}

// Nothing that is not on a list, or on which lists conflict, passes in silence.
func TestNotListedIsNeverCalledSafe(t *testing.T) {
	for _, p := range builtin(t).Plants() {
		said := len(plants.Cautions(p, withAll))
		silent := 0
		for _, c := range plants.Creatures {
			if p.Toxicity.For(c) == plants.ListedNonToxic {
				silent++
			}
		}
		if _, refused := plants.Refused(p, withAll); refused {
			silent--
		}
		if said+silent != len(plants.Creatures) {
			t.Errorf("%s: %d findings, %d listed as non-toxic", p.ID, said, silent)
		}
	}
	defer func() {
		if recover() == nil {
			t.Error("a listing for parrots")
		}
	}()
	plant(t, "pansy").Toxicity.For("parrots")
}

// Regions as named by the sources for ivy (Athens Banner-Herald 2001) and lantana
// (list of the Texas type).
func TestInvasiveNotes(t *testing.T) {
	for id, want := range map[string]int{"english-ivy": 2, "lantana": 1, "pansy": 0} {
		notes := plants.InvasiveNotes(plant(t, id))
		if len(notes) != want {
			t.Errorf("%s: %v", id, notes)
		}
		for _, n := range notes {
			if n.Severity != finding.Note || n.Args[1].Value.Text == "" {
				t.Errorf("%s: %+v", id, n)
			}
		}
	}
}
