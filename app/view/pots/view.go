// Package pots draws the bench of pots and the one that is chosen: its picture to
// scale beside its measures, what is worked out for it, and its four plantings.
package pots

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	screen "fourturn/app/screen/pots"
	"fourturn/app/theme"
	"fourturn/app/widgets"
	"fourturn/app/words"
	"fourturn/planner"
)

// Shell is what the page needs of the window around it.
type Shell interface {
	ShowWorking(f planner.Figure)
	Status(text string)
	Canvas() fyne.Canvas
}

// View is the page of pots.
type View struct {
	screen *screen.Screen
	words  *words.Words
	shell  Shell
	page   *fyne.Container
	header *widgets.PageHeader
	empty  fyne.CanvasObject
	split  *fyne.Container
	bench  *bench
	chosen *chosen
	alike  *widgets.Button
	remove *widgets.Button
}

// New returns the page.
func New(s *screen.Screen, w *words.Words, shell Shell) *View {
	v := &View{screen: s, words: w, shell: shell}
	add := widgets.NewButton(widgets.ButtonData{Icon: theme.IconAdd, Label: w.T("pots.add"), Kind: widgets.ButtonMain}, func() { v.try(s.Add()) })
	alike := widgets.NewButton(widgets.ButtonData{Icon: theme.IconDuplicate, Label: w.T("pots.duplicate")}, v.askAlike)
	remove := widgets.NewButton(widgets.ButtonData{Icon: theme.IconRemove, Label: w.T("pots.remove"), Kind: widgets.ButtonQuiet}, func() { v.try(s.Remove()) })
	paste := widgets.NewButton(widgets.ButtonData{Icon: theme.IconOpen, Label: w.T("pots.paste")}, v.askList)
	v.header = widgets.NewPageHeader(w.T("pots.title"), "", remove, alike, paste, add)
	v.alike, v.remove = alike, remove
	v.bench = newBench(v)
	v.chosen = newChosen(v)
	first := widgets.NewButton(widgets.ButtonData{Icon: theme.IconAdd, Label: w.T("pots.add_first"), Kind: widgets.ButtonMain}, func() { v.try(s.Add()) })
	pasteFirst := widgets.NewButton(widgets.ButtonData{Icon: theme.IconOpen, Label: w.T("pots.paste")}, v.askList)
	v.empty = widgets.NewEmptyState(theme.DrawingPots, w.T("pots.empty_title"), w.T("pots.empty_text"), first, pasteFirst)
	v.split = container.New(sideBySide{}, v.bench.object, v.chosen.object)
	v.page = container.NewBorder(v.header, nil, nil, nil, container.NewStack(v.empty, v.split))
	v.Refresh()
	return v
}

// Object returns the page to be shown.
func (v *View) Object() fyne.CanvasObject { return v.page }

// Open chooses a pot.
func (v *View) Open(id string) {
	v.screen.Choose(id)
	v.Refresh()
	v.bench.reveal()
}

// Refresh shows the plan as it is now.
func (v *View) Refresh() {
	pot := v.screen.Chosen()
	v.header.Set(v.words.T("pots.title"), v.bench.about())
	if pot == nil {
		v.alike.Disable()
		v.remove.Disable()
		v.split.Hide()
		v.empty.Show()
		return
	}
	v.alike.Enable()
	v.remove.Enable()
	v.empty.Hide()
	v.split.Show()
	v.bench.show()
	v.chosen.show()
}

// try reports an edit that was refused and shows what is there now.
func (v *View) try(err error) {
	if err != nil {
		v.shell.Status(err.Error())
	}
	v.Refresh()
}

// sideBySide gives the bench a third of the page, within what a column of tiles and
// a line of text need, and the chosen pot the rest.
type sideBySide struct{}

const (
	benchNarrow = 160 + 3*theme.Step   // one tile
	benchLeast  = 2*160 + 3*theme.Step // two tiles
	benchMost   = 4*160 + 5*theme.Step
)

func (sideBySide) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	wide := min(max(size.Width/3, benchLeast), benchMost)
	if size.Width-wide-theme.Step2 < objects[1].MinSize().Width { // a small window: one column of tiles
		wide = benchNarrow
	}
	objects[0].Resize(fyne.NewSize(wide, size.Height))
	objects[0].Move(fyne.NewPos(0, 0))
	objects[1].Move(fyne.NewPos(wide+theme.Step2, 0))
	objects[1].Resize(fyne.NewSize(size.Width-wide-theme.Step2, size.Height))
}

func (sideBySide) MinSize(objects []fyne.CanvasObject) fyne.Size {
	return fyne.NewSize(benchNarrow+objects[1].MinSize().Width+theme.Step2, max(objects[0].MinSize().Height, objects[1].MinSize().Height))
}
