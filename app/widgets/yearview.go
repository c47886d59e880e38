package widgets

import (
	"image/color"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	fynetheme "fyne.io/fyne/v2/theme"

	"fourturn/app/theme"
)

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
	x0 := max(b.x(s.Start)-2, 0)
	x1 := min(b.x(s.End)+2, b.x(b.data.Axis.Last))
	return rect{x0, y, x1 - x0, band}, true
}

// Objects puts the line of today over the strips and under what is written.
func (r *yearBodyRenderer) Objects() []fyne.CanvasObject {
	var strips, marks []fyne.CanvasObject
	first, end := r.body.visible()
	for i := first; i < end; i++ {
		if view, ok := r.rows[i]; ok {
			strips = append(strips, view.raster)
			marks = append(marks, view.marks()...)
		}
	}
	objects := append(strips, r.today)
	objects = append(objects, marks...)
	return append(objects, r.ring, r.ghost, r.bubble, r.day)
}

func (r *yearBodyRenderer) Destroy() {}
