package planner

import (
	"time"

	"fourturn/planner/civil"
	"fourturn/planner/nutrition"
	"fourturn/planner/quantity"
)

// feedRulesOf returns when soluble feeds are given: the person's own rules before the
// usual ones.
//
// Soluble feeds go on beside a slow-release charge, as the job is done, unless the plan
// says for how many weeks a charge covers the plants alone.
func feedRulesOf(plan *Plan) nutrition.FeedRules {
	own, rules := plan.Feeding.Rules, nutrition.UsualFeedRules()
	rules.ChargeWeeks = own.ChargeWeeks
	if own.StarterWeeks > 0 {
		rules.StarterWeeks = own.StarterWeeks
	}
	if own.StopBefore > 0 {
		rules.StopBefore = own.StopBefore
	}
	if own.Coldest != nil {
		rules.Coldest = *own.Coldest
	}
	if own.HeatAbove > 0 {
		rules.HeatAbove = own.HeatAbove
	}
	if own.HeatShare > 0 {
		rules.HeatShare = own.HeatShare
	}
	if own.YoungDays > 0 {
		rules.YoungDays = own.YoungDays
	}
	if own.YoungShare > 0 {
		rules.YoungShare = own.YoungShare
	}
	return rules
}

// openSpans returns the days on which a pot may be fed, from a day on, and the class by
// which.
func (w *workOut) openSpans(out *PotOutlook, from civil.Date) ([]nutrition.Span, nutrition.Feeder) {
	var spans []nutrition.Span
	class := nutrition.NoFeeder
	for i := range out.Stands {
		s := &out.Stands[i]
		if !s.Feeder.Known() || s.To <= from {
			continue
		}
		class = class.Heavier(s.Feeder)
		spans = append(spans, w.opening(out, s).days.Open...)
	}
	return spans, class
}

// opening is the days of a stay on which it may be fed, and what was asked of them.
type opening struct {
	days   nutrition.Openings
	shares map[civil.Date]weaker
}

// weaker is the share of its strength that a feed should have, and why.
type weaker struct {
	share  float64
	reason string
}

// share returns the share of its strength that a feed on a day should have.
func (o *opening) share(day civil.Date) weaker {
	known, ok := o.shares[day]
	if !ok {
		known.share, known.reason = o.days.Share(day)
		o.shares[day] = known
	}
	return known
}

// stayKey is all that the open days of a stand depend on.
type stayKey struct {
	spot     string
	from, to civil.Date
	feeder   nutrition.Feeder
	charged  bool
}

// opening returns the days of a stand on which it may be fed, worked out once for all
// pots of a spot that change over on the same days.
func (w *workOut) opening(out *PotOutlook, s *Stand) *opening {
	stay := nutrition.Stay{
		Planted: s.From, ChangeOut: s.To, Feeder: s.Feeder, FreshMix: true,
		Charged: w.rules.ChargeWeeks > 0 && !s.Charge.IsZero(),
	}
	key := stayKey{from: stay.Planted, to: stay.ChangeOut, feeder: stay.Feeder, charged: stay.Charged}
	if out.Spot != nil {
		key.spot = out.Spot.ID
	}
	open, ok := w.openings[key]
	if !ok {
		stay.DormantDays = w.rests(s.From, s.To)
		open = &opening{days: nutrition.OpeningsOf(stay, w.rules, w.warmth(out)), shares: map[civil.Date]weaker{}}
		w.openings[key] = open
	}
	return open
}

// rests returns the rests of the plants that touch some days, as the plan names them.
func (w *workOut) rests(from, to civil.Date) []nutrition.Span {
	first, last := w.Plan.Feeding.Rules.RestFrom, w.Plan.Feeding.Rules.RestTo
	if first.IsZero() || last.IsZero() {
		return nil
	}
	var spans []nutrition.Span
	for year := from.Year() - 1; year <= to.Year(); year++ {
		span := nutrition.Span{First: first.In(year), Last: last.In(year)}
		if span.Last < span.First { // over the turn of the year
			span.Last = last.In(year + 1)
		}
		if span.Last >= from && span.First < to {
			spans = append(spans, span)
		}
	}
	return spans
}

// begun returns the open days of a pot as its log leaves them. A pot of which the log
// never tells a feed is not overdue: nobody knows what it had. It counts from the day on
// which the log began, and where there is no log from today or the next weekday that
// rounds prefer, so that its first feed is due then.
func (w *workOut) begun(open []nutrition.Span, today civil.Date) []nutrition.Span {
	since := w.history.since
	if since.IsZero() || since > today {
		since = w.nextPreferred(today).AddDays(-nutrition.UsualGrace)
	}
	kept := make([]nutrition.Span, 0, len(open))
	for _, s := range open {
		if s.Last >= since {
			kept = append(kept, nutrition.Span{First: max(s.First, since), Last: s.Last})
		}
	}
	return kept
}

// nextPreferred returns the first day from today on that rounds prefer.
func (w *workOut) nextPreferred(today civil.Date) civil.Date {
	days := w.preferred()
	for d := today; len(days) > 0 && d < today.AddDays(7); d++ {
		if d.Weekday() == days[0] {
			return d
		}
	}
	return today
}

func (w *workOut) preferred() []time.Weekday {
	for day := time.Sunday; day <= time.Saturday; day++ {
		if weekdayNames[day] == w.Plan.Feeding.FirstDay {
			return []time.Weekday{day}
		}
	}
	return nil
}

var weekdayNames = [...]string{"sunday", "monday", "tuesday", "wednesday", "thursday", "friday", "saturday"}

// warmth returns the mean temperature of a pot's mix by day: that of the air, for want
// of a better; without a climate it is always warm enough.
func (w *workOut) warmth(out *PotOutlook) func(civil.Date) quantity.Temperature {
	sc := w.climateOf(out)
	if sc == nil {
		return func(civil.Date) quantity.Temperature { return nutrition.UsualReference }
	}
	return sc.on
}
