package ink

import (
	"image/color"
	"math"
	"testing"
	"time"

	"pgregory.net/rapid"
)

var black = color.NRGBA{A: 255}

// area sums the cover of black paint on a clear sheet.
func area(s *Sheet) float64 {
	total := 0.0
	for i := 3; i < len(s.Image.Pix); i += 4 {
		total += float64(s.Image.Pix[i]) / 255
	}
	return total
}

// The painted area of a triangle inside the sheet is the area by the shoelace
// formula, to the rounding of 255 steps.
func TestFillCoversTheAreaOfATriangle(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		at := rapid.Float64Range(1, 39)
		shape := make([]Point, 3)
		for i := range shape {
			shape[i] = Point{at.Draw(t, "x"), at.Draw(t, "y")}
		}
		sheet := NewSheet(40, 40)
		sheet.Fill(Solid(black), shape)
		a, b, c := shape[0], shape[1], shape[2]
		want := math.Abs((b.X-a.X)*(c.Y-a.Y)-(c.X-a.X)*(b.Y-a.Y)) / 2
		if got := area(sheet); math.Abs(got-want) > 1 {
			t.Fatalf("area %.2f, want %.2f for %v", got, want, shape)
		}
	})
}

func TestFillIsClippedToTheSheet(t *testing.T) {
	sheet := NewSheet(10, 10)
	sheet.Rect(Solid(black), -100, -100, 5, 200)
	if got := area(sheet); math.Abs(got-50) > 1e-6 {
		t.Errorf("area %v, want 50", got)
	}
	sheet = NewSheet(10, 10)
	sheet.Fill(Solid(black), []Point{{-5, 5}, {5, -5}, {15, 5}, {5, 15}})
	if got := area(sheet); math.Abs(got-100) > 1 {
		t.Errorf("diamond over the whole sheet covers %v of 100", got)
	}
}

// Nothing is left behind by one shape that could spoil the next.
func TestFillLeavesNoResidue(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		at := rapid.Float64Range(-30, 60)
		sheet := NewSheet(20, 20)
		for range 3 {
			shape := make([]Point, 4)
			for i := range shape {
				shape[i] = Point{at.Draw(t, "x"), at.Draw(t, "y")}
			}
			sheet.Fill(Solid(black), shape)
		}
		for i, c := range sheet.cover {
			if c != 0 {
				t.Fatalf("cell %d holds %v", i, c)
			}
		}
	})
}

func TestStrokeIsAsWideAsAsked(t *testing.T) {
	sheet := NewSheet(60, 20)
	sheet.Stroke(Solid(black), 4, false, Point{10, 10}, Point{30, 10}, Point{50, 10})
	want := 40*4 + math.Pi*4 // bar and the two round ends
	if got := area(sheet); math.Abs(got-want) > 1.5 {
		t.Errorf("area %.2f, want %.2f", got, want)
	}
}

func TestDashDrawsOnAndOff(t *testing.T) {
	sheet := NewSheet(60, 10)
	sheet.Dash(Solid(black), 2, 6, 4, Point{0, 5}, Point{25, 5}, Point{50, 5})
	if got := area(sheet); math.Abs(got-60) > 1 { // 5 dashes of 6 by 2
		t.Errorf("area %.2f, want 60", got)
	}
}

// Every pattern must leave and cover some of the ground, and differ from every
// other, or areas could not be told apart without colour.
func TestPatternsDiffer(t *testing.T) {
	var sheets []*Sheet
	for p := Rising; p < PatternCount; p++ {
		sheet := NewSheet(84, 84)
		sheet.Rect(Hatched(black, p, 1), 0, 0, 84, 84)
		share := area(sheet) / (84 * 84)
		if share < 0.05 || share > 0.4 {
			t.Errorf("pattern %d covers %.2f of the ground", p, share)
		}
		for q, other := range sheets {
			same := 0
			for i := 3; i < len(sheet.Image.Pix); i += 4 {
				if (sheet.Image.Pix[i] > 127) == (other.Image.Pix[i] > 127) {
					same++
				}
			}
			if s := float64(same) / (84 * 84); s > 0.95 {
				t.Errorf("patterns %d and %d agree in %.2f of the ground", p, int(Rising)+q, s)
			}
		}
		sheets = append(sheets, sheet)
	}
}

func TestBlendOverAndUnder(t *testing.T) {
	sheet := NewSheet(1, 1)
	sheet.Rect(Solid(color.NRGBA{R: 200, G: 100, B: 50, A: 255}), 0, 0, 1, 1)
	sheet.Rect(Solid(color.NRGBA{R: 0, G: 0, B: 0, A: 128}), 0, 0, 1, 1)
	got := sheet.Image.NRGBAAt(0, 0)
	want := color.NRGBA{R: 100, G: 50, B: 25, A: 255}
	for _, d := range []int{int(got.R) - int(want.R), int(got.G) - int(want.G), int(got.B) - int(want.B), int(got.A) - int(want.A)} {
		if d < -1 || d > 1 {
			t.Fatalf("got %v, want %v", got, want)
		}
	}
}

// A 1,200 by 56 row with five hatched segments is what one line of the year
// costs; the ratio to clearing the same image is reported.
func BenchmarkRow(b *testing.B) {
	var clearing, drawing time.Duration
	for b.Loop() {
		start := time.Now()
		NewSheet(1200, 56)
		clearing += time.Since(start)
		start = time.Now()
		sheet := NewSheet(1200, 56)
		for i := range 5 {
			x := float64(i) * 240
			sheet.Rect(Solid(color.NRGBA{R: 200, A: 255}), x, 8, x+230, 48)
			sheet.Rect(Hatched(black, Pattern(i+1), 1), x, 8, x+230, 48)
		}
		drawing += time.Since(start)
	}
	b.ReportMetric(float64(drawing)/float64(clearing), "x-clear")
}
