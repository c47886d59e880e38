package begin

import (
	"strconv"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"fourturn/app/theme"
	"fourturn/app/widgets"
)

// potsPage asks for sizes and how many of each.
type potsPage struct {
	view     *View
	size     *widgets.ChoiceField
	count    *widgets.MeasureField
	add      *widgets.Button
	measures *fyne.Container
	fields   []*widgets.MeasureField
	lines    *fyne.Container
	whole    fyne.CanvasObject
}

func newPotsPage(v *View) *potsPage {
	p := &potsPage{view: v, lines: container.NewVBox()}
	options, chosen := v.screen.Sizes()
	p.size = widgets.NewChoiceField(v.words.T("begin.size"), "", options, func(i int) {
		v.screen.ChooseSize(i)
		p.measure()
	})
	p.size.SetChoice(chosen)
	p.count = widgets.NewMeasureField(v.words.T("begin.count"), "", v.screen.SetCount)
	p.count.SetOnStep(func(steps int) {
		if v.screen.SetCount(strconv.Itoa(v.screen.Count()+steps)) == nil {
			p.count.SetValue(strconv.Itoa(v.screen.Count()))
		}
	})
	p.count.SetValue(strconv.Itoa(v.screen.Count()))
	p.add = widgets.NewButton(widgets.ButtonData{Icon: theme.IconAdd, Label: v.words.T("begin.add")}, func() {
		if p.take() && p.put() {
			p.list()
		}
	})
	p.measures = container.New(widgets.Columns{Least: 150, Most: 3})
	first := container.New(widgets.Columns{Least: 200, Most: 2}, p.size, p.count)
	list := widgets.NewSection(v.words.T("begin.list"), container.NewVScroll(p.lines), p.add)
	p.whole = container.NewBorder(container.NewVBox(first, p.measures), nil, nil, nil, list)
	p.measure()
	p.list()
	return p
}

// measure shows the fields that the chosen shape asks for.
func (p *potsPage) measure() {
	fields := p.view.screen.Fields()
	for len(p.fields) < len(fields) {
		i := len(p.fields)
		p.fields = append(p.fields, widgets.NewMeasureField("", "", func(typed string) error {
			if err := p.view.screen.SetField(i, typed); err != nil {
				return err
			}
			p.fields[i].SetValue(p.view.screen.Fields()[i].Value)
			return nil
		}))
	}
	p.measures.Objects = nil
	for i, f := range fields {
		p.fields[i].SetLabels(f.Label, f.Help)
		p.fields[i].SetValue(f.Value)
		p.measures.Objects = append(p.measures.Objects, p.fields[i])
	}
	p.measures.Refresh()
	if p.whole != nil {
		p.whole.Refresh()
	}
}

// put puts the chosen size on the list; what it lacks is said at the first field.
func (p *potsPage) put() bool {
	err := p.view.screen.AddPots()
	if err != nil && len(p.measures.Objects) > 0 {
		p.fields[0].SetError(err.Error())
	}
	return err == nil
}

// list shows what is on the list, each line with a way to take it off.
func (p *potsPage) list() {
	p.lines.Objects = nil
	for i, text := range p.view.screen.Lines() {
		remove := widgets.NewButton(widgets.ButtonData{
			Icon: theme.IconClose, Kind: widgets.ButtonQuiet, Name: p.view.words.T("begin.remove") + ": " + text,
		}, func() {
			p.view.screen.RemovePots(i)
			p.list()
			p.view.shell.Canvas().Focus(p.add)
		})
		p.lines.Add(container.NewBorder(nil, nil, nil, remove, widgets.NewText(text)))
	}
	if len(p.lines.Objects) == 0 {
		p.lines.Add(widgets.NewText(p.view.words.T("begin.list_empty")))
	}
	p.lines.Refresh()
}

func (p *potsPage) object() fyne.CanvasObject { return p.whole }
func (p *potsPage) focus() fyne.Focusable     { return p.size.Entry() }

func (p *potsPage) refresh() {
	p.measure()
	p.list()
}

// take commits what is typed. One may go on with a list, or with a size that is whole.
func (p *potsPage) take() bool {
	good := true
	p.count.Commit()
	good = good && p.count.Error() == ""
	for i := range p.measures.Objects {
		p.fields[i].Commit()
		good = good && p.fields[i].Error() == ""
	}
	if good && len(p.view.screen.Pots()) == 0 {
		return p.put()
	}
	return good
}
