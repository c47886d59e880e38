package plantdraw

import (
	"image"

	"fourturn/app/widgets/ink"
	"fourturn/plants"
	"fourturn/plants/sketch"
)

// Contact draws plants side by side in columns of cells, each from the side and from
// above, so that all can be looked over.
func Contact(all []*plants.Plant, columns, cell int, palette Palette) *image.NRGBA {
	rows := (len(all) + columns - 1) / columns
	sheet := ink.NewSheet(columns*cell*5/3, rows*cell)
	w, h := sheet.Size()
	sheet.Rect(ink.Solid(palette.Paper), 0, 0, float64(w), float64(h))
	side := float64(cell)
	const margin = 6.0
	for i, p := range all {
		x, y := float64(i%columns)*side*5/3, float64(i/columns)*side
		drawPortrait(sheet, p, sketch.Side, x+margin, y+margin, side-2*margin, side-2*margin, 1, palette)
		drawPortrait(sheet, p, sketch.Above, x+side+margin, y+side/3+margin, side*2/3-2*margin, side*2/3-2*margin, 1, palette)
	}
	return sheet.Image
}
