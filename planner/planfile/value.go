package planfile

import (
	"strconv"
	"strings"

	"gopkg.in/yaml.v3"

	"fourturn/planner/civil"
	"fourturn/planner/quantity"
)

// value is a part of a plan as its file shows it: what a writer wants to stand
// in the file, before it is known how much of the old text already says so.
type value struct {
	kind    kind
	flow    bool     // written on one line by preference
	bare    bool     // a scalar that is plain without looking: a date, a flag
	text    string   // of a scalar that is no measure
	mayLack bool     // a scalar that a file may leave out all the same
	unit    bool     // a list that is merged as a whole
	thing   bool     // a record that is there or not, such as a liner: half of one is none
	typed   string   // what a person typed for the same number, or empty
	measure *measure // of a scalar that is one
	number  float64
	system  quantity.System
	names   reference      // of a scalar that is the id of something in the plan
	fixed   bool           // a scalar that is one of a few words
	date    civil.Date     // of a scalar that is a day
	yearly  civil.MonthDay // of a scalar that is a day of every year
	entries []entry
}

type kind uint8

const (
	scalarKind kind = iota
	recordKind      // fixed keys in a fixed order
	tableKind       // ids as keys, in the person's order
	listKind        // items; the key of an entry tells items apart
)

type entry struct {
	key   string
	value *value
}

func textValue(s string) *value { return &value{text: s} }

func bareValue(s string) *value { return &value{text: s, bare: true} }

// scalar returns the text of a scalar before quoting.
func (v *value) scalar() string {
	if v.typed != "" {
		return v.typed
	}
	if v.measure != nil {
		return v.measure.format(v.number, v.system)
	}
	return v.text
}

func (v *value) find(key string) *value {
	for _, e := range v.entries {
		if e.key == key {
			return e.value
		}
	}
	return nil
}

// says reports whether a node of an old text already means v.
func says(n *yaml.Node, v *value) bool {
	switch v.kind {
	case scalarKind:
		return scalarSays(n, v)
	case recordKind:
		return recordSays(n, v)
	case tableKind:
		if n.Kind != yaml.MappingNode || len(n.Content) != 2*len(v.entries) {
			return false
		}
		for i, e := range v.entries {
			if n.Content[2*i].Value != e.key || !says(n.Content[2*i+1], e.value) {
				return false
			}
		}
		return true
	case listKind:
		if n.Kind != yaml.SequenceNode || len(n.Content) != len(v.entries) {
			return false
		}
		for i, e := range v.entries {
			if !says(n.Content[i], e.value) {
				return false
			}
		}
		return true
	}
	panic("planfile: unknown kind of value")
}

func scalarSays(n *yaml.Node, v *value) bool {
	if n.Kind != yaml.ScalarNode || n.Tag == "!!null" {
		return false
	}
	if v.measure != nil {
		x, err := v.measure.parse(n.Value)
		return err == nil && x == v.number
	}
	return n.Value == v.text || n.Tag == "!!bool" && strings.EqualFold(n.Value, v.text)
}

func recordSays(n *yaml.Node, v *value) bool {
	if n.Kind != yaml.MappingNode { // an id with nothing after it is a pot of nothing but defaults
		return len(v.entries) == 0 && n.Kind == yaml.ScalarNode && n.Tag == "!!null"
	}
	found := 0
	for i := 0; i+1 < len(n.Content); i += 2 {
		want := v.find(n.Content[i].Value)
		if want == nil && !mayStay(n.Content[i].Value, n.Content[i+1]) || want != nil && !says(n.Content[i+1], want) {
			return false
		}
		if want != nil {
			found++
		}
	}
	for _, e := range v.entries {
		if e.value.mayLack && child(n, e.key) == nil {
			found++
		}
	}
	return found == len(v.entries)
}

// mayStay reports whether a key may stand in a file without meaning anything: an
// empty text, a flag that is off, a list or mapping without entries, an amount of
// none. A record of nothing else is nothing as well; a table never is, for its
// keys are things.
func mayStay(key string, n *yaml.Node) bool {
	switch {
	case n.Kind == yaml.ScalarNode && n.Tag == "!!null":
		return true
	case key == linerKey: // an empty mapping would be a liner
		return false
	case n.Kind == yaml.ScalarNode && amountKeys[key]:
		x, _, err := splitNumber(n.Value)
		return err == nil && x == 0
	case n.Kind == yaml.ScalarNode:
		return n.Value == "" || n.Tag == "!!bool" && strings.EqualFold(n.Value, "false")
	case len(n.Content) == 0:
		return true
	case !innerKeys[key]:
		return false
	}
	for i := 0; i+1 < len(n.Content); i += 2 {
		if !mayStay(n.Content[i].Value, n.Content[i+1]) {
			return false
		}
	}
	return true
}

var (
	// amountKeys are those of which nothing is an amount.
	amountKeys = map[string]bool{
		inShedKey: true, "wall": true, "base": true, "false_bottom": true, "drainage_layer": true, "reservoir_water": true,
	}
	// innerKeys are those of records that are left out while all of them is default.
	innerKeys = map[string]bool{"household": true, "mix": true, "feeding": true, "frost": true}
)

// adopt takes over from an old node how a person typed the numbers that still
// say the same.
func (v *value) adopt(n *yaml.Node) {
	switch {
	case v.kind == scalarKind:
		if v.measure != nil && scalarSays(n, v) {
			v.typed = n.Value
		}
	case v.kind == listKind && n.Kind == yaml.SequenceNode:
		old := nodeItemKeys(n)
		for _, e := range v.entries {
			for i, key := range old {
				if key == e.key {
					e.value.adopt(n.Content[i])
					break
				}
			}
		}
	case n.Kind == yaml.MappingNode:
		for _, e := range v.entries {
			if c := child(n, e.key); c != nil {
				e.value.adopt(c)
			}
		}
	}
}

// itemKeys names the items of a list so that an old and a new one can be
// matched: by id, by plant, or by what they say; equal names are counted.
func itemKeys(count int, name func(i int) string) []string {
	keys := make([]string, count)
	seen := make(map[string]int, count)
	for i := range keys {
		key := name(i)
		seen[key]++
		if n := seen[key]; n > 1 {
			key += "\x00" + strconv.Itoa(n)
		}
		keys[i] = key
	}
	return keys
}

func nodeItemKeys(n *yaml.Node) []string {
	return itemKeys(len(n.Content), func(i int) string { return nodeItemKey(n.Content[i]) })
}

// nodeItemKey is the name of a list item: its id, its plant, or its text.
func nodeItemKey(n *yaml.Node) string {
	if n.Kind == yaml.ScalarNode {
		return n.Value
	}
	if n.Kind == yaml.MappingNode {
		for _, key := range [...]string{"id", "plant"} {
			if item := child(n, key); item != nil && item.Kind == yaml.ScalarNode {
				return item.Value
			}
		}
		return packName(n)
	}
	return ""
}

// packName names a pack by its size, as [packKey] does.
func packName(n *yaml.Node) string {
	for _, size := range [...]struct {
		key     string
		measure *measure
	}{{"volume", volumeMeasure}, {"mass", massMeasure}} {
		m := size.measure
		if item := child(n, size.key); item != nil && item.Kind == yaml.ScalarNode {
			if x, err := m.parse(item.Value); err == nil && x != 0 {
				return m.format(x, quantity.Metric)
			}
		}
	}
	return ""
}

// child returns the value of a key in a mapping node, or nil.
func child(n *yaml.Node, key string) *yaml.Node {
	if n == nil || n.Kind != yaml.MappingNode {
		return nil
	}
	for i := 0; i+1 < len(n.Content); i += 2 {
		if n.Content[i].Value == key {
			return n.Content[i+1]
		}
	}
	return nil
}
