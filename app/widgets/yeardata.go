package widgets

import (
	"image/color"

	"fourturn/app/widgets/ink"

	"fourturn/app/theme"
)

// Pattern is a hatch that tells kinds apart without colour.
type Pattern = ink.Pattern

// PatternOf returns the hatch that goes with a category, so that colour and hatch
// always say the same.
func PatternOf(category int) Pattern {
	order := [theme.Categories]Pattern{
		ink.Rising, ink.Dots, ink.Falling, ink.Level, ink.Crossed, ink.Waves, ink.Upright, ink.Plain,
	}
	return order[((category%len(order))+len(order))%len(order)]
}

// YearTick is a line across the chart with its label above, such as the first of
// a month. A major tick is a year.
type YearTick struct {
	Day   int
	Label string
	Major bool
}

// YearAxis is the time shown. Days are whole numbers from any start.
type YearAxis struct {
	First, Last int // the first day and the day after the last
	Ticks       []YearTick
	Weeks       []YearTick // shown as well where a week is wide enough to be read
	Today       int
	TodayLabel  string // "" draws no line of today
}

// YearSegment is one planting on a strip, from Start until the day before End.
type YearSegment struct {
	Start, End int
	Category   int // colour and hatch
	Label      string
	Plants     []YearPlant // drawn side by side along the foot of the strip
	// Profile is how good the planting looks, 0 to 1, on each day from Start; the
	// strip is drawn as high. Nil draws the full height.
	Profile []float32
	Pinned  bool // the person holds on to its day
	Ghost   bool // a proposal: broken edge, no ground
	Fixed   bool // its start cannot be moved
	// Early and Late are the spread of the start, drawn as a bracket in the ground
	// under it; the same day twice draws none.
	Early, Late int
}

// YearPlant is one kind of plant in small: its habit with the colours of its flowers
// and leaves.
type YearPlant struct {
	Habit        Habit
	Flower, Leaf color.NRGBA
}

// YearRange is a span of good days, shaded in the ground under a row.
type YearRange struct{ Start, End int }

// YearMark is a small sign under a strip, such as a feed; kinds differ in shape.
type YearMark struct {
	Day  int
	Kind MarkKind
}

// MarkKind is the shape of a mark.
type MarkKind int

// The shapes.
const (
	MarkDisc    MarkKind = iota // ●
	MarkRing                    // ○
	MarkSquare                  // ■
	MarkDiamond                 // ◆
)

// YearRow is one strip with its label. Segments are in order and do not overlap.
type YearRow struct {
	Label, Detail string
	Segments      []YearSegment
	Good          []YearRange
	Marks         []YearMark
}

// YearSky is the weather over the strips, as it normally is. All lists have one value
// for each day from the first of the axis. Without Low and High no sky is drawn.
type YearSky struct {
	Name      string
	Low, High []float64   // normal daily lowest and highest temperature, °C
	Freeze    []float64   // odds of a freeze still to come (spring), or come already (autumn)
	Ticks     []ChartTick // of the temperatures; the first and the last are the ends
	// Reading writes out a day in few lines.
	Reading func(day int) []string
}

// there reports whether there is a sky to be drawn.
func (s *YearSky) there() bool { return len(s.Low) > 0 && len(s.High) > 0 && len(s.Ticks) > 1 }

// YearMove is what is said of a joint while it is moved, and how the row would be.
type YearMove struct {
	Title string
	Lines []string
	Bad   bool     // the day will not do
	Row   *YearRow // drawn instead while it is moved; nil leaves the row as it is
}

// YearData is all that a chart shows. Row is asked for rows in sight; the chart keeps
// what it was told until the next Set.
type YearData struct {
	Axis YearAxis
	Sky  YearSky
	Rows int
	Row  func(i int) YearRow
	// DayLabel writes a day out, such as "14 May".
	DayLabel func(day int) string
	// Moving says what a joint would cost on a day; nil shows the day alone.
	Moving func(place YearPlace, day int) YearMove
}

// YearPlace is a place on the chart: a segment, or the joint at its start.
type YearPlace struct {
	Row, Segment int
	Joint        bool
}

// movable reports whether the start of a segment is a joint that can be moved.
func (r *YearRow) movable(i int, axis YearAxis) bool {
	if i < 0 || i >= len(r.Segments) {
		return false
	}
	s := &r.Segments[i]
	return !s.Fixed && s.Start > axis.First && s.Start < axis.Last
}

// bounds returns the first and the last day to which the start of segment i can
// move: each neighbour keeps at least one day.
func (r *YearRow) bounds(i int, axis YearAxis) (first, last int) {
	s := r.Segments[i]
	first, last = axis.First, s.End-1
	if i > 0 {
		before := r.Segments[i-1]
		if before.End == s.Start {
			first = max(first, before.Start+1)
		} else {
			first = max(first, before.End)
		}
	}
	return first, last
}
