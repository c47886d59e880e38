package rotation

import "slices"

// class is a set of options that leave the pot in the same state, so that of two
// stays over the same days only the better one can be in a best sequence.
type class struct {
	groups []int // positions among the tracked groups
	kept   []int // of those, the ones that its staying parts are hosts of
	carry  int   // the option itself when parts of it may stay, else -1
	best   []pooled
}

// sort puts the pooled stays of a day into classes, the best of each end kept.
func (s *search) sort(day int) {
	s.classes = s.classes[:0]
	known := make(map[int32]int)
	for _, stay := range s.pool.stays[day] {
		if s.bounds.may != nil && !s.bounds.may(int(stay.option), day, int(stay.end)) {
			continue
		}
		k, ok := known[stay.option]
		if !ok {
			k = s.class(int(stay.option))
			known[stay.option] = k
		}
		s.classes[k].raise(stay)
	}
}

func (c *class) raise(stay pooled) {
	i, found := slices.BinarySearchFunc(c.best, stay.end, func(p pooled, end int32) int { return int(p.end - end) })
	switch {
	case !found:
		c.best = slices.Insert(c.best, i, stay)
	case stay.score > c.best[i].score:
		c.best[i] = stay
	}
}

func (s *search) class(o int) int {
	c := class{
		groups: among(s.tracked, s.p.options[o].groups),
		kept:   among(s.tracked, s.p.options[o].kept),
		carry:  -1,
	}
	if s.p.options[o].carry > 0 {
		c.carry = o
	}
	for k := range s.classes {
		if s.classes[k].carry == c.carry && slices.Equal(s.classes[k].groups, c.groups) {
			return k
		}
	}
	s.classes = append(s.classes, c)
	return len(s.classes) - 1
}
