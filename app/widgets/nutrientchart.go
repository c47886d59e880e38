package widgets

import (
	"image"
	"math"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/widget"

	"fourturn/app/theme"
	"fourturn/app/widgets/ink"
)

// NutrientWeek is one week of a NutrientChart; heights are shares of the chart's.
type NutrientWeek struct {
	Charge, Feed float64 // what slow release and feeds bring, drawn upon each other
	Low, High    float64 // what is needed, drawn as a band behind
	Now          bool    // today falls into it
}

// NutrientChart draws what a pot gets week by week against what its plants need: a solid
// foot for slow release, a hatched head for feeds, the band of the need behind them and a
// line at today.
type NutrientChart struct {
	widget.BaseWidget
	weeks []NutrientWeek
	name  string
}

var (
	_ fyne.Widget     = (*NutrientChart)(nil)
	_ fyne.Accessible = (*NutrientChart)(nil)
)

// NewNutrientChart returns a chart. The name says in words what it shows.
func NewNutrientChart(weeks []NutrientWeek, name string) *NutrientChart {
	c := &NutrientChart{weeks: weeks, name: name}
	c.ExtendBaseWidget(c)
	return c
}

// AccessibilityLabel returns the name.
func (c *NutrientChart) AccessibilityLabel() string { return c.name }

// AccessibilityRole is text.
func (c *NutrientChart) AccessibilityRole() fyne.AccessibleRole { return fyne.AccessibleRoleText }

// CreateRenderer is called by the toolkit.
func (c *NutrientChart) CreateRenderer() fyne.WidgetRenderer {
	raster := canvas.NewRaster(c.draw)
	raster.SetMinSize(fyne.NewSize(320, 140))
	return widget.NewSimpleRenderer(raster)
}

func (c *NutrientChart) draw(w, h int) image.Image {
	sheet, l := ink.NewSheet(w, h), lookOf(c)
	scale := float64(w) / math.Max(1, float64(c.Size().Width))
	wide, high := float64(w), float64(h)
	solid := func(name fyne.ThemeColorName) ink.Paint { return ink.Solid(l.colour(name)) }
	sheet.Rect(solid(theme.ColorSurface), 0, 0, wide, high)
	top := func(share float64) float64 { return math.Round(high * (1 - math.Max(0, math.Min(share, 1))*0.96)) }
	for i, week := range c.weeks {
		x0 := math.Round(wide * float64(i) / float64(len(c.weeks)))
		x1 := math.Round(wide * float64(i+1) / float64(len(c.weeks)))
		if week.High > 0 {
			sheet.Rect(solid(theme.ColorGoodWash), x0, top(week.High), x1, top(week.Low))
			hair := math.Max(1, scale)
			sheet.Rect(solid(theme.ColorGood), x0, top(week.High), x1, top(week.High)+hair)
			sheet.Rect(solid(theme.ColorGood), x0, top(week.Low), x1, top(week.Low)+hair)
		}
		gap := math.Max(1, math.Round((x1-x0)*0.2))
		foot, head := top(week.Charge), top(week.Charge+week.Feed)
		sheet.Rect(solid(theme.CategoryEdge(1)), x0+gap, foot, x1-gap, high)
		sheet.Rect(solid(theme.CategoryWash(2)), x0+gap, head, x1-gap, foot)
		sheet.Rect(ink.Hatched(l.colour(theme.CategoryEdge(2)), ink.Falling, scale), x0+gap, head, x1-gap, foot)
		if week.Now {
			sheet.Rect(solid(theme.ColorToday), x0, 0, x0+2*scale, high)
		}
	}
	edge := math.Max(1, scale) / 2
	sheet.Stroke(solid(theme.ColorOutline), 2*edge, true, ink.Point{X: edge, Y: edge}, ink.Point{X: wide - edge, Y: edge},
		ink.Point{X: wide - edge, Y: high - edge}, ink.Point{X: edge, Y: high - edge})
	return sheet.Image
}
