package widgets

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"
)

// YearChart shows strips of plantings along a time axis, one row to a pot. Only
// rows in sight are drawn, so that thousands cost no more than a screenful.
//
// Mouse: a tap selects a segment or a joint, a second tap opens the segment, a
// joint is dragged to another day, anything else drags the sheet. Keys: Up and
// Down change the row, Left and Right go from segment to joint to segment, Enter
// opens a segment or takes a joint in hand; in hand, Left and Right move it by a
// day, Page Up and Page Down by a week, Enter puts it down, Esc puts it back.
// + and − zoom, 0 shows all days.
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

	body   *yearBody
	scroll *container.Scroll
	fitted bool // zoom follows the width
	drawn  *yearChartRenderer
}

var (
	_ fyne.Widget     = (*YearChart)(nil)
	_ fyne.Accessible = (*YearChart)(nil)
)

// The bounds of the zoom in units of the screen per day, and one step of it.
const (
	minZoom  float32 = 0.5
	maxZoom  float32 = 24
	zoomStep float32 = 1.25
)

// NewYearChart returns a chart that shows all days in the width it gets.
func NewYearChart(data YearData) *YearChart {
	c := &YearChart{fitted: true}
	c.body = &yearBody{chart: c, data: data, zoom: 2}
	c.body.ExtendBaseWidget(c.body)
	c.scroll = container.NewScroll(c.body)
	c.scroll.OnScrolled = func(fyne.Position) { c.sync() }
	c.ExtendBaseWidget(c)
	return c
}

// Set shows other data; zoom, place on the sheet and selection stay.
func (c *YearChart) Set(data YearData) {
	c.body.data = data
	c.body.move = nil
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

// SetZoom sets the units of the screen per day; the middle of the view stays.
func (c *YearChart) SetZoom(zoom float32) {
	c.fitted = false
	c.zoomTo(max(minZoom, min(zoom, maxZoom)))
}

// FitAll shows all days in the width there is, now and when the width changes.
func (c *YearChart) FitAll() {
	c.fitted = true
	c.Refresh()
}

func (c *YearChart) zoomTo(zoom float32) {
	middle := (c.scroll.Offset.X + c.scroll.Size().Width/2) / c.body.zoom
	c.body.zoom = zoom
	c.body.Resize(c.body.MinSize())
	c.scroll.Offset.X = max(0, middle*zoom-c.scroll.Size().Width/2)
	c.Refresh()
}

// ScrollToDay brings a day to the middle of the view.
func (c *YearChart) ScrollToDay(day int) {
	c.scrollBy(c.body.x(day)-c.scroll.Offset.X-c.scroll.Size().Width/2, 0)
}

// ScrollToRow brings a row into sight.
func (c *YearChart) ScrollToRow(row int) {
	h := c.body.rowHeight()
	c.reveal(rect{c.scroll.Offset.X, float32(row) * h, 1, h})
}

func (c *YearChart) scrollBy(dx, dy float32) {
	most := c.body.MinSize().Subtract(c.scroll.Size())
	c.scroll.ScrollToOffset(fyne.NewPos(
		max(0, min(c.scroll.Offset.X+dx, most.Width)),
		max(0, min(c.scroll.Offset.Y+dy, most.Height))))
	c.sync()
}

// reveal scrolls no further than needed to bring an area into sight.
func (c *YearChart) reveal(a rect) {
	o, size := c.scroll.Offset, c.scroll.Size()
	dx, dy := float32(0), float32(0)
	if a.x+a.w > o.X+size.Width {
		dx = a.x + a.w - o.X - size.Width
	}
	if a.x-dx < o.X {
		dx = a.x - o.X
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
		c.drawn.writeHeader()
		c.drawn.writeLabels()
		c.drawn.repaint()
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
		return accessibleName(row.Label, s.Label, b.data.DayLabel(b.move.day))
	}
	if p.Joint {
		return accessibleName(row.Label, s.Label, b.data.DayLabel(s.Start))
	}
	return accessibleName(row.Label, s.Label, b.data.DayLabel(s.Start)+" – "+b.data.DayLabel(s.End-1))
}

// AccessibilityRole is a container.
func (c *YearChart) AccessibilityRole() fyne.AccessibleRole { return fyne.AccessibleRoleContainer }
