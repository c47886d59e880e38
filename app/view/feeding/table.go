package feeding

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	screen "fourturn/app/screen/feeding"
	"fourturn/app/theme"
	"fourturn/app/widgets"
)

// column is one column of a table of rows of any kind.
type column[R any] struct {
	widgets.Column
	text func(R) string
	open func(R) screen.Figure // its working, or nil
}

// tableOf builds a table as high as its rows, whose cells open their workings.
func tableOf[R any](v *View, rows []R, columns []column[R], late func(R) bool) fyne.CanvasObject {
	heads := make([]widgets.Column, len(columns))
	for i, c := range columns {
		heads[i] = c.Column
	}
	table := widgets.NewDataTable(widgets.TableData{
		Columns: heads, Rows: len(rows), Sorted: -1,
		Cell: func(r, c int) widgets.Cell {
			return widgets.Cell{Text: columns[c].text(rows[r]), Late: late != nil && late(rows[r])}
		},
	})
	table.OnOpen = func(r int) {
		for _, c := range columns {
			if c.open == nil {
				continue
			}
			if f := c.open(rows[r]); !f.Figure.IsZero() {
				v.shell.ShowWorking(f.Figure)
				return
			}
		}
	}
	const rowHigh, mostRows = 34, 12
	least := float32(min(len(rows), mostRows)+1)*rowHigh + theme.Step
	return container.New(widgets.LeastHigh(least), table)
}

func (v *View) table(rows []screen.Round) fyne.CanvasObject {
	w := v.words
	return tableOf(v, rows, []column[screen.Round]{
		{widgets.Column{Label: w.T("feeding.when"), Width: 110}, func(r screen.Round) string { return r.When }, nil},
		{widgets.Column{Label: w.T("feeding.product"), Width: 150, Grow: 1}, func(r screen.Round) string { return r.Letter + " " + r.Product }, nil},
		{widgets.Column{Label: w.T("feeding.pots_column"), Width: 70, Right: true}, func(r screen.Round) string { return r.Pots }, nil},
		{widgets.Column{Label: w.T("feeding.water"), Width: 90, Right: true}, func(r screen.Round) string { return r.Water.Value }, nil},
		{widgets.Column{Label: w.T("feeding.dose"), Width: 100, Right: true}, func(r screen.Round) string { return r.Dose.Value }, func(r screen.Round) screen.Figure { return r.Dose }},
		{widgets.Column{Label: w.T("feeding.spoons"), Width: 110, Right: true}, func(r screen.Round) string { return r.Spoons.Value }, nil},
	}, func(r screen.Round) bool { return r.Late })
}

func (v *View) pastTable(rows []screen.Round) fyne.CanvasObject {
	w := v.words
	return tableOf(v, rows, []column[screen.Round]{
		{widgets.Column{Label: w.T("feeding.when"), Width: 110}, func(r screen.Round) string { return r.When }, nil},
		{widgets.Column{Label: w.T("feeding.product"), Width: 150, Grow: 1}, func(r screen.Round) string { return r.Letter + " " + r.Product }, nil},
		{widgets.Column{Label: w.T("feeding.pots_column"), Width: 80, Right: true}, func(r screen.Round) string { return r.Pots }, nil},
	}, nil)
}

func (v *View) chargeTable(rows []screen.Charge) fyne.CanvasObject {
	w := v.words
	return tableOf(v, rows, []column[screen.Charge]{
		{widgets.Column{Label: w.T("feeding.pot"), Width: 140, Grow: 1}, func(c screen.Charge) string { return c.Pot }, nil},
		{widgets.Column{Label: w.T("feeding.season"), Width: 80}, func(c screen.Charge) string { return c.Season }, nil},
		{widgets.Column{Label: w.T("feeding.mixed_in"), Width: 110}, func(c screen.Charge) string { return c.When }, nil},
		{widgets.Column{Label: w.T("feeding.charge"), Width: 80, Right: true}, func(c screen.Charge) string { return c.Mass.Value }, func(c screen.Charge) screen.Figure { return c.Mass }},
		{widgets.Column{Label: w.T("feeding.tablespoons"), Width: 120, Right: true}, func(c screen.Charge) string { return c.Spoons.Value }, nil},
		{widgets.Column{Label: w.T("feeding.spent"), Width: 110, Right: true}, func(c screen.Charge) string { return c.Spent.Value }, nil},
	}, nil)
}
