package site_test

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	"fourturn/app/screen/screentest"
	screen "fourturn/app/screen/site"
	"fourturn/app/theme"
	"fourturn/app/view/site"
	"fourturn/app/widgets"
	"fourturn/app/widgets/golden"
	"fourturn/planner/climate/climatetest"
)

// find returns the first object of a kind among what is laid out.
func find[T fyne.CanvasObject](o fyne.CanvasObject) (found T) {
	for _, one := range test.LaidOutObjects(o) {
		if t, ok := one.(T); ok {
			return t
		}
	}
	return found
}

// button returns a button by its name.
func button(t *testing.T, o fyne.CanvasObject, name string) *widgets.Button {
	t.Helper()
	for _, one := range test.LaidOutObjects(o) {
		if b, ok := one.(*widgets.Button); ok && strings.HasPrefix(b.AccessibilityLabel(), name) {
			return b
		}
	}
	t.Fatalf("no button %q", name)
	return nil
}

// stage is the page in a window.
type stage struct {
	*screentest.Desk
	shell  *shell
	screen *screen.Screen
	view   *site.View
	window fyne.Window
}

func newStage(t *testing.T, part int, size fyne.Size) *stage {
	t.Helper()
	golden.App(t, theme.Options{Mode: theme.Light})
	s := &stage{Desk: screentest.Open(t, screentest.Example(t), screentest.SummerDay), shell: &shell{}}
	s.screen = screen.New(s.Session, s.Words)
	s.view = site.New(s.screen, s.Words, s.shell)
	s.window = test.NewTempWindow(t, s.view.Object())
	s.window.SetPadded(false)
	s.window.Resize(size)
	s.shell.canvas = s.window.Canvas()
	turnTo(s.view.Object(), part)
	return s
}

// The risk moves by the keys, all dates with it, and is one step to take back.
func TestTheRiskMovesByKeys(t *testing.T) {
	s := newStage(t, theYear, large)
	field := find[*widgets.ScaleField](s.view.Object())
	before := s.screen.Seasons()[1].Start.Value
	for range 4 {
		field.TypedKey(&fyne.KeyEvent{Name: fyne.KeyPageUp})
	}
	if field.Value() != 50 || s.Plan().Risk != 0.5 || s.screen.Seasons()[1].Start.Value == before {
		t.Errorf("the risk is %d and the plan's %v", field.Value(), s.Plan().Risk)
	}
	if !strings.Contains(field.AccessibilityLabel(), "Even") {
		t.Errorf("it says %q", field.AccessibilityLabel())
	}
	field.TypedKey(&fyne.KeyEvent{Name: fyne.KeyEnd})
	field.TypedKey(&fyne.KeyEvent{Name: fyne.KeyRight})
	if field.Value() != screen.MostRisk {
		t.Errorf("the greatest risk is %d", field.Value())
	}
}

// The picture of the year reads out days and temperatures by the keys.
func TestThePictureIsReadByKeys(t *testing.T) {
	s := newStage(t, theYear, large)
	chart := find[*widgets.ClimateChart](s.view.Object())
	s.window.Canvas().Focus(chart)
	for _, key := range []fyne.KeyName{fyne.KeyHome, fyne.KeyRight, fyne.KeyUp, fyne.KeyUp, fyne.KeyDown} {
		chart.TypedKey(&fyne.KeyEvent{Name: key})
	}
	said := chart.AccessibilityLabel()
	for _, want := range []string{"2 Jan", "daylight", "0 °C at 10% risk", "last night so cold 26 Apr"} {
		if !strings.Contains(said, want) {
			t.Errorf("it says %q, not %q", said, want)
		}
	}
	golden.Picture(t, "read.png", s.window.Canvas())
}

// A station is found as one types and taken by Enter.
func TestAStationIsTakenByTyping(t *testing.T) {
	s := newStage(t, thePlace, large)
	entry := find[*widgets.SearchEntry](s.view.Object())
	entry.SetText("tromsø")
	golden.Picture(t, "found.png", s.window.Canvas())
	entry.OnSubmitted(entry.Text)
	s.Settle()
	if out := s.screen.Outlook(); out == nil || out.Place != "Tromso, Norway" || entry.Text != "" {
		t.Errorf("the station is %+v", s.screen.Near())
	}
}

// A record is chosen, looked at, and taken in by Enter.
func TestARecordIsTakenIn(t *testing.T) {
	s := newStage(t, thePlace, small)
	text := climatetest.Text(t, "USC00275868")
	s.shell.file = filepath.Join(t.TempDir(), "from the garden.csv")
	if err := os.WriteFile(s.shell.file, text, 0o600); err != nil {
		t.Fatal(err)
	}
	test.Tap(button(t, s.view.Object(), "Open a file"))
	overlays := s.window.Canvas().Overlays()
	said := func() string {
		if top, ok := overlays.Top().(fyne.Accessible); ok {
			return top.AccessibilityLabel()
		}
		return ""
	}
	for !strings.HasPrefix(said(), "What was understood") {
		s.Settle() // until the errand is back
	}
	s.window.Resize(small.AddWidthHeight(1, 1))
	s.window.Resize(small)
	golden.Picture(t, "preview.png", s.window.Canvas())
	s.window.Canvas().OnTypedKey()(&fyne.KeyEvent{Name: fyne.KeyReturn})
	if s.Plan().Sites[0].Record == nil || overlays.Top() != nil {
		t.Fatal("the record is not taken in")
	}
	s.Settle()
	s.view.Refresh()
	test.Tap(button(t, s.view.Object(), "Take it away"))
	if s.Plan().Sites[0].Record != nil {
		t.Error("the record is still there")
	}
}

// A spot where pots stand is not removed without a question.
func TestASpotIsRemovedAfterAQuestion(t *testing.T) {
	s := newStage(t, theSpots, large)
	test.Tap(button(t, s.view.Object(), "Remove the spot"))
	overlays := s.window.Canvas().Overlays()
	if len(s.Plan().Spots) != 3 || overlays.Top() == nil {
		t.Fatal("it is gone without a question")
	}
	s.window.Canvas().OnTypedKey()(&fyne.KeyEvent{Name: fyne.KeyReturn})
	if len(s.Plan().Spots) != 2 || overlays.Top() != nil {
		t.Error("it is still there")
	}
	test.Tap(button(t, s.view.Object(), "Add a spot"))
	if len(s.Plan().Spots) != 3 {
		t.Error("none was added")
	}
}
