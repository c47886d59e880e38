package rotation

import (
	"math"
	"slices"
)

// solve returns the sequence of greatest score, or false where the checkpoints
// leave none. It begins with the stay of what stands today, of no days where that
// goes at once. It is exact: labels of the state of the pot (day, change-outs made
// this year, when each disease group is gone, what stays on) are extended by every
// stay, and a label is dropped only for one that is no worse in every respect.
//
// Disease groups are tracked only once the best sequence found without them breaks
// their rule: a relaxation whose best sequence keeps all rules is the best of all
// (decremental state space relaxation: Righini and Salani 2008, Networks 51:155-170,
// from memory).
func (p *problem) solve() (path []segment, score float64, ok bool) {
	var tracked []int
	for {
		s := newSearch(p, tracked)
		path, score, ok = s.run()
		if !ok {
			return nil, 0, false
		}
		broken := p.violated(path)
		if len(broken) == 0 {
			return path, score, true
		}
		for _, g := range broken {
			if slices.Contains(tracked, g) {
				panic("rotation: a tracked disease group broke its rule")
			}
		}
		tracked = append(tracked, broken...)
	}
}

// never is the release of a group whose host still stands.
const never = math.MaxInt32

// label is one state of the pot on the morning of a day, and how it came about.
type label struct {
	day     int32
	year    int8 // change-outs made in the planning year of the day
	carry   int32
	value   float64
	release []int32 // by tracked group: first day on which a host may be planted; 0: now
	from    int32   // the label before, -1 for none
	last    segment // that ended this morning
}

// search is one run over the labels of a problem.
type search struct {
	p       *problem
	tracked []int
	classes []class
	ends    []int
	labels  []label
	carries []carry             // by number; 0 is none
	numbers map[carry]int32     // the other way round
	stay    [][]float64         // by number of carry: running score from its start
	fronts  []map[int32][]int32 // by day and carry: labels of which none is no better than another
	order   [][]int32           // by day: labels in the order found
}

func newSearch(p *problem, tracked []int) *search {
	return &search{
		p:       p,
		tracked: tracked,
		classes: p.classes(tracked),
		ends:    p.ends(),
		carries: []carry{{}},
		numbers: map[carry]int32{{}: 0},
		stay:    [][]float64{nil},
		fronts:  make([]map[int32][]int32, p.days+1),
		order:   make([][]int32, p.days+1),
	}
}

func (s *search) run() ([]segment, float64, bool) {
	s.begin()
	for day := range s.p.days {
		for _, l := range s.order[day] {
			if s.onFront(l) {
				s.extend(l)
			}
		}
	}
	best := int32(-1)
	for _, l := range s.order[s.p.days] {
		if best < 0 || s.labels[l].value > s.labels[best].value {
			best = l
		}
	}
	if best < 0 {
		return nil, 0, false
	}
	var path []segment
	for l := best; l >= 0; l = s.labels[l].from {
		path = append(path, s.labels[l].last)
	}
	slices.Reverse(path)
	return path, s.labels[best].value, true
}

// begin makes the labels of all days on which what stands today may go.
func (s *search) begin() {
	p := s.p
	release := make([]int32, len(s.tracked))
	for t, g := range s.tracked {
		release[t] = int32(max(p.release[g], 0))
	}
	limit := p.limit(standingOption, 0)
	kept := int32(0)
	if p.standingCarry > 0 {
		kept = s.carryNumber(carry{kept: true, option: standingOption})
	}
	hosted, stay := among(s.tracked, p.standingGroups), among(s.tracked, p.standingKept)
	for _, end := range s.ends {
		if end > limit {
			break
		}
		if !s.enough(0, end, p.done) {
			break
		}
		l := label{day: int32(end), value: p.standing[end], from: -1, last: segment{option: standingOption, end: end}}
		if p.block[0] == s.blockOf(end) {
			l.year = int8(p.done)
		}
		l.release = s.releases(release, standingOption, hosted, nil, end)
		s.add(l)
		if kept > 0 {
			l.carry, l.release = kept, s.releases(release, standingOption, hosted, stay, end)
			s.add(l)
		}
	}
}

// blockOf returns the planning year of a morning; that of the end of the horizon
// is of no matter.
func (s *search) blockOf(day int) int { return s.p.block[min(day, s.p.days-1)] }

// releases returns the release of each tracked group once the option that hosts
// some has left on the day end, where parts that host others stay on.
func (s *search) releases(before []int32, option int, hosted, stayOn []int, end int) []int32 {
	if len(before) == 0 {
		return nil
	}
	after := append([]int32(nil), before...)
	for _, t := range hosted {
		if after[t] != never {
			after[t] = max(after[t], int32(end+s.p.staysAfter(option, s.tracked[t])))
		}
	}
	for _, t := range stayOn {
		after[t] = never
	}
	for t, day := range after {
		if day <= int32(end) {
			after[t] = 0
		}
	}
	return after
}

// carryNumber returns the number of a carry, a new one at its first use.
func (s *search) carryNumber(c carry) int32 {
	if number, ok := s.numbers[c]; ok {
		return number
	}
	row := s.p.standingStay
	if c.option != standingOption {
		row = make([]float64, s.p.days-c.start+1)
		s.p.stayRow(c.option, c.start, row)
	}
	s.carries = append(s.carries, c)
	s.stay = append(s.stay, row)
	s.numbers[c] = int32(len(s.carries) - 1)
	return s.numbers[c]
}

// extend makes the labels of all stays that may follow one.
func (s *search) extend(from int32) {
	l := s.labels[from]
	start := int(l.day)
	if !s.p.open[start] {
		return
	}
	// Two stays of an empty pot on end are one.
	emptied := l.last.option == bareOption && l.last.carry == s.carries[l.carry]
	if limit := s.p.limit(bareOption, start); limit > start && !emptied {
		s.extendBare(from, l, limit)
	}
	if int(l.year) >= s.p.most[s.p.block[start]] {
		return
	}
	for k := range s.classes {
		class := &s.classes[k]
		if class.best[start].score == nil {
			continue
		}
		if !blocked(l.release, class.groups, start) {
			s.extendClass(from, l, class, false)
		}
		// Fresh mix is worth its cost only where something is held back.
		if l.carry == 0 && anyHeld(l.release) {
			s.extendClass(from, l, class, true)
		}
	}
}

func blocked(release []int32, groups []int, day int) bool {
	for _, t := range groups {
		if release[t] > int32(day) {
			return true
		}
	}
	return false
}

func anyHeld(release []int32) bool {
	for _, day := range release {
		if day > 0 {
			return true
		}
	}
	return false
}

func (s *search) extendBare(from int32, l label, limit int) {
	start := int(l.day)
	share := 1 - s.p.carryShare(s.carries[l.carry])
	for _, end := range s.ends {
		if end > limit {
			break
		}
		if end <= start {
			continue
		}
		next := label{
			day:   int32(end),
			value: l.value + share*(s.p.bare[end]-s.p.bare[start]) + s.carried(l.carry, start, end),
			from:  from,
			last:  segment{option: bareOption, start: start, end: end, carry: s.carries[l.carry]},
		}
		s.finish(next, l.carry, l.release, l.year, nil)
	}
}

func (s *search) extendClass(from int32, l label, class *class, replaced bool) {
	p, start := s.p, int(l.day)
	share := 1 - p.carryShare(s.carries[l.carry])
	release := l.release
	fixed := p.fixed
	if replaced {
		release = make([]int32, len(l.release))
		fixed += p.replace
	}
	best := &class.best[start]
	for _, end := range s.ends {
		if end <= start || best.whose[end-start] < 0 {
			continue
		}
		o := int(best.whose[end-start])
		next := label{
			day:   int32(end),
			value: l.value + share*best.score[end-start] - p.charge(start, end)*fixed + s.carried(l.carry, start, end),
			from:  from,
			last:  segment{option: o, start: start, end: end, replaced: replaced, carry: s.carries[l.carry]},
		}
		s.finish(next, l.carry, release, l.year+1, class)
	}
}

// carried returns the score of what stays on over some days.
func (s *search) carried(number int32, start, end int) float64 {
	if number == 0 {
		return 0
	}
	row, first := s.stay[number], s.carries[number].start
	return row[end-first] - row[start-first]
}

// finish adds the labels of a stay that has just ended: with what stayed on taken
// out, with it kept, and with the staying parts of the stay itself kept.
func (s *search) finish(next label, carry int32, release []int32, made int8, class *class) {
	end, start := int(next.day), next.last.start
	if !s.enough(start, end, int(made)) {
		return
	}
	if s.blockOf(end) == s.p.block[start] {
		next.year = made
	}
	var hosted []int
	if class != nil {
		hosted = class.groups
	}
	if carry == 0 {
		next.release = s.releases(release, next.last.option, hosted, nil, end)
		s.add(next)
		if class != nil && class.carry >= 0 && end < s.p.days {
			s.addKept(next, class, release)
		}
		return
	}
	kept := next
	kept.carry, kept.release = carry, s.releases(release, next.last.option, hosted, nil, end)
	s.add(kept)
	if end < s.p.days {
		next.release = s.releases(s.takenOut(release, carry, end), next.last.option, hosted, nil, end)
		s.add(next)
	}
}

// enough reports whether the planning years that end between two mornings have the
// change-outs that they need, where so many were made in that of the first.
func (s *search) enough(start, end, made int) bool {
	first, last := s.p.block[start], s.blockOf(end)
	if end == s.p.days {
		last++ // the year of the last day ends as well
	}
	for year := first; year < last; year++ {
		if made < s.p.least[year] {
			return false
		}
		made = 0
	}
	return true
}

func (s *search) addKept(next label, class *class, release []int32) {
	next.carry = s.carryNumber(carry{kept: true, option: class.carry, start: next.last.start})
	next.release = s.releases(release, next.last.option, class.groups, class.kept, int(next.day))
	s.add(next)
}

// takenOut returns the releases once what stayed on has been taken out.
func (s *search) takenOut(release []int32, number int32, end int) []int32 {
	after := append([]int32(nil), release...)
	for _, t := range among(s.tracked, s.p.keptGroups(s.carries[number])) {
		after[t] = int32(end + s.p.staysAfter(s.carries[number].option, s.tracked[t]))
		if s.carries[number].option == standingOption {
			// What stood from before may have been planted against its rule.
			after[t] = max(after[t], int32(s.p.release[s.tracked[t]]))
		}
	}
	return after
}

// add keeps a label unless another is no worse in every respect, and drops those
// that are then no better than it.
func (s *search) add(l label) {
	front := s.fronts[l.day]
	if front == nil {
		front = make(map[int32][]int32)
		s.fronts[l.day] = front
	}
	if l.day == int32(s.p.days) {
		l.carry, l.release, l.year = 0, nil, 0 // nothing comes after
	}
	list := front[l.carry]
	for _, other := range list {
		if s.noWorse(&s.labels[other], &l) {
			return
		}
	}
	kept := list[:0]
	for _, other := range list {
		if !s.noWorse(&l, &s.labels[other]) {
			kept = append(kept, other)
		}
	}
	id := int32(len(s.labels))
	s.labels = append(s.labels, l)
	front[l.carry] = append(kept, id)
	s.order[l.day] = append(s.order[l.day], id)
}

func (s *search) onFront(id int32) bool {
	l := &s.labels[id]
	return slices.Contains(s.fronts[l.day][l.carry], id)
}

// noWorse reports whether all that may follow one label may follow another, at no
// less value: fewer change-outs made leave more to make, unless the year needs them.
func (s *search) noWorse(l, other *label) bool {
	if l.value < other.value || l.year > other.year {
		return false
	}
	if l.year < other.year && int(l.year) < s.p.least[s.blockOf(int(l.day))] {
		return false
	}
	for t, day := range l.release {
		if day > other.release[t] {
			return false
		}
	}
	return true
}
