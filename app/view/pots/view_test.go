package pots_test

import (
	"fmt"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	screen "fourturn/app/screen/pots"
	"fourturn/app/screen/screentest"
	"fourturn/app/theme"
	"fourturn/app/view/pots"
	"fourturn/app/widgets/golden"
	"fourturn/planner"
	"fourturn/planner/civil"
	"fourturn/planner/vessel"
)

// shell is the window around the page.
type shell struct {
	canvas fyne.Canvas
	status string
	shown  planner.Figure
}

func (s *shell) ShowWorking(f planner.Figure) { s.shown = f }
func (s *shell) Status(text string)           { s.status = text }
func (s *shell) Canvas() fyne.Canvas          { return s.canvas }

// check draws a plan in both sizes, by day and by lamplight.
func check(t *testing.T, what string, plan *planner.Plan, then func(*pots.View), at ...fyne.Size) {
	t.Helper()
	d := screentest.Open(t, plan, screentest.SummerDay)
	for _, size := range at {
		for _, mode := range []theme.Mode{theme.Light, theme.Dark} {
			name := fmt.Sprintf("%s-%.0fx%.0f-%s", what, size.Width, size.Height, map[theme.Mode]string{theme.Light: "light", theme.Dark: "dark"}[mode])
			golden.CheckWith(t, name, theme.Options{Mode: mode}, size, func() fyne.CanvasObject {
				v := pots.New(screen.New(d.Session, d.Words, d.NewID), d.Words, &shell{})
				then(v)
				return v.Object()
			})
		}
	}
}

var small, large = fyne.NewSize(900, 600), fyne.NewSize(1280, 800)

func TestPictures(t *testing.T) {
	check(t, "example", screentest.Example(t), func(*pots.View) {}, small, large)
	check(t, "longest", screentest.LongestNames(t), func(v *pots.View) { v.Open("oval") }, small, large)
	check(t, "tall", screentest.Example(t), func(v *pots.View) { v.Open("urn") }, fyne.NewSize(1000, 2200))
	check(t, "folds", built(t), func(v *pots.View) { v.Open("cube"); v.Unfold("place", "inside", "liner") }, fyne.NewSize(1000, 1300))
	check(t, "mix", built(t), func(v *pots.View) { v.Open("cube"); v.Unfold("mix", "weight") }, fyne.NewSize(900, 1300))
	check(t, "empty", screentest.Empty(), func(*pots.View) {}, small)
}

// built is the example with a square pot that has everything in it.
func built(t *testing.T) *planner.Plan {
	plan := screentest.LongestNames(t)
	pot := plan.Pot("cube")
	pot.Notes = "Cracked at the foot, mended with lime putty.\nTurn the good side to the street."
	pot.Vessel.FalseBottom, pot.Vessel.Reservoir, pot.Vessel.DrainageLayer, pot.Vessel.NoHoles = 0.05, true, 0.03, true
	liner := vessel.Spec{
		Kind: vessel.Square, MeasuredOn: vessel.Outside, TopWidth: pot.Vessel.TopWidth * 0.8, BottomWidth: pot.Vessel.BottomWidth * 0.8,
		Height: pot.Vessel.Height * 0.7, Wall: 0.003, Material: vessel.Plastic, NoHoles: true, DrainageLayer: 0.02,
	}
	pot.Vessel.Liner = &liner
	pot.MixSince, pot.RetireAfter, pot.RefreshShare = civil.MustParse("2026-04-20"), 6, 0.5
	return plan
}

func open(t *testing.T, plan *planner.Plan, size fyne.Size) (*screentest.Desk, *pots.View, *shell) {
	t.Helper()
	golden.App(t, theme.Options{Mode: theme.Light})
	d := screentest.Open(t, plan, screentest.SummerDay)
	sh := &shell{}
	v := pots.New(screen.New(d.Session, d.Words, d.NewID), d.Words, sh)
	w := test.NewTempWindow(t, v.Object())
	w.SetPadded(false)
	w.Resize(size.AddWidthHeight(1, 1))
	w.Resize(size)
	sh.canvas = w.Canvas()
	return d, v, sh
}
