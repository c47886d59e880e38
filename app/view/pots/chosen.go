package pots

import (
	"math"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	screen "fourturn/app/screen/pots"
	"fourturn/app/widgets"
	"fourturn/app/words"
	"fourturn/planner/finding"
	"fourturn/planner/quantity"
	"fourturn/planner/vessel"
)

// chosen is the pot that is looked at and edited.
type chosen struct {
	view      *View
	object    fyne.CanvasObject
	name      *widgets.MeasureField
	shape     *widgets.ChoiceField
	material  *widgets.ChoiceField
	spot      *widgets.ChoiceField
	measured  *widgets.ChoiceField
	nominal   *widgets.ChoiceField
	cell      *widgets.ChoiceField
	cells     []string
	drawing   *widgets.PotDrawing
	fields    []*widgets.MeasureField // in the order of the screen's fields
	keys      []vessel.Field
	measures  *fyne.Container
	figures   *fyne.Container
	errors    *fyne.Container
	notices   *fyne.Container
	remarks   *widgets.Section
	published *fyne.Container // what is published for a trade size
	seasons   *seasons
	spots     []string
}

var pictureLeast = fyne.NewSize(360, 190)

func newChosen(v *View) *chosen {
	w, s := v.words, v.screen
	c := &chosen{view: v}
	c.name = widgets.NewMeasureField(w.T("pots.name"), "", func(text string) error { return c.after(s.SetName(text)) })
	c.shape = widgets.NewChoiceField(w.T("pots.shape"), "", s.Shapes().Options, func(i int) { v.try(s.SetShape(i)) })
	c.material = widgets.NewChoiceField(words.Capital(w.T("vessel.field.material")), "", s.Materials().Options, func(i int) { v.try(s.SetMaterial(i)) })
	c.spots = s.Spots().Options
	c.spot = widgets.NewChoiceField(w.T("pots.spot"), "", c.spots, func(i int) { v.try(s.SetSpot(i)) })
	c.measured = widgets.NewChoiceField(words.Capital(w.T("vessel.field.measured_on")), "", s.Measured().Options, func(i int) { v.try(s.SetMeasured(i)) })
	c.nominal = widgets.NewChoiceField(w.T("pots.nominal"), "", s.Nominals().Options, func(i int) { v.try(s.SetNominal(i)) })
	c.cell = widgets.NewChoiceField(w.T("pots.cell"), "", nil, func(i int) { v.try(s.SetCell(i)) })
	c.published = container.NewStack()
	c.drawing = widgets.NewPotDrawing(widgets.PotData{}, pictureLeast)
	c.measures = container.New(pairs{}, c.name, c.shape)
	c.figures = container.New(pairs{})
	c.errors, c.notices = container.NewVBox(), container.NewVBox()
	c.remarks = widgets.NewSection(w.T("pots.remarks"), c.notices)
	c.seasons = newSeasons(v)
	body := container.NewVBox(
		widgets.NewCard("", c.drawing),
		c.errors,
		widgets.NewSection(w.T("pots.measures"), container.NewVBox(c.measures, c.published)),
		widgets.NewSection(w.T("pots.worked_out"), c.figures),
		c.remarks,
		widgets.NewSection(w.T("pots.year"), c.seasons.object),
	)
	c.object = container.NewVScroll(container.New(margin{}, body))
	return c
}

// after shows the plan again when an edit was taken.
func (c *chosen) after(err error) error {
	if err == nil {
		c.view.Refresh()
	}
	return err
}

func (c *chosen) show() {
	s := c.view.screen
	c.name.SetValue(s.Name())
	c.shape.SetChoice(s.Shapes().Chosen)
	c.material.SetChoice(s.Materials().Chosen)
	c.measured.SetChoice(s.Measured().Chosen)
	spots := s.Spots()
	if !equal(spots.Options, c.spots) {
		c.spots = spots.Options
		c.spot.SetOptions(c.spots)
	}
	c.spot.SetChoice(spots.Chosen)
	c.nominal.SetChoice(s.Nominals().Chosen)
	if cells := s.Cells(); len(cells.Options) > 0 {
		if !equal(cells.Options, c.cells) {
			c.cells = cells.Options
			c.cell.SetOptions(c.cells)
		}
		c.cell.SetChoice(cells.Chosen)
	}
	c.published.Objects = nil
	if text := s.Published(); text != "" {
		c.published.Add(widgets.NewText(text))
	}
	c.published.Refresh()
	c.showMeasures(s.Fields())
	c.showDrawing()
	c.showFigures(s.Figures())
	c.showNotices(s.Findings())
	c.seasons.show(s.SeasonRows())
}

func equal(a, b []string) bool {
	if len(a) != len(b) {
		return false
	}
	for i := range a {
		if a[i] != b[i] {
			return false
		}
	}
	return true
}

// showMeasures keeps the fields as long as the shape needs the same ones, so that the
// one that has the focus keeps it.
func (c *chosen) showMeasures(fields []screen.Field) {
	if !c.sameKeys(fields) {
		c.fields, c.keys = nil, nil
		objects := []fyne.CanvasObject{c.name, c.spot, c.shape, c.material, c.measured, c.nominal}
		if fields[0].Field == vessel.FieldCells {
			objects = append(objects, c.cell)
		}
		for _, f := range fields {
			key := f.Field
			entry := widgets.NewMeasureField(f.Label, f.Help, func(text string) error {
				return c.after(c.view.screen.SetField(key, text))
			})
			c.fields, c.keys = append(c.fields, entry), append(c.keys, key)
			objects = append(objects, entry)
		}
		c.measures.Objects = objects
		c.measures.Refresh()
	}
	for i, f := range fields {
		c.fields[i].SetValue(f.Value)
		c.fields[i].SetError(f.Error)
	}
}

func (c *chosen) sameKeys(fields []screen.Field) bool {
	if len(fields) != len(c.keys) {
		return false
	}
	for i, f := range fields {
		if f.Field != c.keys[i] {
			return false
		}
	}
	return true
}

func (c *chosen) showDrawing() {
	v := c.view.screen.Vessel()
	data := widgets.PotData{Name: c.view.screen.Name()}
	if v != nil {
		data.Side, data.Plan = sideOf(v), planOf(v)
		data.Dimensions = dimensionsOf(v, func(a, b vessel.Point) string {
			return c.view.screen.Length(quantity.Length(math.Hypot(a.X-b.X, a.Y-b.Y)))
		})
	}
	c.drawing.Set(data)
}

func (c *chosen) showFigures(list []screen.Figure) {
	for len(c.figures.Objects) < len(list) {
		c.figures.Add(widgets.NewFigure(widgets.FigureData{}, nil))
	}
	c.figures.Objects = c.figures.Objects[:len(list)]
	for i, f := range list {
		set(c.figures.Objects[i].(*widgets.Figure), f, widgets.FigureStacked, c.view.shell)
	}
	c.figures.Refresh()
}

// set shows a worked-out figure whose working opens beside the page.
func set(figure *widgets.Figure, f screen.Figure, style widgets.FigureStyle, shell Shell) {
	figure.Set(widgets.FigureData{Label: f.Label, Value: f.Value, Soft: f.Soft, Style: style})
	figure.SetOnWorking(func() { shell.ShowWorking(f.Figure) })
}

// showNotices puts what keeps the pot from being worked out above its measures, where
// it can be mended, and all other remarks below the figures.
func (c *chosen) showNotices(remarks []screen.Remark) {
	c.errors.Objects, c.notices.Objects = nil, nil
	seen := map[string]bool{}
	for _, r := range remarks {
		if seen[r.Text] { // the same of two plantings
			continue
		}
		seen[r.Text] = true
		box := c.notices
		if r.Severity == finding.Error {
			box = c.errors
		}
		box.Add(widgets.NewNotice(widgets.NoticeData{Kind: widgets.NoticeKind(r.Severity), Title: words.Capital(c.view.words.Severity(r.Severity)), Text: r.Text}))
	}
	c.errors.Refresh()
	c.notices.Refresh()
	if len(c.notices.Objects) == 0 {
		c.remarks.Hide()
	} else {
		c.remarks.Show()
	}
}
