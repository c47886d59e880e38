package desktop

import (
	"fmt"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"
	"github.com/google/go-cmp/cmp"

	"fourturn/app/theme"
	"fourturn/planner/quantity"
)

func TestUnitsAreAnEditOfThePlan(t *testing.T) {
	st := newStage(t)
	st.Perform("units_us")
	if got := st.undoLabel(); got != "Undo: change to US customary units" {
		t.Errorf("undo is called %q", got)
	}
	st.Perform("undo")
	if st.units() != quantity.Metric {
		t.Error("the units were not undone")
	}
	st.Perform("units_metric")
	if _, ok := st.session.UndoStep(); ok {
		t.Error("choosing the units that were there was an edit")
	}
}

func TestLookIsShownAndRemembered(t *testing.T) {
	st := newStage(t)
	for _, name := range []string{"page_dark", "high_contrast", "color_safe", "text_larger"} {
		if !st.Perform(name) {
			t.Fatalf("%s was not performed", name)
		}
	}
	want := theme.Options{Mode: theme.Dark, HighContrast: true, ColorSafe: true, TextScale: 1.15}
	shown := fyne.CurrentApp().Settings().Theme().(*theme.Theme).Options()
	remembered := NewSettings(st.config.App.Preferences()).Look()
	if diff := cmp.Diff([]theme.Options{want, want}, []theme.Options{shown, remembered}); diff != "" {
		t.Error(diff)
	}
	for range 20 {
		st.Perform("text_larger")
	}
	if got := st.settings.Look().TextScale; got != theme.MaxTextScale {
		t.Errorf("text grew to %v", got)
	}
	st.Perform("text_usual")
	if got := st.settings.Look().TextScale; got != 1 {
		t.Errorf("usual text is %v", got)
	}
}

func TestRecentPlans(t *testing.T) {
	s := NewSettings(test.NewTempApp(t).Preferences())
	for i := range 2 * recentKept {
		s.AddRecent(fmt.Sprintf("/plans/%d.yaml", i))
	}
	s.AddRecent("/plans/12.yaml")
	got := s.Recent()
	if len(got) != recentKept || got[0] != "/plans/12.yaml" || got[1] != "/plans/15.yaml" {
		t.Errorf("recent: %q", got)
	}
	if s.Started() || !s.Started() {
		t.Error("the first start is not told from the second")
	}
	s.SetWindow(fyne.NewSize(200, 3000))
	if got := s.Window(); got != fyne.NewSize(LeastWindow.Width, 3000) {
		t.Errorf("the window is %v", got)
	}
}
