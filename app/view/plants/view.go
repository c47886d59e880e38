// Package plants draws the plant book: what is asked above, the plants that answer in
// a table, and the chosen one beside it with the source of each value.
package plants

import (
	"slices"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	screen "fourturn/app/screen/plants"
	"fourturn/app/theme"
	"fourturn/app/widgets"
	"fourturn/app/widgets/plantdraw"
	"fourturn/app/words"
	"fourturn/planner"
)

// Shell is what the room needs of the window around it.
type Shell interface {
	ShowWorking(f planner.Figure)
	Status(text string)
	Canvas() fyne.Canvas
}

// View is the room of the plant book.
type View struct {
	screen  *screen.Screen
	words   *words.Words
	shell   Shell
	page    fyne.CanvasObject
	header  *widgets.PageHeader
	search  *widgets.FilterEntry
	filters []*widgets.ChoiceField // in the order of the screen's
	order   *widgets.ChoiceField
	clear   *widgets.Button
	// sideBySide opens the plants that were taken to compare.
	sideBySide *widgets.Button
	table      *widgets.DataTable
	columns    []screen.Column // that there is room for
	none       fyne.CanvasObject
	chosen     *chosen
	icons      plantdraw.Icons
}

// New returns the room.
func New(s *screen.Screen, w *words.Words, shell Shell) *View {
	v := &View{screen: s, words: w, shell: shell}
	v.search = widgets.NewFilterEntry(w.T("plant_book.search"), v.find, v.toTable)
	v.clear = widgets.NewButton(widgets.ButtonData{Icon: theme.IconClose, Label: w.T("plant_book.clear"), Kind: widgets.ButtonQuiet}, v.showAll)
	v.sideBySide = widgets.NewButton(widgets.ButtonData{}, v.compare)
	v.header = widgets.NewPageHeader(w.T("plant_book.title"), "", v.sideBySide, v.clear, container.New(widgets.LeastWide(searchWidth), v.search))
	v.columns = allColumns
	v.table = widgets.NewDataTable(widgets.TableData{Sorted: -1})
	v.table.OnSelect = func(row int) {
		s.Choose(s.Row(row).ID)
		v.chosen.show()
	}
	v.table.OnSort = func(column int, descending bool) {
		s.Sort(v.columns[column], descending)
		v.showList()
	}
	again := widgets.NewButton(widgets.ButtonData{Label: w.T("plant_book.clear"), Kind: widgets.ButtonMain}, v.showAll)
	v.none = widgets.NewEmptyState(theme.DrawingSearch, w.T("plant_book.none_found_title"), w.T("plant_book.none_found_text"), again)
	v.chosen = newChosen(v)
	split := container.New(&sideBySide{onWidth: v.fit}, container.NewStack(v.table, v.none), v.chosen.object)
	top := container.NewVBox(v.header)
	if title, lines := s.Faults(); title != "" {
		top.Add(widgets.NewNotice(widgets.NoticeData{Kind: widgets.NoticeWarning, Title: title, Text: strings.Join(lines, "\n")}))
	}
	top.Add(v.asked())
	v.page = container.NewBorder(top, nil, nil, nil, split)
	v.Refresh()
	return v
}

// Object returns the page to be shown.
func (v *View) Object() fyne.CanvasObject { return v.page }

// Open looks at a plant.
func (v *View) Open(id string) {
	if v.screen.Choose(id) {
		if v.screen.ChosenRow() < 0 {
			v.showAll()
		}
		v.Refresh()
	}
}

// Refresh shows the book as it is now.
func (v *View) Refresh() {
	v.screen.Update()
	if v.search.Text != v.screen.Query() {
		v.search.SetText(v.screen.Query())
	}
	for i, f := range screen.Filters {
		c := v.screen.Filter(f)
		v.filters[i].SetChoice(c.Chosen)
	}
	v.showList()
	v.showCompare()
	v.chosen.show()
}

const filterColumns = 5

// asked is the two lines of what can be asked of a plant.
func (v *View) asked() fyne.CanvasObject {
	grid := container.New(fieldGrid{columns: filterColumns})
	for _, f := range screen.Filters {
		field := widgets.NewChoiceField(v.screen.Label(f), "", v.screen.Filter(f).Options, func(i int) {
			v.screen.SetFilter(f, i)
			v.showList()
		})
		v.filters = append(v.filters, field)
		grid.Add(field)
	}
	v.order = widgets.NewChoiceField(v.words.T("plant_book.sort"), "", v.screen.Orders().Options, func(i int) {
		v.screen.SetOrder(i)
		v.showList()
	})
	grid.Add(v.order)
	return grid
}

// find looks for a name as it is typed.
func (v *View) find(typed string) {
	v.screen.Search(typed)
	v.showList()
}

// toTable goes from the search to what was found.
func (v *View) toTable() {
	if v.screen.Rows() == 0 {
		return
	}
	v.shell.Canvas().Focus(v.table.Body())
	if v.table.Selected() < 0 {
		v.table.Select(0)
	}
}

// showAll asks for nothing any more.
func (v *View) showAll() {
	v.screen.Clear()
	v.Refresh()
}

// showList shows the plants that answer.
func (v *View) showList() {
	v.header.Set(v.words.T("plant_book.title"), v.screen.About())
	v.order.SetChoice(v.screen.Orders().Chosen)
	if v.screen.Filtered() {
		v.clear.Enable()
	} else {
		v.clear.Disable()
	}
	sorted, descending := v.screen.Sorted()
	v.table.Set(widgets.TableData{
		Columns: v.heads(), Rows: v.screen.Rows(), Cell: v.cell, Sorted: slices.Index(v.columns, sorted), Descending: descending,
	})
	v.table.Select(v.screen.ChosenRow())
	if v.screen.Rows() == 0 {
		v.table.Hide()
		v.none.Show()
		return
	}
	v.none.Hide()
	v.table.Show()
}
