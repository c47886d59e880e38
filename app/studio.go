package main

import (
	"fmt"
	"image/png"
	"os"
	"path/filepath"

	"fyne.io/fyne/v2"

	"fourturn/app/theme"
	"fourturn/planner"
)

// studio is a window in memory with a plan in it, to have its picture taken. It
// reads and writes nothing of the person's.
type studio struct {
	*wiring
	desk  *desk
	state string // a folder of its own for the store
}

// newStudio opens a plan in the example's look. It needs a build that draws in
// memory.
func newStudio(t *terminal, plan *planner.Plan, options theme.Options, size fyne.Size) (*studio, error) {
	state, err := os.MkdirTemp("", "fourturn-")
	if err != nil {
		return nil, err
	}
	s := &studio{desk: newDesk(), state: state}
	s.wiring = newWiring(t, memoryApp(), newStore(state, t.now), s.desk.post)
	s.folder = state
	s.window = s.app.NewWindow(appName)
	s.open()
	s.shell.Settings().SetLook(options)
	s.app.Settings().SetTheme(theme.New(options))
	s.window.Resize(size)
	s.shell.Start(plan)
	s.wait()
	return s, nil
}

// wait runs what the session has to hand back.
func (s *studio) wait() {
	s.desk.until(func() bool {
		_, current := s.session.Outlook()
		return current
	})
}

// close ends the studio and leaves nothing behind.
func (s *studio) close() {
	s.session.Discard()
	s.session.Close()
	s.window.Close()
	_ = os.RemoveAll(s.state)
}

// picture writes what the window shows as PNG.
func (s *studio) picture(path string) error {
	layTwice(s.window)
	return writePNG(path, s.window.Canvas())
}

// layTwice lays a window out twice, because text that wraps knows its height only once
// it knows its width.
func layTwice(w fyne.Window) {
	size := w.Canvas().Size()
	w.Resize(size.AddWidthHeight(1, 1))
	w.Resize(size)
}

func writePNG(path string, c fyne.Canvas) error {
	if err := os.MkdirAll(filepath.Dir(path), 0o755); err != nil {
		return err
	}
	out, err := os.Create(path)
	if err != nil {
		return err
	}
	if err := png.Encode(out, c.Capture()); err != nil {
		_ = out.Close()
		return err
	}
	return out.Close()
}

// pictureName says what a picture shows: "pots-dark-900x600.png".
func pictureName(what string, options theme.Options, size fyne.Size) string {
	page := "light"
	if options.Mode == theme.Dark {
		page = "dark"
	}
	if options.HighContrast {
		page += "-contrast"
	}
	return fmt.Sprintf("%s-%s-%.0fx%.0f.png", what, page, size.Width, size.Height)
}
