package rotation

import "math"

// pool holds the stays of options that may be part of a sequence worth a target or
// more: those for which the bounds before and after them do not rule it out. It
// serves as well for every problem with more rules than the one it was made for.
type pool struct {
	target float64
	stays  [][]pooled // by day of planting
}

// pooled is one stay: whose, up to when, and its own score less its cost.
type pooled struct {
	option, end int32
	score       float64
}

// poolAbove collects the stays for a target.
func (b *bounds) poolAbove(target float64) *pool {
	b.lookAhead()
	p := b.p
	found := &pool{target, make([][]pooled, p.days)}
	space := make([]float64, p.days+1)
	needed := make([]float64, p.days+1)
	for start := range p.days {
		if b.env[0].score[start] == nil || !b.needed(start, target, needed) {
			continue
		}
		for o := range p.options {
			limit := p.mayStand(o, start)
			if limit <= start {
				continue
			}
			row := p.row(o, start, space[:limit-start+1])
			cost := p.options[o].cost
			for _, end := range b.ends[p.firstEnd(b.ends, start):] {
				if end > limit {
					break
				}
				score := row[end-start] - cost*p.charge(start, end)
				if score >= needed[end-start] {
					found.stays[start] = append(found.stays[start], pooled{int32(o), int32(end), score})
				}
			}
		}
	}
	return found
}

// needed works out, by days stood, the own score that a stay from a day must have to
// be in the pool; false where even the best have not.
func (b *bounds) needed(start int, target float64, needed []float64) bool {
	p := b.p
	// What bounds and scores add up in another order may differ in the last digits.
	target -= rounding * math.Max(1, math.Abs(target))
	hope := false
	for _, end := range b.ends[p.firstEnd(b.ends, start):] {
		rest := math.Inf(-1)
		for made := range p.most[p.block[start]] {
			if made >= b.width-1 {
				break
			}
			if then, ok := p.made(start, end, made+1); ok {
				rest = max(rest, b.upTo[start*b.width+made]+b.after[end*b.width+then])
			}
		}
		need := target - rest + p.fixed*p.charge(start, end)
		least := need
		for i := range b.stays {
			s := &b.stays[i]
			if short := need - (s.score[end] - s.score[start]); s.share < 1 {
				least = min(least, short/(1-s.share))
			} else if short <= 0 {
				least = math.Inf(-1)
			}
		}
		if math.IsInf(rest, -1) {
			least = math.Inf(1)
		}
		needed[end-start] = least
		hope = hope || b.env[0].score[start][end-start] >= least
	}
	return hope
}

// rounding is the share by which sums of the same terms may differ.
const rounding = 1e-9
