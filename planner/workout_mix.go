package planner

import (
	"fourturn/planner/mix"
	"fourturn/planner/quantity"
)

// seasonLength is the length of a planting season as the age of mix is counted: a quarter
// of a year.
const seasonLength = 365.25 / 4

// changeOut describes a change-out of the pot by its policy.
func (w *workOut) changeOut(out *PotOutlook, oldBalls, newBalls quantity.Volume) mix.ChangeOut {
	share, retire := w.Plan.Mix.Refresh, w.Plan.Mix.RetireAfter
	if out.Pot.RefreshShare > 0 {
		share = out.Pot.RefreshShare
	}
	if out.Pot.RetireAfter > 0 {
		retire = out.Pot.RetireAfter
	}
	return mix.ChangeOut{
		Capacity: out.Vessel.FillVolume(), OldRootBalls: oldBalls, NewRootBalls: newBalls,
		Policy: mix.Policy(out.Pot.Refresh), Share: share, Settling: w.Plan.Mix.Settling,
		Elapsed: 1, RetireAfter: float64(retire),
	}
}

// mixChange describes the change-out into a stand, with the content of the pot as it
// has aged since the one before.
func (w *workOut) mixChange(out *PotOutlook, i int, content mix.Content, oldBalls, newBalls quantity.Volume) (mix.Content, mix.ChangeOut) {
	change := w.changeOut(out, oldBalls, newBalls)
	change.Diseased = w.diseasedBefore(out, i)
	change.Elapsed = 0
	since, day := out.Pot.MixSince, out.Stands[i].From
	if i > 0 {
		change.Elapsed = float64(day-out.Stands[i-1].From) / seasonLength
	}
	switch {
	case since.IsZero() || since > day:
	case since == day: // all was fresh on the very day
		change.Policy = mix.AllFresh
	case i == 0 || since > out.Stands[i-1].From: // or between the two change-outs
		content.Age, change.Elapsed = 0, float64(day-since)/seasonLength
	}
	return content, change
}

// diseasedBefore reports whether the planting before a stand is logged as diseased: then
// all its mix goes.
func (w *workOut) diseasedBefore(out *PotOutlook, i int) bool {
	sick := w.history.disease[out.Pot.ID]
	return i > 0 && !sick.IsZero() && sick >= out.Stands[i-1].From && sick < out.Stands[i].From
}
