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
	view   *View
	line   *widgets.Line
	start  *widgets.Figure
	why    *widgets.Line
	pin    *widgets.Button
	told   screen.Told
	object *fyne.Container
}

func newFoot(v *View) *foot {
	f := &foot{view: v, line: widgets.NewLine("", true), why: widgets.NewLine("", false)}
	f.start = widgets.NewFigure(widgets.FigureData{Style: widgets.FigureBare}, nil)
	f.pin = widgets.NewButton(widgets.ButtonData{Icon: theme.IconPin, Label: v.words.T("year.pin")}, f.turnPin)
	told := container.NewBorder(nil, nil, f.start, nil, f.why)
	f.object = container.NewBorder(nil, nil, nil, container.NewCenter(container.NewHBox(f.pin)), container.NewVBox(f.line, told))
	return f
}

// show tells of what is selected now.
func (f *foot) show() {
	v := f.view
	place := v.strips.chart.Selected()
	f.told = v.screen.Tell(place.Row, place.Segment)
	if f.told.Title == "" {
		f.line.Set(v.words.T("year.hint"))
		f.why.Set(v.words.T("year.hint_keys"))
		f.start.Hide()
		f.pin.Disable()
		f.object.Refresh()
		return
	}
	f.line.Set(f.told.Title)
	f.why.Set(f.told.Why)
	f.start.Show()
	f.start.Set(widgets.FigureData{Value: f.told.Value, Soft: f.told.Soft, Style: widgets.FigureBare})
	f.start.SetOnWorking(nil)
	if start := f.told.Start; !start.IsZero() {
		f.start.SetOnWorking(func() { v.shell.ShowWorking(start) })
	}
	label := v.words.T("year.pin")
	if f.told.Pinned {
		label = v.words.T("year.unpin")
	}
	f.pin.Set(widgets.ButtonData{Icon: theme.IconPin, Label: label})
	if f.told.Movable {
		f.pin.Enable()
	} else {
		f.pin.Disable()
	}
	f.object.Refresh()
}

// turnPin holds on to the day of the selected change-out, or gives it back to the site.
func (f *foot) turnPin() {
	v := f.view
	place := v.strips.chart.Selected()
	switch {
	case !f.told.Movable:
	case f.told.Pinned:
		v.try(v.screen.Unpin(place.Row, place.Segment))
	default:
		v.try(v.screen.Pin(place.Row, place.Segment))
	}
}
