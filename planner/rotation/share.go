package rotation

import (
	"slices"
	"sync/atomic"
)

// rowCache holds the running scores of plantings that several requests ask for, so
// that pots which share site, spot, horizon and weights share that work. It is safe
// for concurrent use.
type rowCache struct {
	plantings []*Planting
	byID      map[string][]int
	rows      [][]atomic.Pointer[[]float64] // [planting][day of planting]
}

// newRowCache makes room for the plantings of requests with a horizon of some days.
func newRowCache(requests []*Request, days int) *rowCache {
	c := &rowCache{byID: make(map[string][]int)}
	for _, r := range requests {
		for i := range r.Candidates {
			p := &r.Candidates[i]
			if c.number(p) < 0 {
				c.byID[p.ID] = append(c.byID[p.ID], len(c.plantings))
				c.plantings = append(c.plantings, p)
				c.rows = append(c.rows, make([]atomic.Pointer[[]float64], days))
			}
		}
	}
	return c
}

// number returns the position of a planting in the cache; -1 for none.
func (c *rowCache) number(p *Planting) int {
	for _, k := range c.byID[p.ID] {
		if c.plantings[k].same(*p) {
			return k
		}
	}
	return -1
}

// through returns a source of rows that keeps what it works out: the
// running score of one of the candidates put out on a day.
func (c *rowCache) through(candidates []Planting, s *scorer) func(o, start int, space []float64) []float64 {
	numbers := make([]int, len(candidates))
	for o := range candidates {
		numbers[o] = c.number(&candidates[o])
	}
	return func(o, start int, space []float64) []float64 {
		slot := &c.rows[numbers[o]][start]
		known := slot.Load()
		if known == nil {
			full := make([]float64, s.days-start+1)
			s.row(&candidates[o], start, false, full)
			known = &full
			slot.Store(known)
		}
		return (*known)[:len(space)]
	}
}

// sharesRows reports whether the running scores of a planting are the same in two
// requests, and worth sharing: turns ask for short rows, each once.
func (r *Request) sharesRows(other *Request) bool {
	return len(r.Turns)+len(other.Turns) == 0 && r.Today == other.Today && r.Until == other.Until && r.Weights.same(&other.Weights) &&
		slices.EqualFunc(r.Members, other.Members, func(a, b Member) bool { return a.Outlook == b.Outlook })
}
