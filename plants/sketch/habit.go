package sketch

import (
	"math"

	"fourturn/plants"
)

// grow draws the plant by its habit.
func (a *artist) grow() {
	a.character()
	switch a.drawing.Habit {
	case plants.Cushion:
		a.dome(0.98, 15)
	case plants.Bushy:
		a.bush(-0.3, 13)
	case plants.Globe:
		a.globe()
	case plants.Erect:
		a.erect()
	case plants.Vase:
		a.vase()
	case plants.Clump:
		a.clump()
	case plants.Fountain:
		a.fountain()
	case plants.Fan:
		a.fan()
	case plants.Rosette:
		a.rosette()
	case plants.Mat:
		a.mat()
	case plants.Cascade:
		a.trail(13, 0.55)
	case plants.Runner:
		a.trail(8, 0.75)
	case plants.Climber:
		a.climb()
	case plants.Column:
		a.tower(func(float64) float64 { return 1 })
	case plants.Cone:
		a.tower(func(t float64) float64 { return 1.02 - t })
	case plants.Stems:
		a.stems()
	case plants.Boughs:
		a.boughs()
	case plants.Mound:
		a.dome(0.9, 12)
	default:
		a.dome(0.9, 12)
	}
	a.drawGround()
}

// character is what makes this plant differ from others of the same habit.
func (a *artist) character() {
	a.slim = a.within(0.86, 1.16)
	a.bend = a.within(0.75, 1.3)
	a.full = a.within(0.6, 1.5)
	a.paired = a.chance(0.5)
	switch a.plant.Family { // families whose leaves stand in pairs
	case "Lamiaceae", "Caryophyllaceae", "Apocynaceae", "Verbenaceae", "Rubiaceae", "Acanthaceae", "Hydrangeaceae", "Oleaceae":
		a.paired = true
	case "Asteraceae", "Brassicaceae", "Violaceae", "Araceae", "Poaceae", "Malvaceae", "Ericaceae", "Rosaceae":
		a.paired = a.paired && a.plant.Family == "Asteraceae"
	}
}

// foliage returns how leaves stand along a stem of the usual kind.
func (a *artist) foliage(from float64) leafing {
	l := leafing{from: from, to: 1, length: a.leaf, spacing: 0.52 * a.leaf, open: degrees(52), droop: 0.5 * a.bend, shrink: 0.4, pairs: a.paired}
	switch a.drawing.Leaf.Form {
	case plants.Heart, plants.Kidney, plants.Round, plants.Palmate, plants.IvyLobed, plants.Arrow:
		l.stalk, l.open = 0.35*a.leaf, degrees(64)
	case plants.Linear, plants.Needle, plants.GrassBlade:
		l.spacing, l.droop = 0.3*a.leaf, 0.3*a.bend
	case plants.Feathery, plants.Scale:
		l.droop = 0.25
	case plants.Pinnate, plants.Frond:
		l.spacing = 0.42 * a.leaf
	}
	if l.pairs {
		l.spacing *= 1.35
	}
	l.spacing = max(l.spacing, 3.2*a.pen)
	return l
}

// inside returns how far leaves leave the stems to reach, of a length.
func (a *artist) inside(reach, share float64) float64 { return max(0.5*reach, reach-share*a.leaf) }

// raised reports whether flowers stand on stems above the leaves.
func (a *artist) raised() bool {
	switch a.drawing.Arrangement {
	case plants.Spike, plants.Raceme, plants.Whorls, plants.Panicle, plants.Umbel, plants.Solitary, plants.Cluster:
		return a.drawing.Flower.Form != plants.NoFlower
	case plants.NoArrangement, plants.Scattered, plants.Axils, plants.Hanging:
	}
	return false
}

// bears reports whether fruit is drawn, and no flowers.
func (a *artist) bears() bool {
	switch a.drawing.Flower.Form {
	case plants.Berry, plants.Fruit, plants.ConeFruit:
		return true
	}
	return false
}

// onDome returns the i-th of n places spread evenly over a dome of radius 1.
func onDome(i, n int, low float64) (azimuth, elevation float64) {
	z := 1 - (1-low)*(float64(i)+0.5)/float64(n)
	return float64(i) * golden, math.Asin(clamp(z, -1, 1))
}

// dome draws stems from one foot to a dome over the ground.
func (a *artist) dome(full float64, n int) {
	n = a.stemCount(n, 26)
	r, h := a.inside(a.radius, 0.6), a.inside(a.height, 0.55)*full
	if a.raised() {
		h *= 0.84
	}
	spot := func(azimuth, elevation float64) space {
		d := towards(azimuth, elevation)
		return space{d.X * r, d.Y * r, d.Z * h}
	}
	for i := range n {
		azimuth, elevation := onDome(i, n, 0.1)
		to := spot(azimuth, elevation).times(a.within(0.9, 1.04))
		foot := to.times(0.06)
		foot.Z = 0
		stem := bow(foot, space{to.X * 0.45, to.Y * 0.45, to.Z * 0.75}, to)
		a.drawStem(stem, 2.2, 1.2)
		a.alongStem(stem, a.foliage(0.28))
		if a.drawing.Arrangement != plants.Scattered && (i*5)%7 < 5 && (i < 12 || i%3 == 0) {
			a.flowering(a.lifted(stem))
		}
	}
	a.scatter(func(azimuth, elevation float64) space {
		at := spot(azimuth, elevation).times(1 + 0.5*a.leaf/max(r, h))
		at.Z = max(at.Z, 0.4*a.flower)
		return at
	})
}

// stemCount returns how many stems it takes for leaves to cover the plant: more, the
// smaller they are.
func (a *artist) stemCount(least, most int) int {
	const cover = 1.5
	area := math.Pi / 2 * a.radius * a.height
	stem := math.Hypot(a.radius, a.height) * 0.7
	l := a.foliage(0.3)
	leaves := clamp(stem*0.7/l.spacing, 1, 16)
	if l.pairs {
		leaves *= 2
	}
	shape := blades[a.drawing.Leaf.Form].half
	if shape == 0 {
		shape = 0.3
	}
	return int(clamp(cover*a.full*area/(leaves*shape*a.leaf*a.leaf), float64(least), float64(most)))
}

// lifted returns a way from the tip of a stem to where its flowers stand: above the
// last leaves.
func (a *artist) lifted(p path) path {
	if !a.raised() {
		return p
	}
	over := 0.55*a.leaf + 0.2*a.flower
	over = clamp(over, 0, 0.35*a.height)
	dir := p.along(1).plus(up.times(0.7)).unit()
	q := bow(p.tip(), p.tip().plus(p.along(1).times(over/2)), p.tip().plus(dir.times(over)))
	a.drawStem(q, 1.5, 1.2)
	return q
}

// bush draws branches from a short trunk to a ball; low is how far down the ball
// goes: -1 is a whole one.
func (a *artist) bush(low float64, n int) {
	n = a.stemCount(n, 40)
	r, h := a.inside(a.radius, 0.55), a.inside(a.height, 0.5)
	if a.raised() {
		h *= 0.86
	}
	middle := h * 0.52
	spot := func(azimuth, elevation float64) space {
		d := towards(azimuth, elevation)
		return space{d.X * r, d.Y * r, middle + d.Z*(h-middle)}
	}
	for i := range n {
		azimuth, elevation := onDome(i, n, low)
		to := spot(azimuth, elevation)
		fork := space{to.X * 0.12, to.Y * 0.12, h * 0.16}
		stem := bow(fork.times(0.5), space{to.X * 0.35, to.Y * 0.35, max(fork.Z, to.Z*0.72)}, to)
		a.drawStem(stem, 2.6, 1.2)
		a.alongStem(stem, a.foliage(0.3))
		if a.drawing.Arrangement != plants.Scattered && elevation > -0.2 && (i < 14 || i%3 == 0) {
			a.flowering(a.lifted(stem))
		}
	}
	a.drawStem(bow(space{}, space{0, 0, h * 0.1}, space{0, 0, h * 0.3}), 4, 3)
	a.scatter(func(azimuth, elevation float64) space {
		d := spot(azimuth, elevation)
		if a.bears() { // fruit hangs among the leaves
			return d
		}
		return space{d.X * (1 + 0.3*a.leaf/r), d.Y * (1 + 0.3*a.leaf/r), d.Z + 0.2*a.leaf}
	})
}

// globe draws a ball: of sprays where it is a conifer, of blades where it is a grass.
func (a *artist) globe() {
	switch a.drawing.Leaf.Form {
	case plants.Needle, plants.Scale:
		a.tower(func(t float64) float64 { return math.Sqrt(math.Max(0.12, 1-math.Pow(2*t-0.95, 2))) })
	case plants.GrassBlade, plants.Linear:
		if a.drawing.Flower.Form == plants.NoFlower {
			a.tuft()
			return
		}
		a.bush(-0.8, 17)
	default:
		a.bush(-0.8, 17)
	}
}

// tuft draws blades that stand out from one crown on all sides, like a hedgehog.
func (a *artist) tuft() {
	const n = 80
	for i := range n {
		azimuth, elevation := onDome(i, n, 0.02)
		reach := math.Hypot(a.radius*math.Cos(elevation), a.height*math.Sin(elevation))
		a.drawLeaf(leafAt{base: towards(azimuth, elevation).times(0.1 * a.radius), along: towards(azimuth, elevation), length: reach * a.within(0.8, 0.95), droop: 0.15})
	}
}

// erect draws a few straight stems with leaves all along.
func (a *artist) erect() {
	if a.plant.Kind == plants.Bulb && a.leaf > a.radius {
		a.bulb()
		return
	}
	n := int(clamp(a.radius/(0.42*a.leaf)+2, 1, 5))
	if 2*a.radius < 0.28*a.height {
		n = min(n, 2)
	}
	top := a.inside(a.height, 0.35)
	if a.raised() {
		top = a.height * 0.7
	}
	for i := range n {
		out := towards(float64(i)*golden+a.within(0, 1), 0).times(max(0, a.radius-0.75*a.leaf) * math.Sqrt(float64(i)/float64(n)))
		to := out.plus(up.times(top * (1 - 0.2*float64(i)/float64(n))))
		stem := bow(out.times(0.25), out.times(0.7).plus(up.times(top*0.4)), to)
		a.drawStem(stem, 2.8, 1.5)
		l := a.foliage(0.06)
		l.length = min(a.leaf, max(1.25*a.radius, 9*a.pen))
		l.shrink, l.spacing = 0.5, max(l.spacing*l.length/a.leaf, top/11)
		if blade := a.drawing.Leaf.Form; blade == plants.Strap || blade == plants.GrassBlade {
			l.open, l.shrink = degrees(34), 0.3
		}
		a.alongStem(stem, l)
		a.flowering(stem)
	}
	a.scatter(func(azimuth, elevation float64) space {
		d := towards(azimuth, elevation)
		return space{d.X * a.radius * 0.7, d.Y * a.radius * 0.7, a.height * (0.6 + 0.36*d.Z)}
	})
}

// bulb draws a few leaves from the ground that stand around a flowering stem.
func (a *artist) bulb() {
	long := min(a.leaf, 0.72*a.height)
	n := 4
	if a.drawing.Leaf.Form == plants.GrassBlade {
		n = 6
	}
	for i := range n {
		azimuth := degrees(20) + math.Pi*float64(i) + 0.4*float64(i/2)
		a.drawLeaf(leafAt{
			base: towards(azimuth, 0).times(0.08 * a.radius), along: towards(azimuth, math.Pi/2-math.Atan2(a.radius, long)*(0.9-0.2*float64(i))),
			length: long * (1 - 0.1*float64(i)), droop: 0.45 * a.bend, turn: a.within(-0.4, 0.4),
		})
	}
	a.scapes(1, 0)
}

// vase draws stems that spread from a narrow foot to a wide top.
func (a *artist) vase() {
	r, h := a.inside(a.radius, 0.5), a.inside(a.height, 0.4)
	if a.raised() {
		h *= 0.88
	}
	n := 11
	if a.drawing.Leaf.Form == plants.GrassBlade {
		n = 30
	}
	if a.drawing.Leaf.Form == plants.Paddle {
		a.palm(7)
		return
	}
	for i := range n {
		azimuth := float64(i) * golden
		out := math.Sqrt((float64(i) + 0.5) / float64(n))
		d := towards(azimuth, 0)
		to := space{d.X * r * out, d.Y * r * out, h * (1 - 0.3*out*out) * a.within(0.92, 1.03)}
		stem := bow(to.times(0.04), space{to.X * 0.2, to.Y * 0.2, to.Z * 0.7}, to)
		if a.drawing.Leaf.Form == plants.GrassBlade {
			a.drawLeaf(leafAt{base: space{d.X * r * 0.06, d.Y * r * 0.06, 0}, along: space{d.X * out * 0.5, d.Y * out * 0.5, 1}, length: a.height * a.within(0.75, 1.02), droop: 0.55 * out})
			if i%4 == 0 {
				a.drawStem(stem, 1.1, 0.9)
				a.flowering(stem)
			}
			continue
		}
		a.drawStem(stem, 2.4, 1.2)
		a.alongStem(stem, a.foliage(0.38))
		if a.drawing.Arrangement != plants.Scattered {
			a.flowering(a.lifted(stem))
		}
	}
	a.scatter(func(azimuth, elevation float64) space {
		d := towards(azimuth, elevation)
		return space{d.X * r, d.Y * r, h * (0.7 + 0.35*d.Z)}
	})
}

// palm draws few large leaves from the top of a stout stem.
func (a *artist) palm(n int) {
	trunk := bow(space{}, space{0, 0, a.height * 0.2}, space{0, 0, a.height * 0.42})
	a.drawStem(trunk, clamp(a.height*0.06/a.pen, 4, 10), clamp(a.height*0.04/a.pen, 3, 7))
	for i := range n {
		t := float64(i) / float64(n)
		a.drawLeaf(leafAt{
			base: trunk.at(0.45 + 0.55*t), along: towards(float64(i)*golden, degrees(38+46*t)),
			length: min(a.leaf, 0.62*a.height) * (0.8 + 0.2*t), stalk: 0.1 * a.height, droop: 0.75 * (1.1 - t),
		})
	}
}
