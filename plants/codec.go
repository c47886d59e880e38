package plants

import (
	"math"
	"slices"
	"strconv"
	"strings"

	"gopkg.in/yaml.v3"
)

// codec reads one kind of value from a node and writes it back. write returns
// nil for a value that is not there.
type codec[T any] struct {
	read  func(r *reader, n *yaml.Node) (T, bool)
	write func(T) *yaml.Node
}

func scalar(text string) *yaml.Node {
	return &yaml.Node{Kind: yaml.ScalarNode, Value: text}
}

// quoted marks a text as a string, so that the YAML library quotes it where it
// would otherwise read back as a number or a truth.
func quoted(text string) *yaml.Node {
	return &yaml.Node{Kind: yaml.ScalarNode, Tag: "!!str", Value: text}
}

func flow(kind yaml.Kind, content ...*yaml.Node) *yaml.Node {
	return &yaml.Node{Kind: kind, Style: yaml.FlowStyle, Content: content}
}

// textCodec reads a text.
var textCodec = codec[string]{
	read: (*reader).text,
	write: func(s string) *yaml.Node {
		if s == "" {
			return nil
		}
		return quoted(s)
	},
}

// wordCodec reads one word of a vocabulary.
func wordCodec[T ~string](vocabulary []T) codec[T] {
	return codec[T]{
		read: func(r *reader, n *yaml.Node) (T, bool) {
			text, ok := r.text(n)
			if !ok {
				return "", false
			}
			if !slices.Contains(vocabulary, T(text)) {
				r.fault(n, "unknown_word", word("word", text), word("known", joined(vocabulary)))
				return "", false
			}
			return T(text), true
		},
		write: func(v T) *yaml.Node {
			if v == "" {
				return nil
			}
			return scalar(string(v))
		},
	}
}

func joined[T ~string](words []T) string {
	texts := make([]string, len(words))
	for i, w := range words {
		texts[i] = string(w)
	}
	return strings.Join(texts, ", ")
}

// listCodec reads a list in which nothing comes twice.
func listCodec[T ~string](item codec[T]) codec[[]T] {
	return codec[[]T]{
		read: func(r *reader, n *yaml.Node) ([]T, bool) {
			nodes, ok := r.list(n)
			if !ok {
				return nil, false
			}
			items := make([]T, 0, len(nodes))
			for _, node := range nodes {
				v, good := item.read(r, node)
				switch {
				case !good:
					ok = false
				case slices.Contains(items, v):
					r.fault(node, "item_twice", word("item", string(v)))
					ok = false
				default:
					items = append(items, v)
				}
			}
			return items, ok
		},
		write: func(items []T) *yaml.Node {
			if len(items) == 0 {
				return nil
			}
			nodes := make([]*yaml.Node, len(items))
			for i, v := range items {
				nodes[i] = item.write(v)
			}
			return flow(yaml.SequenceNode, nodes...)
		},
	}
}

// maybeCodec reads a value that may be missing.
func maybeCodec[T any](inner codec[T]) codec[Maybe[T]] {
	return codec[Maybe[T]]{
		read: func(r *reader, n *yaml.Node) (Maybe[T], bool) {
			v, ok := inner.read(r, n)
			return Some(v), ok
		},
		write: func(m Maybe[T]) *yaml.Node {
			v, ok := m.Get()
			if !ok {
				return nil
			}
			return inner.write(v)
		},
	}
}

// numberCodec reads a plain number.
var numberCodec = codec[float64]{
	read: func(r *reader, n *yaml.Node) (float64, bool) {
		text, ok := r.text(n)
		if !ok {
			return 0, false
		}
		x, err := strconv.ParseFloat(text, 64)
		if err != nil || math.IsNaN(x) || math.IsInf(x, 0) {
			r.fault(n, "not_a_number", word("text", text))
			return 0, false
		}
		return x, true
	},
	write: func(x float64) *yaml.Node { return scalar(decimal(x)) },
}

// countCodec reads a whole number.
var countCodec = codec[int]{
	read: func(r *reader, n *yaml.Node) (int, bool) {
		text, ok := r.text(n)
		if !ok {
			return 0, false
		}
		i, err := strconv.Atoi(text)
		if err != nil {
			r.fault(n, "not_a_whole_number", word("text", text))
			return 0, false
		}
		return i, true
	},
	write: func(i int) *yaml.Node { return scalar(strconv.Itoa(i)) },
}

// truthCodec reads yes or no.
var truthCodec = codec[bool]{
	read: func(r *reader, n *yaml.Node) (bool, bool) {
		text, ok := r.text(n)
		if !ok {
			return false, false
		}
		switch text {
		case "yes", "true":
			return true, true
		case "no", "false":
			return false, true
		}
		r.fault(n, "not_yes_or_no", word("text", text))
		return false, false
	},
	write: func(yes bool) *yaml.Node {
		if yes {
			return scalar("yes")
		}
		return nil
	},
}

// weeksCodec reads a range of weeks, such as "12-16", or one number.
var weeksCodec = codec[Weeks]{
	read: func(r *reader, n *yaml.Node) (Weeks, bool) {
		text, ok := r.text(n)
		if !ok {
			return Weeks{}, false
		}
		low, high, ranged := strings.Cut(text, "-")
		if !ranged {
			high = low
		}
		from, ok1 := numberCodec.read(r, &yaml.Node{Kind: yaml.ScalarNode, Value: strings.TrimSpace(low), Line: n.Line, Column: n.Column})
		if !ok1 {
			return Weeks{}, false
		}
		to, ok2 := numberCodec.read(r, &yaml.Node{Kind: yaml.ScalarNode, Value: strings.TrimSpace(high), Line: n.Line, Column: n.Column})
		return Weeks{from, to}, ok2
	},
	write: func(w Weeks) *yaml.Node {
		if w.Low == w.High {
			return scalar(decimal(w.Low))
		}
		return scalar(decimal(w.Low) + "-" + decimal(w.High))
	},
}
