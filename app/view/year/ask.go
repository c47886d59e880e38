package year

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	screen "fourturn/app/screen/year"
	"fourturn/app/widgets"
)

// askWide is a line of plants.
const askWide = 420

// askSwap asks what is to stand instead of the planting at a place.
func (v *View) askSwap(row, segment int) {
	options := v.screen.Swaps(row, segment)
	v.ask(v.words.T("year.swap_title"), v.words.T("year.no_swap"), options, func(o screen.Option) error {
		return v.screen.Swap(row, segment, o)
	})
}

// askRefuse asks what of the planting at a place is not wanted.
func (v *View) askRefuse(row, segment int) {
	options := v.screen.Refusals(row, segment)
	v.ask(v.words.T("year.refuse_title"), "", options, func(o screen.Option) error {
		return v.screen.Refuse(row, segment, o)
	})
}

// ask lists what can be taken, each by a press.
func (v *View) ask(title, none string, options []screen.Option, take func(screen.Option) error) {
	var asked *widgets.Dialog
	list := container.NewVBox()
	for _, o := range options {
		list.Add(widgets.NewButton(widgets.ButtonData{Label: o.Label, Name: o.Label + ". " + o.Detail}, func() {
			asked.Close()
			v.try(take(o))
		}))
		if o.Detail != "" {
			list.Add(widgets.NewText(o.Detail))
		}
	}
	if len(options) == 0 {
		list.Add(widgets.NewText(none))
	}
	asked = widgets.ShowDialog(v.shell.Canvas(), widgets.DialogData{
		Title: title, Content: list, Cancel: v.words.T("year.cancel"), Size: fyne.NewSize(askWide, 0),
	})
}
