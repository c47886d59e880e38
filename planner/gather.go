package planner

import (
	"slices"

	"fourturn/planner/finding"
)

// toldOnce are cautions that hold for every pot alike. They are said once, for the
// pot where they weigh most, so that they are read at all.
var toldOnce = map[string]string{
	"mix.dust":       "", // the dust of any bag of mix
	"mix.floor_load": "load",
}

// gathered returns the findings, gravest first in the order in which they were found,
// with those that are told once reduced to one each.
func gathered(found []finding.Finding) []finding.Finding {
	worst := map[string]int{}
	for i, f := range found {
		by, once := toldOnce[f.Code]
		if !once {
			continue
		}
		if k, seen := worst[f.Code]; !seen || by != "" && argument(f, by) > argument(found[k], by) {
			worst[f.Code] = i
		}
	}
	kept := make([]finding.Finding, 0, len(found))
	for i, f := range found {
		if _, once := toldOnce[f.Code]; !once || worst[f.Code] == i {
			kept = append(kept, f)
		}
	}
	slices.SortStableFunc(kept, func(a, b finding.Finding) int { return int(b.Severity - a.Severity) })
	return kept
}

func argument(f finding.Finding, name string) float64 {
	for _, a := range f.Args {
		if a.Name == name {
			return a.Value.Number
		}
	}
	return 0
}
