// Package site draws a site: its year of weather with the four planting seasons under
// it, the dates that follow, and where they are from.
package site

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/layout"

	screen "fourturn/app/screen/site"
	"fourturn/app/theme"
	"fourturn/app/widgets"
	"fourturn/app/words"
	"fourturn/planner"
)

// Shell is what the page needs of the window around it.
type Shell interface {
	ShowWorking(f planner.Figure)
	Status(text string)
}

// found is how many stations a search lists.
const found = 8

// View is the page of a site.
type View struct {
	screen    *screen.Screen
	words     *words.Words
	shell     Shell
	page      fyne.CanvasObject
	header    *widgets.PageHeader
	search    *widgets.MeasureField
	elevation *widgets.MeasureField
	last      *widgets.MeasureField
	first     *widgets.MeasureField
	list      *fyne.Container
	chart     *widgets.ClimateChart
	body      *fyne.Container
	figures   *fyne.Container
	seasons   *fyne.Container
	known     *fyne.Container
	source    *fyne.Container
	empty     fyne.CanvasObject
}

// New returns the page.
func New(s *screen.Screen, w *words.Words, shell Shell) *View {
	v := &View{screen: s, words: w, shell: shell, list: container.NewVBox(), figures: container.New(widgets.Columns{Least: 180, Most: 4}), seasons: container.New(widgets.Columns{Least: 180, Most: 4}), source: container.NewStack()}
	v.header = widgets.NewPageHeader(w.T("site.title"), "")
	v.search = widgets.NewMeasureField(w.T("site.search"), w.T("site.search_help"), func(text string) error {
		v.find(text)
		return nil
	})
	v.elevation = widgets.NewMeasureField(w.T("site.elevation"), w.T("site.elevation_help"), func(text string) error { return v.after(s.SetElevation(text)) })
	v.last = widgets.NewMeasureField(w.T("site.last_frost"), w.T("site.frost_help"), func(text string) error { return v.after(s.SetFrost(true, text)) })
	v.first = widgets.NewMeasureField(w.T("site.first_frost"), w.T("site.frost_help"), func(text string) error { return v.after(s.SetFrost(false, text)) })
	v.chart = widgets.NewClimateChart(widgets.ClimateData{})
	v.empty = widgets.NewEmptyState(theme.DrawingSite, w.T("site.empty_title"), w.T("site.empty_text"))
	const chartHigh = 340 // to read degrees and weeks from it
	picture := container.New(widgets.LeastHigh(chartHigh), v.chart)
	v.known = container.NewVBox(picture,
		widgets.NewSection(w.T("site.seasons"), v.seasons), widgets.NewSection(w.T("site.freezes"), v.figures), v.source)
	fields := container.New(widgets.Columns{Least: 180, Most: 4}, v.search, v.elevation, v.last, v.first)
	v.body = container.NewVBox(fields, v.list, v.empty, v.known)
	v.page = container.NewBorder(v.header, nil, nil, nil, container.NewVScroll(container.New(widgets.SideMargin{}, v.body)))
	v.Refresh()
	return v
}

// Object returns the page to be shown.
func (v *View) Object() fyne.CanvasObject { return v.page }

func (v *View) after(err error) error {
	if err == nil {
		v.Refresh()
	}
	return err
}

// find lists the stations that fit what was typed, each to be taken.
func (v *View) find(text string) {
	v.list.Objects = nil
	for _, st := range v.screen.Find(text, found) {
		id := st.ID
		v.list.Add(widgets.NewButton(widgets.ButtonData{Icon: theme.IconSite, Label: st.Name, Kind: widgets.ButtonQuiet}, func() {
			if err := v.screen.SetStation(id); err != nil {
				v.shell.Status(err.Error())
			}
			v.list.Objects = nil
			v.search.SetValue("")
			v.Refresh()
		}))
	}
	if len(v.list.Objects) == 0 && text != "" {
		v.list.Add(widgets.NewText(v.words.T("site.none_found")))
	}
	v.list.Refresh()
}

// Refresh shows the site as it is now.
func (v *View) Refresh() {
	out := v.screen.Outlook()
	v.header.Set(v.words.T("site.title"), v.screen.Name())
	v.elevation.SetValue(v.screen.Elevation())
	last, first := v.screen.Frost()
	v.last.SetValue(last)
	v.first.SetValue(first)
	for _, field := range []*widgets.MeasureField{v.elevation, v.last, v.first} {
		if v.screen.Chosen() == nil {
			field.Disable()
		} else {
			field.Enable()
		}
	}
	if out == nil {
		v.known.Hide()
		v.empty.Show()
		v.body.Refresh()
		return
	}
	v.empty.Hide()
	v.known.Show()
	v.chart.Set(v.data())
	v.figures.Objects = nil
	for _, f := range v.screen.Figures() {
		v.figures.Add(v.figure(f))
	}
	v.figures.Refresh()
	v.seasons.Objects = nil
	for _, s := range v.screen.Seasons() {
		box := container.NewVBox(v.figure(s.Start))
		for _, text := range []string{s.Spread, s.Reason} {
			if text != "" {
				box.Add(container.New(layout.NewCustomPaddedLayout(0, 0, theme.Half, 0), widgets.NewText(text)))
			}
		}
		v.seasons.Add(box)
	}
	v.seasons.Refresh()
	v.source.Objects = []fyne.CanvasObject{widgets.NewText(v.screen.Source())}
	v.source.Refresh()
}

func (v *View) figure(f screen.Figure) fyne.CanvasObject {
	figure := widgets.NewFigure(widgets.FigureData{Label: f.Label, Value: f.Value, Soft: f.Soft}, nil)
	if !f.Figure.IsZero() {
		figure.SetOnWorking(func() { v.shell.ShowWorking(f.Figure) })
	}
	return figure
}

func (v *View) data() widgets.ClimateData {
	out := v.screen.Outlook()
	w := v.words
	days := len(out.Low)
	data := widgets.ClimateData{
		Axis: widgets.YearAxis{Last: days, Today: min(v.screen.Today().YearDay(), days) - 1, TodayLabel: w.T("site.today")},
		Low:  out.Low, High: out.High, FreezeOdds: out.Freeze, DayLength: out.Daylight,
		Legend:  widgets.ClimateLegend{High: w.T("site.high"), Low: w.T("site.low"), Freeze: w.T("site.freeze"), Day: w.T("site.daylight")},
		Reading: v.screen.Reading, Name: w.T("site.chart"),
	}
	for _, m := range v.screen.Months() {
		data.Axis.Ticks = append(data.Axis.Ticks, widgets.YearTick{Day: m.Day, Label: m.Label})
	}
	values, labels := v.screen.Scale()
	for i, value := range values {
		data.Temperatures = append(data.Temperatures, widgets.ChartTick{Value: value, Label: labels[i]})
	}
	const most, step = 24, 6 // hours
	for h := 0; h <= most; h += step {
		data.Hours = append(data.Hours, widgets.ChartTick{Value: float64(h), Label: w.T("site.hours", words.A{"n": h})})
	}
	data.Seasons = strips(v.screen.Seasons(), days)
	return data
}

// strips are the seasons as strips of one calendar year: the one that runs over the
// new year is drawn in two pieces.
func strips(seasons []screen.Season, days int) []widgets.YearSegment {
	var list []widgets.YearSegment
	var there []screen.Season
	for _, s := range seasons {
		if !s.From.IsZero() {
			there = append(there, s)
		}
	}
	for i, s := range there {
		start, end := s.From.MonthDay().YearDay()-1, there[(i+1)%len(there)].From.MonthDay().YearDay()-1
		segment := widgets.YearSegment{Start: start, End: end, Category: s.Index, Label: s.Name, Fixed: true}
		if end > start {
			list = append(list, segment)
			continue
		}
		before, after := segment, segment
		before.Start, before.End = 0, end
		after.End = days
		list = append([]widgets.YearSegment{before}, append(list, after)...)
	}
	return list
}
