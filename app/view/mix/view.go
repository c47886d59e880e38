// Package mix draws the mix and what is to buy.
package mix

import (
	"slices"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	screen "fourturn/app/screen/mix"
	"fourturn/app/theme"
	"fourturn/app/widgets"
	"fourturn/app/words"
	"fourturn/planner"
)

// Shell is what the page needs of the window around it.
type Shell interface {
	ShowWorking(f planner.Figure)
	Status(text string)
}

// View is the page of mix and buying.
type View struct {
	screen  *screen.Screen
	words   *words.Words
	shell   Shell
	page    fyne.CanvasObject
	header  *widgets.PageHeader
	span    *widgets.Segments
	client  *widgets.ChoiceField
	season  *widgets.ChoiceField
	choices *fyne.Container
	body    *fyne.Container // what is to buy, built anew with the figures
	shelf   *shelf
}

// New returns the page.
func New(s *screen.Screen, w *words.Words, shell Shell) *View {
	v := &View{screen: s, words: w, shell: shell, body: container.NewVBox()}
	names, _ := s.Spans()
	v.span = widgets.NewSegments(w.T("mix_buying.span"), names, func(i int) {
		s.ChooseSpan(i)
		v.Refresh()
	})
	clients, _ := s.Clients()
	v.client = widgets.NewChoiceField(w.T("mix_buying.whose"), "", clients, func(i int) {
		s.ChooseClient(i)
		v.Refresh()
	})
	v.season = widgets.NewChoiceField(w.T("mix_buying.season_choice"), "", nil, func(i int) {
		s.ChooseSeason(i)
		v.Refresh()
	})
	v.choices = container.New(widgets.Columns{Least: 240, Most: 3})
	v.shelf = newShelf(v)
	v.header = widgets.NewPageHeader(w.T("mix_buying.title"), "", v.span)
	all := container.NewVBox(v.choices, v.body, v.shelf.object)
	v.page = container.NewBorder(v.header, nil, nil, nil, container.NewVScroll(container.New(widgets.SideMargin{}, all)))
	v.Refresh()
	return v
}

// Object returns the page to be shown.
func (v *View) Object() fyne.CanvasObject { return v.page }

// Refresh shows the needs as they are now.
func (v *View) Refresh() {
	w := v.words
	_, span := v.screen.Spans()
	v.span.SetChoice(span)
	v.showChoices()
	v.shelf.show()
	v.body.Objects = nil
	if !v.screen.Known() {
		v.body.Add(widgets.NewBusy(widgets.BusyData{Title: w.T("mix_buying.working"), Done: -1}, nil))
		v.body.Refresh()
		return
	}
	v.header.Set(w.T("mix_buying.title"), v.screen.Days())
	rows := v.screen.Rows()
	if len(rows) == 0 {
		v.body.Add(widgets.NewEmptyState(theme.DrawingMix, w.T("mix_buying.empty_title"), w.T("mix_buying.empty_text")))
		v.body.Refresh()
		return
	}
	cards := container.New(widgets.Columns{Least: 300, Most: 2})
	for _, p := range v.screen.Purchases() {
		cards.Add(v.purchase(p))
	}
	cards.Add(v.feeds())
	v.body.Add(cards)
	v.body.Add(widgets.NewSection(w.T("mix_buying.by_pot"), v.table(rows)))
	v.body.Add(widgets.NewNotice(widgets.NoticeData{Kind: widgets.NoticeCaution, Title: words.Capital(w.T("words.severity.caution")), Text: w.T("mix_buying.dust")}))
	v.body.Refresh()
}

// showChoices offers season and client where there is something to choose.
func (v *View) showChoices() {
	names, client := v.screen.Clients()
	v.client.SetOptions(names)
	v.client.SetChoice(client)
	v.choices.Objects = nil
	if seasons, chosen := v.screen.Seasons(); len(seasons) > 0 {
		v.season.SetOptions(seasons)
		v.season.SetChoice(chosen)
		v.choices.Add(v.season)
	}
	if len(names) > 1 {
		v.choices.Add(v.client)
	}
	v.choices.Refresh()
}

func (v *View) figure(f screen.Figure, style widgets.FigureStyle) fyne.CanvasObject {
	figure := widgets.NewFigure(widgets.FigureData{Label: f.Label, Value: f.Value, Soft: f.Soft, Style: style}, nil)
	if !f.Figure.IsZero() {
		figure.SetOnWorking(func() { v.shell.ShowWorking(f.Figure) })
	}
	return figure
}

// purchase is the card of what to buy of one mix.
func (v *View) purchase(p screen.Purchase) fyne.CanvasObject {
	box := container.NewVBox()
	if p.Trouble != "" {
		box.Add(widgets.NewText(p.Trouble))
		box.Add(v.figure(p.Need, widgets.FigureStacked))
		return widgets.NewCard(p.Title, box)
	}
	for _, line := range p.Lines {
		box.Add(widgets.NewText(line))
	}
	box.Add(container.NewGridWithColumns(3,
		v.figure(p.Cost, widgets.FigureStacked), v.figure(p.Need, widgets.FigureStacked), v.figure(p.LeftOver, widgets.FigureStacked)))
	for _, text := range []string{p.Proof, p.Naive} {
		if text != "" {
			box.Add(widgets.NewText(text))
		}
	}
	return widgets.NewCard(p.Title, box)
}

// feeds is the card of fertilisers for the year.
func (v *View) feeds() fyne.CanvasObject {
	box := container.NewVBox()
	if total := v.screen.TotalCost(); total != "" {
		box.Add(widgets.NewText(v.words.T("mix_buying.total_cost", words.A{"cost": total})))
	}
	for _, f := range v.screen.Feeds() {
		name := widgets.NewText(f.Name) // it may be long, and wraps
		box.Add(container.NewBorder(nil, nil, nil, v.figure(f.Need, widgets.FigureBare), name))
	}
	return widgets.NewCard(v.words.T("mix_buying.fertilisers"), box)
}

func (v *View) table(rows []screen.Row) fyne.CanvasObject {
	w := v.words
	columns := []widgets.Column{
		{Label: w.T("mix_buying.pot"), Width: 150, Grow: 1},
		{Label: w.T("mix_buying.season"), Width: 82},
		{Label: w.T("mix_buying.when"), Width: 70},
		{Label: w.T("mix_buying.mix"), Width: 74, Right: true},
		{Label: w.T("mix_buying.pails"), Width: 132, Right: true},
		{Label: w.T("mix_buying.charge"), Width: 86, Right: true},
		{Label: w.T("mix_buying.spoons"), Width: 160, Right: true},
	}
	loose, charge := v.screen.Totals()
	totals := []string{w.T("mix_buying.total"), "", "", loose, "", charge, ""}
	cells := []int{0, 1, 2, 3, 4, 5, 6} // which value stands in which column
	if oneSeason(rows) {                // it need not stand in every row
		columns, totals, cells = slices.Delete(columns, 1, 2), slices.Delete(totals, 1, 2), slices.Delete(cells, 1, 2)
	}
	table := widgets.NewDataTable(widgets.TableData{
		Columns: columns, Rows: len(rows), Sorted: -1,
		Totals: totals,
		Cell: func(r, column int) widgets.Cell {
			row, c := rows[r], cells[column]
			return widgets.Cell{Text: []string{row.Pot, row.Season, row.When, row.Mix.Value, row.Pails.Value, row.Charge.Value, row.Spoons.Value}[c], Soft: c == 4 || c == 6}
		},
	})
	table.OnOpen = func(r int) { // the exact volume is in the working of what is measured
		if f := rows[r].Pails.Figure; !f.IsZero() {
			v.shell.ShowWorking(f)
		}
	}
	const rowHigh, mostRows = 35, 14
	return container.New(widgets.LeastHigh(float32(min(len(rows), mostRows)+2)*rowHigh+theme.Step), table)
}

// oneSeason reports whether all rows are of one season.
func oneSeason(rows []screen.Row) bool {
	return !slices.ContainsFunc(rows, func(r screen.Row) bool { return r.Season != rows[0].Season })
}
