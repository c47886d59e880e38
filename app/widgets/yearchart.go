package widgets

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/widget"
)

// YearChart shows plantings as strips along a time axis, one row to a pot, under the
// weather of the same days. Only rows in sight are drawn, so that thousands cost no
// more than a screenful.
//
// A planting stands on the ground line as high as it is expected to look good, with
// its plants in small along its foot. A change-out is a label stuck into the ground:
// filled where its day is pinned, a knot where it has happened. Under the ground line
// good days are shaded and the spread is bracketed.
//
// Mouse: a tap selects a segment or a joint, a second tap opens the segment, a
// joint is dragged to another day, anything else drags the sheet. The wheel
// scrolls; with Shift it scrolls sideways, with Control it zooms. Keys: Up and
// Down change the row, Left and Right go from segment to joint to segment, Enter
// opens a segment or takes a joint in hand; in hand, Left and Right move it by a
// day, Page Up and Page Down by a week, Enter puts it down, Esc puts it back.
// + and − zoom, 0 shows all days, [ and ] scroll sideways, T goes to today.
type YearChart struct {
	widget.BaseWidget

	// OnSelect is called when another place is selected.
	OnSelect func(YearPlace)
	// OnOpen is called for a segment opened by Enter or a second tap.
	OnOpen func(YearPlace)
	// OnMoveJoint is called when the start of a segment, and with it the end of the
	// one before where they touch, was put on another day.
	OnMoveJoint func(row, segment, day int)
	// OnMenu is called for a tap with the other button, at a point of the window.
	OnMenu func(place YearPlace, at fyne.Position)
	// OnZoom is called when another span of days is shown.
	OnZoom func(days int)
	// OnRune is called for a letter that the chart has no use for.
	OnRune func(letter rune, place YearPlace)

	body   *yearBody
	scroll *container.Scroll
	fitted bool // zoom follows the width
	days   int  // that stay in sight when the width changes; 0 where the zoom stays
	middle int  // the day to be in the middle once the width is known
	moved  bool // somebody has scrolled since, and it need not be there any more
	wheel  *yearWheel
	drawn  *yearChartRenderer
	// modifiers are the keys held with the wheel.
	modifiers func() fyne.KeyModifier
}

var (
	_ fyne.Widget     = (*YearChart)(nil)
	_ fyne.Accessible = (*YearChart)(nil)
)

// The least days that the zoom shows, a month, and one step of it.
const (
	leastDays         = 31
	zoomStep  float32 = 1.25
)

// NewYearChart returns a chart that shows all days in the width it gets.
func NewYearChart(data YearData) *YearChart {
	c := &YearChart{fitted: true, modifiers: heldKeys}
	c.body = &yearBody{chart: c, data: data, zoom: 2, pointed: data.Axis.Today, known: map[int]YearRow{}, sprites: map[spriteKey]*sprite{}}
	c.body.ExtendBaseWidget(c.body)
	c.scroll = container.NewScroll(c.body)
	c.wheel = newYearWheel(c)
	c.scroll.OnScrolled = func(fyne.Position) {
		c.moved = true
		c.sync()
	}
	c.ExtendBaseWidget(c)
	return c
}

func heldKeys() fyne.KeyModifier {
	if d, ok := fyne.CurrentApp().Driver().(desktop.Driver); ok {
		return d.CurrentKeyModifiers()
	}
	return 0
}

// Set shows other data; zoom, place on the sheet and selection stay.
func (c *YearChart) Set(data YearData) {
	if c.body.data.Axis.First == c.body.data.Axis.Last {
		c.body.pointed = data.Axis.Today
	}
	c.body.data = data
	c.body.move = nil
	clear(c.body.known)
	c.body.selected.Row = max(0, min(c.body.selected.Row, data.Rows-1))
	c.Refresh()
}

// Body returns the part that takes the focus.
func (c *YearChart) Body() fyne.Focusable { return c.body }

// Select selects a place and brings it into sight.
func (c *YearChart) Select(p YearPlace) {
	if p == c.body.selected {
		return
	}
	c.body.selected = p
	if area, ok := c.body.area(p); ok {
		c.reveal(area)
	}
	c.body.touch()
	if c.OnSelect != nil {
		c.OnSelect(p)
	}
}

// Selected returns the selected place.
func (c *YearChart) Selected() YearPlace { return c.body.selected }

// Zoom returns the units of the screen per day.
func (c *YearChart) Zoom() float32 { return c.body.zoom }

// Days returns how many days are in sight.
func (c *YearChart) Days() int {
	if c.days > 0 {
		return c.days
	}
	return int(c.scroll.Size().Width/c.body.zoom + 0.5)
}

// ShowDays shows so many days, from a month to all, with a day in the middle. They stay
// in sight when the width changes.
func (c *YearChart) ShowDays(days, middle int) {
	c.fitted, c.days, c.middle, c.moved = false, max(days, leastDays), middle, false
	c.Refresh()
}

// SetZoom sets the units of the screen per day; the middle of the view stays.
func (c *YearChart) SetZoom(zoom float32) { c.setZoom(zoom, c.scroll.Size().Width/2) }

// setZoom zooms about a point of the view.
func (c *YearChart) setZoom(zoom, about float32) {
	width, all := c.scroll.Size().Width, float32(max(1, c.body.data.Axis.Last-c.body.data.Axis.First))
	least := width / all
	zoom = max(least, min(zoom, width/leastDays))
	c.fitted = zoom == least
	day := (c.scroll.Offset.X + about) / c.body.zoom
	if zoom == c.body.zoom {
		return
	}
	c.days = 0
	c.body.zoom = zoom
	c.body.Resize(c.body.MinSize())
	c.scroll.Offset.X = max(0, min(day*zoom-about, c.body.MinSize().Width-width))
	c.Refresh()
	if c.OnZoom != nil {
		c.OnZoom(c.Days())
	}
}

// FitAll shows all days in the width there is, now and when the width changes.
func (c *YearChart) FitAll() {
	c.fitted, c.days = true, 0
	c.Refresh()
	if c.OnZoom != nil {
		c.OnZoom(c.Days())
	}
}

// ScrollToDay brings a day to the middle of the view.
func (c *YearChart) ScrollToDay(day int) {
	c.scrollBy(c.body.x(day)-c.scroll.Offset.X-c.scroll.Size().Width/2, 0)
}

// ScrollToToday brings today near the left, where what is to come has the room.
func (c *YearChart) ScrollToToday() {
	const before = 0.2 // of the view, for what has been
	c.scrollBy(c.body.x(c.body.data.Axis.Today)-c.scroll.Offset.X-c.scroll.Size().Width*before, 0)
}

// ScrollToRow brings a row into sight.
func (c *YearChart) ScrollToRow(row int) {
	h := c.body.rowHeight()
	c.reveal(rect{c.scroll.Offset.X, float32(row) * h, 1, h})
}

func (c *YearChart) scrollBy(dx, dy float32) {
	c.moved = true
	most := c.body.MinSize().Subtract(c.scroll.Size())
	c.scroll.ScrollToOffset(fyne.NewPos(
		max(0, min(c.scroll.Offset.X+dx, most.Width)),
		max(0, min(c.scroll.Offset.Y+dy, most.Height))))
	c.sync()
}

// reveal scrolls no further than needed to bring an area into sight. Of one that is
// wider than the view, what is in sight will do.
func (c *YearChart) reveal(a rect) {
	o, size := c.scroll.Offset, c.scroll.Size()
	dx, dy := float32(0), float32(0)
	if a.w < size.Width || a.x > o.X+size.Width-grip || a.x+a.w < o.X+grip {
		if a.x+a.w > o.X+size.Width {
			dx = a.x + a.w - o.X - size.Width
		}
		if a.x-dx < o.X {
			dx = a.x - o.X
		}
	}
	if a.y+a.h+stripFoot > o.Y+size.Height {
		dy = a.y + a.h + stripFoot - o.Y - size.Height
	}
	if a.y-stripTop < o.Y {
		dy = a.y - stripTop - o.Y
	}
	if dx != 0 || dy != 0 {
		c.scrollBy(dx, dy)
	}
}

func (c *YearChart) open(p YearPlace) {
	if c.OnOpen != nil && p.Segment >= 0 {
		c.OnOpen(p)
	}
}

// sync brings labels, header and rows to where the sheet was scrolled.
func (c *YearChart) sync() {
	c.body.offset, c.body.view = c.scroll.Offset, c.scroll.Size()
	if c.body.drawn != nil {
		c.body.drawn.scrolled(false)
	}
	if c.drawn != nil {
		c.drawn.scrolled()
	}
}

// AccessibilityLabel returns row, segment and days of the selected place.
func (c *YearChart) AccessibilityLabel() string {
	b := c.body
	row, p := b.row(b.selected.Row), b.selected
	if p.Segment < 0 || p.Segment >= len(row.Segments) {
		return row.Label
	}
	s := row.Segments[p.Segment]
	if b.data.DayLabel == nil {
		return accessibleName(row.Label, s.Label)
	}
	if b.move != nil {
		return accessibleName(append([]string{row.Label, s.Label, b.data.DayLabel(b.move.day)}, b.move.said.Lines...)...)
	}
	if p.Joint {
		return accessibleName(row.Label, s.Label, b.data.DayLabel(s.Start))
	}
	return accessibleName(row.Label, s.Label, b.data.DayLabel(s.Start)+" – "+b.data.DayLabel(s.End-1))
}

// AccessibilityRole is a container.
func (c *YearChart) AccessibilityRole() fyne.AccessibleRole { return fyne.AccessibleRoleContainer }
