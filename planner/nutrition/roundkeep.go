package nutrition

import (
	"cmp"
	"slices"
)

// undominated sorts states by promise and leaves out those that are like another,
// or clearly worse than one of the most promising.
func undominated(states []*state) []*state {
	slices.SortFunc(states, func(a, b *state) int {
		return cmp.Or(
			cmp.Compare(a.late, b.late), cmp.Compare(a.promise, b.promise), cmp.Compare(a.off, b.off),
			cmp.Compare(a.hunger, b.hunger), cmp.Compare(b.choices, a.choices), cmp.Compare(a.hash, b.hash),
			slices.Compare(a.words, b.words),
		)
	})
	const compared = 24 // of the most promising, each state is held against so many
	byHash := make(map[uint64][]*state, len(states))
	kept := states[:0]
	for _, st := range states {
		if dominated(st, byHash[st.hash]) || dominated(st, kept[:min(compared, len(kept))]) {
			continue
		}
		byHash[st.hash] = append(byHash[st.hash], st)
		kept = append(kept, st)
	}
	return kept
}

// dominated reports whether one of the others leaves at least the choices of st at
// no more cost.
func dominated(st *state, others []*state) bool {
	for _, o := range others {
		if o.late <= st.late && o.rounds <= st.rounds && o.off <= st.off && covers(o.words, st.words) {
			return true
		}
	}
	return false
}

// covers reports whether every choice of b is open in a. An overdue mark is no
// choice to be compared: it must be the same.
func covers(a, b []uint64) bool {
	for i := range a {
		if b[i]&^a[i] != 0 || (a[i]^b[i])&overdue != 0 {
			return false
		}
	}
	return true
}

// widely keeps about width of the sorted states, as many of each kind by the day and
// the product of the last round: the most promising alone would all be alike.
func widely(states []*state, width, t int) []*state {
	type kind struct{ age, product int }
	const oldest = 20 // days; beyond, the last round is long past for all
	seen := map[kind]int{}
	rank := make([]int, len(states))
	ranks := make([]int, len(states)+1)
	for i, st := range states {
		k := kind{oldest + 1, -1}
		if st.trail != nil {
			k = kind{min(t-st.trail.day, oldest), st.trail.product}
		}
		rank[i] = seen[k]
		ranks[rank[i]]++
		seen[k]++
	}
	each, total := 0, 0
	for total+ranks[each] <= width {
		total += ranks[each]
		each++
	}
	kept := states[:0]
	for i, st := range states {
		// Of the rank that does not fit whole, the most promising.
		if rank[i] < each || rank[i] == each && total < width {
			if rank[i] == each {
				total++
			}
			kept = append(kept, st)
		}
	}
	return kept
}
