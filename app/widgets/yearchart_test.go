package widgets

import (
	"fmt"
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
	return YearData{Axis: axis, Rows: rows, DayLabel: dayLabel, Row: func(i int) YearRow {
		shift := i % 5 * 3
		spring, summer := yearDay(3, 12)+shift, yearDay(5, 16)-shift
		autumn, winter := yearDay(9, 18)+shift, yearDay(11, 20)
		row := YearRow{Label: names[i%len(names)], Detail: strconv.Itoa(31+i) + " L, terrace", Segments: []YearSegment{
			{Start: -40, End: spring, Category: 3, Label: "Conifer, ivy, heather", Icon: theme.IconFrost, Fixed: true},
			{Start: spring, End: summer, Category: 0, Label: "Pansy, tulip", Early: spring - 6, Late: spring + 9},
			{Start: summer, End: autumn, Category: 1, Label: "Pelargonium, bidens, trailing petunia", Early: summer - 8, Late: summer + 8, Pinned: i == 1},
			{Start: autumn, End: winter, Category: 2, Label: "Aster, heuchera", Early: autumn - 5, Late: autumn + 5, Ghost: i == 2},
			{Start: winter, End: 420, Category: 3, Label: "Conifer, ivy", Icon: theme.IconFrost},
		}}
		if i == 0 {
			row.Good = []YearRange{{yearDay(5, 8), yearDay(10, 2)}}
		}
		for d := summer + 14; d < autumn; d += 12 {
			row.Marks = append(row.Marks, YearMark{Day: d, Kind: MarkKind(len(row.Marks) % 2)})
		}
		return row
	}}
}

func TestYearChartLook(t *testing.T) {
	golden.Check(t, "yearchart", fyne.NewSize(900, 340), func() fyne.CanvasObject {
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
	left, top := c.drawn.labelWidth(900), c.drawn.headHeight()
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
