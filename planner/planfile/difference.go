package planfile

import (
	"slices"

	"fourturn/planner"
	"fourturn/planner/finding"
)

// Difference is one place at which two plans differ. Before or After is nil where
// there is nothing.
type Difference struct {
	Where  finding.Where
	Steps  []Step // the same place, step by step
	Before *Content
	After  *Content
	Order  bool // the things in both are in another order; Before and After are nil
}

// Differences lists what differs between two plans, value by value; a pot or the
// like that is only in one of them is one difference. It is what a preview of a
// previous copy, or of a file changed by someone else, shows.
func Differences(before, after *planner.Plan) []Difference {
	var all []Difference
	differences(&all, nil, valueOf(before), valueOf(after))
	return all
}

// wholly reports whether values are compared as one: single values, and lists that
// stand on one line.
func wholly(before, after *value) bool {
	kind := kindOf(before, after)
	return kind == scalarKind || kind == listKind && flowOf(before, after) || unitOf(before, after)
}

// sameOrder reports whether the things that are in both tables stand in the same
// order.
func sameOrder(before, after *value) bool {
	inBefore, inAfter := indexed(before), indexed(after)
	both := func(keys []string) (kept []string) {
		for _, key := range keys {
			if inBefore[key] != nil && inAfter[key] != nil {
				kept = append(kept, key)
			}
		}
		return kept
	}
	return slices.Equal(both(keysOf(before)), both(keysOf(after)))
}

func differences(all *[]Difference, at *place, before, after *value) {
	if same(before, after) {
		return
	}
	if wholly(before, after) || at != nil && at.item && (before == nil || after == nil) {
		*all = append(*all, Difference{Where: at.where(), Steps: at.steps(), Before: at.content(before), After: at.content(after)})
		return
	}
	in := at.in
	if kindOf(before, after) != recordKind {
		in = at.itemIn
		if !sameOrder(before, after) {
			*all = append(*all, Difference{Where: at.where(), Steps: at.steps(), Order: true})
		}
	}
	b, a := indexed(before), indexed(after)
	for _, key := range unionKeys(before, after) {
		differences(all, in(shownKey(key)), b[key], a[key])
	}
}

// lookUp returns the value at the place in a plan, or nil.
func (p *place) lookUp(plan *value) *value {
	if p == nil {
		return plan
	}
	above := p.above.lookUp(plan)
	if above == nil {
		return nil
	}
	return above.find(p.key)
}

// content returns what a value at the place says.
func (p *place) content(v *value) *Content {
	if p == nil {
		return contentOf("", false, v)
	}
	return contentOf(p.key, p.item, v)
}
