package vessel

import (
	"math"

	"fourturn/planner/quantity"
)

// Point is a point of a drawing in metres.
type Point struct{ X, Y float64 }

// SideView is the pot cut open, seen from the front: X is 0 at its middle, Y is 0 on
// the ground. Outlines run against the clock and are closed.
type SideView struct {
	Outer, Inner       []Point // of the pot and of its hollow, of one cell
	Liner, LinerInner  []Point // of the liner pot, or nil
	MixFrom, MixTo     float64 // heights between which there is mix
	LayerFrom, LayerTo float64 // and a drainage layer; equal without one
	WaterFrom, WaterTo float64 // and water in a reservoir; equal without one
	Shelf              float64 // height of the false bottom, 0 without one
	Cells              []Point // where the middle of each cell stands; one at 0, 0 for most
}

// PlanView is the pot from above: the outline where it is widest and that of the
// opening at the fill line, of one cell. X is 0 in its middle; Y is 0 in its middle
// or, for a wall basket, at the wall.
type PlanView struct {
	Outer, Inner []Point
	Cells        []Point // where the middle of each cell is
}

const (
	sideSteps  = 24 // of a curved side
	roundSteps = 72 // of an ellipse
)

// Side returns the side view, to scale.
func (v Vessel) Side() SideView {
	ground := v.outer.height - v.inner.height // height of the inside bottom
	view := SideView{Outer: v.outer.profile(0), Inner: v.inner.profile(ground)}
	if v.spec.FalseBottom > 0 {
		view.Shelf = ground + float64(v.spec.FalseBottom)
	}
	h := v.holder()
	if v.spec.Liner != nil {
		stand := ground + v.floor
		view.Liner = h.outer.profile(stand)
		view.LinerInner = h.inner.profile(stand + h.outer.height - h.inner.height)
		view.LayerFrom, view.LayerTo = ground+float64(v.spec.FalseBottom), stand
		view.WaterFrom, view.WaterTo = ground, ground+v.waterHeight()
		ground = stand + h.outer.height - h.inner.height
	} else {
		view.LayerFrom, view.LayerTo = ground+float64(v.spec.FalseBottom), ground+v.floor
		view.WaterFrom, view.WaterTo = ground, ground+v.waterHeight()
	}
	view.MixFrom, view.MixTo = ground+h.floor, ground+h.fill
	for _, at := range v.cellPlaces() {
		if at.Y == v.cellPlaces()[0].Y { // the front row hides those behind
			view.Cells = append(view.Cells, Point{X: at.X})
		}
	}
	return view
}

// waterHeight returns how high the reservoir is full, by its share of the space.
func (v *Vessel) waterHeight() float64 {
	space := v.under(float64(v.spec.FalseBottom))
	if !v.spec.Reservoir || space <= 0 {
		return 0
	}
	return float64(v.spec.FalseBottom) * float64(v.spec.reservoir(v)/space)
}

// profile returns the outline seen from the front, its bottom at height lift.
func (s *solid) profile(lift float64) []Point {
	heights := s.profileHeights()
	points := make([]Point, 0, 2*len(heights))
	for _, z := range heights {
		l, _ := s.at(z)
		points = append(points, Point{l / 2, lift + z})
	}
	for i := len(heights) - 1; i >= 0; i-- {
		p := points[i]
		if p.X > 0 || i > 0 { // a point at the bottom stands once
			points = append(points, Point{-p.X, p.Y})
		}
	}
	return points
}

// profileHeights returns the heights at which the side bends.
func (s *solid) profileHeights() []float64 {
	switch {
	case s.rings != nil:
		heights := []float64{0}
		for _, r := range s.rings {
			if z := float64(r.Height) - s.lift; z > 0 && z < s.height {
				heights = append(heights, z)
			}
		}
		return append(heights, s.height)
	case s.radius > 0 || s.length.c2 != 0:
		heights := make([]float64, sideSteps+1)
		for i := range heights {
			// closer together towards the bottom, where a cap is flat
			t := float64(i) / sideSteps
			heights[i] = s.foot + (s.height-s.foot)*t*t
		}
		if s.foot > 0 {
			heights = append([]float64{0}, heights...)
		}
		return heights
	case s.foot > 0:
		return []float64{0, s.foot, s.height}
	}
	return []float64{0, s.height}
}

// Plan returns the view from above, to scale.
func (v Vessel) Plan() PlanView {
	h := v.holder()
	length, width := v.outer.widest()
	innerLength, innerWidth := h.inner.at(h.fill)
	view := PlanView{
		Outer: v.outer.form.outline(length, width),
		Inner: h.inner.form.outline(innerLength, innerWidth),
		Cells: v.cellPlaces(),
	}
	if v.outer.form == halfEllipse { // the back of the pot stands between the mix and the wall
		for i := range view.Inner {
			view.Inner[i].Y -= float64(v.spec.Wall)
		}
	}
	return view
}

// widest returns the greatest length and width at any height.
func (s *solid) widest() (length, width float64) {
	for _, z := range s.profileHeights() {
		l, w := s.at(z)
		length, width = max(length, l), max(width, w)
	}
	if s.radius > 0 && s.radius < s.height { // a bowl that bulges has its equator
		l, w := s.at(s.radius)
		length, width = max(length, l), max(width, w)
	}
	return length, width
}

// outline returns the outline of a level cut, against the clock.
func (f form) outline(length, width float64) []Point {
	switch f {
	case rectangle:
		x, y := length/2, width/2
		return []Point{{-x, -y}, {x, -y}, {x, y}, {-x, y}}
	case halfEllipse:
		points := make([]Point, 0, roundSteps/2+1)
		for i := range roundSteps/2 + 1 {
			sin, cos := math.Sincos(math.Pi + 2*math.Pi*float64(i)/roundSteps)
			points = append(points, Point{cos * length / 2, sin * width})
		}
		return points
	}
	points := make([]Point, 0, roundSteps)
	for i := range roundSteps {
		sin, cos := math.Sincos(2 * math.Pi * float64(i) / roundSteps)
		points = append(points, Point{cos * length / 2, sin * width / 2})
	}
	return points
}

// cellPlaces sets the cells of a cluster in rows, as near to a square as may be.
func (v *Vessel) cellPlaces() []Point {
	n := v.spec.cells()
	if n == 1 {
		return []Point{{}}
	}
	length, width := v.outer.widest()
	columns := int(math.Ceil(math.Sqrt(float64(n) * width / length)))
	columns = min(max(columns, 1), n)
	rows := (n + columns - 1) / columns
	places := make([]Point, 0, n)
	for i := range n {
		row, column := i/columns, i%columns
		places = append(places, Point{
			X: (float64(column) - float64(columns-1)/2) * length,
			Y: (float64(row) - float64(rows-1)/2) * width,
		})
	}
	return places
}

// Spread returns how much room the pot takes up seen from above, cells together.
func (v Vessel) Spread() (length, width quantity.Length) {
	l, w := v.outer.widest()
	var x, y float64
	for _, p := range v.cellPlaces() {
		x, y = max(x, math.Abs(p.X)), max(y, math.Abs(p.Y))
	}
	return quantity.Length(l + 2*x), quantity.Length(w + 2*y)
}
