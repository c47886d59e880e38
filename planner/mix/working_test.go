package mix_test

import (
	"math"
	"testing"

	"fourturn/planner/mix"
	"fourturn/planner/quantity"
	"fourturn/planner/working"
)

func inputs(t working.Trace) map[string]float64 {
	out := map[string]float64{}
	for _, in := range t.Inputs {
		key := in.Symbol
		if key == "" {
			key = in.Name
		}
		out[key] = in.Value.Number
	}
	return out
}

// The formula of a refresh, worked by hand from the inputs of its trace.
func TestRefreshWorkingAddsUp(t *testing.T) {
	b := mix.Content{Volume: 20, Age: 2}.At(mix.ChangeOut{
		Capacity: 20, OldRootBalls: 4, NewRootBalls: 2, Elapsed: 1, Shrinkage: 0.1, Settling: 0.2,
	})
	trace := b.Working()
	in := inputs(trace)
	kept := (in["C"] - in["z"]*in["C"] - in["O"]) * (1 - in["p"])
	if got := (in["V"] - in["N"] - kept) * (1 + in["s"]); math.Abs(got-trace.Result.Number) > 1e-9 {
		t.Errorf("by hand %v, the trace says %v", got, trace.Result.Number)
	}
	age := trace.Inputs[len(trace.Inputs)-1].From
	ages := inputs(*age)
	if got := (ages["a₀"] + ages["t"]) * ages["K"] / (ages["K"] + ages["N"] + ages["F"]); math.Abs(got-b.After.Age) > 1e-9 {
		t.Errorf("age by hand %v, %v", got, b.After.Age)
	}
	if trace.Soft() {
		t.Error("everything was entered or published, and the working is soft")
	}
}

// The working of a purchase carries what it costs, what it would cost, and why no
// other is cheaper.
func TestPurchaseWorking(t *testing.T) {
	p, err := mix.Buy(marketOf8())
	if err != nil {
		t.Fatal(err)
	}
	trace := p.Working()
	in := inputs(trace)
	cost, volume := 0.0, in["q"]
	for i := range marketOf8().Bags {
		index := string(rune('1' + i))
		cost += in["n"+index] * in["c"+index]
		volume += in["n"+index] * in["v"+index]
	}
	if in["q"] > 0 {
		cost += in["delivery"] + in["q"]/in["mix.bulk_per"]*in["c_bulk"]
	}
	if math.Abs(cost-p.Cost) > 1e-6 || math.Abs(volume-float64(p.Bought)) > 1e-6 {
		t.Errorf("the working comes to %v for %v L, the purchase to %v for %v", cost, volume, p.Cost, p.Bought)
	}
	if in["mix.lower_bound"] > p.Cost || in["mix.single_size_cost"] < p.Cost || trace.Source.Status != working.Definition {
		t.Errorf("bound %v, cost %v, one size %v", in["mix.lower_bound"], p.Cost, in["mix.single_size_cost"])
	}
	if proof := in["mix.totals_compared"] + in["mix.branches_compared"]; proof == 0 {
		t.Error("no proof in the working")
	}
}

// Sizes of one price per litre tie in cost for any set that fills the need: the least
// left over and the fewest bags decide.
func TestTiesOfOnePrice(t *testing.T) {
	o := mix.Order{Need: 10_007}
	for _, litres := range []quantity.Volume{6, 9, 10, 14, 15, 21, 22, 33} {
		o.Bags = append(o.Bags, mix.Bag{Volume: litres, Price: float64(litres) / 4})
	}
	p, err := mix.Buy(o)
	if err != nil {
		t.Fatal(err)
	}
	// 303 bags of 33 L leave 8 L, which no bag holds exactly; 302 leave 41 L, which no
	// two do, but 22 + 10 + 9; 301 and three more do not reach.
	if p.Cost != 10_007.0/4 || p.LeftOver != 0 || p.Bags != 305 || !p.Proof.Proven {
		t.Errorf("%+v", p)
	}
}

// Sizes of nearly one price per litre keep the branches busy, so that every total is
// compared instead. Every litre at the best price costs as much, so it is the least.
func TestNearTiesAreSettledByTotals(t *testing.T) {
	o := mix.Order{Need: 72_453, Bags: []mix.Bag{
		{Volume: 38, Price: 9.5},
		{Volume: 58, Price: 14.5},
		{Volume: 41, Price: 10.25},
		{Volume: 51, Price: 12.79},
		{Volume: 5, Price: 1.26},
		{Volume: 68, Price: 17.06},
		{Volume: 22, Price: 5.51},
		{Volume: 7, Price: 1.78},
	}}
	p, err := mix.Buy(o)
	if err != nil {
		t.Fatal(err)
	}
	if p.Proof.Totals == 0 || p.Cost != 18_113.25 || p.Proof.LowerBound != p.Cost || p.LeftOver != 0 {
		t.Errorf("%+v", p)
	}
	if notes := p.Working().Notes; notes[0] != "mix.note_totals" {
		t.Errorf("notes %v", notes)
	}
}
