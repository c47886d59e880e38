package mix

import (
	"math"
	"strconv"
	"strings"

	"fourturn/app/words"
	"fourturn/planner"
	"fourturn/planner/finding"
	"fourturn/planner/quantity"
	"fourturn/planner/working"
)

// Field is one thing that can be typed or chosen.
type Field struct {
	Key     string
	Label   string
	Help    string
	Value   string
	Options []string // of a choice; nil for what is typed
	Chosen  int
	Take    func(typed string) error
	Choose  func(i int) error
}

// Group is a fold of the page: how pots are filled, one product, one blend.
type Group struct {
	Key     string
	Title   string
	Summary string
	Fields  []Field
	Notes   []string
	Remove  func() error // nil where it cannot be taken out
}

// number is a field of a number; none typed is 0. Share numbers are typed per cent.
func (s *Screen) number(key, label, help string, x, least, most float64, per bool, set func(float64) error) Field {
	f := Field{Key: key, Label: s.words.T(label), Help: help}
	if x != 0 {
		f.Value = s.words.Number(x, 6)
		if per {
			f.Value = s.words.Percent(x)
		}
	}
	f.Take = func(typed string) error {
		typed = strings.TrimSpace(typed)
		if typed == "" {
			return set(0)
		}
		scale, a, b := 1.0, s.words.Number(least, 3), s.words.Number(most, 3)
		if per {
			typed, scale = strings.TrimSuffix(typed, "%"), 100
			a, b = s.words.Percent(least), s.words.Percent(most)
		}
		n, ok := s.words.Reader().Number(typed)
		n /= scale
		const slack = 1e-9
		if !ok || n < least-slack || n > most+slack {
			return &words.Refusal{Text: s.words.T("mix_buying.range", words.A{"lowest": a, "highest": b})}
		}
		return set(n)
	}
	return f
}

// whole is a field of a whole number; none typed is 0.
func (s *Screen) whole(key, label, help string, n, least, most int, set func(int) error) Field {
	f := s.number(key, label, help, 0, float64(least), float64(most), false, func(x float64) error {
		if x != math.Trunc(x) {
			return &words.Refusal{Text: s.words.T("mix_buying.range", words.A{"lowest": strconv.Itoa(least), "highest": strconv.Itoa(most)})}
		}
		return set(int(x))
	})
	if n > 0 {
		f.Value = strconv.Itoa(n)
	}
	return f
}

// volume is a field of a volume; none typed is 0.
func (s *Screen) volume(key, label, help string, v, least, most quantity.Volume, set func(quantity.Volume) error) Field {
	f := Field{Key: key, Label: s.words.T(label), Help: help}
	units := s.session.Plan().Units
	if v > 0 {
		f.Value = s.words.Volume(v, units)
	}
	f.Take = func(typed string) error {
		if strings.TrimSpace(typed) == "" {
			return set(0)
		}
		unit := quantity.Litre
		if units == quantity.USCustomary {
			unit = quantity.CubicFoot
		}
		got, err := s.words.Reader().Volume(typed, unit)
		if err != nil {
			return s.words.Unread(err)
		}
		if got < least || got > most {
			return &words.Refusal{Text: s.words.T("mix_buying.range", words.A{"lowest": s.words.Volume(least, units), "highest": s.words.Volume(most, units)})}
		}
		if s.words.Volume(got, units) == f.Value { // as it stood: keep all its digits
			return nil
		}
		return set(got)
	}
	return f
}

func (s *Screen) choice(key, label, help string, options []string, chosen int, choose func(int) error) Field {
	return Field{Key: key, Label: s.words.T(label), Help: help, Options: options, Chosen: chosen, Choose: func(i int) error {
		if i == chosen || i < 0 || i >= len(options) {
			return nil
		}
		return choose(i)
	}}
}

// do is one edit of the plan, about a thing of a name.
func (s *Screen) do(edit, about string, change func(planner.Plan) (planner.Plan, error)) error {
	err := s.session.Do(edit, []finding.Arg{{Name: "name", Value: working.Text(about)}}, change)
	if err != nil {
		return &words.Refusal{Text: s.words.T("mix_buying.refused", words.A{"cause": err.Error()})}
	}
	return nil
}
