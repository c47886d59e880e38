package mix

import (
	"slices"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	screen "fourturn/app/screen/mix"
	"fourturn/app/theme"
	"fourturn/app/widgets"
)

// shelf is what can be changed: how pots are filled, what is sold and in the shed, and
// the person's own blends.
type shelf struct {
	view     *View
	object   *fyne.Container
	settings *fyne.Container
	products *fyne.Container
	blends   *fyne.Container
	folds    map[string]*fold
}

// fold is one group of fields.
type fold struct {
	fold   *widgets.Fold
	form   *widgets.Form
	notes  *fyne.Container
	told   []string
	remove func() error
}

func newShelf(v *View) *shelf {
	w, s := v.words, v.screen
	sh := &shelf{view: v, folds: map[string]*fold{}, settings: container.NewVBox(), products: container.NewVBox(), blends: container.NewVBox()}
	add := func(key string, do func() error) fyne.CanvasObject {
		return widgets.NewButton(widgets.ButtonData{Icon: theme.IconAdd, Label: w.T(key), Kind: widgets.ButtonQuiet}, func() { v.try(do()) })
	}
	sh.object = container.NewVBox(
		sh.settings,
		widgets.NewSection(w.T("mix_buying.shelf"), sh.products, add("mix_buying.add_mix", s.AddMix), add("mix_buying.add_ingredient", s.AddIngredient)),
		widgets.NewSection(w.T("mix_buying.own_blends"), sh.blends, add("mix_buying.add_blend", s.AddBlend)),
	)
	return sh
}

// try reports an edit that was refused and shows what is there now.
func (v *View) try(err error) {
	if err != nil {
		v.shell.Status(err.Error())
	}
	v.Refresh()
}

// after shows the plan again when an edit was taken.
func (v *View) after(err error) error {
	if err == nil {
		v.Refresh()
	}
	return err
}

func (sh *shelf) show() {
	s := sh.view.screen
	sh.fill(sh.settings, []screen.Group{s.Settings()})
	sh.fill(sh.products, s.Products())
	sh.fill(sh.blends, s.Blends())
}

// fill shows groups in their folds, which are kept while the groups are there.
func (sh *shelf) fill(in *fyne.Container, groups []screen.Group) {
	objects := make([]fyne.CanvasObject, len(groups))
	for i, g := range groups {
		f := sh.folds[g.Key]
		if f == nil {
			f = sh.newFold(g)
			sh.folds[g.Key] = f
		}
		sh.fillFold(f, g)
		objects[i] = f.fold
	}
	if !slices.Equal(in.Objects, objects) {
		in.Objects = objects
	}
	in.Refresh()
}

func (sh *shelf) newFold(g screen.Group) *fold {
	f := &fold{form: widgets.NewForm(widgets.Columns{Least: 200, Most: 4}), notes: container.NewVBox()}
	body := container.NewVBox(f.form.Object(), f.notes)
	if g.Remove != nil {
		remove := widgets.NewButton(widgets.ButtonData{Icon: theme.IconRemove, Label: sh.view.words.T("mix_buying.remove"), Kind: widgets.ButtonQuiet},
			func() { sh.view.try(f.remove()) })
		body.Add(container.NewHBox(remove))
	}
	f.fold = widgets.NewFold(g.Title, body, false)
	f.fold.OnToggle = func(bool) { sh.object.Refresh() }
	return f
}

func (sh *shelf) fillFold(f *fold, g screen.Group) {
	v := sh.view
	f.remove = g.Remove
	fields := make([]widgets.FormField, len(g.Fields))
	for i, one := range g.Fields {
		fields[i] = widgets.FormField{
			Key: one.Key, Label: one.Label, Help: one.Help, Value: one.Value, Options: one.Options, Chosen: one.Chosen,
			Take:   func(text string) error { return v.after(one.Take(text)) },
			Choose: func(i int) { v.try(one.Choose(i)) },
		}
	}
	f.form.Set(fields)
	if !slices.Equal(f.told, g.Notes) {
		f.told, f.notes.Objects = g.Notes, nil
		for _, text := range g.Notes {
			f.notes.Add(widgets.NewText(text))
		}
	}
	f.fold.SetHeading(g.Title)
	f.fold.SetSummary(g.Summary)
}

// Unfold opens the folds with these keys, such as "settings" or "product/mix".
func (v *View) Unfold(keys ...string) {
	for key, f := range v.shelf.folds {
		f.fold.SetOpen(slices.Contains(keys, key))
	}
	v.shelf.object.Refresh()
}
