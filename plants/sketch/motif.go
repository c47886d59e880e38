package sketch

import "fourturn/plants"

// Motif draws one flower of a plant from the front, or one leaf where it is grown for
// its leaves, within 1 to each side. Pens is how many widths of the pen go into 1.
func Motif(p *plants.Plant, pens float64) []Mark {
	a := newArtist(p, Above, Options{Pen: 1 / pens, Height: 2, Spread: 2})
	a.character()
	if a.drawing.Flower.Form == plants.NoFlower {
		a.leaf = 2
		lean := []float64{0}
		if b, narrow := blades[a.drawing.Leaf.Form]; narrow && b.half < 0.13 || a.drawing.Leaf.Form == plants.NoLeaf { // a tuft
			lean = []float64{-0.7, -0.35, 0, 0.35, 0.7}
		}
		for _, x := range lean {
			a.drawLeaf(leafAt{base: space{0.1 * x, -1, 0}, along: space{x, 1, 0}, length: 2 - 0.6*x*x, flat: true})
			if a.drawing.Leaf.Form == plants.NoLeaf {
				a.drawBranch(bow(space{0.1 * x, -1, 0}, space{0.5 * x, 0, 0}, space{x, 1 - x*x, 0}), 2, 1, Tone{Kind: Ink})
			}
		}
	} else {
		a.flower = 2
		a.drawFlower(flowerAt{faces: space{0, -0.3, 1}, width: 2, colour: a.bloom})
	}
	var marks []Mark
	for _, o := range a.organs {
		marks = append(marks, o.marks...)
	}
	return marks
}
