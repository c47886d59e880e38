package rotation

import (
	"math"
	"slices"
	"testing"

	"pgregory.net/rapid"
)

// walker tries every sequence of a small problem, day by day, and keeps the rules
// by looking back over the whole history of the pot instead of by any state.
type walker struct {
	p    *problem
	best float64
	meet *[3]int // day, and the options that must meet on it; nil for none
}

// walk extends a history of stays that ends on the morning of the day.
func (w *walker) walk(path []segment, day int) {
	if day == w.p.days {
		for year, least := range w.p.least {
			if w.made(path, year) < least {
				return
			}
		}
		if w.meets(path) {
			w.best = math.Max(w.best, w.p.scoreOf(path))
		}
		return
	}
	if !w.p.open[day] {
		return
	}
	carries := []carry{{}}
	if n := len(path); n > 0 {
		last := path[n-1]
		if last.carry.kept {
			carries = append(carries, last.carry)
		} else if last.option == standingOption && w.p.standingCarry > 0 || last.option >= 0 && w.p.options[last.option].carry > 0 {
			carries = append(carries, carry{true, last.option, last.start})
		}
	}
	for _, c := range carries {
		for o := bareOption; o < len(w.p.options); o++ {
			for end := day + 1; end <= w.p.days; end++ {
				if end < w.p.days && (!w.p.open[end] || o >= 0 && end-day < w.p.minStand) {
					continue
				}
				if o == bareOption {
					w.step(path, segment{o, day, end, false, c})
					continue
				}
				if !w.p.options[o].allowed.has(day) {
					continue
				}
				w.step(path, segment{o, day, end, false, c})
				if !c.kept {
					w.step(path, segment{o, day, end, true, c})
				}
			}
		}
	}
}

func (w *walker) step(path []segment, seg segment) {
	path = append(append([]segment(nil), path...), seg)
	if w.may(path) {
		w.walk(path, seg.end)
	}
}

// may checks the newest stay of a history against every rule.
func (w *walker) may(path []segment) bool {
	p, seg := w.p, path[len(path)-1]
	for _, pin := range p.pins {
		if seg.start <= pin.to && seg.end > pin.from && !pin.holds(seg.option, seg.start) {
			return false
		}
	}
	if seg.option < 0 {
		return true
	}
	if w.made(path, p.block[seg.start]) > p.most[p.block[seg.start]] {
		return false
	}
	for _, g := range p.options[seg.option].groups {
		if w.held(path, g) {
			return false
		}
	}
	return true
}

func (w *walker) made(path []segment, year int) int {
	made := 0
	if year == w.p.block[0] {
		made = w.p.done
	}
	for _, s := range path {
		if s.option >= 0 && w.p.block[s.start] == year {
			made++
		}
	}
	return made
}

// held looks back for the last day on which a host of the group was in the mix.
func (w *walker) held(path []segment, group int) bool {
	p, seg := w.p, path[len(path)-1]
	if seg.replaced {
		return false
	}
	if slices.Contains(p.keptGroups(seg.carry), group) {
		return true
	}
	since := 0
	for i, s := range path[:len(path)-1] {
		if s.replaced {
			since = i
		}
	}
	fresh := false
	for _, s := range path[:len(path)-1] {
		fresh = fresh || s.replaced
	}
	if !fresh && p.release[group] > seg.start {
		return true
	}
	for _, s := range path[since : len(path)-1] {
		if slices.Contains(p.groupsOf(s.option), group) && s.end+p.staysAfter(s.option, group) > seg.start ||
			slices.Contains(p.keptGroups(s.carry), group) && s.end+p.staysAfter(s.carry.option, group) > seg.start {
			return true
		}
	}
	return false
}

func (w *walker) meets(path []segment) bool {
	if w.meet == nil {
		return true
	}
	path = joined(path)
	for i := 1; i < len(path); i++ {
		if [3]int{path[i].start, path[i-1].option, path[i].option} == *w.meet {
			return true
		}
	}
	return false
}

func exhaustive(p *problem) float64 {
	return (&walker{p: p, best: math.Inf(-1)}).search()
}

func (w *walker) search() float64 {
	p := w.p
	for end := 0; end <= p.days; end++ {
		if end < p.days && !p.open[end] {
			continue
		}
		if end == 0 {
			w.walk([]segment{{option: standingOption}}, 0)
			continue
		}
		w.step(nil, segment{option: standingOption, end: end})
	}
	return w.best
}

// smallProblem draws a problem that can be searched exhaustively.
func smallProblem(t *rapid.T, withCarry bool) *problem {
	days := rapid.IntRange(3, 8).Draw(t, "days")
	n := rapid.IntRange(1, 3).Draw(t, "options")
	groups := 2
	score := rapid.Float64Range(-1, 1)
	prefix := func(days int, name string) []float64 {
		row := make([]float64, days+1)
		for i, x := range rapid.SliceOfN(score, days, days).Draw(t, name) {
			row[i+1] = row[i] + x
		}
		return row
	}
	someGroups := func(name string) []int {
		var list []int
		for g := range groups {
			if rapid.Bool().Draw(t, name) {
				list = append(list, g)
			}
		}
		return list
	}
	p := &problem{
		days:          days,
		open:          rapid.SliceOfN(rapid.Custom(func(t *rapid.T) bool { return rapid.IntRange(0, 3).Draw(t, "open") > 0 }), days, days).Draw(t, "open"),
		minStand:      rapid.IntRange(1, 3).Draw(t, "min stand"),
		standing:      prefix(days, "standing"),
		bare:          prefix(days, "bare"),
		block:         make([]int, days),
		most:          []int{rapid.IntRange(0, 3).Draw(t, "most"), rapid.IntRange(0, 2).Draw(t, "most")},
		least:         []int{rapid.IntRange(0, 2).Draw(t, "least"), rapid.IntRange(0, 1).Draw(t, "least")},
		done:          rapid.IntRange(0, 1).Draw(t, "done"),
		fixed:         rapid.Float64Range(0, 0.5).Draw(t, "fixed"),
		replace:       rapid.Float64Range(0, 0.5).Draw(t, "replace"),
		charged:       rapid.SliceOfN(rapid.Float64Range(0, 1), days, days).Draw(t, "charged"),
		stays:         rapid.SliceOfN(rapid.IntRange(0, 9), groups, groups).Draw(t, "stays"),
		standingStays: rapid.SliceOfN(rapid.IntRange(0, 9), groups, groups).Draw(t, "standing stays"),
		release:       rapid.SliceOfN(rapid.IntRange(-2, 9), groups, groups).Draw(t, "release"),
	}
	p.standingGroups = someGroups("standing group")
	for i := days / 2; i < days; i++ {
		p.block[i] = 1
	}
	scores := make([][][]float64, n)
	stays := make([][][]float64, n)
	for o := range n {
		opt := option{
			allowed: dayset{rapid.Uint64Range(0, 1<<days-1).Draw(t, "allowed")},
			cost:    rapid.Float64Range(0, 0.5).Draw(t, "cost"),
			groups:  someGroups("group"),
		}
		if withCarry && rapid.Bool().Draw(t, "carries") {
			opt.carry = rapid.Float64Range(0.1, 1).Draw(t, "carry share")
			for _, g := range opt.groups {
				if rapid.Bool().Draw(t, "kept group") {
					opt.kept = append(opt.kept, g)
				}
			}
		}
		for s := range days {
			scores[o] = append(scores[o], prefix(days-s, "score"))
			stays[o] = append(stays[o], prefix(days-s, "stay"))
		}
		p.options = append(p.options, opt)
	}
	p.row = func(o, start int, space []float64) []float64 { return scores[o][start][:len(space)] }
	p.stayRow = func(o, start int, space []float64) []float64 { return stays[o][start][:len(space)] }
	if withCarry && rapid.Bool().Draw(t, "standing carries") {
		p.standingCarry = rapid.Float64Range(0.1, 1).Draw(t, "standing carry")
		p.standingStay = prefix(days, "standing stay")
		for _, g := range p.standingGroups {
			if rapid.Bool().Draw(t, "kept group") {
				p.standingKept = append(p.standingKept, g)
			}
		}
	}
	for range rapid.IntRange(0, 2).Draw(t, "pins") {
		from := rapid.IntRange(0, days-1).Draw(t, "pin from")
		pin := checkpoint{from: from, to: min(from+rapid.IntRange(0, 2).Draw(t, "pin days"), days-1)}
		holds := rapid.SliceOfN(rapid.Bool(), n+2, n+2).Draw(t, "pin holds")
		first := rapid.IntRange(-5, days-1).Draw(t, "pin start")
		pin.holds = func(o, start int) bool { return holds[o+2] && (o == bareOption || start >= first) }
		p.pins = append(p.pins, pin)
	}
	return p
}

func TestSolveEqualsExhaustiveSearch(t *testing.T) {
	for _, withCarry := range []bool{false, true} {
		rapid.Check(t, func(t *rapid.T) {
			p := smallProblem(t, withCarry)
			solver := newSolver(p, 2)
			solver.gap = rapid.SampledFrom([]float64{0, 0.1, 1, firstGap}).Draw(t, "gap")
			path, score, ok := solver.solve()
			want := exhaustive(p)
			if !ok {
				if !math.IsInf(want, -1) {
					t.Fatalf("no sequence found, exhaustive search finds one of %v", want)
				}
				return
			}
			if math.Abs(score-want) > 1e-9 {
				t.Fatalf("best is %v, exhaustive search finds %v; path %v", score, want, path)
			}
			if own := p.scoreOf(path); math.Abs(own-score) > 1e-9 {
				t.Fatalf("score %v, the sequence itself is worth %v", score, own)
			}
		})
	}
}

func TestRefusalsEqualExhaustiveSearch(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := smallProblem(t, rapid.Bool().Draw(t, "with carry"))
		solver := newSolver(p, 2)
		refused := refusal{
			option: rapid.IntRange(0, len(p.options)-1).Draw(t, "refused"),
			start:  rapid.IntRange(0, p.days-1).Draw(t, "from"),
		}
		refused.end = rapid.IntRange(refused.start+1, p.days).Draw(t, "to")
		_, score, ok := solver.restricted(refuse([]refusal{refused}))
		p.pins = append(p.pins, checkpoint{from: refused.start, to: refused.end - 1, holds: func(o, _ int) bool { return o != refused.option }})
		want := exhaustive(p)
		if ok != !math.IsInf(want, -1) || ok && math.Abs(score-want) > 1e-9 {
			t.Fatalf("best is %v (%v), exhaustive search finds %v", score, ok, want)
		}
	})
}

// Whatever day a change-out is moved to, what settles is the best of all sequences
// in which the same two plantings meet on it.
func TestDragEqualsExhaustiveSearch(t *testing.T) {
	settled := 0
	rapid.Check(t, func(t *rapid.T) {
		p := smallProblem(t, false)
		path, _, ok := newSolver(p, 2).solve()
		if path = joined(path); !ok || len(path) < 2 {
			t.Skip("nothing to move")
		}
		r := &Result{problem: p, path: path}
		i := rapid.IntRange(1, len(path)-1).Draw(t, "moved")
		d := r.StartDrag(i - 1)
		for day := range p.days {
			if !p.open[day] || !r.allowed(path[i].option, day) {
				continue
			}
			_, score, ok := d.settle(day)
			w := &walker{p: p, best: math.Inf(-1), meet: &[3]int{day, path[i-1].option, path[i].option}}
			want := w.search()
			if ok && math.Abs(score-want) > 1e-9 {
				t.Fatalf("moved to %d it is worth %v, exhaustive search finds %v", day, score, want)
			}
			if ok {
				settled++
			}
		}
	})
	if settled == 0 {
		t.Error("no drag ever settled")
	}
}
