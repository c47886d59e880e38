package planner_test

import (
	"errors"
	"testing"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"fourturn/planner"
	"fourturn/planner/civil"
)

// An edit makes another plan and leaves the one it began with as it was, in every part
// that it could reach: undo shows the old plan itself.
func TestEditsLeaveThePlanAlone(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		plan, before := yard(), yard()
		ids := rapid.SliceOfDistinct(rapid.SampledFrom([]string{"round", "square", "trough"}), rapid.ID[string]).Draw(t, "pots")
		edited, err := plan.WithPots(ids, func(p *planner.Pot) {
			p.Name, p.Vessel.Height = "another", 1
			p.Plantings[0].Start = civil.MustParse("2028-03-01")
			p.Plantings[0].Plants[0].Count = 99
		})
		if err != nil {
			t.Fatal(err)
		}
		edited = edited.WithEntry(planner.Entry{ID: "x", Date: today, Kind: planner.Noted})
		if edited, err = edited.WithoutPot("square"); err != nil {
			t.Fatal(err)
		}
		if edited, err = edited.WithNewPots("round", planner.Pot{ID: "new"}); err != nil {
			t.Fatal(err)
		}
		if edited, err = edited.WithSite("home", func(s *planner.Site) { s.Name = "elsewhere" }); err != nil {
			t.Fatal(err)
		}
		if edited, err = edited.WithProduct("mix", func(p *planner.Product) { p.Packs[0].Price = 1 }); err != nil {
			t.Fatal(err)
		}
		if edited, err = edited.WithSpot("open", func(s *planner.Spot) { s.Name = "by the wall" }); err != nil {
			t.Fatal(err)
		}
		bare, err := edited.WithoutSite("home")
		if err != nil || len(bare.Sites)+len(bare.Spots) != 0 || bare.Pots[0].Spot != "" || edited.PotsAt("open") == 0 {
			t.Fatalf("%v; without its site the plan has %d spots", err, len(bare.Spots))
		}
		if d := cmp.Diff(before, plan); d != "" {
			t.Fatalf("the plan changed under the edit:\n%s", d)
		}
		if len(edited.Pots) != 3 || edited.PotIndex("new") != 1 || len(edited.Log) != 1 {
			t.Fatalf("the edited plan has %d pots and %d entries", len(edited.Pots), len(edited.Log))
		}
	})
}

func TestEditsOfWhatIsNotThere(t *testing.T) {
	plan := yard()
	nothing := func(*planner.Pot) {}
	for name, err := range map[string]error{
		"pot":   second(plan.WithPot("gone", nothing)),
		"site":  second(plan.WithSite("gone", func(*planner.Site) {})),
		"entry": second(plan.WithoutEntry("gone")),
		"spot":  second(plan.WithoutSpot("gone")),
	} {
		var missing *planner.MissingError
		if !errors.As(err, &missing) || missing.Kind != name || missing.ID != "gone" {
			t.Errorf("%s: %v", name, err)
		}
	}
}

func TestSpotsAndSitesThatAreNotThere(t *testing.T) {
	plan := yard()
	for _, err := range []error{second(plan.WithoutSite("gone")), second(plan.WithSpot("gone", func(*planner.Spot) {}))} {
		var missing *planner.MissingError
		if !errors.As(err, &missing) || missing.ID != "gone" {
			t.Error(err)
		}
	}
}

func second(_ planner.Plan, err error) error { return err }

func TestEntriesStandByDate(t *testing.T) {
	var plan planner.Plan
	for _, day := range []string{"2027-06-08", "2027-01-31", "2028-02-29", "2027-06-08"} {
		plan = plan.WithEntry(planner.Entry{ID: day, Date: civil.MustParse(day)})
	}
	for i := 1; i < len(plan.Log); i++ {
		if plan.Log[i].Date < plan.Log[i-1].Date {
			t.Errorf("%v stands behind %v", plan.Log[i].Date, plan.Log[i-1].Date)
		}
	}
}
