package year

import (
	screen "fourturn/app/screen/year"
	"fourturn/app/widgets"
	"fourturn/planner/civil"
)

// strips is the chart of the pots that are shown.
type strips struct {
	view  *View
	chart *widgets.YearChart
	begun bool // the days to begin with are shown
}

func newStrips(v *View) *strips {
	s := &strips{view: v, chart: widgets.NewYearChart(widgets.YearData{})}
	s.chart.OnSelect = s.selected
	s.chart.OnOpen = func(p widgets.YearPlace) { v.story.open(p.Row) }
	s.chart.OnMoveJoint = v.move
	s.chart.OnZoom = v.bar.showSpan
	s.chart.OnRune = s.typed
	return s
}

// show brings the chart up to date; what was selected stays selected.
func (s *strips) show() {
	place := s.chart.Selected()
	place.Row = s.view.screen.ChosenRow()
	if place.Row < 0 {
		place = widgets.YearPlace{Segment: -1}
	}
	s.chart.Set(s.data())
	s.chart.Select(place)
	if !s.begun {
		s.begun = true
		s.showDays(spans[oneYear].days)
	}
}

// showDays shows so many days with today near the left.
func (s *strips) showDays(days int) {
	s.chart.ShowDays(days, s.middleOf(days))
	s.view.bar.showSpan(days)
}

// middleOf returns the day in the middle of so many with today near the left.
func (s *strips) middleOf(days int) int {
	const ahead = 0.3 // of the span, from today to its middle
	return int(s.view.screen.Today()) + int(ahead*float64(days))
}

// zoomBy zooms in by steps, or out.
func (s *strips) zoomBy(steps int) {
	letter := '+'
	if steps < 0 {
		letter = '-'
	}
	s.chart.Body().TypedRune(letter)
}

// typed does what a letter stands for.
func (s *strips) typed(letter rune, place widgets.YearPlace) {
	switch letter {
	case 'p', 'P':
		s.view.turnPin(place.Row, place.Segment)
	case 's', 'S':
		s.view.askSwap(place.Row, place.Segment)
	case 'r', 'R':
		s.view.askRefuse(place.Row, place.Segment)
	case '/':
		s.view.shell.Canvas().Focus(s.view.bar.search)
	}
}

func (s *strips) selected(p widgets.YearPlace) {
	if p.Segment < 0 {
		s.view.foot.show()
		return
	}
	before := s.view.screen.SiteName()
	s.view.screen.Choose(p.Row)
	if s.view.screen.SiteName() != before {
		s.chart.Set(s.data()) // another sky
	}
	s.view.foot.show()
}

func (s *strips) data() widgets.YearData {
	v := s.view
	first, last := v.screen.Span()
	axis := widgets.YearAxis{First: int(first), Last: int(last), Today: int(v.screen.Today()), TodayLabel: v.words.T("year.today")}
	for _, t := range v.screen.Ticks() {
		axis.Ticks = append(axis.Ticks, widgets.YearTick{Day: int(t.Day), Label: t.Label, Major: t.Year})
	}
	for _, t := range v.screen.Weeks() {
		axis.Weeks = append(axis.Weeks, widgets.YearTick{Day: int(t.Day), Label: t.Label})
	}
	return widgets.YearData{
		Axis: axis, Sky: s.sky(), Rows: v.screen.Rows(), Row: s.row,
		DayLabel: func(day int) string { return v.screen.Day(civil.Date(day)) },
		Moving:   func(p widgets.YearPlace, day int) widgets.YearMove { return s.moving(p.Row, p.Segment, day) },
	}
}

// moving says what moving a change-out to a day means, and draws the row with it.
func (s *strips) moving(row, segment, day int) widgets.YearMove {
	told := s.view.screen.Moving(row, segment, civil.Date(day))
	as := s.row(row)
	if before := segment - 1; before >= 0 && as.Segments[before].End == as.Segments[segment].Start {
		as.Segments[before].End = day
	}
	as.Segments[segment].Start = day
	return widgets.YearMove{Title: told.Title, Lines: told.Lines, Bad: told.Bad, Row: &as}
}

func (s *strips) sky() widgets.YearSky {
	from := s.view.screen.Sky()
	sky := widgets.YearSky{
		Name: from.Name, Low: from.Low, High: from.High, Freeze: from.Freeze,
		Reading: func(day int) []string { return s.view.screen.Reading(civil.Date(day)) },
	}
	for i, v := range from.Values {
		sky.Ticks = append(sky.Ticks, widgets.ChartTick{Value: v, Label: from.Labels[i]})
	}
	return sky
}

func (s *strips) row(i int) widgets.YearRow {
	r := s.view.screen.Row(i)
	row := widgets.YearRow{Label: r.Label, Detail: r.Detail}
	for _, segment := range r.Segments {
		row.Segments = append(row.Segments, segmentOf(segment))
		if segment.GoodFrom < segment.GoodTo {
			row.Good = append(row.Good, widgets.YearRange{Start: int(segment.GoodFrom), End: int(segment.GoodTo) + 1})
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

func segmentOf(s screen.Segment) widgets.YearSegment {
	segment := widgets.YearSegment{
		Start: int(s.From), End: int(s.To), Category: s.Season, Label: s.Label,
		Profile: s.Profile, Pinned: s.Pinned, Fixed: s.Happened, Early: int(s.Earliest), Late: int(s.Latest),
	}
	for _, p := range s.Plants {
		segment.Plants = append(segment.Plants, widgets.YearPlant{
			Habit: habits[p.Habit], Flower: widgets.PlantColour(p.Flower, "green"), Leaf: widgets.PlantColour(p.Leaf, "green"),
		})
	}
	return segment
}

var habits = map[screen.Habit]widgets.Habit{screen.Mounding: widgets.Mounding, screen.Upright: widgets.Upright, screen.Trailing: widgets.Trailing}
