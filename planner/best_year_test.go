package planner_test

import (
	"context"
	"errors"
	"math"
	"slices"
	"testing"

	"fourturn/planner"
	"fourturn/planner/civil"
	"fourturn/plants"
)

// bestOf finds the best year of the first pot of a plan.
func bestOf(t testing.TB, plan *planner.Plan) *planner.BestYear {
	t.Helper()
	best, err := planner.FindBestYear(context.Background(), planner.WorkOut(plan, reference(t), today), 0)
	if err != nil {
		t.Fatal(err)
	}
	return best
}

// plantsIn lists the ids of all plants that a choice would plant.
func plantsIn(plan *planner.Plan, c *planner.YearChoice) []string {
	var ids []string
	for _, stay := range c.Stays {
		if stay.Stood {
			continue
		}
		parts := stay.Planting.Plants
		if r := plan.Recipe(stay.Planting.Recipe); r != nil && len(parts) == 0 {
			parts = r.Parts
		}
		for _, part := range parts {
			ids = append(ids, part.Plant)
		}
	}
	return ids
}

func TestBestYearHasFourOthersThatDiffer(t *testing.T) {
	plan := yard()
	best := bestOf(t, &plan)
	if len(best.Choices) < 5 {
		t.Fatalf("%d choices of %d plantings", len(best.Choices), best.Weighed)
	}
	for i, c := range best.Choices[1:] {
		if c.Loss < -1e-9 || c.Days < 28 || len(c.Gains)+len(c.Losses) == 0 {
			t.Errorf("choice %d loses %v over %d days: gains %v, losses %v", i+1, c.Loss, c.Days, c.Gains, c.Losses)
		}
		if got := best.Choices[0].Total.Number() - c.Total.Number(); math.Abs(got-c.Loss) > 1e-6 {
			t.Errorf("choice %d falls %v short, and is said to fall %v", i+1, got, c.Loss)
		}
		c.Total.Working()
	}
}

// The year goes through the seasons in their order, each planting once, on days within
// its own spread.
func TestBestYearGoesThroughTheSeasons(t *testing.T) {
	plan := yard()
	for _, c := range bestOf(t, &plan).Choices {
		var seasons []planner.Season
		for i, stay := range c.Stays {
			if i > 0 && stay.From != c.Stays[i-1].Until {
				t.Errorf("a gap before %v", stay.From)
			}
			if stay.Stood || stay.Empty {
				continue
			}
			seasons = append(seasons, stay.Planting.Season)
			if stay.From < stay.Good.From || stay.From > stay.Good.To || stay.Earliest > stay.From || stay.Latest < stay.From {
				t.Errorf("%s on %v, good %v, %v to %v", stay.Planting.Season, stay.From, stay.Good, stay.Earliest, stay.Latest)
			}
		}
		want := []planner.Season{planner.Autumn, planner.Winter, planner.Spring, planner.Summer}
		if len(seasons) < 4 || !slices.Equal(seasons[:4], want) {
			t.Errorf("seasons %v, want %v", seasons, want)
		}
	}
}

func TestBestYearKeepsTasteAndHousehold(t *testing.T) {
	plan := yard()
	before := plantsIn(&plan, &bestOf(t, &plan).Choices[0])
	plan.Year.RefusedPlants = before
	plan.Household = planner.Household{Cats: true, Dogs: true}
	book := reference(t).Book
	for _, c := range bestOf(t, &plan).Choices {
		for _, id := range plantsIn(&plan, &c) {
			if slices.Contains(before, id) {
				t.Errorf("%s is refused, and planted", id)
			}
			own := slices.ContainsFunc(plan.Pots[0].Plantings, func(p planner.Planting) bool {
				return slices.ContainsFunc(p.Plants, func(part planner.Part) bool { return part.Plant == id })
			})
			if p, ok := book.Plant(id); ok && !own && (p.Toxicity.Cats == plants.ListedToxic || p.Toxicity.Dogs == plants.ListedToxic) {
				t.Errorf("%s is listed as toxic", id)
			}
		}
	}
}

// A wish holds; one that cannot says why, and what would.
func TestBestYearKeepsPins(t *testing.T) {
	plan := yard()
	plan.Pots[0].Pins = []planner.Pin{
		{ID: "mums", Plant: "garden-mum", Days: planner.Days{From: civil.MustParse("2027-10-10")}},
		{ID: "dreams", Plant: "no-such-plant", Days: planner.Days{From: civil.MustParse("2028-06-10")}},
	}
	plan.Pots[0].Bans = []planner.Ban{{ID: "no", Plant: "petunia"}}
	best := bestOf(t, &plan)
	for _, c := range best.Choices {
		for _, stay := range c.Stays {
			day := civil.MustParse("2027-10-10")
			if stay.From <= day && day < stay.Until && !slices.ContainsFunc(stay.Planting.Plants, func(p planner.Part) bool { return p.Plant == "garden-mum" }) {
				t.Errorf("on %v stands %v", day, stay.Planting)
			}
		}
		if slices.Contains(plantsIn(&plan, &c), "petunia") {
			t.Error("petunias are refused, and planted")
		}
	}
	if len(best.Findings) != 1 || best.Findings[0].Code != "rotation.pin_unknown" || !slices.Contains(best.Findings[0].Where, "dreams") {
		t.Errorf("findings %v", best.Findings)
	}
}

func TestFewerChangeOutsAYear(t *testing.T) {
	plan := yard()
	plan.Pots[0].ChangeOuts = 2
	for _, c := range bestOf(t, &plan).Choices {
		seasons := map[planner.Season]bool{}
		for _, stay := range c.Stays {
			if !stay.Stood && !stay.Empty {
				seasons[stay.Planting.Season] = true
			}
		}
		if len(seasons) > 2 {
			t.Errorf("plantings of %v, two a year are wanted", seasons)
		}
	}
	plan.Pots[0].ChangeOuts = 5
	if found := bestOf(t, &plan).Findings; len(found) != 1 || found[0].Code != "rotation.fewer_change_outs" {
		t.Errorf("findings %v for five a year", found)
	}
}

// What is taken becomes the pot's own, and that of the pots that match it; the front
// door then finds days for it.
func TestTakingAYear(t *testing.T) {
	plan := yard()
	plan.Pots[0].Match, plan.Pots[1].Match = "pair", "pair"
	best := bestOf(t, &plan)
	got, err := planner.TakeYear(plan, best, 1)
	if err != nil {
		t.Fatal(err)
	}
	if len(got.Pots[0].Plantings) != 4 || !slices.EqualFunc(got.Pots[0].Plantings, got.Pots[1].Plantings, func(a, b planner.Planting) bool {
		return a.Season == b.Season && a.Recipe == b.Recipe && slices.Equal(a.Plants, b.Plants)
	}) {
		t.Errorf("taken %v and %v", got.Pots[0].Plantings, got.Pots[1].Plantings)
	}
	if len(plan.Pots[0].Plantings) != 4 || plan.Pots[0].Plantings[0].Plants[0].Plant != "pansy" {
		t.Error("the old plan was changed")
	}
	for _, p := range got.Pots[0].Plantings {
		if !p.Start.IsZero() {
			t.Errorf("%s is pinned", p.Season)
		}
	}
	o := planner.WorkOut(&got, reference(t), today)
	if !slices.EqualFunc(o.Pots[0].Stands, o.Pots[1].Stands, func(a, b planner.Stand) bool { return a.From == b.From && a.Season == b.Season }) {
		t.Error("the pair is changed on different days")
	}
	if _, err := planner.TakeYear(planner.Plan{}, best, 0); !errors.As(err, new(*planner.MissingError)) {
		t.Errorf("taken for a pot that is gone: %v", err)
	}
}

func TestNoBestYear(t *testing.T) {
	plan := yard()
	plan.Pots[0].Spot = ""
	if _, err := planner.FindBestYear(context.Background(), planner.WorkOut(&plan, reference(t), today), 0); !errors.Is(err, planner.ErrNoYear) {
		t.Errorf("error %v", err)
	}
	ctx, cancel := context.WithCancel(context.Background())
	cancel()
	plan = yard()
	if _, err := planner.FindBestYear(ctx, planner.WorkOut(&plan, reference(t), today), 0); !errors.Is(err, context.Canceled) {
		t.Errorf("error %v", err)
	}
}

// A pot that stands empty gets a year as well, in either hemisphere.
func TestBestYearOfAnEmptyPot(t *testing.T) {
	for _, station := range []string{desMoines, "WMO94578"} {
		plan := yard()
		plan.Sites[0].Station = station
		plan.Pots[0].Plantings = nil
		best := bestOf(t, &plan)
		if c := best.Choices[0]; c.Stays[0].Stood || c.Total.Number() <= 0 {
			t.Errorf("%s: %+v", station, c.Stays[0])
		}
	}
}
