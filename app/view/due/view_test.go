package due_test

import (
	"testing"

	"fyne.io/fyne/v2"

	screen "fourturn/app/screen/due"
	"fourturn/app/screen/screentest"
	"fourturn/app/view/due"
	"fourturn/app/widgets/golden"
	"fourturn/planner"
)

// shell is the window around the page.
type shell struct {
	status string
	shown  []planner.Figure
	went   string
	canvas fyne.Canvas
}

func (s *shell) ShowWorking(f planner.Figure) { s.shown = append(s.shown, f) }
func (s *shell) Status(text string)           { s.status = text }
func (s *shell) Canvas() fyne.Canvas          { return s.canvas }
func (s *shell) GoTo(room, id string)         { s.went = room + " " + id }

var small, large = fyne.NewSize(900, 600), fyne.NewSize(1280, 800)

// check draws a plan by day and by lamplight.
func check(t *testing.T, what string, plan *planner.Plan, at ...fyne.Size) {
	t.Helper()
	d := screentest.Open(t, plan, screentest.SummerDay)
	golden.CheckPages(t, what, at, func() fyne.CanvasObject {
		return due.New(screen.New(d.Session, d.Words, d.NewID), d.Words, &shell{}).Object()
	})
}

func TestPictures(t *testing.T) {
	check(t, "example", screentest.Example(t), small, large)
	check(t, "longest", screentest.LongestNames(t), small, large)
	check(t, "empty", screentest.Empty(), small)
}
