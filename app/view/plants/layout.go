package plants

import (
	"fyne.io/fyne/v2"

	"fourturn/app/theme"
)

// searchWidth is that of a long plant name.
const searchWidth = 280

// sideBySide gives the chosen plant a column that its facts need and the table the
// rest, whose width it tells.
type sideBySide struct {
	onWidth func(table float32)
	told    float32
}

const (
	chosenLeast = 330
	chosenMost  = 440
)

func (l *sideBySide) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	const share = 0.36
	wide := max(min(max(size.Width*share, chosenLeast), chosenMost), objects[1].MinSize().Width)
	rest := size.Width - wide - theme.Step2
	objects[0].Move(fyne.NewPos(0, 0))
	objects[0].Resize(fyne.NewSize(rest, size.Height))
	objects[1].Move(fyne.NewPos(rest+theme.Step2, 0))
	objects[1].Resize(fyne.NewSize(wide, size.Height))
	if rest != l.told {
		l.told = rest
		l.onWidth(rest)
	}
}

func (l *sideBySide) MinSize(objects []fyne.CanvasObject) fyne.Size {
	a, b := objects[0].MinSize(), objects[1].MinSize()
	return fyne.NewSize(a.Width+theme.Step2+max(chosenLeast, b.Width), max(a.Height, b.Height))
}

// fieldGrid stands fields in lines. They may never refuse anything, so that the
// line under each for reasons is lent to the next.
type fieldGrid struct{ columns int }

const reasonRoom = 14

func (g fieldGrid) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	n := float32(g.columns)
	wide := (size.Width - (n-1)*theme.Step) / n
	for i, o := range objects {
		high := o.MinSize().Height
		o.Resize(fyne.NewSize(wide, high))
		o.Move(fyne.NewPos(float32(i%g.columns)*(wide+theme.Step), float32(i/g.columns)*(high-reasonRoom)))
	}
}

func (g fieldGrid) MinSize(objects []fyne.CanvasObject) fyne.Size {
	least := fyne.NewSize(0, 0)
	for _, o := range objects {
		least = least.Max(o.MinSize())
	}
	n, lines := float32(g.columns), float32((len(objects)+g.columns-1)/g.columns)
	return fyne.NewSize(n*least.Width+(n-1)*theme.Step, lines*(least.Height-reasonRoom))
}

// pictureRow gives the picture from the side three parts of the width and the one
// from above two.
type pictureRow struct{}

func (pictureRow) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	const share = 0.6
	first := (size.Width - theme.Step) * share
	objects[0].Move(fyne.NewPos(0, 0))
	objects[0].Resize(fyne.NewSize(first, size.Height))
	objects[1].Move(fyne.NewPos(first+theme.Step, 0))
	objects[1].Resize(fyne.NewSize(size.Width-first-theme.Step, size.Height))
}

func (pictureRow) MinSize(objects []fyne.CanvasObject) fyne.Size {
	a, b := objects[0].MinSize(), objects[1].MinSize()
	return fyne.NewSize(a.Width+theme.Step+b.Width, max(a.Height, b.Height))
}

// How large the pictures of the chosen plant are at least.
var (
	sideLeast  = fyne.NewSize(150, 190)
	aboveLeast = fyne.NewSize(110, 190)
)
