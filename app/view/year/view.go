// Package year draws every pot as a strip through the year, with change-outs as joints
// that can be moved by mouse and by arrow keys.
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
}

// View is the page of the year.
type View struct {
	screen *screen.Screen
	words  *words.Words
	shell  Shell
	page   fyne.CanvasObject
	header *widgets.PageHeader
	chart  *widgets.YearChart
	stack  *fyne.Container
	empty  fyne.CanvasObject
	about  fyne.CanvasObject // the line that tells of the chosen planting
	risk   *widgets.Segments
	title  *fyne.Container
	start  *widgets.Figure
	spread *widgets.Figure
	reason *widgets.Figure
	unpin  *widgets.Button
	place  widgets.YearPlace
}

// New returns the page.
func New(s *screen.Screen, w *words.Words, shell Shell) *View {
	v := &View{screen: s, words: w, shell: shell, place: widgets.YearPlace{Row: -1, Segment: -1}}
	names, _ := s.Risks()
	v.risk = widgets.NewSegments(w.T("year.risk_name"), names, func(i int) { v.try(s.SetRisk(i)) })
	v.header = widgets.NewPageHeader(w.T("year.title"), "", v.risk)
	v.chart = widgets.NewYearChart(widgets.YearData{})
	v.chart.OnSelect = v.tell
	v.chart.OnOpen = func(p widgets.YearPlace) { shell.GoTo("pots", s.Row(p.Row).ID) }
	v.chart.OnMoveJoint = func(row, segment, day int) { v.try(s.Move(row, segment, civil.Date(day))) }
	v.empty = widgets.NewEmptyState(theme.DrawingYear, w.T("year.empty_title"), w.T("year.empty_text"))
	v.stack = container.NewStack(v.empty, v.chart)
	v.about = v.foot()
	v.page = container.NewBorder(v.header, v.about, nil, nil, v.stack)
	v.Refresh()
	return v
}

// foot is the line that tells of the chosen planting.
func (v *View) foot() fyne.CanvasObject {
	v.title = container.NewStack()
	v.start = widgets.NewFigure(widgets.FigureData{Label: v.words.T("year.change_out"), Value: "–"}, nil)
	v.spread = widgets.NewFigure(widgets.FigureData{Label: v.words.T("year.spread"), Value: "–"}, nil)
	v.reason = widgets.NewFigure(widgets.FigureData{Label: v.words.T("year.reason"), Value: "–"}, nil)
	v.unpin = widgets.NewButton(widgets.ButtonData{Icon: theme.IconPin, Label: v.words.T("year.unpin")}, func() {
		v.try(v.screen.Unpin(v.place.Row, v.place.Segment))
	})
	v.unpin.Disable()
	figures := container.NewGridWithColumns(3, v.start, v.spread, v.reason)
	return container.NewBorder(nil, nil, nil, container.NewCenter(v.unpin), container.NewVBox(v.title, figures))
}

// Object returns the page to be shown.
func (v *View) Object() fyne.CanvasObject { return v.page }

// Refresh shows the year as it is now.
func (v *View) Refresh() {
	v.header.Set(v.words.T("year.title"), v.screen.Risk())
	_, chosen := v.screen.Risks()
	v.risk.SetChoice(chosen)
	if !v.screen.Known() || v.screen.Rows() == 0 {
		v.empty.Show()
		v.chart.Hide()
		v.about.Hide()
		return
	}
	v.empty.Hide()
	v.chart.Show()
	v.about.Show()
	v.chart.Set(v.data())
	v.tell(v.place)
}

func (v *View) data() widgets.YearData {
	first, last := v.screen.Span()
	axis := widgets.YearAxis{First: int(first), Last: int(last), Today: int(v.screen.Today()), TodayLabel: v.words.T("year.today")}
	for _, t := range v.screen.Ticks() {
		axis.Ticks = append(axis.Ticks, widgets.YearTick{Day: int(t.Day), Label: t.Label, Major: t.Year})
	}
	return widgets.YearData{
		Axis: axis, Rows: v.screen.Rows(), Row: v.row,
		DayLabel: func(day int) string { return v.screen.Day(civil.Date(day)) },
	}
}

func (v *View) row(i int) widgets.YearRow {
	r := v.screen.Row(i)
	row := widgets.YearRow{Label: r.Label, Detail: r.Detail}
	for _, s := range r.Segments {
		row.Segments = append(row.Segments, widgets.YearSegment{
			Start: int(s.From), End: int(s.To), Category: s.Season, Label: s.Label,
			Pinned: s.Pinned, Fixed: s.Happened, Early: int(s.Earliest), Late: int(s.Latest),
		})
		if s.Earliest < s.Latest {
			row.Good = append(row.Good, widgets.YearRange{Start: int(s.Earliest), End: int(s.Latest)})
		}
	}
	for _, f := range r.Feeds {
		kind := widgets.MarkDisc
		if f.Turn%2 == 1 {
			kind = widgets.MarkRing
		}
		row.Marks = append(row.Marks, widgets.YearMark{Day: int(f.Day), Kind: kind})
	}
	return row
}

// tell says below the strips what there is to say of a planting.
func (v *View) tell(p widgets.YearPlace) {
	v.place = p
	if !v.screen.Known() {
		return
	}
	told := v.screen.Tell(p.Row, p.Segment)
	v.unpin.Disable()
	v.title.Objects = []fyne.CanvasObject{widgets.NewText(v.words.T("year.hint"))}
	for _, f := range []struct {
		figure       *widgets.Figure
		label, value string
	}{{v.start, "year.change_out", told.Value}, {v.spread, "year.spread", told.Spread}, {v.reason, "year.reason", told.Reason}} {
		if f.value == "" {
			f.value = "–"
		}
		f.figure.Set(widgets.FigureData{Label: v.words.T(f.label), Value: f.value, Soft: f.figure == v.start && told.Soft})
	}
	v.start.SetOnWorking(nil)
	if told.Title != "" {
		v.title.Objects = []fyne.CanvasObject{widgets.NewText(told.Title)}
		if !told.Start.IsZero() {
			v.start.SetOnWorking(func() { v.shell.ShowWorking(told.Start) })
		}
		if told.Pinned {
			v.unpin.Enable()
		}
	}
	v.title.Refresh()
}

func (v *View) try(err error) {
	if err != nil {
		v.shell.Status(err.Error())
	}
	v.Refresh()
}
