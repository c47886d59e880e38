package sketch

import (
	"math"

	"fourturn/plants"
)

// leaflets draws pairs of leaflets along a midrib and one at its end. Long is how
// long a leaflet is in the middle; bare is the share of the midrib without any.
func (p *leafPen) leaflets(pairs int, long float64, form plants.LeafForm, bare float64) {
	p.line(1, Tone{Kind: Ink}, p.point(Point{0, 0}), p.point(Point{0.33, 0}), p.point(Point{0.66, 0}), p.point(Point{0.95, 0}))
	for i := range pairs {
		t := float64(i) / float64(pairs)
		u := bare + (0.94-bare)*t
		size := long * (0.75 + 0.7*math.Sin(math.Pi*(0.15+0.8*t)))
		if p.leaf.Form == plants.Frond {
			size = long * (0.35 + 1.15*math.Pow(math.Sin(math.Pi*(0.12+0.86*t)), 0.8))
		}
		for _, side := range []float64{1, -1} {
			p.leaflet(Point{u, 0}, size, side*degrees(58-14*t), form)
		}
	}
	p.leaflet(Point{0.88, 0}, long*0.8, 0, form)
}

// leaflet draws one leaflet at a point of the ribbon, turned away from the midrib.
func (p *leafPen) leaflet(at Point, size, turn float64, form plants.LeafForm) {
	leaf := plants.Leaf{Form: form, Edge: p.leaf.Edge}
	teeth := 0
	if p.leaf.Edge != plants.Wavy {
		teeth = p.teethOf(p.leaf.Edge, size*p.length)
	}
	sin, cos := math.Sincos(turn)
	var shape []Point
	for _, q := range outline(leaf, 1.15, teeth) {
		x, y := q.X*size, q.Y*size
		shape = append(shape, p.point(at.plus(Point{x*cos - y*sin, x*sin + y*cos})))
	}
	p.marks = append(p.marks, Mark{Shape: shape, Closed: true, Fill: p.tone(p.base, 0.03*sin), Line: Tone{Kind: Ink}, Weight: 0.8})
	if size*p.length > 8*p.pen {
		end := at.plus(Point{size * 0.8 * cos, size * 0.8 * sin})
		p.line(0.6, Tone{Kind: Faint}, p.point(at), p.point(end))
	}
	if darkness(p.base) > 1 {
		for i := range 3 {
			k := size * (0.25 + 0.2*float64(i))
			from := at.plus(Point{k * cos, k * sin})
			to := from.plus(Point{size * (0.1*cos - 0.16*sin), size * (0.1*sin + 0.16*cos)})
			p.marks = append(p.marks, Mark{Shape: []Point{p.point(from), p.point(to)}, Line: Tone{Kind: Ink}, Weight: 0.5, Mono: true})
		}
	}
}

// feather draws a leaf of threads.
func (p *leafPen) feather() {
	dark, light := p.tone(p.base, -0.32), p.tone(p.base, -0.12)
	p.line(1.3, dark, p.point(Point{0, 0}), p.point(Point{0.35, 0}), p.point(Point{0.7, 0}), p.point(Point{1, 0}))
	pairs := int(clamp(p.length/(4.5*p.pen), 3, 8))
	for i := range pairs {
		t := float64(i) / float64(pairs)
		u := 0.16 + 0.76*t
		long := 0.36 * math.Sin(math.Pi*(0.3+0.62*t)) * p.slim
		for _, side := range []float64{1, -1} {
			tip := Point{u + long*0.75, side * long}
			half := Point{u + long*0.34, side * long * 0.52}
			p.line(1.1, dark, p.point(Point{u, 0}), p.point(half), p.point(tip))
			if long*p.length > 6*p.pen {
				p.line(0.9, light, p.point(half), p.point(half.plus(Point{long * 0.5, side * long * 0.1})))
				p.line(0.9, light, p.point(half), p.point(half.plus(Point{long * 0.08, side * long * 0.5})))
			}
		}
	}
}

// needles draws a twig with needles on both sides.
func (p *leafPen) needles() {
	long := clamp(float64(p.leaf.Length), 4.5*p.pen, p.length*0.9) / p.length
	p.line(1.3, p.tone(plants.Brown, -0.1), p.point(Point{0, 0}), p.point(Point{0.4, 0}), p.point(Point{0.9, 0}))
	n := int(clamp(p.length/(1.7*p.pen), 5, 16))
	for i := range n + 1 {
		u := 0.04 + 0.86*float64(i)/float64(n)
		lean := degrees(52 - 26*float64(i)/float64(n))
		tone, weight := p.tone(p.base, -0.16), 1.25
		if i%3 == 0 {
			tone, weight = Tone{Kind: Ink}, 0.8
		}
		for _, side := range []float64{1, -1} {
			sin, cos := math.Sincos(lean)
			k := long * (1 - 0.25*math.Abs(float64(i)/float64(n)-0.4))
			under := tone
			if side < 0 && p.second != p.base {
				under = p.tone(p.second, -0.1)
			}
			p.line(weight, under, p.point(Point{u, 0}), p.point(Point{u + k*cos, side * k * sin}))
		}
	}
	p.line(1.25, p.tone(p.base, -0.16), p.point(Point{0.88, 0}), p.point(Point{0.88 + long*0.8, 0}))
}

// scales draws a flat spray of shoots clad in scales.
func (p *leafPen) scales() {
	p.line(1.2, p.tone(p.base, -0.4), p.point(Point{0, 0}), p.point(Point{0.5, 0}), p.point(Point{0.9, 0}))
	pairs := int(clamp(p.length/(5*p.pen), 2, 5))
	for i := range pairs {
		t := float64(i) / float64(pairs)
		u := 0.1 + 0.7*t
		for _, side := range []float64{1, -1} {
			p.shoot(Point{u, 0}, 0.42*(1-0.35*t), side*degrees(42))
		}
	}
	p.shoot(Point{0.62, 0}, 0.4, 0)
}

// shoot is a narrow body with knobs.
func (p *leafPen) shoot(at Point, size, turn float64) {
	sin, cos := math.Sincos(turn)
	const knobs = 4
	var half []Point
	for i := range knobs*3 + 1 {
		t := float64(i) / (knobs * 3)
		v := 0.17 * math.Sqrt(math.Max(0, 1-t*t)) * (0.72 + 0.28*math.Abs(math.Sin(math.Pi*t*knobs)))
		half = append(half, Point{t, v})
	}
	var shape []Point
	put := func(q Point) {
		x, y := q.X*size, q.Y*size
		shape = append(shape, p.point(at.plus(Point{x*cos - y*sin, x*sin + y*cos})))
	}
	for _, q := range half {
		put(q)
	}
	for i := len(half) - 1; i >= 0; i-- {
		put(Point{half[i].X, -half[i].Y})
	}
	p.marks = append(p.marks, Mark{Shape: shape, Closed: true, Fill: p.tone(p.base, 0.05*sin), Line: Tone{Kind: Ink}, Weight: 0.8})
}
