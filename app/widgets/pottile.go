package widgets

import (
	"image/color"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	fynetheme "fyne.io/fyne/v2/theme"

	"fourturn/app/theme"
)

// PotTileData is one pot on the bench.
type PotTileData struct {
	Drawing  PotData // usually with UnitsPerMetre set and no dimensions
	Label    string
	Detail   string
	Count    string         // such as "× 12", or ""
	Mark     theme.IconName // such as IconWarning, or ""
	MarkName string         // what the mark means, for screen readers
	Selected bool
}

// PotTile is a drawn pot with its name, which can be pressed.
type PotTile struct {
	pressable
	data PotTileData
}

var (
	_ fyne.Widget     = (*PotTile)(nil)
	_ fyne.Accessible = (*PotTile)(nil)
)

// PotTileSize is how much room the drawing on a tile has, in units of the screen.
var PotTileSize = fyne.NewSize(144, 112)

// NewPotTile returns a tile.
func NewPotTile(data PotTileData, onPress func()) *PotTile {
	t := &PotTile{data: data}
	t.press = onPress
	t.extend(t)
	return t
}

// Set shows another pot or state.
func (t *PotTile) Set(data PotTileData, onPress func()) {
	t.data, t.press = data, onPress
	t.Refresh()
}

// AccessibilityLabel returns name, detail, count and what the mark means.
func (t *PotTile) AccessibilityLabel() string {
	return accessibleName(t.data.Label, t.data.Detail, t.data.Count, t.data.MarkName)
}

// AccessibilityRole is a button.
func (t *PotTile) AccessibilityRole() fyne.AccessibleRole { return fyne.AccessibleRoleButton }

// CreateRenderer is called by the toolkit.
func (t *PotTile) CreateRenderer() fyne.WidgetRenderer {
	r := &potTileRenderer{
		tile: t, ground: canvas.NewRectangle(color.Transparent), ribbon: canvas.NewRectangle(color.Transparent),
		ring: newRing(), drawing: NewPotDrawing(t.data.Drawing, PotTileSize),
		label: canvas.NewText("", nil), detail: canvas.NewText("", nil), count: canvas.NewText("", nil),
		mark: canvas.NewImageFromResource(nil),
	}
	r.ground.CornerRadius, r.ground.StrokeWidth = 3, theme.Hair
	r.mark.FillMode = canvas.ImageFillContain
	r.label.Alignment, r.detail.Alignment = fyne.TextAlignCenter, fyne.TextAlignCenter
	r.Refresh()
	return r
}

type potTileRenderer struct {
	tile                 *PotTile
	ground, ribbon, ring *canvas.Rectangle
	drawing              *PotDrawing
	label, detail, count *canvas.Text
	mark                 *canvas.Image
}

func (r *potTileRenderer) Refresh() {
	t, l := r.tile, lookOf(r.tile)
	ground, stroke := color.Color(color.Transparent), color.Color(color.Transparent)
	if t.hovered {
		ground = l.colour(fynetheme.ColorNameHover)
	}
	if t.data.Selected {
		ground, stroke = l.colour(theme.ColorSurface), l.colour(theme.ColorOutline)
	}
	r.ground.FillColor, r.ground.StrokeColor = ground, stroke
	r.ground.Refresh()
	show(r.ribbon, t.data.Selected)
	fill(r.ribbon, l.colour(theme.ColorRibbon))
	r.drawing.Set(t.data.Drawing)
	name := scriptText
	if t.data.Selected {
		name = scriptStrong
	}
	width := r.MinSize().Width - theme.Step2
	l.set(r.label, l.fit(t.data.Label, name, width), name)
	l.set(r.detail, l.fit(t.data.Detail, scriptCaption, width), scriptCaption)
	l.set(r.count, t.data.Count, scriptCaption)
	show(r.mark, t.data.Mark != "")
	if t.data.Mark != "" {
		r.mark.Resource = theme.IconIn(t.data.Mark, fynetheme.ColorNameWarning)
		r.mark.Refresh()
	}
	l.ring(r.ring, t.focused)
	r.Layout(t.Size())
}

func (r *potTileRenderer) MinSize() fyne.Size {
	l := lookOf(r.tile)
	text := l.measure("x", scriptText).Height + l.measure("x", scriptCaption).Height
	return fyne.NewSize(PotTileSize.Width+theme.Step2, PotTileSize.Height+text+theme.Step2+theme.Half)
}

func (r *potTileRenderer) Layout(size fyne.Size) {
	place(r.ground, 0, 0, size.Width, size.Height)
	place(r.ring, 0, 0, size.Width, size.Height)
	label, detail := r.label.MinSize().Height, r.detail.MinSize().Height
	y := size.Height - theme.Step - label - detail
	place(r.drawing, theme.Step, theme.Step, size.Width-theme.Step2, y-theme.Step-theme.Half)
	place(r.label, theme.Step, y, size.Width-theme.Step2, label)
	place(r.detail, theme.Step, y+label, size.Width-theme.Step2, detail)
	place(r.ribbon, theme.Step2, size.Height-4, size.Width-2*theme.Step2, 3)
	count := r.count.MinSize()
	place(r.count, size.Width-theme.Step-count.Width, theme.Half, count.Width, count.Height)
	place(r.mark, theme.Step, theme.Half, count.Height, count.Height)
}

func (r *potTileRenderer) Objects() []fyne.CanvasObject {
	return []fyne.CanvasObject{r.ground, r.ribbon, r.drawing, r.label, r.detail, r.count, r.mark, r.ring}
}

func (r *potTileRenderer) Destroy() {}
