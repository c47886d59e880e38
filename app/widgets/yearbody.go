package widgets

import (
	"math"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"
	fynetheme "fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"fourturn/app/theme"
)

// yearBody is the part of a YearChart that scrolls: it is as large as all rows and
// draws only those in sight.
type yearBody struct {
	widget.BaseWidget
	chart    *YearChart
	data     YearData
	zoom     float32 // units of the screen per day
	offset   fyne.Position
	view     fyne.Size
	selected YearPlace
	focused  bool
	hover    *YearPlace // the joint under the pointer
	move     *jointMove
	pointed  int // the day that the weather is read for
	drawn    *yearBodyRenderer

	known   map[int]YearRow // rows that the caller told of since the last Set
	sprites map[spriteKey]*sprite
}

// jointMove is a joint being moved, by mouse or keys; nothing is changed yet.
type jointMove struct {
	place       YearPlace
	day         int
	first, last int
	byKey       bool
	said        YearMove
}

var (
	_ fyne.Widget            = (*yearBody)(nil)
	_ fyne.Focusable         = (*yearBody)(nil)
	_ fyne.Tappable          = (*yearBody)(nil)
	_ fyne.SecondaryTappable = (*yearBody)(nil)
	_ fyne.Draggable         = (*yearBody)(nil)
	_ desktop.Hoverable      = (*yearBody)(nil)
	_ desktop.Cursorable     = (*yearBody)(nil)
	_ fyne.Accessible        = (*yearBody)(nil)
)

// grip is how near the pointer must come to a joint to take it.
const grip float32 = 7

func (b *yearBody) x(day int) float32 { return float32(day-b.data.Axis.First) * b.zoom }

// day returns the day whose start is nearest to x.
func (b *yearBody) day(x float32) int {
	return b.data.Axis.First + int(math.Round(float64(x/b.zoom)))
}

func (b *yearBody) rowHeight() float32 {
	l := lookOf(b)
	return float32(math.Ceil(float64(l.size(fynetheme.SizeNameText)*1.4+l.size(fynetheme.SizeNameCaptionText)*1.4))) + theme.Step2 + theme.Half
}

// mostKnown is how many rows are kept: many screens full.
const mostKnown = 512

// row returns what is known of a row. It must not be changed.
func (b *yearBody) row(i int) YearRow {
	if i < 0 || i >= b.data.Rows || b.data.Row == nil {
		return YearRow{}
	}
	row, ok := b.known[i]
	if !ok {
		if len(b.known) >= mostKnown {
			clear(b.known)
		}
		row = b.data.Row(i)
		b.known[i] = row
	}
	return row
}

// visible returns the rows in sight, from first up to before end.
func (b *yearBody) visible() (first, end int) {
	h := b.rowHeight()
	first = max(0, int(b.offset.Y/h))
	end = min(b.data.Rows, int((b.offset.Y+b.view.Height)/h)+1)
	return first, max(first, end)
}

// span returns what is drawn of the days: more than the view, so that the pictures of
// rows are not made anew at each step sideways.
func (b *yearBody) span() (from, width float32) {
	whole := float32(b.data.Axis.Last-b.data.Axis.First) * b.zoom
	width = min(whole, 2*b.view.Width)
	step := b.view.Width / 2
	if step <= 0 {
		return 0, 0
	}
	from = float32(math.Floor(float64(b.offset.X/step))) * step
	from = float32(math.Round(float64(max(0, min(from-step/2, whole-width)))))
	return from, width
}

// weeks returns the ticks of weeks where a week is wide enough to be read.
func (b *yearBody) weeks() []YearTick {
	const least = 30 // units of the screen
	if b.zoom*7 < least {
		return nil
	}
	return b.data.Axis.Weeks
}

// at returns what lies at a point: a joint where one is near, else a segment.
func (b *yearBody) at(p fyne.Position) (YearPlace, bool) {
	index := int(p.Y / b.rowHeight())
	if p.Y < 0 || index >= b.data.Rows {
		return YearPlace{}, false
	}
	row := b.row(index)
	best, found := grip, YearPlace{}
	ok := false
	for i, s := range row.Segments {
		if d := float32(math.Abs(float64(b.x(s.Start) - p.X))); d <= best && row.movable(i, b.data.Axis) {
			best, found, ok = d, YearPlace{index, i, true}, true
		}
	}
	if ok {
		return found, true
	}
	for i, s := range row.Segments {
		if p.X >= b.x(s.Start) && p.X < b.x(s.End) {
			return YearPlace{index, i, false}, true
		}
	}
	return YearPlace{Row: index, Segment: -1}, true
}

// Tapped selects; a second tap on the same segment opens it.
func (b *yearBody) Tapped(ev *fyne.PointEvent) {
	if c := fyne.CurrentApp().Driver().CanvasForObject(b); c != nil {
		c.Focus(b)
	}
	place, ok := b.at(ev.Position)
	if !ok || place.Segment < 0 {
		return
	}
	if place == b.selected && !place.Joint {
		b.chart.open(place)
		return
	}
	b.chart.Select(place)
}

// TappedSecondary asks for a menu.
func (b *yearBody) TappedSecondary(ev *fyne.PointEvent) {
	if place, ok := b.at(ev.Position); ok && place.Segment >= 0 && b.chart.OnMenu != nil {
		b.chart.Select(place)
		b.chart.OnMenu(place, ev.AbsolutePosition)
	}
}

// Dragged moves the joint under the pointer, or else the whole sheet.
func (b *yearBody) Dragged(ev *fyne.DragEvent) {
	if b.move == nil {
		start := ev.Position.SubtractXY(ev.Dragged.DX, ev.Dragged.DY)
		place, ok := b.at(start)
		if !ok || !place.Joint {
			b.chart.scrollBy(-ev.Dragged.DX, -ev.Dragged.DY)
			return
		}
		b.grab(place, false)
		b.chart.Select(place)
	}
	b.moveTo(b.day(ev.Position.X))
}

// DragEnd drops the joint.
func (b *yearBody) DragEnd() { b.drop() }

// grab begins to move a joint.
func (b *yearBody) grab(place YearPlace, byKey bool) {
	row := b.row(place.Row)
	if !row.movable(place.Segment, b.data.Axis) {
		return
	}
	first, last := row.bounds(place.Segment, b.data.Axis)
	b.move = &jointMove{place: place, first: first, last: last, byKey: byKey}
	b.moveTo(row.Segments[place.Segment].Start)
}

func (b *yearBody) moveTo(day int) {
	if b.move == nil {
		return
	}
	m := b.move
	m.day = max(m.first, min(day, m.last))
	m.said = YearMove{}
	if b.data.Moving != nil {
		m.said = b.data.Moving(m.place, m.day)
	} else if b.data.DayLabel != nil {
		m.said.Title = b.data.DayLabel(m.day)
	}
	b.readDay(m.day)
	b.preview(m.place.Row, m.said.Row)
	b.touch()
}

// preview draws a row as it would be, or as it is for nil.
func (b *yearBody) preview(index int, row *YearRow) {
	if b.drawn == nil {
		return
	}
	if row == nil {
		as := b.row(index)
		row = &as
	}
	b.drawn.redraw(index, *row)
}

// readDay reads the weather of a day.
func (b *yearBody) readDay(day int) {
	day = max(b.data.Axis.First, min(day, b.data.Axis.Last-1))
	if day != b.pointed {
		b.pointed = day
		if b.chart.drawn != nil {
			b.chart.drawn.writeReading()
		}
	}
}

// drop ends a move and tells the caller when the day changed.
func (b *yearBody) drop() {
	m := b.move
	b.move = nil
	if m == nil {
		return
	}
	b.preview(m.place.Row, nil)
	b.touch()
	s := b.row(m.place.Row).Segments
	if m.place.Segment < len(s) && s[m.place.Segment].Start != m.day && b.chart.OnMoveJoint != nil {
		b.chart.OnMoveJoint(m.place.Row, m.place.Segment, m.day)
	}
}

func (b *yearBody) cancelMove() {
	if m := b.move; m != nil {
		b.move = nil
		b.preview(m.place.Row, nil)
	}
	b.touch()
}

// MouseIn looks for a joint under the pointer.
func (b *yearBody) MouseIn(ev *desktop.MouseEvent) { b.MouseMoved(ev) }

// MouseMoved looks for a joint under the pointer.
func (b *yearBody) MouseMoved(ev *desktop.MouseEvent) {
	if b.move == nil {
		b.readDay(b.data.Axis.First + int(math.Floor(float64(ev.Position.X/b.zoom))))
	}
	var hover *YearPlace
	if place, ok := b.at(ev.Position); ok && place.Joint {
		hover = &place
	}
	if (hover == nil) != (b.hover == nil) || hover != nil && *hover != *b.hover {
		b.hover = hover
		b.touch()
	}
}

// MouseOut forgets the joint.
func (b *yearBody) MouseOut() {
	if b.move == nil {
		b.readDay(b.data.Axis.Today)
	}
	if b.hover != nil {
		b.hover = nil
		b.touch()
	}
}

// touch draws selection, hover and move anew, but not the rows.
func (b *yearBody) touch() {
	if b.drawn != nil {
		b.drawn.refreshMarks(b.rowHeight())
	}
}

// Cursor shows that a joint can be moved.
func (b *yearBody) Cursor() desktop.Cursor {
	if b.hover != nil || b.move != nil {
		return desktop.HResizeCursor
	}
	return desktop.DefaultCursor
}

// AccessibilityLabel returns row, segment and days of the selected place.
func (b *yearBody) AccessibilityLabel() string { return b.chart.AccessibilityLabel() }

// AccessibilityRole is a container.
func (b *yearBody) AccessibilityRole() fyne.AccessibleRole { return fyne.AccessibleRoleContainer }
