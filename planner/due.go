package planner

import (
	"slices"

	"fourturn/planner/civil"
)

// Days ahead that work is listed as due, and days for which a missed change-out is
// still asked for. A missed feed is not: the next round takes its place.
const (
	dueAhead = 60
	dueBack  = 21
)

// open reports whether a change-out is still to be done on a day: it has not happened,
// and it is not so late that nobody asks for it any more.
func (s *Stand) open(today civil.Date) bool {
	return !s.Happened && s.From >= today.AddDays(-dueBack)
}

// due lists what the plan asks for, by date. Change-outs of several pots into the
// same season on the same day are one piece of work.
func (w *workOut) due() {
	type key struct {
		date   civil.Date
		season Season
	}
	changes := map[key][]int{}
	for i := range w.Pots {
		for _, s := range w.Pots[i].Stands {
			if s.open(w.Today) && s.From <= w.Today.AddDays(dueAhead) {
				k := key{s.From, s.Season}
				changes[k] = append(changes[k], i)
			}
		}
	}
	for k, pots := range changes {
		w.Due = append(w.Due, w.asleep(Due{Date: k.date, Kind: DueChangeOut, Pots: pots, Season: k.season}))
	}
	for i, r := range w.Rounds {
		if !r.Done && r.Date >= w.Today.AddDays(-dueBack) && r.Date <= w.Today.AddDays(dueAhead) {
			w.Due = append(w.Due, Due{Date: r.Date, Kind: DueFeed, Pots: r.Pots, Product: r.Product, Round: i})
		}
	}
	order := map[DueKind]int{DueChangeOut: 0, DueFeed: 1}
	slices.SortFunc(w.Due, func(a, b Due) int {
		switch {
		case a.Date != b.Date:
			return int(a.Date - b.Date)
		case a.Kind != b.Kind:
			return order[a.Kind] - order[b.Kind]
		}
		return slices.Index(Seasons[:], a.Season) - slices.Index(Seasons[:], b.Season)
	})
}

// asleep returns a change-out with the day until which its reminder sleeps: that of all
// its pots, since one that is awake is reminder enough.
func (w *workOut) asleep(d Due) Due {
	sleeps := map[string]civil.Date{}
	for _, s := range w.Plan.Snoozed {
		if s.Kind != DueChangeOut || s.Season != d.Season || s.Until <= w.Today {
			continue
		}
		for _, id := range s.Pots {
			sleeps[id] = max(sleeps[id], s.Until)
		}
	}
	until := civil.Date(0)
	for i, pot := range d.Pots {
		own := sleeps[w.Pots[pot].Pot.ID]
		if own.IsZero() {
			return d
		}
		if i == 0 || own < until {
			until = own
		}
	}
	d.Until = until
	return d
}
