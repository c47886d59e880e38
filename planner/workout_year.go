package planner

import (
	"slices"

	"fourturn/planner/civil"
	"fourturn/planner/finding"
	"fourturn/planner/working"
)

// seasonDay is the change-out day into one season in one year.
type seasonDay struct {
	exists   bool
	endless  bool       // the season has no start: any day will do
	best     civil.Date // at the plan's risk
	earliest civil.Date
	latest   civil.Date
	reason   string
	trace    func(civil.Date) working.Trace
}

// seasonDays are the change-out days of a site's four seasons in one calendar year,
// each in the year in which it begins.
type seasonDays map[Season]seasonDay

type yearKey struct {
	spot string
	year int
}

// year works out what stands in the pot from the first day to the last.
func (w *workOut) year(out *PotOutlook, where finding.Where) {
	var stands []Stand
	for i := range out.Pot.Plantings {
		planting := &out.Pot.Plantings[i]
		stands = append(stands, w.starts(out, planting, where)...)
	}
	stands = w.searched(out, notOvertaken(inTurn(stands, func(s Stand) civil.Date { return s.From })))
	for i := range stands {
		s := &stands[i]
		s.To = w.Last.AddDays(1)
		if i+1 < len(stands) {
			s.To = stands[i+1].From
		}
		if s.Pinned && !s.Earliest.IsZero() && s.From < s.Earliest {
			w.find("plan.pin_before_safe", finding.Warning, append(slices.Clone(where), "plantings", string(s.Season)),
				finding.Arg{Name: "date", Value: working.Date(s.From)}, finding.Arg{Name: "earliest", Value: working.Date(s.Earliest)})
		}
	}
	out.Stands = slices.DeleteFunc(stands, func(s Stand) bool { return s.To <= w.First || s.From > w.Last })
	w.markFirst(out.Stands)
	w.remarkOnSearch(out, where)
	if len(out.Stands) == 0 && len(out.Pot.Plantings) > 0 {
		w.find("plan.no_days", finding.Warning, where)
	}
	w.fillStands(out, where)
}

// markFirst marks the first stand of each season that is not over.
func (w *workOut) markFirst(stands []Stand) {
	seen := map[Season]bool{}
	for i := range stands {
		if s := &stands[i]; s.To > w.Today && !seen[s.Season] {
			seen[s.Season], s.first = true, true
		}
	}
}

// starts returns a planting's change-out in each year that touches the horizon: the
// day that was logged, else the day that was pinned, else the day the site gives.
func (w *workOut) starts(out *PotOutlook, planting *Planting, where finding.Where) []Stand {
	if out.Site == nil || !out.Site.Known {
		return w.startsWithoutClimate(out, planting)
	}
	var stands []Stand
	for year := w.First.Year() - 1; year <= w.Last.Year(); year++ {
		day := w.daysOfSpot(out.Spot, out.Site, year)[planting.Season]
		if !day.exists && planting.Start.Year() != year {
			continue
		}
		s := Stand{Planting: planting, Season: planting.Season, From: day.best, Earliest: day.earliest, Latest: day.latest, Reason: day.reason}
		if trace := day.trace; trace != nil {
			best := day.best
			s.Start = NewFigure(working.Date(best), func() working.Trace { return trace(best) })
		}
		if chosen := planting.Start; !chosen.IsZero() && (!day.exists || nearest(chosen, day.best)) {
			s.From, s.Pinned, s.Reason = chosen, true, "plan.reason.pinned"
			s.Start = enteredDay(chosen, "plan.reason.pinned")
		}
		if happened, ok := w.plantedNear(out.Pot.ID, planting.Season, day.best); ok {
			s.From, s.Happened, s.Reason = happened, true, "plan.reason.happened"
			s.Start = enteredDay(happened, "plan.reason.happened")
		}
		stands = append(stands, s)
	}
	if len(stands) == 0 {
		w.find("plan.no_season", finding.Note, append(slices.Clone(where), "plantings", string(planting.Season)),
			finding.Arg{Name: "season", Value: working.Text("plan.season." + string(planting.Season))})
	}
	return stands
}

// startsWithoutClimate returns a planting's change-outs where no season is known: those
// that were logged, and the pinned one where none was logged near it.
func (w *workOut) startsWithoutClimate(out *PotOutlook, planting *Planting) []Stand {
	var stands []Stand
	pinned := !planting.Start.IsZero()
	for _, e := range w.history.planted[out.Pot.ID] {
		if e.Season != planting.Season || e.Date > w.Today {
			continue
		}
		pinned = pinned && !nearest(e.Date, planting.Start)
		stands = append(stands, Stand{
			Planting: planting, Season: planting.Season, From: e.Date, Happened: true,
			Reason: "plan.reason.happened", Start: enteredDay(e.Date, "plan.reason.happened"),
		})
	}
	if pinned {
		stands = append(stands, Stand{
			Planting: planting, Season: planting.Season, From: planting.Start, Pinned: true,
			Reason: "plan.reason.pinned", Start: enteredDay(planting.Start, "plan.reason.pinned"),
		})
	}
	return stands
}

// halfYear is how far a chosen or logged day may lie from the day the site gives and
// still be the change-out of that year.
const halfYear = 182

func nearest(day, of civil.Date) bool { return day-of <= halfYear && of-day < halfYear }

// inTurn sorts change-outs by day and drops those that fall on the day of another one:
// of two together, the later season in the order of days stands.
func inTurn[T any](list []T, day func(T) civil.Date) []T {
	slices.SortStableFunc(list, func(a, b T) int { return int(day(a) - day(b)) })
	kept := list[:0]
	for _, one := range list {
		if n := len(kept); n > 0 && day(kept[n-1]) == day(one) {
			kept[n-1] = one
			continue
		}
		kept = append(kept, one)
	}
	return kept
}

// notOvertaken drops change-outs that did not happen before one that did: the pot has
// gone on without them.
func notOvertaken(stands []Stand) []Stand {
	last := -1
	for i := range stands {
		if stands[i].Happened {
			last = i
		}
	}
	kept := stands[:0]
	for i, s := range stands {
		if s.Happened || i > last || !loggedBefore(stands[:i]) {
			kept = append(kept, s)
		}
	}
	return kept
}

// loggedBefore reports whether the log knows of a change-out before: what lies before
// the first one may well have happened without being entered.
func loggedBefore(stands []Stand) bool {
	return slices.ContainsFunc(stands, func(s Stand) bool { return s.Happened })
}

// plantedNear returns the day on which the log says that the pot was changed over
// to a season in the year of a day.
func (w *workOut) plantedNear(pot string, season Season, day civil.Date) (civil.Date, bool) {
	found := civil.Date(0)
	for _, e := range w.history.planted[pot] {
		if e.Season == season && e.Date <= w.Today && (day.IsZero() || nearest(e.Date, day)) {
			found = e.Date
		}
	}
	return found, !found.IsZero()
}

// daysOfSpot returns the change-out days of a spot in a year, worked out once.
func (w *workOut) daysOfSpot(spot *Spot, site *SiteOutlook, year int) seasonDays {
	key := yearKey{spot: spot.ID, year: year}
	days, ok := w.years[key]
	if !ok {
		days = w.seasonDaysOf(spot, site, year)
		w.years[key] = days
	}
	return days
}

func enteredDay(day civil.Date, reason string) Figure {
	return NewFigure(working.Date(day), func() working.Trace {
		return working.Trace{
			Name: "plan.change_out", Formula: "t", Result: working.Date(day),
			Source: working.Source{Status: working.Entered}, Notes: []string{reason},
		}
	})
}
