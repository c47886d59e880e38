package widgets

import (
	"image"
	"image/color"
	"reflect"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	fynetheme "fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"fourturn/app/theme"
	"fourturn/app/widgets/ink"
	"fourturn/app/widgets/plantdraw"
)

// PotDrawing draws a pot to scale: cut open from the side, with mix, water and
// plants, and from above, with dimension lines.
type PotDrawing struct {
	widget.BaseWidget
	data PotData
	min  fyne.Size
}

var (
	_ fyne.Widget     = (*PotDrawing)(nil)
	_ fyne.Accessible = (*PotDrawing)(nil)
)

// NewPotDrawing returns a drawing that is at least of size least.
func NewPotDrawing(data PotData, least fyne.Size) *PotDrawing {
	d := &PotDrawing{data: data, min: least}
	d.ExtendBaseWidget(d)
	return d
}

// Set draws another pot.
func (d *PotDrawing) Set(data PotData) {
	d.data = data
	d.Refresh()
}

// AccessibilityLabel returns the name and the dimensions.
func (d *PotDrawing) AccessibilityLabel() string {
	parts := []string{d.data.Name}
	for _, dim := range d.data.Dimensions {
		parts = append(parts, dim.Label)
	}
	return accessibleName(parts...)
}

// AccessibilityRole is text.
func (d *PotDrawing) AccessibilityRole() fyne.AccessibleRole { return fyne.AccessibleRoleText }

// CreateRenderer is called by the toolkit.
func (d *PotDrawing) CreateRenderer() fyne.WidgetRenderer {
	r := &potRenderer{drawing: d}
	r.raster = canvas.NewRaster(r.draw)
	r.Refresh()
	return r
}

type potRenderer struct {
	drawing *PotDrawing
	raster  *canvas.Raster
	texts   []*canvas.Text
	used    int
	sheet   potSheet
	drawn   drawnPot
}

// drawnPot is the last picture with all that it was made from. Plants take their
// time: they are drawn again only when something changed.
type drawnPot struct {
	data    PotData
	sheet   potSheet
	w, h    int
	palette plantdraw.Palette
	soil    color.Color
	image   image.Image
}

// same reports whether a picture would look like this one.
func (d *drawnPot) same(o *drawnPot) bool {
	return d.w == o.w && d.h == o.h && d.palette == o.palette && d.soil == o.soil && d.sheet == o.sheet &&
		reflect.DeepEqual(d.data, o.data)
}

func (r *potRenderer) MinSize() fyne.Size { return r.drawing.min }

func (r *potRenderer) Layout(size fyne.Size) {
	r.raster.Resize(size)
	r.arrange(size)
}

func (r *potRenderer) Refresh() {
	r.arrange(r.drawing.Size())
	r.raster.Refresh()
}

// arrange works out the scale and places the texts.
func (r *potRenderer) arrange(size fyne.Size) {
	l := lookOf(r.drawing)
	r.sheet = layOut(r.drawing.data, size, l.size(fynetheme.SizeNameCaptionText))
	r.used = 0
	for _, dim := range r.drawing.data.Dimensions {
		r.writeDimension(l, dim)
	}
	if plan := r.drawing.data.Plan; plan != nil {
		for _, p := range plan.Plants {
			r.writeLetter(l, p)
		}
	}
	for _, t := range r.texts[r.used:] {
		show(t, false)
	}
}

func (r *potRenderer) text() *canvas.Text {
	if r.used == len(r.texts) {
		t := canvas.NewText("", nil)
		t.Alignment = fyne.TextAlignCenter
		r.texts = append(r.texts, t)
	}
	t := r.texts[r.used]
	r.used++
	show(t, true)
	return t
}

func (r *potRenderer) writeDimension(l look, dim PotDimension) {
	if !r.sheet.has(dim.View) {
		return
	}
	t := r.text()
	l.set(t, dim.Label, scriptCaption.in(fynetheme.ColorNameForeground))
	size := t.MinSize()
	from, to := r.sheet.dimension(dim)
	x, y := float32(from.X+to.X)/2, float32(from.Y+to.Y)/2
	switch dim.Edge {
	case Above:
		place(t, x-size.Width/2, y-size.Height-1, size.Width, size.Height)
	case Below:
		place(t, x-size.Width/2, y+2, size.Width, size.Height)
	case LeftOf:
		place(t, x-size.Width-theme.Half-1, y-size.Height/2, size.Width, size.Height)
	case RightOf:
		place(t, x+theme.Half+1, y-size.Height/2, size.Width, size.Height)
	}
}

func (r *potRenderer) writeLetter(l look, p PotPlant) {
	size := l.measure(p.Letter, scriptCaption)
	if p.Letter == "" || float64(size.Height) > p.Spread*r.sheet.scale*1.1 {
		return
	}
	t := r.text()
	l.set(t, p.Letter, scriptCaption.in(fynetheme.ColorNameForeground))
	at := r.sheet.point(PlanView, Metres{p.X, p.Y})
	place(t, float32(at.X)-size.Width/2, float32(at.Y)-size.Height/2, size.Width, size.Height)
}

// draw makes the picture in pixels.
func (r *potRenderer) draw(w, h int) image.Image {
	size := r.drawing.Size()
	pixels := 1.0
	if size.Width > 0 {
		pixels = float64(w) / float64(size.Width)
	}
	p := &potPainter{look: lookOf(r.drawing), at: r.sheet, pixels: pixels}
	data := r.drawing.data
	now := drawnPot{data: data, sheet: r.sheet, w: w, h: h, palette: p.plantPalette(), soil: p.look.colour(theme.ColorSoil)}
	if r.drawn.image != nil && now.same(&r.drawn) {
		return r.drawn.image
	}
	p.sheet = ink.NewSheet(w, h)
	if data.Side != nil {
		p.side(data.Side)
	}
	if data.Plan != nil {
		p.plan(data.Plan)
	}
	for _, dim := range data.Dimensions {
		if r.sheet.has(dim.View) {
			p.dimension(dim)
		}
	}
	now.image = p.sheet.Image
	r.drawn = now
	return now.image
}

func (r *potRenderer) Objects() []fyne.CanvasObject {
	objects := []fyne.CanvasObject{r.raster}
	for _, t := range r.texts {
		objects = append(objects, t)
	}
	return objects
}

func (r *potRenderer) Destroy() {}
