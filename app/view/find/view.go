// Package find draws the search for everything: a line to type in, and what answers.
// The line keeps the focus; Up and Down choose, Enter goes there, Esc closes.
package find

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"

	screen "fourturn/app/screen/find"
	"fourturn/app/theme"
	"fourturn/app/widgets"
	"fourturn/app/words"
)

// Shell is what the search needs of the window.
type Shell interface {
	Canvas() fyne.Canvas
	Go(room, id string)
	Perform(action string) bool
}

// View is an open search.
type View struct {
	screen *screen.Screen
	words  *words.Words
	shell  Shell
	dialog *widgets.Dialog
	table  *widgets.DataTable
	none   fyne.CanvasObject
	foot   *fyne.Container
}

// size is the room for the list in the smallest window.
var size = fyne.NewSize(640, 400)

// Open opens a search over the window.
func Open(s *screen.Screen, w *words.Words, shell Shell) *View {
	v := &View{screen: s, words: w, shell: shell, foot: container.NewStack()}
	v.table = widgets.NewDataTable(widgets.TableData{Sorted: -1})
	v.table.OpenOnTap = true
	v.table.OnOpen = v.goTo
	entry := widgets.NewSearchEntry(w.T("find.placeholder"), v.table, func(typed string) {
		v.screen.Search(typed)
		v.show()
	}, func() { v.goTo(v.table.Selected()) })
	v.none = container.NewCenter(widget.NewLabel(w.T("find.nothing")))
	v.show()
	v.dialog = widgets.ShowDialog(shell.Canvas(), widgets.DialogData{
		Title: w.T("find.title"), Size: size, Focus: entry,
		Content: container.NewBorder(entry, v.foot, nil, nil, container.NewStack(v.table, v.none)),
	})
	return v
}

// show lists what answers, the best one chosen.
func (v *View) show() {
	hits := v.screen.Hits()
	v.table.Set(widgets.TableData{
		Columns: []widgets.Column{
			{Width: 190, Grow: 3}, {Width: 140, Grow: 3}, {Width: 90, Right: true},
		},
		Rows: len(hits), Sorted: -1,
		Cell: func(row, column int) widgets.Cell { return v.cell(hits[row], column) },
	})
	v.table.Select(-1)
	v.table.Select(min(0, len(hits)-1))
	if len(hits) == 0 {
		v.none.Show()
	} else {
		v.none.Hide()
	}
	hint := v.words.T("find.hint")
	if more := v.screen.More(); more > 0 {
		hint = v.words.T("find.more", words.A{"count": more})
	}
	v.foot.Objects = []fyne.CanvasObject{widgets.NewText(hint)}
	v.foot.Refresh()
}

// icons are the signs of the kinds: those of the rooms that show them.
var icons = map[screen.Kind]theme.IconName{
	screen.Pot: theme.IconPots, screen.Client: theme.IconPots, screen.Plant: theme.IconPlantBook,
	screen.Recipe: theme.IconYear, screen.Product: theme.IconMix, screen.Site: theme.IconSite,
	screen.Spot: theme.IconSite, screen.Room: theme.IconForward, screen.Action: theme.IconEdit,
}

func (v *View) cell(hit screen.Hit, column int) widgets.Cell {
	switch column {
	case 0:
		return widgets.Cell{Text: hit.Title, Icon: icons[hit.Kind], Strong: true}
	case 1:
		return widgets.Cell{Text: hit.About, Soft: true}
	}
	return widgets.Cell{Text: hit.Keys, Soft: true}
}

// goTo closes the search and goes to a hit, or does it.
func (v *View) goTo(row int) {
	hits := v.screen.Hits()
	if row < 0 || row >= len(hits) || v.dialog.Closed() {
		return
	}
	v.dialog.Close()
	if hit := hits[row]; hit.Action != "" {
		v.shell.Perform(hit.Action)
	} else {
		v.shell.Go(hit.Room, hit.ID)
	}
}
