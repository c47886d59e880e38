package planner_test

import (
	"strings"
	"testing"

	"fourturn/planner"
	"fourturn/planner/civil"
	"fourturn/planner/working"
)

func comingDays(o *planner.Outlook) (days []civil.Date) {
	for _, r := range o.Rounds {
		if !r.Done {
			days = append(days, r.Date)
		}
	}
	return days
}

// Where the log is empty nobody knows what the pots had: nothing is overdue.
func TestAnEmptyLogMakesNothingOverdue(t *testing.T) {
	plan := yard()
	for d := today; d < today.AddDays(400); d += 23 {
		for _, f := range planner.WorkOut(&plan, reference(t), d).Findings {
			if strings.HasPrefix(f.Code, "nutrition.rounds.") {
				t.Errorf("%v: %s %v", d, f.Code, f.Args)
			}
		}
	}
}

// A tick on the planned day, and the days after it, leave the later rounds where they
// were.
func TestATickKeepsTheLaterRounds(t *testing.T) {
	plan, ref := yard(), reference(t)
	before := planner.WorkOut(&plan, ref, today)
	next := firstOpen(t, before)
	day := next.Date
	plan = plan.WithEntry(planner.Entry{ID: "a", Date: day, Kind: planner.Fed, Product: next.Product, Pots: []string{"round", "square", "trough"}})
	first := comingDays(planner.WorkOut(&plan, ref, day))
	for later := day + 1; later < first[0]; later++ {
		if now := comingDays(planner.WorkOut(&plan, ref, later)); now[0] != first[0] || now[1] != first[1] {
			t.Errorf("on %v the rounds are %v, on the day of the tick they were %v", later, now[:2], first[:2])
		}
	}
}

// The same feed ticked twice is one round and does not turn the turn twice.
func TestATickTwiceIsOneRound(t *testing.T) {
	plan, ref := yard(), reference(t)
	pots := []string{"round", "square", "trough"}
	once := plan.WithEntry(planner.Entry{ID: "a", Date: today, Kind: planner.Fed, Product: "even", Pots: pots})
	twice := once.WithEntry(planner.Entry{ID: "b", Date: today, Kind: planner.Fed, Product: "even", Pots: pots})
	a, b := planner.WorkOut(&once, ref, today), planner.WorkOut(&twice, ref, today)
	if len(a.Rounds) != len(b.Rounds) || firstOpen(t, a).Product != firstOpen(t, b).Product || !b.Rounds[0].Done || len(b.Rounds[0].Pots) != 3 {
		t.Errorf("%d rounds once, %d twice", len(a.Rounds), len(b.Rounds))
	}
}

// Remarks on feeding call pots and products by their names.
func TestFeedingRemarksNameThePots(t *testing.T) {
	plan := yard()
	for i := range plan.Pots {
		plan.Pots[i].Name = "The " + plan.Pots[i].ID
	}
	named := 0
	for _, f := range planner.WorkOut(&plan, reference(t), today).Findings {
		for _, a := range f.Args {
			if strings.HasPrefix(f.Code, "nutrition.") && (a.Name == "pot" || a.Name == "other") && a.Value.Text != "" {
				named++
				if !strings.HasPrefix(a.Value.Text, "The ") {
					t.Errorf("%s calls a pot %q", f.Code, a.Value.Text)
				}
			}
		}
	}
	if named == 0 {
		t.Skip("no remark names a pot on this day")
	}
}

// A label's own words outrank the rate of the class: one pound a cubic yard is 0.5933 g/L
// (453.59237 g / 764.554857984 L, exact units).
func TestTheLabelsWordsAreTheRate(t *testing.T) {
	plan := yard()
	plan.Products[0].RateLabel = "5 lb per cu yd"
	o := planner.WorkOut(&plan, reference(t), today)
	fill, charge := o.Pots[0].Fill.Number(), o.Pots[0].Charge.Number()*1000
	if want := fill * 5 * 453.59237 / 764.554857984; charge < want*0.999 || charge > want*1.001 {
		t.Errorf("%v g of slow release, want %v", charge, want)
	}
	plan.Products[0].RateLabel = "a handful"
	found := false
	for _, f := range planner.WorkOut(&plan, reference(t), today).Findings {
		found = found || f.Code == "plan.rate_unreadable"
	}
	if !found {
		t.Error("a label that cannot be read goes without a remark")
	}
}

// The number of rounds shows the bound below which no plan goes.
func TestTheRoundsShowTheirBound(t *testing.T) {
	plan := yard()
	o := planner.WorkOut(&plan, reference(t), today)
	trace := o.Fewest.Working()
	if len(comingDays(o)) != int(o.Fewest.Number()) || trace.Inputs[0].Value.Number > o.Fewest.Number() || trace.Result.Unit != working.None {
		t.Errorf("rounds %+v", trace)
	}
}
