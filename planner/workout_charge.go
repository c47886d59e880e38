package planner

import (
	"fourturn/planner/civil"
	"fourturn/planner/finding"
	"fourturn/planner/mix"
	"fourturn/planner/nutrition"
	"fourturn/planner/quantity"
)

// charge gives a stand its slow release and remembers what its change-out takes out of
// the pot. A display that stands through the cold gets none.
func (w *workOut) charge(out *PotOutlook, s *Stand, balance mix.Balance) {
	if before := balance.Before.Volume; before > 0 {
		share := float64((balance.BallsOut + balance.OldOut) / before)
		out.takings = append(out.takings, nutrition.Taking{Date: s.From, Share: min(1, share)})
	}
	all := out.Vessel.FillVolume()
	full, ok := w.dose(s.Feeder, all)
	if !ok || w.meanTemperature(out, s) < growthFloor {
		return
	}
	dose, _ := w.dose(s.Feeder, w.charged(out, s, all, balance.Fresh))
	s.Charge, s.Spoons = doseFigures(dose, w.prillSpoon())
	if !w.slow.lasts() {
		return
	}
	charge := nutrition.Charge{Product: w.slow.label, Date: s.From, Mass: dose.Mass, Placement: w.placement()}
	if s.first {
		w.chargeFindings(out, charge, full)
	}
	track := nutrition.Follow(charge, w.thermal(out), nil)
	out.tracks = append(out.tracks, track)
	w.spent(out, s, track)
}

// charged returns the mix that a charge is reckoned on: as the person chose, else all of
// it, but the fresh part alone while the charge before is not spent.
func (w *workOut) charged(out *PotOutlook, s *Stand, all, fresh quantity.Volume) quantity.Volume {
	switch w.Plan.Feeding.Basis {
	case ChargeAll:
		return all
	case ChargeFresh:
		return fresh
	}
	if i := lastCharged(out.Stands, s); i >= 0 {
		// A charge whose end is not known may be there still.
		if spent := out.Stands[i].Spent; spent.IsZero() || spent.Value.Date > s.From {
			return fresh
		}
	}
	return all
}

// chargeFindings reports a charge above what plants bore, and one that meets a half-full
// old one, where the two together are more than a charge for all the mix.
func (w *workOut) chargeFindings(out *PotOutlook, c nutrition.Charge, full nutrition.Dose) {
	if f, ok := nutrition.RateFinding(out.Pot.ID, c, out.Vessel.FillVolume()); ok {
		w.Findings = append(w.Findings, f)
	}
	const leeway = 1.05 // rounding of spoons is coarser
	old, left := w.topTracks(out, c.Date), quantity.Mass(0)
	for _, t := range out.tracks {
		t.Takings = out.takings
		old = append(old, t)
	}
	for _, t := range old {
		left += t.InPot(c.Date)
	}
	if left+c.Mass <= full.Mass*leeway {
		return
	}
	if f, ok := nutrition.DoublingFinding(out.Pot.ID, c, old, nutrition.DoublingLimit); ok {
		w.Findings = append(w.Findings, f)
	}
}

// topTracks follows the top-dressings that the log tells of, before a day.
func (w *workOut) topTracks(out *PotOutlook, before civil.Date) []nutrition.Track {
	var tracks []nutrition.Track
	for _, e := range w.history.top[out.Pot.ID] {
		read := w.labelOf(e.Product)
		if read == nil || !read.lasts() || e.Date >= before || e.Date > w.Today || !(e.Mass > 0) {
			continue
		}
		charge := nutrition.Charge{Product: read.label, Date: e.Date, Mass: e.Mass, Placement: nutrition.OnTop}
		tracks = append(tracks, nutrition.Follow(charge, w.thermal(out), out.takings))
	}
	return tracks
}

// settle gives the tracks of a pot all that its change-outs take out, and the
// top-dressings of the log.
func (w *workOut) settle(out *PotOutlook) {
	for i := range out.tracks {
		out.tracks[i].Takings = out.takings
	}
	if len(w.history.top[out.Pot.ID]) > 0 {
		out.tracks = append(out.tracks, w.topTracks(out, w.Last)...)
	}
}

// lastCharged returns the stand before s that had the last charge, or -1.
func lastCharged(stands []Stand, s *Stand) int {
	last := -1
	for i := range stands {
		if stands[i].From < s.From && !stands[i].Charge.IsZero() {
			last = i
		}
	}
	return last
}

// at returns the place of a stand in the plan file.
func (s *Stand) at(pot string) finding.Where {
	return finding.Where{"pots", pot, "plantings", string(s.Season)}
}
