package plants

import (
	"errors"
	"math"
	"slices"
	"strconv"
	"strings"

	"gopkg.in/yaml.v3"

	"fourturn/planner/quantity"
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

// lengthCodec reads a length with its unit, such as "25 cm".
var lengthCodec = codec[quantity.Length]{
	read: func(r *reader, n *yaml.Node) (quantity.Length, bool) {
		text, ok := r.text(n)
		if !ok {
			return 0, false
		}
		v, err := quantity.ParseLength(text, 0)
		if err != nil {
			r.measure(n, err)
			return 0, false
		}
		return v, true
	},
	write: func(l quantity.Length) *yaml.Node {
		if l == 0 {
			return nil
		}
		return scalar(decimal(l.Centimetres()) + " cm")
	},
}

// spanCodec reads a range of lengths, such as "15-30 cm"; one length is both ends.
var spanCodec = codec[Span]{
	read: func(r *reader, n *yaml.Node) (Span, bool) {
		text, ok := r.text(n)
		if !ok {
			return Span{}, false
		}
		low, high, ranged := strings.Cut(text, "-")
		if ranged {
			low += " " + strings.TrimLeft(strings.TrimSpace(high), "0123456789., ")
		} else {
			high = low
		}
		from, err := quantity.ParseLength(strings.TrimSpace(low), 0)
		if err != nil {
			r.measure(n, err)
			return Span{}, false
		}
		to, err := quantity.ParseLength(strings.TrimSpace(high), 0)
		if err != nil {
			r.measure(n, err)
			return Span{}, false
		}
		return Span{from, to}, true
	},
	write: func(s Span) *yaml.Node {
		switch {
		case s == Span{}:
			return nil
		case s.Low == s.High:
			return lengthCodec.write(s.Low)
		}
		return scalar(decimal(s.Low.Centimetres()) + "-" + decimal(s.High.Centimetres()) + " cm")
	},
}

// temperatureCodec reads a temperature with its unit, such as "-2.2 C" or "28 F".
var temperatureCodec = codec[quantity.Temperature]{
	read: func(r *reader, n *yaml.Node) (quantity.Temperature, bool) {
		text, ok := r.text(n)
		if !ok {
			return 0, false
		}
		v, err := quantity.ParseTemperature(text, quantity.Metric)
		if err == nil && !strings.ContainsAny(text, "CcFf") {
			err = &quantity.ParseError{Kind: quantity.KindTemperature, Fault: quantity.FaultNoUnit, Text: text}
		}
		if err != nil {
			r.measure(n, err)
			return 0, false
		}
		return v, true
	},
	write: func(t quantity.Temperature) *yaml.Node { return scalar(decimal(float64(t)) + " C") },
}

// volumeCodec reads a volume with its unit, such as "0.45 L".
var volumeCodec = codec[quantity.Volume]{
	read: func(r *reader, n *yaml.Node) (quantity.Volume, bool) {
		text, ok := r.text(n)
		if !ok {
			return 0, false
		}
		v, err := quantity.ParseVolume(text, 0)
		if err != nil {
			r.measure(n, err)
			return 0, false
		}
		return v, true
	},
	write: func(v quantity.Volume) *yaml.Node { return scalar(decimal(v.Litres()) + " L") },
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

// measure notes why a measure cannot be read.
func (r *reader) measure(n *yaml.Node, err error) {
	var parse *quantity.ParseError
	if errors.As(err, &parse) {
		r.fault(n, "measure_"+string(parse.Fault), word("text", parse.Text), word("unit", parse.Unit))
		return
	}
	r.fault(n, "measure_not_a_number", word("text", n.Value), word("unit", ""))
}

// decimal writes a number to six decimals without trailing zeros: finer than any
// value in a book, coarser than the rounding of a change of units.
func decimal(x float64) string {
	rounded := math.Round(x*1e6) / 1e6
	if rounded == 0 {
		rounded = 0 // no minus sign on a zero
	}
	return strconv.FormatFloat(rounded, 'f', -1, 64)
}
