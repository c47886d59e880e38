package plants

import (
	"fyne.io/fyne/v2"

	"fourturn/app/theme"
	"fourturn/app/widgets"
)

// comparison is how large the table of plants side by side is: as wide as a small
// window lets it.
var comparison = fyne.NewSize(820, 420)

// compare shows the plants that were taken to compare side by side.
func (v *View) compare() {
	w, c := v.words, v.screen.Comparison()
	if len(c.Plants) == 0 {
		return
	}
	columns := []widgets.Column{{Label: "", Width: 200}}
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
	widgets.ShowDialog(v.shell.Canvas(), widgets.DialogData{
		Title: w.T("plant_book.compare_title"), Content: table, Cancel: w.T("plant_book.close"), Size: comparison, Focus: table.Body(),
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
