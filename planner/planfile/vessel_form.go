package planfile

import (
	"gopkg.in/yaml.v3"

	"fourturn/planner"
	"fourturn/planner/quantity"
	"fourturn/planner/vessel"
)

// The keys of a pot's shape are those of [vessel.Field], so that the faults that
// the vessel chapter finds name places in the file. Only what can be said of one
// number alone is checked here; whether the numbers make a pot is the chapter's
// business.

var ringForm = newForm(
	stated("height", lengthMeasure, 0, vessel.MaxHeight, func(r *vessel.Ring) *quantity.Length { return &r.Height }),
	number("diameter", lengthMeasure, vessel.MinAcross, vessel.MaxAcross, func(r *vessel.Ring) *quantity.Length { return &r.Diameter }),
)

// linerForm is the form of a liner, which has no liner of its own.
var linerForm = newForm(append(
	[]field[vessel.Spec]{required(vesselKind())},
	specFields()...)...)

// vesselFields are the fields of a pot that describe its shape.
func vesselFields() []field[planner.Pot] {
	fields := append([]field[vessel.Spec]{vesselKind()}, specFields()...)
	fields = append(fields, liner())
	lifted := make([]field[planner.Pot], len(fields))
	for i, f := range fields {
		lifted[i] = lift(f, func(p *planner.Pot) *vessel.Spec { return &p.Vessel })
	}
	return lifted
}

func vesselKind() field[vessel.Spec] {
	return word("kind", func(s *vessel.Spec) *vessel.Kind { return &s.Kind }, vessel.Kinds[:]...)
}

// specFields are the fields of a Spec but for its kind and liner.
func specFields() []field[vessel.Spec] {
	type spec = vessel.Spec
	across := func(key vessel.Field, get func(*spec) *quantity.Length) field[spec] {
		return number(string(key), lengthMeasure, vessel.MinAcross, vessel.MaxAcross, get)
	}
	along := func(key vessel.Field, get func(*spec) *quantity.Length) field[spec] {
		return number(string(key), lengthMeasure, vessel.MinAcross, vessel.MaxLength, get)
	}
	wall := func(key vessel.Field, get func(*spec) *quantity.Length) field[spec] {
		return number(string(key), lengthMeasure, 0, vessel.MaxWall, get)
	}
	level := func(key vessel.Field, get func(*spec) *quantity.Length) field[spec] {
		return number(string(key), lengthMeasure, 0, vessel.MaxHeight, get)
	}
	return []field[spec]{
		word("measured_on", func(s *spec) *vessel.Surface { return &s.MeasuredOn }, vessel.Inside, vessel.Outside),
		across(vessel.FieldTopDiameter, func(s *spec) *quantity.Length { return &s.TopDiameter }),
		across(vessel.FieldMiddleDiameter, func(s *spec) *quantity.Length { return &s.MiddleDiameter }),
		across(vessel.FieldBottomDiameter, func(s *spec) *quantity.Length { return &s.BottomDiameter }),
		along(vessel.FieldTopLength, func(s *spec) *quantity.Length { return &s.TopLength }),
		across(vessel.FieldTopWidth, func(s *spec) *quantity.Length { return &s.TopWidth }),
		along(vessel.FieldBottomLength, func(s *spec) *quantity.Length { return &s.BottomLength }),
		across(vessel.FieldBottomWidth, func(s *spec) *quantity.Length { return &s.BottomWidth }),
		number(string(vessel.FieldHeight), lengthMeasure, vessel.MinHeight, vessel.MaxHeight, func(s *spec) *quantity.Length { return &s.Height }),
		whollyMerged(list("rings", ringForm, func(*vessel.Ring) string { return "" }, func(s *spec) *[]vessel.Ring { return &s.Rings })),
		whole("cells", countMeasure, 1, vessel.MaxCells, func(s *spec) *int { return &s.Cells }),
		word("cell", func(s *spec) *vessel.Kind { return &s.Cell }, vessel.Kinds[:]...),
		number("water", volumeMeasure, vessel.MinWater, vessel.MaxWater, func(s *spec) *quantity.Volume { return &s.Water }),
		wall(vessel.FieldWall, func(s *spec) *quantity.Length { return &s.Wall }),
		wall(vessel.FieldBase, func(s *spec) *quantity.Length { return &s.Base }),
		word("material", func(s *spec) *vessel.Material { return &s.Material }, vessel.Materials[:]...),
		optional("rim", lengthMeasure, 0, vessel.MaxHeight, func(s *spec) **quantity.Length { return &s.Rim }),
		level(vessel.FieldFalseBottom, func(s *spec) *quantity.Length { return &s.FalseBottom }),
		flag("reservoir", func(s *spec) *bool { return &s.Reservoir }),
		number("reservoir_water", volumeMeasure, 0, vessel.MaxWater, func(s *spec) *quantity.Volume { return &s.ReservoirWater }),
		level(vessel.FieldDrainageLayer, func(s *spec) *quantity.Length { return &s.DrainageLayer }),
		flag("no_holes", func(s *spec) *bool { return &s.NoHoles }),
	}
}

const linerKey = "liner"

// liner is the field of the pot that stands in this one and holds the mix.
func liner() field[vessel.Spec] {
	return field[vessel.Spec]{
		key: linerKey,
		read: func(r *reader, at *place, n *yaml.Node, into *vessel.Spec) {
			if n.Kind == yaml.ScalarNode && n.Tag == "!!null" {
				return
			}
			into.Liner = &vessel.Spec{}
			linerForm.read(r, at, n, into.Liner)
		},
		write: func(w *writer, from *vessel.Spec) *value {
			if from.Liner == nil {
				return nil
			}
			v := linerForm.write(w, from.Liner)
			v.thing = true
			return v
		},
		check: func(c *checker, at *place, from *vessel.Spec) {
			if from.Liner == nil {
				return
			}
			at = at.in(linerKey)
			linerForm.check(c, at, from.Liner)
			if from.Liner.Liner != nil {
				c.report(problem("planfile.unknown_key", at.in(linerKey), "key", linerKey))
			}
		},
	}
}

// lift makes a field of a struct out of one of a part of it, so that the part's
// keys stand among the struct's own.
func lift[T, S any](f field[S], get func(*T) *S) field[T] {
	lifted := field[T]{
		key:   f.key,
		read:  func(r *reader, at *place, n *yaml.Node, into *T) { f.read(r, at, n, get(into)) },
		write: func(w *writer, from *T) *value { return f.write(w, get(from)) },
	}
	if f.check != nil {
		lifted.check = func(c *checker, at *place, from *T) { f.check(c, at, get(from)) }
	}
	return lifted
}

// stated is a field of a measure that is written even where it is zero.
func stated[T any, N ~float64](key string, m *measure, lowest, highest N, get func(*T) *N) field[T] {
	f := number(key, m, lowest, highest, get)
	f.write = func(w *writer, from *T) *value {
		x := *get(from)
		return &value{measure: m, number: float64(x), system: w.system, mayLack: x == 0}
	}
	return f
}

// whollyMerged makes a list one value to a merge: its items have no names by
// which two versions of it could be brought together.
func whollyMerged[T any](f field[T]) field[T] {
	write := f.write
	f.write = func(w *writer, from *T) *value {
		v := write(w, from)
		if v != nil {
			v.unit = true
		}
		return v
	}
	return f
}
