package main

import (
	"bytes"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"

	"fourturn/app/desktop"
	"fourturn/app/theme"
	"fourturn/app/words"
	"fourturn/assets"
)

// runDemo does the main job without a display: it works out the example plan and
// writes the plan, the figures, the calendar and the main screens into a folder.
func runDemo(t *terminal, args []string) int {
	o, ok := parseOptions(args, false, "--out", "--today")
	if !ok || o.out == "" {
		return usage(t, "demo")
	}
	if !o.today.IsZero() {
		t.now = todayOf(o.today)
	}
	if err := os.MkdirAll(o.out, 0o755); err != nil {
		fmt.Fprintln(t.err, err)
		return exitFault
	}
	plan, err := writeExample(t, o.out)
	if err != nil {
		fmt.Fprintln(t.err, err)
		return exitFault
	}
	if code := writeDemoText(t, plan, o.out); code != exitGood {
		return code
	}
	if !headless {
		t.complain("desktop.no_pictures")
		return exitGood
	}
	if err := drawDemo(t, o.out); err != nil {
		fmt.Fprintln(t.err, err)
		return exitFault
	}
	return exitGood
}

// writeExample writes the example plan into a folder and returns its path. A file of
// that name that holds something else may be somebody's plan: it stays, and the
// example gets a number.
func writeExample(t *terminal, folder string) (string, error) {
	const mostTries = 1000
	for n := range mostTries {
		path := filepath.Join(folder, "example.yaml")
		if n > 0 {
			path = filepath.Join(folder, fmt.Sprintf("example-%d.yaml", n+1))
		}
		there, err := os.ReadFile(path)
		switch {
		case errors.Is(err, fs.ErrNotExist):
			return path, os.WriteFile(path, assets.Example, 0o644)
		case err != nil:
			return "", err
		case bytes.Equal(there, assets.Example):
			return path, nil
		}
		t.complain("command.demo_kept", words.A{"file": path})
	}
	return "", fmt.Errorf("%s: %w", folder, fs.ErrExist)
}

// writeDemoText writes the figures, for reading and as JSON, and the calendar, by
// the same commands that a person would use.
func writeDemoText(t *terminal, plan, folder string) int {
	day := t.today().String()
	for _, one := range []struct {
		file string
		args []string
	}{
		{"figures.txt", []string{plan, "--today", day}},
		{"figures.json", []string{plan, "--json", "--today", day}},
	} {
		path := filepath.Join(folder, one.file)
		out, err := os.Create(path)
		if err != nil {
			fmt.Fprintln(t.err, err)
			return exitFault
		}
		here := *t
		here.out = out
		code := runFigures(&here, one.args)
		if err := out.Close(); err != nil {
			fmt.Fprintln(t.err, err)
			return exitFault
		}
		if code != exitGood {
			return code
		}
		t.say("desktop.written", words.A{"path": path})
	}
	return runCalendar(t, []string{plan, "-o", filepath.Join(folder, "calendar.ics"), "--today", day})
}

// drawDemo draws every room with the example, in the size of the first start.
func drawDemo(t *terminal, folder string) error {
	s, err := newStudio(t, examplePlan(), theme.Options{Mode: theme.Light, TextScale: 1}, desktop.FirstWindow)
	if err != nil {
		return err
	}
	defer s.close()
	return s.drawRooms(func(room string) string {
		path := filepath.Join(folder, room+".png")
		t.say("desktop.written", words.A{"path": path})
		return path
	})
}
