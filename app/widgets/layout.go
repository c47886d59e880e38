package widgets

import (
	"fyne.io/fyne/v2"

	"fourturn/app/theme"
)

// Columns sets its objects side by side, row by row, as many as find the least width,
// and each row as high as it needs.
type Columns struct {
	Least float32 // width of a column
	Most  int     // columns
}

func (c Columns) count(width float32) int {
	return min(max(1, int((width+theme.Step2)/(c.Least+theme.Step2))), c.Most)
}

// Layout is called by the toolkit.
func (c Columns) Layout(objects []fyne.CanvasObject, size fyne.Size) {
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
func (c Columns) MinSize(objects []fyne.CanvasObject) fyne.Size {
	n := c.Most
	if len(objects) > 0 && objects[0].Size().Width > 0 {
		for n = 1; n < min(c.Most, len(objects)) && objects[n].Position().Y == objects[0].Position().Y; n++ {
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
	return fyne.NewSize(c.Least, high)
}

// SideMargin keeps the scroll bar off the content.
type SideMargin struct{}

// Layout is called by the toolkit.
func (SideMargin) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	objects[0].Resize(size.SubtractWidthHeight(theme.Step2, 0))
}

// MinSize is that of the content with the margin.
func (SideMargin) MinSize(objects []fyne.CanvasObject) fyne.Size {
	return objects[0].MinSize().AddWidthHeight(theme.Step2, theme.Step2)
}

// least gives its one child all the room, and at least a size.
type least fyne.Size

func (l least) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	objects[0].Move(fyne.Position{})
	objects[0].Resize(size)
}

func (l least) MinSize(objects []fyne.CanvasObject) fyne.Size {
	return objects[0].MinSize().Max(fyne.Size(l))
}

// LeastHigh gives what scrolls by itself a height within a page that scrolls.
func LeastHigh(height float32) fyne.Layout { return least{Height: height} }

// LeastWide gives its one child a least width.
func LeastWide(width float32) fyne.Layout { return least{Width: width} }

// Flow sets its objects side by side at their least widths and goes on in the next
// line where one is full. What is left of a line is given to the first object of it
// where Grow is set. How high it is it knows once it was laid out in a width.
type Flow struct{ Grow bool }

// Layout is called by the toolkit.
func (f Flow) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	y := float32(0)
	for _, line := range f.lines(objects, size.Width) {
		wide, high := f.measure(line)
		spare := float32(0)
		if f.Grow {
			spare = max(0, size.Width-wide)
		}
		x := float32(0)
		for _, o := range line {
			least := o.MinSize()
			o.Move(fyne.NewPos(x, y))
			o.Resize(fyne.NewSize(least.Width+spare, high))
			x += least.Width + spare + theme.Step
			spare = 0
		}
		y += high + theme.Step
	}
}

// lines parts the objects into lines.
func (f Flow) lines(objects []fyne.CanvasObject, width float32) (lines [][]fyne.CanvasObject) {
	x := float32(0)
	for _, o := range objects {
		if !o.Visible() {
			continue
		}
		w := o.MinSize().Width
		if len(lines) == 0 || x+w > width {
			lines, x = append(lines, nil), 0
		}
		lines[len(lines)-1] = append(lines[len(lines)-1], o)
		x += w + theme.Step
	}
	return lines
}

func (f Flow) measure(line []fyne.CanvasObject) (wide, high float32) {
	for _, o := range line {
		least := o.MinSize()
		wide, high = wide+least.Width+theme.Step, max(high, least.Height)
	}
	return wide - theme.Step, high
}

// MinSize is the height at the width that the objects have now.
func (f Flow) MinSize(objects []fyne.CanvasObject) fyne.Size {
	wide, high, last := float32(0), float32(0), float32(-1)
	for _, o := range objects {
		if !o.Visible() {
			continue
		}
		least := o.MinSize()
		wide = max(wide, least.Width)
		if y := o.Position().Y; y != last {
			last = y
			high += least.Height + theme.Step
		}
	}
	return fyne.NewSize(wide, max(0, high-theme.Step))
}
