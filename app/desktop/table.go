package desktop

import (
	"fmt"
	"path/filepath"

	"fyne.io/fyne/v2"

	"fourturn/app/theme"
	"fourturn/app/words"
	"fourturn/planner/quantity"
)

const quitName = "quit"

// FindAction is the action that opens the search for everything, and GoPrefix what
// stands before the key of a room in the action that goes there.
const (
	FindAction = "find"
	GoPrefix   = "go_"
)

// table is the one table of what can be done: the menus, the keys and the page of
// keys are made from it.
func (s *Shell) table() []menu {
	return []menu{s.fileMenu(), s.editMenu(), s.goMenu(), s.viewMenu(), s.helpMenu()}
}

// say returns the words of a key as a label that never changes.
func (s *Shell) say(key string) func() string {
	text := s.words.T(key)
	return func() string { return text }
}

func (s *Shell) fileMenu() menu {
	recent := menu{label: s.say("desktop.open_recent"), entries: []entry{{list: s.recentActions}}}
	writable := func() bool { return !s.session.ReadOnly() }
	return menu{label: s.say("desktop.menu_file"), entries: []entry{
		{action: &Action{Name: "new", Label: s.say("desktop.new"), Keys: one(ctrl(fyne.KeyN)), Run: s.NewPlan}},
		{action: &Action{Name: "open", Label: s.say("desktop.open"), Keys: one(ctrl(fyne.KeyO)), Run: s.ChooseFile}},
		{inside: &recent},
		{action: &Action{Name: "example", Label: s.say("desktop.open_example"), Run: s.OpenExample}},
		line,
		{action: &Action{Name: "save", Label: s.say("desktop.save"), Keys: one(ctrl(fyne.KeyS)), Enabled: writable, Run: func() { s.Save(nil) }}},
		{action: &Action{Name: "save_as", Label: s.say("desktop.save_as"), Keys: one(ctrlShift(fyne.KeyS)), Enabled: writable, Run: func() { s.AskSaveAs(nil) }}},
		{action: &Action{Name: "restore_copy", Label: s.say("desktop.restore_copy"), Enabled: func() bool { return writable() && s.session.Path() != "" }, Run: s.ChooseCopy}},
		{action: &Action{Name: "bring_in", Label: s.say("desktop.bring_in"), Enabled: writable, Run: s.ChooseSecondCopy}},
		line,
		{action: &Action{Name: "details", Label: s.say("desktop.details"), Keys: one(ctrl(fyne.KeyComma)), Enabled: func() bool { return s.config.Details != nil }, Run: func() { s.config.Details(s) }}},
		line,
		{action: &Action{Name: quitName, Label: s.say("desktop.quit"), Keys: one(ctrl(fyne.KeyQ)), Run: s.Quit}},
	}}
}

func one(keys fyne.KeyboardShortcut) []fyne.KeyboardShortcut { return []fyne.KeyboardShortcut{keys} }

func (s *Shell) recentActions() (list []*Action) {
	for i, path := range s.settings.Recent() {
		name := filepath.Base(path) + " – " + filepath.Dir(path)
		list = append(list, &Action{
			Name: fmt.Sprintf("recent %d", i+1), Label: func() string { return name },
			Run: func() { s.OpenFile(path) },
		})
	}
	return list
}

func (s *Shell) editMenu() menu {
	routed := func(name, key string, shortcut fyne.KeyboardShortcut, run func()) entry {
		return entry{action: &Action{Name: name, Label: s.say(key), Keys: one(shortcut), Over: true, Field: true, Run: run}}
	}
	return menu{label: s.say("desktop.menu_edit"), entries: []entry{
		{action: &Action{Name: "undo", Label: s.undoLabel, Keys: one(&fyne.ShortcutUndo{}), Over: true, Enabled: s.canUndo, Run: s.Undo}},
		{action: &Action{
			Name: "redo", Label: s.redoLabel, Over: true, Enabled: s.canRedo, Run: s.Redo,
			Keys: []fyne.KeyboardShortcut{&fyne.ShortcutRedo{}, ctrlShift(fyne.KeyZ)},
		}},
		line,
		routed("cut", "desktop.cut", &fyne.ShortcutCut{}, s.cut),
		routed("copy", "desktop.copy", &fyne.ShortcutCopy{}, s.copy),
		routed("paste", "desktop.paste", &fyne.ShortcutPaste{}, s.paste),
		line,
		routed("select_all", "desktop.select_all", &fyne.ShortcutSelectAll{}, s.selectAll),
	}}
}

// digits are the keys of the rooms, in their order.
var digits = []fyne.KeyName{fyne.Key1, fyne.Key2, fyne.Key3, fyne.Key4, fyne.Key5, fyne.Key6, fyne.Key7, fyne.Key8, fyne.Key9}

func (s *Shell) goMenu() menu {
	m := menu{label: s.say("desktop.menu_go")}
	if s.config.Find != nil {
		m.entries = append(m.entries, entry{action: &Action{Name: FindAction, Label: s.say("desktop.find"), Keys: one(ctrl(fyne.KeyF)), Run: s.Find}}, line)
	}
	for i := range s.rooms {
		room := s.rooms[i].Room
		a := &Action{
			Name: GoPrefix + room.Key, Label: s.say(room.Label), Run: func() { s.GoTo(room.Key, "") },
			Checked: func() bool { return s.Room() == room.Key },
		}
		if i < len(digits) {
			a.Keys = one(ctrl(digits[i]))
		}
		m.entries = append(m.entries, entry{action: a})
	}
	m.entries = append(
		m.entries, line,
		entry{action: &Action{Name: "back", Label: s.say("desktop.back"), Keys: one(backKeys()), Enabled: s.history.canGoBack, Run: s.Back}},
		entry{action: &Action{Name: "forward", Label: s.say("desktop.forward"), Keys: one(forwardKeys()), Enabled: s.history.canGoForward, Run: s.Forward}},
	)
	return m
}

func (s *Shell) viewMenu() menu {
	mode := func(name, key string, mode theme.Mode) entry {
		return entry{action: &Action{
			Name: name, Label: s.say(key), Checked: func() bool { return s.settings.Look().Mode == mode },
			Run: func() { s.changeLook(func(o *theme.Options) { o.Mode = mode }) },
		}}
	}
	units := func(name, key string, system quantity.System) entry {
		return entry{action: &Action{
			Name: name, Label: s.say(key), Checked: func() bool { return s.units() == system },
			Enabled: func() bool { return !s.session.ReadOnly() }, Run: func() { s.setUnits(system) },
		}}
	}
	entries := []entry{
		mode("page_light", "desktop.page_light", theme.Light),
		mode("page_dark", "desktop.page_dark", theme.Dark),
		mode("page_system", "desktop.page_system", theme.System),
		line,
		{action: &Action{
			Name: "high_contrast", Label: s.say("desktop.high_contrast"),
			Checked: func() bool { return s.settings.Look().HighContrast },
			Run:     func() { s.changeLook(func(o *theme.Options) { o.HighContrast = !o.HighContrast }) },
		}},
		{action: &Action{
			Name: "color_safe", Label: s.say("desktop.color_safe"),
			Checked: func() bool { return s.settings.Look().ColorSafe },
			Run:     func() { s.changeLook(func(o *theme.Options) { o.ColorSafe = !o.ColorSafe }) },
		}},
		line,
		{action: &Action{Name: "text_larger", Label: s.say("desktop.text_larger"), Keys: one(ctrl(fyne.KeyEqual)), Enabled: s.canGrow, Run: func() { s.stepText(1) }}},
		{action: &Action{Name: "text_smaller", Label: s.say("desktop.text_smaller"), Keys: one(ctrl(fyne.KeyMinus)), Enabled: s.canShrink, Run: func() { s.stepText(-1) }}},
		{action: &Action{Name: "text_usual", Label: s.textLabel, Keys: one(ctrl(fyne.Key0)), Run: func() { s.setText(1) }}},
		line,
		units("units_metric", "desktop.units_metric", quantity.Metric),
		units("units_us", "desktop.units_us", quantity.USCustomary),
	}
	if languages := words.Languages(); s.config.Reword != nil && len(languages) > 1 {
		entries = append(entries, line, entry{inside: s.languageMenu(languages)})
	}
	return menu{label: s.say("desktop.menu_view"), entries: entries}
}

func (s *Shell) languageMenu(languages []string) *menu {
	m := &menu{label: s.say("desktop.language")}
	for _, language := range languages {
		name := words.New(language).T("desktop.language_name")
		m.entries = append(m.entries, entry{action: &Action{
			Name: "language " + language, Label: func() string { return name },
			Checked: func() bool { return s.words.Language() == language },
			Run:     func() { s.setLanguage(language) },
		}})
	}
	return m
}

func (s *Shell) helpMenu() menu {
	return menu{label: s.say("desktop.menu_help"), entries: []entry{
		{action: &Action{Name: "keys", Label: s.say("desktop.keys"), Keys: one(ctrl(fyne.KeySlash)), Run: s.ShowKeys}},
		{action: &Action{Name: "about", Label: s.say("desktop.about"), Run: s.ShowAbout}},
	}}
}
