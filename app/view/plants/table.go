package plants

import (
	"slices"

	"fyne.io/fyne/v2"
	fynetheme "fyne.io/fyne/v2/theme"

	screen "fourturn/app/screen/plants"
	"fourturn/app/theme"
	"fourturn/app/widgets"
)

// allColumns are the columns as they stand from left to right; where there is little
// room, the last go first.
var allColumns = []screen.Column{
	screen.NameColumn, screen.ListedColumn, screen.BotanicalColumn, screen.HeightColumn, screen.NightColumn,
}

// head returns the heading of a column.
func (v *View) head(c screen.Column) widgets.Column {
	w := v.words
	switch c {
	case screen.NameColumn:
		return widgets.Column{Label: w.T("plant_book.name_column"), Width: 156, Grow: 1, Sorts: true}
	case screen.ListedColumn:
		return widgets.Column{Label: w.T("plant_book.listed_column"), Width: 160}
	case screen.BotanicalColumn:
		return widgets.Column{Label: w.T("plant_book.botanical_column"), Width: 110, Grow: 1, Sorts: true}
	case screen.HeightColumn:
		return widgets.Column{Label: w.T("plant_book.height_column"), Width: 66, Right: true, Sorts: true}
	case screen.NightColumn:
		return widgets.Column{Label: w.T("plant_book.night_column"), Width: 66, Right: true, Sorts: true}
	}
	panic("plants: no such column")
}

func (v *View) heads() []widgets.Column {
	heads := make([]widgets.Column, len(v.columns))
	for i, c := range v.columns {
		heads[i] = v.head(c)
	}
	return heads
}

// fit shows the columns that there is room for: all that is left out stands beside
// the table for the chosen plant.
func (v *View) fit(width float32) {
	const usualText = 14 // that the widths are for
	scale := fyne.CurrentApp().Settings().Theme().Size(fynetheme.SizeNameText) / usualText
	var columns []screen.Column
	for _, c := range allColumns {
		if wide := v.head(c).Width * scale; wide <= width {
			columns = append(columns, c)
			width -= wide
		}
	}
	if len(columns) > 0 && !slices.Equal(columns, v.columns) {
		v.columns = columns
		v.showList()
	}
}

func (v *View) cell(row, column int) widgets.Cell {
	r := v.screen.Row(row)
	switch v.columns[column] {
	case screen.NameColumn:
		return widgets.Cell{Text: r.Name, Strong: true, Picture: v.icons.Of(r.Plant)}
	case screen.BotanicalColumn:
		return widgets.Cell{Text: r.Botanical, Soft: true}
	case screen.HeightColumn:
		return widgets.Cell{Text: r.Height}
	case screen.NightColumn:
		return widgets.Cell{Text: r.Night}
	case screen.ListedColumn:
	}
	cell := widgets.Cell{Text: r.Listed, Soft: !r.Harmful}
	if r.Harmful {
		cell.Icon = theme.IconPet
	}
	return cell
}
