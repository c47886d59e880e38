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
		stay := nutrition.Stay{Planted: s.From, ChangeOut: s.To, Feeder: feeder, FreshMix: true}
		spans = append(spans, nutrition.OpeningsOf(stay, nutrition.UsualFeedRules(), warmth).Open...)
	}
	return spans, class
}

// warmth returns the mean temperature of a pot's mix by day: that of the air, for want
// of a better; without a climate it is always warm enough.
func (w *workOut) warmth(out *PotOutlook) func(civil.Date) quantity.Temperature {
	sc := w.climateOf(out)
	if sc == nil {
		return func(civil.Date) quantity.Temperature { return nutrition.UsualReference }
	}
	return func(d civil.Date) quantity.Temperature { return quantity.Temperature(sc.tmean.On(d)) }
}
