package plants

import (
	"fourturn/app/words"
	"fourturn/planner"
	"fourturn/planner/civil"
	"fourturn/planner/quantity"
	"fourturn/planner/working"
	catalogue "fourturn/plants"
)

// A plant can stand outside on a day where the nights are as warm as it asks for, the
// days are no warmer than it bears, and, if frost kills it, no freeze is to be feared
// beyond the risk that the person accepts. This is the planner's own rule. It takes
// mean daily temperatures of the site, not the shelter of one spot, and says nothing
// of how a hardy plant comes through the winter.

// freezing is where plants that bear no frost die.
const freezing quantity.Temperature = 0

// place is a site with the risk that the person takes.
type place struct {
	*planner.SiteOutlook
	risk float64
}

// here returns the site of the pot that plants go into, or else the first whose
// climate is known.
func (s *Screen) here() (place, bool) {
	all, _ := s.session.Outlook()
	if all == nil {
		return place{}, false
	}
	risk := s.session.Plan().Risk
	if risk == 0 {
		risk = planner.DefaultRisk
	}
	pot := s.Pot()
	for i := range all.Pots {
		if out := &all.Pots[i]; pot != nil && out.Pot.ID == pot.ID && out.Site != nil && out.Site.Known {
			return place{out.Site, risk}, true
		}
	}
	for i := range all.Sites {
		if all.Sites[i].Known {
			return place{&all.Sites[i], risk}, true
		}
	}
	return place{}, false
}

// livesNow returns whether a plant can stand outside today, and no plant where no
// climate is known.
func (s *Screen) livesNow() func(*catalogue.Plant) bool {
	at, ok := s.here()
	all, _ := s.session.Outlook()
	return func(p *catalogue.Plant) bool { return ok && known(p) && at.suits(p, all.Today) }
}

// known reports whether enough is known of the plant to say where it lives. Cut stems
// do not live.
func known(p *catalogue.Plant) bool {
	return p.Kind.Growing() && p.LowestInPot.Known() && p.PlantingOutNight.Known()
}

func (at place) suits(p *catalogue.Plant, day civil.Date) bool {
	i := day.MonthDay().YearDay() - 1
	low, high := quantity.Temperature(at.Low[i]), quantity.Temperature(at.High[i])
	if low < p.PlantingOutNight.Or(low) || high > p.HeatLimit.Or(high) {
		return false
	}
	return p.LowestInPot.Or(freezing) < freezing || at.Freeze[i] <= at.risk
}

const year = 365

// window returns the days on which the plant can stand outside: those around today,
// or else the next. All is true where that is every day, and ok is false where there
// is no such day.
func (at place) window(p *catalogue.Plant, today civil.Date) (from, to civil.Date, all, ok bool) {
	from = today
	for n := 0; !at.suits(p, from); n++ {
		if n == year {
			return 0, 0, false, false
		}
		from = from.AddDays(1)
	}
	to = from
	for ; at.suits(p, to); to = to.AddDays(1) {
		if to > from.AddDays(year) {
			return from, to, true, true
		}
	}
	if from == today {
		for at.suits(p, from.AddDays(-1)) {
			from = from.AddDays(-1)
		}
	}
	return from, to.AddDays(-1), false, true
}

// Lives says when the chosen plant can stand outside at the site, or is empty where
// that is not known.
func (s *Screen) Lives() (Fact, bool) {
	p := s.plant()
	at, ok := s.here()
	if p == nil || !ok || !known(p) {
		return Fact{}, false
	}
	all, _ := s.session.Outlook()
	from, to, always, found := at.window(p, all.Today)
	text := s.words.T("plant_book.lives_never")
	switch {
	case always:
		text = s.words.T("plant_book.lives_always")
	case found:
		text = s.words.T("plant_book.lives_from", words.A{"first": s.words.ShortDate(from), "last": s.words.ShortDate(to)})
	}
	figure := planner.NewFigure(working.Text(text), func() working.Trace { return s.livesTrace(p, at, all.Today, text) })
	return Fact{
		Label: s.words.T("plant_book.lives_at", words.A{"site": at.Site.Name}), Value: text, Soft: true, Figure: figure,
	}, true
}

func (s *Screen) livesTrace(p *catalogue.Plant, at place, today civil.Date, text string) working.Trace {
	i := today.MonthDay().YearDay() - 1
	trace := working.Trace{
		Name: "plant_book.lives", Formula: "Tmin ≥ T₁ ∧ Tmax ≤ T₂ ∧ (T₀ < 0 °C ∨ P ≤ r)",
		Result: working.Text(text), Source: working.Source{Status: working.Judgement},
		Notes: []string{"plant_book.lives_limits"},
		Inputs: []working.Input{
			{Symbol: "Tmin", Name: "plant_book.low_today", Value: working.Number(at.Low[i], working.Celsius), Source: at.Source},
			{Symbol: "Tmax", Name: "plant_book.high_today", Value: working.Number(at.High[i], working.Celsius), Source: at.Source},
			{Symbol: "P", Name: "plant_book.freeze_today", Value: working.Number(at.Freeze[i], working.Share), Source: at.Source},
			{Symbol: "r", Name: "plant_book.risk", Value: working.Number(at.risk, working.Share), Source: working.Source{Status: working.Entered}},
		},
	}
	for _, one := range []struct {
		symbol string
		field  catalogue.Field
		value  catalogue.Maybe[quantity.Temperature]
	}{
		{"T₀", catalogue.FieldLowestInPot, p.LowestInPot},
		{"T₁", catalogue.FieldPlantingOutNight, p.PlantingOutNight},
		{"T₂", catalogue.FieldHeatLimit, p.HeatLimit},
	} {
		if t, ok := one.value.Get(); ok {
			trace.Inputs = append(trace.Inputs, working.Input{
				Symbol: one.symbol, Name: one.field.Key(), Value: working.Number(float64(t), working.Celsius), Source: s.book.Source(p, one.field),
			})
		}
	}
	return trace
}
