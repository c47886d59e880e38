package pots

import (
	"math"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"

	screen "fourturn/app/screen/pots"
	"fourturn/app/theme"
	"fourturn/app/widgets"
	"fourturn/app/words"
	"fourturn/planner/finding"
)

// bench is the grid of pots. Only the tiles in sight exist, so that a thousand pots
// scroll as ten do.
type bench struct {
	view   *View
	grid   *tileGrid
	search *widgets.MeasureField
	none   fyne.CanvasObject
	object fyne.CanvasObject
}

// tileGrid is the toolkit's grid, which says what it holds.
type tileGrid struct {
	widget.GridWrap
	name string
}

// AccessibilityLabel returns what the grid holds.
func (g *tileGrid) AccessibilityLabel() string { return g.name }

// AccessibilityRole is a container.
func (g *tileGrid) AccessibilityRole() fyne.AccessibleRole { return fyne.AccessibleRoleContainer }

func newBench(v *View) *bench {
	b := &bench{view: v}
	b.grid = &tileGrid{name: v.words.T("pots.title")}
	b.grid.Length = v.screen.Shown
	b.grid.CreateItem = func() fyne.CanvasObject { return widgets.NewPotTile(widgets.PotTileData{}, nil) }
	b.grid.UpdateItem = func(i widget.GridWrapItemID, o fyne.CanvasObject) { b.fill(o.(*widgets.PotTile), v.screen.Tile(i)) }
	b.grid.ExtendBaseWidget(b.grid)
	b.search = widgets.NewMeasureField(v.words.T("pots.search"), v.words.T("pots.search_help"), func(text string) error {
		v.screen.SetFilter(text)
		b.search.SetValue(text)
		v.Refresh()
		return nil
	})
	b.none = widgets.NewText(v.words.T("pots.none_found"))
	b.object = container.NewBorder(container.NewVBox(b.search, b.none), nil, nil, nil, container.New(gridPlace{b}, b.grid))
	return b
}

func (b *bench) fill(tile *widgets.PotTile, t screen.Tile) {
	data := widgets.PotTileData{Label: t.Label, Detail: t.Line, Selected: t.Chosen}
	if t.Vessel != nil {
		data.Drawing = tileDrawing(t)
	}
	if t.Marked {
		data.Mark, data.MarkName = theme.IconWarning, b.view.words.Severity(t.Worst)
		if t.Worst == finding.Error {
			data.Mark = theme.IconError
		}
	}
	tile.Set(data, func() { b.view.Open(t.ID) })
}

func (b *bench) show() {
	if b.view.screen.Shown() == 0 {
		b.none.Show()
	} else {
		b.none.Hide()
	}
	b.grid.Refresh()
}

// about says how many pots are shown.
func (b *bench) about() string {
	return b.view.words.T("pots.about", words.A{"count": b.view.screen.Shown()})
}

// reveal scrolls to the chosen pot.
func (b *bench) reveal() {
	if i := b.view.screen.Place(); i >= 0 {
		b.grid.ScrollTo(i)
	}
}

// gridPlace is the place of the grid. When tiles move to other rows, as the window
// gets wider, the grid would go on showing the old height, where now there may be no
// tile: the chosen pot is brought back into sight.
type gridPlace struct{ bench *bench }

func (g gridPlace) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	before := g.bench.grid.Size()
	objects[0].Resize(size)
	if before.Width != size.Width {
		g.bench.reveal()
	}
}

func (g gridPlace) MinSize(objects []fyne.CanvasObject) fyne.Size { return objects[0].MinSize() }

// tileScale is the scale of the tiles in units of the screen to a metre, at which a
// pot of 80 cm fills its tile, so that pots on the bench compare. A larger one is
// fitted in.
const tileScale = 180

// plantsAbove is the room that a tile keeps above plants, in metres.
const plantsAbove = 0.1

func tileDrawing(t screen.Tile) widgets.PotData {
	data := widgets.PotData{Side: sideOf(t.Vessel), Name: t.Label + ", " + t.Detail}
	addPlants(&data, t.Vessel, t.Grows)
	across, _ := t.Vessel.Spread()
	wide, tall := float64(across), float64(t.Vessel.Height())
	for _, p := range data.Side.Plants {
		wide, tall = max(wide, 2*math.Abs(p.X)+p.Spread), max(tall, data.Side.MixTo+p.Height+plantsAbove)
	}
	place := widgets.PotTileSize
	if float32(wide)*tileScale <= place.Width && float32(tall)*tileScale <= place.Height {
		data.UnitsPerMetre = tileScale
	}
	return data
}
