package rotation

import "math"

// envelope holds, for each day of planting, the best scores that options have up to
// each later morning, their own cost taken off, and whose they are: one layer for the
// best, and further ones for the next best where some options may be refused.
type envelope []layer

type layer struct {
	score [][]float64 // [start][k]: of the first k days; nil where nothing may be planted
	whose [][]int32   // -1 where none
}

// envelop works out the running scores of all options from all their days once.
func (p *problem) envelop(ends []int, layers int) envelope {
	v := make(envelope, layers)
	for i := range v {
		v[i] = layer{make([][]float64, p.days), make([][]int32, p.days)}
	}
	space := make([]float64, p.days+1)
	for start := range p.days {
		if !p.open[start] {
			continue
		}
		for o := range p.options {
			if limit := p.mayStand(o, start); limit > start {
				row := p.row(o, start, space[:limit-start+1])
				v.lift(p, o, start, limit, row, ends)
			}
		}
	}
	return v
}

// mayStand returns the last morning up to which an option put out on a day may
// stand, or the day itself where it may not be put out.
func (p *problem) mayStand(o, start int) int {
	if !p.options[o].allowed.has(start) {
		return start
	}
	return p.limit(o, start)
}

// lift raises the envelope by an option's row.
func (v envelope) lift(p *problem, o, start, limit int, row []float64, ends []int) {
	v.open(start, p.days-start+1)
	lowest := v[len(v)-1].score[start]
	cost := p.options[o].cost
	for _, end := range ends[p.firstEnd(ends, start):] {
		if end >= p.days || end > limit {
			break
		}
		if score := row[end-start] - cost; score > lowest[end-start] {
			v.insert(start, end-start, score, o)
		}
	}
	if limit == p.days {
		k := p.days - start
		if score := row[k] - cost*p.charged[start]; score > lowest[k] {
			v.insert(start, k, score, o)
		}
	}
}

// open makes room for the plantings of a day.
func (v envelope) open(start, n int) {
	if v[0].score[start] != nil {
		return
	}
	for i := range v {
		score, whose := make([]float64, n), make([]int32, n)
		for k := range score {
			score[k], whose[k] = math.Inf(-1), -1
		}
		v[i].score[start], v[i].whose[start] = score, whose
	}
}

// insert puts a score that is above the lowest layer in its place.
func (v envelope) insert(start, k int, score float64, o int) {
	i := len(v) - 1
	for ; i > 0 && score > v[i-1].score[start][k]; i-- {
		v[i].score[start][k], v[i].whose[start][k] = v[i-1].score[start][k], v[i-1].whose[start][k]
	}
	v[i].score[start][k], v[i].whose[start][k] = score, int32(o)
}

// best returns the best score of an option that may stand from a day for k days, and
// whose it is; -1 where none may.
func (v envelope) best(start, k int, may restriction) (o int, score float64) {
	for i := range v {
		o := v[i].whose[start][k]
		if o < 0 {
			break
		}
		if may == nil || may(int(o), start, start+k) {
			return int(o), v[i].score[start][k]
		}
	}
	return -1, math.Inf(-1)
}

// ends lists the mornings on which a stay may end.
func (p *problem) ends() []int {
	var ends []int
	for day := range p.days {
		if p.open[day] {
			ends = append(ends, day)
		}
	}
	return append(ends, p.days)
}

// firstEnd returns the position of the first morning on which a planting of a day
// may end, or that of the end of the horizon.
func (p *problem) firstEnd(ends []int, start int) int {
	low, high := 0, len(ends)-1
	for low < high {
		if middle := (low + high) / 2; ends[middle] < start+max(p.minStand, 1) {
			low = middle + 1
		} else {
			high = middle
		}
	}
	return low
}
