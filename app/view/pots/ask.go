package pots

import (
	"strconv"

	"fyne.io/fyne/v2"

	"fourturn/app/widgets"
)

// askAlike asks how many pots like the chosen one to add.
func (v *View) askAlike() {
	if v.screen.Chosen() == nil {
		return
	}
	typed := "1"
	count := widgets.NewMeasureField(v.words.T("pots.how_many"), "", func(text string) error {
		typed = text
		return nil
	})
	count.SetValue(typed)
	widgets.ShowDialog(v.shell.Canvas(), widgets.DialogData{
		Title: v.words.T("pots.duplicate_title"), Content: count, Accept: v.words.T("pots.duplicate"), Cancel: v.words.T("pots.cancel"),
		Size: fyne.NewSize(280, 0), Focus: count.Entry(),
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

// listSize is the place for the rows of a list: a dozen, each with its five columns.
var listSize = fyne.NewSize(560, 220)
