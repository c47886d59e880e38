package rotation

import (
	"math"
	"slices"
)

// problem is a rotation in the solver's own terms: days are counted from today,
// change-outs fall on the mornings of days, and every amount is in display days.
type problem struct {
	days     int    // the horizon: mornings 0 … days, nothing counts after the last
	open     []bool // by day: work may be done on it
	minStand int    // days from one planting to the next
	options  []option

	// row returns the running score of an option put out on the day start, for as many
	// days as there is space: [k] is the score of its first k days, [0] is 0. It may
	// use the space; what it returns must not be written to.
	row func(option, start int, space []float64) []float64
	// stayRow does the same for the parts of the option that may stay on.
	stayRow func(option, start int, space []float64) []float64

	standing []float64 // running score of what stands today: [t] is that of days 0 … t−1
	// standingGroups are those that it is a host of; standingCarry the share of it
	// that may stay on, whose running score is standingStay.
	standingGroups []int
	standingCarry  float64
	standingStay   []float64
	standingKept   []int     // disease groups of the parts that may stay
	bare           []float64 // running score of an empty pot

	block []int // by day: the planning year
	most  []int // by planning year: change-outs that the person wants at most
	least []int // by planning year: change-outs that the person wants at least
	done  int   // change-outs already made in the first planning year

	fixed   float64   // cost of any change-out
	replace float64   // cost of replacing all the mix, on top
	charged []float64 // by day of planting: share of the costs charged to a planting that goes on past the horizon

	tellOnly      bool // the rules of the mix are told, not kept
	groupNames    []string
	stays         []int // by disease group: days that it stays in the mix after a host
	standingStays []int // the same after what stands today, longer where it was diseased
	release       []int // by disease group: first day on which a host may be planted, from the past

	pins []checkpoint
}

// option is a planting that may be put out.
type option struct {
	allowed dayset
	may     dayset  // allowed but for the turns; nil where there are none
	cost    float64 // of its plants and of what else grows with its share of the pot
	groups  []int   // disease groups that it is a host of
	carry   float64 // share of the pot that its staying parts take; 0: none stay
	kept    []int   // disease groups that those parts are hosts of
}

// Not plantings but states of the pot, where an option's number would stand.
const (
	bareOption     = -1
	standingOption = -2
)

// checkpoint says what must stand in the pot on some days.
type checkpoint struct {
	from, to int                     // days, both included
	holds    func(o, start int) bool // by option and its day of planting, which of an empty pot is of no matter
}

// limit returns the last morning up to which an option put out on a day may stand
// without breaking a checkpoint, or the day itself where it may not be put out.
func (p *problem) limit(o, start int) int {
	limit := p.days
	for i := range p.pins {
		pin := &p.pins[i]
		if start > pin.to || pin.from >= limit || pin.holds(o, start) {
			continue
		}
		limit = max(pin.from, start)
	}
	return limit
}

// segment is a stay of one option in the pot, from the morning of start up to the
// morning of end.
type segment struct {
	option, start, end int
	replaced           bool // all the mix was replaced before it
	carry              carry
}

// carry is what stays on beneath or beside the option of a segment: the staying
// parts of an earlier option, put out on the day start. The zero carry is none.
type carry struct {
	kept   bool
	option int
	start  int
}

// counted reports whether putting the option out is a change-out.
func counted(option int) bool { return option >= 0 }

// carryShare returns the share of the pot that a carry takes.
func (p *problem) carryShare(c carry) float64 {
	switch {
	case !c.kept:
		return 0
	case c.option == standingOption:
		return p.standingCarry
	}
	return p.options[c.option].carry
}

// groupsOf returns the disease groups that an option is a host of.
func (p *problem) groupsOf(o int) []int {
	switch o {
	case bareOption:
		return nil
	case standingOption:
		return p.standingGroups
	}
	return p.options[o].groups
}

// staysAfter returns for how many days a group stays after an option was taken out.
func (p *problem) staysAfter(o, group int) int {
	if o == standingOption {
		return p.standingStays[group]
	}
	return p.stays[group]
}

// violated returns the groups whose rule a sequence breaks, each once; none where the
// rules are only told.
func (p *problem) violated(path []segment) []int {
	if p.tellOnly {
		return nil
	}
	found, _ := p.breaches(path)
	return found
}

// breaches returns the groups whose rule a sequence breaks, each once, with the stay
// that first does.
func (p *problem) breaches(path []segment) (found, stays []int) {
	release := append([]int(nil), p.release...)
	broken := make([]bool, len(release))
	stayed := carry{}
	for i, seg := range path {
		if stayed != seg.carry {
			for _, g := range p.keptGroups(stayed) {
				release[g] = max(release[g], seg.start+p.staysAfter(stayed.option, g))
			}
		}
		stayed = seg.carry
		if seg.replaced {
			for g := range release {
				release[g] = math.MinInt
			}
		}
		for _, g := range p.groupsOf(seg.option) {
			if counted(seg.option) && (release[g] > seg.start || slices.Contains(p.keptGroups(seg.carry), g)) && !broken[g] {
				broken[g] = true
				found, stays = append(found, g), append(stays, i)
			}
			release[g] = max(release[g], seg.end+p.staysAfter(seg.option, g))
		}
	}
	return found, stays
}

// keptGroups returns the disease groups that what stays on is a host of.
func (p *problem) keptGroups(c carry) []int {
	switch {
	case !c.kept:
		return nil
	case c.option == standingOption:
		return p.standingKept
	}
	return p.options[c.option].kept
}

// scoreOf returns the worth of a sequence, costs taken off, from its own days.
func (p *problem) scoreOf(path []segment) float64 {
	total := 0.0
	for _, seg := range path {
		total += p.segmentScore(seg)
	}
	return total
}

func (p *problem) segmentScore(seg segment) float64 {
	share := 1 - p.carryShare(seg.carry)
	score := share * p.ownScore(seg.option, seg.start, seg.end)
	if seg.carry.kept {
		score += p.carriedScore(seg.carry, seg.start, seg.end)
	}
	if counted(seg.option) {
		charge := p.charge(seg.start, seg.end)
		score -= charge * (p.fixed + share*p.options[seg.option].cost)
		if seg.replaced {
			score -= charge * p.replace
		}
	}
	return score
}

// charge is the share of a change-out's costs that counts against the horizon.
func (p *problem) charge(start, end int) float64 {
	if end == p.days {
		return p.charged[start]
	}
	return 1
}

func (p *problem) ownScore(o, start, end int) float64 {
	switch o {
	case bareOption:
		return p.bare[end] - p.bare[start]
	case standingOption:
		return p.standing[end] - p.standing[start]
	}
	row := p.row(o, start, make([]float64, end-start+1))
	return row[end-start]
}

func (p *problem) carriedScore(c carry, start, end int) float64 {
	if c.option == standingOption {
		return p.standingStay[end] - p.standingStay[start]
	}
	row := p.stayRow(c.option, c.start, make([]float64, end-c.start+1))
	return row[end-c.start] - row[start-c.start]
}

// dayset is a set of days of the horizon.
type dayset []uint64

func newDayset(days int) dayset { return make(dayset, (days+63)/64) }

func (d dayset) has(day int) bool { return d[day/64]>>(day%64)&1 != 0 }

func (d dayset) set(day int) { d[day/64] |= 1 << (day % 64) }
