package feeding

import (
	"fyne.io/fyne/v2"

	"fourturn/app/theme"
)

// columns sets its objects side by side, row by row, as many as find the least width,
// and each row as high as it needs.
type columns struct {
	least float32
	most  int
}

func (c columns) count(width float32) int {
	return min(max(1, int((width+theme.Step2)/(c.least+theme.Step2))), c.most)
}

func (c columns) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	n := c.count(size.Width)
	wide := (size.Width - float32(n-1)*theme.Step2) / float32(n)
	y := float32(0)
	for i := 0; i < len(objects); i += n {
		row := objects[i:min(i+n, len(objects))]
		high := float32(0)
		for k, o := range row {
			o.Move(fyne.NewPos(float32(k)*(wide+theme.Step2), y))
			o.Resize(fyne.NewSize(wide, o.MinSize().Height)) // text that wraps knows its height by its width
			high = max(high, o.MinSize().Height)
		}
		for _, o := range row {
			o.Resize(fyne.NewSize(wide, high))
		}
		y += high + theme.Step
	}
}

// MinSize is the height at the width that the objects have now, and the width of one
// column.
func (c columns) MinSize(objects []fyne.CanvasObject) fyne.Size {
	n := c.most
	if len(objects) > 0 && objects[0].Size().Width > 0 {
		for n = 1; n < min(c.most, len(objects)) && objects[n].Position().Y == objects[0].Position().Y; n++ {
		}
	}
	high := float32(0)
	for i := 0; i < len(objects); i += n {
		row := float32(0)
		for _, o := range objects[i:min(i+n, len(objects))] {
			row = max(row, o.MinSize().Height)
		}
		high += row + theme.Step
	}
	return fyne.NewSize(c.least, high)
}
