package planner_test

import (
	"testing"

	"fourturn/planner"
	"fourturn/planner/civil"
)

// figures returns every figure of an outlook.
func figures(o *planner.Outlook) []planner.Figure {
	var list []planner.Figure
	for _, s := range o.Sites {
		list = append(list, s.Figures...)
		for _, season := range s.Seasons {
			list = append(list, season.Start)
		}
	}
	for _, p := range o.Pots {
		list = append(list, p.Brim, p.Fill, p.Mix, p.Refresh, p.Charge, p.Spoons, p.Dry, p.Wet)
		for _, s := range p.Stands {
			list = append(list, s.Start, s.Mix, s.Charge, s.Spoons, s.Spent)
			for _, c := range s.Plants {
				list = append(list, c.Count)
			}
		}
		for _, f := range p.Feeds {
			list = append(list, f.Water)
		}
	}
	for _, r := range o.Rounds {
		list = append(list, r.Water, r.Dose, r.Spoons, r.Cans)
	}
	for _, b := range o.Buying {
		list = append(list, b.Need)
	}
	return list
}

// A working that ends in another number than its figure lies.
func TestWorkingsEndInTheirFigure(t *testing.T) {
	plan := yard()
	n := 0
	for _, f := range figures(planner.WorkOut(&plan, reference(t), today)) {
		if f.IsZero() {
			continue
		}
		n++
		if trace := f.Working(); trace.Result != f.Value {
			t.Errorf("%s: the figure is %+v, its working ends in %+v", trace.Name, f.Value, trace.Result)
		}
	}
	if n < 100 {
		t.Errorf("only %d figures", n)
	}
}

// Kuala Lumpur has no seasons to change over by: its warm-season planting is always in
// season and not "none".
func TestAnEndlessSummerIsASummer(t *testing.T) {
	plan := yard()
	plan.Sites[0].Station = "WMO48647" // Kuala Lumpur Subang
	o := planner.WorkOut(&plan, reference(t), today)
	if !o.Sites[0].Known {
		t.Fatal("the table has no such station")
	}
	for _, f := range o.Findings {
		if f.Code == "plan.no_season" && f.Where[len(f.Where)-1] == string(planner.Summer) {
			t.Error("there is said to be no summer planting in an endless summer")
		}
	}
	if s := o.Pots[0].Standing(today); s == nil || s.Season != planner.Summer {
		t.Errorf("in June stands %+v", s)
	}
}

func TestAChargeWithoutAnEndIsNotDoubled(t *testing.T) {
	plan := yard()
	plan.Products[0].Longevity = 0 // not on the label
	o := planner.WorkOut(&plan, reference(t), today)
	full := o.Pots[0].Charge.Number()
	given := 0
	for _, s := range o.Pots[0].Stands {
		if s.Charge.IsZero() {
			continue
		}
		if given++; given > 1 && s.Charge.Number() > 0.8*full {
			t.Errorf("%s on %v gets %v kg again, a filling %v", s.Season, s.From, s.Charge.Number(), full)
		}
	}
	if given < 2 {
		t.Errorf("only %d charges", given)
	}
}

func TestWhatWasOvertakenIsNotDue(t *testing.T) {
	plan := yard()
	plan = plan.WithEntry(planner.Entry{ID: "a", Date: civil.MustParse("2027-05-05"), Kind: planner.Planted, Season: planner.Summer, Pots: []string{"round"}})
	plan = plan.WithEntry(planner.Entry{ID: "b", Date: civil.MustParse("2027-10-05"), Kind: planner.Planted, Season: planner.Winter, Pots: []string{"round"}})
	o := planner.WorkOut(&plan, reference(t), civil.MustParse("2027-10-06"))
	for _, s := range o.Pots[0].Stands {
		if s.Season == planner.Autumn && s.From.Year() == 2027 {
			t.Errorf("autumn stands from %v though winter went in on 5 October", s.From)
		}
	}
	for _, d := range o.Due {
		if d.Season == planner.Autumn {
			for _, p := range d.Pots {
				if o.Pots[p].Pot.ID == "round" {
					t.Error("the overtaken autumn change-out is due")
				}
			}
		}
	}
}

func TestTheFutureHasNotHappened(t *testing.T) {
	plan := yard()
	later := today.AddDays(100)
	plan = plan.WithEntry(planner.Entry{ID: "a", Date: later, Kind: planner.Planted, Season: planner.Autumn, Pots: []string{"round"}})
	plan = plan.WithEntry(planner.Entry{ID: "b", Date: later, Kind: planner.Fed, Product: "even", Pots: []string{"round"}})
	o := planner.WorkOut(&plan, reference(t), today)
	for _, s := range o.Pots[0].Stands {
		if s.Happened {
			t.Errorf("%s on %v is said to have happened", s.Season, s.From)
		}
	}
	for _, f := range o.Pots[0].Feeds {
		if f.Done {
			t.Errorf("the feed on %v is said to be done", f.Date)
		}
	}
}

func TestALateChangeOutIsStillBoughtFor(t *testing.T) {
	plan := yard()
	ref := reference(t)
	o := planner.WorkOut(&plan, ref, today)
	day := civil.Date(0)
	for _, s := range o.Pots[0].Stands {
		if s.From > today {
			day = s.From
			break
		}
	}
	need := func(on civil.Date) float64 { return planner.WorkOut(&plan, ref, on).Buying[0].Need.Number() }
	if before, after := need(day), need(day.AddDays(1)); after < before {
		t.Errorf("a day late, %v L are needed instead of %v", after, before)
	}
}

func TestATurnThatNamesAProductTwice(t *testing.T) {
	plan := yard()
	plan.Feeding.Turn = []string{"even", "bloom", "even"}
	o := planner.WorkOut(&plan, reference(t), today)
	seen := map[string]int{}
	for _, b := range o.Buying {
		seen[b.Product]++
	}
	if seen["even"] != 1 {
		t.Errorf("even is bought %d times", seen["even"])
	}
}

func TestFindingsAreSaidOnce(t *testing.T) {
	plan := yard()
	plan.Pots = plan.Pots[:1]
	plan.Pots[0].Plantings[1].Plants = []planner.Part{{Plant: "triffid"}}
	o := planner.WorkOut(&plan, reference(t), today)
	n := 0
	for _, f := range o.Findings {
		if f.Code == "plan.unknown_plant" {
			n++
		}
	}
	if n != 1 {
		t.Errorf("the unknown plant is remarked on %d times", n)
	}
}

// Mix that held a diseased planting goes, all of it, at the next change-out.
func TestDiseaseEmptiesThePot(t *testing.T) {
	plan := yard()
	ref := reference(t)
	next := func(p planner.Plan) planner.Stand {
		for _, s := range planner.WorkOut(&p, ref, today).Pots[0].Stands {
			if s.From > today {
				return s
			}
		}
		t.Fatal("nothing comes next")
		return planner.Stand{}
	}
	sick := plan.WithEntry(planner.Entry{ID: "a", Date: today, Kind: planner.Diseased, Pots: []string{"round"}, Text: "black root rot"})
	well, ill := next(plan).Mix.Number(), next(sick).Mix.Number()
	if ill < 1.5*well {
		t.Errorf("after a disease %v L are replaced, without one %v", ill, well)
	}
}

// Mix that is old already is replaced sooner.
func TestOldMixIsRetired(t *testing.T) {
	plan := yard()
	old, err := plan.WithPot("round", func(p *planner.Pot) { p.MixSince = civil.MustParse("2015-04-01") })
	if err != nil {
		t.Fatal(err)
	}
	ref := reference(t)
	fresh := planner.WorkOut(&plan, ref, today).Pots[0].Stands[0].Mix.Number()
	aged := planner.WorkOut(&old, ref, today).Pots[0].Stands[0].Mix.Number()
	if aged < 1.5*fresh {
		t.Errorf("of mix of twelve years %v L are replaced, of fresh mix %v", aged, fresh)
	}
}
