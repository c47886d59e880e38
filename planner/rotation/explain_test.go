package rotation_test

import (
	"fmt"
	"math"
	"testing"

	"fourturn/planner/civil"
	"fourturn/planner/rotation"
)

// A pot planned for a year and a half where it never freezes: every day 15 to 25 °C.
func ExamplePlan() {
	normals := rotation.Normals{From: civil.MustParse("2027-01-01")}
	for range 700 {
		normals.Tmin, normals.Tmax, normals.TminSD = append(normals.Tmin, 15), append(normals.Tmax, 25), append(normals.TminSD, 2)
	}
	climate, err := rotation.NewClimate(normals, nil)
	if err != nil {
		fmt.Println(err)
		return
	}
	plant := &rotation.Plant{
		ID: "petunia", Lowest: -1.7, PlantOut: 7.2, HeatLimit: 33, Base: 4, Optimum: 25,
		Sizes: []rotation.Size{{Name: "10 cm", WeeksToFull: 6, Price: 4}},
	}
	result, err := rotation.Plan(rotation.Request{
		Today: civil.MustParse("2027-03-01"), Until: civil.MustParse("2027-06-01"),
		Members:    []rotation.Member{{Outlook: rotation.NewOutlook(climate, rotation.DefaultParams())}},
		Candidates: []rotation.Planting{{ID: "petunias", Parts: []rotation.Part{{Plant: plant, Share: 1, Count: 5}}}},
		PerYear:    4, Risk: 0.1, Weights: rotation.DefaultWeights(), Lingers: rotation.DefaultLingers(),
	})
	if err != nil {
		fmt.Println(err)
		return
	}
	c := result.Best.ChangeOuts[0]
	fmt.Println(c.Day, c.Reasons, len(result.Best.Stays))
	// Output: 2027-03-01 [rotation.why_empty] 1
}

// The working of a day multiplies out to its display value.
func TestWorkingOfADay(t *testing.T) {
	req := chicago(t)
	o := req.Members[0].Outlook
	start := civil.MustParse("2027-05-20")
	for i := range req.Candidates {
		p := &req.Candidates[i]
		for _, away := range []int{0, 10, 60, 140} {
			day := start.AddDays(away)
			trace := o.WorkingOn(p, start, day)
			sum := 0.0
			for k := 0; k+1 < len(trace.Inputs); k += 2 {
				product := 1.0
				for _, in := range trace.Inputs[k+1].From.Inputs {
					if in.Symbol != "" {
						product *= in.Value.Number
					}
				}
				sum += trace.Inputs[k].Value.Number * product
			}
			if want := o.Value(p, start, day); math.Abs(sum-want) > 1e-9 || trace.Result.Number != want {
				t.Errorf("%s after %d days: the factors give %v, the value is %v", p.ID, away, sum, want)
			}
		}
	}
}

// The curve drawn for a sequence is the display that was counted for it.
func TestCurveIsTheDisplayCounted(t *testing.T) {
	req := chicago(t)
	plants := plantsOf(t, req.Today, 600, false)
	req.Candidates = append(req.Candidates, rotation.Planting{ID: "pansy and ivy", Parts: []rotation.Part{
		{Plant: plants["pansy"], Share: 0.7, Count: 3}, {Plant: plants["ivy"], Share: 0.3, Count: 2, Stays: true},
	}})
	req.Members[0].Standing = rotation.Standing{Planting: &req.Candidates[9], Since: civil.MustParse("2026-11-20")}
	r := mustPlan(t, req)
	for _, seq := range []rotation.Sequence{r.Best, r.Alternatives()[0].Sequence} {
		sum := 0.0
		for i, v := range r.Curve(seq) {
			if v < 0 || v > 1+1e-9 {
				t.Errorf("display %v on %v", v, req.Today.AddDays(i))
			}
			sum += v
		}
		if math.Abs(sum-seq.Value.Display) > 1e-6 {
			t.Errorf("the curve holds %v display days, %v were counted", sum, seq.Value.Display)
		}
	}
	for i, c := range r.Best.ChangeOuts {
		if trace := r.WorkingOf(i); trace.Result.Date != c.Day || len(trace.Notes) < 3 {
			t.Errorf("working of %v: %+v", c.Day, trace)
		}
	}
	if r.Request().Today != req.Today {
		t.Error("the result forgot its request")
	}
}
