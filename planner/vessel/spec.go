package vessel

import "fourturn/planner/quantity"

// Kind is the shape of a pot, by the word that plan files use.
type Kind string

// The shapes, with the dimensions that each needs.
const (
	Round            Kind = "round"             // tapered: TopDiameter, BottomDiameter, Height
	Cylinder         Kind = "cylinder"          // straight: TopDiameter, Height
	Bowl             Kind = "bowl"              // cap of a sphere: TopDiameter, Height
	HemisphereBasket Kind = "hemisphere_basket" // half a sphere, hanging: TopDiameter
	ConeBasket       Kind = "cone_basket"       // cone, hanging: TopDiameter, Height
	Square           Kind = "square"            // tapered: TopWidth, BottomWidth, Height
	Trough           Kind = "trough"            // rectangle, tapered both ways: TopLength, TopWidth, BottomLength, BottomWidth, Height
	OvalTrough       Kind = "oval_trough"       // ellipse, tapered both ways: as Trough
	HalfBarrel       Kind = "half_barrel"       // bulged: TopDiameter, BottomDiameter, Height; MiddleDiameter if measured
	WallBasket       Kind = "wall_basket"       // half-round: TopLength along the wall, TopWidth from it, Height; with BottomLength and BottomWidth tapered, without rounded
	Turned           Kind = "turned"            // an urn or any turned shape: Rings
	Pockets          Kind = "pockets"           // equal cells: Cells, Cell and the dimensions of one cell
	Measured         Kind = "measured"          // measured with water up to the fill line: Water; opening and Height if known
)

// Kinds lists every shape, in the order in which they are offered.
var Kinds = [...]Kind{
	Round, Cylinder, Square, Trough, OvalTrough, Bowl, HalfBarrel, HemisphereBasket,
	ConeBasket, WallBasket, Turned, Pockets, Measured,
}

// Surface says which surfaces the dimensions of a Spec lie on.
type Surface string

// The surfaces. The empty Surface means [Inside].
const (
	Inside  Surface = "inside"
	Outside Surface = "outside"
)

// Ring is the diameter of a turned shape at a height.
type Ring struct {
	Height   quantity.Length // above the bottom of the surface that was measured
	Diameter quantity.Length
}

// Spec is a pot as a person describes it. Dimensions that its kind does not use
// are kept and not looked at, so that nothing is lost by trying another kind. A
// length of 0 means "not given".
//
// A Spec is a plain value. Whoever shares its Rings, Rim or Liner with another
// Spec must not change them.
type Spec struct {
	Kind       Kind
	MeasuredOn Surface // of all dimensions; empty means Inside

	TopDiameter    quantity.Length // across the opening at the brim
	MiddleDiameter quantity.Length // half barrel: across at half the height; 0 means a barrel cut through at its widest
	BottomDiameter quantity.Length
	TopLength      quantity.Length // at the brim
	TopWidth       quantity.Length
	BottomLength   quantity.Length
	BottomWidth    quantity.Length
	Height         quantity.Length // from the bottom to the brim
	Rings          []Ring          // turned shapes, from the bottom up; the first at height 0

	Cells int             // pockets: how many
	Cell  Kind            // pockets: the shape of each
	Water quantity.Volume // measured: what the pot holds up to the fill line

	Wall     quantity.Length // thickness, measured level
	Base     quantity.Length // thickness of the bottom; 0 means as the wall
	Material Material

	Rim            *quantity.Length // from the fill line to the brim; nil means [DefaultRim]
	FalseBottom    quantity.Length  // height of a false bottom above the inside bottom
	Reservoir      bool             // whether the space under the false bottom holds water
	ReservoirWater quantity.Volume  // how much; 0 means all of the space
	DrainageLayer  quantity.Length  // thickness of a layer of gravel or the like, above the false bottom
	Liner          *Spec            // the pot that holds the mix, standing in this one
	NoHoles        bool             // true where water cannot drain from the bottom
}

// inside reports whether the dimensions are those of the hollow.
func (s *Spec) inside() bool { return s.MeasuredOn != Outside }

// base returns the thickness of the bottom.
func (s *Spec) base() quantity.Length {
	if s.Base > 0 {
		return s.Base
	}
	return s.Wall
}

// cell returns the kind whose dimensions the Spec gives.
func (s *Spec) cell() Kind {
	if s.Kind == Pockets {
		return s.Cell
	}
	return s.Kind
}

// cells returns how many hollows there are.
func (s *Spec) cells() int {
	if s.Kind == Pockets {
		return s.Cells
	}
	return 1
}
