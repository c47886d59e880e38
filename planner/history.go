package planner

import (
	"slices"

	"fourturn/planner/civil"
)

// history is the log sorted by pot.
type history struct {
	fed     map[string][]Entry // Fed and Skipped, by date
	planted map[string][]Entry // Planted, by date
	disease map[string]civil.Date
	top     map[string][]Entry // TopDressed, by date
	seen    map[string][]Entry // Diseased, Lost and Lovely, by date
	since   civil.Date         // the first day on which the log speaks of feeds; zero where it never does
}

func historyOf(plan *Plan) history {
	h := history{fed: map[string][]Entry{}, planted: map[string][]Entry{}, disease: map[string]civil.Date{}, top: map[string][]Entry{}, seen: map[string][]Entry{}}
	for _, e := range plan.Log {
		if (e.Kind == Fed || e.Kind == Skipped) && (h.since.IsZero() || e.Date < h.since) {
			h.since = e.Date
		}
		for _, pot := range e.Pots {
			switch e.Kind {
			case Fed, Skipped:
				h.fed[pot] = append(h.fed[pot], e)
			case Planted:
				h.planted[pot] = append(h.planted[pot], e)
			case Diseased:
				h.disease[pot] = max(h.disease[pot], e.Date)
				h.seen[pot] = append(h.seen[pot], e)
			case Lost, Lovely:
				h.seen[pot] = append(h.seen[pot], e)
			case TopDressed:
				h.top[pot] = append(h.top[pot], e)
			case Noted:
			}
		}
	}
	byDate := func(a, b Entry) int { return int(a.Date - b.Date) }
	for _, byPot := range []map[string][]Entry{h.fed, h.seen, h.top, h.planted} {
		for _, entries := range byPot {
			slices.SortStableFunc(entries, byDate)
		}
	}
	return h
}
