package planfile_test

import (
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"
	"pgregory.net/rapid"

	"fourturn/planner"
	"fourturn/planner/planfile"
	"fourturn/planner/planfile/plantest"
)

// equalPlans compares plans as values; an empty list is no list.
func equalPlans(a, b *planner.Plan) string { return cmp.Diff(a, b, cmpopts.EquateEmpty()) }

func TestDecodeAfterEncodeIsIdentity(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		plan := plantest.Plan().Draw(t, "plan")
		text, err := planfile.Encode(plan)
		if err != nil {
			t.Fatal(err)
		}
		d, err := planfile.Decode(text)
		if err != nil {
			t.Fatalf("%v\n%s", err, text)
		}
		if diff := equalPlans(plan, d.Plan()); diff != "" {
			t.Fatalf("the plan changed on its way through a file:\n%s\n%s", diff, text)
		}
		again, err := d.Encode(plan)
		if err != nil || string(again) != string(text) {
			t.Fatalf("writing an unchanged plan changes its text: %v\n%s\n%s", err, text, again)
		}
	})
}

// Writing any plan into the text of any other must give that plan, and writing
// the first one back as well.
func TestRewriteIsIdentity(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		first := plantest.Plan().Draw(t, "first")
		d, err := planfile.New(first)
		if err != nil {
			t.Fatal(err)
		}
		for _, next := range []*planner.Plan{plantest.Plan().Draw(t, "second"), first} {
			text, err := d.Encode(next)
			if err != nil {
				t.Fatal(err)
			}
			back, err := planfile.Decode(text)
			if err != nil {
				t.Fatalf("%v\n%s", err, text)
			}
			if diff := equalPlans(next, back.Plan()); diff != "" {
				t.Fatalf("rewriting changed the plan:\n%s\n%s", diff, text)
			}
		}
	})
}
