package rotation

import (
	"fourturn/planner/working"
)

// Working lists every parameter of the display value with its source.
func (p Params) Working() working.Trace {
	t := working.Trace{
		Name:    "rotation.display_value",
		Formula: "V(t) = Σ share × F(t) × exp(−Σ (Tmax − H)⁺ / K) × C(t) × A(t)",
		Source:  working.Source{Status: working.Judgement},
		Notes:   []string{"rotation.note_expected"},
	}
	for _, s := range paramSources() {
		t.Inputs = append(t.Inputs, working.Input{Name: s.key, Value: s.value(p), Source: s.source})
	}
	return t
}

// Working returns how the total of the best sequence is made up.
func (r *Result) Working() working.Trace { return r.workingOf(r.Best) }

// WorkingOfSequence returns how the total of one of the alternatives is made up.
func (r *Result) WorkingOfSequence(seq Sequence) working.Trace { return r.workingOf(seq) }

func (r *Result) workingOf(seq Sequence) working.Trace {
	v, w := seq.Value, r.req.Weights
	t := working.Trace{
		Name:    "rotation.total",
		Formula: "total = D − T − B − (P + L + M) / w",
		Result:  working.Number(v.Total, working.DisplayDay),
		Source:  judgement,
		Notes:   []string{"rotation.note_exact", "rotation.note_expected"},
	}
	params := r.req.Members[0].Outlook.params.Working()
	money := func(displayDays float64) working.Value {
		return working.Number(displayDays*w.DayWorth, working.Money)
	}
	entered := working.Source{Status: working.Entered}
	t.Inputs = []working.Input{
		{Symbol: "D", Name: "rotation.display", Value: working.Number(v.Display, working.DisplayDay), Source: judgement, From: &params},
		{Symbol: "T", Name: "rotation.tired", Value: working.Number(v.Tired, working.DisplayDay), Source: judgement},
		{Symbol: "B", Name: "rotation.bare", Value: working.Number(v.Bare, working.DisplayDay), Source: judgement},
		{Symbol: "P", Name: "rotation.plants", Value: money(v.Plants), Source: entered},
		{Symbol: "L", Name: "rotation.labour", Value: money(v.ChangeOuts), Source: entered},
		{Symbol: "M", Name: "rotation.mix", Value: money(v.Mix), Source: entered},
		{Symbol: "w", Name: "rotation.day_worth", Value: working.Number(w.DayWorth, working.Money), Source: entered},
	}
	for _, stay := range seq.Stays {
		t.Inputs = append(t.Inputs, r.stayInput(stay))
	}
	return t
}

// stayInput is one stay's share of the total, with its own working.
func (r *Result) stayInput(stay Stay) working.Input {
	v := stay.Value
	from := &working.Trace{
		Name:    "rotation.stay",
		Formula: "stay = D − T − B − P − L − M",
		Result:  working.Number(v.Total, working.DisplayDay),
		Source:  judgement,
		Inputs: []working.Input{
			{Name: "rotation.from", Value: working.Date(stay.From), Source: working.Source{Status: working.Derived}},
			{Name: "rotation.until", Value: working.Date(stay.Until), Source: working.Source{Status: working.Derived}},
			{Symbol: "D", Name: "rotation.display", Value: working.Number(v.Display, working.DisplayDay), Source: judgement},
			{Symbol: "T", Name: "rotation.tired", Value: working.Number(v.Tired, working.DisplayDay), Source: judgement},
			{Symbol: "B", Name: "rotation.bare", Value: working.Number(v.Bare, working.DisplayDay), Source: judgement},
			{Symbol: "P", Name: "rotation.plants", Value: working.Number(v.Plants, working.DisplayDay), Source: working.Source{Status: working.Entered}},
			{Symbol: "L", Name: "rotation.labour", Value: working.Number(v.ChangeOuts, working.DisplayDay), Source: working.Source{Status: working.Entered}},
			{Symbol: "M", Name: "rotation.mix", Value: working.Number(v.Mix, working.DisplayDay), Source: working.Source{Status: working.Entered}},
		},
	}
	return working.Input{Name: "rotation.stay", Value: from.Result, Source: judgement, From: from}
}
