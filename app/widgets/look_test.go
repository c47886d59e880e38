package widgets

import (
	"testing"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/test"
	fynetheme "fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"
	"pgregory.net/rapid"

	"fourturn/app/theme"
	"fourturn/app/widgets/golden"
)

// page is one page with most of the parts on it.
func page() fyne.CanvasObject {
	do := TaskActions{OnTick: func(bool) {}, OnSnooze: func() {}}
	field := NewMeasureField("Length at the top", "cm, m, in or ft", nil)
	field.SetValue("90 cm")
	chart := NewYearChart(exampleYear(3))
	left := container.NewVBox(
		NewCard("To put in", container.NewVBox(
			NewFigure(FigureData{Label: "Mix", Value: "38.2", Unit: "L", Style: FigureRow}, func() {}),
			NewFigure(FigureData{Label: "Charge", Value: "132", Unit: "g", Style: FigureRow, Soft: true}, func() {}))),
		field,
		NewTaskRow(TaskData{Icon: theme.IconFeeding, Title: "Feed with 20-20-20", Count: "12 pots", When: "7 Apr", Late: "2 days late"}, do),
		NewNotice(NoticeData{Kind: NoticeWarning, Title: "Warning: the charge is spent before the autumn"}))
	return container.NewBorder(nil, nil, NewNavRail(rooms(), nil), nil, container.NewPadded(container.NewBorder(
		NewPageHeader("Pots", "12 pots at two places", NewButton(ButtonData{Icon: theme.IconAdd, Label: "Add a pot", Kind: ButtonMain}, nil)),
		nil, nil, nil, container.NewGridWithRows(2, container.NewGridWithColumns(2, left, NewPotDrawing(bowl(), fyne.NewSize(200, 200))), chart))))
}

func TestPageInEveryLook(t *testing.T) {
	size := fyne.NewSize(900, 600)
	golden.CheckWith(t, "whole-light", theme.Options{Mode: theme.Light}, size, page)
	golden.CheckWith(t, "whole-dark", theme.Options{Mode: theme.Dark}, size, page)
	golden.CheckWith(t, "whole-light-contrast", theme.Options{Mode: theme.Light, HighContrast: true}, size, page)
	golden.CheckWith(t, "whole-dark-contrast", theme.Options{Mode: theme.Dark, HighContrast: true}, size, page)
	golden.CheckWith(t, "whole-dark-safe", theme.Options{Mode: theme.Dark, ColorSafe: true}, size, page)
	golden.CheckWith(t, "whole-large", theme.Options{Mode: theme.Light, TextScale: 1.5}, fyne.NewSize(1350, 900), page)
}

// On a screen with two pixels to a unit everything is drawn finer, not larger.
func TestPageOnAFineScreen(t *testing.T) {
	golden.CheckAtScale(t, "whole-fine", 2, fyne.NewSize(900, 600), page)
}

// The toolkit's own parts, as they look on our page.
func TestToolkitLook(t *testing.T) {
	golden.Check(t, "toolkit", fyne.NewSize(640, 420), func() fyne.CanvasObject {
		sel := widget.NewSelect([]string{"Round, tapered", "Rectangular"}, nil)
		sel.SetSelectedIndex(0)
		radio := widget.NewRadioGroup([]string{"metric", "US customary"}, nil)
		radio.SetSelected("metric")
		check := widget.NewCheck("under a roof", nil)
		check.SetChecked(true)
		slider := widget.NewSlider(0, 10)
		slider.SetValue(4)
		bar := widget.NewProgressBar()
		bar.SetValue(0.4)
		multi := widget.NewMultiLineEntry()
		multi.SetText("Stood in full sun; the bidens\noutgrew the rest by July.")
		off := widget.NewEntry()
		off.SetPlaceHolder("search")
		important := widget.NewButton("Main", nil)
		important.Importance = widget.HighImportance
		danger := widget.NewButton("Remove", nil)
		danger.Importance = widget.DangerImportance
		return container.NewPadded(container.NewVBox(
			container.NewGridWithColumns(2, sel, off), container.NewGridWithColumns(2, radio, check), slider, bar, multi,
			container.NewHBox(widget.NewButton("Plain", nil), important, danger, widget.NewHyperlink("Source", nil)),
			widget.NewAccordion(widget.NewAccordionItem("More about this pot", widget.NewLabel("text"))),
			container.NewAppTabs(container.NewTabItem("Plantings", widget.NewLabel("x")), container.NewTabItem("History", widget.NewLabel("y"))),
		))
	})
}

// Every widget that takes the focus or can be pressed has a name for screen
// readers.
func TestPartsHaveNames(t *testing.T) {
	golden.App(t, theme.Options{})
	everything := container.NewVBox(page(), NewDataTable(exampleTable(3)), NewClimateChart(exampleClimate()),
		NewPotTile(PotTileData{Label: "Trough"}, func() {}), NewEmptyState(theme.DrawingPots, "No pots", "Begin."),
		NewBusy(BusyData{Title: "Working", Stop: "Stop"}, nil))
	w := test.NewTempWindow(t, everything)
	w.Resize(fyne.NewSize(1200, 2000))
	seen := 0
	for _, o := range test.LaidOutObjects(everything) {
		_, focusable := o.(fyne.Focusable)
		_, tappable := o.(fyne.Tappable)
		if !focusable && !tappable {
			continue
		}
		named, ok := o.(fyne.Accessible)
		if !ok || !o.Visible() {
			continue // the toolkit's own parts; our rows are named through their table
		}
		seen++
		if b, ok := o.(*Button); ok && b.data.Name == "" && b.data.Label == "" && b.press == nil {
			continue // a notice without a way to put it away
		}
		if named.AccessibilityLabel() == "" && named.AccessibilityRole() != fyne.AccessibleRoleContainer {
			t.Errorf("%T has an empty name", o)
		}
	}
	if seen < 10 {
		t.Errorf("only %d parts were looked at", seen)
	}
}

// Tab goes through a page in the order in which it is read.
func TestTabOrder(t *testing.T) {
	golden.App(t, theme.Options{})
	first := NewButton(ButtonData{Label: "first"}, nil)
	second := NewFigure(FigureData{Label: "second", Value: "1"}, func() {})
	third := NewMeasureField("third", "", nil)
	fourth := NewTaskRow(TaskData{Title: "fourth"}, TaskActions{OnSnooze: func() {}, SnoozeName: "fifth"})
	w := test.NewTempWindow(t, container.NewVBox(NewPageHeader("Title", "", first), NewCard("", second), third, fourth))
	want := []fyne.Focusable{first, second, third.Entry(), fourth, fourth.Snooze()}
	for i, expected := range want {
		w.Canvas().FocusNext()
		if w.Canvas().Focused() != expected {
			t.Fatalf("step %d: focus is on %T", i, w.Canvas().Focused())
		}
	}
}

// A change of the theme reaches everything that is drawn.
func TestThemeReachesEverything(t *testing.T) {
	a := golden.App(t, theme.Options{Mode: theme.Light})
	w := test.NewTempWindow(t, page())
	w.SetPadded(false)
	w.Resize(fyne.NewSize(900, 600))
	a.Settings().SetTheme(theme.New(theme.Options{Mode: theme.Dark}))
	w.Resize(fyne.NewSize(901, 601))
	test.ApplyTheme(t, theme.New(theme.Options{Mode: theme.Dark}))
	w.Content().Refresh()
	w.Resize(fyne.NewSize(900, 600))
	if !golden.Updating() {
		test.AssertRendersToImage(t, "whole-dark.png", w.Canvas())
	}
}

func TestFitNeverGrowsAndEndsWithDots(t *testing.T) {
	golden.App(t, theme.Options{})
	l := look{theme.New(theme.Options{}), fynetheme.VariantLight}
	rapid.Check(t, func(t *rapid.T) {
		text := rapid.StringMatching(`[A-Za-zäöüñ ]{0,40}`).Draw(t, "text")
		width := rapid.Float32Range(0, 300).Draw(t, "width")
		got := l.fit(text, scriptText, width)
		if got != "" && l.measure(got, scriptText).Width > width {
			t.Fatalf("%q is wider than %v", got, width)
		}
		if got != text && got != "" && []rune(got)[len([]rune(got))-1] != '…' {
			t.Fatalf("%q was cut to %q without a sign", text, got)
		}
	})
}

func TestWrapKeepsEveryWord(t *testing.T) {
	golden.App(t, theme.Options{})
	l := look{theme.New(theme.Options{}), fynetheme.VariantLight}
	for _, width := range []float32{1, 60, 200, 5000} {
		words := ""
		for _, line := range l.wrap(longText, scriptSoft, width) {
			if words != "" {
				words += " "
			}
			words += line
		}
		if words != longText {
			t.Errorf("at %v: %q", width, words)
		}
	}
}

// What scrolling the year of 1,000 pots by one row costs, as a share of a frame of
// a 60 Hz screen.
func BenchmarkYearChartScroll(b *testing.B) {
	golden.App(b, theme.Options{})
	c := NewYearChart(exampleYear(1000))
	w := test.NewTempWindow(b, c)
	w.Resize(fyne.NewSize(1400, 800))
	h, down := c.body.rowHeight(), float32(1)
	var spent time.Duration
	drawn := map[*yearRowView]int{}
	for b.Loop() {
		start := time.Now()
		if c.scroll.Offset.Y > 900*h {
			down = -1
		} else if c.scroll.Offset.Y < 10*h {
			down = 1
		}
		c.scrollBy(0, down*h)
		for index, view := range c.body.drawn.rows {
			if drawn[view] != index {
				drawn[view] = index
				view.draw(1200, int(h)) // a screen draws only what is new
			}
		}
		spent += time.Since(start)
	}
	b.ReportMetric(float64(spent)/float64(b.N)/float64(time.Second/60), "frames/row")
}

// What scrolling the year of 1,000 pots by one row and drawing the whole window costs,
// over the same for the toolkit's list of 1,000 lines of text.
func BenchmarkYearChartBesideAList(b *testing.B) {
	golden.App(b, theme.Options{})
	size := fyne.NewSize(1400, 800)
	c := NewYearChart(exampleYear(1000))
	year := test.NewTempWindow(b, c)
	year.Resize(size)
	list := widget.NewList(func() int { return 1000 },
		func() fyne.CanvasObject { return widget.NewLabel("") },
		func(i widget.ListItemID, o fyne.CanvasObject) {
			o.(*widget.Label).SetText("Trough by the gate, terrace")
		})
	plain := test.NewTempWindow(b, list)
	plain.Resize(size)
	row := c.body.rowHeight()
	var ours, theirs time.Duration
	at := float32(0)
	for b.Loop() {
		at += row
		if at > 900*row {
			at = 0
		}
		start := time.Now()
		c.scrollBy(0, at-c.scroll.Offset.Y)
		year.Canvas().Capture()
		ours += time.Since(start)
		start = time.Now()
		list.ScrollToOffset(at)
		plain.Canvas().Capture()
		theirs += time.Since(start)
	}
	b.ReportMetric(float64(ours)/float64(theirs), "of_a_list")
}
