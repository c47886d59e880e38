// Package year draws every pot as a strip through the year under the weather of its
// site, with change-outs as labels in the ground that can be moved by mouse and by
// arrow keys.
package year

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	screen "fourturn/app/screen/year"
	"fourturn/app/theme"
	"fourturn/app/widgets"
	"fourturn/app/words"
	"fourturn/planner"
	"fourturn/planner/civil"
)

// Shell is what the page needs of the window around it.
type Shell interface {
	ShowWorking(f planner.Figure)
	Status(text string)
	GoTo(room, id string)
	Canvas() fyne.Canvas
}

// View is the page of the year.
type View struct {
	screen *screen.Screen
	words  *words.Words
	shell  Shell
	page   fyne.CanvasObject
	header *widgets.PageHeader
	bar    *bar
	strips *strips
	foot   *foot
	story  *story
	empty  fyne.CanvasObject
	none   fyne.CanvasObject
	body   *fyne.Container
}

// New returns the page.
func New(s *screen.Screen, w *words.Words, shell Shell) *View {
	v := &View{screen: s, words: w, shell: shell}
	v.bar = newBar(v)
	v.header = widgets.NewPageHeader(w.T("year.title"), "", v.bar.today, v.bar.closer, v.bar.wider, v.bar.span)
	v.foot = newFoot(v)
	v.strips = newStrips(v)
	v.story = newStory(v)
	v.empty = widgets.NewEmptyState(theme.DrawingYear, w.T("year.empty_title"), w.T("year.empty_text"),
		widgets.NewButton(widgets.ButtonData{Icon: theme.IconPots, Label: w.T("year.empty_go"), Kind: widgets.ButtonMain}, func() { shell.GoTo("pots", "") }))
	again := widgets.NewButton(widgets.ButtonData{Label: w.T("year.show_all"), Kind: widgets.ButtonMain}, v.showAll)
	v.none = widgets.NewEmptyState(theme.DrawingSearch, w.T("year.none_found_title"), w.T("year.none_found_text"), again)
	v.body = container.New(barAbove{}, v.bar.object, container.NewStack(v.none, v.strips.chart), v.foot.object)
	v.page = container.NewBorder(v.header, nil, nil, nil, container.NewStack(v.empty, v.body, v.story.object))
	v.Refresh()
	return v
}

// Object returns the page to be shown.
func (v *View) Object() fyne.CanvasObject { return v.page }

// Open tells the story of a pot.
func (v *View) Open(id string) {
	if v.screen.RowOf(id) < 0 {
		v.screen.ShowAll()
	}
	if row := v.screen.RowOf(id); row >= 0 {
		v.strips.chart.Select(widgets.YearPlace{Row: row, Segment: v.screen.Standing(row)})
		v.story.open(row)
	}
}

// Refresh shows the year as it is now.
func (v *View) Refresh() {
	v.story.object.Hide()
	if !v.screen.Known() || v.screen.Empty() {
		v.header.Set(v.words.T("year.title"), "")
		v.header.SetTools()
		v.body.Hide()
		v.empty.Show()
		return
	}
	v.empty.Hide()
	if v.story.row >= 0 { // other pots may have come or gone
		v.story.row = v.screen.ChosenRow()
	}
	if v.story.row >= 0 {
		v.body.Hide()
		v.story.show()
		v.story.object.Show()
		return
	}
	v.body.Show()
	v.header.SetTools(v.bar.today, v.bar.closer, v.bar.wider, v.bar.span)
	v.showRows()
}

// showRows shows the pots that answer what is asked.
func (v *View) showRows() {
	v.header.Set(v.words.T("year.title"), v.screen.About())
	v.bar.show()
	if v.screen.Rows() == 0 {
		v.strips.chart.Hide()
		v.foot.object.Hide()
		v.none.Show()
		return
	}
	v.none.Hide()
	v.foot.object.Show()
	v.strips.show()
	v.strips.chart.Show()
	v.foot.show()
}

// showAll asks for nothing any more.
func (v *View) showAll() {
	v.screen.ShowAll()
	v.showRows()
	v.shell.Canvas().Focus(v.strips.chart.Body())
}

// try reports an edit that was refused and shows what is there now.
func (v *View) try(err error) {
	if err != nil {
		v.shell.Status(err.Error())
	}
	v.Refresh()
}

// move pins a change-out to a day.
func (v *View) move(row, segment, day int) { v.try(v.screen.Move(row, segment, civil.Date(day))) }

// turnPin holds on to the day of a change-out, or gives it back to the site.
func (v *View) turnPin(row, segment int) {
	told := v.screen.Tell(row, segment)
	switch {
	case !told.Movable:
	case told.Pinned:
		v.try(v.screen.Unpin(row, segment))
	default:
		v.try(v.screen.Pin(row, segment))
	}
}

// barAbove gives the bar the lines that it needs in the width, the foot its height, and
// the strips between them the rest.
type barAbove struct{}

func (barAbove) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	bar, strips, foot := objects[0], objects[1], objects[2]
	bar.Resize(fyne.NewSize(size.Width, bar.MinSize().Height)) // lets it wrap
	top := bar.MinSize().Height
	bar.Resize(fyne.NewSize(size.Width, top))
	below := float32(0)
	if foot.Visible() {
		below = foot.MinSize().Height + theme.Half
	}
	strips.Move(fyne.NewPos(0, top+theme.Half))
	strips.Resize(fyne.NewSize(size.Width, size.Height-top-below-theme.Half))
	foot.Move(fyne.NewPos(0, size.Height-below+theme.Half))
	foot.Resize(fyne.NewSize(size.Width, below-theme.Half))
}

func (barAbove) MinSize(objects []fyne.CanvasObject) fyne.Size {
	least := fyne.NewSize(0, theme.Step)
	for _, o := range objects {
		m := o.MinSize()
		least.Width = max(least.Width, m.Width)
		least.Height += m.Height
	}
	return least
}
