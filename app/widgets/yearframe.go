package widgets

import (
	"image/color"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"
	fynetheme "fyne.io/fyne/v2/theme"

	"fourturn/app/theme"
)

// CreateRenderer is called by the toolkit.
func (c *YearChart) CreateRenderer() fyne.WidgetRenderer {
	r := &yearChartRenderer{
		chart: c, head: container.NewWithoutLayout(), side: container.NewWithoutLayout(),
		ground: canvas.NewRectangle(color.Transparent), rule: canvas.NewRectangle(color.Transparent),
		post: canvas.NewRectangle(color.Transparent),
	}
	r.headClip, r.sideClip = container.NewClip(r.head), container.NewClip(r.side)
	r.today = &headLabel{text: canvas.NewText("", nil), ground: canvas.NewRectangle(color.Transparent)}
	r.today.text.Alignment = fyne.TextAlignCenter
	r.today.ground.CornerRadius = 3
	c.drawn = r
	r.Refresh()
	return r
}

type yearChartRenderer struct {
	chart              *YearChart
	ground, rule, post *canvas.Rectangle // header ground; line under it; line right of the labels
	head, side         *fyne.Container
	headClip, sideClip *container.Clip
	ticks              []*canvas.Text
	today              *headLabel
	names, details     []*canvas.Text
}

// headLabel is the label of today on its own ground.
type headLabel struct {
	text   *canvas.Text
	ground *canvas.Rectangle
}

func (r *yearChartRenderer) MinSize() fyne.Size {
	return fyne.NewSize(r.labelWidth(480)+240, r.headHeight()+2*r.chart.body.rowHeight())
}

// labelWidth is the width of the labels at the left: 180 units for text scale 1,
// at most a third of the chart.
func (r *yearChartRenderer) labelWidth(whole float32) float32 {
	return min(lookOf(r.chart).size(fynetheme.SizeNameText)/14*180, whole/3)
}

func (r *yearChartRenderer) headHeight() float32 {
	return lookOf(r.chart).size(fynetheme.SizeNameCaptionText)*1.4 + theme.Step
}

func (r *yearChartRenderer) Layout(size fyne.Size) {
	left, top := r.labelWidth(size.Width), r.headHeight()
	place(r.ground, 0, 0, size.Width, top)
	place(r.rule, 0, top-theme.Hair, size.Width, theme.Hair)
	place(r.post, left-theme.Hair, 0, theme.Hair, size.Height)
	place(r.headClip, left, 0, size.Width-left, top)
	place(r.sideClip, 0, top, left-theme.Hair, size.Height-top)
	c := r.chart
	if days := c.body.data.Axis.Last - c.body.data.Axis.First; c.fitted && days > 0 {
		c.body.zoom = max(minZoom, (size.Width-left)/float32(days))
	}
	c.body.offset, c.body.view = c.scroll.Offset, fyne.NewSize(size.Width-left, size.Height-top)
	place(c.scroll, left, top, size.Width-left, size.Height-top)
	c.body.Resize(c.body.MinSize().Max(c.body.view))
	c.sync()
}

func (r *yearChartRenderer) Refresh() {
	l := lookOf(r.chart)
	fill(r.ground, l.colour(theme.ColorMargin))
	fill(r.rule, l.colour(theme.ColorOutline))
	fill(r.post, l.colour(theme.ColorRule))
	r.Layout(r.chart.Size())
	r.chart.scroll.Refresh()
}

// writeHeader places the labels of the ticks and of today.
func (r *yearChartRenderer) writeHeader() {
	l, b := lookOf(r.chart), r.chart.body
	shown, end := 0, float32(-1)
	for i, t := range b.data.Axis.Ticks {
		x := b.x(t.Day) - b.offset.X
		next := b.x(b.data.Axis.Last) - b.offset.X
		if i+1 < len(b.data.Axis.Ticks) {
			next = b.x(b.data.Axis.Ticks[i+1].Day) - b.offset.X
		}
		width := l.measure(t.Label, scriptCaption).Width
		if next < 0 || x > b.view.Width || x+theme.Half < end || next-x < width+theme.Half && !t.Major {
			continue
		}
		if shown == len(r.ticks) {
			r.ticks = append(r.ticks, canvas.NewText("", nil))
			r.head.Add(r.ticks[shown])
		}
		text := r.ticks[shown]
		shown++
		kind := scriptCaption
		if t.Major {
			kind = kind.in(fynetheme.ColorNameForeground)
			kind.style.Bold = true
		}
		l.set(text, t.Label, kind)
		left := max(x, min(0, next-width-theme.Step)) + theme.Half
		text.Move(fyne.NewPos(left, theme.Half))
		text.Resize(text.MinSize())
		show(text, true)
		end = left + width
	}
	for _, t := range r.ticks[shown:] {
		show(t, false)
	}
	r.writeToday(l)
}

func (r *yearChartRenderer) writeToday(l look) {
	b := r.chart.body
	axis := b.data.Axis
	if len(r.head.Objects) == 0 || r.head.Objects[len(r.head.Objects)-1] != r.today.text {
		r.head.Remove(r.today.ground)
		r.head.Remove(r.today.text)
		r.head.Add(r.today.ground)
		r.head.Add(r.today.text)
	}
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
}

// writeLabels places the names of the rows in sight.
func (r *yearChartRenderer) writeLabels() {
	l, b := lookOf(r.chart), r.chart.body
	h, width := b.rowHeight(), r.labelWidth(r.chart.Size().Width)-theme.Step2
	first, end := b.visible()
	for len(r.names) < end-first {
		name, detail := canvas.NewText("", nil), canvas.NewText("", nil)
		r.names, r.details = append(r.names, name), append(r.details, detail)
		r.side.Add(name)
		r.side.Add(detail)
	}
	for i := range r.names {
		visible := first+i < end
		show(r.names[i], visible)
		show(r.details[i], visible)
		if !visible {
			continue
		}
		row := b.row(first + i)
		l.set(r.names[i], l.fit(row.Label, scriptStrong, width), scriptStrong)
		l.set(r.details[i], l.fit(row.Detail, scriptCaption, width), scriptCaption)
		y := float32(first+i)*h - b.offset.Y
		name, detail := r.names[i].MinSize(), r.details[i].MinSize()
		if row.Detail == "" {
			detail.Height = 0
		}
		top := centred(y, h-stripFoot+stripTop, name.Height+detail.Height)
		place(r.names[i], theme.Step, top, name.Width, name.Height)
		place(r.details[i], theme.Step, top+name.Height, detail.Width, detail.Height)
	}
}

// repaint asks for the labels to be drawn where they now are.
func (r *yearChartRenderer) repaint() {
	canvas.Refresh(r.head)
	canvas.Refresh(r.side)
}

func (r *yearChartRenderer) Objects() []fyne.CanvasObject {
	return []fyne.CanvasObject{r.ground, r.sideClip, r.headClip, r.chart.scroll, r.rule, r.post}
}

func (r *yearChartRenderer) Destroy() {}
