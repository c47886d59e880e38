package site

import (
	"cmp"
	"slices"

	"fourturn/app/words"
	"fourturn/planner/climate"
)

// longestGaps names the longest gaps of a record, in the order of time.
func (s *Screen) longestGaps(gaps []climate.Gap) string {
	sorted := slices.Clone(gaps)
	slices.SortStableFunc(sorted, func(a, b climate.Gap) int { return cmp.Compare(b.Days(), a.Days()) })
	sorted = sorted[:min(shownGaps, len(sorted))]
	slices.SortFunc(sorted, func(a, b climate.Gap) int { return cmp.Compare(a.From, b.From) })
	var names []string
	for _, g := range sorted {
		names = append(names, s.words.T("site.record_gap", words.A{"from": s.words.Date(g.From), "days": s.words.Days(g.Days())}))
	}
	return s.words.List(names...)
}
