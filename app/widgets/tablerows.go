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

// textScale returns the scale of text of a look.
func textScale(l look) float32 { return l.size(fynetheme.SizeNameText) / 14 }

// tableList is the toolkit's list of rows in sight, with our keys.
type tableList struct {
	widget.List
	table   *DataTable
	focused bool
}

func newTableList(t *DataTable) *tableList {
	l := &tableList{table: t}
	l.Length = func() int { return t.data.Rows }
	l.CreateItem = func() fyne.CanvasObject { return newTableRow(t) }
	l.UpdateItem = func(i int, o fyne.CanvasObject) { o.(*tableRow).show(i) }
	l.HideSeparators = true
	l.ExtendBaseWidget(l)
	return l
}

// FocusGained shows the ring at the selected row.
func (l *tableList) FocusGained() { l.setFocused(true) }

// FocusLost hides the ring.
func (l *tableList) FocusLost() { l.setFocused(false) }

func (l *tableList) setFocused(focused bool) {
	l.focused = focused
	if focused && l.table.selected < 0 && l.table.data.Rows > 0 {
		l.table.Select(0)
		return
	}
	if s := l.table.selected; s >= 0 && s < l.table.data.Rows {
		l.RefreshItem(s)
	}
}

// TypedKey selects and opens rows.
func (l *tableList) TypedKey(ev *fyne.KeyEvent) {
	t := l.table
	page := max(1, int(l.Size().Height/newTableRow(t).MinSize().Height)-1)
	last := t.data.Rows - 1
	switch ev.Name {
	case fyne.KeyUp:
		t.Select(max(0, t.selected-1))
	case fyne.KeyDown:
		t.Select(t.selected + 1)
	case fyne.KeyPageUp:
		t.Select(max(0, t.selected-page))
	case fyne.KeyPageDown:
		t.Select(t.selected + page)
	case fyne.KeyHome:
		t.Select(min(0, last))
	case fyne.KeyEnd:
		t.Select(last)
	case fyne.KeyReturn, fyne.KeyEnter:
		t.open()
	case fyne.KeyEscape:
		escape(l)
	}
}

// AccessibilityLabel is the table's.
func (l *tableList) AccessibilityLabel() string { return l.table.AccessibilityLabel() }

// AccessibilityRole is a container.
func (l *tableList) AccessibilityRole() fyne.AccessibleRole { return fyne.AccessibleRoleContainer }

// tableRow is one row in sight, or the totals.
type tableRow struct {
	widget.BaseWidget
	table   *DataTable
	index   int
	total   bool
	hovered bool
}

var (
	_ fyne.Tappable     = (*tableRow)(nil)
	_ desktop.Hoverable = (*tableRow)(nil)
)

func newTableRow(t *DataTable) *tableRow {
	r := &tableRow{table: t, index: -1}
	r.ExtendBaseWidget(r)
	return r
}

func (r *tableRow) show(index int) {
	r.index = index
	r.Refresh()
}

// Tapped selects or opens the row.
func (r *tableRow) Tapped(*fyne.PointEvent) {
	if !r.total && r.index >= 0 {
		r.table.tapped(r.index)
	}
}

// MouseIn lights the row.
func (r *tableRow) MouseIn(*desktop.MouseEvent) {
	r.hovered = !r.total
	r.Refresh()
}

// MouseMoved is not used.
func (r *tableRow) MouseMoved(*desktop.MouseEvent) {}

// MouseOut puts out the light.
func (r *tableRow) MouseOut() {
	r.hovered = false
	r.Refresh()
}

func (r *tableRow) cell(column int) Cell {
	t := r.table
	switch {
	case r.total && column < len(t.data.Totals):
		return Cell{Text: t.data.Totals[column], Strong: true}
	case !r.total && r.index >= 0 && r.index < t.data.Rows && t.data.Cell != nil:
		return t.data.Cell(r.index, column)
	}
	return Cell{}
}

// CreateRenderer is called by the toolkit.
func (r *tableRow) CreateRenderer() fyne.WidgetRenderer {
	rr := &tableRowRenderer{
		row: r, ground: canvas.NewRectangle(color.Transparent), ribbon: canvas.NewRectangle(color.Transparent),
		rule: canvas.NewRectangle(color.Transparent), ring: newRing(),
	}
	rr.Refresh()
	return rr
}

type tableRowRenderer struct {
	row                        *tableRow
	ground, ribbon, rule, ring *canvas.Rectangle
	texts                      []*canvas.Text
	icons                      []*canvas.Image
}

func (r *tableRowRenderer) Refresh() {
	row, l := r.row, lookOf(r.row)
	for len(r.texts) < len(row.table.data.Columns) {
		r.texts = append(r.texts, canvas.NewText("", nil))
		icon := canvas.NewImageFromResource(nil)
		icon.FillMode = canvas.ImageFillContain
		r.icons = append(r.icons, icon)
	}
	selected := !row.total && row.index >= 0 && row.index == row.table.selected
	ground := color.Color(color.Transparent)
	switch {
	case selected, row.total:
		ground = l.colour(theme.ColorSurface)
	case row.hovered:
		ground = l.colour(fynetheme.ColorNameHover)
	}
	fill(r.ground, ground)
	show(r.ribbon, selected)
	fill(r.ribbon, l.colour(theme.ColorRibbon))
	rule := theme.ColorRule
	if row.total {
		rule = theme.ColorOutline
	}
	fill(r.rule, l.colour(rule))
	l.ring(r.ring, selected && row.table.list.focused)
	r.Layout(row.Size())
}

func (r *tableRowRenderer) MinSize() fyne.Size {
	return fyne.NewSize(r.row.table.least(), lookOf(r.row).measure("X", scriptText).Height+theme.Step+theme.Half)
}

func (c Cell) script() script {
	s := scriptText
	switch {
	case c.Strong:
		s = scriptStrong
	case c.Soft:
		s = scriptSoft
	}
	if c.Late {
		s = s.in(theme.ColorLate)
	}
	return s
}

func (r *tableRowRenderer) Layout(size fyne.Size) {
	row, l := r.row, lookOf(r.row)
	place(r.ground, 0, 0, size.Width, size.Height)
	place(r.ribbon, 0, 2, ribbonWidth, size.Height-4)
	place(r.ring, 0, 0, size.Width, size.Height)
	if row.total {
		place(r.rule, 0, 0, size.Width, theme.Hair)
	} else {
		place(r.rule, 0, size.Height-theme.Hair, size.Width, theme.Hair)
	}
	icon := l.measure("X", scriptText).Height * 0.85
	x := float32(0)
	for i, w := range row.table.widths(size.Width) {
		cell := row.cell(i)
		left, width := x+theme.Step, w-theme.Step2
		show(r.icons[i], cell.Icon != "" || cell.Picture != nil)
		if cell.Picture != nil {
			if r.icons[i].Image != cell.Picture {
				r.icons[i].Image, r.icons[i].Resource = cell.Picture, nil
				r.icons[i].Refresh()
			}
			high := size.Height - 2
			place(r.icons[i], x+theme.Half, 1, high, high)
			left, width = x+theme.Step+high, w-high-theme.Step2
		} else if cell.Icon != "" {
			r.icons[i].Image = nil
			colour := theme.ColorInkSoft
			if cell.Late {
				colour = theme.ColorLate
			}
			r.icons[i].Resource = theme.IconIn(cell.Icon, colour)
			r.icons[i].Refresh()
			place(r.icons[i], left, centred(0, size.Height, icon), icon, icon)
			left, width = left+icon+theme.Half, width-icon-theme.Half
		}
		l.set(r.texts[i], l.fit(cell.Text, cell.script(), width), cell.script())
		text := r.texts[i].MinSize()
		if row.table.data.Columns[i].Right {
			left += width - text.Width
		}
		place(r.texts[i], left, centred(0, size.Height, text.Height), text.Width, text.Height)
		show(r.texts[i], true)
		x += w
	}
	for i := len(row.table.data.Columns); i < len(r.texts); i++ { // of columns that are gone
		show(r.texts[i], false)
		show(r.icons[i], false)
	}
}

func (r *tableRowRenderer) Objects() []fyne.CanvasObject {
	objects := []fyne.CanvasObject{r.ground, r.ribbon, r.rule}
	for i := range r.texts {
		objects = append(objects, r.icons[i], r.texts[i])
	}
	return append(objects, r.ring)
}

func (r *tableRowRenderer) Destroy() {}
