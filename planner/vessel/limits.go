package vessel

import "fourturn/planner/quantity"

// Limits of the dimensions, by judgement: wide enough for a thimble of a cell and
// for a street planter, narrow enough to catch a slip of the unit.
const (
	MinAcross      = 1 * quantity.Centimetre
	MaxAcross      = 5 * quantity.Metre // diameters and widths
	MaxLength      = 20 * quantity.Metre
	MinHeight      = 1 * quantity.Centimetre
	MaxHeight      = 3 * quantity.Metre
	MaxWall        = 30 * quantity.Centimetre
	MaxRings       = 200
	MaxCells       = 10_000
	MinWater       = 10 * quantity.Millilitre
	MaxWater       = 100 * quantity.CubicMetre
	leastOpenDepth = 0.005 // m of mix that a pot must at least have room for
)

// Field names a dimension by the key that plan files use.
type Field string

// The fields of a Spec that can be at fault.
const (
	FieldKind           Field = "kind"
	FieldMeasuredOn     Field = "measured_on"
	FieldTopDiameter    Field = "top_diameter"
	FieldMiddleDiameter Field = "middle_diameter"
	FieldBottomDiameter Field = "bottom_diameter"
	FieldTopLength      Field = "top_length"
	FieldTopWidth       Field = "top_width"
	FieldBottomLength   Field = "bottom_length"
	FieldBottomWidth    Field = "bottom_width"
	FieldHeight         Field = "height"
	FieldRings          Field = "rings"
	FieldRingHeight     Field = "rings.height"   // with [Fault].Index
	FieldRingDiameter   Field = "rings.diameter" // with [Fault].Index
	FieldCells          Field = "cells"
	FieldCell           Field = "cell"
	FieldWater          Field = "water"
	FieldWall           Field = "wall"
	FieldBase           Field = "base"
	FieldMaterial       Field = "material"
	FieldRim            Field = "rim"
	FieldFalseBottom    Field = "false_bottom"
	FieldReservoirWater Field = "reservoir_water"
	FieldDrainageLayer  Field = "drainage_layer"
	FieldLiner          Field = "liner"
)

// Dimension is one measure that a kind of pot is described by.
type Dimension struct {
	Field    Field
	Required bool
	Lowest   quantity.Length
	Highest  quantity.Length
	at       func(*Spec) *quantity.Length
}

// Of returns the dimension of a Spec.
func (d Dimension) Of(s Spec) quantity.Length { return *d.at(&s) }

// Set sets the dimension in a Spec.
func (d Dimension) Set(s *Spec, l quantity.Length) { *d.at(s) = l }

var (
	topDiameter    = Dimension{FieldTopDiameter, true, MinAcross, MaxAcross, func(s *Spec) *quantity.Length { return &s.TopDiameter }}
	middleDiameter = Dimension{FieldMiddleDiameter, false, MinAcross, MaxAcross, func(s *Spec) *quantity.Length { return &s.MiddleDiameter }}
	bottomDiameter = Dimension{FieldBottomDiameter, true, MinAcross, MaxAcross, func(s *Spec) *quantity.Length { return &s.BottomDiameter }}
	topLength      = Dimension{FieldTopLength, true, MinAcross, MaxLength, func(s *Spec) *quantity.Length { return &s.TopLength }}
	topWidth       = Dimension{FieldTopWidth, true, MinAcross, MaxAcross, func(s *Spec) *quantity.Length { return &s.TopWidth }}
	bottomLength   = Dimension{FieldBottomLength, true, MinAcross, MaxLength, func(s *Spec) *quantity.Length { return &s.BottomLength }}
	bottomWidth    = Dimension{FieldBottomWidth, true, MinAcross, MaxAcross, func(s *Spec) *quantity.Length { return &s.BottomWidth }}
	height         = Dimension{FieldHeight, true, MinHeight, MaxHeight, func(s *Spec) *quantity.Length { return &s.Height }}

	dimensionsOf = map[Kind][]Dimension{
		Round:            {topDiameter, bottomDiameter, height},
		Cylinder:         {topDiameter, height},
		Bowl:             {topDiameter, height},
		HemisphereBasket: {topDiameter},
		ConeBasket:       {topDiameter, height},
		Square:           {topWidth, bottomWidth, height},
		Trough:           {topLength, topWidth, bottomLength, bottomWidth, height},
		OvalTrough:       {topLength, topWidth, bottomLength, bottomWidth, height},
		HalfBarrel:       {topDiameter, middleDiameter, bottomDiameter, height},
		WallBasket:       {topLength, topWidth, optional(bottomLength), optional(bottomWidth), height},
		Measured:         {optional(topDiameter), optional(topLength), optional(topWidth), optional(height)},
	}
)

func optional(d Dimension) Dimension {
	d.Required = false
	return d
}

// Dimensions returns the dimensions of a kind in the order in which a person
// measures them; of one cell for [Pockets], and none for [Turned] or a kind that
// is not known.
func Dimensions(kind, cell Kind) []Dimension {
	if kind == Pockets {
		kind = cell
	}
	return append([]Dimension(nil), dimensionsOf[kind]...)
}

// isCell reports whether a kind can be one cell of a cluster.
func isCell(k Kind) bool {
	_, known := dimensionsOf[k]
	return known && k != Measured
}
