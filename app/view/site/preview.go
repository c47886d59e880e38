package site

import (
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	screen "fourturn/app/screen/site"
	"fourturn/app/widgets"
	"fourturn/app/words"
)

// previewSize is the room for what was understood in the smallest window.
var previewSize = fyne.NewSize(660, 380)

// show shows what was understood of a record, to be read otherwise, taken in or left.
func (p *recordPart) show(preview *screen.Preview) {
	v, w := p.view, p.view.words
	said := container.NewVBox()
	fill := func() {
		said.Objects = p.understood(preview)
		said.Refresh()
	}
	again := func(choice screen.RecordChoice) {
		preview = v.screen.Reread(preview, choice)
		fill()
	}
	unit := widgets.NewChoiceField(w.T("site.record_unit"), "", v.screen.RecordUnits(), func(i int) { again(preview.Choice.WithUnit(i)) })
	order := widgets.NewChoiceField(w.T("site.record_order"), "", v.screen.RecordOrders(), func(i int) { again(preview.Choice.WithOrder(i)) })
	years := widgets.NewChoiceField(w.T("site.record_years"), "", []string{w.T("site.record_last_30"), w.T("site.record_all")}, func(i int) {
		choice := preview.Choice
		choice.All = i == 1
		again(choice)
	})
	for _, field := range []*widgets.ChoiceField{unit, order, years} {
		field.SetChoice(0)
	}
	fill()
	choices := container.New(widgets.Columns{Least: 180, Most: 3}, unit, order, years)
	scroll := container.NewVScroll(container.New(widgets.SideMargin{}, said))
	widgets.ShowDialog(v.shell.Canvas(), widgets.DialogData{
		Title: w.T("site.record_title") + ": " + preview.Name, Content: container.NewBorder(choices, nil, nil, nil, scroll),
		Accept: w.T("site.record_take"), Cancel: w.T("site.cancel"), Size: previewSize,
		OnAccept: func() bool {
			if preview.Problem != "" {
				return false // it says why
			}
			v.try(v.screen.TakeRecord(preview))
			return true
		},
	})
}

// understood is all that is said of a record.
func (p *recordPart) understood(preview *screen.Preview) []fyne.CanvasObject {
	w := p.view.words
	var list []fyne.CanvasObject
	if preview.Problem != "" {
		list = append(list, widgets.NewNotice(widgets.NoticeData{Kind: widgets.NoticeError, Title: words.Capital(w.T("words.severity.error")), Text: preview.Problem}))
	}
	list = append(list, factList(w, preview.Facts))
	var wrong fyne.CanvasObject = widgets.NewText(w.T("site.record_no_faults"))
	if len(preview.Faults) > 0 {
		wrong = factList(w, preview.Faults)
	}
	list = append(list, widgets.NewSection(w.T("site.record_faults"), wrong))
	if len(preview.Seasons) == 0 {
		return list
	}
	told := w.T("site.record_all_count", words.A{"count": len(preview.Seasons)})
	if left := preview.Uncounted(); len(left) > 0 {
		told = w.T("site.record_uncounted", words.A{"seasons": strings.Join(left, ", ")})
	}
	return append(list, widgets.NewSection(w.T("site.record_seasons"), container.NewVBox(widgets.NewText(told), factList(w, p.view.screen.SeasonFacts(preview)))))
}
