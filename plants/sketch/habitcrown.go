package sketch

import (
	"math"

	"fourturn/plants"
)

// bladed reports whether leaves are blades that rise from the ground.
func (a *artist) bladed() bool {
	switch a.drawing.Leaf.Form {
	case plants.Strap, plants.Sword, plants.GrassBlade, plants.Linear, plants.Tube:
		return true
	}
	return false
}

// scapes draws bare stems from the crown with flowers above the leaves.
func (a *artist) scapes(n int, spread float64) {
	if a.drawing.Flower.Form == plants.NoFlower {
		return
	}
	if a.drawing.Arrangement == plants.Scattered {
		a.scatter(func(azimuth, elevation float64) space {
			d := towards(azimuth, elevation)
			return space{d.X * a.radius * 0.85, d.Y * a.radius * 0.85, a.height * (0.45 + 0.5*d.Z)}
		})
		return
	}
	top := a.height - 0.3*a.flower
	switch a.drawing.Arrangement {
	case plants.Spike, plants.Raceme, plants.Panicle, plants.Whorls:
		top = a.height * 0.66
	case plants.Umbel, plants.Cluster:
		top = a.height * 0.85
	}
	for i := range n {
		out := 0.0
		if n > 1 {
			out = math.Sqrt(float64(i)/float64(n-1)) * spread
		}
		d := towards(float64(i)*golden*1.7+a.within(0, 0.6), 0)
		to := space{d.X * a.radius * out, d.Y * a.radius * out, top * (1 - 0.28*out) * a.within(0.92, 1.02)}
		stem := bow(to.times(0.05), space{to.X * 0.3, to.Y * 0.3, to.Z * 0.7}, to)
		a.drawStem(stem, 1.9, 1.3)
		a.flowering(stem)
	}
}

// scapeCount returns how many flowering stems a crown bears: fewer, the larger the
// flowers.
func (a *artist) scapeCount() int {
	return int(clamp(1.5*a.radius/(0.55*a.flower), 3, 9))
}

// clump draws leaves from one crown and flowers above them.
func (a *artist) clump() {
	tall := a.height
	if a.raised() {
		tall = a.height * 0.72
	}
	if a.bladed() {
		n := int(clamp(26*a.radius/max(a.leaf, a.radius), 7, 22))
		if a.drawing.Leaf.Form == plants.Tube {
			n = 26
		}
		widest := math.Atan2(a.radius, 0.8*tall)
		for i := range n {
			out := math.Sqrt((float64(i) + 0.5) / float64(n))
			azimuth := float64(i) * golden
			a.drawLeaf(leafAt{
				base: towards(azimuth, 0).times(a.radius * 0.16 * out), along: towards(azimuth, degrees(87)-0.85*widest*out),
				length: clamp(max(a.leaf, 0.8*tall), 0, 1.15*tall) * a.within(0.85, 1.05), droop: 0.8 * widest * out * a.bend, turn: a.within(-0.5, 0.5),
			})
		}
		a.scapes(a.scapeCount(), 0.6)
		return
	}
	long := clamp(a.leaf, 9*a.pen, min(0.55*max(a.radius, tall), 1.3*a.radius))
	n := int(clamp(9*a.radius*tall/(long*long), 11, 26))
	if a.drawing.Leaf.Form == plants.Feathery {
		n = min(n+6, 30)
	}
	for i := range n {
		azimuth, elevation := onDome(i, n, 0.12)
		d := towards(azimuth, elevation)
		to := space{d.X * a.inside(a.radius, 0.75), d.Y * a.inside(a.radius, 0.75), max(0.1*tall, d.Z*a.inside(tall, 0.4))}
		stalk := bow(space{}, space{to.X * 0.35, to.Y * 0.35, to.Z * 0.8}, to)
		a.drawBranch(stalk, 1.7, 1.2, Tone{Kind: Tinted, Colour: a.leaves[0], Shade: -0.1})
		outward := towards(azimuth, elevation*0.7-0.1)
		a.drawLeaf(leafAt{base: to, along: outward.plus(up.times(0.1)), length: long * a.within(0.8, 1.1) * (1 - 0.25*d.Z), droop: 0.7 * a.bend, turn: a.within(-0.3, 0.3)})
	}
	a.scapes(a.scapeCount(), 0.62)
}

// fountain draws blades or fronds that arch from one crown.
func (a *artist) fountain() {
	n := 34
	switch a.drawing.Leaf.Form {
	case plants.Frond:
		n = 15
	case plants.GrassBlade, plants.Linear:
		n = int(clamp(2.6*a.radius/a.pen/3, 22, 46))
	case plants.Strap, plants.Sword:
		n = 20
	default:
		a.bushOfArches()
		return
	}
	reach := math.Hypot(a.radius, a.height) * 1.02
	widest := math.Atan2(a.radius, a.height)
	for i := range n {
		out := (float64(i) + 0.5) / float64(n)
		azimuth := float64(i) * golden
		a.drawLeaf(leafAt{
			base: towards(azimuth, 0).times(a.radius * 0.08), along: towards(azimuth, degrees(86)-0.75*widest*out),
			length: reach * a.within(0.82, 1.02), droop: (0.3 + 1.1*widest*out) * a.bend,
		})
	}
	a.scapes(int(clamp(1.6*a.radius/a.flower, 4, 8)), 0.7)
}

// bushOfArches draws arching branches with leaves along them.
func (a *artist) bushOfArches() {
	for i := range 12 {
		out := (float64(i) + 0.5) / 12
		d := towards(float64(i)*golden, 0)
		to := space{d.X * a.radius * (0.4 + 0.5*out), d.Y * a.radius * (0.4 + 0.5*out), a.height * (0.9 - 0.62*out)}
		stem := bow(space{}, space{to.X * 0.55, to.Y * 0.55, a.height * 1.15}, to)
		a.drawStem(stem, 2.4, 1.2)
		a.alongStem(stem, a.foliage(0.25))
		a.flowering(stem)
	}
}

// fan draws stiff blades that stand in one plane, and flowers between them.
func (a *artist) fan() {
	n := int(clamp(1.1*a.radius/max(0.05*a.leaf, 1.5*a.pen), 7, 13))
	if a.drawing.Leaf.Form == plants.Paddle {
		n = 9
	}
	if a.drawing.Leaf.Form == plants.GrassBlade {
		n = 19
	}
	tall := a.height
	if a.raised() {
		tall *= 0.8
	}
	widest := math.Atan2(a.radius, tall) * 1.05
	for i := range n {
		t := 2*(float64(i)+0.5)/float64(n) - 1
		lean := t * widest
		base := space{t * a.radius * 0.12, a.within(-0.1, 0.1) * a.radius, 0}
		along := space{math.Sin(lean), a.within(-0.16, 0.16), math.Cos(lean)}
		l := leafAt{base: base, along: along, length: tall * (1 - 0.22*t*t) * a.within(0.84, 1.02), droop: 0.12 * math.Abs(t) * a.bend, turn: math.Pi/2 + a.within(-0.3, 0.3)}
		if a.drawing.Leaf.Form == plants.Paddle {
			l.stalk, l.length = tall*0.5*a.within(0.8, 1), tall*0.46
		}
		a.drawLeaf(l)
	}
	a.scapes(int(clamp(1.2*a.radius/a.flower, 2, 5)), 0.5)
}

// rosette draws a whorl of leaves on the ground, and flowers above its middle.
func (a *artist) rosette() {
	n := int(clamp(30*(a.radius*0.55)/max(a.leaf, a.radius*0.4)*0.6, 13, 26))
	tall := a.height
	if a.raised() {
		tall = a.height * 0.42
	}
	steep := clamp(math.Atan2(tall, a.radius), degrees(24), degrees(66))
	for i := range n {
		in := 1 - (float64(i)+0.5)/float64(n) // outer leaves first
		azimuth := float64(i) * golden
		elevation := degrees(6) + steep*1.25*(1-in)
		a.drawLeaf(leafAt{
			base: towards(azimuth, 0).times(a.radius * 0.06).plus(up.times(0.02 * tall)), along: towards(azimuth, elevation),
			length: (a.radius*math.Cos(elevation)*(0.42+0.6*math.Sqrt(in)) + 0.9*tall*math.Sin(elevation)) * a.within(0.9, 1.04), droop: 0.25 * in * a.bend,
		})
	}
	a.scapes(a.scapeCount(), 0.55)
}

// mat draws stems that creep over the ground, with leaves that look up.
func (a *artist) mat() {
	const n = 17
	r := a.inside(a.radius, 0.4)
	for i := range n {
		out := math.Sqrt((float64(i) + 0.5) / n)
		d := towards(float64(i)*golden, 0)
		rise := a.height * (0.62 - 0.4*out)
		if a.raised() {
			rise *= 0.75
		}
		to := space{d.X * r * out, d.Y * r * out, rise}
		stem := bow(to.times(0.2), space{to.X * 0.8, to.Y * 0.8, rise * 0.6}, to)
		a.drawStem(stem, 1.8, 1.1)
		l := a.foliage(0.15)
		l.droop, l.open = 0.25, degrees(58)
		l.length = min(l.length, 0.6*max(a.height, 0.5*a.radius))
		a.alongStem(stem, l)
		if a.drawing.Arrangement != plants.Scattered && i%3 != 1 {
			a.flowering(a.lifted(stem))
		}
	}
	a.scatter(func(azimuth, elevation float64) space {
		d := towards(azimuth, elevation)
		return space{d.X * r, d.Y * r, a.height * (0.22 + 0.45*d.Z)}
	})
}
