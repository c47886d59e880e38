package pots

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	screen "fourturn/app/screen/pots"
	"fourturn/app/widgets"
)

// seasons are the four plantings of the chosen pot.
type seasons struct {
	view   *View
	object *fyne.Container
	rows   []*seasonRow
}

type seasonRow struct {
	card    *widgets.Section
	recipe  *widgets.ChoiceField
	start   *widgets.Figure
	spread  *widgets.Figure
	plants  fyne.CanvasObject
	text    string
	figures *fyne.Container
	box     *fyne.Container
}

func newSeasons(v *View) *seasons { return &seasons{view: v, object: container.NewVBox()} }

func (s *seasons) show(rows []screen.SeasonRow) {
	for len(s.rows) < len(rows) {
		s.rows = append(s.rows, s.newRow(rows[len(s.rows)]))
		s.object.Add(s.rows[len(s.rows)-1].card)
	}
	for i, row := range rows {
		s.fill(s.rows[i], row)
	}
}

func (s *seasons) newRow(row screen.SeasonRow) *seasonRow {
	w := s.view.words
	r := &seasonRow{figures: container.New(pairs{})}
	season := row.Season
	r.recipe = widgets.NewChoiceField(w.T("pots.planting"), "", row.Recipes.Options, func(i int) {
		s.view.try(s.view.screen.SetRecipe(season, i))
	})
	r.start = widgets.NewFigure(widgets.FigureData{}, nil)
	r.spread = widgets.NewFigure(widgets.FigureData{}, nil)
	r.plants = widgets.NewText("")
	r.box = container.NewVBox(container.New(pairs{}, r.recipe, r.start), r.plants, r.figures)
	r.card = widgets.NewCard(row.Label, r.box)
	return r
}

func (s *seasons) fill(r *seasonRow, row screen.SeasonRow) {
	r.recipe.SetOptions(row.Recipes.Options)
	r.recipe.SetChoice(row.Recipes.Chosen)
	list := row.Figures
	if row.Start.Label == "" {
		r.start.Hide()
	} else {
		r.start.Show()
		start := row.Start
		set(r.start, start, widgets.FigureStacked, s.view.shell)
	}
	if row.Plants != r.text {
		r.text = row.Plants
		r.plants = widgets.NewText(row.Plants)
		r.box.Objects[1] = r.plants
	}
	r.figures.Objects = nil
	if row.Spread != "" {
		r.spread.Set(widgets.FigureData{Label: s.view.words.T("pots.spread"), Value: row.Spread})
		r.figures.Add(r.spread)
	}
	for _, f := range list {
		figure := widgets.NewFigure(widgets.FigureData{}, nil)
		set(figure, f, widgets.FigureStacked, s.view.shell)
		r.figures.Add(figure)
	}
	r.box.Refresh()
}
