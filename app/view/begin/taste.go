package begin

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/layout"

	screen "fourturn/app/screen/begin"
	"fourturn/app/theme"
	"fourturn/app/widgets"
)

// tastePage asks what one likes to see, and shows what the year would be.
type tastePage struct {
	view                 *View
	light                *widgets.Segments
	cats, dogs, children *widgets.Check
	preview              *fyne.Container
	whole                fyne.CanvasObject
}

func newTastePage(v *View) *tastePage {
	p := &tastePage{view: v, preview: container.New(layout.NewCustomPaddedVBoxLayout(theme.Half))}
	w, s := v.words, v.screen
	change := func(edit func(*screen.Taste)) {
		t := s.Taste()
		edit(&t)
		s.SetTaste(t)
		p.show()
	}
	p.light = widgets.NewSegments(w.T("begin.light"), s.Lights(), func(i int) { change(func(t *screen.Taste) { t.Light = i }) })
	colours := widgets.NewSegments(w.T("begin.colours"), s.Palettes(), func(i int) { change(func(t *screen.Taste) { t.Colours = i }) })
	style := widgets.NewSegments(w.T("begin.style"), s.Styles(), func(i int) { change(func(t *screen.Taste) { t.Style = i }) })
	yes := w.T("begin.yes")
	p.cats = widgets.NewCheck(w.T("begin.cats"), yes, func(on bool) { change(func(t *screen.Taste) { t.Household.Cats = on }) })
	p.dogs = widgets.NewCheck(w.T("begin.dogs"), yes, func(on bool) { change(func(t *screen.Taste) { t.Household.Dogs = on }) })
	p.children = widgets.NewCheck(w.T("begin.children"), yes, func(on bool) { change(func(t *screen.Taste) { t.Household.Children = on }) })
	household := container.New(layout.NewCustomPaddedHBoxLayout(theme.Step), p.cats, p.dogs, p.children)
	questions := container.New(layout.NewFormLayout(),
		p.ask("begin.light"), p.light, p.ask("begin.colours"), colours,
		p.ask("begin.style"), style, p.ask("begin.household"), household)
	foot := widgets.NewText(w.T("begin.household_text"))
	p.whole = container.NewBorder(questions, foot, nil, nil,
		widgets.NewSection(w.T("begin.would_be"), container.NewVScroll(p.preview)))
	return p
}

// ask returns the words of a question, level with its answers.
func (p *tastePage) ask(key string) fyne.CanvasObject {
	return container.New(layout.NewCustomPaddedLayout(theme.Step, 0, 0, theme.Step2), widgets.NewText(p.view.words.T(key)))
}

// show shows what the year would be, season by season.
func (p *tastePage) show() {
	p.preview.Objects = nil
	for _, one := range p.view.screen.Preview() {
		p.preview.Add(widgets.NewFigure(widgets.FigureData{Label: one.Season, Value: one.Plants, Style: widgets.FigureRow}, nil))
	}
	p.preview.Refresh()
}

func (p *tastePage) object() fyne.CanvasObject { return p.whole }
func (p *tastePage) focus() fyne.Focusable     { return p.light }

func (p *tastePage) refresh() {
	h := p.view.screen.Taste().Household
	p.cats.Set(h.Cats)
	p.dogs.Set(h.Dogs)
	p.children.Set(h.Children)
	p.show()
}

func (p *tastePage) take() bool { return true }
