package sketch

import (
	"math"
	"slices"

	"fourturn/plants"
)

// leafAt is where a leaf grows and how it lies.
type leafAt struct {
	base   space
	along  space   // direction at the base
	length float64 // m
	droop  float64 // how far it bends down over its length: 1 is about a right angle
	stalk  float64 // m, from the stem to the base
	shade  float64
	turn   float64 // around its own midrib, in radians
	flat   bool    // laid on the paper as it grows, without turning it to the viewer
}

// ribbon is a strip of the drawing along a bent midrib.
type ribbon struct {
	middle []Point // evenly spaced
	side   Point   // across, for a length of 1
	near   float64
	faced  bool // whether the upper face shows
}

const ribs = 8

// ribbonOf bends a midrib in space and looks at it.
func (a *artist) ribbonOf(l leafAt) ribbon {
	along := l.along.unit()
	if !l.flat { // laid open for the viewer, as one draws leaves
		along = along.minus(a.camera.to.times(0.55 * a.camera.faces(along))).unit()
	}
	side := sideways(along)
	sin, cos := math.Sincos(l.turn)
	side = side.times(cos).plus(side.cross(along).times(sin))
	r := ribbon{middle: make([]Point, ribs+1)}
	at, step := l.base.plus(along.times(l.stalk)), l.length/ribs
	var middle space
	for i := range r.middle {
		r.middle[i] = a.camera.see(at)
		if i == ribs/2 {
			middle = at
		}
		bent := along.plus(up.times(-l.droop * float64(i) / ribs * 1.4)).unit()
		at = at.plus(bent.times(step))
		if at.Z < 0 && a.grounded() { // leaves lie on the mix
			at.Z = 0
		}
	}
	r.near = a.camera.near(middle)
	r.side = a.openTo(a.camera.see(side), r.middle[ribs].minus(r.middle[0])).times(l.length)
	r.faced = a.camera.faces(side.cross(along)) >= 0
	return r
}

// grounded reports whether the plant stays above the mix.
func (a *artist) grounded() bool {
	return a.drawing.Habit != plants.Cascade && a.drawing.Habit != plants.Runner
}

// openTo turns the width of a leaf that is seen on edge towards the viewer.
func (a *artist) openTo(side, along Point) Point {
	const open = 0.5
	across := along.unit(Point{0, 1}).across()
	seen := side.X*across.X + side.Y*across.Y
	if math.Abs(seen) >= open {
		return side
	}
	sign := 1.0
	if seen < 0 {
		sign = -1
	}
	return across.times(sign * open)
}

// point returns where a point of an outline comes to lie.
func (r ribbon) point(p Point) Point {
	u := p.X * ribs
	i := int(clamp(math.Floor(u), 0, ribs-1))
	return between(r.middle[i], r.middle[i+1], u-float64(i)).plus(r.side.times(p.Y))
}

func (r ribbon) shape(points []Point) []Point {
	out := make([]Point, len(points))
	for i, p := range points {
		out[i] = r.point(p)
	}
	return out
}

// drawLeaf adds a leaf of the plant's own form.
func (a *artist) drawLeaf(l leafAt) {
	r := a.ribbonOf(l)
	shade := l.shade + a.depthShade(r.near) + a.within(-0.05, 0.05)
	p := &leafPen{artist: a, ribbon: r, leaf: a.drawing.Leaf, length: l.length, base: a.leaves[0], second: a.leaves[1], shade: shade}
	if a.drawing.Leaf.Pattern == plants.TwoFaced && (!r.faced || a.chance(0.3)) {
		p.base = a.leaves[1]
	}
	if len(a.leaves) > 2 && a.drawing.Leaf.Pattern != "" && a.chance(0.3) {
		p.second = a.leaves[2]
	}
	if (a.drawing.Leaf.Pattern == "" || a.drawing.Leaf.Pattern == plants.Plain) && a.leaves[0] != a.leaves[1] && a.chance(0.35) {
		p.base = a.leaves[1+a.random.IntN(len(a.leaves)-1)]
	}
	if l.stalk > 2*a.pen {
		from := a.camera.see(l.base)
		p.line(1.1, Tone{Kind: Ink}, from, r.middle[0])
	}
	p.draw()
	a.add(r.near, p.marks...)
}

// depthShade makes what is behind darker.
func (a *artist) depthShade(near float64) float64 {
	deep := max(a.radius, 0.02)
	if a.view == Above {
		deep = max(a.height, 0.02)
		near -= a.height * 0.6
	}
	return clamp(0.16*near/deep, -0.2, 0.12)
}

// leafPen draws one leaf.
type leafPen struct {
	*artist
	ribbon
	leaf         plants.Leaf
	length       float64
	base, second plants.Colour
	shade        float64
	marks        []Mark
}

func (p *leafPen) tone(c plants.Colour, shade float64) Tone {
	return Tone{Kind: Tinted, Colour: c, Shade: p.shade + shade}
}

func (p *leafPen) line(weight float64, tone Tone, points ...Point) {
	p.marks = append(p.marks, Mark{Shape: points, Line: tone, Weight: weight})
}

func (p *leafPen) draw() {
	switch p.leaf.Form {
	case plants.NoLeaf:
	case plants.Pinnate:
		p.leaflets(4, 0.3, plants.Elliptic, 0.2)
	case plants.Frond:
		p.leaflets(min(16, max(7, int(p.length/(5*p.pen)))), 0.2, plants.Lanceolate, 0.02)
	case plants.Feathery:
		if p.leaf.Edge == plants.Smooth || p.leaf.Edge == "" {
			p.feather()
		} else {
			p.leaflets(5, 0.3, plants.Spoon, 0.16)
		}
	case plants.Trifoliate:
		p.leaflet(Point{0.36, 0}, 0.64, 0, plants.Ovate)
		p.leaflet(Point{0.34, 0.02}, 0.58, degrees(62), plants.Ovate)
		p.leaflet(Point{0.34, -0.02}, 0.58, -degrees(62), plants.Ovate)
		p.line(1, Tone{Kind: Ink}, p.point(Point{0, 0}), p.point(Point{0.36, 0}))
	case plants.Needle:
		p.needles()
	case plants.Scale:
		p.scales()
	default:
		p.simple()
	}
}

// simple draws a leaf of one piece.
func (p *leafPen) simple() {
	narrow := p.slim
	shape := p.shape(outline(p.leaf, narrow, p.teethOf(p.leaf.Edge, p.length)))
	p.marks = append(p.marks, Mark{Shape: shape, Closed: true, Fill: p.tone(p.base, 0)})
	p.pattern(narrow)
	p.hatchLeaf(narrow)
	p.veins(narrow)
	p.marks = append(p.marks, Mark{Shape: slices.Clone(shape), Closed: true, Line: Tone{Kind: Ink}, Weight: 1})
}

// half returns how wide one half of the leaf is at u.
func (p *leafPen) half(u, narrow float64) float64 {
	if b, ok := blades[p.leaf.Form]; ok {
		return b.at(u) * narrow
	}
	half := halves[p.leaf.Form]
	if half == nil {
		half = lobes[p.leaf.Form]
	}
	wide := 0.0
	for i := 0; i+1 < len(half); i++ {
		if (half[i].X-u)*(half[i+1].X-u) <= 0 {
			t := (u - half[i].X) / (half[i+1].X - half[i].X + 1e-9)
			if v := half[i].Y + (half[i+1].Y-half[i].Y)*t; wide == 0 || v < wide {
				wide = v
			}
		}
	}
	return wide * narrow
}

// veins draws the midrib, and its branches where there is room.
func (p *leafPen) veins(narrow float64) {
	wide := p.half(0.45, narrow) * 2 * p.length
	if wide < 3.2*p.pen || p.leaf.Form == plants.Succulent {
		return
	}
	tone, weight := Tone{Kind: Faint}, 0.8
	if p.leaf.Pattern == plants.Veined || p.leaf.Pattern == plants.Feathered {
		weight = 1.5
		if p.second != p.base {
			tone = p.tone(p.second, 0.1)
		}
	}
	p.line(weight, tone, p.point(Point{0.02, 0}), p.point(Point{0.3, 0}), p.point(Point{0.6, 0}), p.point(Point{0.9, 0}))
	long := p.leaf.Form == plants.Strap || p.leaf.Form == plants.Sword || p.leaf.Form == plants.GrassBlade || p.leaf.Form == plants.Linear
	if wide < 9*p.pen || p.length < 16*p.pen || long {
		return
	}
	pairs := int(clamp(p.length/(7*p.pen), 2, 5))
	if p.leaf.Form == plants.Paddle {
		pairs = int(clamp(p.length/(4*p.pen), 4, 12))
	}
	for i := range pairs {
		u := 0.14 + 0.62*float64(i)/float64(pairs)
		for _, side := range []float64{1, -1} {
			end := u + 0.16
			reach := p.half(end, narrow) * 0.74
			p.line(weight*0.8, tone, p.point(Point{u, 0}), p.point(Point{u + 0.07, side * reach * 0.5}), p.point(Point{end, side * reach}))
		}
	}
}
