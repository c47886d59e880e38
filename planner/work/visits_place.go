package work

import (
	"math"
	"slices"
)

// unlimited chooses the days of each place as if the crew had all the time. The bound
// is the best possible without the limit; exact tells that the choice reaches it.
func (p *visitProblem) unlimited() (assigned []int, bound float64, exact bool) {
	assigned = make([]int, len(p.loss))
	for i := range assigned {
		assigned[i] = -1
	}
	exact = true
	for _, jobs := range p.byPlace {
		if len(jobs) == 0 {
			continue
		}
		open, least := p.placeVisits(jobs)
		bound += least
		cost := 0.0
		used := make(map[int]bool)
		for _, i := range jobs {
			d := p.bestOf(i, open)
			if d < 0 {
				// A gap among the job's days fell on all visits: it gets one of its own.
				d = argmin(p.loss[i])
				open = append(open, d)
			}
			assigned[i] = d
			cost += p.loss[i][d]
			used[d] = true
		}
		cost += p.req.Trip * float64(len(used))
		exact = exact && cost <= least+tiny
	}
	return assigned, bound, exact
}

// bestOf returns the day among some on which a job loses least; -1 for none.
func (p *visitProblem) bestOf(i int, days []int) int {
	best := -1
	for _, d := range days {
		if !math.IsInf(p.loss[i][d], 1) && (best < 0 || p.loss[i][d] < p.loss[i][best]) {
			best = d
		}
	}
	return best
}

func argmin(values []float64) int {
	best := 0
	for k, x := range values {
		if x < values[best] {
			best = k
		}
	}
	return best
}

// growing returns the largest loss that nowhere exceeds the job's own and only grows
// away from its best day. Where the job's loss is of that kind the two are the same.
func growing(loss []float64) (least []float64, best int) {
	best = argmin(loss)
	least = slices.Clone(loss)
	for d := 1; d < best; d++ {
		least[d] = min(least[d], least[d-1])
	}
	for d := len(least) - 2; d > best; d-- {
		least[d] = min(least[d], least[d+1])
	}
	return least, best
}

// placeVisits returns the visit days of one place that are best for losses that only
// grow away from each job's best day, and their total with trips.
func (p *visitProblem) placeVisits(jobs []int) (open []int, total float64) {
	line := newPlaceLine(p, jobs)
	n := len(p.days)
	// After the last visit comes an end that is no visit, at n.
	best, before := make([]float64, n+1), make([]int, n+1)
	for b := range best {
		best[b], before[b] = math.Inf(1), -1
		for a := b - 1; a >= -1; a-- {
			cost, hopeless := line.between(a, b)
			if a >= 0 {
				cost += best[a]
			}
			if cost < best[b] {
				best[b], before[b] = cost, a
			}
			if hopeless {
				break
			}
		}
		if b < n {
			best[b] += p.req.Trip
		}
	}
	for b := before[n]; b >= 0; b = before[b] {
		open = append(open, b)
	}
	slices.Reverse(open)
	return open, best[n]
}

// placeLine is the jobs of one place by their best days.
type placeLine struct {
	losses [][]float64
	byBest [][]int // by day: positions in losses
}

func newPlaceLine(p *visitProblem, jobs []int) placeLine {
	line := placeLine{losses: make([][]float64, len(jobs)), byBest: make([][]int, len(p.days))}
	for k, i := range jobs {
		least, best := growing(p.loss[i])
		line.losses[k] = least
		line.byBest[best] = append(line.byBest[best], k)
	}
	return line
}

// between returns what the jobs lose whose best day lies after a visit a and not
// after the next visit b; hopeless when no earlier visit in place of a can serve them.
func (l placeLine) between(a, b int) (cost float64, hopeless bool) {
	for d := a + 1; d <= min(b, len(l.byBest)-1); d++ {
		for _, k := range l.byBest[d] {
			earlier, later := math.Inf(1), math.Inf(1)
			if a >= 0 {
				earlier = l.losses[k][a]
			}
			if b < len(l.byBest) {
				later = l.losses[k][b]
			}
			loss := min(earlier, later)
			cost += loss
			hopeless = hopeless || math.IsInf(loss, 1)
		}
	}
	return cost, hopeless
}
