package site_test

import (
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	"fourturn/app/screen/screentest"
	screen "fourturn/app/screen/site"
	"fourturn/app/view/site"
	"fourturn/app/widgets"
	"fourturn/app/widgets/golden"
	"fourturn/planner"
	"fourturn/planner/quantity"
)

// shell is the window around the page.
type shell struct {
	status string
	shown  []planner.Figure
	canvas fyne.Canvas
	file   string // that a person chooses
}

func (s *shell) ShowWorking(f planner.Figure) { s.shown = append(s.shown, f) }
func (s *shell) Status(text string)           { s.status = text }
func (s *shell) Canvas() fyne.Canvas          { return s.canvas }

func (s *shell) PickFile(_ string, takes func(string) bool, choose func(string)) {
	if takes(s.file) {
		choose(s.file)
	}
}

var small, large = fyne.NewSize(900, 600), fyne.NewSize(1280, 800)

// The parts of the page, by how often the choice goes on.
const (
	theYear = iota
	theSpots
	thePlace
)

// turnTo shows a part of the page.
func turnTo(o fyne.CanvasObject, part int) {
	for _, one := range test.LaidOutObjects(o) {
		if segments, ok := one.(*widgets.Segments); ok {
			segments.TypedKey(&fyne.KeyEvent{Name: fyne.KeyHome})
			for range part {
				segments.TypedKey(&fyne.KeyEvent{Name: fyne.KeyRight})
			}
			return
		}
	}
}

// check draws a part of the page by day and by lamplight.
func check(t *testing.T, what string, plan *planner.Plan, part int, at ...fyne.Size) {
	t.Helper()
	d := screentest.Open(t, plan, screentest.SummerDay)
	golden.CheckPages(t, what, at, func() fyne.CanvasObject {
		page := site.New(screen.New(d.Session, d.Words), d.Words, &shell{}).Object()
		page.Resize(at[0])
		turnTo(page, part)
		return page
	})
}

// at returns the example at another place.
func at(t *testing.T, station string) *planner.Plan {
	plan := screentest.Example(t)
	plan.Sites[0].Station, plan.Sites[0].Elevation = station, nil
	return plan
}

// high is a page high enough to show all of a part.
var high = fyne.NewSize(900, 1500)

func TestPictures(t *testing.T) {
	check(t, "example", screentest.Example(t), theYear, small, large)
	check(t, "longest", screentest.LongestNames(t), theYear, small, large)
	check(t, "empty", screentest.Empty(), thePlace, small)
	check(t, "whole", screentest.Customary(t), theYear, high)
}

func TestPicturesOfSpots(t *testing.T) {
	check(t, "spots", screentest.Example(t), theSpots, small, large)
	check(t, "spots-longest", screentest.LongestNames(t), theSpots, small)
}

func TestPicturesOfThePlace(t *testing.T) {
	check(t, "place", screentest.Example(t), thePlace, small, large)
	plan := screentest.LongestNames(t)
	lat, lon := 41.9, -93.2
	plan.Sites[0].Latitude, plan.Sites[0].Longitude = &lat, &lon
	plan.Sites = append(plan.Sites, planner.Site{ID: "hill"})
	cold := quantity.Temperature(-9)
	plan.Sites[0].Means = []planner.MonthMeans{{Month: "jan", Tmin: &cold}, {Month: "feb", Tmin: &cold}, {Month: "mar", Tmin: &cold}}
	check(t, "place-own", plan, thePlace, high)
}

// Places whose year is not that of the middle latitudes are told plainly.
func TestPicturesOfOtherPlaces(t *testing.T) {
	for name, station := range map[string]string{"tropics": "Kuala Lumpur", "south": "Hobart", "arctic": "Cambridge Bay", "mild": "Valentia"} {
		found := screen.New(screentest.Open(t, screentest.Example(t), screentest.SummerDay).Session, screentest.Open(t, screentest.Example(t), screentest.SummerDay).Words).Find(station, 1)
		if len(found) == 0 {
			t.Fatalf("no station %s", station)
		}
		check(t, name, at(t, found[0].ID), theYear, fyne.NewSize(900, 900))
	}
}
