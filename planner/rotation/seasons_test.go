package rotation_test

import (
	"testing"

	"fourturn/planner/civil"
	"fourturn/planner/rotation"
)

// In Louisiana cool plants stand from October to early May and warm ones from
// April to October (LSU AgCenter).
func TestLouisianaTwoSeasons(t *testing.T) {
	today := civil.MustParse("2027-02-01")
	req := requestFor(t, "new_orleans", today, today.AddMonths(18))
	r, err := rotation.Plan(req)
	if err != nil {
		t.Fatal(err)
	}
	cool := map[string]bool{"pansy": true, "snapdragon": true, "kale": true}
	id := func(c int) string {
		if c < 0 {
			return ""
		}
		return req.Candidates[c].ID
	}
	toWarm, toCool := 0, 0
	for _, c := range r.Best.ChangeOuts {
		month := c.Day.Month()
		switch {
		case cool[id(c.From)] && !cool[id(c.To)]:
			toWarm++
			if month < 4 || month > 5 {
				t.Errorf("from cool to warm plants on %v", c.Day)
			}
		case !cool[id(c.From)] && cool[id(c.To)] && id(c.From) != "":
			toCool++
			if month != 10 {
				t.Errorf("from warm to cool plants on %v", c.Day)
			}
		}
	}
	if toWarm != 2 || toCool != 1 {
		t.Errorf("%d changes to warm plants and %d to cool ones in 18 months", toWarm, toCool)
	}
}
