package rotation

import "slices"

// front holds the labels of a morning, those of each carry apart: none is no worse
// than another of the same carry.
type front struct {
	carries []int32
	labels  [][]int32
}

// add keeps a label unless another is no worse in every respect, and drops those
// that are then no better than it.
func (s *search) add(l label) {
	if l.day == int32(s.p.days) {
		l.carry, l.release, l.made = 0, nil, 0 // nothing comes after
	}
	front := &s.fronts[l.day]
	k := slices.Index(front.carries, l.carry)
	if k < 0 {
		k = len(front.carries)
		front.carries, front.labels = append(front.carries, l.carry), append(front.labels, nil)
	}
	for _, other := range front.labels[k] {
		if s.noWorse(&s.labels[other], &l) {
			return
		}
	}
	kept := front.labels[k][:0]
	for _, other := range front.labels[k] {
		if !s.noWorse(&l, &s.labels[other]) {
			kept = append(kept, other)
		}
	}
	front.labels[k] = append(kept, int32(len(s.labels)))
	s.labels = append(s.labels, l)
}

// noWorse reports whether all that may follow one label may follow another, at no
// less value: fewer change-outs made leave more to make, unless the year needs them.
func (s *search) noWorse(l, other *label) bool {
	if l.value < other.value || l.made > other.made {
		return false
	}
	if l.made < other.made && l.day < int32(s.p.days) && int(l.made) < s.p.least[s.p.block[l.day]] {
		return false
	}
	for t, day := range l.release {
		if day > other.release[t] {
			return false
		}
	}
	return true
}
