package widgets

import (
	"fmt"
	"math"
	"slices"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/test"

	"fourturn/app/theme"
	"fourturn/app/widgets/golden"
)

// exampleClimate is an invented year of a temperate site.
func exampleClimate() ClimateData {
	d := ClimateData{
		Axis: exampleYear(1).Axis, Name: "Climate of the terrace",
		Temperatures: []ChartTick{{-10, "−10"}, {0, "0 °C"}, {10, "10"}, {20, "20"}, {30, "30"}},
		Hours:        []ChartTick{{6, "6 h"}, {10, "10"}, {14, "14"}, {18, "18 h"}},
		Legend:       ClimateLegend{High: "highest of the day", Low: "lowest of the day", Freeze: "odds of a freeze", Day: "length of the day"},
		Seasons: []YearSegment{
			{Start: -30, End: 70, Category: 3, Label: "Winter"},
			{Start: 70, End: 138, Category: 0, Label: "Spring"},
			{Start: 138, End: 265, Category: 1, Label: "Summer"},
			{Start: 265, End: 325, Category: 2, Label: "Autumn"},
			{Start: 325, End: 400, Category: 3, Label: "Winter"},
		},
	}
	for day := range 365 {
		phase := -math.Cos(2 * math.Pi * float64(day-20) / 365)
		d.Low = append(d.Low, 6+8*phase)
		d.High = append(d.High, 14+11*phase+1.5*math.Sin(float64(day)/40))
		d.DayLength = append(d.DayLength, 12-4*math.Cos(2*math.Pi*float64(day+10)/365))
		spring := 1 / (1 + math.Exp(float64(day-110)/9))
		autumn := 1 / (1 + math.Exp(float64(300-day)/9))
		d.FreezeOdds = append(d.FreezeOdds, math.Max(spring, autumn))
	}
	d.Reading = func(day int) (string, []string) {
		return dayLabel(day), []string{
			fmt.Sprintf("%.0f to %.0f °C", d.Low[day], d.High[day]),
			fmt.Sprintf("freeze: %.0f %%", 100*d.FreezeOdds[day]),
			fmt.Sprintf("day: %.1f h", d.DayLength[day]),
		}
	}
	return d
}

func TestClimateChartLook(t *testing.T) {
	golden.Check(t, "climate", fyne.NewSize(760, 360), func() fyne.CanvasObject {
		c := NewClimateChart(exampleClimate())
		c.Read(yearDay(5, 3))
		return container.NewPadded(c)
	})
}

func TestClimateChartReads(t *testing.T) {
	golden.App(t, theme.Options{})
	c := NewClimateChart(exampleClimate())
	w := test.NewTempWindow(t, c)
	w.SetPadded(false)
	w.Resize(fyne.NewSize(760, 360))
	var read []int
	c.OnRead = func(day int) { read = append(read, day) }
	w.Canvas().Focus(c)
	today := yearDay(4, 9)
	press(c, fyne.KeyRight, fyne.KeyPageUp, fyne.KeyEnd, fyne.KeyRight, fyne.KeyHome, fyne.KeyLeft)
	if want := []int{today, today + 1, today - 29, 364, 0}; !slices.Equal(read, want) {
		t.Errorf("read %v, want %v", read, want)
	}
	if got, want := c.AccessibilityLabel(), "Climate of the terrace, 1 Jan, -2 to 4 °C, freeze: 100 %, day: 8.1 h"; got != want {
		t.Errorf("name %q, want %q", got, want)
	}
	plot := c.plot(c.Size())
	c.MouseMoved(&desktop.MouseEvent{PointEvent: fyne.PointEvent{Position: fyne.NewPos(plot.x+plot.w*200.5/365, 50)}})
	if c.Day() != 200 {
		t.Errorf("the pointer reads day %d, want 200", c.Day())
	}
	w.Canvas().Unfocus()
	c.MouseOut()
	if c.reading {
		t.Error("the reading line stays")
	}
}

// The picture is drawn once while the reading line moves over it, and anew when
// the look changes.
func TestClimateChartIsDrawnOnce(t *testing.T) {
	a := golden.App(t, theme.Options{Mode: theme.Light})
	c := NewClimateChart(exampleClimate())
	w := test.NewTempWindow(t, c)
	w.Resize(fyne.NewSize(760, 360))
	w.Canvas().Capture()
	r := test.TempWidgetRenderer(t, c).(*climateRenderer)
	first := r.drawn
	c.Read(5)
	w.Canvas().Capture()
	if r.drawn != first {
		t.Error("drawn anew for the reading line")
	}
	a.Settings().SetTheme(theme.New(theme.Options{Mode: theme.Dark}))
	c.Refresh()
	w.Canvas().Capture()
	if r.drawn == first {
		t.Error("not drawn anew in the dark")
	}
}

func TestClimateChartSurvivesNothing(t *testing.T) {
	golden.App(t, theme.Options{})
	c := NewClimateChart(ClimateData{})
	w := test.NewTempWindow(t, c)
	w.Resize(fyne.NewSize(400, 300))
	test.Tap(c)
	press(c, fyne.KeyLeft, fyne.KeyEnd)
	w.Canvas().Capture()
	c.Set(ClimateData{Axis: YearAxis{First: 0, Last: 3}, Low: []float64{math.NaN()}, High: []float64{1, 2, 3, 4, 5}})
	w.Canvas().Capture()
}
