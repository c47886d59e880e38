package widgets

import (
	"image"
	"slices"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"

	"fourturn/app/theme"
)

// Column describes one column of a DataTable.
type Column struct {
	Label string
	Width float32 // least width in units of the screen for text scale 1
	Grow  float32 // share of the width that is left over
	Right bool    // figures stand at the right
	Sorts bool    // the heading can be pressed
}

// Cell is what stands at one place of a table.
type Cell struct {
	Text string
	Icon theme.IconName // before the text, or ""
	// Picture stands before the text as high as the row lets it, or is nil.
	Picture image.Image
	Strong  bool
	Soft    bool // explains, rather than says
	Late    bool // in the colour of what is late; the text must say so too
}

// TableData is what a table shows. Cell is asked only for rows in sight.
type TableData struct {
	Columns []Column
	Rows    int
	Cell    func(row, column int) Cell
	Totals  []string // a last line under a rule, one text a column; nil for none
	// Sorted is the column by which the rows are in order, −1 for none.
	Sorted     int
	Descending bool
}

// DataTable is a table with rows that are selected as a whole. Only rows in sight
// exist. Keys: Up, Down, Page Up, Page Down, Home and End select, Enter opens; on
// the headings Left and Right choose and Enter sorts. The caller sorts.
type DataTable struct {
	widget.BaseWidget

	// OnSelect is called when another row is selected.
	OnSelect func(row int)
	// OnOpen is called for Enter, or a tap on the selected row.
	OnOpen func(row int)
	// OnSort is called when a heading was pressed: the same again turns the order.
	OnSort func(column int, descending bool)
	// OpenOnTap opens a row by the first tap, as in a list of places to go to.
	OpenOnTap bool

	data     TableData
	selected int
	list     *tableList
	head     *tableHead
	totals   *tableRow
	wide     *container.Scroll
}

var (
	_ fyne.Widget     = (*DataTable)(nil)
	_ fyne.Accessible = (*DataTable)(nil)
)

// NewDataTable returns a table with no row selected.
func NewDataTable(data TableData) *DataTable {
	t := &DataTable{data: data, selected: -1}
	t.head = &tableHead{table: t}
	t.head.ExtendBaseWidget(t.head)
	t.list = newTableList(t)
	t.totals = newTableRow(t)
	t.totals.total = true
	t.wide = container.NewHScroll(container.NewBorder(t.head, t.totals, nil, nil, t.list))
	t.ExtendBaseWidget(t)
	t.settle()
	return t
}

// Set shows other data. The selection stays at its row while there is one.
func (t *DataTable) Set(data TableData) {
	t.data = data
	if t.selected >= data.Rows {
		t.selected = data.Rows - 1
	}
	t.settle()
	t.Refresh()
}

func (t *DataTable) settle() {
	show(t.totals, t.data.Totals != nil)
	show(t.head, slices.ContainsFunc(t.data.Columns, func(c Column) bool { return c.Label != "" }))
}

// Selected returns the selected row, −1 for none.
func (t *DataTable) Selected() int { return t.selected }

// Select selects a row and brings it into sight; −1 selects none.
func (t *DataTable) Select(row int) {
	row = max(-1, min(row, t.data.Rows-1))
	if row == t.selected {
		return
	}
	before := t.selected
	t.selected = row
	for _, r := range []int{before, row} {
		if r >= 0 && r < t.data.Rows {
			t.list.RefreshItem(r)
		}
	}
	if row >= 0 {
		t.list.ScrollTo(row)
		if t.OnSelect != nil {
			t.OnSelect(row)
		}
	}
}

// Body returns the part with the rows, which takes the focus.
func (t *DataTable) Body() fyne.Focusable { return t.list }

func (t *DataTable) tapped(row int) {
	if c := fyne.CurrentApp().Driver().CanvasForObject(t); c != nil {
		c.Focus(t.list)
	}
	if row == t.selected {
		t.open()
		return
	}
	t.Select(row)
	if t.OpenOnTap {
		t.open()
	}
}

func (t *DataTable) open() {
	if t.selected >= 0 && t.OnOpen != nil {
		t.OnOpen(t.selected)
	}
}

// widths shares a width among the columns.
func (t *DataTable) widths(whole float32) []float32 {
	scale := textScale(lookOf(t))
	widths := make([]float32, len(t.data.Columns))
	rest, grow := whole, float32(0)
	for i, c := range t.data.Columns {
		widths[i] = c.Width * scale
		rest -= widths[i]
		grow += c.Grow
	}
	if rest > 0 && grow > 0 {
		for i, c := range t.data.Columns {
			widths[i] += rest * c.Grow / grow
		}
	}
	return widths
}

// least is the width of all columns at their narrowest.
func (t *DataTable) least() float32 {
	total := float32(0)
	for _, c := range t.data.Columns {
		total += c.Width
	}
	return total * textScale(lookOf(t))
}

// AccessibilityLabel returns the texts of the selected row with their headings.
func (t *DataTable) AccessibilityLabel() string {
	if t.selected < 0 || t.selected >= t.data.Rows || t.data.Cell == nil {
		return ""
	}
	var parts []string
	for i, c := range t.data.Columns {
		if text := t.data.Cell(t.selected, i).Text; text != "" {
			parts = append(parts, strings.TrimSpace(c.Label+" "+text))
		}
	}
	return accessibleName(parts...)
}

// AccessibilityRole is a container.
func (t *DataTable) AccessibilityRole() fyne.AccessibleRole { return fyne.AccessibleRoleContainer }

// CreateRenderer is called by the toolkit.
func (t *DataTable) CreateRenderer() fyne.WidgetRenderer { return &tableRenderer{t} }

type tableRenderer struct{ table *DataTable }

func (r *tableRenderer) Refresh() {
	r.table.head.Refresh()
	r.table.totals.Refresh()
	r.table.list.Refresh()
	r.table.wide.Refresh()
}

func (r *tableRenderer) MinSize() fyne.Size {
	return fyne.NewSize(min(r.table.least(), 320), r.table.head.MinSize().Height*4)
}

func (r *tableRenderer) Layout(size fyne.Size)        { r.table.wide.Resize(size) }
func (r *tableRenderer) Objects() []fyne.CanvasObject { return []fyne.CanvasObject{r.table.wide} }
func (r *tableRenderer) Destroy()                     {}
