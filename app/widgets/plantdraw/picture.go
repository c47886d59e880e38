package plantdraw

import (
	"image"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/widget"

	"fourturn/app/theme"
	"fourturn/plants"
	"fourturn/plants/sketch"
)

// Picture is a drawn plant on a page.
type Picture struct {
	widget.BaseWidget
	plant  *plants.Plant
	view   sketch.View
	ground fyne.ThemeColorName
	least  fyne.Size
}

var (
	_ fyne.Widget     = (*Picture)(nil)
	_ fyne.Accessible = (*Picture)(nil)
)

// NewPicture returns a drawing that is at least of a size. The plant may be nil.
func NewPicture(p *plants.Plant, v sketch.View, least fyne.Size) *Picture {
	d := &Picture{plant: p, view: v, ground: theme.ColorSurface, least: least}
	d.ExtendBaseWidget(d)
	return d
}

// NewSide returns a plant seen from the side.
func NewSide(p *plants.Plant, least fyne.Size) *Picture { return NewPicture(p, sketch.Side, least) }

// NewFromAbove returns a plant seen from above.
func NewFromAbove(p *plants.Plant, least fyne.Size) *Picture {
	return NewPicture(p, sketch.Above, least)
}

// Set draws another plant.
func (d *Picture) Set(p *plants.Plant) {
	if p != d.plant {
		d.plant = p
		d.Refresh()
	}
}

// AccessibilityLabel returns the name of the plant.
func (d *Picture) AccessibilityLabel() string {
	if d.plant == nil {
		return ""
	}
	return d.plant.Name()
}

// AccessibilityRole is text.
func (d *Picture) AccessibilityRole() fyne.AccessibleRole { return fyne.AccessibleRoleText }

// CreateRenderer is called by the toolkit.
func (d *Picture) CreateRenderer() fyne.WidgetRenderer {
	r := &pictureRenderer{picture: d, sheet: canvas.NewRectangle(nil)}
	r.sheet.CornerRadius, r.sheet.StrokeWidth = 3, theme.Hair
	r.lookAgain()
	r.raster = canvas.NewRaster(r.draw)
	return r
}

type pictureRenderer struct {
	picture *Picture
	sheet   *canvas.Rectangle
	raster  *canvas.Raster
	drawn   drawn
	image   *image.NRGBA
}

// drawn is what a picture shows, so that it is drawn again only when that changes.
type drawn struct {
	plant   *plants.Plant
	view    sketch.View
	w, h    int
	palette Palette
}

func (r *pictureRenderer) draw(w, h int) image.Image {
	d := r.picture
	palette := PaletteOf(d.Theme(), fyne.CurrentApp().Settings().ThemeVariant(), d.ground)
	now := drawn{d.plant, d.view, w, h, palette}
	if r.image != nil && now == r.drawn {
		return r.image
	}
	r.drawn = now
	if d.plant == nil {
		r.image = image.NewNRGBA(image.Rect(0, 0, w, h))
		return r.image
	}
	pixels := 1.0
	if size := d.Size(); size.Width > 0 {
		pixels = float64(w) / float64(size.Width)
	}
	r.image = Portrait(d.plant, d.view, w, h, pixels, palette)
	return r.image
}

func (r *pictureRenderer) MinSize() fyne.Size { return r.picture.least }
func (r *pictureRenderer) Layout(size fyne.Size) {
	r.sheet.Resize(size)
	r.raster.Move(fyne.NewPos(theme.Half, theme.Half))
	r.raster.Resize(size.SubtractWidthHeight(theme.Step, theme.Step))
}

func (r *pictureRenderer) lookAgain() {
	t, variant := r.picture.Theme(), fyne.CurrentApp().Settings().ThemeVariant()
	r.sheet.FillColor, r.sheet.StrokeColor = t.Color(r.picture.ground, variant), t.Color(theme.ColorRule, variant)
}

func (r *pictureRenderer) Refresh() {
	r.lookAgain()
	r.sheet.Refresh()
	r.raster.Refresh()
}

func (r *pictureRenderer) Objects() []fyne.CanvasObject {
	return []fyne.CanvasObject{r.sheet, r.raster}
}
func (r *pictureRenderer) Destroy() {}
