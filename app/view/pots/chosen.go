package pots

import (
	"math"
	"slices"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	screen "fourturn/app/screen/pots"
	"fourturn/app/theme"
	"fourturn/app/widgets"
	"fourturn/app/words"
	"fourturn/planner/finding"
	"fourturn/planner/quantity"
	"fourturn/planner/vessel"
)

// chosen is the pot that is looked at and edited: its picture, which stays in sight,
// above the folds with all that can be said and changed.
type chosen struct {
	view    *View
	object  fyne.CanvasObject
	drawing *widgets.PotDrawing
	caption *widgets.Figure
	groups  []*group
	folds   *fyne.Container
	figures *fyne.Container
	errors  *fyne.Container
	notices *fyne.Container
	remarks *widgets.Section
	seasons *seasons
	balance *balance
}

var pictureLeast = fyne.NewSize(360, 120)

func newChosen(v *View) *chosen {
	w := v.words
	c := &chosen{view: v}
	c.drawing = widgets.NewPotDrawing(widgets.PotData{}, pictureLeast)
	c.caption = widgets.NewFigure(widgets.FigureData{}, nil)
	c.folds = container.NewVBox()
	c.figures = container.New(pairs{})
	c.errors, c.notices = container.NewVBox(), container.NewVBox()
	c.remarks = widgets.NewSection(w.T("pots.remarks"), c.notices)
	c.seasons = newSeasons(v)
	c.balance = newBalance(v)
	body := container.NewVBox(
		c.errors,
		c.folds,
		widgets.NewSection(w.T("pots.worked_out"), c.figures),
		c.remarks,
		widgets.NewSection(w.T("pots.year"), c.seasons.object),
	)
	picture := widgets.NewCard("", container.NewBorder(nil, container.NewCenter(c.caption), nil, nil, c.drawing))
	c.object = container.New(pictureAbove{}, picture, container.NewVScroll(container.New(widgets.SideMargin{}, body)))
	return c
}

// pictureAbove gives the picture the upper part of the page, and what is under it a
// place of its own to scroll in.
type pictureAbove struct{}

const (
	pictureShare = 0.36 // of the height
	pictureMost  = 320
)

func (pictureAbove) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	high := min(max(size.Height*pictureShare, objects[0].MinSize().Height), pictureMost)
	objects[0].Move(fyne.NewPos(0, 0))
	objects[0].Resize(fyne.NewSize(size.Width, high))
	objects[1].Move(fyne.NewPos(0, high+theme.Step))
	objects[1].Resize(fyne.NewSize(size.Width, max(0, size.Height-high-theme.Step)))
}

func (pictureAbove) MinSize(objects []fyne.CanvasObject) fyne.Size {
	a, b := objects[0].MinSize(), objects[1].MinSize()
	return fyne.NewSize(max(a.Width, b.Width), a.Height+b.Height+theme.Step)
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
	groups := s.Groups()
	if len(c.groups) != len(groups) {
		c.groups, c.folds.Objects = nil, nil
		for _, g := range groups {
			one := newGroup(c, g)
			c.groups = append(c.groups, one)
			c.folds.Add(one.fold)
		}
	}
	for i, g := range groups {
		c.groups[i].show(g)
	}
	c.draw(s.Shape())
	c.showFigures(s.Figures())
	c.showNotices(s.Findings())
	c.seasons.show(s.SeasonRows())
}

// draw shows a pot, as it is or as it is being typed; where it cannot be drawn, what
// was drawn before stays while somebody types.
func (c *chosen) draw(trial *screen.Trial) {
	data := widgets.PotData{Name: c.view.screen.Name()}
	text := ""
	if trial != nil {
		v := trial.Vessel
		text = trial.Text
		data.Side, data.Plan = sideOf(v), planOf(v)
		addPlants(&data, v, c.view.screen.Growing())
		data.Dimensions = dimensionsOf(v, func(a, b vessel.Point) string {
			return c.view.screen.Length(quantity.Length(math.Hypot(a.X-b.X, a.Y-b.Y)))
		})
	}
	c.drawing.Set(data)
	c.caption.Set(widgets.FigureData{Value: text, Style: widgets.FigureBare})
}

func (c *chosen) showFigures(list []screen.Figure) {
	fillFigures(c.figures, list, c.view.shell)
}

// fillFigures sets figures in a row of places, which are kept.
func fillFigures(in *fyne.Container, list []screen.Figure, shell Shell) {
	for len(in.Objects) < len(list) {
		in.Add(widgets.NewFigure(widgets.FigureData{}, nil))
	}
	in.Objects = in.Objects[:len(list)]
	for i, f := range list {
		set(in.Objects[i].(*widgets.Figure), f, widgets.FigureStacked, shell)
	}
	in.Refresh()
}

// set shows a worked-out figure whose working opens beside the page.
func set(figure *widgets.Figure, f screen.Figure, style widgets.FigureStyle, shell Shell) {
	figure.Set(widgets.FigureData{Label: f.Label, Value: f.Value, Soft: f.Soft, Style: style})
	figure.SetOnWorking(func() { shell.ShowWorking(f.Figure) })
}

// showNotices puts what keeps the pot from being worked out above its measures, where
// it can be mended, and all other remarks below the figures.
func (c *chosen) showNotices(remarks []screen.Remark) {
	var errors, others []screen.Remark
	for _, r := range remarks {
		if slices.Contains(errors, r) || slices.Contains(others, r) { // the same of two plantings
			continue
		}
		if r.Severity == finding.Error {
			errors = append(errors, r)
		} else {
			others = append(others, r)
		}
	}
	fillNotices(c.errors, errors, c.view.words)
	fillNotices(c.notices, others, c.view.words)
	if len(others) == 0 {
		c.remarks.Hide()
	} else {
		c.remarks.Show()
	}
}

func fillNotices(in *fyne.Container, remarks []screen.Remark, w *words.Words) {
	in.Objects = nil
	for _, r := range remarks {
		in.Add(widgets.NewNotice(widgets.NoticeData{Kind: widgets.NoticeKind(r.Severity), Title: words.Capital(w.Severity(r.Severity)), Text: r.Text}))
	}
	in.Refresh()
}
