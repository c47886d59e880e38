package plants

import "gopkg.in/yaml.v3"

// part ties one key of a mapping to one value of a T: how it is read, written
// and copied. Tables of parts are the whole description of the file format.
type part[T any] struct {
	key      string
	required bool
	read     func(r *reader, n *yaml.Node, to *T) bool
	write    func(from *T) *yaml.Node // nil where there is nothing to write
	copy     func(to, from *T)
}

func partOf[T, V any](key string, at func(*T) *V, c codec[V]) part[T] {
	return part[T]{
		key: key,
		read: func(r *reader, n *yaml.Node, to *T) bool {
			v, ok := c.read(r, n)
			if ok {
				*at(to) = v
			}
			return ok
		},
		write: func(from *T) *yaml.Node { return c.write(*at(from)) },
		copy:  func(to, from *T) { *at(to) = *at(from) },
	}
}

// must marks a part that may not be left out.
func must[T any](p part[T]) part[T] {
	p.required = true
	return p
}

// structCodec reads a mapping of known parts.
func structCodec[T any](parts ...part[T]) codec[T] {
	return codec[T]{
		read: func(r *reader, n *yaml.Node) (T, bool) {
			var v T
			entries, ok := r.mapping(n)
			if !ok {
				return v, false
			}
			for _, e := range entries {
				p, known := partNamed(parts, e.key)
				if !known {
					r.unknownKey(e)
					ok = false
					continue
				}
				ok = p.read(r, e.value, &v) && ok
			}
			return v, requireParts(r, n, parts, entries) && ok
		},
		write: func(v T) *yaml.Node {
			n := flow(yaml.MappingNode)
			for _, p := range parts {
				if value := p.write(&v); value != nil {
					n.Content = append(n.Content, scalar(p.key), value)
				}
			}
			if len(n.Content) == 0 {
				return nil
			}
			return n
		},
	}
}

// sequenceCodec reads a list of mappings, written one to a line.
func sequenceCodec[T any](item codec[T]) codec[[]T] {
	return codec[[]T]{
		read: func(r *reader, n *yaml.Node) ([]T, bool) {
			if n.Kind != yaml.SequenceNode {
				r.fault(n, "not_a_list")
				return nil, false
			}
			nodes, ok := r.list(n)
			items := make([]T, 0, len(nodes))
			for _, node := range nodes {
				v, good := item.read(r, node)
				if !good {
					ok = false
					continue
				}
				items = append(items, v)
			}
			return items, ok
		},
		write: func(items []T) *yaml.Node {
			if len(items) == 0 {
				return nil
			}
			n := &yaml.Node{Kind: yaml.SequenceNode}
			for _, v := range items {
				n.Content = append(n.Content, item.write(v))
			}
			return n
		},
	}
}

func partNamed[T any](parts []part[T], key string) (part[T], bool) {
	for _, p := range parts {
		if p.key == key {
			return p, true
		}
	}
	return part[T]{}, false
}

func requireParts[T any](r *reader, n *yaml.Node, parts []part[T], entries []entry) bool {
	ok := true
	for _, p := range parts {
		if !p.required {
			continue
		}
		found := false
		for _, e := range entries {
			found = found || e.key == p.key
		}
		if !found {
			r.fault(n, "missing", word("key", p.key))
			ok = false
		}
	}
	return ok
}
