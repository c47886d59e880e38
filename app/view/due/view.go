// Package due draws what is due: the tasks of all pots by date, each with a box to
// tick.
package due

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	screen "fourturn/app/screen/due"
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

// View is the page of what is due.
type View struct {
	screen *screen.Screen
	words  *words.Words
	shell  Shell
	page   fyne.CanvasObject
	header *widgets.PageHeader
	list   *fyne.Container
	busy   *widgets.Busy
	rows   []*widgets.TaskRow // used again, so that the one with the focus keeps it
}

// New returns the page.
func New(s *screen.Screen, w *words.Words, shell Shell) *View {
	v := &View{screen: s, words: w, shell: shell, list: container.NewVBox()}
	v.header = widgets.NewPageHeader(w.T("due.title"), "")
	v.busy = widgets.NewBusy(widgets.BusyData{Title: w.T("due.working"), Done: -1}, nil)
	v.page = container.NewBorder(v.header, nil, nil, nil, container.NewStack(v.busy, container.NewVScroll(container.New(widgets.SideMargin{}, v.list))))
	v.Refresh()
	return v
}

// Object returns the page to be shown.
func (v *View) Object() fyne.CanvasObject { return v.page }

// Refresh shows what is due now.
func (v *View) Refresh() {
	v.header.Set(v.words.T("due.title"), v.screen.Next())
	v.list.Objects = nil
	if !v.screen.Known() {
		v.busy.Show()
		v.list.Refresh()
		return
	}
	v.busy.Hide()
	groups := v.screen.Groups()
	if len(groups) == 0 {
		v.list.Add(widgets.NewEmptyState(theme.DrawingDue, v.words.T("due.nothing_title"), v.words.T("due.nothing_text")))
	}
	feeds, n := false, 0
	for _, g := range groups {
		rows := container.NewVBox()
		for _, task := range g.Tasks {
			feeds = feeds || task.Feed()
			rows.Add(v.row(n, task))
			n++
		}
		v.list.Add(widgets.NewSection(g.Title, rows))
	}
	if feeds {
		v.list.Add(widgets.NewNotice(widgets.NoticeData{Kind: widgets.NoticeCaution, Title: words.Capital(v.words.T("words.severity.caution")), Text: v.words.T("due.safety")}))
	}
	v.list.Refresh()
}

// row is the nth row of the page, showing a task.
func (v *View) row(n int, task screen.Task) fyne.CanvasObject {
	icon, putOff := theme.IconFeeding, v.words.T("due.put_off_feed")
	if !task.Feed() {
		icon, putOff = theme.IconSwap, v.words.T("due.put_off_change")
	}
	actions := widgets.TaskActions{
		OnTick: func(bool) {
			v.tell(v.screen.Tick(task), v.words.T("due.ticked", words.A{"task": task.Title}))
		},
		OnSnooze:   func() { v.askSnooze(task, putOff) },
		SnoozeName: v.words.T("due.snooze_title"),
	}
	if !task.Figure.IsZero() {
		figure := task.Figure
		actions.OnOpen = func() { v.shell.ShowWorking(figure) }
	}
	data := widgets.TaskData{
		Icon: icon, Title: task.Title, Detail: task.Detail, Count: task.Count, When: task.When, Late: task.Late,
	}
	if n == len(v.rows) {
		v.rows = append(v.rows, widgets.NewTaskRow(data, actions))
	} else {
		v.rows[n].Set(data, actions)
	}
	return v.rows[n]
}

func (v *View) tell(err error, done string) {
	if err != nil {
		done = err.Error()
	}
	if done != "" {
		v.shell.Status(done)
	}
	v.Refresh()
}
