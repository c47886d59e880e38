package desktop

import (
	"fmt"
	"runtime"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"
)

// Action is one thing that a person can do from the menus or by keys.
type Action struct {
	Name    string                  // never translated, such as "save"; the same name is never used twice
	Label   func() string           // in the person's language; it may change with the plan
	Keys    []fyne.KeyboardShortcut // the first is shown in the menu
	Enabled func() bool             // nil: always
	Checked func() bool             // nil: it has no tick
	Over    bool                    // it can be done while a dialog is open
	Field   bool                    // it acts on the field that has the focus
	Run     func()
}

// enabled reports whether the menu shows the action as in use.
func (a *Action) enabled() bool { return a.Enabled == nil || a.Enabled() }

// do runs an action if it can be done, and reports whether it could. Keys reach an
// action that is shown as out of use, and they reach past a dialog, so this is
// asked here and not only by the menu.
func (s *Shell) do(a *Action) bool {
	if !a.enabled() || s.dialogOpen() && !a.Over {
		return false
	}
	s.log("action", a.Name)
	a.Run()
	return true
}

// menu is a list of entries under a label.
type menu struct {
	label   func() string
	entries []entry
}

// entry is an action, a menu inside the menu, a list that changes, or, where all
// are nil, a line between groups.
type entry struct {
	action *Action
	inside *menu
	list   func() []*Action
}

// line separates groups of actions.
var line = entry{}

// Actions returns every action of the menus as they are now.
func (s *Shell) Actions() []*Action {
	var all []*Action
	for i := range s.menus {
		all = append(all, s.menus[i].actions()...)
	}
	return all
}

func (m *menu) actions() (all []*Action) {
	for _, e := range m.entries {
		switch {
		case e.action != nil:
			all = append(all, e.action)
		case e.inside != nil:
			all = append(all, e.inside.actions()...)
		case e.list != nil:
			all = append(all, e.list()...)
		}
	}
	return all
}

// Offered returns the actions that can be done now without a field that has the
// focus, each with its keys as they stand on the keyboard.
func (s *Shell) Offered() (actions []*Action, keys []string) {
	for _, a := range s.Actions() {
		if a.Field || !a.enabled() {
			continue
		}
		written := ""
		if len(a.Keys) > 0 {
			written = s.writeKeys(a.Keys[0])
		}
		actions, keys = append(actions, a), append(keys, written)
	}
	return actions, keys
}

// Perform runs an action by its name, as its menu or its key would, and reports
// whether there is one that can be done now.
func (s *Shell) Perform(name string) bool {
	for _, a := range s.Actions() {
		if a.Name == name {
			return s.do(a)
		}
	}
	return false
}

// refreshMenus builds the menus anew if anything in them has changed.
func (s *Shell) refreshMenus() {
	var state strings.Builder
	main := &fyne.MainMenu{}
	for i := range s.menus {
		main.Items = append(main.Items, s.build(&s.menus[i], &state))
	}
	if state.String() == s.shown {
		return
	}
	s.shown = state.String()
	s.window.SetMainMenu(main)
}

// build returns the menu for the toolkit and writes down what it shows.
func (s *Shell) build(m *menu, state *strings.Builder) *fyne.Menu {
	built := fyne.NewMenu(m.label())
	fmt.Fprintln(state, built.Label)
	var further []*fyne.MenuItem // second keys of actions, until the next line
	add := func(a *Action) {
		built.Items = append(built.Items, s.item(a, state))
		for _, keys := range a.Keys[min(1, len(a.Keys)):] {
			further = append(further, &fyne.MenuItem{IsSeparator: true, Action: func() { s.do(a) }, Shortcut: keys})
		}
	}
	for _, e := range m.entries {
		switch {
		case e.action != nil:
			add(e.action)
		case e.list != nil:
			for _, a := range e.list() {
				add(a)
			}
		case e.inside != nil:
			item := fyne.NewMenuItem("", nil)
			item.ChildMenu = s.build(e.inside, state)
			item.Label = item.ChildMenu.Label
			item.Disabled = len(item.ChildMenu.Items) == 0
			built.Items = append(built.Items, item)
		case len(further) > 0:
			// A menu shows one key for an item. The second key of an action above
			// goes with the line: it is seen as a line, and its key is heard.
			built.Items = append(built.Items, further[0])
			further = further[1:]
		default:
			built.Items = append(built.Items, fyne.NewMenuItemSeparator())
		}
	}
	if len(further) > 0 {
		panic("desktop: no line in the menu for the second key of an action")
	}
	return built
}

func (s *Shell) item(a *Action, state *strings.Builder) *fyne.MenuItem {
	item := fyne.NewMenuItem(a.Label(), func() { s.do(a) })
	item.IsQuit = a.Name == quitName
	item.Disabled = !a.enabled()
	item.Checked = a.Checked != nil && a.Checked()
	if len(a.Keys) > 0 {
		item.Shortcut = a.Keys[0]
	}
	fmt.Fprintln(state, item.Label, item.Disabled, item.Checked)
	return item
}

// ctrl returns a key with Ctrl, or Cmd on a Mac.
func ctrl(key fyne.KeyName) fyne.KeyboardShortcut {
	return &desktop.CustomShortcut{KeyName: key, Modifier: fyne.KeyModifierShortcutDefault}
}

// ctrlShift returns a key with Ctrl and Shift, or Cmd and Shift on a Mac.
func ctrlShift(key fyne.KeyName) fyne.KeyboardShortcut {
	return &desktop.CustomShortcut{KeyName: key, Modifier: fyne.KeyModifierShortcutDefault | fyne.KeyModifierShift}
}

// backKeys and forwardKeys are those of browsers; on a Mac, Alt and an arrow move
// by a word in a field.
func backKeys() fyne.KeyboardShortcut {
	if runtime.GOOS == "darwin" {
		return ctrl(fyne.KeyLeftBracket)
	}
	return &desktop.CustomShortcut{KeyName: fyne.KeyLeft, Modifier: fyne.KeyModifierAlt}
}

func forwardKeys() fyne.KeyboardShortcut {
	if runtime.GOOS == "darwin" {
		return ctrl(fyne.KeyRightBracket)
	}
	return &desktop.CustomShortcut{KeyName: fyne.KeyRight, Modifier: fyne.KeyModifierAlt}
}

// keyNames holds the keys of words for keys that have no sign of their own.
var keyNames = map[fyne.KeyName]string{
	fyne.KeyLeft: "desktop.key_left", fyne.KeyRight: "desktop.key_right",
	fyne.KeyEqual: "desktop.key_equal", fyne.KeyMinus: "desktop.key_minus",
}

// writeKeys writes a shortcut as it stands on the keyboard: "Ctrl+Shift+Z".
func (s *Shell) writeKeys(keys fyne.KeyboardShortcut) string {
	var parts []string
	for _, modifier := range []struct {
		bit fyne.KeyModifier
		key string
	}{
		{fyne.KeyModifierControl, "desktop.key_ctrl"},
		{fyne.KeyModifierSuper, "desktop.key_cmd"},
		{fyne.KeyModifierAlt, "desktop.key_alt"},
		{fyne.KeyModifierShift, "desktop.key_shift"},
	} {
		if keys.Mod()&modifier.bit != 0 {
			parts = append(parts, s.words.T(modifier.key))
		}
	}
	name := string(keys.Key())
	if key, ok := keyNames[keys.Key()]; ok {
		name = s.words.T(key)
	}
	return strings.Join(append(parts, name), "+")
}
