package sketch

import (
	"math"

	"fourturn/plants"
)

// trail draws stems that rise over the rim of the pot and hang down. Hang is how far
// they hang, as a share of the spread.
func (a *artist) trail(n int, hang float64) {
	drop := min(hang*2*a.radius, 1.4*a.radius)
	if a.drop > 0 {
		drop = min(drop, a.drop)
	}
	for i := range n {
		azimuth := float64(i)*golden + 0.3
		d := towards(azimuth, 0)
		rim := a.rim[0]
		if d.X > 0 {
			rim = a.rim[1]
		}
		reach := a.radius * a.within(0.8, 1) * 0.92
		rise := a.height * a.within(0.62, 0.95) * 0.8
		long := a.within(0.55, 1)
		middle := i < n/4 // some stay over the mix
		stem := wayOf(func(t float64) space {
			r := reach * math.Pow(t, 0.8)
			z := rise * math.Sin(math.Pi*math.Min(1, t/0.62*0.8+0.02))
			if fall := r - rim; fall > 0 {
				z = math.Max(0.05*a.height, rise*math.Sin(math.Pi*0.8))*(1-math.Pow(fall/(a.radius-rim+1e-9), 0.8)) - drop*long*math.Pow(fall/(a.radius-rim+1e-9), 1.5)
				z = math.Min(z, rise)
			}
			if middle {
				r, z = reach*0.45*t, rise*1.15*math.Sin(math.Pi/2*t)
			}
			return space{d.X * r, d.Y * r, z}
		})
		a.drawStem(stem, 1.8, 1.1)
		l := a.foliage(0.16)
		l.droop = 0.6
		if a.drawing.Habit == plants.Runner {
			l.pairs = l.pairs && a.leaf < 0.08
			l.spacing = max(l.spacing, a.leaf*0.62)
			l.shrink = 0.55
		}
		a.alongStem(stem, l)
		switch a.drawing.Arrangement {
		case plants.Scattered:
			a.alongTrail(stem)
		case plants.Solitary, plants.Cluster, plants.Umbel, plants.Spike, plants.Raceme, plants.Whorls:
			a.trailHeads(stem)
		default:
			a.flowering(stem)
		}
	}
}

// alongTrail sets single flowers along a hanging stem.
func (a *artist) alongTrail(p path) {
	if a.drawing.Flower.Form == plants.NoFlower {
		return
	}
	n := int(clamp(p.length()/(2.6*a.flower), 2, 5))
	for i := range n {
		t := 0.3 + 0.7*(float64(i)+a.within(0.2, 0.9))/float64(n)
		out := p.along(t).cross(space{a.within(-1, 1), a.within(-1, 1), 0.4}).unit()
		at := p.at(t).plus(up.times(0.35 * a.flower)).plus(out.times(0.35 * a.flower))
		a.drawFlower(flowerAt{at: at, faces: a.look(out.plus(up.times(0.4)), 0.62), width: a.about(a.flower, 0.12), colour: a.headColour()})
	}
}

// trailHeads lets flowering shoots rise from a hanging stem.
func (a *artist) trailHeads(p path) {
	if a.drawing.Flower.Form == plants.NoFlower {
		return
	}
	for _, t := range []float64{0.4, 0.72, 1} {
		if a.chance(0.3) && t < 1 {
			continue
		}
		from := p.at(t)
		over := 0.4*a.leaf + 0.8*a.flower
		dir := p.along(t).times(0.5).plus(up).unit()
		q := bow(from, from.plus(p.along(t).times(over*0.5)), from.plus(dir.times(over)))
		a.drawStem(q, 1.3, 1.1)
		a.flowering(q)
	}
}

// climb draws a stem that winds up three canes.
func (a *artist) climb() {
	cane := Tone{Kind: Tinted, Colour: plants.Brown, Shade: 0.25}
	foot := a.radius * 0.55
	for i := range 3 {
		d := towards(2*math.Pi*float64(i)/3+0.5, 0)
		a.drawBranch(bow(d.times(foot), d.times(foot*0.5).plus(up.times(a.height*0.5)), up.times(a.height*1.0).plus(d.times(-0.05*foot))), 2.2, 1.8, cane)
	}
	for k := range 3 {
		turn := 2 * math.Pi * float64(k) / 3
		top := a.height * (0.96 - 0.16*float64(k))
		stem := wayOf(func(t float64) space {
			r := foot * (1.05 - 0.85*t)
			d := towards(turn+t*degrees(620), 0)
			return space{d.X * r, d.Y * r, top * t}
		})
		a.drawStem(stem, 1.9, 1.3)
		l := a.foliage(0.06)
		l.open, l.stalk, l.droop, l.shrink = degrees(80), 0.3*a.leaf, 0.6, 0.2
		l.spacing = max(0.75*a.leaf, stem.length()/16)
		l.pairs = false
		a.alongStem(stem, l)
		a.climbing(stem)
	}
}

// climbing sets flowers along a winding stem.
func (a *artist) climbing(p path) {
	if a.drawing.Flower.Form == plants.NoFlower {
		return
	}
	for i := range 4 {
		t := 0.24 + 0.2*float64(i) + a.within(0, 0.06)
		from := p.at(t)
		out := space{from.X, from.Y, 0}.unit()
		if out == up {
			out = space{1, 0, 0}
		}
		at := from.plus(out.times(0.55 * a.leaf)).plus(up.times(0.2 * a.flower))
		a.drawStem(bow(from, from.plus(up.times(0.3*a.leaf)), at), 1.1, 1)
		heads := 1
		if a.drawing.Arrangement == plants.Raceme || a.drawing.Arrangement == plants.Cluster {
			heads = 3
		}
		for j := range heads {
			shift := space{float64(j-heads/2) * 0.55 * a.flower, 0, -float64(j%2) * 0.5 * a.flower}
			a.drawFlower(flowerAt{at: at.plus(shift), faces: a.look(out, 0.5), width: a.about(a.flower, 0.1), colour: a.headColour()})
		}
	}
}

// tower draws sprays all round a straight trunk; width says how wide it is at a
// share of the height.
func (a *artist) tower(width func(t float64) float64) {
	if a.drawing.Leaf.Form == plants.NoLeaf {
		a.poles()
		return
	}
	long := clamp(a.leaf, 0.1*a.height, 0.55*a.radius)
	if f := a.drawing.Leaf.Form; f == plants.Needle || f == plants.Scale {
		long = clamp(0.16*a.height, 11*a.pen, max(0.7*a.radius, 11*a.pen))
	}
	a.drawStem(bow(space{}, space{0, 0, a.height * 0.3}, space{0, 0, a.height * 0.6}), 4, 2)
	tiers := int(clamp(a.height/(0.5*long), 6, 15))
	for k := range tiers {
		t := (float64(k) + 0.4) / float64(tiers)
		r := a.radius * width(t)
		n := int(clamp(2*math.Pi*r/(0.62*long), 4, 13))
		for i := range n {
			azimuth := 2*math.Pi*(float64(i)+0.5*float64(k%2))/float64(n) + a.within(-0.1, 0.1)
			d := towards(azimuth, 0)
			base := d.times(max(0, r-0.8*long)).plus(up.times(a.height * (0.07 + 0.86*t)))
			lift := degrees(22)
			if a.drawing.Habit == plants.Column {
				lift = degrees(48)
			}
			a.drawLeaf(leafAt{base: base, along: towards(azimuth, lift), length: long * a.within(0.85, 1.1), droop: 0.2 * a.bend, turn: a.within(-0.4, 0.4)})
			if a.drawing.Flower.Form != plants.NoFlower && a.chance(0.16) {
				a.drawFlower(flowerAt{at: d.times(r * 0.96).plus(up.times(a.height * (0.1 + 0.84*t))), faces: a.look(d, 0.5), width: a.flower, colour: a.bloom})
			}
		}
	}
	a.drawLeaf(leafAt{base: up.times(a.height - 0.8*long), along: up, length: long})
}

// poles draws bare trunks.
func (a *artist) poles() {
	wide := clamp(a.radius*0.55, 4*a.pen, a.height*0.1)
	for i := range 3 {
		x := (float64(i) - 1) * wide * 1.35
		top := a.height * []float64{0.82, 1, 0.9}[i]
		f := frame{a.camera.see(space{x, 0.1 * float64(i%2) * wide, 0}), Point{wide / 2, 0}, Point{0, top}}
		marks := []Mark{{
			Shape:  []Point{f.point(-0.95, 0), f.point(-0.86, 0.5), f.point(-0.9, 0.99), f.point(0, 1.005), f.point(0.9, 0.985), f.point(0.84, 0.5), f.point(0.95, 0)},
			Closed: true, Fill: Tone{Kind: Tinted, Colour: a.plant.Colours[0], Shade: -0.03}, Line: Tone{Kind: Ink}, Weight: 1,
		}}
		for range 13 {
			y, from := a.within(0.04, 0.95), a.within(-0.85, 0.3)
			marks = append(marks, Mark{Shape: []Point{f.point(from, y), f.point(min(0.85, from+a.within(0.3, 0.8)), y)}, Line: Tone{Kind: Ink}, Weight: a.within(0.8, 1.6)})
		}
		a.add(float64(i%2), marks...)
	}
}

// stems draws bare twigs, or rushes with a tuft at the top.
func (a *artist) stems() {
	n := 7
	twig := Tone{Kind: Tinted, Colour: a.bloom}
	if a.drawing.Flower.Form != plants.NoFlower {
		twig = Tone{Kind: Tinted, Colour: plants.Brown, Shade: 0.05}
	}
	if a.plant.Kind.Growing() {
		twig, n = Tone{Kind: Tinted, Colour: plants.Green}, 9
	}
	curl := 0.0
	if a.drawing.Leaf.Edge == plants.Wavy {
		curl = 1
	}
	lean := clamp(a.radius, 0.14*a.height, 0.2*a.height)
	for i := range n {
		d := towards(float64(i)*golden, 0)
		out := math.Sqrt(float64(i)/float64(n)) * lean
		top := a.height * a.within(0.8, 0.98)
		phase := a.within(0, 6)
		if a.raised() {
			top -= 0.35 * a.flower
		}
		stem := wayOf(func(t float64) space {
			sway := curl * 0.045 * a.height * math.Sin(phase+t*9) * t
			return space{d.X*out*(0.3+0.7*t) + sway, d.Y * out * (0.3 + 0.7*t), top * t}
		})
		a.drawBranch(stem, 2.6, 1.6, twig)
		if !a.plant.Kind.Growing() && a.drawing.Arrangement != plants.Cluster {
			a.twigs(stem, twig, curl)
		}
		a.flowering(stem)
	}
}

// twigs adds short side shoots.
func (a *artist) twigs(p path, tone Tone, curl float64) {
	for i := range 3 {
		t := 0.42 + 0.17*float64(i) + a.within(0, 0.06)
		from, along := p.at(t), p.along(t)
		side := sideways(along).times(float64(1 - 2*(i%2)))
		long := a.height * a.within(0.12, 0.2)
		to := from.plus(along.times(long)).plus(side.times(long * 0.34))
		over := from.plus(side.times(long * 0.3)).plus(along.times(long * 0.2))
		if curl > 0 {
			over = over.plus(side.times(long * 0.5))
			to = to.plus(side.times(-long * 0.3))
		}
		q := bow(from, over, to)
		a.drawBranch(q, 1.7, 1.1, tone)
		if a.drawing.Arrangement == plants.Axils {
			a.flowering(q)
		}
	}
}

// boughs draws cut branches stuck in a fan, leaves lying flat on both sides.
func (a *artist) boughs() {
	const n = 7
	widest := clamp(math.Atan2(a.radius, a.height)*1.7, degrees(32), degrees(62))
	for i := range n {
		t := 2*float64(i)/(n-1) - 1
		lean := t * widest
		reach := a.height * (1 - 0.25*t*t) * a.within(0.86, 0.98)
		to := space{math.Sin(lean) * reach, a.within(-0.5, 0.5) * a.radius, math.Cos(lean) * reach}
		droop := 0.12 * reach * math.Abs(t)
		stem := bow(space{t * a.radius * 0.12, 0, 0}, to.times(0.55).plus(up.times(droop)), to.plus(up.times(-droop)))
		a.drawStem(stem, 2.4, 1.2)
		l := a.foliage(0.2)
		l.length = clamp(a.leaf, 0.1*a.height, 0.5*a.height)
		if f := a.drawing.Leaf.Form; f == plants.Needle || f == plants.Scale {
			l.length = max(0.2*reach, 12*a.pen)
			l.spacing = 0.5 * l.length
		}
		l.open, l.droop, l.pairs, l.shrink = degrees(46), 0.25, true, 0.45
		a.flatAlong(stem, l)
		if a.drawing.Flower.Form != plants.NoFlower {
			for range 3 {
				s := a.within(0.35, 0.95)
				at := stem.at(s).plus(sideways(stem.along(s)).times(a.within(-0.7, 0.7) * a.flower * 1.2))
				faces := up
				if a.drawing.Arrangement == plants.Hanging {
					faces = space{0, 0, -1}
				}
				a.drawFlower(flowerAt{at: at, faces: faces, width: a.flower, colour: a.bloom})
			}
		}
	}
}

// flatAlong adds leaves on both sides of a stem, in the plane of the drawing.
func (a *artist) flatAlong(p path, l leafing) {
	n := int(clamp(p.length()*(l.to-l.from)/l.spacing, 2, 12))
	for i := range n {
		t := l.from + (l.to-l.from)*float64(i)/float64(n)
		dir := p.along(t)
		side := dir.cross(a.camera.to).unit()
		if a.view == Above {
			side = sideways(dir)
		}
		for _, s := range []float64{1, -1} {
			sin, cos := math.Sincos(l.open)
			along := dir.times(cos).plus(side.times(s * sin)).plus(a.camera.to.times(a.within(-0.2, 0.2)))
			a.drawLeaf(leafAt{base: p.at(t), along: along, length: l.length * (1 - l.shrink*float64(i)/float64(n)) * a.within(0.88, 1.08), droop: l.droop, turn: a.within(-0.3, 0.3), flat: true})
		}
	}
	a.drawLeaf(leafAt{base: p.tip(), along: p.along(1), length: l.length * 0.7})
}

// drawGround draws what the plant stands on, or the rim over which it hangs.
func (a *artist) drawGround() {
	if a.view == Above {
		return
	}
	pen := a.pen
	faint := Tone{Kind: Faint}
	if a.drawing.Habit == plants.Cascade || a.drawing.Habit == plants.Runner {
		l, r := -a.rim[0], a.rim[1]
		lip, deep := max(3*pen, 0.05*a.radius), max(10*pen, 0.9*a.radius)
		a.ground = append(a.ground,
			Mark{Shape: []Point{{l * 0.94, -lip}, {r * 0.94, -lip}, {r * 0.74, -deep}, {l * 0.74, -deep}}, Closed: true, Fill: Tone{Kind: Paper}, Line: faint, Weight: 1},
			Mark{Shape: []Point{{l * 1.04, 0}, {r * 1.04, 0}, {r * 1.04, -lip}, {l * 1.04, -lip}}, Closed: true, Fill: Tone{Kind: Paper}, Line: faint, Weight: 1})
		return
	}
	wide := min(a.radius, max(0.32*a.height, 0.3*a.radius))
	line := []Point{{-wide, 0}, {-wide * 0.3, pen * 0.4}, {wide * 0.4, -pen * 0.3}, {wide, 0}}
	a.ground = append(a.ground, Mark{Shape: line, Line: faint, Weight: 1})
	for i := range 5 {
		x := wide * (-0.7 + 0.34*float64(i))
		a.ground = append(a.ground, Mark{Shape: []Point{{x, -1.2 * pen}, {x - 2.5*pen, -3.6 * pen}}, Line: faint, Weight: 0.8})
	}
}
