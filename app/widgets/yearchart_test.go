package widgets

import (
	"fmt"
	"image/color"
	"math"
	"slices"
	"strconv"
	"testing"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	"fourturn/app/theme"
	"fourturn/app/widgets/golden"
)

// yearDay counts days from 1 January of an ordinary year.
func yearDay(month, day int) int {
	return int(time.Date(2025, time.Month(month), day, 0, 0, 0, 0, time.UTC).Sub(
		time.Date(2025, 1, 1, 0, 0, 0, 0, time.UTC)).Hours() / 24)
}

func dayLabel(day int) string {
	return time.Date(2025, 1, 1+day, 0, 0, 0, 0, time.UTC).Format("2 Jan")
}

// exampleYear is an invented year of pots.
func exampleYear(rows int) YearData {
	names := []string{"Trough by the gate", "Round bowl", "Stone urn", "Window box, north side of the house", "Barrel", "Tall square"}
	axis := YearAxis{First: 0, Last: 365, Today: yearDay(4, 9), TodayLabel: "9 Apr"}
	for m := 1; m <= 12; m++ {
		label := time.Month(m).String()[:3]
		if m == 1 {
			label = "2025"
		}
		axis.Ticks = append(axis.Ticks, YearTick{Day: yearDay(m, 1), Label: label, Major: m == 1})
	}
	for d := 0; d < 365; d += 7 {
		axis.Weeks = append(axis.Weeks, YearTick{Day: d, Label: strconv.Itoa(time.Date(2025, 1, 1+d, 0, 0, 0, 0, time.UTC).Day())})
	}
	return YearData{Axis: axis, Sky: exampleSky(), Rows: rows, DayLabel: dayLabel, Row: func(i int) YearRow {
		shift := i % 5 * 3
		spring, summer := yearDay(3, 12)+shift, yearDay(5, 16)-shift
		autumn, winter := yearDay(9, 18)+shift, yearDay(11, 20)
		row := YearRow{Label: names[i%len(names)], Detail: strconv.Itoa(31+i) + " L, terrace", Segments: []YearSegment{
			{Start: -40, End: spring, Category: 3, Label: "Conifer, ivy, heather", Fixed: true},
			{Start: spring, End: summer, Category: 0, Label: "Pansy, tulip", Early: spring - 6, Late: spring + 9},
			{Start: summer, End: autumn, Category: 1, Label: "Pelargonium, bidens, trailing petunia", Early: summer - 8, Late: summer + 8, Pinned: i == 1},
			{Start: autumn, End: winter, Category: 2, Label: "Aster, heuchera", Early: autumn - 5, Late: autumn + 5, Ghost: i == 2},
			{Start: winter, End: 420, Category: 3, Label: "Conifer, ivy"},
		}}
		if i == 0 {
			row.Good = []YearRange{{summer - 4, summer + 5}, {autumn - 4, autumn + 4}}
		}
		for k := range row.Segments {
			s := &row.Segments[k]
			s.Plants = examplePlants[k%len(examplePlants)]
			if i != 3 {
				s.Profile = exampleProfile(s.End - s.Start)
			}
		}
		for d := summer + 14; d < autumn; d += 12 {
			row.Marks = append(row.Marks, YearMark{Day: d, Kind: MarkKind(len(row.Marks) % 2)})
		}
		return row
	}}
}

// examplePlants are invented plantings in small.
var examplePlants = [][]YearPlant{
	{{Mounding, rgb(0x6a4fa0), rgb(0x5f8f45)}, {Upright, rgb(0xe9c63b), rgb(0x5f8f45)}},
	{{Mounding, rgb(0xc8452f), rgb(0x4b7a35)}, {Trailing, rgb(0xf2d24a), rgb(0x7da553)}, {Upright, rgb(0x8a6bb8), rgb(0x4b7a35)}},
	{{Upright, rgb(0xf2efe4), rgb(0x39603a)}, {Trailing, rgb(0xd8e3d2), rgb(0x8fae8a)}},
}

func rgb(v uint32) color.NRGBA {
	return color.NRGBA{R: uint8(v >> 16), G: uint8(v >> 8), B: uint8(v), A: 255}
}

// exampleProfile grows in for six weeks, holds and fades.
func exampleProfile(days int) []float32 {
	profile := make([]float32, days)
	for d := range profile {
		t := float64(d)
		profile[d] = float32(math.Min(1, 0.35+t/65) * math.Min(1, 1.25-math.Max(0, t-70)/90))
	}
	return profile
}

// exampleSky is an invented year of weather.
func exampleSky() YearSky {
	sky := YearSky{
		Name: "The yard", Ticks: []ChartTick{{-10, "-10 °C"}, {0, "0 °C"}, {15, "15 °C"}, {30, "30 °C"}},
		Reading: func(day int) []string { return []string{dayLabel(day), "4 to 13 °C", "freeze 62%"} },
	}
	for d := range 365 {
		season := -math.Cos(2 * math.Pi * float64(d-20) / 365)
		sky.Low, sky.High = append(sky.Low, 5+10*season), append(sky.High, 14+12*season)
		sky.Freeze = append(sky.Freeze, 1/(1+math.Exp((5+10*season-2)*1.2)))
	}
	return sky
}

func TestYearChartLook(t *testing.T) {
	golden.Check(t, "yearchart", fyne.NewSize(900, 420), func() fyne.CanvasObject {
		c := NewYearChart(exampleYear(5))
		c.Select(YearPlace{Row: 0, Segment: 2, Joint: true})
		c.body.FocusGained()
		return c
	})
}

func TestYearChartLookZoomedAndMoving(t *testing.T) {
	golden.CheckWith(t, "yearchart-zoomed", theme.Options{Mode: theme.Light, ColorSafe: true, TextScale: 1.3}, fyne.NewSize(700, 300), func() fyne.CanvasObject {
		c := NewYearChart(exampleYear(12))
		c.Resize(fyne.NewSize(700, 300))
		c.SetZoom(6)
		c.ScrollToDay(yearDay(5, 20))
		c.Select(YearPlace{Row: 1, Segment: 2, Joint: true})
		c.body.TypedKey(&fyne.KeyEvent{Name: fyne.KeyReturn})
		c.body.TypedKey(&fyne.KeyEvent{Name: fyne.KeyPageDown})
		return c
	})
}

func newTestChart(t *testing.T, rows int) *YearChart {
	t.Helper()
	golden.App(t, theme.Options{})
	c := NewYearChart(exampleYear(rows))
	w := test.NewTempWindow(t, c)
	w.SetPadded(false)
	w.Resize(fyne.NewSize(900, 300))
	return c
}

func press(b fyne.Focusable, keys ...fyne.KeyName) {
	for _, k := range keys {
		b.TypedKey(&fyne.KeyEvent{Name: k})
	}
}

func TestYearChartMovesAJointByKeys(t *testing.T) {
	c := newTestChart(t, 3)
	var moved []string
	c.OnMoveJoint = func(row, segment, day int) {
		moved = append(moved, fmt.Sprintf("%d %d %s", row, segment, dayLabel(day)))
	}
	b := c.body
	press(b, fyne.KeyRight) // the joint of the second segment
	if got, want := c.Selected(), (YearPlace{0, 1, true}); got != want {
		t.Fatalf("selected %v, want %v", got, want)
	}
	press(b, fyne.KeyReturn, fyne.KeyRight, fyne.KeyRight, fyne.KeyPageDown, fyne.KeyLeft, fyne.KeyReturn)
	press(b, fyne.KeyReturn, fyne.KeyRight, fyne.KeyEscape) // given up
	press(b, fyne.KeyReturn, fyne.KeyReturn)                // put back where it was
	if want := []string{"0 1 20 Mar"}; !slices.Equal(moved, want) {
		t.Errorf("moved %q, want %q", moved, want)
	}
}

// A joint stops one day before its neighbours, however far it is dragged.
func TestYearChartKeepsNeighbours(t *testing.T) {
	c := newTestChart(t, 3)
	var days []int
	c.OnMoveJoint = func(_, _, day int) { days = append(days, day) }
	b := c.body
	press(b, fyne.KeyRight, fyne.KeyReturn, fyne.KeyEnd, fyne.KeyReturn)
	press(b, fyne.KeyReturn, fyne.KeyHome, fyne.KeyReturn)
	if want := []int{yearDay(5, 16) - 1, 0}; !slices.Equal(days, want) {
		t.Errorf("days %v, want %v", days, want)
	}
}

func TestYearChartMovesAJointByMouse(t *testing.T) {
	c := newTestChart(t, 3)
	var moved []int
	c.OnMoveJoint = func(row, segment, day int) { moved = append(moved, row, segment, day) }
	left, top := c.drawn.labelWidth(900), c.drawn.headHeight()+c.drawn.skyHeight()
	from := fyne.NewPos(left+c.body.x(yearDay(5, 13))+2, top+c.body.rowHeight()+20) // row 1
	by := c.body.zoom*10 + 0.3
	canvas := fyne.CurrentApp().Driver().CanvasForObject(c)
	test.MoveMouse(canvas, from)
	if c.body.hover == nil {
		t.Fatal("no joint under the pointer")
	}
	test.Drag(canvas, from.AddXY(by, 0), by, 0)
	if want := []int{1, 2, yearDay(5, 24)}; !slices.Equal(moved, want) {
		t.Errorf("moved %v, want %v", moved, want)
	}
}

func TestYearChartOpensOnSecondTapAndEnter(t *testing.T) {
	c := newTestChart(t, 3)
	var opened, selected []YearPlace
	c.OnOpen = func(p YearPlace) { opened = append(opened, p) }
	c.OnSelect = func(p YearPlace) { selected = append(selected, p) }
	at := fyne.NewPos(c.body.x(yearDay(7, 1)), 20)
	test.TapAt(c.body, at)
	test.TapAt(c.body, at)
	press(c.body, fyne.KeyReturn)
	summer := YearPlace{0, 2, false}
	if !slices.Equal(selected, []YearPlace{summer}) || !slices.Equal(opened, []YearPlace{summer, summer}) {
		t.Errorf("selected %v, opened %v", selected, opened)
	}
	press(c.body, fyne.KeyDown)
	if got := c.Selected(); got != (YearPlace{1, 2, false}) {
		t.Errorf("below summer is %v", got)
	}
	if got, want := c.AccessibilityLabel(), "Round bowl, Pelargonium, bidens, trailing petunia, 13 May – 20 Sep"; got != want {
		t.Errorf("name %q, want %q", got, want)
	}
}

// However many rows there are, only those in sight are asked for and drawn.
func TestYearChartDrawsOnlyWhatIsInSight(t *testing.T) {
	golden.App(t, theme.Options{})
	data := exampleYear(1000)
	asked := map[int]bool{}
	row := data.Row
	data.Row = func(i int) YearRow {
		asked[i] = true
		return row(i)
	}
	c := NewYearChart(data)
	w := test.NewTempWindow(t, c)
	w.Resize(fyne.NewSize(900, 400))
	first := len(test.LaidOutObjects(c))
	if len(asked) > 12 {
		t.Errorf("%d rows were asked for at the start", len(asked))
	}
	press(c.body, fyne.KeyEnd)
	if c.Selected().Row != 999 || !asked[999] {
		t.Errorf("End selects row %d", c.Selected().Row)
	}
	c.ScrollToRow(500)
	for range 300 {
		c.scrollBy(0, 37)
	}
	if len(c.body.drawn.rows)+len(c.body.drawn.spare) > 14 {
		t.Errorf("%d row views exist", len(c.body.drawn.rows)+len(c.body.drawn.spare))
	}
	if last := len(test.LaidOutObjects(c)); last > first+60 {
		t.Errorf("%d objects after scrolling, %d before", last, first)
	}
}

func TestYearChartZoomKeepsTheMiddle(t *testing.T) {
	c := newTestChart(t, 3)
	c.SetZoom(8)
	c.ScrollToDay(200)
	middle := func() int { return c.body.day(c.scroll.Offset.X + c.scroll.Size().Width/2) }
	for _, r := range "++-" {
		c.body.TypedRune(r)
		if m := middle(); m < 199 || m > 201 {
			t.Errorf("after %c the middle is day %d", r, m)
		}
	}
	c.body.TypedRune('0')
	if w := c.body.MinSize().Width; w > c.scroll.Size().Width+0.5 {
		t.Errorf("all days take %v of %v", w, c.scroll.Size().Width)
	}
}

func TestYearChartSurvivesEmptyData(t *testing.T) {
	golden.App(t, theme.Options{})
	c := NewYearChart(YearData{})
	w := test.NewTempWindow(t, c)
	w.Resize(fyne.NewSize(500, 300))
	for _, k := range []fyne.KeyName{fyne.KeyUp, fyne.KeyDown, fyne.KeyLeft, fyne.KeyRight, fyne.KeyHome, fyne.KeyEnd, fyne.KeyReturn, fyne.KeyEscape} {
		press(c.body, k)
	}
	c.Set(exampleYear(2))
	c.Set(YearData{Axis: YearAxis{First: 5, Last: 5}})
	test.TapAt(c.body, fyne.NewPos(3, 3))
	w.Canvas().Capture()
}

// held plays the keys that are held with the wheel.
func held(c *YearChart, keys fyne.KeyModifier) { c.modifiers = func() fyne.KeyModifier { return keys } }

func TestYearChartWheelScrollsAndZooms(t *testing.T) {
	c := newTestChart(t, 50)
	c.SetZoom(8)
	c.ScrollToDay(200)
	x, y := c.scroll.Offset.X, c.scroll.Offset.Y
	test.Scroll(fyne.CurrentApp().Driver().CanvasForObject(c), fyne.NewPos(500, 200), 0, -40)
	if c.scroll.Offset.Y <= y || c.scroll.Offset.X != x {
		t.Errorf("the wheel went from %v, %v to %v", x, y, c.scroll.Offset)
	}
	held(c, fyne.KeyModifierShift)
	y = c.scroll.Offset.Y
	c.wheel.Scrolled(&fyne.ScrollEvent{Scrolled: fyne.NewDelta(0, -40)})
	if c.scroll.Offset.X <= x || c.scroll.Offset.Y != y {
		t.Errorf("with Shift the wheel went from %v, %v to %v", x, y, c.scroll.Offset)
	}
	held(c, fyne.KeyModifierShortcutDefault)
	at := fyne.NewPos(100, 20)
	day := (c.scroll.Offset.X + at.X) / c.body.zoom
	c.wheel.Scrolled(&fyne.ScrollEvent{PointEvent: fyne.PointEvent{Position: at}, Scrolled: fyne.NewDelta(0, 50)})
	if c.body.zoom <= 8 {
		t.Error("with Control the wheel does not zoom")
	}
	if now := (c.scroll.Offset.X + at.X) / c.body.zoom; math.Abs(float64(now-day)) > 0.2 {
		t.Errorf("under the pointer was day %v and is %v", day, now)
	}
}

// The zoom goes from a month to all days, whatever is asked.
func TestYearChartZoomHasEnds(t *testing.T) {
	c := newTestChart(t, 3)
	c.SetZoom(1000)
	if got := c.Days(); got != leastDays {
		t.Errorf("the least are %d days", got)
	}
	c.SetZoom(0.001)
	if got := c.Days(); got != 365 {
		t.Errorf("the most are %d days", got)
	}
	var told []int
	c.OnZoom = func(days int) { told = append(told, days) }
	c.SetZoom(4)
	if len(told) != 1 {
		t.Errorf("told of %v", told)
	}
}

// The days that were asked for stay in sight when the width changes.
func TestYearChartKeepsItsDays(t *testing.T) {
	c := newTestChart(t, 3)
	c.ShowDays(90, 200)
	for _, width := range []float32{500, 1300, 900} {
		c.Resize(fyne.NewSize(width, 300))
		if got := c.Days(); got != 90 {
			t.Errorf("at %v there are %d days", width, got)
		}
		if m := c.body.day(c.scroll.Offset.X + c.scroll.Size().Width/2); m < 199 || m > 201 {
			t.Errorf("at %v the middle is day %d", width, m)
		}
	}
}

// A step sideways moves the pictures of rows and draws them anew only now and then.
func TestYearChartDrawsAheadSideways(t *testing.T) {
	c := newTestChart(t, 50)
	c.SetZoom(8)
	c.ScrollToDay(100)
	from, _ := c.body.span()
	changes := 0
	for range 100 {
		c.scrollBy(3, 0)
		now, width := c.body.span()
		if now != from {
			from = now
			changes++
		}
		if c.body.offset.X < now || c.body.offset.X+c.body.view.Width > now+width {
			t.Fatalf("at %v only %v to %v is drawn", c.body.offset.X, now, now+width)
		}
	}
	if changes > 3 {
		t.Errorf("300 units were drawn %d times", changes)
	}
}

func TestYearChartSaysWhatAMoveCosts(t *testing.T) {
	c := newTestChart(t, 3)
	data := exampleYear(3)
	data.Moving = func(p YearPlace, day int) YearMove {
		row := data.Row(p.Row)
		row.Segments[p.Segment].Start, row.Segments[p.Segment-1].End = day, day
		return YearMove{Title: dayLabel(day), Lines: []string{"costs 1.4 days"}, Bad: day > yearDay(3, 20), Row: &row}
	}
	c.Set(data)
	press(c.body, fyne.KeyRight, fyne.KeyReturn, fyne.KeyRight)
	if got, want := c.AccessibilityLabel(), "Trough by the gate, Pansy, tulip, 13 Mar, costs 1.4 days"; got != want {
		t.Errorf("said %q, want %q", got, want)
	}
	if got := c.body.drawn.rows[0].row.Segments[1].Start; got != yearDay(3, 13) {
		t.Errorf("the row shows the change-out on %s", dayLabel(got))
	}
	press(c.body, fyne.KeyEscape)
	if got := c.body.drawn.rows[0].row.Segments[1].Start; got != yearDay(3, 12) {
		t.Errorf("given up, the row shows the change-out on %s", dayLabel(got))
	}
}
