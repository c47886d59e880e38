package work

import (
	"math"
	"slices"
)

const (
	lagrangeRounds = 60  // after which the bound hardly rises: judgement
	firstStep      = 1.5 // of the way to the target, of the subgradient method; below 2
)

// lagrange returns a lower bound on the best total within the limits. The limits are
// relaxed: minutes on a day cost a price, and what the limits allow is given back. The
// prices rise where a day is overfull (subgradient method; Held, Wolfe and Crowder
// 1974, Mathematical Programming 6:62-88, from memory).
func (p *visitProblem) lagrange(target float64) float64 {
	price := make([]float64, len(p.days))
	best, step := math.Inf(-1), firstStep
	stale := 0
	for range lagrangeRounds {
		bound := 0.0
		used := make([]float64, len(p.days))
		for d, limit := range p.limit {
			if price[d] > 0 {
				bound -= price[d] * limit
			}
		}
		for _, jobs := range p.byPlace {
			bound += p.ascend(jobs, price, used)
		}
		if bound > best+tiny {
			best, stale = bound, 0
		} else if stale++; stale%5 == 0 {
			step /= 2
		}
		norm := 0.0
		for d := range used {
			if over := p.over(d, used, price); over != 0 {
				norm += over * over
			}
		}
		if norm == 0 || target-bound <= tiny {
			break
		}
		move := step * (target - bound) / norm
		for d := range price {
			price[d] = max(0, price[d]+move*p.over(d, used, price))
		}
	}
	return best
}

// over is by how much a day is overfull, or underfull where that can lower its price.
func (p *visitProblem) over(d int, used, price []float64) float64 {
	over := used[d] - p.limit[d]
	if math.IsInf(over, -1) || over < 0 && price[d] == 0 {
		return 0
	}
	return over
}

// ascend returns a lower bound on the cost of the jobs of one place at the prices, by
// dual ascent: each job bids what it would pay for a day, and what it bids above its
// loss counts against the trip of that day, which bids may not overpay. It adds the
// minutes of a plan that the bids suggest.
func (p *visitProblem) ascend(jobs []int, price, used []float64) float64 {
	cost := make([][]float64, len(jobs))
	levels := make([][]float64, len(jobs))
	bids := make([]float64, len(jobs))
	for k, i := range jobs {
		cost[k] = make([]float64, len(p.days))
		for d := range p.days {
			cost[k][d] = p.loss[i][d] + price[d]*p.minutes[i]
			if !math.IsInf(cost[k][d], 1) {
				levels[k] = append(levels[k], cost[k][d])
			}
		}
		slices.Sort(levels[k])
		levels[k] = slices.Compact(levels[k])
		bids[k] = levels[k][0]
	}
	slack := make([]float64, len(p.days))
	for d := range slack {
		slack[d] = p.req.Trip + price[d]*p.req.TripMinutes
	}
	for rising := true; rising; {
		rising = false
		for k := range jobs {
			rising = raise(&bids[k], levels[k], cost[k], slack) || rising
		}
	}
	sum := 0.0
	opened := make([]bool, len(p.days))
	for k, i := range jobs {
		sum += bids[k]
		d := suggested(bids[k], cost[k], slack)
		used[d] += p.minutes[i]
		if !opened[d] {
			used[d] += p.req.TripMinutes
			opened[d] = true
		}
	}
	return sum
}

// raise lifts a bid to its next level, or as far as the trips leave slack.
func raise(bid *float64, levels, cost, slack []float64) bool {
	next := math.Inf(1)
	for _, level := range levels {
		if level > *bid+tiny {
			next = level
			break
		}
	}
	by := next - *bid
	for d, c := range cost {
		if c <= *bid+tiny {
			by = min(by, slack[d])
		}
	}
	if !(by > tiny) || math.IsInf(by, 1) {
		return false
	}
	for d, c := range cost {
		if c <= *bid+tiny {
			slack[d] -= by
		}
	}
	*bid += by
	return true
}

// suggested returns the day of least cost among those whose trip the bids pay for in
// full, or the day of least cost.
func suggested(bid float64, cost, slack []float64) int {
	best := -1
	for d, c := range cost {
		if c <= bid+tiny && slack[d] <= tiny && (best < 0 || c < cost[best]) {
			best = d
		}
	}
	if best < 0 {
		return argmin(cost)
	}
	return best
}
