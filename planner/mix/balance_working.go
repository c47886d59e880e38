package mix

import (
	"fourturn/planner/finding"
	"fourturn/planner/working"
)

var (
	thirdSource  = working.Source{Status: working.Published, Cite: "UC Master Gardeners of Orange County, mgorange.ucanr.edu, soils, fertilizers, compost: about 1/3 by volume"}
	retireSource = working.Source{Status: working.Derived, Cite: "UC Master Gardeners of Orange County: after more than one to two seasons; two growing years of four planting seasons"}
)

// Working returns the trace of the fresh mix to be bought for a change-out.
func (b Balance) Working() working.Trace {
	share := working.Input{Symbol: "p", Name: "mix.share", Value: working.Number(0, working.Share), Source: entered}
	switch b.Reason {
	case ByShare:
		share.Value.Number = b.in.shareOr()
		if b.in.Share == 0 {
			share.Source = thirdSource
		}
	case ByTopUp:
	default:
		share.Value.Number = 1
	}
	after := b.ageWorking()
	trace := working.Trace{
		Name: "mix.refresh", Formula: "B = (V − N − K) × (1 + s), K = (C − z·C − O) × (1 − p)",
		Inputs: []working.Input{
			{Symbol: "V", Name: "mix.capacity", Value: litres(b.in.Capacity), Source: definition},
			{Symbol: "N", Name: "mix.new_root_balls", Value: litres(b.BallsIn), Source: entered},
			{Symbol: "C", Name: "mix.content_before", Value: litres(b.Before.Volume), Source: definition},
			{Symbol: "z", Name: "mix.shrinkage", Value: working.Number(b.in.Shrinkage, working.Share), Source: entered},
			{Symbol: "O", Name: "mix.old_root_balls", Value: litres(b.BallsOut), Source: entered},
			share,
			settlingInput(b.in.Settling),
			{Name: "mix.age", Value: after.Result, Source: after.Source, From: &after},
		},
		Result: litres(b.Loose()),
		Source: definition,
		Notes:  []string{string(b.Reason), "mix.note_settling"},
	}
	if b.in.Shrinkage == 0 {
		trace.Inputs[3].Source = working.Source{Status: working.Judgement}
	}
	return trace
}

// ageWorking is the trace of the age of the mix after the change-out.
func (b Balance) ageWorking() working.Trace {
	retire := working.Input{Symbol: "a_max", Name: "mix.retire_after", Value: working.Number(b.in.RetireAfter, working.None), Source: entered}
	if b.in.RetireAfter == 0 {
		retire.Value.Number, retire.Source = DefaultRetireAfter, retireSource
	}
	return working.Trace{
		Name: "mix.age", Formula: "a = (a₀ + t) × K / (K + N + F)",
		Inputs: []working.Input{
			{Symbol: "a₀", Name: "mix.age_before", Value: working.Number(b.Before.Age, working.None), Source: definition},
			{Symbol: "t", Name: "mix.elapsed", Value: working.Number(b.in.Elapsed, working.None), Source: entered},
			{Symbol: "K", Name: "mix.kept", Value: litres(b.After.Volume - b.BallsIn - b.Fresh), Source: definition},
			{Symbol: "N", Name: "mix.new_root_balls", Value: litres(b.BallsIn), Source: entered},
			{Symbol: "F", Name: "mix.fresh", Value: litres(b.Fresh), Source: definition},
			retire,
		},
		Result: working.Number(b.After.Age, working.None),
		Source: definition,
		Notes:  []string{"mix.note_age"},
	}
}

// Findings returns what is to be said about the change-out of a pot.
func (b Balance) Findings(where finding.Where) []finding.Finding {
	var found []finding.Finding
	add := func(code string, severity finding.Severity, args ...finding.Arg) {
		found = append(found, finding.Finding{Code: code, Severity: severity, Where: where, Args: args})
	}
	if b.NoRoom > 0 {
		add("mix.root_balls_too_large", finding.Warning,
			finding.Arg{Name: "root_balls", Value: litres(b.in.NewRootBalls)},
			finding.Arg{Name: "capacity", Value: litres(b.in.Capacity)})
	}
	switch b.Reason {
	case ByDisease:
		add("mix.diseased", finding.Warning, finding.Arg{Name: "volume", Value: litres(b.OldOut + b.BallsOut)})
	case ByAge:
		add("mix.retired", finding.Note, finding.Arg{Name: "age", Value: working.Number(b.Before.Age+b.in.Elapsed, working.None)})
	}
	if b.Fresh > 0 {
		add("mix.dust", finding.Caution)
	}
	return found
}
