package widgets

import (
	"slices"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/test"

	"fourturn/app/theme"
	"fourturn/app/widgets/golden"
)

func TestTaskRowLook(t *testing.T) {
	golden.Check(t, "taskrow", fyne.NewSize(640, 250), func() fyne.CanvasObject {
		do := TaskActions{OnTick: func(bool) {}, OnOpen: func() {}, OnSnooze: func() {}, SnoozeName: "Put off"}
		focused := NewTaskRow(TaskData{Icon: theme.IconSwap, Title: "Change out to pelargonium and bidens", Detail: "Trough by the gate", When: "Sat 16 May", Soft: true}, do)
		focused.FocusGained()
		return container.NewVBox(
			NewTaskRow(TaskData{Icon: theme.IconFeeding, Title: "Feed with 20-20-20 soluble", Detail: "27 L in the can, 1 g/L", Count: "12 pots", When: "Tue 7 Apr", Late: "2 days late"}, do),
			focused,
			NewTaskRow(TaskData{Icon: theme.IconMix, Title: "Buy 6 bags of mix", Count: "3 pots", When: "Thu 9 Apr"}, do),
			NewTaskRow(TaskData{Icon: theme.IconFeeding, Title: "Feed with calcium nitrate", Detail: "12 L in the can", Count: "5 pots", When: "Mon 6 Apr", Late: "3 days late", Done: true}, do),
		)
	})
}

func TestTaskRowActions(t *testing.T) {
	golden.App(t, theme.Options{})
	var done []string
	var row *TaskRow
	data := TaskData{Title: "Feed", When: "today"}
	row = NewTaskRow(data, TaskActions{})
	actions := TaskActions{
		OnTick: func(d bool) {
			if d {
				done = append(done, "tick")
			} else {
				done = append(done, "untick")
			}
			data.Done = d
		},
		OnOpen:   func() { done = append(done, "open") },
		OnSnooze: func() { done = append(done, "snooze") },
	}
	row.Set(data, actions)
	w := test.NewTempWindow(t, row)
	w.Resize(fyne.NewSize(600, 60))
	test.TapAt(row, fyne.NewPos(25, 25))
	row.Set(data, actions)
	press(row, fyne.KeySpace)
	row.Set(data, actions)
	press(row, fyne.KeyReturn)
	test.TapAt(row, fyne.NewPos(300, 20))
	test.Tap(row.Snooze())
	if want := []string{"tick", "untick", "open", "open", "snooze"}; !slices.Equal(done, want) {
		t.Errorf("did %v, want %v", done, want)
	}
}

// What is done can no longer be put off, and is no longer late.
func TestTaskRowDone(t *testing.T) {
	golden.App(t, theme.Options{})
	row := NewTaskRow(TaskData{Title: "Feed", Late: "2 days late", Done: true}, TaskActions{OnSnooze: func() {}})
	test.NewTempWindow(t, row)
	if row.Snooze().Visible() {
		t.Error("a task that is done can be put off")
	}
	if got := row.AccessibilityLabel(); got != "✓, Feed, 2 days late" {
		t.Errorf("name %q", got)
	}
}
