package widgets

import (
	"image"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	fynetheme "fyne.io/fyne/v2/theme"

	"fourturn/app/theme"
	"fourturn/app/widgets/ink"
)

// yearRowView draws one row that is in sight: a raster for the strip, wider than the
// view so that it need not be drawn anew at each step sideways, and the labels on top.
// It is used again for other rows.
type yearRowView struct {
	body   *yearBody
	index  int
	row    YearRow
	raster *canvas.Raster
	labels []*yearLabel
	from   float32 // left edge of the raster within the body
	width  float32
	height float32
	sheet  *ink.Sheet // drawn on again and again while its size stays
}

// yearLabel is the name of a segment that is in sight.
type yearLabel struct {
	text  *canvas.Text
	whole string
	room  float32 // that the text was cut for
}

func newYearRowView(b *yearBody) *yearRowView {
	v := &yearRowView{body: b, index: -1}
	v.raster = canvas.NewRaster(v.draw)
	return v
}

// show draws a row in the days from the left edge on.
func (v *yearRowView) show(index int, row YearRow, from, width, top, height float32) {
	v.index, v.row, v.from, v.width, v.height = index, row, from, width, height
	size := v.raster.Size()
	place(v.raster, from, top, width, height)
	if size == v.raster.Size() { // else Resize has asked for the picture already
		v.raster.Refresh()
	}
	v.write()
}

// write puts a label on each segment that is in sight and wide enough. It stays in
// sight while its segment does.
func (v *yearRowView) write() {
	b, l := v.body, lookOf(v.body)
	used := 0
	text := l.measure("X", scriptCaption).Height
	left0, right0 := b.offset.X, b.offset.X+b.view.Width
	top := float32(v.index)*v.height + max(stripTop, v.height-stripFoot-plantBand-text-theme.Half/2)
	for i := range v.row.Segments {
		s := &v.row.Segments[i]
		left, right := max(b.x(s.Start), left0)+theme.Step, min(b.x(s.End), right0)-theme.Half
		if right-left < text {
			continue
		}
		label := v.label(used)
		if !label.cut(l, s.Label, right-left) {
			continue
		}
		used++
		place(label.text, left, top, right-left, text)
		show(label.text, true)
	}
	for _, label := range v.labels[used:] {
		show(label.text, false)
	}
}

// cut writes as much of the text as there is room for; false where that is too little
// to be read.
func (y *yearLabel) cut(l look, whole string, room float32) bool {
	script := scriptCaption.in(fynetheme.ColorNameForeground)
	const near = 4 // cut anew only when the room has changed so much
	same := whole == y.whole && room >= y.room && room < y.room+near
	if !same {
		y.whole, y.room = whole, room
		l.set(y.text, l.fit(whole, script, room), script)
	} else {
		l.set(y.text, y.text.Text, script)
	}
	return len([]rune(y.text.Text)) >= min(3, len([]rune(whole))) && y.text.Text != ""
}

func (v *yearRowView) label(i int) *yearLabel {
	if i == len(v.labels) {
		v.labels = append(v.labels, &yearLabel{text: canvas.NewText("", nil), room: -1})
	}
	return v.labels[i]
}

func (v *yearRowView) hide() {
	v.index = -1
	show(v.raster, false)
	for _, label := range v.labels {
		show(label.text, false)
	}
}

// texts returns what lies on top of the raster.
func (v *yearRowView) texts() []fyne.CanvasObject {
	objects := make([]fyne.CanvasObject, len(v.labels))
	for i, label := range v.labels {
		objects[i] = label.text
	}
	return objects
}

// draw makes the picture of the strip.
func (v *yearRowView) draw(w, h int) image.Image {
	if v.sheet == nil || !v.sheet.Clear(w, h) {
		v.sheet = ink.NewSheet(w, h)
	}
	p := &rowPainter{
		sheet: v.sheet, look: lookOf(v.body), view: v,
		scale: float64(h) / float64(max(v.height, 1)),
		w:     float64(w), h: float64(h),
	}
	p.paint()
	return p.sheet.Image
}
