package pots

import (
	"math"
	"strconv"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	screen "fourturn/app/screen/pots"
	"fourturn/app/widgets"
	"fourturn/planner/quantity"
	"fourturn/planner/vessel"
)

// chosen is the pot that is looked at and edited.
type chosen struct {
	view     *View
	object   fyne.CanvasObject
	name     *widgets.MeasureField
	shape    *widgets.ChoiceField
	material *widgets.ChoiceField
	spot     *widgets.ChoiceField
	measured *widgets.ChoiceField
	drawing  *widgets.PotDrawing
	fields   []*widgets.MeasureField // in the order of the screen's fields
	keys     []vessel.Field
	measures *fyne.Container
	figures  *fyne.Container
	notices  *fyne.Container
	seasons  *seasons
	spots    []string
}

var pictureLeast = fyne.NewSize(360, 190)

func newChosen(v *View) *chosen {
	w, s := v.words, v.screen
	c := &chosen{view: v}
	c.name = widgets.NewMeasureField(w.T("pots.name"), "", func(text string) error { return c.after(s.SetName(text)) })
	c.shape = widgets.NewChoiceField(w.T("pots.shape"), "", s.Shapes().Options, func(i int) { v.try(s.SetShape(i)) })
	c.material = widgets.NewChoiceField(w.T("vessel.field.material"), "", s.Materials().Options, func(i int) { v.try(s.SetMaterial(i)) })
	c.spots = s.Spots().Options
	c.spot = widgets.NewChoiceField(w.T("pots.spot"), "", c.spots, func(i int) { v.try(s.SetSpot(i)) })
	c.measured = widgets.NewChoiceField(w.T("vessel.field.measured_on"), "", s.Measured().Options, func(i int) { v.try(s.SetMeasured(i)) })
	c.drawing = widgets.NewPotDrawing(widgets.PotData{}, pictureLeast)
	c.measures = container.New(pairs{}, c.name, c.shape)
	c.figures = container.New(pairs{})
	c.notices = container.NewVBox()
	c.seasons = newSeasons(v)
	body := container.NewVBox(
		c.notices,
		widgets.NewCard("", c.drawing),
		widgets.NewSection(w.T("pots.measures"), c.measures),
		widgets.NewSection(w.T("pots.worked_out"), c.figures),
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
		objects := []fyne.CanvasObject{c.name, c.spot, c.shape, c.material, c.measured}
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

func (c *chosen) showNotices(remarks []screen.Remark) {
	c.notices.Objects = c.notices.Objects[:0]
	for _, r := range remarks {
		c.notices.Add(widgets.NewNotice(widgets.NoticeData{Kind: widgets.NoticeKind(r.Severity), Title: c.view.words.Severity(r.Severity), Text: r.Text}))
	}
	c.notices.Refresh()
}

// askAlike asks how many pots like the chosen one to add.
func (v *View) askAlike() {
	typed := "1"
	count := widgets.NewMeasureField(v.words.T("pots.how_many"), "", func(text string) error {
		typed = text
		return nil
	})
	count.SetValue(typed)
	widgets.ShowDialog(v.shell.Canvas(), widgets.DialogData{
		Title: v.words.T("pots.duplicate_title"), Content: count, Accept: v.words.T("pots.duplicate"), Cancel: v.words.T("pots.cancel"),
		Focus: count.Entry(),
		OnAccept: func() bool {
			count.Commit()
			n, err := strconv.Atoi(typed)
			if err != nil {
				n = 0
			}
			if err := v.screen.Duplicate(n); err != nil {
				count.SetError(err.Error())
				return false
			}
			v.Refresh()
			v.bench.reveal()
			return true
		},
	})
}
