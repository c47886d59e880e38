package main

import (
	"bytes"
	"math"
	"os"
	"path/filepath"
	"testing"

	"fourturn/app/widgets/ink"
)

// The outlines in use are those that this program makes of the strokes.
func TestIconsAreUpToDate(t *testing.T) {
	dir := filepath.Join("..", "..", "..", "assets", "icons")
	files, err := filepath.Glob(filepath.Join(dir, "strokes", "*.svg"))
	if err != nil || len(files) == 0 {
		t.Fatalf("no strokes: %v", err)
	}
	for _, file := range files {
		source, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		want, err := Outline(source)
		if err != nil {
			t.Fatalf("%s: %v", file, err)
		}
		got, err := os.ReadFile(filepath.Join(dir, filepath.Base(file)))
		if err != nil || !bytes.Equal(got, want) {
			t.Errorf("%s is out of date; run: go run ./app/theme/outline assets/icons", filepath.Base(file))
		}
	}
}

// The four arcs of radius 1 from (1, 0) to (0, 1), by SVG's rules: sweep goes the
// way the clock does, since y goes down.
func TestArcFollowsItsCircle(t *testing.T) {
	half := math.Sqrt2 / 2
	for _, c := range []struct {
		large, sweep   bool
		centre, middle ink.Point
	}{
		{false, true, ink.Point{}, ink.Point{X: half, Y: half}},
		{true, false, ink.Point{}, ink.Point{X: -half, Y: -half}},
		{false, false, ink.Point{X: 1, Y: 1}, ink.Point{X: 1 - half, Y: 1 - half}},
		{true, true, ink.Point{X: 1, Y: 1}, ink.Point{X: 1 + half, Y: 1 + half}},
	} {
		nearest := math.Inf(1)
		for _, p := range arc(ink.Point{X: 1, Y: 0}, 1, c.large, c.sweep, ink.Point{X: 0, Y: 1}) {
			if r := math.Hypot(p.X-c.centre.X, p.Y-c.centre.Y); math.Abs(r-1) > 1e-9 {
				t.Fatalf("large %v sweep %v: %v lies %v from %v", c.large, c.sweep, p, r, c.centre)
			}
			nearest = math.Min(nearest, math.Hypot(p.X-c.middle.X, p.Y-c.middle.Y))
		}
		if nearest > 0.1 {
			t.Errorf("large %v sweep %v: the arc passes %v from %v", c.large, c.sweep, nearest, c.middle)
		}
	}
}

func TestOutlineRefusesWhatItDoesNotKnow(t *testing.T) {
	for _, source := range []string{
		`<svg><text>x</text></svg>`,
		`<svg><path d="M0"/></svg>`,
		`<svg><path d="L1 1"/></svg>`,
		`<svg><path d="Mx y"/></svg>`,
		`no svg`,
	} {
		if out, err := Outline([]byte(source)); err == nil {
			t.Errorf("%s gives %s", source, out)
		}
	}
}
