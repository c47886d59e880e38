package pots

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"

	screen "fourturn/app/screen/pots"
	"fourturn/app/theme"
	"fourturn/app/widgets"
)

// bench is the grid of pots. Only the tiles in sight exist, so that a thousand pots
// scroll as ten do.
type bench struct {
	view   *View
	tiles  []screen.Tile
	grid   *widget.GridWrap
	search *widgets.MeasureField
	object fyne.CanvasObject
}

func newBench(v *View) *bench {
	b := &bench{view: v}
	b.grid = widget.NewGridWrap(
		func() int { return len(b.tiles) },
		func() fyne.CanvasObject { return widgets.NewPotTile(widgets.PotTileData{}, nil) },
		func(i widget.GridWrapItemID, o fyne.CanvasObject) { b.fill(o.(*widgets.PotTile), b.tiles[i]) },
	)
	b.search = widgets.NewMeasureField(v.words.T("pots.search"), "", func(text string) error {
		v.screen.SetFilter(text)
		b.search.SetValue(text)
		v.Refresh()
		return nil
	})
	b.object = container.NewBorder(b.search, nil, nil, nil, b.grid)
	return b
}

func (b *bench) fill(tile *widgets.PotTile, t screen.Tile) {
	data := widgets.PotTileData{Label: t.Label, Detail: t.Detail, Selected: t.Chosen}
	if t.Vessel != nil {
		data.Drawing = widgets.PotData{Side: sideOf(t.Vessel), Name: t.Label}
	}
	if t.Marked {
		data.Mark, data.MarkName = theme.IconWarning, b.view.words.Severity(t.Worst)
	}
	tile.Set(data, func() { b.view.Open(t.ID) })
}

func (b *bench) show(tiles []screen.Tile) {
	b.tiles = tiles
	b.grid.Refresh()
}

// reveal scrolls to the chosen pot.
func (b *bench) reveal() {
	for i, t := range b.tiles {
		if t.Chosen {
			b.grid.ScrollTo(i)
		}
	}
}
