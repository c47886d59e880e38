package planner

import (
	"slices"

	"fourturn/planner/working"
)

// buyingDays is how far ahead the buying list looks.
const buyingDays = 365

// buying adds up what the coming year's change-outs and rounds ask for: fresh mix,
// slow release and each soluble product.
func (w *workOut) buying() {
	until := w.Today.AddDays(buyingDays)
	mixNeed, chargeNeed := sum{name: "plan.mix_of_year", unit: working.Litre}, sum{name: "plan.charge_of_year", unit: working.Kilogram}
	for _, n := range w.Needs(Span{From: w.Today, To: until}) {
		s := &w.Pots[n[0]].Stands[n[1]]
		mixNeed.add(s.Mix)
		chargeNeed.add(s.Charge)
	}
	if mixNeed.n > 0 {
		w.Buying = append(w.Buying, Buying{Need: mixNeed.figure()})
	}
	if chargeNeed.n > 0 {
		w.Buying = append(w.Buying, Buying{Product: w.Plan.Feeding.SlowRelease, Need: chargeNeed.figure()})
	}
	for i, id := range w.Plan.Feeding.Turn {
		if slices.Contains(w.Plan.Feeding.Turn[:i], id) {
			continue // named twice
		}
		need := sum{name: "plan.feed_of_year", unit: working.Kilogram}
		for _, r := range w.Rounds {
			if r.Product == id && !r.Done && r.Date >= w.Today && r.Date < until {
				need.add(r.Dose)
			}
		}
		if need.n > 0 {
			w.Buying = append(w.Buying, Buying{Product: id, Need: need.figure()})
		}
	}
}

// sum adds figures up and remembers how many.
type sum struct {
	name  string
	unit  working.Unit
	total float64
	n     int
}

func (s *sum) add(f Figure) {
	if !f.IsZero() {
		s.total += f.Number()
		s.n++
	}
}

func (s *sum) figure() Figure {
	done := *s
	result := working.Number(done.total, done.unit)
	return NewFigure(result, func() working.Trace {
		return working.Trace{
			Name: done.name, Formula: "Σ xᵢ",
			Inputs: []working.Input{{
				Symbol: "i", Name: "plan.parts_of_sum", Value: working.Number(float64(done.n), working.None),
				Source: working.Source{Status: working.Derived},
			}},
			Result: result, Source: working.Source{Status: working.Derived},
		}
	})
}
