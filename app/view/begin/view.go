// Package begin draws the three questions that make a new plan: place, pots, taste.
// They lie over the window, one quiet page after the other; Enter goes on, Back goes
// back with all answers kept, Esc leaves everything as it was.
package begin

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/layout"

	screen "fourturn/app/screen/begin"
	"fourturn/app/theme"
	"fourturn/app/widgets"
	"fourturn/app/words"
)

// Shell is what the questions need of the window.
type Shell interface {
	Canvas() fyne.Canvas
	// Replace goes on with another plan once the open one has no unsaved work, and
	// then shows a room of it.
	Replace(start func() error, room string)
	// Empty begins with an empty plan.
	Empty()
}

// The pages, in order.
const (
	pagePlace = iota
	pagePots
	pageTaste
	pageCount
)

// questions are the keys of what the pages ask.
var questions = [pageCount]string{"begin.place", "begin.pots", "begin.taste"}

// View is the open questions.
type View struct {
	screen *screen.Screen
	words  *words.Words
	shell  Shell
	dialog *widgets.Dialog
	pages  [pageCount]page
	at     int
	back   *widgets.Button
	empty  *widgets.Button
	stack  *fyne.Container
}

// page is one question.
type page interface {
	object() fyne.CanvasObject
	focus() fyne.Focusable
	// refresh shows the answers, as after another page changed what they mean.
	refresh()
	// take takes what is still being typed and reports whether one may go on.
	take() bool
}

// size is the room for a page in the smallest window.
var size = fyne.NewSize(660, 390)

// Open opens the questions over the window.
func Open(s *screen.Screen, w *words.Words, shell Shell) *View {
	v := &View{screen: s, words: w, shell: shell}
	v.back = widgets.NewButton(widgets.ButtonData{Icon: theme.IconBack, Label: w.T("begin.back")}, func() { v.show(v.at - 1) })
	v.empty = widgets.NewButton(widgets.ButtonData{Label: w.T("begin.empty"), Kind: widgets.ButtonQuiet}, func() {
		v.dialog.Close()
		v.shell.Empty()
	})
	v.pages = [pageCount]page{newPlacePage(v), newPotsPage(v), newTastePage(v)}
	v.stack = container.NewStack(v.pages[pagePlace].object())
	v.back.Hide()
	v.dialog = widgets.ShowDialog(shell.Canvas(), widgets.DialogData{
		Title: v.title(), Content: v.stack, Size: size, Focus: v.pages[pagePlace].focus(),
		Accept: w.T("begin.next"), Cancel: w.T("begin.cancel"),
		Aside:    container.New(layout.NewCustomPaddedHBoxLayout(theme.Step), v.back, v.empty),
		OnAccept: v.next,
	})
	return v
}

func (v *View) title() string {
	return v.words.T("begin.step", words.A{"step": v.at + 1, "question": v.words.T(questions[v.at])})
}

// show turns to a page.
func (v *View) show(at int) {
	v.at = at
	v.pages[at].refresh()
	v.stack.Objects = []fyne.CanvasObject{v.pages[at].object()}
	v.stack.Refresh()
	if at == pagePlace {
		v.back.Hide()
		v.empty.Show()
	} else {
		v.back.Show()
		v.empty.Hide()
	}
	accept := v.words.T("begin.next")
	if at == pageCount-1 {
		accept = v.words.T("begin.accept")
	}
	v.dialog.SetStep(v.title(), accept)
	v.shell.Canvas().Focus(v.pages[at].focus())
}

// next goes on, and from the last page to the year of the new plan.
func (v *View) next() bool {
	if !v.pages[v.at].take() {
		return false
	}
	if v.at < pageCount-1 {
		v.show(v.at + 1)
		return false
	}
	v.shell.Replace(func() error {
		err := v.screen.Finish()
		if err == nil {
			v.dialog.Close()
		}
		return err
	}, "year")
	return false
}
