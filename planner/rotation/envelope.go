package rotation

import "math"

// class is a set of options that leave the pot in the same state, so that of two
// options over the same days only the better one can be in a best sequence.
type class struct {
	groups []int // of the groups that are tracked
	kept   []int // of those, the ones that its staying parts are hosts of
	carry  int   // the option itself when parts of it may stay, else -1
	best   []envelope
}

// envelope holds, for plantings of one day, the best score of the class up to each
// later morning and whose it is. Empty where no option of the class may start.
type envelope struct {
	score []float64 // [k] is that of the first k days, costs of the option taken off
	whose []int32   // -1 where none
}

// classes sorts the options by the tracked groups that they host and by what may
// stay of them, and works out each class's envelopes.
func (p *problem) classes(tracked []int) []class {
	var found []class
	of := make([]int, len(p.options))
	for o := range p.options {
		of[o] = p.classOf(&found, tracked, o)
	}
	for k := range found {
		found[k].best = make([]envelope, p.days+1)
	}
	row := make([]float64, p.days+1)
	ends := p.ends()
	for start := range p.days {
		if !p.open[start] {
			continue
		}
		for o := range p.options {
			if !p.options[o].allowed[start] {
				continue
			}
			limit := p.limit(o, start)
			if limit <= start {
				continue
			}
			p.row(o, start, row[:limit-start+1])
			found[of[o]].best[start].lift(p, o, start, limit, row, ends)
		}
	}
	return found
}

func (p *problem) classOf(found *[]class, tracked []int, o int) int {
	groups := among(tracked, p.options[o].groups)
	carry := -1
	if p.options[o].carry > 0 {
		carry = o
	}
	for k, known := range *found {
		if known.carry == carry && equal(known.groups, groups) {
			return k
		}
	}
	*found = append(*found, class{groups: groups, kept: among(tracked, p.options[o].kept), carry: carry})
	return len(*found) - 1
}

// among returns the positions in tracked of the groups that are in the list.
func among(tracked, list []int) []int {
	var found []int
	for t, g := range tracked {
		if contains(list, g) {
			found = append(found, t)
		}
	}
	return found
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

// lift raises the envelope by an option's row.
func (v *envelope) lift(p *problem, o, start, limit int, row []float64, ends []int) {
	if v.score == nil {
		v.score = make([]float64, p.days-start+1)
		v.whose = make([]int32, p.days-start+1)
		for k := range v.score {
			v.score[k], v.whose[k] = math.Inf(-1), -1
		}
	}
	cost := p.options[o].cost
	for _, end := range ends {
		if end > limit {
			break
		}
		k := end - start
		if k <= 0 || k < p.minStand && end != p.days {
			continue
		}
		charge := cost
		if end == p.days {
			charge *= p.charged[start]
		}
		if score := row[k] - charge; score > v.score[k] {
			v.score[k], v.whose[k] = score, int32(o)
		}
	}
}

func contains(list []int, x int) bool {
	for _, y := range list {
		if x == y {
			return true
		}
	}
	return false
}

func equal(a, b []int) bool {
	if len(a) != len(b) {
		return false
	}
	for i := range a {
		if a[i] != b[i] {
			return false
		}
	}
	return true
}
