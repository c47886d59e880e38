package widgets

import (
	"image/color"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/driver/desktop"
	fynetheme "fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"fourturn/app/theme"
)

// tableHead is the row of headings. Left and Right choose one, Enter sorts by it.
type tableHead struct {
	widget.BaseWidget
	table   *DataTable
	at      int // the heading chosen by keys
	focused bool
	hovered int // −1 for none
}

var (
	_ fyne.Widget       = (*tableHead)(nil)
	_ fyne.Tappable     = (*tableHead)(nil)
	_ fyne.Focusable    = (*tableHead)(nil)
	_ fyne.Disableable  = (*tableHead)(nil)
	_ desktop.Hoverable = (*tableHead)(nil)
	_ fyne.Accessible   = (*tableHead)(nil)
)

// Disabled reports that nothing can be sorted, so that Tab passes by.
func (h *tableHead) Disabled() bool {
	for _, c := range h.table.data.Columns {
		if c.Sorts {
			return false
		}
	}
	return true
}

// Enable is not used.
func (h *tableHead) Enable() {}

// Disable is not used.
func (h *tableHead) Disable() {}

// column returns the heading at x, −1 for none.
func (h *tableHead) column(x float32) int {
	for i, w := range h.table.widths(h.Size().Width) {
		if x < w {
			return i
		}
		x -= w
	}
	return -1
}

func (h *tableHead) sort(i int) {
	d := h.table.data
	if i < 0 || i >= len(d.Columns) || !d.Columns[i].Sorts || h.table.OnSort == nil {
		return
	}
	h.table.OnSort(i, d.Sorted == i && !d.Descending)
}

// Tapped sorts.
func (h *tableHead) Tapped(ev *fyne.PointEvent) { h.sort(h.column(ev.Position.X)) }

// FocusGained shows the ring at the chosen heading.
func (h *tableHead) FocusGained() {
	h.focused = true
	h.step(0, 1)
	h.Refresh()
}

// FocusLost hides the ring.
func (h *tableHead) FocusLost() {
	h.focused = false
	h.Refresh()
}

// TypedRune is not used.
func (h *tableHead) TypedRune(rune) {}

// TypedKey chooses a heading and sorts by it.
func (h *tableHead) TypedKey(ev *fyne.KeyEvent) {
	switch ev.Name {
	case fyne.KeyLeft:
		h.step(-1, -1)
	case fyne.KeyRight:
		h.step(1, 1)
	case fyne.KeyReturn, fyne.KeyEnter, fyne.KeySpace:
		h.sort(h.at)
	case fyne.KeyEscape:
		escape(h)
	}
	h.Refresh()
}

// step goes from the chosen heading by first, then on by next until one sorts.
func (h *tableHead) step(first, next int) {
	for i := h.at + first; i >= 0 && i < len(h.table.data.Columns); i += next {
		if h.table.data.Columns[i].Sorts {
			h.at = i
			return
		}
	}
}

// MouseIn lights a heading.
func (h *tableHead) MouseIn(ev *desktop.MouseEvent) { h.MouseMoved(ev) }

// MouseMoved lights a heading.
func (h *tableHead) MouseMoved(ev *desktop.MouseEvent) {
	if i := h.column(ev.Position.X); i != h.hovered {
		h.hovered = i
		h.Refresh()
	}
}

// MouseOut puts out the light.
func (h *tableHead) MouseOut() {
	h.hovered = -1
	h.Refresh()
}

// AccessibilityLabel returns the chosen heading.
func (h *tableHead) AccessibilityLabel() string {
	if h.at >= len(h.table.data.Columns) {
		return ""
	}
	return h.table.data.Columns[h.at].Label
}

// AccessibilityRole is a button.
func (h *tableHead) AccessibilityRole() fyne.AccessibleRole { return fyne.AccessibleRoleButton }

// CreateRenderer is called by the toolkit.
func (h *tableHead) CreateRenderer() fyne.WidgetRenderer {
	h.hovered = -1
	r := &tableHeadRenderer{
		head: h, ground: canvas.NewRectangle(color.Transparent), rule: canvas.NewRectangle(color.Transparent),
		light: canvas.NewRectangle(color.Transparent), ring: newRing(),
		arrow: canvas.NewImageFromResource(theme.IconIn(theme.IconUp, fynetheme.ColorNameForeground)),
	}
	r.arrow.FillMode = canvas.ImageFillContain
	r.Refresh()
	return r
}

type tableHeadRenderer struct {
	head                      *tableHead
	ground, rule, light, ring *canvas.Rectangle
	labels                    []*canvas.Text
	arrow                     *canvas.Image
}

func (r *tableHeadRenderer) Refresh() {
	l, d := lookOf(r.head), r.head.table.data
	for len(r.labels) < len(d.Columns) {
		r.labels = append(r.labels, canvas.NewText("", nil))
	}
	r.labels = r.labels[:len(d.Columns)]
	fill(r.ground, l.colour(theme.ColorMargin))
	fill(r.rule, l.colour(theme.ColorOutline))
	fill(r.light, l.colour(fynetheme.ColorNameHover))
	name := theme.IconUp
	if d.Descending {
		name = theme.IconDown
	}
	show(r.arrow, d.Sorted >= 0 && d.Sorted < len(d.Columns))
	r.arrow.Resource = theme.IconIn(name, fynetheme.ColorNameForeground)
	r.arrow.Refresh()
	l.ring(r.ring, r.head.focused)
	r.Layout(r.head.Size())
}

func (r *tableHeadRenderer) MinSize() fyne.Size {
	return fyne.NewSize(r.head.table.least(), lookOf(r.head).measure("X", scriptCaption).Height+theme.Step+theme.Half)
}

func (r *tableHeadRenderer) Layout(size fyne.Size) {
	h, l := r.head, lookOf(r.head)
	d := h.table.data
	place(r.ground, 0, 0, size.Width, size.Height)
	place(r.rule, 0, size.Height-theme.Hair, size.Width, theme.Hair)
	lit := h.hovered >= 0 && h.hovered < len(d.Columns) && d.Columns[h.hovered].Sorts
	show(r.light, lit)
	arrow := l.measure("X", scriptCaption).Height * 0.75
	x := float32(0)
	for i, w := range h.table.widths(size.Width) {
		kind := scriptCaption
		room := w - theme.Step2
		if i == d.Sorted {
			kind = kind.in(fynetheme.ColorNameForeground)
			kind.style.Bold = true
			room -= arrow + theme.Half
		}
		l.set(r.labels[i], l.fit(d.Columns[i].Label, kind, room), kind)
		text := r.labels[i].MinSize()
		left := x + theme.Step
		if d.Columns[i].Right {
			left = x + w - theme.Step - text.Width
		}
		place(r.labels[i], left, centred(0, size.Height, text.Height), text.Width, text.Height)
		if i == d.Sorted {
			at := left + text.Width + theme.Half
			if d.Columns[i].Right {
				at = left - arrow - theme.Half
			}
			place(r.arrow, at, centred(0, size.Height, arrow), arrow, arrow)
		}
		if i == h.at {
			place(r.ring, x, 0, w, size.Height)
		}
		if i == h.hovered {
			place(r.light, x, 0, w, size.Height)
		}
		x += w
	}
}

func (r *tableHeadRenderer) Objects() []fyne.CanvasObject {
	objects := []fyne.CanvasObject{r.ground, r.light, r.rule, r.arrow}
	for _, label := range r.labels {
		objects = append(objects, label)
	}
	return append(objects, r.ring)
}

func (r *tableHeadRenderer) Destroy() {}
