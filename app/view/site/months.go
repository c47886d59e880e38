package site

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	screen "fourturn/app/screen/site"
	"fourturn/app/theme"
	"fourturn/app/widgets"
)

// tableRow is how high a row of a table is, to give a table as much room as its rows
// need.
const tableRow = 34

// tall gives a table the height of its rows.
func tall(table *widgets.DataTable, rows, most int) fyne.CanvasObject {
	return container.New(widgets.LeastHigh(float32(min(rows, most)+1)*tableRow+theme.Step), table)
}

// monthTable is the year month by month.
func (p *yearPart) monthTable() fyne.CanvasObject {
	w := p.view.words
	rows := p.view.screen.MonthRows()
	columns := []widgets.Column{
		{Label: w.T("site.month"), Width: 90, Grow: 1},
		{Label: w.T("site.mean_low_column"), Width: 80, Right: true, Grow: 1},
		{Label: w.T("site.mean_high_column"), Width: 80, Right: true, Grow: 1},
		{Label: w.T("site.rain_column"), Width: 70, Right: true, Grow: 1},
		{Label: w.T("site.daylight_column"), Width: 90, Right: true, Grow: 1},
		{Label: w.T("site.radiation_column"), Width: 125, Right: true, Grow: 1},
		{Label: w.T("site.et_column"), Width: 130, Right: true, Grow: 1},
	}
	table := widgets.NewDataTable(widgets.TableData{
		Columns: columns, Rows: len(rows), Sorted: -1,
		Cell: func(r, c int) widgets.Cell {
			row := rows[r]
			switch c {
			case 0:
				return widgets.Cell{Text: row.Name}
			case 1:
				return soft(row.Low)
			case 2:
				return soft(row.High)
			case 3:
				return widgets.Cell{Text: row.Rain}
			case 4:
				return soft(row.Daylight)
			case 5:
				return soft(row.Radiation)
			}
			return soft(row.Evaporation)
		},
	})
	table.OnOpen = func(r int) { p.view.shell.ShowWorking(rows[r].Evaporation.Figure) }
	return tall(table, len(rows), len(rows))
}

// soft is a figure in a table, marked where it rests on an estimate.
func soft(f screen.Figure) widgets.Cell { return widgets.Cell{Text: about(f.Value, f.Soft)} }
