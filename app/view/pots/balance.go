package pots

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	screen "fourturn/app/screen/pots"
	"fourturn/app/widgets"
)

// balance is the table of what goes into the pot and what comes out at each change-out.
type balance struct {
	view   *View
	object *fyne.Container
	table  *widgets.DataTable
	rows   []screen.BalanceRow
	sums   *fyne.Container
	said   string
}

func newBalance(v *View) *balance {
	b := &balance{view: v, sums: container.NewVBox()}
	b.table = widgets.NewDataTable(widgets.TableData{Sorted: -1})
	b.table.OnOpen = func(r int) {
		if f := b.rows[r].Figure; !f.IsZero() {
			v.shell.ShowWorking(f)
		}
	}
	b.object = container.NewVBox(b.sums, container.New(widgets.LeastHigh(0), b.table), widgets.NewText(v.words.T("pots.balance_text")))
	return b
}

func (b *balance) show() {
	w := b.view.words
	b.rows = b.view.screen.Balance()
	if len(b.rows) == 0 {
		b.object.Hide()
		return
	}
	b.object.Show()
	if text := b.view.screen.Through(); text != b.said {
		b.said, b.sums.Objects = text, nil
		if text != "" {
			b.sums.Add(widgets.NewText(text))
		}
		b.sums.Refresh()
	}
	rows := b.rows
	b.table.Set(widgets.TableData{
		Columns: []widgets.Column{
			{Label: w.T("pots.balance_when"), Width: 58, Grow: 1},
			{Label: w.T("pots.balance_season"), Width: 66, Grow: 1},
			{Label: w.T("pots.balance_balls_out"), Width: 72, Right: true},
			{Label: w.T("pots.balance_old_out"), Width: 66, Right: true},
			{Label: w.T("pots.balance_balls_in"), Width: 66, Right: true},
			{Label: w.T("pots.balance_fresh"), Width: 66, Right: true},
			{Label: w.T("pots.balance_age"), Width: 66, Right: true},
		},
		Rows: len(rows), Sorted: -1,
		Cell: func(r, c int) widgets.Cell {
			row := rows[r]
			return widgets.Cell{Text: []string{row.When, row.Season, row.BallsOut, row.OldOut, row.BallsIn, row.Fresh, row.Age}[c], Strong: row.Now}
		},
	})
	const rowHigh = 36
	b.object.Objects[1].(*fyne.Container).Layout = widgets.LeastHigh(float32(len(rows)+1) * rowHigh)
	b.object.Refresh()
}
