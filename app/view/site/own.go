package site

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"fourturn/app/theme"
	"fourturn/app/widgets"
)

// ownPart is what a person types of their own: frost dates and monthly means.
type ownPart struct {
	view        *View
	last, first *widgets.MeasureField
	level       *widgets.ChoiceField
	means       [24]*widgets.MeasureField
	clear       *widgets.Button
	box         *fyne.Container
}

func newOwnPart(v *View) *ownPart {
	w, s := v.words, v.screen
	p := &ownPart{view: v}
	p.last = widgets.NewMeasureField(w.T("site.last_frost"), w.T("site.frost_help"), func(text string) error { return v.after(s.SetFrost(true, text)) })
	p.first = widgets.NewMeasureField(w.T("site.first_frost"), w.T("site.frost_help"), func(text string) error { return v.after(s.SetFrost(false, text)) })
	levels, _ := s.FrostLevels()
	p.level = widgets.NewChoiceField(w.T("site.frost_level"), "", levels, func(i int) { v.try(s.SetFrostLevel(i)) })
	grid := container.New(widgets.Columns{Least: 92, Most: 6})
	for i := range p.means {
		p.means[i] = widgets.NewMeasureField("", "", func(text string) error { return v.after(s.SetMean(i, text)) })
		grid.Add(p.means[i])
	}
	p.clear = widgets.NewButton(widgets.ButtonData{Icon: theme.IconRemove, Label: w.T("site.means_clear"), Kind: widgets.ButtonQuiet}, func() { v.try(s.ClearMeans()) })
	p.box = container.NewVBox(
		widgets.NewSection(w.T("site.own_frost"), container.New(widgets.Columns{Least: 170, Most: 4}, p.last, p.first, p.level)),
		widgets.NewSection(w.T("site.own_means"), container.NewVBox(widgets.NewText(w.T("site.means_note")), grid), p.clear),
	)
	return p
}

func (p *ownPart) refresh() {
	s := p.view.screen
	last, first := s.Frost()
	p.last.SetValue(last)
	p.first.SetValue(first)
	_, level := s.FrostLevels()
	p.level.SetChoice(level)
	for i, f := range s.Means() {
		p.means[i].SetLabels(f.Label, f.Help)
		p.means[i].SetValue(f.Value)
	}
	if s.HasMeans() {
		p.clear.Show()
	} else {
		p.clear.Hide()
	}
}
