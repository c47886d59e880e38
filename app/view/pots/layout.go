package pots

import (
	"fyne.io/fyne/v2"

	"fourturn/app/theme"
)

// pairs sets its objects in columns at least columnLeast wide, row by row, as many as
// fit side by side.
type pairs struct{}

const columnLeast = 200

func (pairs) columns(width float32) int {
	return max(1, int((width+theme.Step2)/(columnLeast+theme.Step2)))
}

func (p pairs) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	n := p.columns(size.Width)
	wide := (size.Width - float32(n-1)*theme.Step2) / float32(n)
	y := float32(0)
	for i := 0; i < len(objects); i += n {
		row := objects[i:min(i+n, len(objects))]
		high := float32(0)
		for _, o := range row {
			high = max(high, o.MinSize().Height)
		}
		for k, o := range row {
			o.Move(fyne.NewPos(float32(k)*(wide+theme.Step2), y))
			o.Resize(fyne.NewSize(wide, high))
		}
		y += high + theme.Step
	}
}

// MinSize is that of two columns: the page is never narrower.
func (p pairs) MinSize(objects []fyne.CanvasObject) fyne.Size {
	const n = 2
	high := float32(0)
	for i := 0; i < len(objects); i += n {
		row := float32(0)
		for _, o := range objects[i:min(i+n, len(objects))] {
			row = max(row, o.MinSize().Height)
		}
		high += row + theme.Step
	}
	return fyne.NewSize(n*columnLeast+theme.Step2, high)
}
