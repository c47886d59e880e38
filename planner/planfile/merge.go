package planfile

import (
	"strings"

	"fourturn/planner"
	"fourturn/planner/finding"
)

// Side is one of the two plans that are brought together.
type Side int

// The sides of a merge.
const (
	Mine Side = iota
	Theirs
)

// ConflictKind says in which way two plans disagree.
type ConflictKind string

// The ways in which two plans can disagree.
const (
	BothChanged   ConflictKind = "both_changed"   // the same value, to different ones
	DeletedMine   ConflictKind = "deleted_mine"   // changed there, deleted here
	DeletedTheirs ConflictKind = "deleted_theirs" // changed here, deleted there
	StillInUse    ConflictKind = "still_in_use"   // deleted on one side, referred to on the other: kept
)

// Conflict is one place at which both sides changed the plan, and not in the
// same way.
type Conflict struct {
	Where  finding.Where
	Steps  []Step // the same place, step by step
	Kind   ConflictKind
	Base   *Content // nil where there was nothing
	Mine   *Content
	Theirs *Content
	Taken  Side // whose value stands in the merged plan
	// OneSided says that only one side seems to have changed the value; see [MergeCopy].
	OneSided bool
	Fixed    bool // there was no choice: another one or the rest of the plan decides
}

// Merged is the outcome of a merge.
type Merged struct {
	Plan      *planner.Plan
	Conflicts []Conflict
}

// Merge brings two plans together that began as the same one. A value that only
// one side changed is that side's; what one side added is added; what one side
// deleted and the other left alone is deleted. Where both changed the same value,
// choose decides, or mine where choose is nil. A pot, planting or the like that
// one side deleted and the other changed is kept unless choose says otherwise.
// The method is the three-way merge (Mens, IEEE Trans. Softw. Eng. 28:449, 2002)
// on the plan's own structure: sites, spots, products, recipes and pots by id,
// plantings by season, log entries by id, plants by name.
//
// The error is [Problems] if one of the plans fails [Check].
func Merge(base, mine, theirs *planner.Plan, choose func(Conflict) Side) (*Merged, error) {
	for _, p := range [...]*planner.Plan{base, mine, theirs} {
		if err := Check(p); err != nil {
			return nil, err
		}
	}
	m := &merger{choose: choose}
	return m.merge(valueOf(base), valueOf(mine), valueOf(theirs))
}

// MergeCopy brings two plans together of which nobody knows what they began from,
// such as a second copy that a sync service dropped beside the file. What is in
// either is kept, so a deletion on one side does not take effect; where both have a
// value and it differs, choose decides as in [Merge].
//
// was is a version from which both may have begun, or nil. Where only one side
// changed its value, that side is taken unless choose says otherwise, and the
// conflict is marked [Conflict.OneSided]: it is told all the same, since was may be
// the wrong one.
func MergeCopy(was, mine, theirs *planner.Plan, choose func(Conflict) Side) (*Merged, error) {
	for _, p := range [...]*planner.Plan{mine, theirs} {
		if err := Check(p); err != nil {
			return nil, err
		}
	}
	a, b := valueOf(mine), valueOf(theirs)
	m := &merger{choose: choose}
	if was != nil {
		m.was = valueOf(was)
	}
	return m.merge(shared(a, b), a, b)
}

func (m *merger) merge(base, mine, theirs *value) (*Merged, error) {
	plan, err := m.settle(m.record(nil, base, mine, theirs), base)
	if err != nil {
		return nil, err
	}
	return &Merged{Plan: plan, Conflicts: m.conflicts}, nil
}

type merger struct {
	choose    func(Conflict) Side
	was       *value // what both may have begun from, where it is not known; or nil
	conflicts []Conflict
}

// value merges one value; nil is the default, or nothing.
func (m *merger) value(at *place, base, mine, theirs *value) *value {
	switch {
	case same(mine, theirs), same(base, theirs):
		return mine
	case same(base, mine):
		return theirs
	}
	switch kind := kindOf(base, mine, theirs); {
	case unitOf(base, mine, theirs):
	case thingOf(base, mine, theirs):
		return m.entry(at, base, mine, theirs)
	case kind == recordKind:
		return orNothing(m.record(at, base, mine, theirs))
	case kind != scalarKind:
		return orNothing(m.entries(at, base, mine, theirs))
	}
	return m.conflict(at, BothChanged, base, mine, theirs, Mine)
}

func (m *merger) conflict(at *place, kind ConflictKind, base, mine, theirs *value, usual Side) *value {
	oneSided := false
	if m.was != nil {
		base = at.lookUp(m.was)
		oneSided = same(base, mine) || same(base, theirs)
		if same(base, mine) {
			usual = Theirs
		}
	}
	c := Conflict{
		Where: at.where(), Steps: at.steps(), Kind: kind, Taken: usual, OneSided: oneSided,
		Base: at.content(base), Mine: at.content(mine), Theirs: at.content(theirs),
	}
	if m.choose != nil {
		c.Taken = m.choose(c)
	}
	m.conflicts = append(m.conflicts, c)
	if c.Taken == Theirs {
		return theirs
	}
	return mine
}

// record merges key by key.
func (m *merger) record(at *place, base, mine, theirs *value) *value {
	merged := &value{kind: recordKind, flow: flowOf(mine, theirs)}
	for _, key := range unionKeys(mine, theirs) {
		v := m.value(at.in(key), lookUp(base, key), lookUp(mine, key), lookUp(theirs, key))
		if v != nil {
			merged.entries = append(merged.entries, entry{key, v})
		}
	}
	m.fitStock(at, merged, base, mine, theirs)
	return merged
}

// fitStock keeps the unit of a product's stock with its kind: where the sides
// made different things of one product, the stock is that of the side whose kind
// was taken.
func (m *merger) fitStock(at *place, merged, base, mine, theirs *value) {
	stock, kind := merged.find(inShedKey), merged.find(kindKey)
	if stock == nil || kind == nil {
		return
	}
	fits := func(v *value) bool {
		return v == nil || v.measure == stockMeasure(&planner.Product{Kind: planner.ProductKind(kind.text)})
	}
	if fits(stock) {
		return
	}
	b, mi, th := lookUp(base, inShedKey), lookUp(mine, inShedKey), lookUp(theirs, inShedKey)
	at = at.in(inShedKey)
	c := Conflict{
		Where: at.where(), Steps: at.steps(), Kind: BothChanged, Fixed: true,
		Base: at.content(b), Mine: at.content(mi), Theirs: at.content(th),
	}
	taken := mi
	if !same(lookUp(mine, kindKey), kind) {
		taken, c.Taken = th, Theirs
	}
	if !fits(taken) {
		taken = nil
	}
	for i, e := range merged.entries {
		if e.key == inShedKey && taken != nil {
			merged.entries[i].value = taken
		} else if e.key == inShedKey {
			merged.entries = append(merged.entries[:i:i], merged.entries[i+1:]...)
			break
		}
	}
	m.conflicts = append(m.conflicts, c)
}

// entries merges a table or a list by its keys.
func (m *merger) entries(at *place, base, mine, theirs *value) *value {
	merged := &value{kind: kindOf(base, mine, theirs), flow: flowOf(mine, theirs)}
	b, mi, th := indexed(base), indexed(mine), indexed(theirs)
	kept := make(map[string]*value, len(mi)+len(th))
	for _, key := range unionKeys(mine, theirs) {
		if v := m.entry(at.itemIn(shownKey(key)), b[key], mi[key], th[key]); v != nil {
			kept[key] = v
		}
	}
	for _, key := range mergedOrder(keysOf(base), keysOf(mine), keysOf(theirs)) {
		if v := kept[key]; v != nil {
			merged.entries = append(merged.entries, entry{key, v})
		}
	}
	return merged
}

// entry merges one pot, liner, planting, log entry or the like, which a side may have
// deleted.
func (m *merger) entry(at *place, base, mine, theirs *value) *value {
	switch {
	case base != nil && mine == nil && theirs != nil && !same(base, theirs):
		return m.conflict(at, DeletedMine, base, mine, theirs, Theirs)
	case base != nil && theirs == nil && mine != nil && !same(base, mine):
		return m.conflict(at, DeletedTheirs, base, mine, theirs, Mine)
	case base != nil && (mine == nil || theirs == nil):
		return nil
	case mine == nil:
		return theirs
	case theirs == nil:
		return mine
	case mine.kind == recordKind:
		return m.record(at, base, mine, theirs) // an empty record is still there
	}
	return m.value(at, base, mine, theirs)
}

// settle turns the merged values into a plan. Things that one side deleted while
// the other began to refer to them come back.
func (m *merger) settle(merged, base *value) (*planner.Plan, error) {
	for {
		plan, err := planOf(merged)
		if err != nil {
			return nil, err
		}
		err = Check(plan)
		if err == nil {
			return plan, nil
		}
		if !m.bringBack(merged, base, err.(*Problems)) {
			return nil, err
		}
	}
}

// bringBack restores what problems miss, and reports whether it found anything.
func (m *merger) bringBack(merged, base *value, problems *Problems) bool {
	found := false
	for _, p := range problems.List {
		if !strings.HasPrefix(p.Code, "planfile.unknown_reference") {
			continue
		}
		id, section := p.Args[0].Value.Text, p.Args[1].Value.Text
		was := lookUp(lookUp(base, section), id)
		if was == nil || lookUp(lookUp(merged, section), id) != nil {
			continue
		}
		table := lookUp(merged, section)
		if table == nil {
			table = &value{kind: tableKind}
			merged.entries = append(merged.entries, entry{section, table})
		}
		table.entries = append(table.entries, entry{id, was})
		at := (*place)(nil).in(section).itemIn(id)
		m.conflicts = append(m.conflicts, Conflict{Where: at.where(), Steps: at.steps(), Kind: StillInUse, Base: at.content(was), Fixed: true})
		found = true
	}
	return found
}

// planOf reads a plan from values without a text.
func planOf(v *value) (*planner.Plan, error) {
	root, err := parse(emit(v))
	if err != nil {
		return nil, err
	}
	return readPlan(root)
}
