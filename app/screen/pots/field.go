package pots

import (
	"errors"
	"strconv"
	"strings"

	"fourturn/app/words"
	"fourturn/planner"
	"fourturn/planner/finding"
	"fourturn/planner/quantity"
	"fourturn/planner/vessel"
	"fourturn/planner/working"
)

// FieldError refuses what was typed into a field; its text is for the person and
// short enough for the line under the field.
type FieldError struct{ Text string }

// Error returns the text.
func (e *FieldError) Error() string { return e.Text }

// Field is one measure of the chosen pot.
type Field struct {
	Field vessel.Field
	Label string
	Help  string
	Value string // written in the person's units; "" where it is not given
	Error string // what is wrong with the value that stands in the plan
}

// Fields returns the measures of the chosen pot in the order in which a person takes
// them: the dimensions of its shape, then wall and rim.
func (s *Screen) Fields() []Field {
	pot := s.Chosen()
	if pot == nil {
		return nil
	}
	spec := &pot.Vessel
	faults := spec.Validate()
	var fields []Field
	add := func(f vessel.Field, help, value string) {
		fields = append(fields, Field{
			Field: f, Label: words.Capital(s.words.T("vessel.field." + string(f))), Help: s.words.T(help), Value: value, Error: s.short(faults, f),
		})
	}
	if spec.Kind == vessel.Pockets {
		add(vessel.FieldCells, "pots.help_count", s.words.Count(spec.Cells))
	}
	for _, d := range vessel.Dimensions(spec.Kind, spec.Cell) {
		help := "pots.help_length"
		if !d.Required {
			help = "pots.help_optional"
		}
		add(d.Field, help, s.given(d.Of(*spec)))
	}
	switch spec.Kind {
	case vessel.Measured:
		value := ""
		if spec.Water > 0 {
			value = s.words.Water(spec.Water, s.session.Plan().Units)
		}
		add(vessel.FieldWater, "pots.help_volume", value)
	case vessel.Turned:
		add(vessel.FieldRings, "pots.help_profile", s.profile(spec.Rings))
	default:
	}
	add(vessel.FieldWall, "pots.help_optional", s.given(spec.Wall))
	add(vessel.FieldRim, "pots.help_rim", s.rim(pot))
	return fields
}

func (s *Screen) rim(pot *planner.Pot) string {
	if pot.Vessel.Rim != nil {
		return s.Length(*pot.Vessel.Rim)
	}
	if v := built(pot); v != nil {
		return s.Length(v.Rim())
	}
	return ""
}

// given writes a length; one that is not given is written as nothing.
func (s *Screen) given(l quantity.Length) string {
	if l == 0 {
		return ""
	}
	return s.Length(l)
}

// Length writes a length in the person's units.
func (s *Screen) Length(l quantity.Length) string {
	return s.words.Length(l, s.session.Plan().Units)
}

// short returns what is wrong with a field, in few words.
func (s *Screen) short(faults []vessel.Fault, field vessel.Field) string {
	for _, f := range faults {
		if f.InLiner || f.Field != field && !(field == vessel.FieldRings && strings.HasPrefix(string(f.Field), string(field)+".")) {
			continue
		}
		units := s.session.Plan().Units
		return s.words.T("pots.short."+strings.TrimPrefix(string(f.Code), "vessel.fault."), words.A{
			"lowest": s.words.Value(f.Lowest, units), "highest": s.words.Value(f.Highest, units),
		})
	}
	return ""
}

// SetField takes what was typed into a field. A bare number is taken in the person's
// unit. A measure that cannot be read or that the pot cannot have is refused with a
// [FieldError].
func (s *Screen) SetField(field vessel.Field, typed string) error {
	pot := s.Chosen()
	if pot == nil {
		return nil
	}
	spec := pot.Vessel
	if err := s.put(&spec, field, strings.TrimSpace(typed)); err != nil {
		return err
	}
	if broken := s.short(spec.Validate(), field); broken != "" {
		return &FieldError{Text: broken}
	}
	return s.setSpec("pots.edit_size", field, spec)
}

// mayBeEmpty are the fields that stand for something usual when they are not given.
func mayBeEmpty(spec *vessel.Spec, field vessel.Field) bool {
	for _, d := range vessel.Dimensions(spec.Kind, spec.Cell) {
		if d.Field == field {
			return !d.Required
		}
	}
	return field == vessel.FieldRim || field == vessel.FieldWall
}

func (s *Screen) put(spec *vessel.Spec, field vessel.Field, typed string) error {
	switch field {
	case vessel.FieldWater:
		v, err := s.words.Reader().Volume(typed, s.waterUnit())
		spec.Water = v
		return s.refusal(err)
	case vessel.FieldCells:
		n, err := strconv.Atoi(typed)
		if err != nil || n < 1 || n > vessel.MaxCells {
			return &FieldError{Text: s.words.T("pots.count_range", words.A{"most": vessel.MaxCells})}
		}
		spec.Cells = n
		return nil
	case vessel.FieldRings:
		rings, err := s.readProfile(typed)
		spec.Rings = rings
		return err
	default:
	}
	if typed == "" && mayBeEmpty(spec, field) {
		*lengthOf(spec, field) = 0
		if field == vessel.FieldRim {
			spec.Rim = nil
		}
		return nil
	}
	l, err := s.words.Reader().Length(typed, s.lengthUnit())
	if err != nil {
		return s.refusal(err)
	}
	*lengthOf(spec, field) = l
	return nil
}

func (s *Screen) customary() bool { return s.session.Plan().Units == quantity.USCustomary }

func (s *Screen) lengthUnit() quantity.Length {
	if s.customary() {
		return quantity.Inch
	}
	return quantity.Centimetre
}

func (s *Screen) waterUnit() quantity.Volume {
	if s.customary() {
		return quantity.Gallon
	}
	return quantity.Litre
}

// lengthOf returns where a Spec keeps the length of a field. It panics on a field
// that is no length.
func lengthOf(spec *vessel.Spec, field vessel.Field) *quantity.Length {
	switch field {
	case vessel.FieldTopDiameter:
		return &spec.TopDiameter
	case vessel.FieldMiddleDiameter:
		return &spec.MiddleDiameter
	case vessel.FieldBottomDiameter:
		return &spec.BottomDiameter
	case vessel.FieldTopLength:
		return &spec.TopLength
	case vessel.FieldTopWidth:
		return &spec.TopWidth
	case vessel.FieldBottomLength:
		return &spec.BottomLength
	case vessel.FieldBottomWidth:
		return &spec.BottomWidth
	case vessel.FieldHeight:
		return &spec.Height
	case vessel.FieldWall:
		return &spec.Wall
	case vessel.FieldRim:
		spec.Rim = new(quantity.Length)
		return spec.Rim
	default:
		panic("pots: " + string(field) + " is no length")
	}
}

// refusal turns an error of reading into one for the person; nil stays nil.
func (s *Screen) refusal(err error) error {
	var parse *quantity.ParseError
	if errors.As(err, &parse) {
		return &FieldError{Text: s.words.Typed(parse)}
	}
	return err
}

// setSpec is one edit of the chosen pot's shape.
func (s *Screen) setSpec(name string, field vessel.Field, spec vessel.Spec) error {
	pot := s.Chosen()
	args := []finding.Arg{{Name: "pot", Value: text(pot.Label())}, {Name: "field", Value: working.Text("vessel.field." + string(field))}}
	return s.do(name, args, func(p *planner.Pot) { p.Vessel = spec })
}

// do is one edit of the chosen pot.
func (s *Screen) do(name string, args []finding.Arg, edit func(*planner.Pot)) error {
	id := s.Chosen().ID
	err := s.session.Do(name, args, func(p planner.Plan) (planner.Plan, error) { return p.WithPot(id, edit) })
	return s.readable(err)
}

// readable turns an error of an edit into one for the person.
func (s *Screen) readable(err error) error {
	if err == nil {
		return nil
	}
	return &FieldError{Text: s.words.T("pots.refused", words.A{"cause": err.Error()})}
}
