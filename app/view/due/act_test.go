package due_test

import (
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	screen "fourturn/app/screen/due"
	"fourturn/app/screen/screentest"
	"fourturn/app/theme"
	"fourturn/app/view/due"
	"fourturn/app/widgets"
	"fourturn/app/widgets/golden"
	"fourturn/planner"
)

func TestSpaceTicksAndTheFocusStays(t *testing.T) {
	golden.App(t, theme.Options{Mode: theme.Light})
	d := screentest.Open(t, screentest.Example(t), screentest.SummerDay)
	sh := &shell{}
	v := due.New(screen.New(d.Session, d.Words, d.NewID), d.Words, sh)
	w := test.NewTempWindow(t, v.Object())
	w.Resize(fyne.NewSize(900, 600))
	var row *widgets.TaskRow
	for _, o := range test.LaidOutObjects(v.Object()) {
		if r, ok := o.(*widgets.TaskRow); ok && row == nil {
			row = r
		}
	}
	if row == nil {
		t.Fatal("nothing is due")
	}
	w.Canvas().Focus(row)
	row.TypedKey(&fyne.KeyEvent{Name: fyne.KeyReturn})
	if len(sh.shown) != 1 {
		t.Error("Enter does not open the working")
	}
	row.TypedKey(&fyne.KeyEvent{Name: fyne.KeySpace})
	if log := d.Plan().Log; len(log) != 1 || log[0].Kind != planner.Planted || !strings.HasPrefix(sh.status, "Done: Change over ") {
		t.Errorf("log %v, status %q", log, sh.status)
	}
	d.Settle()
	v.Refresh()
	if w.Canvas().Focused() != fyne.Focusable(row) || !row.Visible() {
		t.Error("the tick lost the focus")
	}
}
