package planfile

import (
	"slices"
	"sort"
	"strings"
)

// same reports whether two values say the same, order of entries included.
func same(a, b *value) bool {
	if a == nil || b == nil {
		return a == b
	}
	if a.kind != b.kind || a.text != b.text || a.measure != b.measure || a.number != b.number || len(a.entries) != len(b.entries) {
		return false
	}
	for i := range a.entries {
		if a.entries[i].key != b.entries[i].key || !same(a.entries[i].value, b.entries[i].value) {
			return false
		}
	}
	return true
}

// shared is what two values have in common: entries that are in both, and of
// those the values that are the same.
func shared(a, b *value) *value {
	if same(a, b) {
		return a
	}
	if a == nil || b == nil || a.kind != b.kind || a.kind == scalarKind || a.unit {
		return nil
	}
	both := &value{kind: a.kind, flow: a.flow}
	others := indexed(b)
	for _, e := range a.entries {
		if v := shared(e.value, others[e.key]); v != nil {
			both.entries = append(both.entries, entry{e.key, v})
		}
	}
	return both
}

// kindOf is the kind of the first value that is there.
func kindOf(values ...*value) kind {
	for _, v := range values {
		if v != nil {
			return v.kind
		}
	}
	return scalarKind
}

func flowOf(values ...*value) bool {
	for _, v := range values {
		if v != nil {
			return v.flow
		}
	}
	return false
}

func unitOf(values ...*value) bool {
	for _, v := range values {
		if v != nil && v.unit {
			return true
		}
	}
	return false
}

func thingOf(values ...*value) bool {
	return slices.ContainsFunc(values, func(v *value) bool { return v != nil && v.thing })
}

func orNothing(v *value) *value {
	if len(v.entries) == 0 {
		return nil
	}
	return v
}

func lookUp(v *value, key string) *value {
	if v == nil {
		return nil
	}
	return v.find(key)
}

func indexed(v *value) map[string]*value {
	if v == nil {
		return nil
	}
	index := make(map[string]*value, len(v.entries))
	for _, e := range v.entries {
		index[e.key] = e.value
	}
	return index
}

func keysOf(v *value) []string {
	if v == nil {
		return nil
	}
	keys := make([]string, len(v.entries))
	for i, e := range v.entries {
		keys[i] = e.key
	}
	return keys
}

func unionKeys(a, b *value) []string {
	keys := keysOf(a)
	seen := make(map[string]bool, len(keys))
	for _, key := range keys {
		seen[key] = true
	}
	for _, key := range keysOf(b) {
		if !seen[key] {
			keys = append(keys, key)
		}
	}
	return keys
}

// shown writes a value on one line, for a person to compare.
func shown(v *value) string {
	if v == nil {
		return ""
	}
	if v.kind == scalarKind {
		return v.scalar()
	}
	var b strings.Builder
	emitFlow(&b, v, false)
	return b.String()
}

// shownKey is a list key without the count of equal ones.
func shownKey(key string) string {
	name, _, _ := strings.Cut(key, "\x00")
	return name
}

// mergedOrder brings two orders together that began as the same one. Keys that
// were there before stand as the side has them that moved any; where both did,
// the order that comes first in the alphabet is taken, whoever made it. New keys follow the key that they follow on their side; runs of new
// keys at the same place are ordered by their first key, so that it does not
// matter whose they are.
func mergedOrder(base, mine, theirs []string) []string {
	was := make(map[string]bool, len(base))
	for _, key := range base {
		was[key] = true
	}
	inMine, inTheirs := keySet(mine), keySet(theirs)
	common := func(keys []string) []string {
		var kept []string
		for _, key := range keys {
			if was[key] && inMine[key] && inTheirs[key] {
				kept = append(kept, key)
			}
		}
		return kept
	}
	spine, other, old := common(mine), common(theirs), common(base)
	if slices.Equal(spine, old) || !slices.Equal(other, old) && slices.Compare(other, spine) < 0 {
		spine = other
	}
	onSpine := keySet(spine)
	mineRuns, theirRuns := runsAfter(mine, onSpine), runsAfter(theirs, onSpine)
	order := make([]string, 0, len(mine)+len(theirs))
	placed := make(map[string]bool, len(mine)+len(theirs))
	place := func(keys []string) {
		for _, key := range keys {
			if !placed[key] {
				placed[key] = true
				order = append(order, key)
			}
		}
	}
	for _, anchor := range append([]string{""}, spine...) {
		if anchor != "" {
			place([]string{anchor})
		}
		runs := [][]string{mineRuns[anchor], theirRuns[anchor]}
		sort.SliceStable(runs, func(i, j int) bool { return first(runs[i]) < first(runs[j]) })
		for _, run := range runs {
			place(run)
		}
	}
	return order
}

func first(keys []string) string {
	if len(keys) == 0 {
		return ""
	}
	return keys[0]
}

func keySet(keys []string) map[string]bool {
	set := make(map[string]bool, len(keys))
	for _, key := range keys {
		set[key] = true
	}
	return set
}

// runsAfter cuts an order into the runs of keys that follow each key of the
// spine; those before the first follow the empty key.
func runsAfter(keys []string, spine map[string]bool) map[string][]string {
	runs := map[string][]string{}
	anchor := ""
	for _, key := range keys {
		if spine[key] {
			anchor = key
			continue
		}
		runs[anchor] = append(runs[anchor], key)
	}
	return runs
}
