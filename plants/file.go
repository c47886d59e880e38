package plants

import (
	"slices"
	"strings"

	"gopkg.in/yaml.v3"

	"fourturn/planner/working"
)

// contents is one book file as read: its plants with only the values it gives.
type contents struct {
	file      string
	group     string // "" for a person's own book
	plants    []read
	sizes     []Size
	diseases  []Disease
	citations []Citation
	ground    map[Field]Provenance // what holds for values without a word of their own
	cited     []cited
	faults    Faults
}

// read is one plant as read, with the places of its values for later faults.
type read struct {
	plant Plant // Own lists the fields that were given
	at    map[Field]place
	start place
}

type place struct{ line, column int }

// readFile reads one book file. Unless the file says otherwise, its values have
// the status unsaid.
func readFile(name, group string, data []byte, unsaid working.Status) contents {
	r := &reader{file: name}
	c := contents{file: name, group: group}
	if root := r.parse(data); root != nil {
		r.book(root, &c)
	}
	if _, ok := c.ground[anyField]; !ok {
		if c.ground == nil {
			c.ground = map[Field]Provenance{}
		}
		c.ground[anyField] = Provenance{Status: unsaid}
	}
	for i := range c.plants {
		c.plants[i].plant.ground.file = c.ground
		c.plants[i].plant.Group = group
	}
	c.faults, c.cited = r.faults, r.cited
	return c
}

func (r *reader) book(root *yaml.Node, c *contents) {
	entries, ok := r.mapping(root)
	if !ok {
		return
	}
	for _, e := range entries {
		switch e.key {
		case "plants":
			r.section(e.value, func(n *yaml.Node) {
				if p, ok := r.onePlant(n); ok {
					c.plants = append(c.plants, p)
				}
			})
		case "sizes":
			c.sizes = readAll(r, e.value, sizeParts)
		case "diseases":
			c.diseases = readAll(r, e.value, diseaseParts)
		case "sources":
			c.citations = readAll(r, e.value, citationParts)
		case "unless_said":
			c.ground = r.provenances(e.value)
		default:
			r.unknownKey(e)
		}
	}
}

// section calls f for each item of a list of any length.
func (r *reader) section(n *yaml.Node, f func(*yaml.Node)) {
	if n.Kind != yaml.SequenceNode {
		r.fault(n, "not_a_list")
		return
	}
	for _, item := range n.Content {
		f(item)
	}
}

func readAll[T any](r *reader, n *yaml.Node, parts []part[T]) []T {
	var all []T
	c := structCodec(parts...)
	r.section(n, func(item *yaml.Node) {
		if v, ok := c.read(r, item); ok {
			all = append(all, v)
		}
	})
	return all
}

// onePlant reads a plant: its id, the attributes it gives and where they are from.
func (r *reader) onePlant(n *yaml.Node) (read, bool) {
	out := read{at: map[Field]place{}, start: place{n.Line, n.Column}}
	out.plant.ground = &ground{}
	entries, ok := r.mapping(n)
	if !ok {
		return out, false
	}
	r.plant = plantID(entries)
	defer func() { r.plant, r.field = "", "" }()
	found := false
	var from *yaml.Node
	for _, e := range entries {
		r.field = ""
		switch e.key {
		case "id":
			out.plant.ID, found = idCodec.read(r, e.value)
			out.start = place{e.value.Line, e.value.Column}
		case "from":
			from = e.value
			out.plant.ground.said = r.provenances(from)
		case "without":
			ok = r.without(e.value, &out) && ok
		default:
			ok = r.attribute(e, &out) && ok
		}
	}
	r.field = ""
	inOrder(out.plant.Own)
	ok = r.groundless(from, &out) && ok
	if !found && plantID(entries) == "" {
		r.fault(n, "missing", word("key", "id"))
	}
	return out, ok && found
}

func plantID(entries []entry) string {
	for _, e := range entries {
		if e.key == "id" {
			return e.value.Value
		}
	}
	return ""
}

func (r *reader) attribute(e entry, out *read) bool {
	a, known := attributeOf(Field(e.key))
	if !known {
		r.unknownKey(e)
		return false
	}
	r.field = a.field
	if slices.Contains(out.plant.Own, a.field) { // taken away before
		r.fault(e.name, "key_twice", word("key", e.key))
		return false
	}
	out.plant.Own = append(out.plant.Own, a.field)
	out.at[a.field] = place{e.value.Line, e.value.Column}
	return a.read(r, e.value, &out.plant)
}

// groundless notes sources of values that the plant does not give here.
func (r *reader) groundless(from *yaml.Node, out *read) bool {
	if from == nil || from.Kind != yaml.MappingNode {
		return true
	}
	ok := true
	for i := 0; i+1 < len(from.Content); i += 2 {
		key := from.Content[i]
		if _, said := out.plant.ground.said[Field(key.Value)]; !said {
			continue // not understood, and noted before
		}
		whole, _, _ := strings.Cut(key.Value, ".")
		if a, known := attributeOf(Field(whole)); !known || a.write(&out.plant) == nil {
			r.fault(key, "from_without_value", word("field", key.Value))
			ok = false
		}
	}
	return ok
}

// without reads the list of values that an own book takes away from a plant of
// the book below.
func (r *reader) without(n *yaml.Node, out *read) bool {
	nodes, ok := r.list(n)
	for _, node := range nodes {
		f, good := fieldCodec.read(r, node)
		if _, whole := attributeOf(f); good && !whole {
			r.fault(node, "unknown_field", word("field", string(f)))
			good = false
		}
		if good && slices.Contains(out.plant.Own, f) {
			r.fault(node, "key_twice", word("key", string(f)))
			good = false
		}
		if !good {
			ok = false
			continue
		}
		out.plant.Own = append(out.plant.Own, f)
		out.at[f] = place{node.Line, node.Column}
	}
	return ok
}

// provenances reads a mapping from fields to where their values are from.
func (r *reader) provenances(n *yaml.Node) map[Field]Provenance {
	entries, ok := r.mapping(n)
	if !ok {
		return nil
	}
	all := make(map[Field]Provenance, len(entries))
	for _, e := range entries {
		if !fieldKey(Field(e.key)) && Field(e.key) != anyField {
			r.fault(e.name, "unknown_field", word("field", e.key))
			continue
		}
		if p, ok := provenanceCodec.read(r, e.value); ok {
			all[Field(e.key)] = p
		}
	}
	return all
}

// fieldKey reports whether f is a field or a part of one, such as "sold.quart".
func fieldKey(f Field) bool {
	whole, _, _ := strings.Cut(string(f), ".")
	for _, a := range attributes {
		if string(a.field) == whole {
			return true
		}
	}
	return false
}
