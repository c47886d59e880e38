package widgets

import (
	"image/color"
	"math"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/widget"
)

// yearWheel lies over the strips and takes the wheel alone: all else goes through it.
// The strips cannot take it themselves, since the toolkit clips whatever does to its
// own size, which for them is the whole sheet.
type yearWheel struct {
	widget.BaseWidget
	chart *YearChart
}

var _ fyne.Scrollable = (*yearWheel)(nil)

func newYearWheel(c *YearChart) *yearWheel {
	w := &yearWheel{chart: c}
	w.ExtendBaseWidget(w)
	return w
}

// CreateRenderer is called by the toolkit.
func (w *yearWheel) CreateRenderer() fyne.WidgetRenderer {
	return widget.NewSimpleRenderer(canvas.NewRectangle(color.Transparent))
}

// Scrolled scrolls by the wheel; with Shift sideways, with Control it zooms.
func (w *yearWheel) Scrolled(ev *fyne.ScrollEvent) {
	c := w.chart
	held := c.modifiers()
	switch {
	case held&fyne.KeyModifierShortcutDefault != 0:
		const notch = 25 // of the wheel, in the toolkit's units
		factor := math.Pow(float64(zoomStep), float64(ev.Scrolled.DY+ev.Scrolled.DX)/notch)
		c.setZoom(c.body.zoom*float32(factor), ev.Position.X)
	case held&fyne.KeyModifierShift != 0:
		turned := *ev
		turned.Scrolled = fyne.NewDelta(ev.Scrolled.DX+ev.Scrolled.DY, 0)
		c.scroll.Scrolled(&turned)
	default:
		c.scroll.Scrolled(ev)
	}
}
