package main

import (
	"fmt"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	"fourturn/app/desktop"
	"fourturn/app/theme"
	"fourturn/planner"
)

// dialogs are the actions that open one over the window.
var dialogs = []string{"find", "new", "details", "open", "keys", "about"}

// eachPage shows each room and dialog, with the example and with an empty plan.
func eachPage(t *testing.T, look func(what string, s *studio, root fyne.CanvasObject)) {
	t.Helper()
	term, _, _ := headlessTerminal(t)
	for name, plan := range map[string]*planner.Plan{"example": examplePlan(), "empty": newPlan()} {
		s, err := newStudio(term, plan, theme.Options{Mode: theme.Light}, desktop.FirstWindow)
		if err != nil {
			t.Fatal(err)
		}
		t.Cleanup(s.close)
		for _, room := range rooms(s.session, term.words, s.ref.Book, nil) {
			s.shell.GoTo(room.Key, "")
			s.wait()
			look(name+" "+room.Key, s, s.window.Content())
		}
		for _, action := range dialogs {
			if !s.shell.Perform(action) {
				t.Fatalf("%s: %s cannot be done", name, action)
			}
			top := s.window.Canvas().Overlays().Top()
			look(name+" "+action, s, top)
			s.window.Canvas().Overlays().Remove(top)
		}
	}
}

// Everything that can have the focus says what it is, so that a reader of the screen
// can say it too.
func TestEverythingWithAFocusHasAName(t *testing.T) {
	seen := 0
	eachPage(t, func(what string, _ *studio, root fyne.CanvasObject) {
		for _, o := range inSight(root) {
			focusable, ok := o.(fyne.Focusable)
			if !ok {
				continue
			}
			seen++
			named, ok := focusable.(fyne.Accessible)
			switch {
			case !ok:
				t.Errorf("%s: a %T has no name", what, o)
			case strings.Trim(named.AccessibilityLabel(), " :;,") == "" && !isEmptyList(o):
				t.Errorf("%s: the name of a %T is empty", what, o)
			case strings.Contains(named.AccessibilityLabel(), "⟦"):
				t.Errorf("%s: a %T is called %q", what, o, named.AccessibilityLabel())
			}
		}
	})
	if seen < 200 {
		t.Errorf("only %d parts were seen: the walk misses some", seen)
	}
}

// inSight returns an object and all parts of it that are shown.
func inSight(o fyne.CanvasObject) (all []fyne.CanvasObject) {
	if o == nil || !o.Visible() {
		return nil
	}
	all = append(all, o)
	var parts []fyne.CanvasObject
	switch o := o.(type) {
	case *fyne.Container:
		parts = o.Objects
	case fyne.Widget:
		parts = test.WidgetRenderer(o).Objects()
	}
	for _, part := range parts {
		all = append(all, inSight(part)...)
	}
	return all
}

// isEmptyList reports whether a part is a list or chart without rows: there is nothing
// in it to be named.
func isEmptyList(o fyne.CanvasObject) bool {
	kind := fmt.Sprintf("%T", o)
	return strings.HasSuffix(kind, ".tableList") || strings.HasSuffix(kind, ".tableHead") || strings.HasSuffix(kind, ".yearBody")
}

// Tab goes through each page and comes round again, past parts that all are in sight,
// and down the page more often than up.
func TestTabGoesRound(t *testing.T) {
	eachPage(t, func(what string, s *studio, root fyne.CanvasObject) {
		c := s.window.Canvas()
		c.Unfocus()
		c.FocusNext()
		first := c.Focused()
		if first == nil {
			t.Errorf("%s: nothing takes the focus", what)
			return
		}
		seen := map[fyne.Focusable]bool{}
		for range 2000 {
			if seen[c.Focused()] {
				break
			}
			seen[c.Focused()] = true
			if o := c.Focused().(fyne.CanvasObject); !o.Visible() {
				t.Errorf("%s: the focus is at a hidden %T", what, o)
			}
			c.FocusNext()
		}
		if c.Focused() != first {
			t.Errorf("%s: Tab does not come round to %T, but to %T", what, first, c.Focused())
		}
		c.FocusPrevious()
		if len(seen) > 1 && c.Focused() == first {
			t.Errorf("%s: Shift+Tab does not go back", what)
		}
		c.Unfocus()
	})
}

// Everything in the menus can be found by its name and done by keys alone.
func TestEveryActionIsReached(t *testing.T) {
	term, _, _ := headlessTerminal(t)
	s, err := newStudio(term, examplePlan(), theme.Options{}, desktop.LeastWindow)
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(s.close)
	found := map[string]bool{}
	for _, r := range around(s.shell).Rooms {
		found[desktop.GoPrefix+r.Name] = true
	}
	for _, a := range around(s.shell).Actions {
		found[a.Name] = true
	}
	for _, a := range s.shell.Actions() {
		offered := a.Enabled == nil || a.Enabled()
		if !found[a.Name] && offered && !a.Field && a.Name != desktop.FindAction {
			t.Errorf("%s is not found by its name", a.Name)
		}
		if a.Field && len(a.Keys) == 0 {
			t.Errorf("%s acts on a field, and has no key", a.Name)
		}
	}
}
