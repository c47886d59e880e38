package widgets

import (
	"fourturn/app/theme"
	"fourturn/app/widgets/ink"
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
	Today       int
	TodayLabel  string // "" draws no line of today
}

// YearSegment is one planting on a strip, from Start until the day before End.
type YearSegment struct {
	Start, End int
	Category   int // colour and hatch
	Label      string
	Icon       theme.IconName // a small sign before the label, or ""
	Pinned     bool           // the person holds on to it; a pin is drawn
	Ghost      bool           // a proposal: broken edge, no ground
	Fixed      bool           // its start cannot be moved
	// Early and Late are the spread of the start, drawn as a bracket under it; the
	// same day twice draws none.
	Early, Late int
}

// YearRange is a span of days that suits what a row is about, drawn behind it.
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

// YearData is all that a chart shows. Row is asked only for rows in sight, again
// and again: it should be cheap.
type YearData struct {
	Axis YearAxis
	Rows int
	Row  func(i int) YearRow
	// DayLabel writes a day out, such as "14 May"; it is shown while a joint moves.
	DayLabel func(day int) string
}

// YearPlace is a place on the chart: a segment, or the joint at its start.
type YearPlace struct {
	Row, Segment int
	Joint        bool
}

// movable reports whether the start of a segment is a joint that can be moved.
func (r YearRow) movable(i int, axis YearAxis) bool {
	if i < 0 || i >= len(r.Segments) {
		return false
	}
	s := r.Segments[i]
	return !s.Fixed && s.Start > axis.First && s.Start < axis.Last
}

// bounds returns the first and the last day to which the start of segment i can
// move: each neighbour keeps at least one day.
func (r YearRow) bounds(i int, axis YearAxis) (first, last int) {
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
