package sketch

import (
	"fmt"
	"math"
	"reflect"
	"testing"

	"fourturn/plants"
)

func builtin(t *testing.T) *plants.Book {
	t.Helper()
	book, err := plants.Builtin()
	if err != nil {
		t.Fatal(err)
	}
	return book
}

// One plant always looks alike, or a person could not learn its picture.
func TestDrawingIsTheSameEveryTime(t *testing.T) {
	for _, p := range builtin(t).Plants()[:30] {
		for _, v := range []View{Side, Above} {
			first, again := Draw(p, v, Options{}), Draw(p, v, Options{})
			if !reflect.DeepEqual(first, again) {
				t.Fatalf("%s: two drawings differ", p.ID)
			}
		}
	}
}

// Every plant of the book is drawn from both sides, as large as the book says, and
// nothing but what hangs goes below the mix.
func TestEveryPlantIsDrawnToItsMeasures(t *testing.T) {
	for _, p := range builtin(t).Plants() {
		side, above := Draw(p, Side, Options{}), Draw(p, Above, Options{})
		for _, s := range []*Sketch{side, above} {
			if len(s.Marks) < 4 {
				t.Errorf("%s: only %d marks", p.ID, len(s.Marks))
			}
			for _, m := range s.Marks {
				for _, q := range m.Shape {
					if math.IsNaN(q.X+q.Y) || math.IsInf(q.X+q.Y, 0) {
						t.Fatalf("%s: a mark is nowhere", p.ID)
					}
				}
			}
		}
		if share := side.High.Y / side.Height; share < 0.6 || share > 1.5 {
			t.Errorf("%s is drawn %.2f times as tall as it is", p.ID, share)
		}
		if share := (side.High.X - side.Low.X) / side.Spread; (share < 0.5 || share > 1.6) && p.Kind != plants.CutStems {
			t.Errorf("%s is drawn %.2f times as wide as it is", p.ID, share)
		}
	}
}

// Drawings of any size and measures are made without fault.
func TestExtremeMeasures(t *testing.T) {
	for i, p := range builtin(t).Plants() {
		if i%6 != 0 {
			continue
		}
		for _, o := range []Options{
			{Pen: 1e-9}, {Pen: 10}, {Height: 1e-6, Spread: 1e-6}, {Height: 50, Spread: 0.01}, {Height: 0.01, Spread: 50}, {Rim: [2]float64{9, 9}},
		} {
			for _, v := range []View{Side, Above} {
				for _, m := range Draw(p, v, o).Marks {
					for _, q := range m.Shape {
						if math.IsNaN(q.X + q.Y) {
							t.Fatalf("%s %+v: a mark is nowhere", p.ID, o)
						}
					}
				}
			}
		}
	}
}

// An empty plant, such as one that a person has begun to write down, is drawn too.
func TestAnUnfinishedPlantIsDrawn(t *testing.T) {
	for _, v := range []View{Side, Above} {
		if s := Draw(&plants.Plant{ID: "new"}, v, Options{}); len(s.Marks) == 0 {
			t.Error("nothing is drawn")
		}
	}
}

// Every word of the vocabularies is drawn, and differently from the others.
func TestEveryFormIsDrawn(t *testing.T) {
	base, _ := builtin(t).Plant("pansy")
	count := func(change func(*plants.Plant)) *Sketch {
		p := base.Clone()
		change(p)
		return Draw(p, Side, Options{})
	}
	seen := map[string]string{}
	see := func(word string, s *Sketch) {
		if len(s.Marks) == 0 {
			t.Errorf("%s: nothing is drawn", word)
		}
		key := fmt.Sprint(s.Marks)
		if other, ok := seen[key]; ok {
			t.Errorf("%s looks like %s", word, other)
		}
		seen[key] = word
	}
	for _, h := range plants.Habits {
		if h != plants.Mound { // the pansy's own
			see("habit "+string(h), count(func(p *plants.Plant) { p.Drawing.Habit = h }))
		}
	}
	for _, f := range plants.LeafForms {
		if f != plants.Spoon {
			see("leaf "+string(f), count(func(p *plants.Plant) { p.Drawing.Leaf.Form = f }))
		}
	}
	for _, f := range plants.FlowerForms {
		see("flower "+string(f), count(func(p *plants.Plant) { p.Drawing.Flower.Form = f }))
	}
}
