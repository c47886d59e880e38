package begin

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"

	screen "fourturn/app/screen/begin"
	"fourturn/app/theme"
	"fourturn/app/widgets"
)

// placePage asks for a town nearby.
type placePage struct {
	view    *View
	entry   *widgets.SearchEntry
	table   *widgets.DataTable
	none    *widget.Label
	climate *fyne.Container
	whole   fyne.CanvasObject
	places  []screen.Place
}

func newPlacePage(v *View) *placePage {
	p := &placePage{view: v, climate: container.NewStack()}
	p.table = widgets.NewDataTable(widgets.TableData{Sorted: -1})
	p.table.OnSelect = func(row int) {
		v.screen.ChoosePlace(row)
		p.tell()
	}
	p.table.OnOpen = func(int) { v.dialog.Accept() }
	p.entry = widgets.NewSearchEntry(v.words.T("begin.place_type"), p.table, func(typed string) {
		v.screen.SearchPlace(typed)
		p.list()
	}, func() { v.dialog.Accept() })
	p.none = widget.NewLabel("")
	p.none.Wrapping, p.none.Alignment = fyne.TextWrapWord, fyne.TextAlignCenter
	drawing := widgets.NewDrawing(theme.DrawingSite, fyne.NewSize(160, 90))
	blank := container.NewBorder(nil, p.none, nil, nil, container.NewCenter(drawing))
	p.whole = container.NewBorder(p.entry, p.climate, nil, nil, container.NewStack(p.table, blank))
	p.list()
	return p
}

// list shows the places that answer.
func (p *placePage) list() {
	v := p.view
	p.places = v.screen.Places()
	p.table.Set(widgets.TableData{
		Columns: []widgets.Column{{Width: 260, Grow: 1}, {Width: 200, Grow: 1}},
		Rows:    len(p.places), Sorted: -1,
		Cell: func(row, column int) widgets.Cell {
			if column == 0 {
				return widgets.Cell{Text: p.places[row].Name, Icon: theme.IconSite, Strong: true}
			}
			return widgets.Cell{Text: p.places[row].About, Soft: true}
		},
	})
	p.table.Select(-1)
	p.table.Select(min(0, len(p.places)-1))
	blank := p.whole.(*fyne.Container).Objects[0].(*fyne.Container).Objects[1]
	if len(p.places) > 0 {
		blank.Hide()
	} else {
		blank.Show()
	}
	key := "begin.place_empty"
	if p.entry.Text != "" {
		key = "begin.place_none"
	}
	p.none.SetText(v.words.T(key))
	p.tell()
}

// tell says what the climate of the chosen place is like.
func (p *placePage) tell() {
	p.say(p.view.screen.Climate())
}

func (p *placePage) say(text string) {
	if text == "" {
		text = " "
	}
	p.climate.Objects = []fyne.CanvasObject{widgets.NewText(text)}
	p.climate.Refresh()
}

func (p *placePage) object() fyne.CanvasObject { return p.whole }
func (p *placePage) focus() fyne.Focusable     { return p.entry }
func (p *placePage) refresh()                  {}

func (p *placePage) take() bool {
	if !p.view.screen.HasPlace() {
		p.say(p.view.words.T("begin.place_missing"))
		return false
	}
	return true
}
