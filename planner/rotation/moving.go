package rotation

import "fourturn/planner/civil"

// CostOfMoving returns what moving a change-out of the best sequence to another
// day costs, in display days, all other days and plantings as they are. The cost
// is negative where a rule had kept the best day out. It is false where the move
// breaks a rule: see [Result.Drag] for moves that the other change-outs give way to.
//
// It is fast enough for a handle being dragged: it looks at the two stays that
// meet on the day, and no further.
func (r *Result) CostOfMoving(changeOut int, day civil.Date) (float64, bool) {
	i := r.boundary(changeOut)
	m := r.newMover(r.path, i)
	to := int(day - r.req.Today)
	if !m.within(to) || !r.allowed(r.path[i].option, to) {
		return 0, false
	}
	return m.cost(to)
}

// boundary returns the position in the path of the stay that a change-out begins.
func (r *Result) boundary(changeOut int) int {
	if changeOut < 0 || changeOut >= len(r.path)-1 {
		panic("rotation: no such change-out")
	}
	return changeOut + 1
}

// mover moves the morning on which one stay of a path gives way to the next.
type mover struct {
	r       *Result
	path    []segment
	i       int // of the stay that begins on the moved morning
	now     float64
	scratch []segment
}

func (r *Result) newMover(path []segment, i int) *mover {
	m := &mover{r: r, path: path, i: i, scratch: append([]segment(nil), path...)}
	m.now = m.score(path)
	return m
}

// within reports whether a day lies between the change-outs before and after.
func (m *mover) within(day int) bool {
	return day >= m.path[m.i-1].start && day < m.path[m.i].end && day >= 0
}

// score is that of the two stays that meet, and of later ones on which parts of
// the second stay on.
func (m *mover) score(path []segment) float64 {
	p := m.r.problem
	sum := p.segmentScore(path[m.i-1]) + p.segmentScore(path[m.i])
	for k := m.i + 1; k < len(path); k++ {
		if m.staysOn(k) {
			sum += p.segmentScore(path[k])
		}
	}
	return sum
}

// staysOn reports whether parts of the stay that begins on the moved morning stay
// on in a later one.
func (m *mover) staysOn(k int) bool {
	c := m.path[k].carry
	return c.kept && c.option == m.path[m.i].option && c.start == m.path[m.i].start
}

// cost returns what moving to a day within costs, and false where it breaks a rule
// other than that of the coming planting's own season.
func (m *mover) cost(day int) (float64, bool) {
	p := m.r.problem
	before, after := &m.scratch[m.i-1], &m.scratch[m.i]
	before.end, after.start = day, day
	for k := m.i + 1; k < len(m.path); k++ {
		if m.staysOn(k) {
			m.scratch[k].carry.start = day
		}
	}
	if !p.keepsRules(m.scratch, m.i) {
		return 0, false
	}
	return m.now - m.score(m.scratch), true
}

// keepsRules checks what a moved morning between two stays can break.
func (p *problem) keepsRules(path []segment, i int) bool {
	before, after := path[i-1], path[i]
	switch {
	case !p.open[after.start]:
		return false
	case counted(before.option) && before.end-before.start < p.minStand:
		return false
	case counted(after.option) && after.end < p.days && after.end-after.start < p.minStand:
		return false
	case i > 1 && before.option == bareOption && before.end == before.start:
		return false
	case p.limit(before.option, before.start) < before.end || p.limit(after.option, after.start) < after.end:
		return false
	}
	made := p.madeIn(path)
	for year, count := range made {
		if count > p.most[year] {
			return false
		}
	}
	return len(p.violated(path)) == 0
}

// madeIn counts the change-outs of each planning year.
func (p *problem) madeIn(path []segment) []int {
	made := make([]int, len(p.most))
	made[p.block[0]] = p.done
	for _, seg := range path {
		if counted(seg.option) {
			made[p.block[seg.start]]++
		}
	}
	return made
}
