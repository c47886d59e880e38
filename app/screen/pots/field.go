package pots

import (
	"errors"

	"fourturn/app/words"
	"fourturn/planner"
	"fourturn/planner/finding"
	"fourturn/planner/quantity"
	"fourturn/planner/vessel"
	"fourturn/planner/working"
)

// FieldError refuses what was typed into a field; its text is for the person.
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
	var fields []Field
	for _, d := range vessel.Dimensions(spec.Kind, spec.Cell) {
		fields = append(fields, s.field(d.Field, d.Of(*spec), spec))
	}
	if spec.Kind == vessel.Measured {
		value := ""
		if spec.Water > 0 {
			value = s.volume(spec.Water)
		}
		fields = append(fields, Field{Field: vessel.FieldWater, Label: s.words.T("vessel.field.water"), Help: s.words.T("pots.help_volume"), Value: value, Error: s.fault(spec, vessel.FieldWater)})
	}
	fields = append(fields, s.field(vessel.FieldWall, spec.Wall, spec))
	rim := s.field(vessel.FieldRim, 0, spec)
	rim.Help = s.words.T("pots.help_rim")
	if spec.Rim != nil {
		rim.Value = s.Length(*spec.Rim)
	} else if v := built(pot); v != nil {
		rim.Value = s.Length(v.Rim())
	}
	return append(fields, rim)
}

func (s *Screen) field(f vessel.Field, l quantity.Length, spec *vessel.Spec) Field {
	value := ""
	if l != 0 {
		value = s.Length(l)
	}
	return Field{Field: f, Label: s.words.T("vessel.field." + string(f)), Help: s.words.T("pots.help_length"), Value: value, Error: s.fault(spec, f)}
}

// Length writes a length in the person's units.
func (s *Screen) Length(l quantity.Length) string {
	return s.words.Length(l, s.session.Plan().Units)
}

// fault returns what is wrong with a field of a Spec, in words.
func (s *Screen) fault(spec *vessel.Spec, field vessel.Field) string {
	for _, f := range spec.Validate() {
		if f.Field == field && !f.InLiner {
			return s.words.Finding(f.Finding(nil), s.session.Plan().Units)
		}
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
	if err := s.put(&spec, field, typed); err != nil {
		return err
	}
	if broken := s.fault(&spec, field); broken != "" && s.fault(&pot.Vessel, field) != broken {
		return &FieldError{Text: broken}
	}
	return s.setSpec("pots.edit_size", field, spec)
}

func (s *Screen) put(spec *vessel.Spec, field vessel.Field, typed string) error {
	units := s.session.Plan().Units
	if field == vessel.FieldWater {
		unit := quantity.Litre
		if units == quantity.USCustomary {
			unit = quantity.Gallon
		}
		v, err := quantity.ParseVolume(typed, unit)
		if err != nil {
			return s.refusal(err)
		}
		spec.Water = v
		return nil
	}
	unit := quantity.Centimetre
	if units == quantity.USCustomary {
		unit = quantity.Inch
	}
	if typed == "" && (field == vessel.FieldRim || field == vessel.FieldWall || field == vessel.FieldMiddleDiameter) {
		*lengthOf(spec, field) = 0
		if field == vessel.FieldRim {
			spec.Rim = nil
		}
		return nil
	}
	l, err := quantity.ParseLength(typed, unit)
	if err != nil {
		return s.refusal(err)
	}
	*lengthOf(spec, field) = l
	return nil
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

func (s *Screen) refusal(err error) error {
	var parse *quantity.ParseError
	if errors.As(err, &parse) {
		return &FieldError{Text: s.words.Refusal(parse)}
	}
	return err
}

// setSpec is one edit of the chosen pot's shape.
func (s *Screen) setSpec(name string, field vessel.Field, spec vessel.Spec) error {
	pot := s.Chosen()
	args := []finding.Arg{{Name: "pot", Value: text(nameOf(pot))}, {Name: "field", Value: working.Text("vessel.field." + string(field))}}
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
