package widgets

import (
	"image"
	"math"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	fynetheme "fyne.io/fyne/v2/theme"

	"fourturn/app/theme"
	"fourturn/app/widgets/ink"
)

// Measures of a strip, in units of the screen, for text scale 1.
const (
	stripTop    = 6.0  // ground above the strip
	stripFoot   = 13.0 // below the strip, for brackets and marks
	hatchHeight = 8.0  // the hatched edge along the foot of the strip
	knobWidth   = 5.0
	knobHeight  = 16.0
	markRadius  = 2.6
)

// yearRowView draws one row that is in sight: a raster for the strip and texts on
// top. It is used again for other rows.
type yearRowView struct {
	body   *yearBody
	index  int
	row    YearRow
	raster *canvas.Raster
	labels []*canvas.Text
	icons  []*canvas.Image
	from   float32 // left edge of the raster within the body
	height float32
}

func newYearRowView(b *yearBody) *yearRowView {
	v := &yearRowView{body: b, index: -1}
	v.raster = canvas.NewRaster(v.draw)
	return v
}

// show places the view for a row and writes its labels.
func (v *yearRowView) show(index int, row YearRow, from, width, top, height float32) {
	v.index, v.row, v.from, v.height = index, row, from, height
	place(v.raster, from, top, width, height)
	v.raster.Refresh()
	v.write(from, width, top, height)
}

// write puts a label on each segment that is in sight and wide enough.
func (v *yearRowView) write(from, width, top, height float32) {
	l := lookOf(v.body)
	labels, icons := 0, 0
	bandTop, band := top+stripTop, height-stripTop-stripFoot-hatchHeight
	size := l.size(fynetheme.SizeNameInlineIcon) * 0.75
	for _, s := range v.row.Segments {
		left := max(v.body.x(s.Start), from) + theme.Step
		right := min(v.body.x(s.End), from+width) - theme.Half
		for _, name := range []theme.IconName{s.Icon, pinIcon(s)} {
			if name == "" || right-left < size {
				continue
			}
			icon := v.icon(icons)
			icons++
			icon.Resource = theme.IconIn(name, theme.CategoryEdge(s.Category))
			place(icon, left, centred(bandTop, band, size), size, size)
			show(icon, true)
			icon.Refresh()
			left += size + theme.Half
		}
		text := l.fit(s.Label, scriptCaption, right-left)
		if len([]rune(text)) < 3 && text != s.Label || text == "" {
			continue
		}
		label := v.label(labels)
		labels++
		l.set(label, text, scriptCaption.in(fynetheme.ColorNameForeground))
		h := label.MinSize().Height
		place(label, left, centred(bandTop, band, h), right-left, h)
		show(label, true)
	}
	for _, t := range v.labels[labels:] {
		show(t, false)
	}
	for _, i := range v.icons[icons:] {
		show(i, false)
	}
}

func pinIcon(s YearSegment) theme.IconName {
	if s.Pinned {
		return theme.IconPin
	}
	return ""
}

func (v *yearRowView) label(i int) *canvas.Text {
	if i == len(v.labels) {
		v.labels = append(v.labels, canvas.NewText("", nil))
	}
	return v.labels[i]
}

func (v *yearRowView) icon(i int) *canvas.Image {
	if i == len(v.icons) {
		icon := canvas.NewImageFromResource(nil)
		icon.FillMode = canvas.ImageFillContain
		v.icons = append(v.icons, icon)
	}
	return v.icons[i]
}

// marks returns what lies on top of the raster.
func (v *yearRowView) marks() []fyne.CanvasObject {
	var objects []fyne.CanvasObject
	for _, i := range v.icons {
		objects = append(objects, i)
	}
	for _, t := range v.labels {
		objects = append(objects, t)
	}
	return objects
}

func (v *yearRowView) hide() {
	v.index = -1
	show(v.raster, false)
	for _, o := range v.marks() {
		show(o, false)
	}
}

// draw makes the picture of the strip.
func (v *yearRowView) draw(w, h int) image.Image {
	p := &rowPainter{
		sheet: ink.NewSheet(w, h), look: lookOf(v.body), view: v,
		scale: float64(h) / float64(max(v.height, 1)),
		w:     float64(w), h: float64(h),
	}
	p.ground()
	for _, s := range v.row.Segments {
		p.segment(s)
	}
	for i, s := range v.row.Segments {
		p.spread(s)
		if v.row.movable(i, v.body.data.Axis) {
			p.knob(s)
		}
	}
	for _, m := range v.row.Marks {
		p.mark(m)
	}
	return p.sheet.Image
}

// rowPainter draws one strip in pixels.
type rowPainter struct {
	sheet *ink.Sheet
	look  look
	view  *yearRowView
	scale float64
	w, h  float64
}

// x returns the pixel of the start of a day, on a whole pixel.
func (p *rowPainter) x(day int) float64 {
	return math.Round(float64(p.view.body.x(day)-p.view.from) * p.scale)
}

func (p *rowPainter) solid(name fyne.ThemeColorName) ink.Paint {
	return ink.Solid(p.look.colour(name))
}

// ground draws suitable ranges, ticks and the ruled line under the row.
func (p *rowPainter) ground() {
	for _, g := range p.view.row.Good {
		x0, x1 := p.x(g.Start), p.x(g.End)
		p.sheet.Rect(p.solid(theme.ColorGoodWash), x0, 0, x1, p.h)
		for _, x := range []float64{x0 + 0.5, x1 - 0.5} {
			p.sheet.Dash(p.solid(theme.ColorGood), math.Max(1, p.scale), 2*p.scale, 3*p.scale, ink.Point{X: x, Y: 0}, ink.Point{X: x, Y: p.h})
		}
	}
	hair := math.Max(1, math.Round(p.scale))
	for _, t := range p.view.body.data.Axis.Ticks {
		x, colour := p.x(t.Day), theme.ColorRule
		if t.Major {
			colour = theme.ColorOutline
		}
		p.sheet.Rect(p.solid(colour), x, 0, x+hair, p.h)
	}
	p.sheet.Rect(p.solid(theme.ColorRule), 0, p.h-hair, p.w, p.h)
}

// band returns the top and the foot of the strip in pixels.
func (p *rowPainter) band() (top, foot float64) {
	return math.Round(stripTop * p.scale), math.Round(p.h - stripFoot*p.scale)
}

func (p *rowPainter) segment(s YearSegment) {
	x0, x1 := math.Max(p.x(s.Start), -10*p.scale), math.Min(p.x(s.End), p.w+10*p.scale)
	if x1 <= 0 || x0 >= p.w || x1 <= x0 {
		return
	}
	top, foot := p.band()
	edge := p.look.colour(theme.CategoryEdge(s.Category))
	line := math.Max(1, math.Round(1.2*p.scale))
	hatchTop := foot - math.Round(hatchHeight*p.scale)
	if s.Ghost {
		p.sheet.Rect(p.solid(theme.ColorSurface), x0, top, x1, foot)
	} else {
		p.sheet.Rect(p.solid(theme.CategoryWash(s.Category)), x0, top, x1, foot)
	}
	p.sheet.Rect(ink.Hatched(edge, PatternOf(s.Category), p.scale), x0, hatchTop, x1, foot)
	half := line / 2
	frame := []ink.Point{
		{X: x0 + half, Y: top + half},
		{X: x1 - half, Y: top + half},
		{X: x1 - half, Y: foot - half},
		{X: x0 + half, Y: foot - half},
		{X: x0 + half, Y: top + half},
	}
	if s.Ghost {
		p.sheet.Dash(ink.Solid(edge), line, 4*p.scale, 3*p.scale, frame...)
		return
	}
	p.sheet.Stroke(ink.Solid(edge), line, true, frame[:4]...)
	p.sheet.Rect(ink.Solid(edge), x0, hatchTop, x1, hatchTop+math.Max(1, math.Round(p.scale*0.75)))
}

// spread draws a bracket from the early to the late day of a start.
func (p *rowPainter) spread(s YearSegment) {
	if s.Early == s.Late {
		return
	}
	_, foot := p.band()
	x0, x1, y := p.x(s.Early)+0.5, p.x(s.Late)+0.5, math.Round(foot+4*p.scale)+0.5
	up := 2.5 * p.scale
	line := math.Max(1, p.scale)
	p.sheet.Stroke(p.solid(fynetheme.ColorNameForeground), line, false,
		ink.Point{X: x0, Y: y - up}, ink.Point{X: x0, Y: y}, ink.Point{X: x1, Y: y}, ink.Point{X: x1, Y: y - up})
}

// knob draws the handle of a joint.
func (p *rowPainter) knob(s YearSegment) {
	top, foot := p.band()
	x, y := p.x(s.Start), (top+foot-hatchHeight*p.scale)/2
	r, half := knobWidth/2*p.scale, (knobHeight-knobWidth)/2*p.scale
	a, b := ink.Point{X: x, Y: y - half}, ink.Point{X: x, Y: y + half}
	p.sheet.Stroke(ink.Solid(p.look.colour(theme.CategoryEdge(s.Category))), 2*r+2*p.scale, false, a, b)
	p.sheet.Stroke(p.solid(theme.ColorSurface), 2*r-0.6*p.scale, false, a, b)
}

func (p *rowPainter) mark(m YearMark) {
	_, foot := p.band()
	r := markRadius * p.scale
	c := ink.Point{X: p.x(m.Day), Y: foot + (stripFoot*p.scale-1)/2}
	paint := p.solid(theme.ColorInkSoft)
	switch m.Kind {
	case MarkDisc:
		p.sheet.Fill(paint, ink.Disc(c, r))
	case MarkRing:
		p.sheet.Fill(paint, ink.Disc(c, r))
		p.sheet.Fill(p.solid(fynetheme.ColorNameBackground), ink.Disc(c, r-1.1*p.scale))
	case MarkSquare:
		p.sheet.Rect(paint, math.Round(c.X-r), math.Round(c.Y-r), math.Round(c.X+r), math.Round(c.Y+r))
	case MarkDiamond:
		p.sheet.Fill(paint, []ink.Point{{X: c.X, Y: c.Y - r*1.3}, {X: c.X + r*1.3, Y: c.Y}, {X: c.X, Y: c.Y + r*1.3}, {X: c.X - r*1.3, Y: c.Y}})
	}
}
