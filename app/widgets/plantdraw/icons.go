package plantdraw

import (
	"image"

	"fyne.io/fyne/v2"
	fynetheme "fyne.io/fyne/v2/theme"

	"fourturn/plants"
	"fourturn/plants/sketch"
)

// Icons keeps small drawings for rows of a list.
type Icons struct {
	palette Palette
	drawn   map[*plants.Plant]image.Image
}

// Icons are drawn twice as large as a row is high, for screens of high resolution;
// those of rows long out of sight are forgotten.
const (
	iconSide   = 68
	iconPixels = 1.3
	iconsKept  = 400
)

// Of returns the small drawing of a plant in the look of the app.
func (i *Icons) Of(p *plants.Plant) image.Image {
	settings := fyne.CurrentApp().Settings()
	palette := PaletteOf(settings.Theme(), settings.ThemeVariant(), fynetheme.ColorNameBackground)
	if palette != i.palette || len(i.drawn) > iconsKept || i.drawn == nil {
		i.palette, i.drawn = palette, map[*plants.Plant]image.Image{}
	}
	if img, ok := i.drawn[p]; ok {
		return img
	}
	palette.Ink, palette.Dim = mixed(palette.Ink, palette.Paper, 0.2), 0 // lines must not drown so small a drawing
	img := Portrait(p, sketch.Side, iconSide, iconSide, iconPixels, palette)
	i.drawn[p] = img
	return img
}
