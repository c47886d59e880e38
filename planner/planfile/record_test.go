package planfile_test

import (
	"testing"

	"github.com/google/go-cmp/cmp"

	"fourturn/planner"
	"fourturn/planner/climate"
	"fourturn/planner/climate/climatetest"
	"fourturn/planner/planfile"
)

// What thirty years of a daily record tell stands in a few kilobytes of the plan and
// comes back to the last digit.
func TestARecordInThePlanFile(t *testing.T) {
	r := climatetest.Record(t, "USW00094728")
	d, err := r.Digest("central park.csv", false, 0)
	if err != nil {
		t.Fatal(err)
	}
	plan := &planner.Plan{Sites: []planner.Site{{ID: "home", Record: d}}}
	text := mustEncode(t, plan)
	if len(text) > 16_000 {
		t.Errorf("the record takes %d bytes", len(text))
	}
	if diff := cmp.Diff(d, mustDecode(t, text).Plan().Sites[0].Record); diff != "" {
		t.Error(diff)
	}
	theirs := *plan
	theirs.Sites = []planner.Site{{ID: "home", Record: &climate.Digest{From: d.From, To: d.To - 1}}}
	mine := *plan
	mine.Sites = []planner.Site{{ID: "home", Record: &climate.Digest{From: d.From + 1, To: d.To}}}
	m := merge(t, plan, &mine, &theirs)
	if diff := cmp.Diff(mine.Sites, m.Plan.Sites); diff != "" || len(m.Conflicts) != 1 {
		t.Errorf("two records are mixed, with %d conflicts: %s", len(m.Conflicts), diff)
	}
	if _, err := planfile.Encode(m.Plan); err != nil {
		t.Error(err)
	}
}
