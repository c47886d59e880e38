package main

import (
	"errors"
	"fmt"
	"os"
	"regexp"
	"strings"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/storage"

	"fourturn/app/desktop"
	"fourturn/app/widgets"
)

func says(pattern string, do func(s *stage, words []string) error) sentence {
	pattern = strings.ReplaceAll(pattern, "…", `"([^"]*)"`)
	return sentence{regexp.MustCompile("^" + pattern + "$"), do}
}

// sentences are all that a story can say. Each … is a text in quotation marks.
var sentences = []sentence{
	says(`on (\d{4}-\d\d-\d\d)`, onDay),
	says(`open the example`, func(s *stage, _ []string) error { return s.perform("example") }),
	says(`open a new plan`, func(s *stage, _ []string) error { s.shell.Start(newPlan()); return nil }),
	says(`open …`, func(s *stage, w []string) error { s.shell.OpenFile(s.path(w[0])); return nil }),
	says(`go to …`, goToRoom),
	says(`choose … in …`, func(s *stage, w []string) error { return s.choose(w[0], w[1]) }),
	says(`(?:choose|press|open the page of|tick) …`, press),
	says(`press … of …`, pressOf),
	says(`set … to …`, func(s *stage, w []string) error { return s.set(w[0], w[1]) }),
	says(`type …`, func(s *stage, w []string) error { return s.retype(w[0]) }),
	says(`key (\S+)( \d+ times)?`, key),
	says(`do …`, doAction),
	says(`(undo|redo)`, func(s *stage, w []string) error { return s.perform(w[0]) }),
	says(`save as …`, saveAs),
	says(`save`, func(s *stage, _ []string) error { return s.perform("save") }),
	says(`quit and start again`, func(s *stage, _ []string) error { s.quit(); s.start(""); return nil }),
	says(`crash and start again`, func(s *stage, _ []string) error { s.crash(); s.start(""); return nil }),
	says(`drop …`, func(s *stage, w []string) error {
		s.shell.Dropped([]fyne.URI{storage.NewFileURI(s.path(w[0]))})
		return nil
	}),
	says(`in … somebody writes … for …`, somebodyWrites),
	says(`come back to the window`, func(s *stage, _ []string) error { s.shell.LookForChanges(); return nil }),
	says(`make the window small`, func(s *stage, _ []string) error { s.window.Resize(desktop.LeastWindow); return nil }),
	says(`expect no …`, func(s *stage, w []string) error { return s.expect(w[0], false) }),
	says(`expect … to be …`, expectField),
	says(`expect …`, func(s *stage, w []string) error { return s.expect(w[0], true) }),
	says(`expect unsaved work`, func(s *stage, _ []string) error { return s.dirty(true) }),
	says(`expect no unsaved work`, func(s *stage, _ []string) error { return s.dirty(false) }),
	says(`expect … in the file …`, func(s *stage, w []string) error { return s.holds(w[1], w[0], true) }),
	says(`expect no … in the file …`, func(s *stage, w []string) error { return s.holds(w[1], w[0], false) }),
}

func onDay(s *stage, w []string) error {
	day, err := time.Parse(time.DateOnly, w[0])
	s.now = day.Add(9 * time.Hour)
	s.session.WorkOutAgain()
	return err
}

// perform does an action of the menus by its name.
func (s *stage) perform(name string) error {
	if !s.shell.Perform(name) {
		return fmt.Errorf("the menus have no %s that can be done now", name)
	}
	return nil
}

// doAction does an action of the menus by its label or the beginning of it.
func doAction(s *stage, w []string) error {
	for _, a := range s.shell.Actions() {
		if strings.HasPrefix(a.Label(), w[0]) {
			return s.perform(a.Name)
		}
	}
	return errors.New("the menus have no such entry")
}

func goToRoom(s *stage, w []string) error {
	for _, a := range s.shell.Actions() {
		if strings.HasPrefix(a.Name, "go_") && a.Label() == w[0] {
			return s.perform(a.Name)
		}
	}
	return errors.New("there is no such room")
}

// press clicks on the thing with a name: what can be pressed before mere text.
func press(s *stage, w []string) error {
	o, err := s.find(w[0], func(o fyne.CanvasObject) bool { _, ok := o.(fyne.Tappable); return ok })
	if err != nil {
		o, err = s.find(w[0], func(fyne.CanvasObject) bool { return true })
	}
	if err != nil {
		return err
	}
	return s.click(o)
}

// pressOf presses the first thing of a name that comes, as one reads, after a text.
func pressOf(s *stage, w []string) error {
	met := false
	for _, o := range s.look() {
		met = met || strings.Contains(o.name, w[1])
		if _, ok := o.object.(fyne.Tappable); ok && met && strings.HasPrefix(o.name, w[0]) {
			return s.click(o)
		}
	}
	return fmt.Errorf("behind %q there is no %q", w[1], w[0])
}

func (s *stage) set(label, text string) error {
	o, err := s.field(label)
	if err != nil {
		return err
	}
	field, ok := o.object.(*widgets.MeasureField)
	if !ok {
		return fmt.Errorf("%q is not a field for typing", label)
	}
	s.reveal(o)
	s.window.Canvas().Focus(field.Entry())
	return s.retype(text)
}

// choose picks an option of a field, as with the pointer.
func (s *stage) choose(option, label string) error {
	o, err := s.field(label)
	if err != nil {
		return err
	}
	s.reveal(o)
	switch field := o.object.(type) {
	case *widgets.ChoiceField:
		field.Entry().(fyne.Tappable).Tapped(&fyne.PointEvent{})
		one, err := s.find(option, func(o fyne.CanvasObject) bool { _, ok := o.(*canvas.Text); return ok })
		if err != nil {
			return fmt.Errorf("%q does not offer it: %w", label, err)
		}
		return s.click(one)
	case *widgets.Segments:
		for _, one := range s.look() {
			if _, ok := one.object.(*canvas.Text); ok && one.name == option && inside(one, o) {
				at := one.at.Subtract(o.at).AddXY(one.object.Size().Width/2, one.object.Size().Height/2)
				field.Tapped(&fyne.PointEvent{Position: at})
				return nil
			}
		}
	}
	return fmt.Errorf("%q does not offer it", label)
}

// inside reports whether one thing lies in another.
func inside(one, other seen) bool {
	from, to := other.at, other.at.Add(other.object.Size())
	return one.at.X >= from.X && one.at.Y >= from.Y && one.at.X < to.X && one.at.Y < to.Y
}

// keys of stories that are called otherwise by the toolkit.
var keys = map[string]fyne.KeyName{"Enter": fyne.KeyReturn, "Escape": fyne.KeyEscape, "Space": fyne.KeySpace}

// key presses a key, or one with Ctrl or Shift as the menus know it.
func key(s *stage, w []string) error {
	times := 1
	if w[1] != "" {
		if _, err := fmt.Sscanf(w[1], " %d times", &times); err != nil {
			return err
		}
	}
	for range times {
		if err := s.pressKey(w[0]); err != nil {
			return err
		}
	}
	return nil
}

func (s *stage) pressKey(name string) error {
	if strings.Contains(name, "+") {
		return s.shortcut(name)
	}
	if name == "Tab" {
		s.window.Canvas().(interface{ FocusNext() }).FocusNext()
		return nil
	}
	pressed := fyne.KeyName(name)
	if other, ok := keys[name]; ok {
		pressed = other
	}
	event := &fyne.KeyEvent{Name: pressed}
	if focused := s.window.Canvas().Focused(); focused != nil {
		focused.TypedKey(event)
		if pressed == fyne.KeySpace {
			focused.TypedRune(' ')
		}
		return nil
	}
	if typed := s.window.Canvas().OnTypedKey(); typed != nil {
		typed(event)
	}
	return nil
}

// shortcut does what the menus do at a key with Ctrl, Shift or Alt.
func (s *stage) shortcut(name string) error {
	parts := strings.Split(name, "+")
	var modifier fyne.KeyModifier
	for _, part := range parts[:len(parts)-1] {
		modifier |= map[string]fyne.KeyModifier{
			"Ctrl": fyne.KeyModifierShortcutDefault, "Shift": fyne.KeyModifierShift, "Alt": fyne.KeyModifierAlt,
		}[part]
	}
	for _, a := range s.shell.Actions() {
		for _, keys := range a.Keys {
			if keys.Mod() == modifier && string(keys.Key()) == parts[len(parts)-1] {
				return s.perform(a.Name)
			}
		}
	}
	return errors.New("no entry of the menus has this key")
}

func saveAs(s *stage, w []string) error {
	if err := s.perform("save_as"); err != nil {
		return err
	}
	s.settle()
	return s.retype(s.path(w[0]))
}

// somebodyWrites changes a file behind the back of the window.
func somebodyWrites(s *stage, w []string) error {
	data, err := os.ReadFile(s.path(w[0]))
	if err != nil {
		return err
	}
	if !strings.Contains(string(data), w[2]) {
		return fmt.Errorf("the file has no %q:\n%s", w[2], data)
	}
	s.write(w[0], []byte(strings.ReplaceAll(string(data), w[2], w[1])))
	return nil
}

func (s *stage) expect(text string, there bool) error {
	if s.shows(text) != there {
		return errors.New("it is not so")
	}
	return nil
}

func expectField(s *stage, w []string) error {
	o, err := s.field(w[0])
	if err != nil {
		return err
	}
	if !strings.Contains(o.name, w[1]) {
		return fmt.Errorf("it is %q", o.name)
	}
	return nil
}

func (s *stage) dirty(want bool) error {
	if s.session.Dirty() != want {
		return errors.New("it is not so")
	}
	return nil
}

func (s *stage) holds(name, text string, there bool) error {
	data, err := os.ReadFile(s.path(name))
	if err != nil {
		return err
	}
	if strings.Contains(string(data), text) != there {
		return fmt.Errorf("the file is:\n%s", data)
	}
	return nil
}
