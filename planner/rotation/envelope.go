package rotation

import "math"

// envelope holds, for each day of planting, the best score that any option has up
// to each later morning, its own cost taken off, and whose it is.
type envelope struct {
	score [][]float64 // [start][k]: of the first k days; nil where nothing may be planted
	whose [][]int32   // -1 where none
}

// envelop works out the running scores of all options from all their days once.
func (p *problem) envelop(ends []int) envelope {
	v := envelope{make([][]float64, p.days), make([][]int32, p.days)}
	row := make([]float64, p.days+1)
	for start := range p.days {
		if !p.open[start] {
			continue
		}
		for o := range p.options {
			if limit := p.mayStand(o, start); limit > start {
				p.row(o, start, row[:limit-start+1])
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
func (v *envelope) lift(p *problem, o, start, limit int, row []float64, ends []int) {
	if v.score[start] == nil {
		v.score[start], v.whose[start] = make([]float64, p.days-start+1), make([]int32, p.days-start+1)
		for k := range v.score[start] {
			v.score[start][k], v.whose[start][k] = math.Inf(-1), -1
		}
	}
	best, whose := v.score[start], v.whose[start]
	cost := p.options[o].cost
	for _, end := range ends[p.firstEnd(ends, start):] {
		if end >= p.days || end > limit {
			break
		}
		if score := row[end-start] - cost; score > best[end-start] {
			best[end-start], whose[end-start] = score, int32(o)
		}
	}
	if limit == p.days {
		k := p.days - start
		if score := row[k] - cost*p.charged[start]; score > best[k] {
			best[k], whose[k] = score, int32(o)
		}
	}
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
