package sketch

import (
	"math"

	"fourturn/plants"
)

// pattern lays the second colour of the foliage on the leaf.
func (p *leafPen) pattern(narrow float64) {
	wide := p.half(0.45, narrow) * 2 * p.length
	if p.second == p.base && p.leaf.Pattern != plants.Zoned || wide < 3*p.pen {
		return
	}
	second := p.tone(p.second, 0.06)
	switch p.leaf.Pattern {
	case plants.Margined: // the rim keeps the second colour
		p.marks[len(p.marks)-1].Fill = second
		p.inner(narrow, 0.05, 0.9, 0.66, p.tone(p.base, 0))
	case plants.Centred:
		p.inner(narrow, 0.03, 0.84, 0.6, second)
	case plants.Striped:
		p.stripe(narrow, 0.3, 0.16, second)
		p.stripe(narrow, -0.45, 0.14, second)
	case plants.Zoned:
		if p.second == p.base {
			second = p.tone(p.base, -0.35)
		}
		p.inner(narrow, 0.06, 0.74, 0.72, second)
		p.inner(narrow, 0.1, 0.58, 0.54, p.tone(p.base, 0))
	case plants.Speckled:
		p.specks(narrow, 7, second)
	case plants.Marbled:
		p.inner(narrow, 0.12, 0.8, 0.68, second)
		p.inner(narrow, 0.22, 0.66, 0.38, p.tone(p.base, 0))
	case plants.Plain, plants.Veined, plants.TwoFaced, plants.Feathered:
	}
}

// inner paints a smaller leaf within the leaf, from u0 to u1.
func (p *leafPen) inner(narrow, u0, u1, share float64, tone Tone) {
	const steps = 9
	var points []Point
	for i := range steps {
		t := float64(i) / (steps - 1)
		u := u0 + (u1-u0)*t
		points = append(points, Point{u, p.half(u, narrow) * share * math.Sqrt(math.Sin(math.Pi*clamp(t, 0.02, 0.98)))})
	}
	shape := make([]Point, 0, 2*steps)
	for i := range points {
		shape = append(shape, p.point(points[i]))
	}
	for i := len(points) - 1; i >= 0; i-- {
		shape = append(shape, p.point(Point{points[i].X, -points[i].Y}))
	}
	p.marks = append(p.marks, Mark{Shape: shape, Closed: true, Fill: tone, Line: Tone{Kind: Faint}, Weight: 0.5})
}

// stripe paints a band along the leaf; where and wide are shares of the half.
func (p *leafPen) stripe(narrow, where, wide float64, tone Tone) {
	const steps = 8
	var left, right []Point
	for i := range steps + 1 {
		u := 0.03 + 0.94*float64(i)/steps
		h := p.half(u, narrow)
		left = append(left, p.point(Point{u, h * (where + wide)}))
		right = append(right, p.point(Point{u, h * (where - wide)}))
	}
	for i := len(right) - 1; i >= 0; i-- {
		left = append(left, right[i])
	}
	p.marks = append(p.marks, Mark{Shape: left, Closed: true, Fill: tone})
}

func (p *leafPen) specks(narrow float64, n int, tone Tone) {
	r := max(0.9*p.pen, 0.028*p.length)
	for range n {
		u := p.within(0.15, 0.85)
		v := p.half(u, narrow) * p.within(-0.72, 0.72)
		f := frame{p.point(Point{u, v}), Point{r, 0}, Point{0, r}}
		p.marks = append(p.marks, Mark{Shape: ring(f, 7, func(float64) float64 { return 1 }), Closed: true, Fill: tone, Line: Tone{Kind: Faint}, Weight: 0.4})
	}
}

// hatchLeaf draws the lines that stand for a dark leaf, or for the lower half of one
// behind, in print of one colour.
func (p *leafPen) hatchLeaf(narrow float64) {
	sets := darkness(p.base)
	if p.shade < -0.1 {
		sets++
	}
	wide := p.half(0.45, narrow) * p.length
	if sets == 0 || wide < 2.5*p.pen {
		return
	}
	gap := 3.4 - 0.5*float64(sets)
	n := int(clamp(p.length*0.8/(gap*p.pen), 3, 24))
	for i := range n {
		u := 0.1 + 0.78*float64(i)/float64(n)
		for _, side := range []float64{-1, 1} {
			if side > 0 && sets < 2 {
				continue
			}
			reach := p.half(u+0.06, narrow) * 0.92
			p.marks = append(p.marks, Mark{
				Shape: []Point{p.point(Point{u, side * 0.1 * reach}), p.point(Point{u + 0.06, side * reach})},
				Line:  Tone{Kind: Ink}, Weight: 0.5, Mono: true,
			})
		}
	}
}
