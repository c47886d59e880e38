package planner

import (
	"fourturn/planner/nutrition"
	"fourturn/planner/working"
)

// tolerated is the gap between a spent charge and the change-out that is not worth a
// remark: two weeks, in which soluble feeds carry the pot (judgement).
const tolerated = 14

// spent follows a stand's charge through the warmth of its days: when it is used up,
// and whether that is long before the change-out.
func (w *workOut) spent(out *PotOutlook, s *Stand, track nutrition.Track) {
	day, ok := track.SpentOn()
	if !ok {
		return
	}
	s.Spent = NewFigure(working.Date(day), func() working.Trace {
		left := track.Working(day)
		return working.Trace{
			Name: "plan.spent", Formula: "first day with left ≤ 1 − spent",
			Inputs: []working.Input{{Symbol: "left", Name: left.Name, Value: left.Result, Source: left.Source, From: &left}},
			Result: working.Date(day), Source: left.Source,
		}
	})
	if s.To > w.Last || !s.first {
		return
	}
	if gap, ok := track.GapFinding(out.Pot.ID, s.To, tolerated); ok {
		gap.Where = s.at(out.Pot.ID)
		w.Findings = append(w.Findings, gap)
	}
}

// thermal returns the summed warmth of a spot's days, worked out once for all its pots.
func (w *workOut) thermal(out *PotOutlook) *nutrition.Thermal {
	id := ""
	if out.Spot != nil && out.Site != nil && out.Site.Known {
		id = out.Spot.ID
	}
	if t, ok := w.thermals[id]; ok {
		return t
	}
	const year = 366
	t := nutrition.ThermalOf(w.First.AddDays(-year), w.Last.AddDays(year), w.warmth(out), w.kinetics)
	w.thermals[id] = t
	return t
}
