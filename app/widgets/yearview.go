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
		rows: map[int]*yearRowView{},
	}
	r.bubble.CornerRadius, r.bubble.StrokeWidth = 3, theme.Hair
	b.drawn = r
	return r
}

type yearBodyRenderer struct {
	body          *yearBody
	rows          map[int]*yearRowView
	spare         []*yearRowView
	today, ring   *canvas.Rectangle
	ghost, bubble *canvas.Rectangle
	said          []*canvas.Text // of a joint on the move
	objects       []fyne.CanvasObject
	stale         bool // the list of objects is to be made anew
}

func (r *yearBodyRenderer) MinSize() fyne.Size {
	b := r.body
	days := max(0, b.data.Axis.Last-b.data.Axis.First)
	return fyne.NewSize(float32(days)*b.zoom, float32(b.data.Rows)*b.rowHeight())
}

func (r *yearBodyRenderer) Layout(fyne.Size) { r.scrolled(false) }

// Refresh draws every row in sight anew.
func (r *yearBodyRenderer) Refresh() { r.scrolled(true) }

// scrolled brings the rows in sight up to date. Rows that stay in sight are drawn anew
// only when redraw is set or when the sheet has moved sideways beyond what is drawn.
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
	from, width := b.span()
	for index := first; index < end; index++ {
		view, kept := r.rows[index]
		if !kept {
			view = r.take()
			r.rows[index] = view
			show(view.raster, true)
		}
		if !kept || redraw || view.from != from || view.width != width || view.height != h {
			view.show(index, b.row(index), from, width, float32(index)*h, h)
		} else {
			view.write()
		}
	}
	r.stale = true
	r.refreshMarks(h)
}

// redraw draws one row as it would be.
func (r *yearBodyRenderer) redraw(index int, row YearRow) {
	if view, ok := r.rows[index]; ok {
		view.show(index, row, view.from, view.width, float32(index)*view.height, view.height)
		r.stale = true
	}
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

// refreshMove says beside a joint on the move what it would cost.
func (r *yearBodyRenderer) refreshMove(l look, h float32) {
	b := r.body
	moving := b.move != nil
	show(r.ghost, moving)
	show(r.bubble, moving)
	if !moving {
		for _, t := range r.said {
			show(t, false)
		}
		return
	}
	ink := theme.ColorPen
	if b.move.said.Bad {
		ink = fynetheme.ColorNameError
	}
	fill(r.ghost, l.colour(ink))
	r.bubble.FillColor, r.bubble.StrokeColor = l.colour(theme.ColorSurface), l.colour(ink)
	r.bubble.StrokeWidth = ringWidth
	r.bubble.Refresh()
	x, y := b.x(b.move.day), float32(b.move.place.Row)*h
	place(r.ghost, x-1, y, 2, h)
	r.writeMove(l, x, y, h)
}

func (r *yearBodyRenderer) writeMove(l look, x, y, h float32) {
	b := r.body
	lines := append([]string{b.move.said.Title}, b.move.said.Lines...)
	width, height := float32(0), float32(0)
	for i, line := range lines {
		if i == len(r.said) {
			r.said = append(r.said, canvas.NewText("", nil))
			r.stale = true
		}
		kind := scriptCaption.in(fynetheme.ColorNameForeground)
		if i == 0 {
			kind = scriptStrong
		}
		l.set(r.said[i], line, kind)
		show(r.said[i], true)
		size := r.said[i].MinSize()
		width, height = max(width, size.Width), height+size.Height
	}
	for _, t := range r.said[len(lines):] {
		show(t, false)
	}
	width, height = width+theme.Step2, height+theme.Step
	left := max(b.offset.X, min(x-width/2, b.offset.X+b.view.Width-width))
	top := y - height - theme.Half
	if top < b.offset.Y {
		top = y + h
	}
	place(r.bubble, left, top, width, height)
	at := top + theme.Half
	for _, t := range r.said[:len(lines)] {
		size := t.MinSize()
		place(t, left+theme.Step, at, size.Width, size.Height)
		at += size.Height
	}
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
		return rect{b.x(s.Start) - grip, y - 3, 2 * grip, band + 3}, true
	}
	x0 := max(b.x(s.Start)-2, 0)
	x1 := min(b.x(s.End)+2, b.x(b.data.Axis.Last))
	return rect{x0, y, x1 - x0, band}, true
}

// Objects puts the line of today over the strips and under what is written.
func (r *yearBodyRenderer) Objects() []fyne.CanvasObject {
	if !r.stale && r.objects != nil {
		return r.objects
	}
	r.stale = false
	var objects []fyne.CanvasObject
	first, end := r.body.visible()
	for i := first; i < end; i++ {
		if view, ok := r.rows[i]; ok {
			objects = append(objects, view.raster)
		}
	}
	objects = append(objects, r.today)
	for i := first; i < end; i++ {
		if view, ok := r.rows[i]; ok {
			objects = append(objects, view.texts()...)
		}
	}
	objects = append(objects, r.ring, r.ghost, r.bubble)
	for _, t := range r.said {
		objects = append(objects, t)
	}
	r.objects = objects
	return objects
}

func (r *yearBodyRenderer) Destroy() {}
