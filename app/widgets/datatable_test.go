package widgets

import (
	"fmt"
	"slices"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	"fourturn/app/theme"
	"fourturn/app/widgets/golden"
)

func exampleTable(rows int) TableData {
	names := []string{"Coarse mix, fine bark", "Coated 14-14-14, 3–4 months at 21 °C", "20-20-20 soluble", "Calcium nitrate", "Pansy, 10 cm pots"}
	return TableData{
		Columns: []Column{
			{Label: "What to buy", Width: 160, Grow: 1, Sorts: true},
			{Label: "Size", Width: 70, Right: true},
			{Label: "Number", Width: 84, Right: true, Sorts: true},
			{Label: "By", Width: 110, Sorts: true},
			{Label: "Cost", Width: 80, Right: true, Sorts: true},
		},
		Rows: rows, Sorted: 3,
		Cell: func(row, column int) Cell {
			switch column {
			case 0:
				return Cell{Text: names[row%len(names)], Strong: true}
			case 1:
				return Cell{Text: "50 L", Soft: true}
			case 2:
				return Cell{Text: fmt.Sprint(row*7%23 + 1)}
			case 3:
				if row == 1 {
					return Cell{Text: "2 days late", Icon: theme.IconWarning, Late: true}
				}
				return Cell{Text: fmt.Sprintf("%d May", row%28+1)}
			}
			return Cell{Text: fmt.Sprintf("%d.50", row*3+4)}
		},
	}
}

func TestDataTableLook(t *testing.T) {
	golden.Check(t, "datatable", fyne.NewSize(640, 230), func() fyne.CanvasObject {
		data := exampleTable(5)
		data.Totals = []string{"Together", "", "38", "", "82.50"}
		table := NewDataTable(data)
		table.Resize(fyne.NewSize(640, 230))
		table.list.FocusGained()
		table.Select(2)
		return table
	})
}

func TestDataTableKeys(t *testing.T) {
	golden.App(t, theme.Options{})
	table := NewDataTable(exampleTable(1000))
	w := test.NewTempWindow(t, table)
	w.Resize(fyne.NewSize(640, 300))
	var selected, opened []int
	table.OnSelect = func(row int) { selected = append(selected, row) }
	table.OnOpen = func(row int) { opened = append(opened, row) }
	w.Canvas().Focus(table.Body())
	press(table.Body(), fyne.KeyDown, fyne.KeyDown, fyne.KeyReturn, fyne.KeyEnd, fyne.KeyDown, fyne.KeyHome, fyne.KeyUp)
	if want := []int{0, 1, 2, 999, 0}; !slices.Equal(selected, want) {
		t.Errorf("selected %v, want %v", selected, want)
	}
	if !slices.Equal(opened, []int{2}) {
		t.Errorf("opened %v", opened)
	}
	press(table.Body(), fyne.KeyPageDown)
	if table.Selected() < 5 {
		t.Errorf("Page Down goes to %d", table.Selected())
	}
	table.Set(exampleTable(3))
	if table.Selected() != 2 {
		t.Errorf("selected %d of 3 rows", table.Selected())
	}
	table.Set(exampleTable(0))
	press(table.Body(), fyne.KeyDown, fyne.KeyHome, fyne.KeyReturn)
	if table.Selected() != -1 {
		t.Errorf("selected %d of no rows", table.Selected())
	}
}

func TestDataTableSorts(t *testing.T) {
	golden.App(t, theme.Options{})
	data := exampleTable(4)
	table := NewDataTable(data)
	w := test.NewTempWindow(t, table)
	w.Resize(fyne.NewSize(640, 300))
	var sorted []string
	table.OnSort = func(column int, descending bool) {
		sorted = append(sorted, fmt.Sprint(column, descending))
		data.Sorted, data.Descending = column, descending
		table.Set(data)
	}
	w.Canvas().Focus(table.head)
	press(table.head, fyne.KeyRight, fyne.KeyReturn, fyne.KeyReturn) // past Size, which does not sort
	test.TapAt(table.head, fyne.NewPos(600, 5))
	test.TapAt(table.head, fyne.NewPos(table.widths(640)[0]+10, 5)) // Size
	if want := []string{"2 false", "2 true", "4 false"}; !slices.Equal(sorted, want) {
		t.Errorf("sorted %v, want %v", sorted, want)
	}
}

func TestDataTableTap(t *testing.T) {
	golden.App(t, theme.Options{})
	table := NewDataTable(exampleTable(5))
	w := test.NewTempWindow(t, table)
	w.SetPadded(false)
	w.Resize(fyne.NewSize(640, 300))
	opened := 0
	table.OnOpen = func(int) { opened++ }
	at := fyne.NewPos(100, table.head.MinSize().Height+newTableRow(table).MinSize().Height*1.5+4)
	test.TapCanvas(w.Canvas(), at)
	if table.Selected() != 1 || opened != 0 {
		t.Errorf("selected %d, opened %d", table.Selected(), opened)
	}
	test.TapCanvas(w.Canvas(), at)
	if opened != 1 {
		t.Errorf("the second tap opened %d rows", opened)
	}
	if got := table.AccessibilityLabel(); got != "What to buy Coated 14-14-14, 3–4 months at 21 °C, Size 50 L, Number 8, By 2 days late, Cost 7.50" {
		t.Errorf("name %q", got)
	}
}
