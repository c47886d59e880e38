package work

import (
	"math"
	"slices"
)

// load is an assignment with what it asks of each day.
type load struct {
	p        *visitProblem
	assigned []int
	used     []float64      // by day: minutes
	visits   map[[2]int]int // by day and place: jobs
}

func (p *visitProblem) load(assigned []int) *load {
	l := &load{p: p, assigned: assigned, used: make([]float64, len(p.days)), visits: make(map[[2]int]int)}
	for _, i := range p.jobs {
		if d := assigned[i]; d >= 0 {
			assigned[i] = -1
			l.put(i, d)
		}
	}
	return l
}

// put assigns a job to a day, or to none.
func (l *load) put(i, day int) {
	p := l.p
	if d := l.assigned[i]; d >= 0 {
		key := [2]int{d, p.place[i]}
		l.used[d] -= p.minutes[i]
		if l.visits[key]--; l.visits[key] == 0 {
			l.used[d] -= p.req.TripMinutes
			delete(l.visits, key)
		}
	}
	l.assigned[i] = day
	if day >= 0 {
		key := [2]int{day, p.place[i]}
		l.used[day] += p.minutes[i]
		if l.visits[key]++; l.visits[key] == 1 {
			l.used[day] += p.req.TripMinutes
		}
	}
}

// asks is what a job adds to a day's minutes, and what it costs there.
func (l *load) asks(i, day int) (minutes, cost float64) {
	p := l.p
	minutes, cost = p.minutes[i], p.loss[i][day]
	if l.visits[[2]int{day, p.place[i]}] == 0 {
		minutes, cost = minutes+p.req.TripMinutes, cost+p.req.Trip
	}
	return minutes, cost
}

// saves is what taking a job from its day saves.
func (l *load) saves(i int) float64 {
	d := l.assigned[i]
	if d < 0 {
		return 0
	}
	saved := l.p.loss[i][d]
	if l.visits[[2]int{d, l.p.place[i]}] == 1 {
		saved += l.p.req.Trip
	}
	return saved
}

// room returns the cheapest other day with room for a job; -1 for none.
func (l *load) room(i int) (day int, cost float64) {
	day, cost = -1, math.Inf(1)
	for d := range l.p.days {
		if d == l.assigned[i] || math.IsInf(l.p.loss[i][d], 1) {
			continue
		}
		minutes, c := l.asks(i, d)
		if l.used[d]+minutes <= l.p.limit[d]+tiny && c < cost {
			day, cost = d, c
		}
	}
	return day, cost
}

// repair moves jobs off overfull days, those first whose move costs least a minute;
// a job for which there is no room anywhere is left without a day.
func (p *visitProblem) repair(assigned []int) {
	l := p.load(assigned)
	for d := range p.days {
		for l.used[d] > p.limit[d]+tiny {
			move, to, least := -1, -1, math.Inf(1)
			for _, i := range p.jobs {
				if assigned[i] != d {
					continue
				}
				day, cost := l.room(i)
				rate := (cost - l.saves(i)) / max(p.minutes[i], 1)
				if move < 0 || rate < least {
					move, to, least = i, day, rate
				}
			}
			l.put(move, to)
		}
	}
}

// improve moves jobs one by one, and visits as a whole, for as long as that helps.
func (p *visitProblem) improve(assigned []int) {
	l := p.load(assigned)
	for better := true; better; {
		better = false
		for _, i := range p.jobs {
			day, cost := l.room(i)
			if day >= 0 && (assigned[i] < 0 || cost < l.saves(i)-tiny) {
				l.put(i, day)
				better = true
			}
		}
		better = l.moveVisits() || better
	}
}

// moveVisits shifts all jobs of a visit to another day where that is cheaper.
func (l *load) moveVisits() bool {
	p := l.p
	moved := false
	for place, jobs := range p.byPlace {
		for from := range p.days {
			there := slices.DeleteFunc(slices.Clone(jobs), func(i int) bool { return l.assigned[i] != from })
			if len(there) > 0 && l.moveVisit(place, there, from) {
				moved = true
			}
		}
	}
	return moved
}

func (l *load) moveVisit(place int, jobs []int, from int) bool {
	p := l.p
	minutes, now := 0.0, p.req.Trip
	for _, i := range jobs {
		minutes += p.minutes[i]
		now += p.loss[i][from]
	}
	for to := range p.days {
		if to == from {
			continue
		}
		cost, needed := 0.0, minutes
		if l.visits[[2]int{to, place}] == 0 {
			cost, needed = p.req.Trip, needed+p.req.TripMinutes
		}
		for _, i := range jobs {
			cost += p.loss[i][to]
		}
		if cost < now-tiny && l.used[to]+needed <= p.limit[to]+tiny {
			for _, i := range jobs {
				l.put(i, to)
			}
			return true
		}
	}
	return false
}

// fits reports whether an assignment keeps every limit and has a day for every job.
func (p *visitProblem) fits(assigned []int) bool {
	if !p.complete(assigned) {
		return false
	}
	l := p.load(slices.Clone(assigned))
	for d, used := range l.used {
		if used > p.limit[d]+tiny {
			return false
		}
	}
	return true
}

// complete reports whether every job that has days at all is assigned to one.
func (p *visitProblem) complete(assigned []int) bool {
	for _, i := range p.jobs {
		if assigned[i] < 0 {
			return false
		}
	}
	return true
}

// total is the loss of all assigned jobs and their trips.
func (p *visitProblem) total(assigned []int) float64 {
	l := p.load(slices.Clone(assigned))
	sum := p.req.Trip * float64(len(l.visits))
	for _, i := range p.jobs {
		if d := assigned[i]; d >= 0 {
			sum += p.loss[i][d]
		}
	}
	return sum
}
