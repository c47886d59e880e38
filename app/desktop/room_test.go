package desktop

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/widget"

	"fourturn/planner"
)

func TestBackAndForward(t *testing.T) {
	st := newStage(t)
	st.shortcut(ctrl(fyne.Key2))
	st.GoTo("feeding", "round-3")
	st.GoTo("no such room", "")
	if st.Room() != "feeding" {
		t.Fatalf("in %q", st.Room())
	}
	st.shortcut(backKeys())
	st.shortcut(backKeys())
	if st.Room() != "due" || st.rail.Selected() != 0 || st.page.Objects[0] != st.pages["due"].object {
		t.Fatalf("back led to %q, tab %d", st.Room(), st.rail.Selected())
	}
	st.shortcut(forwardKeys())
	st.shortcut(forwardKeys())
	if st.Room() != "feeding" || !slices.Equal(st.pages["feeding"].opened, []string{"round-3", "round-3"}) {
		t.Errorf("forward led to %q, where %q was opened", st.Room(), st.pages["feeding"].opened)
	}
	st.Back()
	st.GoTo("due", "")
	if st.history.canGoForward() {
		t.Error("what lay ahead is still there")
	}
}

func TestHistoryForgetsTheOldest(t *testing.T) {
	h := history{}
	for i := range 3 * historyKept {
		h.visit(place{"pots", fmt.Sprint(i)})
	}
	steps := 0
	for h.back() {
		steps++
	}
	if steps != historyKept-1 {
		t.Errorf("%d steps back", steps)
	}
	if h.visit(h.here()) {
		t.Error("going where one is was a step")
	}
}

func TestRoomsOutOfSightAreRefreshedLater(t *testing.T) {
	st := newStage(t)
	if len(st.pages) != 1 {
		t.Fatalf("%d rooms were made before anybody went there", len(st.pages))
	}
	st.GoTo("pots", "")
	st.GoTo("due", "")
	before := st.pages["pots"].refreshed
	st.rename("Yard")
	if st.pages["pots"].refreshed != before {
		t.Error("a room out of sight was refreshed")
	}
	st.GoTo("pots", "")
	if st.pages["pots"].refreshed != before+1 {
		t.Errorf("refreshed %d times on coming back", st.pages["pots"].refreshed-before)
	}
}

func TestWorkingPanel(t *testing.T) {
	st := newStage(t)
	figure := st.pages["due"].figure
	st.Canvas().Focus(figure)
	st.press(fyne.KeyF1)
	if !st.WorkingOpen() {
		t.Fatal("F1 on a figure opened no working")
	}
	if got, want := st.panel.data.Inputs[0].Name, "Pots"; got != want {
		t.Errorf("the first input is %q", got)
	}
	if !st.panel.data.Soft || st.panel.data.Inputs[0].Soft || !st.panel.data.Inputs[1].Soft {
		t.Error("what is soft is not told from what is firm")
	}
	st.panel.data.Inputs[0].OnOpen()
	if st.panel.data.Title != "Pots" || len(st.panel.data.Path) != 1 || st.panel.data.Path[0].Title != "Feeding" {
		t.Errorf("the input opened as %q under %v", st.panel.data.Title, st.panel.data.Path)
	}
	st.panel.data.Path[0].OnOpen()
	if st.panel.data.Title != "Feeding" || len(st.panel.data.Path) != 0 {
		t.Errorf("the way back led to %q", st.panel.data.Title)
	}
	st.press(fyne.KeyEscape)
	if st.WorkingOpen() || st.Canvas().Focused() != figure {
		t.Errorf("Esc left the panel open %v and the focus at %v", st.WorkingOpen(), st.Canvas().Focused())
	}
	st.ShowWorking(planner.Figure{})
	if st.WorkingOpen() {
		t.Error("no figure opened a working")
	}
}

// After an edit the panel shows what has become of its figure, as deep as it was
// opened, and closes when the figure is gone.
func TestWorkingIsNeverStale(t *testing.T) {
	st := newStage(t)
	st.Canvas().Focus(st.pages["due"].figure)
	st.press(fyne.KeyF1)
	st.rename("Yard")
	if got := st.panel.data.Result; !st.WorkingOpen() || got != "35 L" {
		t.Errorf("after an edit the working says %q, open %v", got, st.WorkingOpen())
	}
	st.panel.data.Inputs[0].OnOpen()
	st.Perform("undo")
	st.settle()
	if st.panel.data.Title != "Pots" || len(st.panel.data.Path) != 1 {
		t.Errorf("undo led from the input to %q under %v", st.panel.data.Title, st.panel.data.Path)
	}
	st.panel.data.Path[0].OnOpen()
	if st.panel.data.Result != "38 L" {
		t.Errorf("undo left the figure at %q", st.panel.data.Result)
	}
	st.rename("")
	if st.WorkingOpen() || !strings.Contains(st.text(), "not there any more") {
		t.Errorf("the working of a figure that is gone is open: %v; said %q", st.WorkingOpen(), st.text())
	}
	st.rename("Roof")
	st.ShowWorking(mixFigure()) // of no outlook, as a page adds up
	st.rename("Yard")
	if st.WorkingOpen() {
		t.Error("a working that cannot be found again stayed open")
	}
}

// The panel lies over the page where the window is too small for both, and then
// keeps clicks from what is under it.
func TestPanelNeverWidensTheWindow(t *testing.T) {
	st := newStage(t)
	before := st.content.MinSize()
	wide := widget.NewEntry()
	st.pages["due"].object.(*fyne.Container).Add(container.NewGridWrap(fyne.NewSize(700, 40), wide))
	st.ShowWorking(mixFigure())
	if after := st.content.MinSize(); after != before {
		t.Errorf("with the panel the window needs %v, without it %v", after, before)
	}
	pressed := false
	under := widget.NewButton("", func() { pressed = true })
	st.setPage(under)
	under.Resize(fyne.NewSize(2000, 2000))
	test.TapCanvas(st.Canvas(), st.panel.Position().AddXY(-40, 300))
	if !pressed {
		t.Fatal("the page beside the panel cannot be pressed")
	}
	pressed = false
	test.TapCanvas(st.Canvas(), st.panel.Position().AddXY(20, 300))
	if pressed {
		t.Error("a click on the panel went through it")
	}
}

func TestUnsavedWorkComesBackAfterARestart(t *testing.T) {
	st := newStage(t)
	path := st.save("terrace.yaml")
	st.rename("Yard")
	st.session.Close() // as at the end of the program, without saving
	st.Shell.Close()
	st.start(st.config.App)
	st.OfferRecovery()
	test.Tap(st.button("Look at it…"))
	test.Tap(st.button("Bring it back"))
	st.until("the work", func() bool { return st.session.Plan().Title == "Yard" })
	if !st.session.Dirty() || st.session.Path() != path || noticeText(st) != "" {
		t.Errorf("unsaved %v, file %q, said %q", st.session.Dirty(), st.session.Path(), noticeText(st))
	}
}

// Tab goes on as one reads: rail, page, panel.
func TestFocusGoesAsOneReads(t *testing.T) {
	st := newStage(t)
	st.ShowWorking(mixFigure())
	st.Canvas().Unfocus()
	page := st.pages["due"]
	for i, want := range []fyne.Focusable{st.rail, page.field, page.figure, st.panel, st.panel.card.CloseButton()} {
		st.Canvas().FocusNext()
		if got := st.Canvas().Focused(); got != want {
			t.Errorf("step %d: the focus is at %T, not %T", i+1, got, want)
		}
	}
}
