package mix_test

import (
	"testing"

	"fyne.io/fyne/v2"

	screen "fourturn/app/screen/mix"
	"fourturn/app/screen/screentest"
	"fourturn/app/view/mix"
	"fourturn/app/widgets/golden"
	"fourturn/planner"
)

// shell is the window around the page.
type shell struct {
	status string
	shown  []planner.Figure
	went   string
}

func (s *shell) ShowWorking(f planner.Figure) { s.shown = append(s.shown, f) }
func (s *shell) Status(text string)           { s.status = text }
func (s *shell) GoTo(room, id string)         { s.went = room + " " + id }

var small, large = fyne.NewSize(900, 600), fyne.NewSize(1280, 800)

// check draws a plan by day and by lamplight.
func check(t *testing.T, what string, plan *planner.Plan, at ...fyne.Size) {
	t.Helper()
	checkWith(t, what, plan, func(*mix.View) {}, at...)
}

func checkWith(t *testing.T, what string, plan *planner.Plan, then func(*mix.View), at ...fyne.Size) {
	t.Helper()
	d := screentest.Open(t, plan, screentest.SummerDay)
	golden.CheckPages(t, what, at, func() fyne.CanvasObject {
		v := mix.New(screen.New(d.Session, d.Words), d.Words, &shell{})
		then(v)
		return v.Object()
	})
}

func TestPictures(t *testing.T) {
	check(t, "example", screentest.Example(t), small, large)
	check(t, "longest", screentest.LongestNames(t), small, large)
	blended := screentest.LongestNames(t)
	blended.Products[0].Bulk = planner.Bulk{Price: 60, Minimum: 500, Delivery: 35}
	blended.Products = append(blended.Products,
		planner.Product{ID: "peat", Name: "sphagnum peat, baled", Kind: planner.Ingredient, Expansion: 2, Packs: []planner.Pack{{Volume: 85, Price: 19}}},
		planner.Product{ID: "bark", Name: "pine bark", Kind: planner.Ingredient, InShed: 40, Packs: []planner.Pack{{Volume: 60, Price: 9.5}}})
	blended.Blends = []planner.Blend{{ID: "own", Name: "Own mix", Parts: []planner.BlendPart{{Product: "peat", Parts: 3}, {Product: "bark", Parts: 1}}}}
	blended.Mix.Blend = "own"
	checkWith(t, "shelf", blended, func(v *mix.View) { v.Unfold("settings", "product/mix", "blend/own") }, fyne.NewSize(900, 2300))
	check(t, "empty", screentest.Empty(), small)
}
