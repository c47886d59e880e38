package rotation

import "math"

// bounds hold the best that is possible from and up to every state of the pot when
// the rotation of the mix is left out, and parts that stay on are taken at their
// best of any day. No sequence that keeps all rules is worth more.
type bounds struct {
	p     *problem
	ends  []int
	env   envelope
	width int       // change-outs made in a year: 0 … width-1
	after []float64 // [day*width + made]: best from the morning of the day to the end
	upTo  []float64 // [day*width + made]: best up to the morning of the day
	stays []stayBest
	joint *joint // nil: none is fixed
	may   restriction
}

// joint fixes one change-out: on the morning of the day, one option gives way to
// another.
type joint struct {
	day           int
	before, after int
	scores        []float64 // by day of planting: own score of before up to the joint, less its cost
	row           []float64 // by days stood: own score of after from the joint, not less its cost
}

// allows reports whether an option may stand from one morning to another.
func (j *joint) allows(o, start, end int) bool {
	switch {
	case j == nil || end < j.day || start > j.day:
		return true
	case end == j.day:
		return o == j.before
	case start == j.day:
		return o == j.after
	}
	return false
}

// stayBest is the best that staying parts can give on each day.
type stayBest struct {
	share float64
	score []float64 // running, over the days of the horizon
}

// newBounds works out the bounds of a problem. The layers are how many options a
// restriction may refuse and one.
func newBounds(p *problem, layers int) *bounds {
	b := &bounds{p: p, ends: p.ends(), width: 1}
	for _, most := range p.most {
		b.width = max(b.width, most+1)
	}
	b.width = max(b.width, p.done+1)
	b.env = p.envelop(b.ends, layers)
	b.stays = p.bestStays()
	b.lookBack()
	return b
}

// bestStays works out, for what may stay on, the best score of each day over all
// days of planting.
func (p *problem) bestStays() []stayBest {
	var list []stayBest
	if p.standingCarry > 0 {
		list = append(list, stayBest{p.standingCarry, p.standingStay})
	}
	space := make([]float64, p.days+1)
	for o := range p.options {
		if p.options[o].carry == 0 {
			continue
		}
		best := make([]float64, p.days)
		for i := range best {
			best[i] = math.Inf(-1)
		}
		for start := range p.days {
			if !p.open[start] || !p.options[o].allowed.has(start) {
				continue
			}
			row := p.stayRow(o, start, space[:p.days-start+1])
			for k := 1; k <= p.days-start; k++ {
				best[start+k-1] = max(best[start+k-1], row[k]-row[k-1])
			}
		}
		running := make([]float64, p.days+1)
		for i := range best {
			// Before the first day of planting nothing can stay on; any number bounds it.
			running[i+1] = running[i] + max(best[i], -1e6)
		}
		list = append(list, stayBest{p.options[o].carry, running})
	}
	return list
}

// withStays returns the best that an own score over some days can be made by what
// stays on beside it.
func (b *bounds) withStays(own float64, start, end int) float64 {
	best := own
	for i := range b.stays {
		s := &b.stays[i]
		best = max(best, (1-s.share)*own+s.score[end]-s.score[start])
	}
	return best
}

// made returns the change-outs made in the planning year of the morning end, where
// so many were made in that of start; false where a year between has too few.
func (p *problem) made(start, end, made int) (int, bool) {
	first, last := p.block[start], p.block[min(end, p.days-1)]
	if first == last && end < p.days {
		return made, true
	}
	if end == p.days {
		last++ // the year of the last day ends as well
	}
	for year := first; year < last; year++ {
		if made < p.least[year] {
			return 0, false
		}
		made = 0
	}
	return made, true
}

// lookBack fills after, from the end of the horizon.
func (b *bounds) lookBack() {
	p := b.p
	b.after = make([]float64, (p.days+1)*b.width)
	for i := range p.days * b.width {
		b.after[i] = math.Inf(-1)
	}
	for start := p.days - 1; start >= 0; start-- {
		if !p.open[start] {
			continue
		}
		best := b.after[start*b.width : (start+1)*b.width]
		b.eachNext(start, func(o, end int, own float64) {
			b.eachMade(o, start, end, func(made, then int) {
				best[made] = max(best[made], own+b.after[end*b.width+then])
			})
		})
	}
}

// eachNext visits the stays that may follow the morning of a day, the best of each
// end: whose, up to when, and the bound on the stay's own worth.
func (b *bounds) eachNext(start int, visit func(o, end int, own float64)) {
	p := b.p
	limit := p.limit(bareOption, start)
	for _, end := range b.ends {
		if end <= start || !b.joint.allows(bareOption, start, end) {
			continue
		}
		if end > limit {
			break
		}
		visit(bareOption, end, b.withStays(p.bare[end]-p.bare[start], start, end))
	}
	b.eachStay(start, func(o, end int, score float64) {
		visit(o, end, b.withStays(score, start, end)-p.fixed*p.charge(start, end))
	})
}

// eachMade visits the change-outs that may have been made in the year of the morning
// start, and those then made in that of the morning end, when an option stands
// between the two.
func (b *bounds) eachMade(o, start, end int, visit func(made, then int)) {
	p := b.p
	most, more := b.width-1, 0
	if counted(o) {
		most, more = p.most[p.block[start]]-1, 1
	}
	for made := 0; made <= most; made++ {
		if then, ok := p.made(start, end, made+more); ok {
			visit(made, then)
		}
	}
}

// eachStay visits the best stays of plantings from a day: whose, up to when, and the
// own score less the cost.
func (b *bounds) eachStay(start int, visit func(o, end int, score float64)) {
	p, j := b.p, b.joint
	ends := b.ends[p.firstEnd(b.ends, start):]
	if j != nil && start == j.day {
		if !counted(j.after) {
			return
		}
		limit := p.mayStand(j.after, start)
		for _, end := range ends {
			if end <= limit {
				visit(j.after, end, j.row[end-start]-p.charge(start, end)*p.options[j.after].cost)
			}
		}
		return
	}
	if b.env[0].score[start] == nil {
		return
	}
	for _, end := range ends {
		if j != nil && start < j.day && end >= j.day {
			if end == j.day && counted(j.before) && !math.IsInf(j.scores[start], -1) {
				visit(j.before, end, j.scores[start])
			}
			return
		}
		if o, score := b.env.best(start, end-start, b.may); o >= 0 {
			visit(o, end, score)
		}
	}
}

// under returns the bounds under a restriction, for the same envelope. The problem's
// options must have as many layers as the restriction may refuse, and one.
func (b *bounds) under(may restriction) *bounds {
	u := *b
	u.may, u.after, u.upTo = may, nil, nil
	u.lookBack()
	return &u
}

// begin visits the mornings on which what stands today may go, with the bound on
// all of the horizon.
func (b *bounds) begin(visit func(end, then int, value float64)) {
	p := b.p
	limit := p.limit(standingOption, 0)
	for _, end := range b.ends {
		if end > limit {
			break
		}
		if !b.joint.allows(standingOption, 0, end) {
			continue
		}
		if then, ok := p.made(0, end, p.done); ok {
			visit(end, then, p.standing[end]+b.after[end*b.width+then])
		}
	}
}

// best is the bound on the whole horizon.
func (b *bounds) best() float64 {
	best := math.Inf(-1)
	b.begin(func(_, _ int, value float64) { best = max(best, value) })
	return best
}

// path returns the stays of a sequence that reaches the bound, were nothing to stay
// on and no rule of the mix in the way.
func (b *bounds) path() []segment {
	seg, made, best := segment{option: standingOption}, 0, math.Inf(-1)
	b.begin(func(end, then int, value float64) {
		if value > best {
			seg.end, made, best = end, then, value
		}
	})
	path := []segment{seg}
	for seg.end < b.p.days {
		start, now := seg.end, made
		best = math.Inf(-1)
		b.eachNext(start, func(o, end int, own float64) {
			b.eachMade(o, start, end, func(before, then int) {
				if value := own + b.after[end*b.width+then]; before == now && value > best {
					seg, made, best = segment{option: o, start: start, end: end}, then, value
				}
			})
		})
		path = append(path, seg)
	}
	return path
}

// lookAhead fills upTo, from today on.
func (b *bounds) lookAhead() {
	p := b.p
	if b.upTo != nil {
		return
	}
	b.upTo = make([]float64, (p.days+1)*b.width)
	for i := range b.upTo {
		b.upTo[i] = math.Inf(-1)
	}
	raise := func(day, made int, value float64) {
		b.upTo[day*b.width+made] = max(b.upTo[day*b.width+made], value)
	}
	b.begin(func(end, then int, _ float64) { raise(end, then, p.standing[end]) })
	for start := range p.days {
		if !p.open[start] {
			continue
		}
		before := b.upTo[start*b.width : (start+1)*b.width]
		b.eachNext(start, func(o, end int, own float64) {
			b.eachMade(o, start, end, func(made, then int) { raise(end, then, before[made]+own) })
		})
	}
}
