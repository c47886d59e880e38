package site

import (
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/layout"

	screen "fourturn/app/screen/site"
	"fourturn/app/theme"
	"fourturn/app/widgets"
	"fourturn/app/words"
)

// yearPart is the year of a site: its picture at a risk, the seasons, the freezes, the
// cold and the heat, and the months.
type yearPart struct {
	view      *View
	risk      *widgets.ScaleField
	chart     *widgets.ClimateChart
	told      *fyne.Container
	seasons   *fyne.Container
	threshold *widgets.MeasureField
	freezes   *fyne.Container
	extremes  *fyne.Container
	days      *widgets.MeasureField
	above     *widgets.MeasureField
	heat      *fyne.Container
	months    *fyne.Container
	source    *fyne.Container
	box       *fyne.Container
}

// figures is how figures stand side by side.
var figures = widgets.Columns{Least: 180, Most: 4}

func newYearPart(v *View) *yearPart {
	w, s := v.words, v.screen
	p := &yearPart{
		view: v, told: container.NewVBox(), seasons: container.New(figures), freezes: container.New(figures), extremes: container.New(figures),
		heat: container.New(figures), months: container.NewStack(), source: container.NewStack(),
	}
	p.risk = widgets.NewScaleField(widgets.ScaleData{})
	p.risk.OnTry = func(percent int) {
		s.TryRisk(percent)
		p.refreshDates()
		v.body.Refresh() // what is below makes room
	}
	p.risk.OnTake = func(percent int) { v.try(s.TakeRisk(percent)) }
	p.chart = widgets.NewClimateChart(widgets.ClimateData{})
	p.threshold = widgets.NewMeasureField(w.T("site.threshold"), w.T("site.threshold_help"), func(text string) error { return v.after(s.SetThreshold(text)) })
	p.days = widgets.NewMeasureField(w.T("site.run_days"), w.T("site.run_days_help"), func(text string) error { return v.after(s.SetRunDays(text)) })
	p.above = widgets.NewMeasureField(w.T("site.run_above"), w.T("site.run_above_help"), func(text string) error { return v.after(s.SetRunAbove(text)) })
	const chartHigh = 340 // to read degrees and weeks from it
	p.box = container.NewVBox(
		p.risk, container.New(widgets.LeastHigh(chartHigh), p.chart), p.told,
		widgets.NewSection(w.T("site.seasons"), p.seasons),
		widgets.NewSection(w.T("site.asked"), beside(p.freezes, p.threshold)),
		widgets.NewSection(w.T("site.heat"), container.NewVBox(p.extremes, beside(p.heat, p.days, p.above))),
		widgets.NewSection(w.T("site.months"), container.NewVBox(p.months, widgets.NewText(w.T("site.months_note")))),
		p.source,
	)
	return p
}

// beside puts what is asked for before what is answered.
func beside(answer fyne.CanvasObject, fields ...fyne.CanvasObject) fyne.CanvasObject {
	const fieldWide = 130
	asked := container.New(widgets.Columns{Least: fieldWide, Most: len(fields)}, fields...)
	return container.New(askedLayout{wide: float32(len(fields)) * (fieldWide + theme.Step2)}, asked, answer)
}

// askedLayout gives the first object a width of its own and the second the rest.
type askedLayout struct{ wide float32 }

func (l askedLayout) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	objects[0].Move(fyne.NewPos(0, 0))
	objects[0].Resize(fyne.NewSize(l.wide-theme.Step2, objects[0].MinSize().Height))
	objects[1].Move(fyne.NewPos(l.wide, 0))
	objects[1].Resize(fyne.NewSize(size.Width-l.wide, size.Height))
}

func (l askedLayout) MinSize(objects []fyne.CanvasObject) fyne.Size {
	return fyne.NewSize(l.wide+objects[1].MinSize().Width, max(objects[0].MinSize().Height, objects[1].MinSize().Height))
}

func (p *yearPart) refresh() {
	s := p.view.screen
	p.chart.Set(p.data())
	p.threshold.SetValue(s.Threshold())
	days, above := s.Run()
	p.days.SetValue(days)
	p.above.SetValue(above)
	p.view.fill(p.extremes, s.Extremes())
	p.months.Objects = []fyne.CanvasObject{p.monthTable()}
	p.source.Objects = []fyne.CanvasObject{widgets.NewText(s.Source())}
	p.refreshDates()
}

// refreshDates shows what moves with the risk.
func (p *yearPart) refreshDates() {
	v, s := p.view, p.view.screen
	seasons := s.Seasons() // first: it settles the risk
	data := widgets.ScaleData{
		Label: v.words.T("site.risk"), Words: s.RiskWords(s.Risk()), Least: screen.LeastRisk, Most: screen.MostRisk, Value: s.Risk(),
	}
	for _, m := range s.RiskMarks() {
		data.Marks = append(data.Marks, widgets.ScaleMark{Value: m.Percent, Label: m.Label})
	}
	p.risk.Set(data)
	p.chart.SetSeasons(strips(seasons, p.chart.Days()))
	p.seasons.Objects = nil
	for _, one := range seasons {
		box := container.NewVBox(v.figure(one.Start))
		for _, text := range []string{one.Spread, one.Reason} {
			if text != "" {
				box.Add(indented(text))
			}
		}
		p.seasons.Add(box)
	}
	p.seasons.Refresh()
	v.fill(p.freezes, s.Freezes())
	v.fill(p.heat, s.Heat())
	p.tell(s.Told())
}

// tell says what is not usual about the place, in one remark.
func (p *yearPart) tell(lines []string) {
	p.told.Objects = nil
	if len(lines) > 0 {
		text := strings.Join(lines, "\n")
		p.told.Add(widgets.NewNotice(widgets.NoticeData{Kind: widgets.NoticeNote, Title: p.view.words.T("site.told_title"), Text: text}))
	}
	p.told.Refresh()
}

// indented is a remark under a figure.
func indented(text string) fyne.CanvasObject {
	return container.New(layout.NewCustomPaddedLayout(0, 0, theme.Half, 0), widgets.NewText(text))
}

func (p *yearPart) data() widgets.ClimateData {
	s, w := p.view.screen, p.view.words
	out := s.Outlook()
	days := len(out.Low)
	data := widgets.ClimateData{
		Axis: widgets.YearAxis{Last: days, Today: min(s.Today().YearDay(), days) - 1, TodayLabel: w.T("site.today")},
		Low:  out.Low, High: out.High, FreezeOdds: out.Freeze, DayLength: out.Daylight,
		Legend:  widgets.ClimateLegend{High: about(w.T("site.high"), out.Warmth), Low: about(w.T("site.low"), out.Warmth), Freeze: about(w.T("site.freeze"), out.Estimated || out.Warmth), Day: w.T("site.daylight")},
		Reading: s.Reading, ReadingAt: s.ReadingAt, Name: w.T("site.chart"),
	}
	data.LevelStep, data.LevelZero = s.Degree()
	for _, m := range s.Months() {
		data.Axis.Ticks = append(data.Axis.Ticks, widgets.YearTick{Day: m.Day, Label: m.Label})
	}
	values, labels := s.Scale()
	for i, value := range values {
		data.Temperatures = append(data.Temperatures, widgets.ChartTick{Value: value, Label: labels[i]})
	}
	const most, step = 24, 6 // hours
	for h := 0; h <= most; h += step {
		data.Hours = append(data.Hours, widgets.ChartTick{Value: float64(h), Label: w.T("site.hours", words.A{"n": h})})
	}
	data.Seasons = strips(s.Seasons(), days)
	return data
}

// about marks a word whose figures are estimated.
func about(word string, estimated bool) string {
	if estimated {
		return "≈ " + word
	}
	return word
}

// strips are the seasons as strips of one calendar year: the one that runs over the
// new year is drawn in two pieces, the one that never ends in one.
func strips(seasons []screen.Season, days int) []widgets.YearSegment {
	var list []widgets.YearSegment
	var there []screen.Season
	for _, s := range seasons {
		if s.Exists && s.From.IsZero() {
			return []widgets.YearSegment{{Start: 0, End: days, Category: s.Index, Label: s.Name, Fixed: true}}
		}
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
