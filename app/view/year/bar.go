package year

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	screen "fourturn/app/screen/year"
	"fourturn/app/theme"
	"fourturn/app/widgets"
)

// bar is what is asked of the pots, and how many days are in sight.
type bar struct {
	view                 *View
	search               *widgets.FilterEntry
	client, place, shape *widgets.ChoiceField
	risk                 *widgets.ChoiceField
	all                  *widgets.Button
	object               fyne.CanvasObject

	span                 *widgets.Segments
	today, closer, wider *widgets.Button
}

// spans are the days that can be shown with one press: a month to all there is, which
// is two years.
var spans = [...]struct {
	key  string
	days int
}{{"year.month", 31}, {"year.quarter", 92}, {"year.one_year", 365}, {"year.two_years", 732}}

// oneYear is the span at first, in spans.
const oneYear = 2

func newBar(v *View) *bar {
	b := &bar{view: v}
	w := v.words
	b.search = widgets.NewFilterEntry(w.T("year.search"), func(typed string) {
		v.screen.Search(typed)
		v.showRows()
	}, v.toStrips)
	b.client = b.newChoice(w.T("year.client"), v.screen.Clients, v.screen.SetClient)
	b.place = b.newChoice(w.T("year.place"), v.screen.Places, v.screen.SetPlace)
	b.shape = b.newChoice(w.T("year.shape"), v.screen.Shapes, v.screen.SetShape)
	names, _ := v.screen.Risks()
	b.risk = widgets.NewCompactChoice(w.T("year.risk_name"), names, func(i int) { v.try(v.screen.SetRisk(i)) })
	b.all = widgets.NewButton(widgets.ButtonData{Icon: theme.IconClose, Kind: widgets.ButtonQuiet, Name: w.T("year.show_all")}, v.showAll)
	b.all.OnHint = v.shell.Status
	b.object = container.New(widgets.Flow{Grow: true},
		container.New(widgets.LeastWide(searchWide), b.search), b.client, b.place, b.shape, b.all, b.risk)
	b.zoom()
	return b
}

// searchWide holds a pot's name.
const searchWide = 150

// zoom makes what changes the days in sight.
func (b *bar) zoom() {
	w := b.view.words
	var labels []string
	for _, s := range spans {
		labels = append(labels, w.T(s.key))
	}
	b.span = widgets.NewSegments(w.T("year.span"), labels, func(i int) { b.view.strips.showDays(spans[i].days) })
	b.span.SetChoice(oneYear)
	button := func(data widgets.ButtonData, do func()) *widgets.Button {
		button := widgets.NewButton(data, do)
		button.OnHint = b.view.shell.Status
		return button
	}
	b.today = button(widgets.ButtonData{Icon: theme.IconCalendar, Label: w.T("year.go_today"), Kind: widgets.ButtonQuiet}, func() { b.view.strips.chart.ScrollToToday() })
	b.closer = button(widgets.ButtonData{Label: "+", Kind: widgets.ButtonQuiet, Name: w.T("year.closer")}, func() { b.view.strips.zoomBy(1) })
	b.wider = button(widgets.ButtonData{Label: "−", Kind: widgets.ButtonQuiet, Name: w.T("year.wider")}, func() { b.view.strips.zoomBy(-1) })
}

func (b *bar) newChoice(name string, options func() screen.Choice, set func(int)) *widgets.ChoiceField {
	return widgets.NewCompactChoice(name, options().Options, func(i int) {
		set(i)
		b.view.showRows()
	})
}

// show brings the lists up to date with the plan. One in which there is nothing to
// choose is left out.
func (b *bar) show() {
	s := b.view.screen
	if b.search.Text != s.Query() {
		b.search.SetText(s.Query())
	}
	offer(b.client, s.Clients())
	offer(b.place, s.Places())
	offer(b.shape, s.Shapes())
	_, risk := s.Risks()
	b.risk.SetChoice(risk)
	if s.Asked() {
		b.all.Enable()
	} else {
		b.all.Disable()
	}
}

// offer shows a list, where there is something to choose.
func offer(field *widgets.ChoiceField, now screen.Choice) {
	field.SetOptions(now.Options)
	field.SetChoice(now.Chosen)
	if len(now.Options) > 1 {
		field.Show()
	} else {
		field.Hide()
	}
}

// showSpan marks the span that is in sight, or none where it is another.
func (b *bar) showSpan(days int) {
	const near = 2 // days by which rounding may be out
	for i, s := range spans {
		if days >= s.days-near && days <= s.days+near {
			b.span.SetChoice(i)
			return
		}
	}
	b.span.SetChoice(-1)
}

// toStrips goes from the search to what was found.
func (v *View) toStrips() {
	if v.screen.Rows() > 0 {
		v.shell.Canvas().Focus(v.strips.chart.Body())
	}
}
