package pots

import (
	"fourturn/app/widgets"
	"fourturn/planner/vessel"
)

func metres(points []vessel.Point) []widgets.Metres {
	out := make([]widgets.Metres, len(points))
	for i, p := range points {
		out[i] = widgets.Metres{X: p.X, Y: p.Y}
	}
	return out
}

func sideOf(v *vessel.Vessel) *widgets.PotSide {
	s := v.Side()
	side := &widgets.PotSide{
		Outer: metres(s.Outer), Inner: metres(s.Inner),
		Liner: metres(s.Liner), LinerInner: metres(s.LinerInner), Shelf: s.Shelf,
		MixFrom: s.MixFrom, MixTo: s.MixTo, WaterFrom: s.WaterFrom, WaterTo: s.WaterTo, LayerFrom: s.LayerFrom, LayerTo: s.LayerTo,
	}
	if len(s.Cells) > 1 {
		side.Cells = metres(s.Cells)
	}
	return side
}

func planOf(v *vessel.Vessel) *widgets.PotPlan {
	p := v.Plan()
	plan := &widgets.PotPlan{Outer: metres(p.Outer), Inner: metres(p.Inner)}
	if len(p.Cells) > 1 {
		plan.Cells = metres(p.Cells)
	}
	return plan
}

// dimensionsOf are the outside measures, drawn on the two views.
func dimensionsOf(v *vessel.Vessel, write func(vessel.Point, vessel.Point) string) []widgets.PotDimension {
	side, plan := v.Side(), v.Plan()
	left, right, _, top := spread(side.Outer, side.Cells)
	dims := []widgets.PotDimension{
		dimension(widgets.SideView, vessel.Point{X: left, Y: top}, vessel.Point{X: right, Y: top}, widgets.Above, write),
		dimension(widgets.SideView, vessel.Point{X: right, Y: 0}, vessel.Point{X: right, Y: top}, widgets.RightOf, write),
	}
	left, right, low, high := spread(plan.Outer, plan.Cells)
	if right-left != high-low {
		dims = append(dims, dimension(widgets.PlanView, vessel.Point{X: right, Y: low}, vessel.Point{X: right, Y: high}, widgets.RightOf, write))
	}
	return dims
}

func dimension(view widgets.PotView, a, b vessel.Point, edge widgets.Edge, write func(vessel.Point, vessel.Point) string) widgets.PotDimension {
	return widgets.PotDimension{
		View: view, From: widgets.Metres{X: a.X, Y: a.Y}, To: widgets.Metres{X: b.X, Y: b.Y}, Edge: edge, Label: write(a, b),
	}
}

// spread are the bounds of a shape that stands once for each cell.
func spread(shape, cells []vessel.Point) (left, right, low, high float64) {
	left, right, low, high = bounds(shape)
	if len(cells) < 2 {
		return left, right, low, high
	}
	first, last, lowest, highest := bounds(cells)
	return left + first, right + last, low + lowest, high + highest
}

func bounds(points []vessel.Point) (left, right, low, high float64) {
	for i, p := range points {
		if i == 0 {
			left, right, low, high = p.X, p.X, p.Y, p.Y
		}
		left, right, low, high = min(left, p.X), max(right, p.X), min(low, p.Y), max(high, p.Y)
	}
	return left, right, low, high
}
