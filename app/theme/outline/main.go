// Outline turns icons drawn in strokes into filled outlines, because the toolkit
// recolours the fills of an SVG and not its strokes. Run it at the top of the
// project after changing a drawing:
//
//	go run ./app/theme/outline assets/icons
//
// It reads DIR/strokes/*.svg and writes DIR/*.svg. It knows paths (M L H V C A Z,
// absolute), circles, ellipses and rectangles; strokes have round ends.
package main

import (
	"fmt"
	"os"
	"path/filepath"
)

func main() {
	if len(os.Args) != 2 {
		fmt.Fprintln(os.Stderr, "usage: outline DIR")
		os.Exit(2)
	}
	if err := run(os.Args[1]); err != nil {
		fmt.Fprintln(os.Stderr, "outline:", err)
		os.Exit(1)
	}
}

func run(dir string) error {
	files, err := filepath.Glob(filepath.Join(dir, "strokes", "*.svg"))
	if err != nil {
		return err
	}
	for _, file := range files {
		source, err := os.ReadFile(file)
		if err != nil {
			return err
		}
		outlined, err := Outline(source)
		if err != nil {
			return fmt.Errorf("%s: %w", file, err)
		}
		if err := os.WriteFile(filepath.Join(dir, filepath.Base(file)), outlined, 0o644); err != nil {
			return err
		}
	}
	return nil
}
