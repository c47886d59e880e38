package widgets

import (
	"math"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/test"
	"pgregory.net/rapid"

	"fourturn/app/theme"
	"fourturn/app/widgets/golden"
)

// tapered returns the outline of a pot: half widths at the base and at the rim.
func tapered(base, rim, y0, y1 float64) []Metres {
	return []Metres{{-base, y0}, {base, y0}, {rim, y1}, {-rim, y1}}
}

func circle(r float64) []Metres {
	points := make([]Metres, 48)
	for i := range points {
		sin, cos := math.Sincos(2 * math.Pi * float64(i) / 48)
		points[i] = Metres{r * cos, r * sin}
	}
	return points
}

// bowl is a round pot of 40 cm at the rim with a reservoir.
func bowl() PotData {
	return PotData{
		Name: "Round pot",
		Side: &PotSide{
			Outer: tapered(0.15, 0.2, 0, 0.36), Inner: tapered(0.138, 0.185, 0.02, 0.36),
			MixFrom: 0.08, MixTo: 0.33, WaterFrom: 0.02, WaterTo: 0.08,
			Plants: []PotPlant{
				{X: 0, Spread: 0.2, Height: 0.42, Habit: Upright, Category: 0},
				{X: -0.09, Spread: 0.2, Height: 0.18, Habit: Mounding, Category: 1},
				{X: 0.09, Spread: 0.2, Height: 0.16, Habit: Mounding, Category: 4},
				{X: 0.15, Spread: 0.22, Height: 0.14, Habit: Trailing, Category: 5},
				{X: -0.15, Spread: 0.22, Height: 0.14, Habit: Trailing, Category: 5},
			},
		},
		Plan: &PotPlan{
			Outer: circle(0.2), Inner: circle(0.185),
			Plants: []PotPlant{
				{X: 0, Y: 0, Spread: 0.13, Category: 0, Letter: "A"},
				{X: -0.1, Y: 0.05, Spread: 0.11, Category: 1, Letter: "B"},
				{X: 0.1, Y: 0.05, Spread: 0.11, Category: 4, Letter: "C"},
				{X: -0.06, Y: -0.11, Spread: 0.09, Category: 5, Letter: "D"},
				{X: 0.06, Y: -0.11, Spread: 0.09, Category: 5, Letter: "D"},
			},
		},
		Dimensions: []PotDimension{
			{SideView, Metres{-0.15, 0}, Metres{0.15, 0}, Below, "30 cm"},
			{SideView, Metres{-0.2, 0}, Metres{-0.2, 0.36}, LeftOf, "36 cm"},
			{SideView, Metres{0.185, 0.33}, Metres{0.185, 0.36}, RightOf, "3 cm"},
			{PlanView, Metres{-0.2, 0}, Metres{0.2, 0}, Below, "40 cm"},
		},
	}
}

// trough is a rectangular pot of 90 cm by 25 cm, empty.
func trough() PotData {
	rect := func(w, d float64) []Metres { return []Metres{{-w, -d}, {w, -d}, {w, d}, {-w, d}} }
	return PotData{
		Name: "Trough",
		Side: &PotSide{Outer: tapered(0.42, 0.45, 0, 0.3), Inner: tapered(0.41, 0.435, 0.02, 0.3), MixFrom: 0.02, MixTo: 0.27},
		Plan: &PotPlan{Outer: rect(0.45, 0.125), Inner: rect(0.435, 0.11)},
		Dimensions: []PotDimension{
			{SideView, Metres{-0.45, 0.3}, Metres{0.45, 0.3}, Above, "90 cm"},
			{SideView, Metres{-0.45, 0}, Metres{-0.45, 0.3}, LeftOf, "30 cm"},
			{PlanView, Metres{0.45, -0.125}, Metres{0.45, 0.125}, RightOf, "25 cm"},
		},
	}
}

func TestPotDrawingLook(t *testing.T) {
	golden.Check(t, "pot", fyne.NewSize(560, 560), func() fyne.CanvasObject {
		least := fyne.NewSize(400, 280)
		return container.NewGridWithRows(2, NewPotDrawing(bowl(), least), NewPotDrawing(trough(), least))
	})
}

func TestPotTileLook(t *testing.T) {
	golden.Check(t, "pottile", fyne.NewSize(520, 190), func() fyne.CanvasObject {
		bench := func(d PotData) PotData {
			d.Plan, d.Dimensions, d.UnitsPerMetre = nil, nil, 130
			return d
		}
		plain := NewPotTile(PotTileData{Drawing: bench(bowl()), Label: "Round bowl by the door", Detail: "27 L, terrace", Count: "× 12"}, func() {})
		chosen := NewPotTile(PotTileData{Drawing: bench(trough()), Label: "Trough", Detail: "58 L, terrace", Mark: theme.IconWarning, Selected: true}, func() {})
		focused := NewPotTile(PotTileData{Drawing: bench(bowl()), Label: "Stone urn", Detail: "33 L, steps"}, func() {})
		focused.FocusGained()
		return container.NewHBox(plain, chosen, focused)
	})
}

// Whatever the size, the drawing keeps its proportions and stays inside.
func TestPotDrawingIsToScale(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		size := fyne.NewSize(rapid.Float32Range(150, 2000).Draw(t, "w"), rapid.Float32Range(120, 2000).Draw(t, "h"))
		data := rapid.SampledFrom([]PotData{bowl(), trough()}).Draw(t, "pot")
		s := layOut(data, size, 12)
		if s.scale <= 0 {
			return // too small to draw at all
		}
		for v, outer := range [][]Metres{data.Side.Outer, data.Plan.Outer} {
			for _, p := range outer {
				at := s.point(PotView(v), p)
				if at.X < 0 || at.Y < 0 || at.X > float64(size.Width)+0.01 || at.Y > float64(size.Height)+0.01 {
					t.Fatalf("%v lies at %v outside %v", p, at, size)
				}
			}
			a, b := s.point(PotView(v), Metres{0, 0}), s.point(PotView(v), Metres{0.1, 0.2})
			if math.Abs((b.X-a.X)*2-(a.Y-b.Y)) > 1e-6 {
				t.Fatalf("0.1 m across is %v, 0.2 m up is %v", b.X-a.X, a.Y-b.Y)
			}
		}
	})
}

func TestBetweenCutsAtHeights(t *testing.T) {
	part := between(tapered(0.1, 0.2, 0, 1), 0.25, 0.5)
	b := boxOf(part)
	if b.y0 != 0.25 || b.y1 != 0.5 || math.Abs(b.x1-0.15) > 1e-12 {
		t.Errorf("part %v", part)
	}
	if got := between(tapered(0.1, 0.2, 0, 1), 2, 3); len(got) != 0 {
		t.Errorf("above the pot there is %v", got)
	}
}

func TestPotDrawingSurvivesNothing(t *testing.T) {
	golden.App(t, theme.Options{})
	for _, data := range []PotData{{}, {Side: &PotSide{}}, {Plan: &PotPlan{}, Dimensions: []PotDimension{{View: PlanView, Label: "x"}}}} {
		d := NewPotDrawing(data, fyne.NewSize(50, 50))
		w := test.NewTempWindow(t, d)
		w.Resize(fyne.NewSize(200, 100))
		w.Canvas().Capture()
		for _, o := range test.TempWidgetRenderer(t, d).Objects() {
			if text, ok := o.(*canvas.Text); ok && text.Visible() {
				t.Errorf("%q is written on an empty drawing", text.Text)
			}
		}
	}
}
