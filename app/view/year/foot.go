package year

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	screen "fourturn/app/screen/year"
	"fourturn/app/theme"
	"fourturn/app/widgets"
)

// foot tells of the planting that is selected, and offers what can be done with it.
type foot struct {
	view    *View
	line    *widgets.Line
	start   *widgets.Figure
	why     *widgets.Line
	told    screen.Told
	object  *fyne.Container
	buttons fyne.CanvasObject

	pin, swap, refuse, story *widgets.Button
}

func newFoot(v *View) *foot {
	f := &foot{view: v, line: widgets.NewLine("", true), why: widgets.NewLine("", false)}
	f.start = widgets.NewFigure(widgets.FigureData{Style: widgets.FigureBare}, nil)
	button := func(icon theme.IconName, key string, kind widgets.ButtonKind, do func(p widgets.YearPlace)) *widgets.Button {
		return widgets.NewButton(widgets.ButtonData{Icon: icon, Label: v.words.T(key), Kind: kind}, func() { do(v.strips.chart.Selected()) })
	}
	f.pin = button(theme.IconPin, "year.pin", widgets.ButtonPlain, func(p widgets.YearPlace) { v.turnPin(p.Row, p.Segment) })
	f.swap = button(theme.IconSwap, "year.swap", widgets.ButtonQuiet, func(p widgets.YearPlace) { v.askSwap(p.Row, p.Segment) })
	f.refuse = button(theme.IconRefuse, "year.refuse", widgets.ButtonQuiet, func(p widgets.YearPlace) { v.askRefuse(p.Row, p.Segment) })
	f.story = button("", "year.story", widgets.ButtonMain, func(p widgets.YearPlace) { v.story.open(p.Row) })
	f.buttons = container.NewCenter(container.NewHBox(f.refuse, f.swap, f.pin, f.story))
	told := container.NewBorder(nil, nil, f.start, nil, f.why)
	f.object = container.NewBorder(nil, nil, nil, f.buttons, container.NewVBox(f.line, told))
	return f
}

// show tells of what is selected now.
func (f *foot) show() {
	v := f.view
	place := v.strips.chart.Selected()
	f.told = v.screen.Tell(place.Row, place.Segment)
	there := f.told.Title != ""
	if there {
		f.buttons.Show()
	} else {
		f.buttons.Hide()
	}
	setPin(f.pin, f.told, v)
	if !there {
		f.line.Set(v.words.T("year.hint"))
		f.why.Set(v.words.T("year.hint_keys"))
		f.start.Hide()
		f.object.Refresh()
		return
	}
	f.line.Set(f.told.Title)
	f.why.Set(f.told.Why)
	f.start.Show()
	v.setFigure(f.start, screen.Figure{Value: f.told.Value, Soft: f.told.Soft, Figure: f.told.Start}, widgets.FigureBare)
	f.object.Refresh()
}
