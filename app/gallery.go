package main

import (
	"fmt"
	"path/filepath"

	"fyne.io/fyne/v2"

	"fourturn/app/desktop"
	"fourturn/app/theme"
	"fourturn/planner"
)

// runGallery draws every screen, light, dark and in high contrast, in two sizes, into a folder.
func runGallery(t *terminal, args []string) int {
	o, ok := parseOptions(args, false, "--out", "--today")
	if !ok || o.out == "" {
		return usage(t, "gallery")
	}
	if !headless {
		t.complain("desktop.no_pictures")
		return exitFault
	}
	if !o.today.IsZero() {
		t.now = todayOf(o.today)
	}
	for _, look := range []theme.Options{
		{Mode: theme.Light, TextScale: 1},
		{Mode: theme.Dark, TextScale: 1},
		{Mode: theme.Light, HighContrast: true, TextScale: 1},
	} {
		for _, size := range []fyne.Size{desktop.LeastWindow, desktop.FirstWindow} {
			if err := drawAll(t, o.out, look, size); err != nil {
				fmt.Fprintln(t.err, err)
				return exitFault
			}
		}
	}
	if err := drawPlantSheets(o.out); err != nil {
		fmt.Fprintln(t.err, err)
		return exitFault
	}
	return exitGood
}

// drawAll draws the rooms, empty and with the example, and what lies over them.
func drawAll(t *terminal, folder string, options theme.Options, size fyne.Size) error {
	name := func(what string) string { return filepath.Join(folder, pictureName(what, options, size)) }
	s, err := newStudio(t, examplePlan(), options, size)
	if err != nil {
		return err
	}
	defer s.close()
	if err := s.drawRooms(func(room string) string { return name(room) }); err != nil {
		return err
	}
	if err := s.drawOver(name); err != nil {
		return err
	}
	empty, err := newStudio(t, newPlan(), options, size)
	if err != nil {
		return err
	}
	defer empty.close()
	return empty.drawRooms(func(room string) string { return name(room + "-empty") })
}

// drawRooms draws every room.
func (s *studio) drawRooms(name func(room string) string) error {
	for _, room := range rooms(s.session, s.terminal.words, s.ref.Book, nil) {
		s.shell.GoTo(room.Key, "")
		s.wait()
		if err := s.picture(name(room.Key)); err != nil {
			return err
		}
	}
	return nil
}

// drawOver draws what lies beside or over a room: a working, the page of keys,
// what is said of the program, the question about unsaved work.
func (s *studio) drawOver(name func(what string) string) error {
	outlook, _ := s.session.Outlook()
	for _, one := range []struct {
		what string
		show func()
	}{
		{"working", func() { s.shell.ShowWorking(anyFigure(outlook)) }},
		{"keys", s.shell.ShowKeys},
		{"about", s.shell.ShowAbout},
		{"open", s.shell.ChooseFile},
		{"find", s.shell.Find},
		{"new", s.shell.NewPlan},
		{"details", func() { s.shell.Perform("details") }},
		{"unsaved", func() {
			s.shell.Perform("units_us")
			s.wait()
			s.shell.Quit()
		}},
	} {
		one.show()
		if err := s.picture(name(one.what)); err != nil {
			return err
		}
		for _, top := range s.window.Canvas().Overlays().List() {
			s.window.Canvas().Overlays().Remove(top)
		}
		s.shell.CloseWorking()
	}
	return nil
}

// anyFigure returns a figure with a working of some depth.
func anyFigure(outlook *planner.Outlook) planner.Figure {
	for _, pot := range outlook.Pots {
		if !pot.Mix.IsZero() {
			return pot.Mix
		}
	}
	return planner.Figure{}
}
