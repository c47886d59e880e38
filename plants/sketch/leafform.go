package sketch

import (
	"math"

	"fourturn/plants"
)

// Outlines of leaves lie on a length of 1: X runs along the midrib from the base to
// the tip, Y across it. The figures are drawn by eye from the meaning of the words
// in botany (such as H. Beentje, "The Kew Plant Glossary", 2010).

// blade is the outline of a leaf that is widest in one place.
type blade struct {
	half      float64 // width of the half at the widest place
	widest    float64
	base, tip float64 // exponents: below 1 blunt, above 1 drawn out
}

var blades = map[plants.LeafForm]blade{
	plants.Ovate:      {0.29, 0.32, 0.6, 1.1},
	plants.Elliptic:   {0.21, 0.48, 0.8, 0.9},
	plants.Lanceolate: {0.125, 0.34, 0.8, 1.15},
	plants.Spoon:      {0.19, 0.74, 1.6, 0.55},
	plants.Linear:     {0.05, 0.5, 0.6, 0.75},
	plants.Strap:      {0.055, 0.55, 0.35, 0.5},
	plants.Sword:      {0.055, 0.3, 0.4, 1},
	plants.GrassBlade: {0.022, 0.3, 0.4, 0.9},
	plants.Paddle:     {0.19, 0.5, 0.6, 0.65},
	plants.Succulent:  {0.15, 0.6, 0.6, 0.5},
	plants.Tube:       {0.024, 0.3, 0.4, 1},
	plants.OakLobed:   {0.24, 0.6, 0.9, 0.6},
	plants.Scale:      {0.2, 0.4, 0.7, 0.9},
}

func (b blade) at(u float64) float64 {
	if u < b.widest {
		return b.half * math.Pow(math.Sin(math.Pi/2*u/b.widest), b.base)
	}
	return b.half * math.Pow(math.Max(0, math.Cos(math.Pi/2*(u-b.widest)/(1-b.widest))), b.tip)
}

// halves are outlines of which one half is given, from the tip to the base.
var halves = map[plants.LeafForm][]Point{
	plants.Heart: {{1, 0}, {0.78, 0.16}, {0.5, 0.33}, {0.2, 0.4}, {-0.04, 0.33}, {-0.1, 0.16}, {0.02, 0.02}},
	plants.Arrow: {{1, 0}, {0.7, 0.13}, {0.35, 0.23}, {0.05, 0.27}, {-0.22, 0.3}, {-0.3, 0.24}, {-0.12, 0.1}, {0.03, 0.02}},
	plants.Kidney: {
		{0.86, 0}, {0.84, 0.24}, {0.66, 0.48}, {0.36, 0.58}, {0.04, 0.5}, {-0.1, 0.28}, {0.0, 0.08}, {0.08, 0.01},
	},
	plants.Round: {{1, 0}, {0.95, 0.22}, {0.78, 0.41}, {0.5, 0.48}, {0.22, 0.41}, {0.05, 0.22}, {0, 0.02}},
}

// lobes are outlines with corners, one half, from the tip to the base.
var lobes = map[plants.LeafForm][]Point{
	plants.IvyLobed: {{1, 0}, {0.7, 0.13}, {0.56, 0.17}, {0.66, 0.46}, {0.36, 0.36}, {0.2, 0.34}, {0.1, 0.5}, {-0.06, 0.3}, {-0.08, 0.12}, {0.03, 0.02}},
	plants.Palmate: {
		{1, 0},
		{0.78, 0.14},
		{0.46, 0.1},
		{0.62, 0.34},
		{0.66, 0.56},
		{0.42, 0.46},
		{0.24, 0.24},
		{0.2, 0.5},
		{0.08, 0.62},
		{-0.02, 0.4},
		{0.02, 0.16},
		{-0.16, 0.24},
		{-0.2, 0.14},
		{0.02, 0.02},
	},
}

// outline returns the outline of a simple leaf. Teeth is how many there are on a
// side; 0 leaves them out.
func outline(l plants.Leaf, narrow float64, teeth int) []Point {
	var half []Point
	switch {
	case halves[l.Form] != nil:
		half = flowing(halves[l.Form]...)
	case lobes[l.Form] != nil:
		half = softened(lobes[l.Form])
	default:
		b, ok := blades[l.Form]
		if !ok {
			b = blades[plants.Elliptic]
		}
		half = bladeHalf(b, l.Form == plants.OakLobed)
	}
	for i := range half {
		half[i].Y *= narrow
	}
	half = edged(half, l.Edge, teeth)
	whole := make([]Point, 0, 2*len(half))
	whole = append(whole, half...)
	for i := len(half) - 1; i >= 0; i-- {
		whole = append(whole, Point{half[i].X, -half[i].Y})
	}
	return whole
}

func bladeHalf(b blade, lobed bool) []Point {
	const steps = 22
	half := make([]Point, 0, steps+1)
	for i := range steps + 1 {
		u := 1 - float64(i)/steps
		v := b.at(u)
		if lobed {
			v *= 0.66 + 0.34*math.Cos(2*math.Pi*4*(u-0.1))
		}
		half = append(half, Point{u, v})
	}
	return half
}

// softened rounds the lines between corners, and keeps the corners.
func softened(corners []Point) []Point {
	var out []Point
	for i := 0; i+1 < len(corners); i++ {
		p, q := corners[i], corners[i+1]
		bulge := q.minus(p).across().times(-0.06)
		for j := range 3 {
			t := float64(j) / 3
			out = append(out, between(p, q, t).plus(bulge.times(4*t*(1-t))))
		}
	}
	return append(out, corners[len(corners)-1])
}

// samples is how many points stand for one tooth.
const samples = 8

// edged gives a half outline its margin.
func edged(half []Point, edge plants.LeafEdge, teeth int) []Point {
	if edge == plants.Smooth || edge == "" || teeth == 0 {
		return half
	}
	lengths := make([]float64, len(half))
	for i := 1; i < len(half); i++ {
		lengths[i] = lengths[i-1] + half[i].minus(half[i-1]).length()
	}
	total := lengths[len(half)-1]
	n := teeth * samples
	out := make([]Point, 0, n+1)
	at := 0
	for i := range n + 1 {
		s := total * float64(i) / float64(n)
		for at+2 < len(half) && lengths[at+1] < s {
			at++
		}
		t := (s - lengths[at]) / math.Max(1e-9, lengths[at+1]-lengths[at])
		p := between(half[at], half[at+1], t)
		out = append(out, onEdge(p, half[at], half[at+1], edge, float64(i)/samples, float64(teeth)))
	}
	return out
}

// onEdge moves a point of the margin out; phase counts teeth from the tip.
func onEdge(p, from, to Point, edge plants.LeafEdge, phase, teeth float64) Point {
	out := to.minus(from).unit(Point{-1, 0}).across().times(-1)
	saw := phase - math.Floor(phase)
	size := 0.5 / teeth
	switch edge {
	case plants.Toothed:
		return p.plus(out.times(size * 0.55 * (1 - saw)))
	case plants.Scalloped:
		return p.plus(out.times(size * 0.8 * math.Abs(math.Sin(math.Pi*phase))))
	case plants.Frilled:
		return p.plus(out.times(size * 1.25 * math.Sin(2*math.Pi*phase)))
	case plants.Spiny:
		return p.plus(out.times(size * 1.3 * math.Pow(math.Max(0, 1-3*math.Abs(saw-0.5)), 1.5)))
	case plants.Wavy:
		return p.plus(out.times(size * 0.22 * math.Sin(2*math.Pi*phase)))
	case plants.Smooth:
	}
	return p
}

// teethOf returns how many teeth a pen can draw along one side of a leaf.
func (a *artist) teethOf(edge plants.LeafEdge, length float64) int {
	most := map[plants.LeafEdge]float64{plants.Toothed: 11, plants.Scalloped: 8, plants.Frilled: 9, plants.Spiny: 5, plants.Wavy: 4}[edge]
	n := math.Min(most, length/(3.2*a.pen))
	if n < 3 {
		return 0
	}
	return int(n)
}
