package widgets

import (
	"image/color"
	"math"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
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
	drawn    *yearBodyRenderer
}

// jointMove is a joint being moved, by mouse or keys; nothing is changed yet.
type jointMove struct {
	place       YearPlace
	day         int
	first, last int
	byKey       bool
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
	return float32(math.Ceil(float64(l.size(fynetheme.SizeNameText)*1.4+l.size(fynetheme.SizeNameCaptionText)*1.4))) + theme.Step2
}

func (b *yearBody) row(i int) YearRow {
	if i < 0 || i >= b.data.Rows || b.data.Row == nil {
		return YearRow{}
	}
	return b.data.Row(i)
}

// visible returns the rows in sight, from first up to before end.
func (b *yearBody) visible() (first, end int) {
	h := b.rowHeight()
	first = max(0, int(b.offset.Y/h))
	end = min(b.data.Rows, int((b.offset.Y+b.view.Height)/h)+1)
	return first, max(first, end)
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
	b.move = &jointMove{place, row.Segments[place.Segment].Start, first, last, byKey}
	b.touch()
}

func (b *yearBody) moveTo(day int) {
	if b.move == nil {
		return
	}
	b.move.day = max(b.move.first, min(day, b.move.last))
	b.touch()
}

// drop ends a move and tells the caller when the day changed.
func (b *yearBody) drop() {
	m := b.move
	b.move = nil
	if m == nil {
		return
	}
	b.touch()
	s := b.row(m.place.Row).Segments
	if m.place.Segment < len(s) && s[m.place.Segment].Start != m.day && b.chart.OnMoveJoint != nil {
		b.chart.OnMoveJoint(m.place.Row, m.place.Segment, m.day)
	}
}

func (b *yearBody) cancelMove() {
	b.move = nil
	b.touch()
}

// MouseIn looks for a joint under the pointer.
func (b *yearBody) MouseIn(ev *desktop.MouseEvent) { b.MouseMoved(ev) }

// MouseMoved looks for a joint under the pointer.
func (b *yearBody) MouseMoved(ev *desktop.MouseEvent) {
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

// CreateRenderer is called by the toolkit.
func (b *yearBody) CreateRenderer() fyne.WidgetRenderer {
	r := &yearBodyRenderer{
		body: b, today: canvas.NewRectangle(color.Transparent), ring: newRing(),
		ghost: canvas.NewRectangle(color.Transparent), bubble: canvas.NewRectangle(color.Transparent),
		day: canvas.NewText("", nil), rows: map[int]*yearRowView{},
	}
	r.bubble.CornerRadius = 3
	r.day.Alignment = fyne.TextAlignCenter
	b.drawn = r
	return r
}

type yearBodyRenderer struct {
	body          *yearBody
	rows          map[int]*yearRowView
	spare         []*yearRowView
	today, ring   *canvas.Rectangle
	ghost, bubble *canvas.Rectangle
	day           *canvas.Text
}

func (r *yearBodyRenderer) MinSize() fyne.Size {
	b := r.body
	days := max(0, b.data.Axis.Last-b.data.Axis.First)
	return fyne.NewSize(float32(days)*b.zoom, float32(b.data.Rows)*b.rowHeight())
}

func (r *yearBodyRenderer) Layout(fyne.Size) { r.scrolled(false) }

// Refresh draws every row in sight anew.
func (r *yearBodyRenderer) Refresh() { r.scrolled(true) }

// scrolled brings the rows in sight up to date; rows that stay in sight are drawn
// anew only when redraw is set or the sheet moved sideways.
func (r *yearBodyRenderer) scrolled(redraw bool) {
	b := r.body
	first, end := b.visible()
	for index, view := range r.rows {
		if index < first || index >= end {
			view.hide()
			delete(r.rows, index)
			r.spare = append(r.spare, view)
		}
	}
	h := b.rowHeight()
	width := min(b.view.Width, r.MinSize().Width)
	for index := first; index < end; index++ {
		view, kept := r.rows[index]
		if !kept {
			view = r.take()
			r.rows[index] = view
			show(view.raster, true)
		}
		if !kept || redraw || view.from != b.offset.X || view.raster.Size().Width != width {
			view.show(index, b.row(index), b.offset.X, width, float32(index)*h, h)
		}
	}
	r.refreshMarks(h)
}

func (r *yearBodyRenderer) take() *yearRowView {
	if n := len(r.spare); n > 0 {
		view := r.spare[n-1]
		r.spare = r.spare[:n-1]
		return view
	}
	return newYearRowView(r.body)
}

// refreshMarks places today, the selection and a joint on the move.
func (r *yearBodyRenderer) refreshMarks(h float32) {
	b, l := r.body, lookOf(r.body)
	axis := b.data.Axis
	show(r.today, axis.TodayLabel != "" && axis.Today >= axis.First && axis.Today < axis.Last)
	fill(r.today, l.colour(theme.ColorToday))
	place(r.today, b.x(axis.Today)-1, b.offset.Y, 2, min(b.view.Height, r.MinSize().Height-b.offset.Y))

	area, ok := b.area(b.selected)
	r.ring.StrokeColor = l.colour(theme.ColorPen)
	r.ring.StrokeWidth = 1
	if b.focused {
		r.ring.StrokeWidth = ringWidth
	}
	show(r.ring, ok)
	place(r.ring, area.x, area.y, area.w, area.h)
	r.ring.Refresh()
	r.refreshMove(l, h)
}

func (r *yearBodyRenderer) refreshMove(l look, h float32) {
	b := r.body
	moving := b.move != nil
	for _, o := range []fyne.CanvasObject{r.ghost, r.bubble, r.day} {
		show(o, moving)
	}
	if !moving {
		return
	}
	text := ""
	if b.data.DayLabel != nil {
		text = b.data.DayLabel(b.move.day)
	}
	fill(r.ghost, l.colour(theme.ColorPen))
	fill(r.bubble, l.colour(theme.ColorPen))
	l.set(r.day, text, scriptStrong.in(fynetheme.ColorNameBackground))
	x, y := b.x(b.move.day), float32(b.move.place.Row)*h
	place(r.ghost, x-1, y, 2, h)
	size := r.day.MinSize()
	w := size.Width + theme.Step2
	left := max(b.offset.X, min(x-w/2, b.offset.X+b.view.Width-w))
	top := y - size.Height - theme.Half
	if top < b.offset.Y {
		top = y + h
	}
	place(r.bubble, left, top, w, size.Height+theme.Half)
	place(r.day, left, top+theme.Half/2, w, size.Height)
}

// rect is an area of the body.
type rect struct{ x, y, w, h float32 }

// area returns where a place lies, and whether it exists.
func (b *yearBody) area(p YearPlace) (rect, bool) {
	row := b.row(p.Row)
	if p.Segment < 0 || p.Segment >= len(row.Segments) {
		return rect{}, false
	}
	s, h := row.Segments[p.Segment], b.rowHeight()
	y := float32(p.Row)*h + stripTop - 2
	band := h - stripTop - stripFoot + 4
	if p.Joint {
		return rect{b.x(s.Start) - grip, y, 2 * grip, band}, true
	}
	x0 := max(b.x(s.Start), 0) - 2
	x1 := min(b.x(s.End), b.x(b.data.Axis.Last)) + 2
	return rect{x0, y, x1 - x0, band}, true
}

func (r *yearBodyRenderer) Objects() []fyne.CanvasObject {
	var objects []fyne.CanvasObject
	first, end := r.body.visible()
	for i := first; i < end; i++ {
		if view, ok := r.rows[i]; ok {
			objects = append(objects, view.objects()...)
		}
	}
	return append(objects, r.today, r.ring, r.ghost, r.bubble, r.day)
}

func (r *yearBodyRenderer) Destroy() {}
