package widgets

import "math"

// ChartTick is a line across a chart at a value, with its label.
type ChartTick struct {
	Value float64
	Label string
}

// ClimateData is a year of weather as it is normally. All lists have one value for
// each day from the first of the axis; a list may be nil.
type ClimateData struct {
	Axis       YearAxis
	Low, High  []float64 // normal daily lowest and highest temperature, °C
	FreezeOdds []float64 // chance that it freezes on or after (spring) or before (autumn) the day, or on the day; 0 to 1
	DayLength  []float64 // hours
	// Seasons are drawn as a strip under the chart.
	Seasons []YearSegment
	// Temperatures and Hours are the ticks of the two scales; their first and last
	// values are the ends of the scales. Hours may be nil.
	Temperatures, Hours []ChartTick
	// Legend holds the words for what is drawn; empty ones are left out.
	Legend ClimateLegend
	// Reading writes out a day for the reading line: a heading and some lines.
	Reading func(day int) (heading string, lines []string)
	// ReadingAt writes out a temperature under the pointer, or chosen by Up and Down in
	// steps of LevelStep from LevelZero; nil for none.
	ReadingAt            func(c float64) []string
	LevelStep, LevelZero float64 // °C
	// Name says what the chart shows, for screen readers.
	Name string
}

// ClimateLegend holds the words of the legend.
type ClimateLegend struct{ High, Low, Freeze, Day string }

// level returns the nearest step to a temperature, within the scale.
func (d *ClimateData) level(c float64) float64 {
	low, high := scaleOf(d.Temperatures)
	step := func(c float64) float64 { return d.LevelZero + math.Round((c-d.LevelZero)/d.LevelStep)*d.LevelStep }
	return math.Max(low, math.Min(step(c), high))
}

// days returns how many days the chart shows.
func (d *ClimateData) days() int { return max(0, d.Axis.Last-d.Axis.First) }

// scaleOf returns the ends of a scale.
func scaleOf(ticks []ChartTick) (low, high float64) {
	if len(ticks) < 2 {
		return 0, 1
	}
	return ticks[0].Value, ticks[len(ticks)-1].Value
}

// share returns where a value lies on a scale, 0 at the foot, 1 at the top.
func share(v float64, ticks []ChartTick) float64 {
	low, high := scaleOf(ticks)
	if high == low || math.IsNaN(v) {
		return 0
	}
	return (v - low) / (high - low)
}
