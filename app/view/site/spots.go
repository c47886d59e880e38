package site

import (
	"strconv"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	screen "fourturn/app/screen/site"
	"fourturn/app/theme"
	"fourturn/app/widgets"
	"fourturn/app/words"
)

// spotsPart is the list of a site's spots with the chosen one below.
type spotsPart struct {
	view            *View
	rows            []screen.SpotRow
	table           *widgets.DataTable
	list            *fyne.Container
	none            fyne.CanvasObject
	name            *widgets.MeasureField
	kind, light     *widgets.ChoiceField
	night, day, pot *widgets.MeasureField
	figures         *fyne.Container
	chosen          *widgets.Section
	box             *fyne.Container
	filling         bool // the table is being filled, and nobody chose
}

func newSpotsPart(v *View) *spotsPart {
	w, s := v.words, v.screen
	p := &spotsPart{view: v, figures: container.New(widgets.Columns{Least: 200, Most: 3}), none: widgets.NewText(w.T("site.no_spots"))}
	p.table = widgets.NewDataTable(widgets.TableData{Sorted: -1})
	p.table.OnSelect = func(row int) {
		if !p.filling {
			s.ChooseSpot(row)
			p.showChosen()
		}
	}
	p.name = widgets.NewMeasureField(w.T("site.spot_name"), "", func(text string) error { return v.after(s.SetSpotName(text)) })
	p.kind = widgets.NewChoiceField(w.T("site.spot_kind"), "", s.Kinds(), func(i int) { v.try(s.SetSpotKind(i)) })
	p.light = widgets.NewChoiceField(w.T("site.spot_light"), "", s.Lights(), func(i int) { v.try(s.SetSpotLight(i)) })
	p.night = widgets.NewMeasureField(w.T("site.spot_night"), "", func(text string) error { return v.after(s.SetSpotOffset(true, text)) })
	p.day = widgets.NewMeasureField(w.T("site.spot_day"), "", func(text string) error { return v.after(s.SetSpotOffset(false, text)) })
	p.pot = widgets.NewMeasureField(w.T("site.pot_width"), w.T("site.pot_width_help"), func(text string) error { return v.after(s.SetPotWidth(text)) })
	add := widgets.NewButton(widgets.ButtonData{Icon: theme.IconAdd, Label: w.T("site.add_spot"), Kind: widgets.ButtonMain}, func() { v.try(s.AddSpot()) })
	remove := widgets.NewButton(widgets.ButtonData{Icon: theme.IconRemove, Label: w.T("site.remove_spot"), Kind: widgets.ButtonQuiet}, p.askRemove)
	fields := container.New(widgets.Columns{Least: 220, Most: 3}, p.name, p.kind, p.light, p.night, p.day, p.pot)
	p.chosen = widgets.NewSection(" ", container.NewVBox(fields, p.figures, widgets.NewText(w.T("site.spots_note"))), remove)
	p.list = container.NewStack()
	p.box = container.NewVBox(widgets.NewSection(w.T("site.spots"), p.list, add), p.chosen)
	return p
}

func (p *spotsPart) refresh() {
	w := p.view.words
	var chosen int
	p.rows, chosen = p.view.screen.Spots()
	if len(p.rows) == 0 {
		p.list.Objects = []fyne.CanvasObject{p.none}
		p.chosen.Hide()
		return
	}
	at := words.A{"threshold": p.view.screen.Threshold()}
	p.filling = true
	p.table.Set(widgets.TableData{
		Columns: []widgets.Column{
			{Label: w.T("site.spot_name"), Width: 150, Grow: 2},
			{Label: w.T("site.spot_kind"), Width: 170, Grow: 2},
			{Label: w.T("site.spot_light"), Width: 110, Grow: 1},
			{Label: w.T("site.spot_last", at), Width: 95, Right: true},
			{Label: w.T("site.spot_first", at), Width: 95, Right: true},
			{Label: w.T("site.spot_pots"), Width: 50, Right: true},
		},
		Rows: len(p.rows), Sorted: -1, Cell: p.cell,
	})
	p.table.Select(chosen)
	p.filling = false
	const most = 7
	p.list.Objects = []fyne.CanvasObject{tall(p.table, len(p.rows), most)}
	p.chosen.Show()
	p.showChosen()
}

func (p *spotsPart) cell(row, column int) widgets.Cell {
	spot := p.rows[row]
	return widgets.Cell{Text: [...]string{spot.Name, spot.Kind, spot.Light, spot.Last, spot.First, strconv.Itoa(spot.Pots)}[column]}
}

// showChosen fills the fields of the chosen spot.
func (p *spotsPart) showChosen() {
	w := p.view.words
	f, ok := p.view.screen.Spot()
	if !ok {
		return
	}
	p.chosen.SetHeading(f.Name)
	p.name.SetValue(f.Name)
	p.kind.SetChoice(f.Kind)
	p.light.SetChoice(f.Light)
	p.night.SetLabels(w.T("site.spot_night"), f.NightHelp)
	p.night.SetValue(f.Night)
	p.day.SetLabels(w.T("site.spot_day"), f.DayHelp)
	p.day.SetValue(f.Day)
	p.pot.SetValue(p.view.screen.PotWidth())
	p.view.fill(p.figures, f.Figures)
	p.chosen.Refresh()
}

// askRemove asks before pots lose their spot.
func (p *spotsPart) askRemove() {
	v, w := p.view, p.view.words
	f, ok := v.screen.Spot()
	switch {
	case !ok:
		return
	case f.Pots == 0:
		v.try(v.screen.RemoveSpot())
		return
	}
	v.ask(w.T("site.remove_spot_title", words.A{"spot": f.Name}), w.T("site.remove_spot_text", words.A{"pots": f.Pots}), func() { v.try(v.screen.RemoveSpot()) })
}

// ask asks before something is removed.
func (v *View) ask(title, text string, do func()) {
	widgets.ShowDialog(v.shell.Canvas(), widgets.DialogData{
		Title: title, Content: widgets.NewText(text), Size: fyne.NewSize(440, 0),
		Accept: v.words.T("site.remove_accept"), Cancel: v.words.T("site.cancel"),
		OnAccept: func() bool {
			do()
			return true
		},
	})
}
