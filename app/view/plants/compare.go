package plants

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"fourturn/app/theme"
	"fourturn/app/widgets"
	"fourturn/app/widgets/plantdraw"
)

// comparison is how large the table of plants side by side is: as wide as a small
// window lets it.
var comparison = fyne.NewSize(820, 420)

// comparedLeast is how large each plant is drawn above its column.
var comparedLeast = fyne.NewSize(100, 110)

// labelsWide is how wide the column of labels is.
const labelsWide = 200

// besideLabels keeps the width of the labels free.
type besideLabels struct{}

func (besideLabels) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	objects[0].Move(fyne.NewPos(labelsWide, 0))
	objects[0].Resize(fyne.NewSize(size.Width-labelsWide-theme.Step, size.Height-theme.Step))
}

func (besideLabels) MinSize(objects []fyne.CanvasObject) fyne.Size {
	return objects[0].MinSize().AddWidthHeight(labelsWide, theme.Step)
}

// compare shows the plants that were taken to compare side by side.
func (v *View) compare() {
	w, c := v.words, v.screen.Comparison()
	if len(c.Plants) == 0 {
		return
	}
	columns := []widgets.Column{{Label: "", Width: labelsWide}}
	for _, name := range c.Plants {
		columns = append(columns, widgets.Column{Label: name, Width: 150, Grow: 1})
	}
	table := widgets.NewDataTable(widgets.TableData{
		Columns: columns, Rows: len(c.Rows), Sorted: -1,
		Cell: func(row, column int) widgets.Cell {
			if column == 0 {
				return widgets.Cell{Text: c.Rows[row].Label, Soft: true}
			}
			value := c.Rows[row].Values[column-1]
			cell := widgets.Cell{Text: value.Text}
			if value.Harmful {
				cell.Icon = theme.IconPet
			}
			return cell
		},
	})
	pictures := container.NewGridWithColumns(len(c.Drawn))
	for _, p := range c.Drawn {
		pictures.Add(plantdraw.NewSide(p, comparedLeast))
	}
	above := container.New(besideLabels{}, pictures)
	widgets.ShowDialog(v.shell.Canvas(), widgets.DialogData{
		Title: w.T("plant_book.compare_title"), Content: container.NewBorder(above, nil, nil, nil, table), Cancel: w.T("plant_book.close"), Size: comparison, Focus: table.Body(),
	})
}

// showCompare says on the button how many plants there are to compare.
func (v *View) showCompare() {
	_, count := v.screen.Compared()
	v.sideBySide.Set(widgets.ButtonData{Icon: theme.IconPlantBook, Label: v.words.T("plant_book.compare", map[string]any{"count": count}), Kind: widgets.ButtonQuiet})
	if count > 1 {
		v.sideBySide.Enable()
	} else {
		v.sideBySide.Disable()
	}
}

// take puts the chosen plant with those to compare, or takes it away.
func (v *View) take() {
	if err := v.screen.ToggleCompared(); err != nil {
		v.shell.Status(err.Error())
	}
	v.showCompare()
	v.chosen.show()
}
