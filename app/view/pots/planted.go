package pots

import (
	"cmp"
	"math"
	"slices"

	screen "fourturn/app/screen/pots"
	"fourturn/app/widgets"
	"fourturn/app/widgets/plantdraw"
	"fourturn/planner/vessel"
)

// plantsIn stands plants in a pot: the first in the middle, the others around them by
// the golden angle, the last at the rim. Where each will stand is the person's own
// affair: this is how one would sketch it.
func plantsIn(v *vessel.Vessel, grown []screen.Grown) []widgets.PotPlant {
	left, right, low, high := bounds(v.Plan().Inner)
	wide, deep := (right-left)/2, (high-low)/2
	middleX, middleY := (left+right)/2, (low+high)/2
	const inset, golden = 0.8, 2.39996
	list := make([]widgets.PotPlant, 0, len(grown))
	for i, g := range grown {
		r := inset * math.Sqrt(float64(i)/math.Max(1, float64(len(grown)-1)))
		if len(grown) == 1 {
			r = 0
		}
		sin, cos := math.Sincos(float64(i)*golden + 0.4)
		list = append(list, widgets.PotPlant{
			X: middleX + r*cos*wide, Y: middleY + r*sin*deep, Height: g.Height, Spread: g.Spread, Plant: g.Plant,
		})
	}
	return list
}

// addPlants stands what grows in the pot into its drawing, the hindmost first.
func addPlants(data *widgets.PotData, v *vessel.Vessel, grown []screen.Grown) {
	list := plantsIn(v, grown)
	slices.SortStableFunc(list, func(a, b widgets.PotPlant) int { return cmp.Compare(b.Y, a.Y) })
	for i := range list {
		if plantdraw.Trails(list[i].Plant) && i >= len(list)/3 {
			list[i].Habit = widgets.Trailing // before the wall
		}
	}
	if data.Side != nil {
		data.Side.Plants = list
	}
	if data.Plan != nil {
		data.Plan.Plants = slices.Clone(list)
		slices.SortStableFunc(data.Plan.Plants, func(a, b widgets.PotPlant) int { return cmp.Compare(a.Height, b.Height) })
	}
}
