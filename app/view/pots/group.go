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
	fields  []*field
	grid    *fyne.Container // of fields side by side
	long    *fyne.Container // of texts of several lines
	figures *fyne.Container
	remarks *fyne.Container
	notes   *fyne.Container
	said    []screen.Remark
	told    []string
}

// field is one thing to type or to choose.
type field struct {
	now     screen.Field
	measure *widgets.MeasureField
	note    *widgets.NoteField
	choice  *widgets.ChoiceField
	options []string
}

// openAtFirst is the fold that is open before anybody touched one.
const openAtFirst = "size"

func newGroup(c *chosen, g screen.Group) *group {
	one := &group{
		chosen: c, key: g.Key, grid: container.New(pairs{}), long: container.NewVBox(),
		figures: container.New(pairs{}), remarks: container.NewVBox(), notes: container.NewVBox(),
	}
	body := container.NewVBox(one.grid, one.long, one.remarks, one.figures)
	if g.Key == "mix" {
		body.Add(c.balance.object)
	}
	body.Add(one.notes)
	one.fold = widgets.NewFold(g.Title, body, g.Key == openAtFirst)
	one.fold.OnToggle = func(bool) { c.folds.Refresh() }
	return one
}

func (g *group) show(now screen.Group) {
	if !g.sameKeys(now.Fields) {
		g.build(now.Fields)
	}
	for i, f := range now.Fields {
		g.fields[i].show(f)
	}
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

// sameKeys reports whether the fields are the same, so that the one that has the focus
// keeps it.
func (g *group) sameKeys(fields []screen.Field) bool {
	return slices.EqualFunc(g.fields, fields, func(a *field, b screen.Field) bool {
		return a.now.Key == b.Key && (a.choice != nil) == (b.Options != nil)
	})
}

func (g *group) build(fields []screen.Field) {
	g.fields, g.grid.Objects, g.long.Objects = nil, nil, nil
	for _, now := range fields {
		f := &field{now: now}
		g.fields = append(g.fields, f)
		switch {
		case now.Options != nil:
			f.options = now.Options
			f.choice = widgets.NewChoiceField(now.Label, now.Help, now.Options, func(i int) { g.chosen.view.try(f.now.Choose(i)) })
			g.grid.Add(f.choice)
		case now.Lines:
			f.note = widgets.NewNoteField(now.Label, func(text string) error { return g.chosen.after(f.now.Take(text)) })
			g.long.Add(f.note)
		default:
			f.measure = widgets.NewMeasureField(now.Label, now.Help, func(text string) error { return g.chosen.after(f.now.Take(text)) })
			f.measure.SetOnTyped(func(text string) { g.preview(f, text) })
			g.grid.Add(f.measure)
		}
	}
	g.grid.Refresh()
	g.long.Refresh()
}

// preview draws what would come of what is being typed.
func (g *group) preview(f *field, text string) {
	if f.now.Try == nil {
		return
	}
	if trial := f.now.Try(text); trial != nil {
		g.chosen.draw(trial)
	}
}

func (f *field) show(now screen.Field) {
	f.now = now
	switch {
	case f.choice != nil:
		if !slices.Equal(f.options, now.Options) {
			f.options = now.Options
			f.choice.SetOptions(now.Options)
		}
		f.choice.SetChoice(now.Chosen)
	case f.note != nil:
		f.note.SetValue(now.Value)
	default:
		f.measure.SetLabels(now.Label, now.Help)
		f.measure.SetValue(now.Value)
		f.measure.SetError(now.Error)
	}
}

// Unfold opens the folds of the chosen pot with these keys and closes the others.
func (v *View) Unfold(keys ...string) {
	for _, g := range v.chosen.groups {
		g.fold.SetOpen(slices.Contains(keys, g.key))
	}
	v.chosen.folds.Refresh()
}
