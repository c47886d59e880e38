package pots

import (
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"fourturn/app/widgets"
	"fourturn/app/widgets/golden"
	"fourturn/planner/quantity"
	"fourturn/planner/vessel"
)

// everyShape are pots of each kind, of a size that is often met.
func everyShape() []vessel.Spec {
	rings := []vessel.Ring{{Diameter: 0.22}, {Height: 0.05, Diameter: 0.12}, {Height: 0.15, Diameter: 0.30}, {Height: 0.32, Diameter: 0.40}, {Height: 0.36, Diameter: 0.46}}
	return []vessel.Spec{
		{Kind: vessel.Round, TopDiameter: 0.40, BottomDiameter: 0.30, Height: 0.36, Wall: 0.015},
		{Kind: vessel.Round, TopDiameter: 0.28, BottomDiameter: 0.40, Height: 0.36, Wall: 0.015}, // inverse taper
		{Kind: vessel.Cylinder, TopDiameter: 0.35, Height: 0.40, Wall: 0.01},
		{Kind: vessel.Square, TopWidth: 0.40, BottomWidth: 0.30, Height: 0.40, Wall: 0.02},
		{Kind: vessel.Trough, TopLength: 0.80, TopWidth: 0.22, BottomLength: 0.70, BottomWidth: 0.16, Height: 0.20, Wall: 0.01},
		{Kind: vessel.OvalTrough, TopLength: 0.60, TopWidth: 0.35, BottomLength: 0.50, BottomWidth: 0.28, Height: 0.28, Wall: 0.01},
		{Kind: vessel.Bowl, TopDiameter: 0.60, Height: 0.20, Wall: 0.02},
		{Kind: vessel.HalfBarrel, TopDiameter: 0.60, MiddleDiameter: 0.58, BottomDiameter: 0.48, Height: 0.42, Wall: 0.025},
		{Kind: vessel.HemisphereBasket, TopDiameter: 0.36, Wall: 0.01},
		{Kind: vessel.ConeBasket, TopDiameter: 0.36, Height: 0.38, Wall: 0.01},
		{Kind: vessel.WallBasket, TopLength: 0.40, TopWidth: 0.20, Height: 0.24, Wall: 0.01},
		{Kind: vessel.WallBasket, TopLength: 0.40, TopWidth: 0.20, BottomLength: 0.26, BottomWidth: 0.13, Height: 0.24, Wall: 0.01},
		{Kind: vessel.Turned, Rings: rings, Wall: 0.02},
		{Kind: vessel.Pockets, Cell: vessel.Square, Cells: 6, TopWidth: 0.16, BottomWidth: 0.12, Height: 0.18, Wall: 0.003},
		{Kind: vessel.Pockets, Cell: vessel.Round, Cells: 10_000, TopDiameter: 0.04, BottomDiameter: 0.03, Height: 0.05},
		{Kind: vessel.Measured, Water: 24, TopDiameter: 0.38, Height: 0.30},
	}
}

// Every shape is drawn from the side and from above, at one scale, with its outside
// measures.
func TestEveryShapeIsDrawn(t *testing.T) {
	seen := map[vessel.Kind]bool{}
	golden.Check(t, "shapes", fyne.NewSize(1280, 1000), func() fyne.CanvasObject {
		grid := container.NewGridWithColumns(4)
		for _, spec := range everyShape() {
			v, err := vessel.New(spec)
			if err != nil {
				t.Fatalf("%s: %v", spec.Kind, err)
			}
			seen[spec.Kind] = true
			label := func(a, b vessel.Point) string { return quantity.Length(max(b.X-a.X, b.Y-a.Y)).Format(quantity.Metric) }
			data := widgets.PotData{Side: sideOf(&v), Plan: planOf(&v), Dimensions: dimensionsOf(&v, label), Name: string(spec.Kind)}
			grid.Add(widgets.NewCard("", widgets.NewPotDrawing(data, pictureLeast)))
		}
		return grid
	})
	for _, k := range vessel.Kinds {
		if !seen[k] {
			t.Errorf("a %s is not drawn", k)
		}
	}
}
