package mix

import (
	"fmt"

	"fourturn/planner/working"
)

// CheapestSingleSize returns the cheapest purchase of one size alone, the purchase
// that is made without a plan; false where nothing had to be bought.
func (p Purchase) CheapestSingleSize() (SingleSize, bool) {
	var best SingleSize
	for i, one := range p.SingleSizes {
		if i == 0 || one.Cost < best.Cost {
			best = one
		}
	}
	return best, len(p.SingleSizes) > 0
}

func money(x float64) working.Value { return working.Number(x, working.Money) }

// Working returns the trace of the purchase, with the ground on which it is known to
// be the cheapest.
func (p Purchase) Working() working.Trace {
	trace := working.Trace{
		Name: "mix.purchase", Formula: "min Σ nᵢ·cᵢ + q·c_bulk + delivery, Σ nᵢ·vᵢ + q ≥ N − S",
		Inputs: []working.Input{
			{Symbol: "N", Name: "mix.need", Value: litres(p.order.Need), Source: definition},
			{Symbol: "S", Name: "mix.in_shed", Value: litres(p.order.InShed), Source: entered},
		},
		Result: money(p.Cost),
		Source: definition,
	}
	add := func(symbol, name string, v working.Value, s working.Source) {
		trace.Inputs = append(trace.Inputs, working.Input{Symbol: symbol, Name: name, Value: v, Source: s})
	}
	for i, b := range p.order.Bags {
		index := fmt.Sprint(i + 1)
		add("v"+index, "mix.bag_volume", litres(b.Volume), entered)
		add("c"+index, "mix.bag_price", money(b.Price), entered)
		add("n"+index, "mix.bag_count", working.Number(float64(p.count(i)), working.None), definition)
	}
	if b := p.order.Bulk; b != nil {
		add("", "mix.bulk_step", litres(b.Step), entered)
		add("c_bulk", "mix.bulk_price", money(b.Price), entered)
		add("", "mix.bulk_per", litres(b.Per), entered)
		add("", "mix.bulk_minimum", litres(b.Minimum), entered)
		add("delivery", "mix.bulk_delivery", money(b.Delivery), entered)
		add("q", "mix.bulk_volume", litres(p.BulkVolume), definition)
	}
	add("", "mix.left_over", litres(p.LeftOver), definition)
	if one, ok := p.CheapestSingleSize(); ok {
		add("", "mix.single_size_cost", money(one.Cost), definition)
	}
	add("", "mix.lower_bound", money(p.Proof.LowerBound), definition)
	p.addProof(&trace)
	return trace
}

func (p *Purchase) count(index int) int {
	for _, l := range p.Lines {
		if l.Index == index {
			return l.Count
		}
	}
	return 0
}

func (p *Purchase) addProof(trace *working.Trace) {
	proof := p.Proof
	if proof.Totals > 0 {
		trace.Inputs = append(trace.Inputs,
			working.Input{Name: "mix.totals_compared", Value: working.Number(float64(proof.Totals), working.None), Source: definition},
			working.Input{Name: "mix.common_measure", Value: litres(proof.Measure), Source: definition})
		trace.Notes = append(trace.Notes, "mix.note_totals")
	}
	if proof.Branches > 0 {
		trace.Inputs = append(trace.Inputs,
			working.Input{Name: "mix.branches_compared", Value: working.Number(float64(proof.Branches), working.None), Source: definition})
		trace.Notes = append(trace.Notes, "mix.note_branches")
	}
	if !proof.Proven {
		trace.Notes = append(trace.Notes, "mix.note_not_proven")
		trace.Source.Status = working.Estimated
	}
	trace.Notes = append(trace.Notes, "mix.note_ties")
}

// LeftOverWorking returns the trace of what is left over.
func (p Purchase) LeftOverWorking() working.Trace {
	return working.Trace{
		Name: "mix.left_over", Formula: "S + B − N",
		Inputs: []working.Input{
			{Symbol: "S", Name: "mix.in_shed", Value: litres(p.order.InShed), Source: entered},
			{Symbol: "B", Name: "mix.bought", Value: litres(p.Bought), Source: definition},
			{Symbol: "N", Name: "mix.need", Value: litres(p.order.Need), Source: definition},
		},
		Result: litres(p.LeftOver),
		Source: definition,
	}
}
