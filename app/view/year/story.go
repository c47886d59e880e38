package year

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	screen "fourturn/app/screen/year"
	"fourturn/app/theme"
	"fourturn/app/widgets"
)

// story is the page of one pot: its strip, and each planting from today on with what is
// planted, when and why.
type story struct {
	view     *View
	row      int // that is told, or -1
	strip    *widgets.YearChart
	chapters []*chapter
	list     *fyne.Container
	bans     *fyne.Container
	banned   *widgets.Section
	object   fyne.CanvasObject

	back, before, next *widgets.Button
}

// chapter is one planting of the story.
type chapter struct {
	story   *story
	segment int
	card    *widgets.Section
	start   *widgets.Figure
	why     *widgets.Line
	plants  *widgets.Line
	refused *widgets.Line
	figures []*widgets.Figure
	grid    *fyne.Container

	pin, swap, refuse *widgets.Button
}

// stripHigh is the months, the weather and one strip.
const stripHigh = 156

func newStory(v *View) *story {
	s := &story{view: v, row: -1, list: container.NewVBox(), bans: container.NewVBox()}
	w := v.words
	s.back = widgets.NewButton(widgets.ButtonData{Icon: theme.IconBack, Label: w.T("year.back")}, func() { s.open(-1) })
	s.before = widgets.NewButton(widgets.ButtonData{Icon: theme.IconUp, Kind: widgets.ButtonQuiet, Name: w.T("year.before_pot")}, func() { s.open(s.row - 1) })
	s.next = widgets.NewButton(widgets.ButtonData{Icon: theme.IconDown, Kind: widgets.ButtonQuiet, Name: w.T("year.next_pot")}, func() { s.open(s.row + 1) })
	for _, b := range []*widgets.Button{s.before, s.next} {
		b.OnHint = v.shell.Status
	}
	s.strip = widgets.NewYearChart(widgets.YearData{})
	s.strip.OnMoveJoint = func(_, segment, day int) { v.move(s.row, segment, day) }
	s.banned = widgets.NewSection(w.T("year.refused_here"), s.bans)
	pages := container.NewVBox(s.list, s.banned)
	s.object = container.NewBorder(container.New(widgets.LeastHigh(stripHigh), s.strip), nil, nil, nil,
		container.NewVScroll(container.New(widgets.SideMargin{}, pages)))
	return s
}

// open tells of the pot of a row, or of none for -1.
func (s *story) open(row int) {
	s.row = row
	if row >= 0 {
		s.view.screen.Choose(row)
	}
	s.view.Refresh()
	if row >= 0 {
		s.strip.ShowDays(spans[oneYear].days, s.view.strips.middleOf(spans[oneYear].days))
		s.view.shell.Canvas().Focus(s.back)
		return
	}
	s.view.shell.Canvas().Focus(s.view.strips.chart.Body())
}

// show tells the story as it is now.
func (s *story) show() {
	v := s.view
	told := v.screen.Story(s.row)
	v.header.Set(told.Title, told.About)
	v.header.SetTools(s.before, s.next, s.back)
	enable(s.before, s.row > 0)
	enable(s.next, s.row+1 < v.screen.Rows())
	data := v.strips.data()
	data.Rows, data.Row = 1, func(int) widgets.YearRow { return v.strips.row(s.row) }
	data.Moving = func(p widgets.YearPlace, day int) widgets.YearMove { return v.strips.moving(s.row, p.Segment, day) }
	s.strip.Set(data)
	for len(s.chapters) < len(told.Chapters) {
		c := s.newChapter()
		s.chapters = append(s.chapters, c)
		s.list.Add(c.card)
	}
	for i, c := range s.chapters {
		if i >= len(told.Chapters) {
			c.card.Hide()
			continue
		}
		c.card.Show()
		c.show(told.Chapters[i])
	}
	s.showBans(told.Bans)
}

func (s *story) newChapter() *chapter {
	v := s.view
	c := &chapter{story: s, grid: container.New(widgets.Columns{Least: 150, Most: 4})}
	c.start = widgets.NewFigure(widgets.FigureData{Style: widgets.FigureBare}, nil)
	c.why, c.plants, c.refused = widgets.NewLine("", false), widgets.NewLine("", true), widgets.NewLine("", false)
	c.pin = widgets.NewButton(widgets.ButtonData{Icon: theme.IconPin, Label: v.words.T("year.pin")}, func() { v.turnPin(s.row, c.segment) })
	c.swap = widgets.NewButton(widgets.ButtonData{Icon: theme.IconSwap, Label: v.words.T("year.swap"), Kind: widgets.ButtonQuiet}, func() { v.askSwap(s.row, c.segment) })
	c.refuse = widgets.NewButton(widgets.ButtonData{Icon: theme.IconRefuse, Label: v.words.T("year.refuse"), Kind: widgets.ButtonQuiet}, func() { v.askRefuse(s.row, c.segment) })
	box := container.NewVBox(c.plants, container.NewBorder(nil, nil, c.start, nil, c.why), c.refused, c.grid)
	c.card = widgets.NewCard("", box, c.refuse, c.swap, c.pin)
	return c
}

func (c *chapter) show(told screen.Chapter) {
	v := c.story.view
	c.segment = told.Segment
	c.card.SetHeading(told.Title)
	c.plants.Set(told.Plants)
	c.why.Set(told.Told.Why)
	c.refused.Set(told.Refused)
	if told.Refused == "" {
		c.refused.Hide()
	} else {
		c.refused.Show()
	}
	v.setFigure(c.start, screen.Figure{Value: told.Told.Value, Soft: told.Told.Soft, Figure: told.Told.Start}, widgets.FigureBare)
	setPin(c.pin, told.Told, v)
	for len(c.figures) < len(told.Figures) {
		f := widgets.NewFigure(widgets.FigureData{}, nil)
		c.figures = append(c.figures, f)
		c.grid.Add(f)
	}
	for i, f := range c.figures {
		if i >= len(told.Figures) {
			f.Hide()
			continue
		}
		f.Show()
		v.setFigure(f, told.Figures[i], widgets.FigureStacked)
	}
	c.card.Refresh()
}

// showBans lists what is refused, each to be allowed again.
func (s *story) showBans(bans []string) {
	s.bans.Objects = nil
	for i, ban := range bans {
		allow := widgets.NewButton(widgets.ButtonData{Label: s.view.words.T("year.allow"), Kind: widgets.ButtonQuiet}, func() {
			s.view.try(s.view.screen.Allow(s.row, i))
		})
		s.bans.Add(container.NewBorder(nil, nil, nil, allow, widgets.NewLine(ban, false)))
	}
	if len(bans) == 0 {
		s.banned.Hide()
		return
	}
	s.banned.Show()
	s.banned.Refresh()
}

func enable(b *widgets.Button, on bool) {
	if on {
		b.Enable()
	} else {
		b.Disable()
	}
}

// setPin shows on a button whether a change-out can be pinned, and is.
func setPin(b *widgets.Button, told screen.Told, v *View) {
	label := v.words.T("year.pin")
	if told.Pinned {
		label = v.words.T("year.unpin")
	}
	b.Set(widgets.ButtonData{Icon: theme.IconPin, Label: label})
	enable(b, told.Movable)
}

// setFigure shows a figure whose working can be opened.
func (v *View) setFigure(f *widgets.Figure, of screen.Figure, style widgets.FigureStyle) {
	f.Set(widgets.FigureData{Label: of.Label, Value: of.Value, Soft: of.Soft, Style: style})
	f.SetOnWorking(nil)
	if !of.Figure.IsZero() {
		f.SetOnWorking(func() { v.shell.ShowWorking(of.Figure) })
	}
}
