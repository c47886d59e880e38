package work

import (
	"fourturn/planner/quantity"
	"fourturn/planner/working"
)

// Kind is a kind of work on a pot that takes a crew's time.
type Kind string

// The kinds of work of a visit.
const (
	ChangeOutWork Kind = "change_out" // take out, refresh the mix, plant, water in, sweep
	ReplaceWork   Kind = "replace"    // the same with all the mix replaced and the pot cleaned
	ClearWork     Kind = "clear"      // take out and leave bare
	TendWork      Kind = "tend"       // dead-head, tidy, feed, water
)

// Rate is how long a kind of work takes on a pot: some minutes for any, some more
// for each litre of its mix.
type Rate struct {
	Fixed    float64
	PerLitre float64
}

// Labour is the rates of one crew.
type Labour map[Kind]Rate

// DefaultLabour returns the planner's own rates. They are judgements; a crew that
// writes down its times should put its own in their place.
func DefaultLabour() Labour {
	return Labour{
		ChangeOutWork: {Fixed: 10, PerLitre: 0.4},
		ReplaceWork:   {Fixed: 15, PerLitre: 0.8},
		ClearWork:     {Fixed: 4, PerLitre: 0.1},
		TendWork:      {Fixed: 3, PerLitre: 0.05},
	}
}

// Minutes returns how long a kind of work takes on a pot with a volume of mix. It
// panics on a kind that has no rate.
func (l Labour) Minutes(kind Kind, mix quantity.Volume) float64 {
	rate, ok := l[kind]
	if !ok {
		panic("work: no rate for " + string(kind))
	}
	return rate.Fixed + rate.PerLitre*mix.Litres()
}

// Working returns how the minutes of a kind of work on a pot come about.
func (l Labour) Working(kind Kind, mix quantity.Volume) working.Trace {
	judgement := working.Source{Status: working.Judgement}
	return working.Trace{
		Name:    "visits.minutes",
		Formula: "t = a + b × V",
		Result:  working.Number(l.Minutes(kind, mix), working.Minute),
		Source:  judgement,
		Inputs: []working.Input{
			{Symbol: "a", Name: "visits.minutes_fixed", Value: working.Number(l[kind].Fixed, working.Minute), Source: judgement},
			{Symbol: "b", Name: "visits.minutes_per_litre", Value: working.Number(l[kind].PerLitre, working.None), Source: judgement},
			{Symbol: "V", Name: "visits.mix", Value: working.Number(mix.Litres(), working.Litre), Source: working.Source{Status: working.Derived}},
		},
	}
}
