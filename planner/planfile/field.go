package planfile

import (
	"math"
	"strings"
	"unicode/utf8"

	"gopkg.in/yaml.v3"

	"fourturn/planner/civil"
	"fourturn/planner/quantity"
)

// text is a field of free text of at most a number of characters.
func text[T any](key string, longest int, get func(*T) *string) field[T] {
	return field[T]{
		key: key,
		read: func(r *reader, at *place, n *yaml.Node, into *T) {
			if s, ok := r.scalar(at, n, "text"); ok {
				*get(into) = s
			}
		},
		write: func(_ *writer, from *T) *value {
			if s := *get(from); s != "" {
				return textValue(s)
			}
			return nil
		},
		check: func(c *checker, at *place, from *T) {
			c.text(at, key, *get(from), longest)
		},
	}
}

func asText[E ~string](words []E) []string {
	text := make([]string, len(words))
	for i, w := range words {
		text[i] = string(w)
	}
	return text
}

// word is a field that takes one of a few words.
func word[T any, E ~string](key string, get func(*T) *E, words ...E) field[T] {
	all := asText(words)
	return field[T]{
		key: key,
		read: func(r *reader, at *place, n *yaml.Node, into *T) {
			s, ok := r.scalar(at, n, "text")
			if !ok {
				return
			}
			if p, bad := wordProblem(at, s, all); bad && s != "" {
				r.report(n, p)
				return
			}
			*get(into) = E(s)
		},
		write: func(_ *writer, from *T) *value {
			if s := *get(from); s != "" {
				return &value{text: string(s), fixed: true}
			}
			return nil
		},
		check: func(c *checker, at *place, from *T) {
			if s := string(*get(from)); s != "" {
				if p, bad := wordProblem(at.in(key), s, all); bad {
					c.report(p)
				}
			}
		},
	}
}

func wordProblem(at *place, s string, all []string) (Problem, bool) {
	for _, w := range all {
		if w == s {
			return Problem{}, false
		}
	}
	if near := nearest(s, all); near != "" {
		return problem("planfile.unknown_word_near", at, "text", s, "nearest", near, "words", strings.Join(all, ", ")), true
	}
	return problem("planfile.unknown_word", at, "text", s, "words", strings.Join(all, ", ")), true
}

// number is a field of a measure for which zero means "not given". Values are
// from lowest to highest, both included.
func number[T any, N ~float64](key string, m *measure, lowest, highest N, get func(*T) *N) field[T] {
	return field[T]{
		key: key,
		read: func(r *reader, at *place, n *yaml.Node, into *T) {
			if x, ok := r.measure(at, n, m); ok {
				if x == 0 && lowest > 0 {
					r.report(n, rangeProblem(m, at, float64(lowest), float64(highest)))
					return
				}
				*get(into) = N(x)
			}
		},
		write: func(w *writer, from *T) *value {
			if x := *get(from); x != 0 {
				return &value{measure: m, number: float64(x), system: w.system}
			}
			return nil
		},
		check: func(c *checker, at *place, from *T) {
			if x := *get(from); x != 0 {
				c.within(m, at, key, float64(x), float64(lowest), float64(highest))
			}
		},
	}
}

// optional is a field of a measure in which zero is a value like any other.
func optional[T any, N ~float64](key string, m *measure, lowest, highest N, get func(*T) **N) field[T] {
	return field[T]{
		key: key,
		read: func(r *reader, at *place, n *yaml.Node, into *T) {
			if x, ok := r.measure(at, n, m); ok {
				v := N(x)
				*get(into) = &v
			}
		},
		write: func(w *writer, from *T) *value {
			if x := *get(from); x != nil {
				return &value{measure: m, number: float64(*x), system: w.system}
			}
			return nil
		},
		check: func(c *checker, at *place, from *T) {
			if x := *get(from); x != nil {
				c.within(m, at, key, float64(*x), float64(lowest), float64(highest))
			}
		},
	}
}

// whole is a field of a whole number for which zero means "not given".
func whole[T any](key string, m *measure, lowest, highest int, get func(*T) *int) field[T] {
	return field[T]{
		key: key,
		read: func(r *reader, at *place, n *yaml.Node, into *T) {
			x, ok := r.measure(at, n, m)
			switch {
			case !ok:
			case x < float64(lowest) || x > float64(highest):
				r.report(n, rangeProblem(m, at, float64(lowest), float64(highest)))
			case x != math.Trunc(x):
				r.report(n, problem("planfile.not_whole", at, "text", n.Value))
			default:
				*get(into) = int(x)
			}
		},
		write: func(w *writer, from *T) *value {
			if x := *get(from); x != 0 {
				return &value{measure: m, number: float64(x), system: w.system}
			}
			return nil
		},
		check: func(c *checker, at *place, from *T) {
			if x := *get(from); x != 0 {
				c.within(m, at, key, float64(x), float64(lowest), float64(highest))
			}
		},
	}
}

// measure reads a number with its unit.
func (r *reader) measure(at *place, n *yaml.Node, m *measure) (float64, bool) {
	s, ok := r.scalar(at, n, "text")
	if !ok {
		return 0, false
	}
	x, err := m.parse(s)
	if err != nil {
		r.report(n, measureProblem(m, at, s, err))
		return 0, false
	}
	return x + 0, true // + 0 turns a negative zero into zero
}

// flag is a field that is on or off.
func flag[T any](key string, get func(*T) *bool) field[T] {
	return field[T]{
		key: key,
		read: func(r *reader, at *place, n *yaml.Node, into *T) {
			if n.Kind != yaml.ScalarNode || n.Tag != "!!bool" {
				r.wrongType(at, n, "flag")
				return
			}
			*get(into) = strings.EqualFold(n.Value, "true")
		},
		write: func(_ *writer, from *T) *value {
			if *get(from) {
				return &value{text: "true", bare: true, fixed: true}
			}
			return nil
		},
	}
}

// date is a field of a day, YYYY-MM-DD.
func date[T any](key string, get func(*T) *civil.Date) field[T] {
	return field[T]{
		key: key,
		read: func(r *reader, at *place, n *yaml.Node, into *T) {
			s, ok := r.scalar(at, n, "text")
			if !ok {
				return
			}
			d, err := civil.Parse(s)
			if err != nil {
				r.report(n, problem("planfile.not_a_date", at, "text", s))
				return
			}
			*get(into) = d
		},
		write: func(_ *writer, from *T) *value {
			if d := *get(from); !d.IsZero() {
				return &value{text: d.String(), bare: true, date: d}
			}
			return nil
		},
		check: func(c *checker, at *place, from *T) {
			if d := *get(from); !d.IsZero() && !civil.Valid(d.Date()) {
				c.report(problem("planfile.not_a_date", at.in(key), "text", d.String()))
			}
		},
	}
}

// monthDay is a field of a day of every year, MM-DD.
func monthDay[T any](key string, get func(*T) *civil.MonthDay) field[T] {
	return field[T]{
		key: key,
		read: func(r *reader, at *place, n *yaml.Node, into *T) {
			s, ok := r.scalar(at, n, "text")
			if !ok {
				return
			}
			d, err := civil.ParseMonthDay(s)
			if err != nil {
				r.report(n, problem("planfile.not_a_month_day", at, "text", s))
				return
			}
			*get(into) = d
		},
		write: func(_ *writer, from *T) *value {
			if d := *get(from); !d.IsZero() {
				return &value{text: d.String(), bare: true, yearly: d}
			}
			return nil
		},
		check: func(c *checker, at *place, from *T) {
			if d := *get(from); !d.IsZero() {
				if back, err := civil.ParseMonthDay(d.String()); err != nil || back != d {
					c.report(problem("planfile.not_a_month_day", at.in(key), "text", d.String()))
				}
			}
		},
	}
}

const unitsKey = "units"

// units is the field of the system that the person reads.
func units[T any](get func(*T) *quantity.System) field[T] {
	all := []string{quantity.Metric.String(), quantity.USCustomary.String()}
	return field[T]{
		key: unitsKey,
		read: func(r *reader, at *place, n *yaml.Node, into *T) {
			s, ok := r.scalar(at, n, "text")
			if !ok {
				return
			}
			if p, bad := wordProblem(at, s, all); bad {
				r.report(n, p)
				return
			}
			*get(into) = quantity.Metric
			if s == quantity.USCustomary.String() {
				*get(into) = quantity.USCustomary
			}
		},
		write: func(_ *writer, from *T) *value {
			s := *get(from)
			return &value{text: s.String(), bare: true, mayLack: s == quantity.Metric, fixed: true}
		},
		check: func(c *checker, at *place, from *T) {
			if s := *get(from); s != quantity.Metric && s != quantity.USCustomary {
				c.report(problem("planfile.unknown_word", at.in(unitsKey), "text", "?", "words", strings.Join(all, ", ")))
			}
		},
	}
}

// longText reports whether s has more than longest characters.
func longText(s string, longest int) bool {
	return len(s) > longest && utf8.RuneCountInString(s) > longest
}
