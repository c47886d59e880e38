package plantdraw

import (
	"cmp"
	"image"
	"slices"
	"testing"
	"time"

	"fourturn/app/widgets/ink"
	"fourturn/plants"
	"fourturn/plants/sketch"
)

func builtin(t testing.TB) []*plants.Plant {
	t.Helper()
	book, err := plants.Builtin()
	if err != nil {
		t.Fatal(err)
	}
	return book.Plants()
}

// small is a drawing in black on white, reduced so that only what one sees at a
// glance counts: how dark each of 32 by 32 parts is.
func small(p *plants.Plant) [32 * 32]float64 {
	const size, part = 96, 3
	img := Portrait(p, sketch.Side, size, size, 1, Print)
	var out [32 * 32]float64
	for y := range size {
		for x := range size {
			c := img.NRGBAAt(x, y)
			dark := float64(c.A) / 255 * (1 - float64(c.R)/255)
			if c.A > 0 {
				dark = max(dark, 0.25) // paper of a leaf is not the paper around it
			}
			out[y/part*32+x/part] += dark / (part * part)
		}
	}
	return out
}

// unlike is by how much two drawings differ: the sum of the differences of their
// parts by the sum of what is darker. 0 is the same, 1 has nothing in common.
func unlike(a, b *[32 * 32]float64) float64 {
	differ, all := 0.0, 0.0
	for i := range a {
		differ += max(a[i]-b[i], b[i]-a[i])
		all += max(a[i], b[i])
	}
	return differ / all
}

// leastUnlike is the share by which any two drawings in one colour must differ.
const leastUnlike = 0.15

type pair struct {
	a, b   string
	unlike float64
}

// Distinct plants have distinct pictures, even without colour. Run with -v, the
// nearest pairs are listed.
func TestPlantsDoNotLookAlike(t *testing.T) {
	all := builtin(t)
	drawn := make([][32 * 32]float64, len(all))
	for i, p := range all {
		drawn[i] = small(p)
	}
	var pairs []pair
	for i := range all {
		for j := range i {
			pairs = append(pairs, pair{all[i].ID, all[j].ID, unlike(&drawn[i], &drawn[j])})
		}
	}
	slices.SortFunc(pairs, func(a, b pair) int { return cmp.Compare(a.unlike, b.unlike) })
	for i, near := range pairs[:12] {
		t.Logf("%d: %s and %s differ by %.2f", i+1, near.a, near.b, near.unlike)
	}
	for _, near := range pairs {
		if near.unlike < leastUnlike {
			t.Errorf("%s and %s look alike: %.2f", near.a, near.b, near.unlike)
		}
	}
}

// In one colour there is nothing but ink, paper and what lies between.
func TestPrintHasOneColour(t *testing.T) {
	for _, p := range builtin(t)[:40] {
		img := Portrait(p, sketch.Side, 120, 120, 1, Print)
		for i := 0; i < len(img.Pix); i += 4 {
			if img.Pix[i] != img.Pix[i+1] || img.Pix[i] != img.Pix[i+2] {
				t.Fatalf("%s has colour in print", p.ID)
			}
		}
	}
}

// A drawing stays within its room at every size.
func TestPortraitFillsItsRoom(t *testing.T) {
	for _, p := range builtin(t) {
		for _, size := range []image.Point{{28, 28}, {120, 50}} {
			img := Portrait(p, sketch.Side, size.X, size.Y, 1, Print)
			box, cover := painted(img)
			if cover == 0 {
				t.Errorf("%s at %v is empty", p.ID, size)
			}
			if wide, high := box.Dx(), box.Dy(); wide < size.X*7/10 && high < size.Y*7/10 {
				t.Errorf("%s at %v fills only %v", p.ID, size, box)
			}
		}
	}
}

func painted(img *image.NRGBA) (box image.Rectangle, cover int) {
	for y := range img.Rect.Dy() {
		for x := range img.Rect.Dx() {
			if img.NRGBAAt(x, y).A > 20 {
				box = box.Union(image.Rect(x, y, x+1, y+1))
				cover++
			}
		}
	}
	return box, cover
}

// Patterns leave ground and cover some, and those of plants with other flowers
// differ.
func TestPatternsOfFlowers(t *testing.T) {
	for _, p := range builtin(t) {
		tile := Pattern(p, 1)
		sum := 0
		for _, c := range tile.cover {
			sum += int(c)
		}
		if share := float64(sum) / 255 / float64(len(tile.cover)); share < 0.03 || share > 0.6 {
			t.Errorf("%s covers %.2f of the ground", p.ID, share)
		}
	}
}

// What a drawing of 200 by 200 costs, by what clearing a sheet of 1,280 by 800 does.
func BenchmarkPortrait(b *testing.B) {
	all := builtin(b)
	var drawing, clearing time.Duration
	i := 0
	for b.Loop() {
		start := time.Now()
		Portrait(all[i%len(all)], sketch.Side, 200, 200, 1, Print)
		drawing += time.Since(start)
		start = time.Now()
		ink.NewSheet(1280, 800)
		clearing += time.Since(start)
		i++
	}
	b.ReportMetric(float64(drawing)/float64(clearing), "x-clear")
}
