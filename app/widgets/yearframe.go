package widgets

import (
	"image/color"
	"math"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"
	fynetheme "fyne.io/fyne/v2/theme"

	"fourturn/app/theme"
)

// CreateRenderer is called by the toolkit.
func (c *YearChart) CreateRenderer() fyne.WidgetRenderer {
	r := &yearChartRenderer{
		chart: c, head: container.NewWithoutLayout(), side: container.NewWithoutLayout(), above: container.NewWithoutLayout(),
		ground: canvas.NewRectangle(color.Transparent), rule: canvas.NewRectangle(color.Transparent),
		post: canvas.NewRectangle(color.Transparent), foot: canvas.NewRectangle(color.Transparent),
		pointer: canvas.NewRectangle(color.Transparent),
	}
	r.today = &headLabel{text: canvas.NewText("", nil), ground: canvas.NewRectangle(color.Transparent)}
	r.sky = canvas.NewRaster(r.drawSky)
	r.head.Objects = []fyne.CanvasObject{r.today.ground, r.today.text}
	r.above.Objects = []fyne.CanvasObject{r.sky, r.pointer}
	r.headClip, r.sideClip, r.skyClip = container.NewClip(r.head), container.NewClip(r.side), container.NewClip(r.above)
	r.today.text.Alignment = fyne.TextAlignCenter
	r.today.ground.CornerRadius = 3
	c.drawn = r
	r.Refresh()
	return r
}

type yearChartRenderer struct {
	chart                    *YearChart
	ground, rule, post, foot *canvas.Rectangle // header ground; line under months; line right of the labels; line under the weather
	head, side, above        *fyne.Container   // months; names of rows; weather
	headClip, sideClip       *container.Clip
	skyClip                  *container.Clip
	sky                      *canvas.Raster
	skyFrom                  float32 // left edge of the drawn weather within the body
	pointer                  *canvas.Rectangle
	ticks                    []*canvas.Text
	today                    *headLabel
	names                    []*rowName
	reading                  []*canvas.Text // name of the place, what is read, scale
}

// headLabel is the label of today on its own ground.
type headLabel struct {
	text   *canvas.Text
	ground *canvas.Rectangle
}

// rowName is the name of a row in sight. A row keeps its name's place while it is in
// sight, so that scrolling moves texts and does not write them anew.
type rowName struct{ name, detail *canvas.Text }

func (r *yearChartRenderer) MinSize() fyne.Size {
	return fyne.NewSize(r.labelWidth(480)+240, r.headHeight()+r.skyHeight()+r.chart.body.rowHeight())
}

// labelWidth is the width of the labels at the left: 180 units for text scale 1,
// at most a third of the chart.
func (r *yearChartRenderer) labelWidth(whole float32) float32 {
	return min(lookOf(r.chart).size(fynetheme.SizeNameText)/14*180, whole/3)
}

func (r *yearChartRenderer) headHeight() float32 {
	return float32(math.Ceil(float64(lookOf(r.chart).size(fynetheme.SizeNameCaptionText)*1.4 + theme.Step)))
}

func (r *yearChartRenderer) skyHeight() float32 {
	if !r.chart.body.data.Sky.there() {
		return 0
	}
	return float32(math.Ceil(float64(lookOf(r.chart).size(fynetheme.SizeNameText) / 14 * skyHeight)))
}

func (r *yearChartRenderer) Layout(size fyne.Size) {
	left, head, sky := r.labelWidth(size.Width), r.headHeight(), r.skyHeight()
	top := head + sky
	place(r.ground, 0, 0, size.Width, head)
	place(r.rule, 0, head-theme.Hair, size.Width, theme.Hair)
	place(r.foot, 0, top-theme.Hair, size.Width, theme.Hair)
	place(r.post, left-theme.Hair, 0, theme.Hair, size.Height)
	place(r.headClip, left, 0, size.Width-left, head)
	place(r.skyClip, left, head, size.Width-left, max(0, sky-theme.Hair))
	place(r.sideClip, 0, head, left-theme.Hair, size.Height-head)
	r.chart.resized(rect{left, top, size.Width - left, size.Height - top})
}

// resized gives the strips their place. The first day in sight stays where it is.
func (c *YearChart) resized(at rect) {
	left, moved := c.scroll.Offset.X/c.body.zoom, c.moved
	place(c.scroll, at.x, at.y, at.w, at.h)
	place(c.wheel, at.x, at.y, at.w, at.h)
	c.fit(at.w)
	c.body.offset, c.body.view = c.scroll.Offset, fyne.NewSize(at.w, at.h)
	c.body.Resize(c.body.MinSize().Max(c.body.view))
	if !moved && c.days > 0 {
		left = float32(c.middle-c.body.data.Axis.First) - at.w/2/c.body.zoom
	}
	c.scrollBy(left*c.body.zoom-c.scroll.Offset.X, 0)
	c.moved = moved
}

// fit sets the zoom for a width.
func (c *YearChart) fit(width float32) {
	days := c.body.data.Axis.Last - c.body.data.Axis.First
	if days <= 0 || width <= 0 {
		return
	}
	least := width / float32(days)
	switch {
	case c.days > 0:
		c.body.zoom = max(least, width/float32(c.days))
	case c.fitted:
		c.body.zoom = least
	default:
		c.body.zoom = max(least, min(c.body.zoom, width/leastDays))
	}
}

func (r *yearChartRenderer) Refresh() {
	l := lookOf(r.chart)
	fill(r.ground, l.colour(theme.ColorMargin))
	fill(r.rule, l.colour(theme.ColorOutline))
	fill(r.foot, l.colour(theme.ColorOutline))
	fill(r.post, l.colour(theme.ColorRule))
	fill(r.pointer, l.colour(theme.ColorPen))
	r.skyFrom = -1 // drawn anew
	r.Layout(r.chart.Size())
	r.chart.scroll.Refresh()
}

// scrolled brings what does not scroll by itself to where the sheet was scrolled.
func (r *yearChartRenderer) scrolled() {
	r.writeHeader()
	r.placeSky()
	r.writeLabels()
	r.writeReading()
	canvas.Refresh(r.head)
	canvas.Refresh(r.side)
}

// placeSky moves the weather with the sheet and draws it anew where needed.
func (r *yearChartRenderer) placeSky() {
	b := r.chart.body
	visible := b.data.Sky.there()
	show(r.skyClip, visible)
	show(r.foot, visible)
	if !visible {
		return
	}
	from, width := b.span()
	height := r.skyHeight() - theme.Hair
	if from != r.skyFrom || r.sky.Size() != fyne.NewSize(width, height) {
		r.skyFrom = from
		size := r.sky.Size()
		r.sky.Resize(fyne.NewSize(width, height))
		if size == r.sky.Size() {
			r.sky.Refresh()
		}
	}
	r.sky.Move(fyne.NewPos(from-b.offset.X, 0))
}

// writeHeader places the labels of the ticks and of today.
func (r *yearChartRenderer) writeHeader() {
	l, b := lookOf(r.chart), r.chart.body
	shown := 0
	have := r.writeTicks(l, b.data.Axis.Ticks, &shown, r.writeToday(l))
	r.writeTicks(l, b.weeks(), &shown, have)
	for _, t := range r.ticks[shown:] {
		show(t, false)
	}
}

// taken is where labels stand already.
type taken [][2]float32

func (t taken) free(from, to float32) bool {
	for _, span := range t {
		if from < span[1] && to > span[0] {
			return false
		}
	}
	return true
}

// writeTicks writes labels where there is room, and returns what is taken then.
func (r *yearChartRenderer) writeTicks(l look, ticks []YearTick, shown *int, have taken) taken {
	b := r.chart.body
	for i, t := range ticks {
		x := b.x(t.Day) - b.offset.X
		next := b.x(b.data.Axis.Last) - b.offset.X
		if i+1 < len(ticks) {
			next = b.x(ticks[i+1].Day) - b.offset.X
		}
		if next < 0 || x > b.view.Width {
			continue
		}
		kind := scriptCaption
		if t.Major {
			kind = kind.in(fynetheme.ColorNameForeground)
			kind.style.Bold = true
		}
		width := l.measure(t.Label, kind).Width
		left := max(x, min(0, next-width-theme.Step)) + theme.Half
		if next-x < width+theme.Half && !t.Major || !have.free(left-theme.Half, left+width+theme.Half) {
			continue
		}
		if *shown == len(r.ticks) {
			r.ticks = append(r.ticks, canvas.NewText("", nil))
			r.head.Add(r.ticks[*shown])
		}
		text := r.ticks[*shown]
		*shown++
		l.set(text, t.Label, kind)
		place(text, left, theme.Half, width, text.MinSize().Height)
		show(text, true)
		have = append(have, [2]float32{left, left + width})
	}
	return have
}

// writeToday writes the label of today and returns what it takes.
func (r *yearChartRenderer) writeToday(l look) taken {
	b := r.chart.body
	axis := b.data.Axis
	at := b.x(axis.Today) - b.offset.X
	visible := axis.TodayLabel != "" && axis.Today >= axis.First && axis.Today < axis.Last && at >= 0 && at <= b.view.Width
	show(r.today.text, visible)
	show(r.today.ground, visible)
	l.set(r.today.text, axis.TodayLabel, scriptCaption.in(fynetheme.ColorNameBackground))
	fill(r.today.ground, l.colour(theme.ColorToday))
	size := r.today.text.MinSize()
	w := size.Width + theme.Step
	x := max(0, min(at-w/2, b.view.Width-w))
	place(r.today.ground, x, theme.Half/2, w, r.headHeight()-theme.Half)
	place(r.today.text, x, centred(0, r.headHeight(), size.Height), w, size.Height)
	if !visible {
		return nil
	}
	return taken{{x, x + w}}
}

// writeLabels places the names of the rows in sight.
func (r *yearChartRenderer) writeLabels() {
	l, b := lookOf(r.chart), r.chart.body
	h, width := b.rowHeight(), r.labelWidth(r.chart.Size().Width)-theme.Step2
	first, end := b.visible()
	for len(r.names) < end-first {
		n := &rowName{canvas.NewText("", nil), canvas.NewText("", nil)}
		r.names = append(r.names, n)
		r.side.Add(n.name)
		r.side.Add(n.detail)
	}
	sky := r.skyHeight()
	place(r.sideClip, 0, r.headHeight()+sky, r.sideClip.Size().Width, max(0, r.chart.Size().Height-r.headHeight()-sky))
	used := make([]bool, len(r.names))
	for i := first; i < end; i++ {
		slot := i % len(r.names)
		used[slot] = true
		n, row := r.names[slot], b.row(i)
		l.set(n.name, l.fit(row.Label, scriptStrong, width), scriptStrong)
		l.set(n.detail, l.fit(row.Detail, scriptCaption, width), scriptCaption)
		y := float32(i)*h - b.offset.Y
		name, detail := n.name.MinSize(), n.detail.MinSize()
		if row.Detail == "" {
			detail.Height = 0
		}
		top := centred(y, h-stripFoot+stripTop, name.Height+detail.Height)
		place(n.name, theme.Step, top, name.Width, name.Height)
		place(n.detail, theme.Step, top+name.Height, detail.Width, detail.Height)
	}
	for i, n := range r.names {
		show(n.name, used[i])
		show(n.detail, used[i])
	}
}

// writeReading writes left of the weather where it is and what it is on the day that
// is pointed at, and its scale.
func (r *yearChartRenderer) writeReading() {
	l, b := lookOf(r.chart), r.chart.body
	sky := &b.data.Sky
	var lines []string
	if sky.there() && sky.Reading != nil {
		lines = sky.Reading(b.pointed)
	}
	x := b.x(b.pointed) + b.zoom/2 - b.offset.X
	show(r.pointer, sky.there() && b.pointed != b.data.Axis.Today && x >= 0 && x <= b.view.Width)
	place(r.pointer, x-0.5, 0, 1, r.skyHeight())
	canvas.Refresh(r.above)
	used := 0
	text := func(s string, kind script, x, y float32) {
		if used == len(r.reading) {
			r.reading = append(r.reading, canvas.NewText("", nil))
		}
		t := r.reading[used]
		used++
		l.set(t, s, kind)
		size := t.MinSize()
		place(t, x, y, size.Width, size.Height)
		show(t, true)
	}
	if sky.there() {
		left, head, height := r.labelWidth(r.chart.Size().Width), r.headHeight(), r.skyHeight()
		caption := l.measure("X", scriptCaption).Height
		scale, free := float32(0), head+height // above the label before
		for _, t := range sky.Ticks {
			w := l.measure(t.Label, scriptCaption).Width
			y := head + skyPad + (height-2*skyPad)*float32(1-share(t.Value, sky.Ticks)) - caption/2
			y = max(head, min(y, head+height-caption))
			if y+caption > free+theme.Half/2 {
				continue
			}
			text(t.Label, scriptCaption, left-theme.Half-w, y)
			scale, free = max(scale, w), y
		}
		room := left - scale - theme.Step2
		y := head + theme.Half/2
		strong := scriptCaption.in(fynetheme.ColorNameForeground)
		strong.style.Bold = true
		text(l.fit(sky.Name, strong, room), strong, theme.Step, y)
		for _, line := range lines {
			y += caption
			text(l.fit(line, scriptCaption, room), scriptCaption, theme.Step, y)
		}
	}
	for _, t := range r.reading[used:] {
		show(t, false)
	}
}

func (r *yearChartRenderer) Objects() []fyne.CanvasObject {
	objects := []fyne.CanvasObject{r.ground, r.sideClip, r.skyClip, r.headClip, r.chart.scroll, r.chart.wheel, r.rule, r.foot, r.post}
	for _, t := range r.reading {
		objects = append(objects, t)
	}
	return objects
}

func (r *yearChartRenderer) Destroy() {}
