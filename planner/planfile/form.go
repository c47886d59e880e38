package planfile

import (
	"gopkg.in/yaml.v3"

	"fourturn/planner/quantity"
)

// form is the explicit mapping between one struct of the plan and one mapping of
// the file: its fields in the order in which they are written. The same field
// reads, writes and checks, so that the three cannot drift apart.
type form[T any] struct {
	fields []field[T]
	index  map[string]int
	finish func(r *reader, at *place, n *yaml.Node, into *T) // after all fields are read, or nil
}

// field is one key of a form.
type field[T any] struct {
	key   string
	read  func(r *reader, at *place, n *yaml.Node, into *T)
	write func(w *writer, from *T) *value // nil where the value is the default
	check func(c *checker, at *place, from *T)
}

func newForm[T any](fields ...field[T]) *form[T] {
	f := &form[T]{fields: fields, index: make(map[string]int, len(fields))}
	for i, one := range fields {
		if _, double := f.index[one.key]; double {
			panic("planfile: field " + one.key + " stands twice in a form")
		}
		f.index[one.key] = i
	}
	return f
}

// keys lists the keys of the form in order.
func (f *form[T]) keys() []string {
	keys := make([]string, len(f.fields))
	for i, one := range f.fields {
		keys[i] = one.key
	}
	return keys
}

// read fills a struct from a mapping node.
func (f *form[T]) read(r *reader, at *place, n *yaml.Node, into *T) {
	if n.Kind != yaml.MappingNode {
		r.wrongType(at, n, "mapping")
		return
	}
	seen := make(map[string]bool, len(f.fields))
	for i := 0; i+1 < len(n.Content); i += 2 {
		key, v := n.Content[i], n.Content[i+1]
		which, known := f.index[key.Value]
		switch {
		case key.Kind != yaml.ScalarNode:
			r.report(key, problem("planfile.key_not_text", at))
		case !known:
			r.unknownKey(at, key, f.keys())
		case seen[key.Value]:
			r.report(key, problem("planfile.duplicate_key", at.in(key.Value), "key", key.Value))
		default:
			seen[key.Value] = true
			f.fields[which].read(r, at.in(key.Value), v, into)
		}
	}
	if f.finish != nil {
		f.finish(r, at, n, into)
	}
}

// write returns the record of a struct; it has no entries where all is default.
func (f *form[T]) write(w *writer, from *T) *value {
	v := &value{kind: recordKind, entries: make([]entry, 0, 8)}
	for i := range f.fields {
		if one := f.fields[i].write(w, from); one != nil {
			v.entries = append(v.entries, entry{f.fields[i].key, one})
		}
	}
	return v
}

// check reports what is wrong with a struct.
func (f *form[T]) check(c *checker, at *place, from *T) {
	for i := range f.fields {
		if f.fields[i].check != nil {
			f.fields[i].check(c, at, from)
		}
	}
}

// required adds to a field that its value may not be left out.
func required[T any](f field[T]) field[T] {
	inner := f.check
	write := f.write
	f.check = func(c *checker, at *place, from *T) {
		if write(c.writer, from) == nil {
			c.report(problem("planfile.missing", at.in(f.key), "key", f.key))
			return
		}
		if inner != nil {
			inner(c, at, from)
		}
	}
	return f
}

// writer carries what the written form of a value depends on.
type writer struct {
	system quantity.System
}

// reader collects what is wrong while nodes are read.
type reader struct {
	problems *Problems
	warnings *Problems
	lenient  bool                // of a newer version: unknown keys are passed over
	failed   map[string]struct{} // paths that could not be read
}

func (r *reader) report(n *yaml.Node, p Problem) {
	p.Line, p.Column = n.Line, n.Column
	if p.Code != "planfile.duplicate_id" { // the first one was read all the same
		r.failed[pathKey(p.Where)] = struct{}{}
	}
	r.problems.add(p)
}

func (r *reader) wrongType(at *place, n *yaml.Node, want string) {
	if n.Kind == yaml.ScalarNode && n.Tag == "!!null" {
		r.report(n, problem("planfile.empty", at))
		return
	}
	r.report(n, problem("planfile.wrong_type."+want, at, "found", kindWord(n)))
}

func (r *reader) unknownKey(at *place, key *yaml.Node, known []string) {
	if len(r.problems.List) >= MaxProblems {
		r.problems.More++
		return
	}
	var p Problem
	if near := nearest(key.Value, known); near != "" {
		p = problem("planfile.unknown_key_near", at.in(key.Value), "key", key.Value, "nearest", near)
	} else {
		p = problem("planfile.unknown_key", at.in(key.Value), "key", key.Value)
	}
	if r.lenient {
		p.Line, p.Column = key.Line, key.Column
		r.warnings.add(p)
		return
	}
	r.report(key, p)
}

// scalar returns the text of a scalar node that is not empty.
func (r *reader) scalar(at *place, n *yaml.Node, want string) (string, bool) {
	if n.Kind != yaml.ScalarNode || n.Tag == "!!null" {
		r.wrongType(at, n, want)
		return "", false
	}
	return n.Value, true
}

// kindWord names what a node is, in YAML's words.
func kindWord(n *yaml.Node) string {
	switch n.Kind {
	case yaml.MappingNode:
		return "mapping"
	case yaml.SequenceNode:
		return "list"
	}
	return n.Value
}
