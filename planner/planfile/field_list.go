package planfile

import (
	"strings"

	"gopkg.in/yaml.v3"
)

// inner is a field that holds a mapping of its own; it is left out while all of
// it is default.
func inner[T, S any](key string, f *form[S], get func(*T) *S) field[T] {
	return field[T]{
		key: key,
		read: func(r *reader, at *place, n *yaml.Node, into *T) {
			if n.Kind == yaml.ScalarNode && n.Tag == "!!null" {
				return
			}
			f.read(r, at, n, get(into))
		},
		write: func(w *writer, from *T) *value {
			if v := f.write(w, get(from)); len(v.entries) > 0 {
				return v
			}
			return nil
		},
		check: func(c *checker, at *place, from *T) { f.check(c, at.in(key), get(from)) },
	}
}

// table is a field that holds many mappings under their ids, in the order of the
// list.
func table[T, S any](key string, f *form[S], id func(*S) *string, get func(*T) *[]S) field[T] {
	return field[T]{
		key: key,
		read: func(r *reader, at *place, n *yaml.Node, into *T) {
			if n.Kind == yaml.ScalarNode && n.Tag == "!!null" {
				return
			}
			if n.Kind != yaml.MappingNode {
				r.wrongType(at, n, "mapping")
				return
			}
			*get(into) = readTable(r, at, n, f, id)
		},
		write: func(w *writer, from *T) *value {
			list := *get(from)
			if len(list) == 0 {
				return nil
			}
			v := &value{kind: tableKind, entries: make([]entry, len(list))}
			for i := range list {
				v.entries[i] = entry{*id(&list[i]), f.write(w, &list[i])}
			}
			return v
		},
		check: func(c *checker, at *place, from *T) {
			list := *get(from)
			here := at.in(key)
			seen := make(map[string]bool, len(list))
			for i := range list {
				name := *id(&list[i])
				entryAt := here.in(name)
				c.id(entryAt, name)
				if seen[name] {
					c.report(problem("planfile.duplicate_id", entryAt, "id", name))
				}
				seen[name] = true
				f.check(c, entryAt, &list[i])
			}
		},
	}
}

func readTable[S any](r *reader, at *place, n *yaml.Node, f *form[S], id func(*S) *string) []S {
	list := make([]S, 0, len(n.Content)/2)
	seen := make(map[string]bool, len(n.Content)/2)
	for i := 0; i+1 < len(n.Content); i += 2 {
		key := n.Content[i]
		if key.Kind != yaml.ScalarNode {
			r.report(key, problem("planfile.key_not_text", at))
			continue
		}
		entryAt := at.in(key.Value)
		if seen[key.Value] {
			r.report(key, problem("planfile.duplicate_id", entryAt, "id", key.Value))
			continue
		}
		seen[key.Value] = true
		var one S
		*id(&one) = key.Value
		if v := n.Content[i+1]; v.Kind != yaml.ScalarNode || v.Tag != "!!null" {
			f.read(r, entryAt, v, &one)
		}
		list = append(list, one)
	}
	if len(list) == 0 {
		return nil
	}
	return list
}

// list is a field that holds mappings in a row, each on one line. name gives the
// word by which an item is known in paths; an empty one is replaced by its
// number.
func list[T, S any](key string, f *form[S], name func(*S) string, get func(*T) *[]S) field[T] {
	return field[T]{
		key: key,
		read: func(r *reader, at *place, n *yaml.Node, into *T) {
			content := r.items(at, n)
			if len(content) == 0 {
				return
			}
			items := make([]S, len(content))
			for i, item := range content {
				f.read(r, at.in(itemName(nodeItemKey(item), i)), item, &items[i])
			}
			*get(into) = items
		},
		write: func(w *writer, from *T) *value {
			items := *get(from)
			if len(items) == 0 {
				return nil
			}
			v := &value{kind: listKind, entries: make([]entry, len(items))}
			keys := itemKeys(len(items), func(i int) string { return name(&items[i]) })
			for i := range items {
				one := f.write(w, &items[i])
				one.flow = true
				v.entries[i] = entry{keys[i], one}
			}
			return v
		},
		check: func(c *checker, at *place, from *T) {
			items := *get(from)
			here := at.in(key)
			for i := range items {
				f.check(c, here.in(itemName(name(&items[i]), i)), &items[i])
			}
		},
	}
}

// items returns what a list holds. Nothing there is a list of nothing.
func (r *reader) items(at *place, n *yaml.Node) []*yaml.Node {
	switch {
	case n.Kind == yaml.ScalarNode && n.Tag == "!!null":
		return nil
	case n.Kind != yaml.SequenceNode:
		r.wrongType(at, n, "list")
		return nil
	}
	return n.Content
}

// texts adds the texts of a list.
func (r *reader) texts(at *place, n *yaml.Node, into *[]string) {
	for i, item := range r.items(at, n) {
		if s, ok := r.scalar(at.in(itemName(nodeItemKey(item), i)), item, "text"); ok {
			*into = append(*into, s)
		}
	}
}

// onOneLine writes a list on one line; nil is an empty one. name tells items apart.
func onOneLine(count int, name func(i int) string, item func(i int) *value) *value {
	if count == 0 {
		return nil
	}
	v := &value{kind: listKind, flow: true, entries: make([]entry, count)}
	for i, key := range itemKeys(count, name) {
		v.entries[i] = entry{key, item(i)}
	}
	return v
}

// keyedBy adds to a table that its keys are out of a few words.
func keyedBy[T any, E ~string](f field[T], words []E, keys func(*T) []E) field[T] {
	inner, all := f.check, asText(words)
	f.check = func(c *checker, at *place, from *T) {
		for _, key := range keys(from) {
			if p, bad := wordProblem(at.in(f.key).in(string(key)), string(key), all); bad {
				c.report(p)
				return
			}
		}
		inner(c, at, from)
	}
	return f
}

// names is a field that holds a list of ids on one line.
func names[T any](key string, kind reference, get func(*T) *[]string) field[T] {
	return field[T]{
		key:  key,
		read: func(r *reader, at *place, n *yaml.Node, into *T) { r.texts(at, n, get(into)) },
		write: func(_ *writer, from *T) *value {
			ids := *get(from)
			return onOneLine(len(ids), func(i int) string { return ids[i] }, func(i int) *value { return &value{text: ids[i], names: kind} })
		},
		check: func(c *checker, at *place, from *T) {
			here := at.in(key)
			seen := make(map[string]bool, len(*get(from)))
			for i, id := range *get(from) {
				itemAt := here.in(itemName(id, i))
				c.refers(itemAt, kind, id)
				if seen[id] {
					c.report(problem("planfile.duplicate_id", itemAt, "id", id))
				}
				seen[id] = true
			}
		},
	}
}

// refer is a field that holds the id of something else in the plan.
func refer[T any](key string, kind reference, get func(*T) *string) field[T] {
	f := text(key, MaxID, get)
	f.write = func(_ *writer, from *T) *value {
		if id := *get(from); id != "" {
			return &value{text: id, names: kind}
		}
		return nil
	}
	f.check = func(c *checker, at *place, from *T) {
		if id := *get(from); id != "" {
			c.refers(at.in(key), kind, id)
		}
	}
	return f
}

// itemName is how a path names a list item: by its own name, or by its number
// from 1.
func itemName(name string, i int) string {
	if name = strings.TrimSpace(name); name != "" {
		return name
	}
	return numbered(i)
}
