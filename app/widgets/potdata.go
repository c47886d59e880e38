package widgets

import "fourturn/app/widgets/plantdraw"

// Metres is a point of a drawing in metres; y goes up.
type Metres struct{ X, Y float64 }

// PotSide is a pot seen from the side, cut open. Y is 0 at the ground.
type PotSide struct {
	Outer, Inner       []Metres // outline of the pot and of its hollow
	Liner, LinerInner  []Metres // outline of a pot in it that holds the mix, and of its hollow; nil without one
	MixFrom, MixTo     float64  // heights between which the hollow holds mix
	LayerFrom, LayerTo float64  // heights between which it holds gravel or the like
	WaterFrom, WaterTo float64  // heights between which it holds water
	Shelf              float64  // height of a false bottom; 0 without one
	Plants             []PotPlant
	Cells              []Metres // where the middles of equal cells stand; nil for one at 0, 0
}

// PotPlan is a pot seen from above.
type PotPlan struct {
	Outer, Inner []Metres
	Plants       []PotPlant
	Cells        []Metres // where the middles of equal cells are; nil for one at 0, 0
}

// PotPlant is one plant. In the side view X is where it stands and Y is not used;
// it grows from the top of the mix.
type PotPlant struct {
	X, Y           float64 // m
	Spread, Height float64 // m, how wide and high it is drawn
	Habit          Habit
	Category       int
	Letter         string           // its key in the plan view, one or two letters
	Plant          *plantdraw.Plant // draws the plant itself; nil sketches its habit alone
}

// Habit is how a plant grows.
type Habit int

// The habits.
const (
	Mounding Habit = iota
	Upright
	Trailing
)

// PotView says which of the two views a dimension is drawn on.
type PotView int

// The views.
const (
	SideView PotView = iota
	PlanView
)

// Edge is a side of a drawing.
type Edge int

// The edges.
const (
	Above Edge = iota
	Below
	LeftOf
	RightOf
)

// PotDimension is a dimension line between two points, drawn outside the pot at
// one edge. The label is written out, such as "90 cm".
type PotDimension struct {
	View     PotView
	From, To Metres
	Edge     Edge
	Label    string
}

// PotData is what a PotDrawing shows. Either view may be nil; two stand side by
// side at the same scale.
type PotData struct {
	Side       *PotSide
	Plan       *PotPlan
	Dimensions []PotDimension
	Name       string // for screen readers
	// UnitsPerMetre fixes the scale, so that pots on a bench compare; 0 fits the
	// drawing into its place.
	UnitsPerMetre float32
}

// box is an area in metres.
type box struct{ x0, y0, x1, y1 float64 }

func (b box) width() float64  { return b.x1 - b.x0 }
func (b box) height() float64 { return b.y1 - b.y0 }
func (b box) empty() bool     { return b.x1 <= b.x0 || b.y1 <= b.y0 }

func (b *box) add(x, y float64) {
	b.x0, b.x1 = min(b.x0, x), max(b.x1, x)
	b.y0, b.y1 = min(b.y0, y), max(b.y1, y)
}

func boxOf(points []Metres) box {
	if len(points) == 0 {
		return box{}
	}
	b := box{points[0].X, points[0].Y, points[0].X, points[0].Y}
	for _, p := range points {
		b.add(p.X, p.Y)
	}
	return b
}

// spread returns the area that a shape takes up where it stands once for each cell.
func spread(shape, cells []Metres) box {
	b := boxOf(shape)
	one := b
	for _, c := range cells {
		b.add(one.x0+c.X, one.y0+c.Y)
		b.add(one.x1+c.X, one.y1+c.Y)
	}
	return b
}

// moved returns a shape moved by an offset.
func moved(shape []Metres, by Metres) []Metres {
	if by == (Metres{}) {
		return shape
	}
	out := make([]Metres, len(shape))
	for i, p := range shape {
		out[i] = Metres{p.X + by.X, p.Y + by.Y}
	}
	return out
}

// bounds returns the area that the side view needs, plants included.
func (s *PotSide) bounds() box {
	b := spread(s.Outer, s.Cells)
	for _, p := range s.Plants {
		b.add(p.X-p.Spread/2, s.MixTo)
		b.add(p.X+p.Spread/2, s.MixTo+p.Height)
	}
	return b
}

// bounds returns the area that the plan view needs. Plants that reach over the rim
// count, since they are drawn.
func (p *PotPlan) bounds() box {
	b := spread(p.Outer, p.Cells)
	for _, plant := range p.Plants {
		b.add(plant.X-plant.Spread/2, plant.Y-plant.Spread/2)
		b.add(plant.X+plant.Spread/2, plant.Y+plant.Spread/2)
	}
	return b
}

// between returns the part of a shape between two heights.
func between(shape []Metres, from, to float64) []Metres {
	above := clip(shape, func(p Metres) float64 { return p.Y - from })
	return clip(above, func(p Metres) float64 { return to - p.Y })
}

// clip keeps the part of a shape where inside is not negative (the method of
// I. Sutherland and G. Hodgman, 1974). Inside must change in a straight line.
func clip(shape []Metres, inside func(Metres) float64) []Metres {
	var kept []Metres
	for i, p := range shape {
		q := shape[(i+1)%len(shape)]
		a, b := inside(p), inside(q)
		if a >= 0 {
			kept = append(kept, p)
		}
		if a >= 0 != (b >= 0) {
			t := a / (a - b)
			kept = append(kept, Metres{p.X + (q.X-p.X)*t, p.Y + (q.Y-p.Y)*t})
		}
	}
	return kept
}

// turned returns the shape so that it runs with (forward) or against the clock.
func turned(shape []Metres, forward bool) []Metres {
	area := 0.0
	for i, p := range shape {
		q := shape[(i+1)%len(shape)]
		area += p.X*q.Y - q.X*p.Y
	}
	if area < 0 == forward {
		return shape
	}
	other := make([]Metres, len(shape))
	for i, p := range shape {
		other[len(shape)-1-i] = p
	}
	return other
}
