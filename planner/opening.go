package planner

import (
	"fourturn/planner/civil"
	"fourturn/planner/nutrition"
	"fourturn/planner/quantity"
)

// openSpans returns the days on which a pot may be fed and the class by which.
//
// Soluble feeds go on beside a slow-release charge, as the job is done; only the
// starter charge of the mix holds them back. Who would rather wait for the charge
// sets a longer interval.
func (w *workOut) openSpans(out *PotOutlook) ([]nutrition.Span, nutrition.Feeder) {
	var spans []nutrition.Span
	class := nutrition.NoFeeder
	warmth := w.warmth(out)
	for i := range out.Stands {
		s := &out.Stands[i]
		feeder, _ := w.growing(s)
		if !feeder.Known() || s.To <= w.Today {
			continue
		}
		class = class.Heavier(feeder)
		spans = append(spans, w.openDays(out, nutrition.Stay{Planted: s.From, ChangeOut: s.To, Feeder: feeder, FreshMix: true}, warmth)...)
	}
	return spans, class
}

// stayKey is all that the open days of a stand depend on.
type stayKey struct {
	spot     string
	from, to civil.Date
	feeder   nutrition.Feeder
}

// openDays returns the days of a stay on which it may be fed, worked out once for all
// pots of a spot that change over on the same days.
func (w *workOut) openDays(out *PotOutlook, stay nutrition.Stay, warmth func(civil.Date) quantity.Temperature) []nutrition.Span {
	key := stayKey{from: stay.Planted, to: stay.ChangeOut, feeder: stay.Feeder}
	if out.Spot != nil {
		key.spot = out.Spot.ID
	}
	open, ok := w.openings[key]
	if !ok {
		open = nutrition.OpeningsOf(stay, nutrition.UsualFeedRules(), warmth).Open
		w.openings[key] = open
	}
	return open
}

// warmth returns the mean temperature of a pot's mix by day: that of the air, for want
// of a better; without a climate it is always warm enough.
func (w *workOut) warmth(out *PotOutlook) func(civil.Date) quantity.Temperature {
	sc := w.climateOf(out)
	if sc == nil {
		return func(civil.Date) quantity.Temperature { return nutrition.UsualReference }
	}
	return sc.on
}
