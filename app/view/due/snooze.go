package due

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	screen "fourturn/app/screen/due"
	"fourturn/app/theme"
	"fourturn/app/widgets"
)

// askSnooze asks until when the reminder of a task sleeps, or whether the work itself is
// put off.
func (v *View) askSnooze(task screen.Task, putOff string) {
	w := v.words
	var dialog *widgets.Dialog
	choice := func(label string, act func() error) fyne.CanvasObject {
		return widgets.NewButton(widgets.ButtonData{Label: label, Kind: widgets.ButtonPlain}, func() {
			dialog.Close()
			v.tell(act(), "")
		})
	}
	day := widgets.NewMeasureField(w.T("due.snooze_day"), w.T("due.snooze_day_help"), func(typed string) error {
		if typed == "" {
			return nil
		}
		err := v.screen.SnoozeUntil(task, typed)
		if err == nil {
			dialog.Close()
			v.Refresh()
		}
		return err
	})
	about := w.T("due.snooze_change")
	if task.Feed() {
		about = w.T("due.snooze_feed")
	}
	dialog = widgets.ShowDialog(v.shell.Canvas(), widgets.DialogData{
		Title: w.T("due.snooze_title"), Size: fyne.NewSize(420, 0), Cancel: w.T("due.snooze_cancel"),
		Content: container.NewVBox(
			widgets.NewText(about),
			container.New(widgets.Columns{Least: 120, Most: 2},
				choice(w.T("due.snooze_tomorrow"), func() error { return v.screen.Snooze(task, v.screen.Tomorrow()) }),
				choice(w.T("due.snooze_saturday"), func() error { return v.screen.Snooze(task, v.screen.NextSaturday()) })),
			container.New(widgets.LeastHigh(theme.Step6), day),
			choice(putOff, func() error { return v.screen.PutOff(task) }),
		),
	})
}
