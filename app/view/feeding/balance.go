package feeding

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	screen "fourturn/app/screen/feeding"
	"fourturn/app/widgets"
	"fourturn/app/words"
)

// remarksShown is how many remarks are listed; the rest are counted.
const remarksShown = 6

// remarks lists what the plan says of feeding, each with what mends it.
func (v *View) remarks() {
	w := v.words
	texts, more := v.screen.Remarks(remarksShown)
	if len(texts) == 0 {
		return
	}
	list := container.NewVBox()
	for _, text := range texts {
		list.Add(widgets.NewText(text))
	}
	if more > 0 {
		list.Add(widgets.NewAside(w.T("feeding.more_remarks", words.A{"count": more})))
	}
	v.body.Add(widgets.NewSection(w.T("feeding.remarks"), list))
}

// onePot shows the balance of a pot as a picture, and what it really had.
func (v *View) onePot() {
	w := v.words
	names, places := v.screen.Pots()
	if len(names) == 0 {
		return
	}
	v.pot = min(max(v.pot, 0), len(names)-1)
	choice := widgets.NewChoiceField(w.T("feeding.pot"), w.T("feeding.pot_help"), names, func(i int) {
		v.pot = i
		v.Refresh()
	})
	choice.SetChoice(v.pot)
	parts := container.NewVBox(container.New(widgets.Columns{Least: 220, Most: 3}, choice))
	if weeks := v.screen.Balance(places[v.pot]); len(weeks) > 0 {
		parts.Add(v.balance(weeks))
	}
	parts.Add(widgets.NewText(w.T("feeding.leaching_advice")))
	if days, what := v.screen.History(places[v.pot]); len(days) > 0 {
		for i := range days[:min(len(days), roundsPast)] {
			parts.Add(widgets.NewText(w.T("feeding.had", words.A{"day": days[i], "what": what[i]})))
		}
	}
	v.body.Add(widgets.NewSection(w.T("feeding.balance"), parts))
}

func (v *View) balance(weeks []screen.Week) fyne.CanvasObject {
	w := v.words
	drawn := make([]widgets.NutrientWeek, len(weeks))
	figures := container.New(widgets.Columns{Least: 150, Most: 4})
	for i, week := range weeks {
		drawn[i] = widgets.NutrientWeek{Charge: week.Charge, Feed: week.Feed, Low: week.Low, High: week.High, Now: week.Now}
		if week.Now {
			figures.Add(v.figure(week.Nitrogen))
			figures.Add(widgets.NewFigure(widgets.FigureData{Label: w.T("feeding.needed"), Value: week.Need}, nil))
			figures.Add(widgets.NewFigure(widgets.FigureData{Label: w.T("feeding.salinity"), Value: week.Salinity, Soft: true}, nil))
		}
	}
	span := w.T("feeding.span", words.A{"from": weeks[0].When, "to": weeks[len(weeks)-1].When})
	return container.NewVBox(widgets.NewNutrientChart(drawn, span), widgets.NewText(span+" "+w.T("feeding.balance_about")), figures)
}
