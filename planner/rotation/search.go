package rotation

import (
	"math"
	"slices"
)

// never is the release of a group whose host still stands.
const never = math.MaxInt32

// label is one state of the pot on the morning of a day, and how it came about.
type label struct {
	day     int32
	made    int32 // change-outs made in the planning year of the day
	carry   int32
	from    int32 // the label before, -1 for none
	value   float64
	release []int32 // by tracked group: first day on which a host may be planted; 0: now
	last    segment // that ended this morning
}

// search is one run over the labels of a problem.
type search struct {
	p       *problem
	bounds  *bounds
	pool    *pool
	target  float64
	tracked []int
	labels  []label
	carries []carry         // by number; 0 is none
	numbers map[carry]int32 // the other way round
	stay    [][]float64     // by number of carry: running score from its start
	fronts  []front         // by day
	classes []class         // of the day that is being extended
}

func newSearch(bounds *bounds, pool *pool, tracked []int, target float64) *search {
	return &search{
		p:       bounds.p,
		bounds:  bounds,
		pool:    pool,
		target:  target - rounding*math.Max(1, math.Abs(target)),
		tracked: tracked,
		carries: []carry{{}},
		numbers: map[carry]int32{{}: 0},
		stay:    [][]float64{nil},
		fronts:  make([]front, bounds.p.days+1),
	}
}

func (s *search) run() ([]segment, float64, bool) {
	s.begin()
	for day := range s.p.days {
		if len(s.fronts[day].carries) == 0 || !s.p.open[day] {
			continue
		}
		s.sort(day)
		for _, list := range s.fronts[day].labels {
			for _, l := range list {
				s.extend(l)
			}
		}
	}
	last := &s.fronts[s.p.days]
	if len(last.carries) == 0 {
		return nil, 0, false
	}
	best := last.labels[0][0] // nothing comes after: one label is no worse than all
	var path []segment
	for l := best; l >= 0; l = s.labels[l].from {
		path = append(path, s.labels[l].last)
	}
	slices.Reverse(path)
	return path, s.labels[best].value, true
}

// among returns the positions in tracked of the groups that are in the list.
func among(tracked, list []int) []int {
	var found []int
	for t, g := range tracked {
		if slices.Contains(list, g) {
			found = append(found, t)
		}
	}
	return found
}

// begin makes the labels of all days on which what stands today may go.
func (s *search) begin() {
	p := s.p
	release := make([]int32, len(s.tracked))
	for t, g := range s.tracked {
		release[t] = int32(max(p.release[g], 0))
	}
	hosted, kept := among(s.tracked, p.standingGroups), among(s.tracked, p.standingKept)
	s.bounds.begin(func(end, then int, _ float64) {
		l := label{day: int32(end), made: int32(then), value: p.standing[end], from: -1, last: segment{option: standingOption, end: end}}
		l.release = s.releases(release, standingOption, hosted, nil, end)
		s.add(l)
		if p.standingCarry > 0 && end < p.days {
			l.carry = s.carryNumber(carry{kept: true, option: standingOption})
			l.release = s.releases(release, standingOption, hosted, kept, end)
			s.add(l)
		}
	})
}

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
		row = s.p.stayRow(c.option, c.start, make([]float64, s.p.days-c.start+1))
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
	// Two stays of an empty pot on end are one.
	emptied := l.last.option == bareOption && l.last.carry == s.carries[l.carry]
	if limit := s.p.limit(bareOption, start); limit > start && !emptied {
		s.extendBare(from, l, limit)
	}
	if int(l.made) >= s.p.most[s.p.block[start]] {
		return
	}
	for k := range s.classes {
		class := &s.classes[k]
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
	for _, end := range s.bounds.ends {
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
		s.finish(next, l.carry, l.release, int(l.made), nil)
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
	for _, stay := range class.best {
		end := int(stay.end)
		next := label{
			day:   stay.end,
			value: l.value + share*stay.score - p.charge(start, end)*fixed + s.carried(l.carry, start, end),
			from:  from,
			last:  segment{option: int(stay.option), start: start, end: end, replaced: replaced, carry: s.carries[l.carry]},
		}
		s.finish(next, l.carry, release, int(l.made)+1, class)
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
func (s *search) finish(next label, carry int32, release []int32, made int, class *class) {
	end := int(next.day)
	then, ok := s.p.made(next.last.start, end, made)
	if !ok || next.value+s.bounds.after[end*s.bounds.width+then] < s.target {
		return
	}
	next.made = int32(then)
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
