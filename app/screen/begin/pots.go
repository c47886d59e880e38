package begin

import (
	"strconv"
	"strings"

	"fourturn/app/words"
	"fourturn/planner/quantity"
	"fourturn/planner/vessel"
)

// shapes are those that may be measured here; the others are reached from these in
// the room of pots.
var shapes = [...]vessel.Kind{vessel.Round, vessel.Square, vessel.Trough, vessel.Bowl}

// mostPots is how many pots of a line there may be.
const mostPots = 500

// sizeChoice is what is about to be added.
type sizeChoice struct {
	option int // index into shapes, or past them into the nominal sizes
	own    vessel.Spec
	count  int
}

// line is some pots of one size.
type line struct {
	Spec  vessel.Spec
	Count int
	named string // key of a size of the trade, or ""
}

// usualNominal is the size to begin with.
const usualNominal = "vessel.nominal.patio_16"

func usualSize() sizeChoice {
	c := sizeChoice{count: 3}
	for i, n := range vessel.Nominals() {
		if n.Key == usualNominal {
			c.option = len(shapes) + i
		}
	}
	return c
}

// Sizes returns the shapes to be measured and the sizes of the trade, and which is
// chosen.
func (s *Screen) Sizes() (options []string, chosen int) {
	for _, kind := range shapes {
		options = append(options, s.words.T("begin.own_size", words.A{"shape": s.words.T("vessel.kind." + string(kind))}))
	}
	for _, n := range vessel.Nominals() {
		options = append(options, s.words.T(n.Key))
	}
	return options, s.size.option
}

// ChooseSize takes a shape or a size.
func (s *Screen) ChooseSize(i int) {
	s.size.option = i
	if i < len(shapes) {
		s.size.own.Kind = shapes[i]
	}
}

// Field is one measure of a shape.
type Field struct{ Label, Help, Value string }

// Fields returns the measures that the chosen shape asks for; a size of the trade
// asks for none.
func (s *Screen) Fields() (fields []Field) {
	for _, d := range s.dimensions() {
		f := Field{Label: words.Capital(s.words.T("vessel.field." + string(d.Field))), Help: s.words.T("begin.help_length")}
		if l := d.Of(s.size.own); l > 0 {
			f.Value = s.words.Length(l, s.units())
		}
		fields = append(fields, f)
	}
	return fields
}

func (s *Screen) dimensions() (list []vessel.Dimension) {
	if s.size.option >= len(shapes) {
		return nil
	}
	for _, d := range vessel.Dimensions(shapes[s.size.option], "") {
		if d.Required {
			list = append(list, d)
		}
	}
	return list
}

// SetField takes what was typed into a measure. A bare number is taken in the unit
// that people there write.
func (s *Screen) SetField(i int, typed string) error {
	d := s.dimensions()[i]
	unit := quantity.Centimetre
	if s.units() == quantity.USCustomary {
		unit = quantity.Inch
	}
	l, err := s.words.Reader().Length(typed, unit)
	switch {
	case err != nil:
		return s.words.Unread(err)
	case l < d.Lowest || l > d.Highest:
		return &words.Refusal{Text: s.words.T("begin.length_range", words.A{
			"lowest": s.words.Length(d.Lowest, s.units()), "highest": s.words.Length(d.Highest, s.units()),
		})}
	}
	d.Set(&s.size.own, l)
	return nil
}

// Count returns how many pots are about to be added.
func (s *Screen) Count() int { return s.size.count }

// SetCount takes how many pots of the size there are.
func (s *Screen) SetCount(typed string) error {
	n, err := strconv.Atoi(strings.TrimSpace(typed))
	if err != nil || n < 1 || n > mostPots {
		return &words.Refusal{Text: s.words.T("begin.count_range", words.A{"most": mostPots})}
	}
	s.size.count = n
	return nil
}

// AddPots puts the chosen size on the list.
func (s *Screen) AddPots() error {
	l, err := s.current()
	if err == nil {
		s.lines = append(s.lines, l)
	}
	return err
}

// current returns the chosen size as a line of its own.
func (s *Screen) current() (line, error) {
	if s.size.option >= len(shapes) {
		n := vessel.Nominals()[s.size.option-len(shapes)]
		return line{Spec: n.Spec, Count: s.size.count, named: n.Key}, nil
	}
	spec := s.size.own
	spec.Kind = shapes[s.size.option]
	if len(spec.Validate()) > 0 {
		return line{}, &words.Refusal{Text: s.words.T("begin.size_missing")}
	}
	return line{Spec: spec, Count: s.size.count}, nil
}

// Pots returns what is on the list; while nothing is, the chosen size alone.
func (s *Screen) Pots() []line {
	if len(s.lines) > 0 {
		return s.lines
	}
	if l, err := s.current(); err == nil {
		return []line{l}
	}
	return nil
}

// Lines returns what was put on the list, in words.
func (s *Screen) Lines() (lines []string) {
	for _, l := range s.lines {
		size := s.words.T("vessel.kind." + string(l.Spec.Kind))
		if l.named != "" {
			size = s.words.T(l.named)
		}
		volume := ""
		if v, err := vessel.New(l.Spec); err == nil {
			volume = s.words.Volume(v.FillVolume(), s.units())
		}
		lines = append(lines, s.words.T("begin.line", words.A{"count": l.Count, "size": size, "volume": volume}))
	}
	return lines
}

// RemovePots takes a line off the list.
func (s *Screen) RemovePots(i int) {
	if i >= 0 && i < len(s.lines) {
		s.lines = append(s.lines[:i:i], s.lines[i+1:]...)
	}
}
