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
}

func historyOf(plan *Plan) history {
	h := history{fed: map[string][]Entry{}, planted: map[string][]Entry{}, disease: map[string]civil.Date{}}
	for _, e := range plan.Log {
		for _, pot := range e.Pots {
			switch e.Kind {
			case Fed, Skipped:
				h.fed[pot] = append(h.fed[pot], e)
			case Planted:
				h.planted[pot] = append(h.planted[pot], e)
			case Diseased:
				h.disease[pot] = max(h.disease[pot], e.Date)
			case Noted:
			}
		}
	}
	byDate := func(a, b Entry) int { return int(a.Date - b.Date) }
	for _, entries := range h.fed {
		slices.SortStableFunc(entries, byDate)
	}
	for _, entries := range h.planted {
		slices.SortStableFunc(entries, byDate)
	}
	return h
}
