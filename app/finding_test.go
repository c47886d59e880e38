package main

import (
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	"fourturn/app/desktop"
	"fourturn/app/theme"
	"fourturn/planner/quantity"
)

// Everything that is found leads somewhere: each room and each kind of thing of the
// example, by keys alone.
func TestFindGoesWhereItSays(t *testing.T) {
	term, _, _ := headlessTerminal(t)
	s, err := newStudio(term, examplePlan(), theme.Options{Mode: theme.Light}, desktop.LeastWindow)
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(s.close)
	for _, one := range []struct{ typed, room string }{
		{"half barrel", "pots"},
		{"angelonia", "plants"},
		{"20-20-20", "mix"},
		{"north arch", "site"},
		{"turning year", "pots"},
		{"feeding", "feeding"},
		{"year", "year"},
		{"due", "due"},
	} {
		if !s.shell.Perform("find") {
			t.Fatal("the search does not open")
		}
		test.Type(s.shell.Canvas().Focused(), one.typed)
		s.shell.Canvas().Focused().TypedKey(&fyne.KeyEvent{Name: fyne.KeyReturn})
		s.wait()
		if s.shell.Room() != one.room {
			t.Errorf("%q leads to the room %q, not %q", one.typed, s.shell.Room(), one.room)
		}
	}
	s.shell.Perform("find")
	test.Type(s.shell.Canvas().Focused(), "us customary")
	s.shell.Canvas().Focused().TypedKey(&fyne.KeyEvent{Name: fyne.KeyReturn})
	if s.session.Plan().Units != quantity.USCustomary {
		t.Error("an action that was found was not done")
	}
}
