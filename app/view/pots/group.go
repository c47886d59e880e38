package pots

import (
	"slices"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	screen "fourturn/app/screen/pots"
	"fourturn/app/theme"
	"fourturn/app/widgets"
	"fourturn/planner/finding"
)

// group is one fold of the page: fields, figures, what is to be said about them.
type group struct {
	chosen  *chosen
	key     string
	fold    *widgets.Fold
	form    *widgets.Form
	figures *fyne.Container
	remarks *fyne.Container
	notes   *fyne.Container
	said    []screen.Remark
	told    []string
}

// openAtFirst is the fold that is open before anybody touched one.
const openAtFirst = "size"

func newGroup(c *chosen, g screen.Group) *group {
	one := &group{
		chosen: c, key: g.Key, form: widgets.NewForm(pairs{}),
		figures: container.New(pairs{}), remarks: container.NewVBox(), notes: container.NewVBox(),
	}
	body := container.NewVBox(one.form.Object(), one.remarks, one.figures)
	if g.Key == "mix" {
		body.Add(c.balance.object)
	}
	body.Add(one.notes)
	one.fold = widgets.NewFold(g.Title, body, g.Key == openAtFirst)
	one.fold.OnToggle = func(bool) { c.folds.Refresh() }
	return one
}

func (g *group) show(now screen.Group) {
	fields := make([]widgets.FormField, len(now.Fields))
	for i := range now.Fields {
		fields[i] = g.field(now.Fields[i])
	}
	g.form.Set(fields)
	fillFigures(g.figures, now.Figures, g.chosen.view.shell)
	if !slices.Equal(g.said, now.Remarks) {
		g.said = now.Remarks
		fillNotices(g.remarks, now.Remarks, g.chosen.view.words)
	}
	if !slices.Equal(g.told, now.Notes) {
		g.told, g.notes.Objects = now.Notes, nil
		for _, text := range now.Notes {
			g.notes.Add(widgets.NewText(text))
		}
		g.notes.Refresh()
	}
	if g.key == "mix" {
		g.chosen.balance.show()
	}
	g.fold.SetSummary(now.Summary)
	g.mark(now)
}

// mark shows at the head of the fold what must be seen while it is closed.
func (g *group) mark(now screen.Group) {
	worst, marked := now.Worst()
	if !marked {
		g.fold.SetMark("", "")
		return
	}
	icon := theme.IconCaution
	switch worst {
	case finding.Warning:
		icon = theme.IconWarning
	case finding.Error:
		icon = theme.IconError
	default:
	}
	g.fold.SetMark(icon, g.chosen.view.words.Severity(worst))
}

// field is a field of the screen as the form draws it.
func (g *group) field(f screen.Field) widgets.FormField {
	c := g.chosen
	return widgets.FormField{
		Key: f.Key, Label: f.Label, Help: f.Help, Value: f.Value, Error: f.Error, Lines: f.Lines, Options: f.Options, Chosen: f.Chosen,
		Take:   func(text string) error { return c.after(f.Take(text)) },
		Choose: func(i int) { c.view.try(f.Choose(i)) },
		Typed: func(text string) { // draw what would come of it
			if f.Try == nil {
				return
			}
			if trial := f.Try(text); trial != nil {
				c.draw(trial)
			}
		},
	}
}

// Unfold opens the folds of the chosen pot with these keys and closes the others.
func (v *View) Unfold(keys ...string) {
	for _, g := range v.chosen.groups {
		g.fold.SetOpen(slices.Contains(keys, g.key))
	}
	v.chosen.folds.Refresh()
}
