package mix

import (
	"math"
	"math/bits"
	"sort"
)

const (
	// fewBranches is how long the search by branches is tried before the totals are
	// compared: it ends at once for most markets, but not for sizes of nearly the same
	// price per litre.
	fewBranches = 20_000
	// maxTotals is up to how many totals are compared one by one; beyond, branches
	// are searched. It keeps the table to some 25 MB.
	maxTotals = 1 << 20
	// maxBranches is where a search is given up. It takes a few seconds and was never
	// reached by sizes and prices as shops have them.
	maxBranches = 50_000_000
)

// cover returns the best plan of items with need or more in volume: the cheapest, of
// those the one with the least volume, of those the one with the fewest bags.
func cover(need int64, items []item) plan {
	measure := items[0].volume
	most := int64(0)
	for _, it := range items {
		measure = gcd(measure, it.volume)
		most = max(most, it.volume)
	}
	need = ceilDiv(need, measure) * measure // no total lies between
	quick := coverByBranches(need, items, fewBranches)
	switch {
	case quick.proof.Proven:
		return quick
	case (need+most)/measure <= maxTotals:
		return coverByTotals(need/measure, measure, items)
	}
	return coverByBranches(need, items, maxBranches)
}

func gcd(a, b int64) int64 {
	for b != 0 {
		a, b = b, a%b
	}
	return a
}

// coverByTotals finds the cheapest set for every total up to the need and one item
// beyond, by dynamic programming. A best plan lies there: from a larger total an item
// could be left out, which costs no more and leaves less over.
func coverByTotals(need, measure int64, items []item) plan {
	most := int64(0)
	sizes := make([]int64, len(items))
	for i, it := range items {
		sizes[i] = it.volume / measure
		most = max(most, sizes[i])
	}
	type entry struct {
		cost int64
		bags int32
		last int32 // the item added last, or −1 where no set has this total
	}
	table := make([]entry, need+most)
	for total := range table {
		best := entry{cost: math.MaxInt64, last: -1}
		if total == 0 {
			best.cost = 0
		}
		for i, size := range sizes {
			before := int64(total) - size
			if before < 0 || before > 0 && table[before].last < 0 {
				continue
			}
			cost, bags := table[before].cost+items[i].price, table[before].bags
			if items[i].bag {
				bags++
			}
			if cost < best.cost || cost == best.cost && bags < best.bags {
				best = entry{cost, bags, int32(i)}
			}
		}
		table[total] = best
	}
	end := need
	for total := need; total < int64(len(table)); total++ {
		if table[total].last >= 0 && (table[end].last < 0 || table[total].cost < table[end].cost) {
			end = total // a larger total wins only by being cheaper
		}
	}
	p := plan{
		counts: make([]int64, len(items)), cost: table[end].cost, bags: int64(table[end].bags), volume: end * measure,
		proof: Proof{Totals: len(table), Measure: toVolume(measure), Proven: true},
	}
	for total := end; total > 0; total -= sizes[table[total].last] {
		p.counts[table[total].last]++
	}
	return p
}

// search looks for a best plan branch by branch.
type search struct {
	need     int64
	items    []item // by price per volume, best first; larger first among equals
	index    []int  // of each in the caller's list
	largest  []int64
	onlyBags []bool // whether items from here on are all bags
	best     plan
	counts   []int64
	branches int
	limit    int // of branches
}

// coverByBranches tries every number of each item, best price per volume first, and
// leaves a branch as soon as the rest of the need at the best price still open costs
// more than the best plan known.
func coverByBranches(need int64, items []item, limit int) plan {
	s := newSearch(items)
	s.need, s.limit = need, limit
	s.branch(0, need, plan{})
	counts := make([]int64, len(items))
	for k, n := range s.best.counts {
		counts[s.index[k]] = n
	}
	s.best.counts = counts
	s.best.proof = Proof{Branches: s.branches, Proven: s.branches < limit}
	return s.best
}

func newSearch(items []item) *search {
	s := &search{counts: make([]int64, len(items))}
	for i := range items {
		if !dominated(i, items) {
			s.index = append(s.index, i)
		}
	}
	sort.SliceStable(s.index, func(a, b int) bool { return betterPrice(items[s.index[a]], items[s.index[b]]) })
	for _, i := range s.index {
		s.items = append(s.items, items[i])
	}
	n := len(s.items)
	s.counts = s.counts[:n]
	s.largest, s.onlyBags = make([]int64, n+1), make([]bool, n+1)
	s.onlyBags[n] = true
	for k := n - 1; k >= 0; k-- {
		s.largest[k] = max(s.largest[k+1], s.items[k].volume)
		s.onlyBags[k] = s.onlyBags[k+1] && s.items[k].bag
	}
	return s
}

// dominated reports whether another item holds as much for less.
func dominated(i int, items []item) bool {
	for j, other := range items {
		if j != i && other.volume >= items[i].volume && other.price < items[i].price {
			return true
		}
	}
	return false
}

// betterPrice reports whether a costs less per volume than b, or as much and is
// larger.
func betterPrice(a, b item) bool {
	xHigh, xLow := bits.Mul64(uint64(a.price), uint64(b.volume))
	yHigh, yLow := bits.Mul64(uint64(b.price), uint64(a.volume))
	switch {
	case xHigh != yHigh:
		return xHigh < yHigh
	case xLow != yLow:
		return xLow < yLow
	}
	return a.volume > b.volume
}

// branch completes a plan with items from k on that cover what is left.
func (s *search) branch(k int, left int64, sofar plan) {
	if s.branches++; s.branches >= s.limit {
		return
	}
	it := s.items[k]
	last := k == len(s.items)-1
	for n := ceilDiv(left, it.volume); n >= 0; n-- {
		p := sofar
		p.cost += n * it.price
		p.volume += n * it.volume
		if it.bag {
			p.bags += n
		}
		s.counts[k] = n
		rest := left - n*it.volume
		if rest <= 0 {
			p.counts = s.counts[:k+1]
			if p.before(&s.best) {
				p.counts = append([]int64(nil), p.counts...)
				s.best = p
			}
			continue
		}
		if last {
			break // fewer of the last item do not cover the need
		}
		if s.dearer(k+1, rest, &p) {
			break // fewer of this item leave still more to dearer ones
		}
		if s.noBetter(k+1, rest, &p) {
			continue
		}
		s.branch(k+1, rest, p)
	}
	s.counts[k] = 0
}

// dearer reports whether every plan that completes p with items from k on costs more
// than the best. The bound grows as p holds less of the items before.
func (s *search) dearer(k int, left int64, p *plan) bool {
	return s.best.counts != nil && p.cost+atPrice(left, s.items[k]) > s.best.cost
}

// noBetter reports whether no plan that completes p can win a tie with the best.
func (s *search) noBetter(k int, left int64, p *plan) bool {
	if s.best.counts == nil || p.cost+atPrice(left, s.items[k]) < s.best.cost || s.best.volume > s.need {
		return false
	}
	bags := p.bags
	if s.onlyBags[k] {
		bags += ceilDiv(left, s.largest[k])
	}
	return bags >= s.best.bags
}
