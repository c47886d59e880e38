package work

import (
	"cmp"
	"math"
	"slices"
)

// Of so many jobs at most all assignments are looked at, and so many steps are taken
// at most, a few tenths of a second. Above either the bound has to do.
const (
	searchJobs  = 16
	searchSteps = 2_000_000
)

// branch is a search of all assignments of the jobs, the hardest to place first.
type branch struct {
	p     *visitProblem
	l     *load
	order []int
	rest  []float64 // [k]: least loss of the jobs from the k-th on
	best  []int
	least float64 // total of the best; jobs without a day make it infinite
	steps int
}

// search looks for the best assignment within the limits, and is true when it has
// seen all. It begins with the one given and does not change it.
func (p *visitProblem) search(known []int) ([]int, bool) {
	b := &branch{p: p, order: slices.Clone(p.jobs), best: slices.Clone(known), least: math.Inf(1)}
	if p.complete(known) {
		b.least = p.total(known)
	}
	start := make([]int, len(known))
	for i := range start {
		start[i] = -1
	}
	b.l = p.load(start)
	days := func(i int) int {
		n := 0
		for _, loss := range p.loss[i] {
			if !math.IsInf(loss, 1) {
				n++
			}
		}
		return n
	}
	slices.SortStableFunc(b.order, func(i, j int) int {
		return cmp.Or(cmp.Compare(p.place[i], p.place[j]), cmp.Compare(days(i), days(j)))
	})
	b.rest = make([]float64, len(b.order)+1)
	for k := len(b.order) - 1; k >= 0; k-- {
		b.rest[k] = b.rest[k+1] + slices.Min(p.loss[b.order[k]])
	}
	b.place(0, 0)
	return b.best, b.steps < searchSteps
}

// place tries all days of the k-th job.
func (b *branch) place(k int, cost float64) {
	if b.steps++; b.steps >= searchSteps {
		return
	}
	if cost+b.rest[k] >= b.least-tiny {
		return
	}
	if k == len(b.order) {
		b.least = cost
		b.best = slices.Clone(b.l.assigned)
		return
	}
	i := b.order[k]
	for d, loss := range b.p.loss[i] {
		if math.IsInf(loss, 1) {
			continue
		}
		minutes, more := b.l.asks(i, d)
		if b.l.used[d]+minutes > b.p.limit[d]+tiny {
			continue
		}
		b.l.put(i, d)
		b.place(k+1, cost+more)
		b.l.put(i, -1)
	}
}
