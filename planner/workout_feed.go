package planner

import (
	"slices"

	"fourturn/planner/civil"
	"fourturn/planner/nutrition"
	"fourturn/planner/working"
)

// roundDays is how far ahead rounds are planned: a year and a few days, so that the
// round a year from now is there too, up to the end of that month. The end moves once
// a month, so that from day to day the same plan stays the best.
const roundDays = 371

// roundEffort bounds the search for rounds, so that the answer to a keystroke does not
// wait for it: at this effort the example's plan takes as many rounds as at the usual.
const roundEffort = 4_000

// feeding is what the rounds need of one pot.
type feeding struct {
	pot  int // index into Outlook.Pots
	pour nutrition.Pour
}

// rounds plans the shared feeding days from today on and gives every pot its feeds.
func (w *workOut) rounds() {
	turn := w.turn()
	w.doneFeeds()
	if len(turn) == 0 {
		return
	}
	demands, pots := w.demands(turn, w.Today, w.Today)
	plan := nutrition.PlanRounds(demands, w.roundRules(turn, w.Today, w.keep(turn)))
	w.Findings = append(w.Findings, namedProducts(plan.Findings, turn)...)
	w.historyFindings(turn)
	turn = w.fromTheFirst(turn, plan.Rounds)
	given := w.roundsOf(plan, turn, pots)
	for i, feeds := range plan.Feeds {
		out := &w.Pots[pots[i].pot]
		for _, f := range feeds {
			out.Feeds = append(out.Feeds, w.feed(out, f, turn[f.Product].product.ID, pots[i].pour))
		}
	}
	w.Rounds = append(w.Rounds, given...)
	if len(plan.Rounds) > 0 {
		w.Fewest = NewFigure(working.Number(float64(len(plan.Rounds)), working.None), plan.Working)
	}
	w.mixFindings(turn, given)
}

func (w *workOut) roundRules(turn []turnProduct, first civil.Date, keep []civil.Date) nutrition.RoundRules {
	end := w.Today.AddDays(roundDays)
	last := civil.New(end.Year(), end.Month(), 1).AddMonths(1).AddDays(-1)
	return nutrition.RoundRules{
		First: first, Last: min(last, w.Last), Products: len(turn), Prefer: w.preferred(), Keep: keep, Effort: roundEffort,
	}
}

// keptDays is how long ago the log may have spoken of feeds for the plan of that day to
// be kept to.
const keptDays = 60

// keep returns the days of the rounds as they were planned on the morning on which the
// log last spoke of a feed. A tick, even a late one, then moves the rounds that follow
// only where it must.
func (w *workOut) keep(turn []turnProduct) []civil.Date {
	last := civil.Date(0)
	for _, e := range w.Plan.Log {
		if (e.Kind == Fed || e.Kind == Skipped) && e.Date <= w.Today {
			last = max(last, e.Date)
		}
	}
	if last.IsZero() || last < w.Today.AddDays(-keptDays) {
		return nil
	}
	demands, _ := w.demands(turn, last, last-1)
	var days []civil.Date
	for _, r := range nutrition.PlanRounds(demands, w.roundRules(turn, last, nil)).Rounds {
		days = append(days, r.Date)
	}
	return days
}

// fromTheFirst returns the turn as the rounds number it, begun with the first product
// of the plan where no pot has been fed yet: whose turn it is first is then free, and a
// person expects the first.
func (w *workOut) fromTheFirst(turn []turnProduct, rounds []nutrition.Round) []turnProduct {
	if len(rounds) == 0 {
		return turn
	}
	for _, e := range w.Plan.Log {
		if e.Kind == Fed {
			return turn
		}
	}
	first := len(turn) - rounds[0].Product
	return append(append([]turnProduct(nil), turn[first%len(turn):]...), turn[:first%len(turn)]...)
}

// demands returns what each pot that is fed asks of the rounds from a day on, as the log
// leaves it on the evening of the day up to.
func (w *workOut) demands(turn []turnProduct, from, upTo civil.Date) ([]nutrition.Demand, []feeding) {
	var demands []nutrition.Demand
	var pots []feeding
	snoozes := w.feedSnoozes(upTo)
	for i := range w.Pots {
		out := &w.Pots[i]
		if out.Vessel == nil {
			continue
		}
		open, feeder := w.openSpans(out, from)
		if len(open) == 0 {
			continue
		}
		d := nutrition.Demand{Pot: out.Pot.ID, Interval: w.interval(feeder), Open: open}
		d = w.historyOf(out.Pot.ID, turn, upTo).Since(d, len(turn), d.Interval.Shortest)
		if d.LastFed.IsZero() {
			d.Open = w.begun(open, from)
		}
		for _, s := range snoozes[out.Pot.ID] {
			if d.LastFed < s.Set {
				d.NotBefore = max(d.NotBefore, s.Until)
			}
		}
		demands = append(demands, d)
		pots = append(pots, feeding{pot: i, pour: w.pour(out)})
	}
	return demands, pots
}

// pour returns the feed that a pot takes.
func (w *workOut) pour(out *PotOutlook) nutrition.Pour {
	return nutrition.PourFor(out.Vessel.FillVolume(), 0, w.Plan.Feeding.Leaching)
}

// interval returns the days between feeds: those of the feeder class, or within two
// days of what the person wants.
func (w *workOut) interval(feeder nutrition.Feeder) nutrition.Interval {
	const leeway = 2 // days, so that pots can share rounds; judgement
	if n := w.Plan.Feeding.Interval; n > 0 {
		n = min(n, nutrition.LongestInterval)
		return nutrition.Interval{Shortest: max(1, n-leeway), Longest: min(n+leeway, nutrition.LongestInterval), Wanted: n}
	}
	return nutrition.ClassOf(feeder).Interval
}

// historyOf returns what a pot really had up to a day. What was really in the can
// decides whose turn it is.
func (w *workOut) historyOf(pot string, turn []turnProduct, upTo civil.Date) nutrition.History {
	var events []nutrition.Event
	for _, e := range w.history.fed[pot] {
		if e.Date > upTo {
			break
		}
		event := nutrition.Event{Date: e.Date, Kind: nutrition.Fed, Product: nutrition.AnyProduct}
		if e.Kind == Skipped {
			event.Kind = nutrition.Skipped
		} else {
			event.Product = slices.IndexFunc(turn, func(t turnProduct) bool { return t.product.ID == e.Product })
		}
		events = append(events, event)
	}
	return nutrition.NewHistory(events)
}

// historyFindings reports feeds of the last weeks that broke the turn or came too soon.
func (w *workOut) historyFindings(turn []turnProduct) {
	const lately = 30 // days; what lies further back is of no use any more
	for i := range w.Pots {
		out := &w.Pots[i]
		entries := w.history.fed[out.Pot.ID]
		if len(entries) == 0 || entries[len(entries)-1].Date < w.Today.AddDays(-lately) {
			continue
		}
		_, feeder := w.openSpans(out, w.Today)
		if !feeder.Known() {
			continue
		}
		found := w.historyOf(out.Pot.ID, turn, w.Today).Findings(out.Pot.ID, w.interval(feeder), len(turn), w.Today.AddDays(-lately))
		w.Findings = append(w.Findings, namedProducts(found, turn)...)
	}
}

// feedSnoozes returns the snoozes of feeds that were set up to a day and still hold, by
// pot.
func (w *workOut) feedSnoozes(upTo civil.Date) map[string][]Snooze {
	list := map[string][]Snooze{}
	for _, s := range w.Plan.Snoozed {
		if s.Kind != DueFeed || s.Set > upTo || s.Until <= w.Today {
			continue
		}
		for _, pot := range s.Pots {
			list[pot] = append(list[pot], s)
		}
	}
	return list
}

// doneFeeds lists what the log says each pot really had.
func (w *workOut) doneFeeds() {
	for i := range w.Pots {
		out := &w.Pots[i]
		for _, e := range w.history.fed[out.Pot.ID] {
			if e.Kind == Fed && e.Date >= w.First && e.Date <= w.Today {
				out.Feeds = append(out.Feeds, Feed{Date: e.Date, Product: e.Product, Done: true})
			}
		}
	}
	w.doneRounds()
	slices.SortStableFunc(w.Rounds, func(a, b Round) int { return int(a.Date - b.Date) })
}

// doneRounds lists the rounds that the log tells of. Feeds of one day with one product
// are one round, however often they were entered.
func (w *workOut) doneRounds() {
	index := make(map[string]int, len(w.Pots))
	for i := range w.Pots {
		index[w.Pots[i].Pot.ID] = i
	}
	numbers := map[can]int{}
	log := slices.Clone(w.Plan.Log)
	slices.SortStableFunc(log, func(a, b Entry) int { return int(a.Date - b.Date) })
	at := map[can]int{}
	type served struct{ round, pot int }
	had := map[served]bool{}
	for _, e := range log {
		if e.Kind != Fed || e.Date > w.Today {
			continue
		}
		key := can{e.Date, e.Product}
		if numbers[key] == 0 {
			numbers[key] = len(numbers) + 1
		}
		if e.Date < w.First {
			continue
		}
		i, ok := at[key]
		if !ok {
			i = len(w.Rounds)
			at[key] = i
			w.Rounds = append(w.Rounds, Round{Date: e.Date, Product: e.Product, Done: true, Number: numbers[key]})
		}
		for _, id := range e.Pots {
			if k, known := index[id]; known && !had[served{i, k}] {
				had[served{i, k}] = true
				w.Rounds[i].Pots = append(w.Rounds[i].Pots, k)
			}
		}
	}
	w.fedRounds = len(numbers)
}
