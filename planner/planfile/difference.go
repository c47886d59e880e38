package planfile

import (
	"fourturn/planner"
	"fourturn/planner/finding"
)

// Difference is one place at which two plans differ. Before or After is empty
// where there is nothing.
type Difference struct {
	Where  finding.Where
	Before string
	After  string
}

// Differences lists what differs between two plans, value by value; a pot or the
// like that is only in one of them is one difference. It is what a preview of a
// previous copy, or of a file changed by someone else, shows.
func Differences(before, after *planner.Plan) []Difference {
	var all []Difference
	differences(&all, nil, valueOf(before), valueOf(after))
	return all
}

func differences(all *[]Difference, at *place, before, after *value) {
	if same(before, after) {
		return
	}
	if before == nil || after == nil || before.kind == scalarKind || before.kind == listKind && before.flow {
		*all = append(*all, Difference{at.where(), shown(before), shown(after)})
		return
	}
	b, a := indexed(before), indexed(after)
	for _, key := range unionKeys(before, after) {
		differences(all, at.in(shownKey(key)), b[key], a[key])
	}
}
