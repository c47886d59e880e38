package pots

import (
	"strconv"
	"strings"

	"fourturn/app/words"
	"fourturn/planner"
	"fourturn/planner/finding"
	"fourturn/planner/quantity"
	"fourturn/planner/vessel"
	"fourturn/planner/working"
)

// Field is one thing about the chosen pot that can be typed or chosen.
type Field struct {
	Key   string // such as "height" or "liner.height"
	Label string
	Help  string
	Value string // written in the person's units; "" where it is not given
	Error string // what is wrong with the value that stands in the plan
	Lines bool   // a text of several lines

	// Options are those of a choice, with the number of the chosen one; nil for what is
	// typed.
	Options []string
	Chosen  int

	// Take takes what was typed, and Choose what was chosen. A measure that cannot be
	// read or that the pot cannot have is refused with a [words.Refusal].
	Take   func(typed string) error
	Choose func(i int) error
	// Try shows what would come of what is being typed, or nil; it changes nothing. It
	// is nil itself where nothing would show.
	Try func(typed string) *Trial
}

// Trial is the chosen pot as it is, or as it would be.
type Trial struct {
	Vessel *vessel.Vessel
	Text   string // its volumes
}

// Shape returns the chosen pot as it is, or nil where its size is faulty.
func (s *Screen) Shape() *Trial {
	if v := s.Vessel(); v != nil {
		return s.trial(v)
	}
	return nil
}

func (s *Screen) trial(v *vessel.Vessel) *Trial {
	return &Trial{Vessel: v, Text: s.words.T("pots.volumes", words.A{
		"fill": s.volume(v.FillVolume()), "brim": s.volume(v.BrimVolume()),
	})}
}

// part says whose Spec a field belongs to.
type part bool

const (
	ofPot   part = false
	ofLiner part = true
)

// of returns the Spec that a field belongs to, and nil where the pot has no liner.
func (p part) of(spec *vessel.Spec) *vessel.Spec {
	if p == ofLiner {
		return spec.Liner
	}
	return spec
}

func (p part) key(field vessel.Field) string {
	if p == ofLiner {
		return string(vessel.FieldLiner) + "." + string(field)
	}
	return string(field)
}

// measure is a field of a Spec that is typed.
func (s *Screen) measure(of part, field vessel.Field, help, value string) Field {
	return Field{
		Key: of.key(field), Label: words.Capital(s.words.T("vessel.field." + string(field))), Help: s.words.T(help), Value: value,
		Error: s.short(s.Chosen().Vessel.Validate(), of, field),
		Take:  func(typed string) error { return s.setField(of, field, typed) },
		Try:   func(typed string) *Trial { return s.try(of, field, typed) },
	}
}

// dimensions are the measures of a Spec in the order in which a person takes them.
func (s *Screen) dimensions(of part) []Field {
	spec := of.of(&s.Chosen().Vessel)
	var fields []Field
	if spec.Kind == vessel.Pockets {
		fields = append(fields, s.measure(of, vessel.FieldCells, "pots.help_count", s.words.Count(spec.Cells)))
	}
	for _, d := range vessel.Dimensions(spec.Kind, spec.Cell) {
		help := "pots.help_length"
		if !d.Required {
			help = "pots.help_optional"
		}
		fields = append(fields, s.measure(of, d.Field, help, s.given(d.Of(*spec))))
	}
	switch spec.Kind {
	case vessel.Measured:
		value := ""
		if spec.Water > 0 {
			value = s.words.Water(spec.Water, s.session.Plan().Units)
		}
		fields = append(fields, s.measure(of, vessel.FieldWater, "pots.help_volume", value))
	case vessel.Turned:
		fields = append(fields, s.measure(of, vessel.FieldRings, "pots.help_profile", s.profile(spec.Rings)))
	default:
	}
	return fields
}

// rim writes the watering rim of what holds the mix.
func (s *Screen) rim(spec *vessel.Spec, v *vessel.Vessel) string {
	if spec.Rim != nil {
		return s.Length(*spec.Rim)
	}
	if v != nil {
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
func (s *Screen) short(faults []vessel.Fault, of part, field vessel.Field) string {
	for _, f := range faults {
		if f.InLiner != bool(of) || f.Field != field && !(field == vessel.FieldRings && strings.HasPrefix(string(f.Field), string(field)+".")) {
			continue
		}
		units := s.session.Plan().Units
		return s.words.T("pots.short."+strings.TrimPrefix(string(f.Code), "vessel.fault."), words.A{
			"lowest": s.words.Value(f.Lowest, units), "highest": s.words.Value(f.Highest, units),
		})
	}
	return ""
}

// SetField takes what was typed into a measure of the chosen pot. A bare number is taken
// in the person's unit. A measure that cannot be read or that the pot cannot have is
// refused with a [words.Refusal].
func (s *Screen) SetField(field vessel.Field, typed string) error {
	return s.setField(ofPot, field, typed)
}

func (s *Screen) setField(of part, field vessel.Field, typed string) error {
	spec, err := s.typed(of, field, typed)
	if err != nil || spec == nil {
		return err
	}
	return s.setSpec("pots.edit_size", field, *spec)
}

// typed returns the Spec of the chosen pot with what was typed into a field, or nil
// where there is no such pot.
func (s *Screen) typed(of part, field vessel.Field, typed string) (*vessel.Spec, error) {
	pot := s.Chosen()
	if pot == nil || of.of(&pot.Vessel) == nil {
		return nil, nil
	}
	spec := copied(pot.Vessel)
	if err := s.put(of.of(&spec), field, strings.TrimSpace(typed)); err != nil {
		return nil, err
	}
	if broken := s.short(spec.Validate(), of, field); broken != "" {
		return nil, &words.Refusal{Text: broken}
	}
	return &spec, nil
}

// copied returns a Spec that shares no liner with the plan.
func copied(spec vessel.Spec) vessel.Spec {
	if spec.Liner != nil {
		liner := *spec.Liner
		spec.Liner = &liner
	}
	return spec
}

// try returns the pot with what is being typed, or nil where it cannot be drawn.
func (s *Screen) try(of part, field vessel.Field, typed string) *Trial {
	spec, err := s.typed(of, field, typed)
	if err != nil || spec == nil {
		return nil
	}
	v, err := vessel.New(*spec)
	if err != nil {
		return nil
	}
	return s.trial(&v)
}

// mayBeEmpty are the fields that stand for something usual when they are not given.
func mayBeEmpty(spec *vessel.Spec, field vessel.Field) bool {
	for _, d := range vessel.Dimensions(spec.Kind, spec.Cell) {
		if d.Field == field {
			return !d.Required
		}
	}
	switch field {
	case vessel.FieldRim, vessel.FieldWall, vessel.FieldBase, vessel.FieldFalseBottom, vessel.FieldDrainageLayer:
		return true
	}
	return false
}

func (s *Screen) put(spec *vessel.Spec, field vessel.Field, typed string) error {
	switch field {
	case vessel.FieldWater:
		v, err := s.words.Reader().Volume(typed, s.waterUnit())
		spec.Water = v
		return s.words.Unread(err)
	case vessel.FieldReservoirWater:
		if typed == "" {
			spec.ReservoirWater = 0
			return nil
		}
		v, err := s.words.Reader().Volume(typed, s.waterUnit())
		spec.ReservoirWater = v
		return s.words.Unread(err)
	case vessel.FieldCells:
		n, err := strconv.Atoi(typed)
		if err != nil || n < 1 || n > vessel.MaxCells {
			return &words.Refusal{Text: s.words.T("pots.count_range", words.A{"most": vessel.MaxCells})}
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
		return s.words.Unread(err)
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
	case vessel.FieldBase:
		return &spec.Base
	case vessel.FieldFalseBottom:
		return &spec.FalseBottom
	case vessel.FieldDrainageLayer:
		return &spec.DrainageLayer
	case vessel.FieldRim:
		spec.Rim = new(quantity.Length)
		return spec.Rim
	default:
		panic("pots: " + string(field) + " is no length")
	}
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
	return &words.Refusal{Text: s.words.T("pots.refused", words.A{"cause": err.Error()})}
}
