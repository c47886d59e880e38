package widgets

import (
	"math"
	"slices"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/widget"

	"fourturn/app/theme"
)

// ClimateChart draws the normal year of a site: the band between daily lows and
// highs, the odds of a freeze, the length of the day, and the seasons below. A
// reading line follows the pointer or Left and Right (Page Up and Page Down go by a
// month, Home and End to the ends), a second one across follows the pointer or Up and
// Down.
type ClimateChart struct {
	widget.BaseWidget

	// OnRead is called when the reading line comes to another day.
	OnRead func(day int)

	data     ClimateData
	revision int // counts the calls of Set
	day      int
	reading  bool    // the reading line shows
	level    float64 // temperature that is read off, °C
	leveled  bool    // it shows
	focused  bool
}

var (
	_ fyne.Widget        = (*ClimateChart)(nil)
	_ fyne.Focusable     = (*ClimateChart)(nil)
	_ fyne.Tappable      = (*ClimateChart)(nil)
	_ desktop.Hoverable  = (*ClimateChart)(nil)
	_ desktop.Cursorable = (*ClimateChart)(nil)
	_ fyne.Accessible    = (*ClimateChart)(nil)
)

// NewClimateChart returns a chart whose reading line begins at today.
func NewClimateChart(data ClimateData) *ClimateChart {
	c := &ClimateChart{data: data, day: data.Axis.Today}
	c.ExtendBaseWidget(c)
	return c
}

// Set shows another year.
func (c *ClimateChart) Set(data ClimateData) {
	c.data = data
	c.revision++
	c.day = c.within(c.day)
	c.Refresh()
}

// SetSeasons changes the strip under the chart alone.
func (c *ClimateChart) SetSeasons(seasons []YearSegment) {
	same := func(a, b YearSegment) bool {
		return a.Start == b.Start && a.End == b.End && a.Category == b.Category && a.Label == b.Label
	}
	if slices.EqualFunc(seasons, c.data.Seasons, same) {
		return
	}
	c.data.Seasons = seasons
	c.revision++
	c.Refresh()
}

// Days returns how many days the chart shows.
func (c *ClimateChart) Days() int { return c.data.days() }

// Read puts the reading line on a day.
func (c *ClimateChart) Read(day int) {
	day = c.within(day)
	if c.reading && day == c.day {
		return
	}
	c.day, c.reading = day, true
	c.Refresh()
	if c.OnRead != nil {
		c.OnRead(day)
	}
}

// Day returns the day of the reading line.
func (c *ClimateChart) Day() int { return c.day }

// ReadAt puts the second reading line on a temperature.
func (c *ClimateChart) ReadAt(temperature float64) {
	if c.data.ReadingAt == nil || c.data.LevelStep <= 0 {
		return
	}
	level := c.data.level(temperature)
	if c.leveled && level == c.level {
		return
	}
	c.level, c.leveled, c.reading = level, true, true
	c.Refresh()
}

// move moves the second reading line by steps; it begins at the zero of its steps.
func (c *ClimateChart) move(steps float64) {
	from := c.level
	if !c.leveled {
		from, steps = c.data.LevelZero, 0
	}
	c.ReadAt(from + steps*c.data.LevelStep)
}

func (c *ClimateChart) within(day int) int {
	return max(c.data.Axis.First, min(day, c.data.Axis.Last-1))
}

// Tapped takes the focus and reads the day under the pointer.
func (c *ClimateChart) Tapped(ev *fyne.PointEvent) {
	if cv := fyne.CurrentApp().Driver().CanvasForObject(c); cv != nil {
		cv.Focus(c)
	}
	c.readAt(ev.Position)
}

func (c *ClimateChart) readAt(p fyne.Position) {
	plot := c.plot(c.Size())
	if plot.w <= 0 || c.data.days() == 0 {
		return
	}
	c.Read(c.data.Axis.First + int(math.Floor(float64((p.X-plot.x)/plot.w)*float64(c.data.days()))))
	if p.Y >= plot.y && p.Y <= plot.y+plot.h {
		low, high := scaleOf(c.data.Temperatures)
		c.ReadAt(low + (high-low)*float64(1-(p.Y-plot.y)/plot.h))
	} else if c.leveled {
		c.leveled = false
		c.Refresh()
	}
}

// MouseIn reads the day under the pointer.
func (c *ClimateChart) MouseIn(ev *desktop.MouseEvent) { c.MouseMoved(ev) }

// MouseMoved reads the day under the pointer.
func (c *ClimateChart) MouseMoved(ev *desktop.MouseEvent) {
	if plot := c.plot(c.Size()); ev.Position.X >= plot.x && ev.Position.X < plot.x+plot.w {
		c.readAt(ev.Position)
	}
}

// MouseOut takes the reading line away, unless the keys have it.
func (c *ClimateChart) MouseOut() { c.hideUnlessFocused() }

func (c *ClimateChart) hideUnlessFocused() {
	if c.reading != c.focused {
		c.reading, c.leveled = c.focused, c.leveled && c.focused
		c.Refresh()
	}
}

// Cursor is a cross, as for reading off a scale.
func (c *ClimateChart) Cursor() desktop.Cursor { return desktop.CrosshairCursor }

// FocusGained shows the reading line.
func (c *ClimateChart) FocusGained() {
	c.focused = true
	c.Read(c.day)
	c.Refresh()
}

// FocusLost hides the reading line.
func (c *ClimateChart) FocusLost() {
	c.focused = false
	c.hideUnlessFocused()
	c.Refresh()
}

// TypedRune is not used.
func (c *ClimateChart) TypedRune(rune) {}

// TypedKey moves the reading line.
func (c *ClimateChart) TypedKey(ev *fyne.KeyEvent) {
	switch ev.Name {
	case fyne.KeyLeft:
		c.Read(c.day - 1)
	case fyne.KeyRight:
		c.Read(c.day + 1)
	case fyne.KeyUp:
		c.move(1)
	case fyne.KeyDown:
		c.move(-1)
	case fyne.KeyPageUp:
		c.Read(c.day - 30)
	case fyne.KeyPageDown:
		c.Read(c.day + 30)
	case fyne.KeyHome:
		c.Read(c.data.Axis.First)
	case fyne.KeyEnd:
		c.Read(c.data.Axis.Last - 1)
	case fyne.KeyEscape:
		escape(c)
	}
}

// AccessibilityLabel returns the name and what the reading line says.
func (c *ClimateChart) AccessibilityLabel() string {
	parts := []string{c.data.Name}
	if c.reading && c.data.Reading != nil {
		heading, lines := c.data.Reading(c.day)
		parts = append(append(parts, heading), lines...)
	}
	if c.leveled && c.data.ReadingAt != nil {
		parts = append(parts, c.data.ReadingAt(c.level)...)
	}
	return accessibleName(parts...)
}

// AccessibilityRole is text.
func (c *ClimateChart) AccessibilityRole() fyne.AccessibleRole { return fyne.AccessibleRoleText }

// plot returns where the curves are drawn.
func (c *ClimateChart) plot(size fyne.Size) rect {
	l := lookOf(c)
	text := l.measure("X", scriptCaption).Height
	side := func(ticks []ChartTick) float32 {
		w := float32(0)
		for _, t := range ticks {
			w = max(w, l.measure(t.Label, scriptCaption).Width)
		}
		return w + theme.Step
	}
	left, right := side(c.data.Temperatures), side(c.data.Hours)
	top, foot := text+theme.Half, theme.Half
	if len(c.data.Seasons) > 0 {
		foot += text + theme.Step2 + theme.Half
	}
	if c.data.Legend != (ClimateLegend{}) {
		foot += text + theme.Step
	}
	return rect{left, top, size.Width - left - right, size.Height - top - foot}
}
