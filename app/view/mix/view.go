// Package mix draws the mix and what is to buy.
package mix

import (
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
	clients int
	body    *fyne.Container
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
	v.clients = len(clients)
	v.client = widgets.NewChoiceField(w.T("mix_buying.whose"), "", clients, func(i int) {
		s.ChooseClient(i)
		v.Refresh()
	})
	v.header = widgets.NewPageHeader(w.T("mix_buying.title"), "", v.span)
	v.page = container.NewBorder(v.header, nil, nil, nil, container.NewVScroll(container.New(widgets.SideMargin{}, v.body)))
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
	names, client := v.screen.Clients()
	if len(names) != v.clients {
		v.clients = len(names)
		v.client.SetOptions(names)
	}
	v.client.SetChoice(client)
	v.body.Objects = nil
	if !v.screen.Known() {
		v.body.Add(widgets.NewBusy(widgets.BusyData{Title: w.T("mix_buying.working"), Done: -1}, nil))
		v.body.Refresh()
		return
	}
	v.header.Set(w.T("mix_buying.title"), v.screen.Days())
	if v.clients > 1 {
		v.body.Add(container.New(widgets.Columns{Least: 240, Most: 3}, v.client))
	}
	rows := v.screen.Rows()
	if len(rows) == 0 {
		v.body.Add(widgets.NewEmptyState(theme.DrawingMix, w.T("mix_buying.empty_title"), w.T("mix_buying.empty_text")))
		v.body.Refresh()
		return
	}
	v.body.Add(container.New(widgets.Columns{Least: 300, Most: 2}, v.purchase(), v.feeds()))
	v.body.Add(widgets.NewSection(w.T("mix_buying.by_pot"), v.table(rows)))
	v.body.Add(widgets.NewNotice(widgets.NoticeData{Kind: widgets.NoticeCaution, Title: words.Capital(w.T("words.severity.caution")), Text: w.T("mix_buying.dust")}))
	v.body.Refresh()
}

func (v *View) figure(f screen.Figure, style widgets.FigureStyle) fyne.CanvasObject {
	figure := widgets.NewFigure(widgets.FigureData{Label: f.Label, Value: f.Value, Soft: f.Soft, Style: style}, nil)
	if !f.Figure.IsZero() {
		figure.SetOnWorking(func() { v.shell.ShowWorking(f.Figure) })
	}
	return figure
}

// purchase is the card of bags.
func (v *View) purchase() fyne.CanvasObject {
	p := v.screen.Purchase()
	box := container.NewVBox()
	if p.Trouble != "" {
		box.Add(widgets.NewText(p.Trouble))
		return widgets.NewCard(v.words.T("mix_buying.bags"), box)
	}
	for _, line := range p.Lines {
		box.Add(widgets.NewText(line))
	}
	box.Add(container.NewGridWithColumns(2,
		v.figure(p.Cost, widgets.FigureStacked),
		widgets.NewFigure(widgets.FigureData{Label: v.words.T("mix_buying.left_over"), Value: p.LeftOver}, nil)))
	if p.Naive != "" {
		box.Add(widgets.NewText(p.Naive))
	}
	return widgets.NewCard(v.words.T("mix_buying.bags"), box)
}

// feeds is the card of fertilisers for the year.
func (v *View) feeds() fyne.CanvasObject {
	box := container.NewVBox()
	for _, f := range v.screen.Feeds() {
		name := widgets.NewText(f.Name) // it may be long, and wraps
		box.Add(container.NewBorder(nil, nil, nil, v.figure(f.Need, widgets.FigureBare), name))
	}
	return widgets.NewCard(v.words.T("mix_buying.fertilisers"), box)
}

func (v *View) table(rows []screen.Row) fyne.CanvasObject {
	w := v.words
	columns := []widgets.Column{
		{Label: w.T("mix_buying.pot"), Width: 160, Grow: 1},
		{Label: w.T("mix_buying.season"), Width: 80},
		{Label: w.T("mix_buying.when"), Width: 80},
		{Label: w.T("mix_buying.mix"), Width: 110, Right: true},
		{Label: w.T("mix_buying.charge"), Width: 100, Right: true},
		{Label: w.T("mix_buying.spoons"), Width: 120, Right: true},
	}
	loose, charge := v.screen.Totals()
	table := widgets.NewDataTable(widgets.TableData{
		Columns: columns, Rows: len(rows), Sorted: -1,
		Totals: []string{w.T("mix_buying.total"), "", "", loose, charge, ""},
		Cell: func(r, c int) widgets.Cell {
			row := rows[r]
			return widgets.Cell{Text: []string{row.Pot, row.Season, row.When, row.Mix.Value, row.Charge.Value, row.Spoons.Value}[c]}
		},
	})
	table.OnOpen = func(r int) {
		if f := rows[r].Mix.Figure; !f.IsZero() {
			v.shell.ShowWorking(f)
		}
	}
	const rowHigh, mostRows = 35, 14
	return container.New(widgets.LeastHigh(float32(min(len(rows), mostRows)+2)*rowHigh+theme.Step), table)
}
