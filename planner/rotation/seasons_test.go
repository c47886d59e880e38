package rotation_test

import (
	"strings"
	"testing"

	"fourturn/planner/civil"
	"fourturn/planner/rotation"
)

// kindOf sorts the plants of the test by the season that they are grown for.
var kindOf = map[string]string{
	"pansy": "cool", "snapdragon": "cool", "kale": "cool", "mum": "autumn",
	"petunia": "warm", "begonia": "warm", "impatiens": "warm", "vinca": "warm", "lantana": "warm",
	"spruce_tips": "winter",
}

// changes names the days of a year's changes, such as cool_to_warm.
func changes(req *rotation.Request, seq rotation.Sequence) map[string][]civil.Date {
	kind := func(c int) string {
		if c < 0 {
			return "empty"
		}
		return kindOf[req.Candidates[c].ID]
	}
	days := make(map[string][]civil.Date)
	for _, c := range seq.ChangeOuts {
		from, to := kind(c.From), kind(c.To)
		days[from+"_to_"+to] = append(days[from+"_to_"+to], c.Day)
		if from != "empty" {
			days["to_"+to] = append(days["to_"+to], c.Day)
			days["safe_"+to] = append(days["safe_"+to], c.Safe)
		} else if to == "cool" {
			days["first_cool"] = append(days["first_cool"], c.Day)
		}
	}
	return days
}

// The years of sites of very different kind agree with the published season
// guidance; what differs is explained in the table.
func TestYearsAgreeWithSeasonGuidance(t *testing.T) {
	plans := make(map[string]map[string][]civil.Date)
	for _, row := range table(t, "rotation_seasons.csv") {
		site := row["site"]
		if plans[site] == nil {
			today := civil.MustParse("2027-02-01")
			if site == "brisbane" {
				today = civil.MustParse("2027-08-01")
			}
			req := requestFor(t, site, today, today.AddMonths(18))
			req.AtLeast = int(number(t, row["change_outs"]))
			r, err := rotation.Plan(req)
			if err != nil {
				t.Fatal(err)
			}
			plans[site] = changes(&req, r.Best)
		}
		days := plans[site][row["change"]]
		if len(days) == 0 {
			t.Errorf("%s: no change %s; the year has %v", site, row["change"], plans[site])
		}
		for _, day := range days {
			from, to := civil.MustParseMonthDay(row["from"]).In(day.Year()), civil.MustParseMonthDay(row["to"]).In(day.Year())
			if day < from || day > to {
				t.Errorf("%s: %s on %v, guidance %s to %s (%s)", site, row["change"], day, row["from"], row["to"], row["source"])
			} else {
				t.Logf("%s: %s on %v, guidance %s to %s. %s", site, row["change"], day, row["from"], row["to"], row["difference"])
			}
		}
	}
}

// Where the mean day never reaches the heat limit of cool annuals, heat is never the
// reason to change them; in the subtropics it is.
func TestHeatIsAReasonOnlyWhereItComes(t *testing.T) {
	for site, want := range map[string]bool{"heathrow": false, "new_orleans": true} {
		today := civil.MustParse("2027-02-01")
		req := requestFor(t, site, today, today.AddMonths(18))
		r, err := rotation.Plan(req)
		if err != nil {
			t.Fatal(err)
		}
		var reasons []string
		for _, c := range r.Best.ChangeOuts {
			for _, reason := range c.Reasons {
				reasons = append(reasons, string(reason))
			}
		}
		if got := strings.Contains(strings.Join(reasons, " "), string(rotation.Heat)); got != want {
			t.Errorf("%s: heat is a reason: %v, want %v (%v)", site, got, want, reasons)
		}
	}
}
