package sketch

import (
	"math"

	"fourturn/plants"
)

// head is where flowers stand together: at the end of a stem.
type head struct {
	at     space
	along  space // direction of the stem there
	stem   path
	colour plants.Colour
}

// headColour returns what one head is painted in: most in the first colour.
func (a *artist) headColour() plants.Colour {
	if len(a.plant.Colours) > 2 && a.chance(0.3) {
		return a.accent
	}
	return a.bloom
}

// flowering adds the flowers of a stem as the plant bears them.
func (a *artist) flowering(p path) {
	if a.drawing.Flower.Form == plants.NoFlower {
		return
	}
	h := head{at: p.tip(), along: p.along(1), stem: p, colour: a.headColour()}
	switch a.drawing.Arrangement {
	case plants.Spike:
		a.spike(h, 4.2, 0.52)
	case plants.Raceme:
		a.spike(h, 3.4, 0.8)
	case plants.Whorls:
		a.whorls(h)
	case plants.Panicle:
		a.panicle(h)
	case plants.Umbel:
		a.umbel(h)
	case plants.Cluster:
		a.cluster(h)
	case plants.Axils:
		a.axils(h)
	case plants.Hanging:
		a.hanging(h)
	case plants.Solitary, plants.Scattered, plants.NoArrangement:
		a.single(h)
	}
}

// look returns a direction turned to the viewer, as one turns flowers to draw them.
func (a *artist) look(d space, share float64) space {
	return d.unit().times(1 - share).plus(a.camera.to.times(share)).plus(space{a.within(-0.25, 0.25), 0, a.within(-0.1, 0.15)})
}

func (a *artist) single(h head) {
	switch a.drawing.Flower.Form {
	case plants.Goblet, plants.Spathe, plants.Plume, plants.Crest, plants.Bristle, plants.FlagForm, plants.ConeFruit:
		a.drawFlower(flowerAt{at: h.at, faces: h.along, width: a.flower, colour: h.colour})
	default:
		share := 0.62
		if a.chance(0.25) {
			share = 0.3
		}
		a.drawFlower(flowerAt{at: h.at.plus(h.along.times(a.flower * 0.1)), faces: a.look(h.along, share), width: a.about(a.flower, 0.1), colour: h.colour})
	}
}

// spike sets flowers around a stem that goes on above its last leaves. Long is in
// widths of a flower, gap from flower to flower too.
func (a *artist) spike(h head, long, gap float64) {
	switch a.drawing.Flower.Form {
	case plants.Bristle, plants.Plume, plants.Crest:
		a.drawFlower(flowerAt{at: h.at, faces: h.along, width: a.flower, colour: h.colour})
		return
	}
	w := a.flower
	length := clamp(long*w, 0.13*a.height, 0.42*a.height)
	top := h.at.plus(h.along.times(length))
	axis := bow(h.at, h.at.plus(h.along.times(length/2)), top)
	a.drawStem(axis, 1.5, 1)
	n := int(clamp(length/(w*gap)*3, 5, 20))
	for i := range n {
		t := float64(i) / float64(n)
		around := float64(i) * golden
		out := towards(around, 0.25)
		size := w * (1 - 0.5*t)
		at := axis.at(t).plus(out.times(size * 0.42))
		bud := t > 0.78
		a.drawFlower(flowerAt{at: at, faces: a.look(out.plus(h.along.times(0.3+0.6*t)), 0.42), width: size, colour: h.colour, bud: bud})
	}
}

func (a *artist) whorls(h head) {
	w := a.flower
	length := clamp(6*w, 0.15*a.height, 0.4*a.height)
	axis := bow(h.at, h.at.plus(h.along.times(length/2)), h.at.plus(h.along.times(length)))
	a.drawStem(axis, 1.4, 1)
	tiers := int(clamp(length/(1.15*w), 3, 6))
	for k := range tiers {
		t := (float64(k) + 0.4) / float64(tiers)
		for i := range 5 {
			out := towards(2*math.Pi*(float64(i)+0.4*float64(k%2))/5, 0.2)
			size := w * (1 - 0.4*t)
			a.drawFlower(flowerAt{at: axis.at(t).plus(out.times(size * 0.55)), faces: a.look(out, 0.4), width: size, colour: h.colour, bud: k == tiers-1})
		}
	}
}

func (a *artist) panicle(h head) {
	switch a.drawing.Flower.Form {
	case plants.Plume, plants.Crest:
		a.drawFlower(flowerAt{at: h.at, faces: h.along, width: a.flower, colour: h.colour})
		return
	}
	w := a.flower
	length := clamp(5*w, 0.14*a.height, 0.36*a.height)
	for i := range 13 {
		t := float64(i) / 13
		out := towards(float64(i)*golden, 0.5)
		at := h.at.plus(h.along.times(length * t)).plus(out.times(0.45 * length * (1 - t)))
		a.drawStem(bow(h.at.plus(h.along.times(length*t*0.8)), h.at.plus(h.along.times(length*t)), at), 1, 0.8)
		a.drawFlower(flowerAt{at: at, faces: a.look(out, 0.4), width: w * (1 - 0.35*t), colour: h.colour, bud: t > 0.85})
	}
	a.drawStem(bow(h.at, h.at.plus(h.along.times(length/2)), h.at.plus(h.along.times(length))), 1.4, 0.9)
}

// umbel sets flowers on rays from one point.
func (a *artist) umbel(h head) {
	w := a.flower
	size := max(a.height, 2*a.radius)
	reach := clamp(1.7*w, 0.08*size, 0.2*size)
	n := int(clamp(2.2*reach*reach/(w*w)*2.2, 7, 18))
	if a.drawing.Flower.Form == plants.Bristle { // rays are all there is
		n, reach = 22, a.flower/2
	}
	for i := range n {
		z := 1 - 0.95*(float64(i)+0.5)/float64(n)
		out := towards(float64(i)*golden, math.Asin(z))
		at := h.at.plus(out.times(reach))
		if a.drawing.Flower.Form == plants.Bristle {
			a.drawBranch(bow(h.at, h.at.plus(out.times(reach*0.5)).plus(up.times(reach*0.2)), at.plus(up.times(-0.3*reach*(1-z)))), 1.6, 1, Tone{Kind: Tinted, Colour: h.colour})
			continue
		}
		a.drawStem(bow(h.at, h.at.plus(out.times(reach/2)), at), 0.8, 0.8)
		a.drawFlower(flowerAt{at: at, faces: a.look(out, 0.45), width: w * a.within(0.85, 1.05), colour: h.colour})
	}
}

// cluster packs flowers into a rounded head.
func (a *artist) cluster(h head) {
	w := a.flower
	size := max(a.height, 2*a.radius)
	reach := clamp(1.25*w, 0.06*size, 0.15*size)
	n := int(clamp(3.2*reach*reach/(w*w)*2.6, 6, 19))
	for i := range n {
		z := 1 - 1.1*(float64(i)+0.5)/float64(n)
		out := towards(float64(i)*golden, math.Asin(z))
		out.Z *= 0.72
		a.drawFlower(flowerAt{at: h.at.plus(out.times(reach)), faces: a.look(out, 0.5), width: w * a.within(0.85, 1.05), colour: h.colour})
	}
}

// axils sets flowers where leaves leave the stem.
func (a *artist) axils(h head) {
	n := int(clamp(h.stem.length()/(2.2*a.flower), 2, 6))
	for i := range n {
		t := 0.42 + 0.56*(float64(i)+a.within(0.2, 0.8))/float64(n)
		out := towards(float64(i)*golden+a.within(0, 1), 0.5)
		if a.wood() && a.plant.Kind == plants.CutStems {
			out = sideways(h.stem.along(t)).times(float64(1 - 2*(i%2)))
		}
		at := h.stem.at(t).plus(out.times(a.flower * 0.5))
		a.drawFlower(flowerAt{at: at, faces: a.look(out.plus(h.along.times(0.6)), 0.5), width: a.about(a.flower, 0.12), colour: h.colour})
	}
}

// hanging lets flowers hang from the stem.
func (a *artist) hanging(h head) {
	n := int(clamp(h.stem.length()/(2.4*a.flower), 1, 4))
	for i := range n {
		t := 1 - 0.5*float64(i)/float64(n)
		from := h.stem.at(t)
		side := towards(float64(i)*golden*2+a.within(0, 2), 0).times(a.flower * 0.4)
		drop := a.flower * a.within(0.8, 1.3)
		at := from.plus(side).plus(up.times(-drop))
		a.drawStem(bow(from, from.plus(side.times(1.2)), at), 0.9, 0.9)
		faces := space{0, 0, -1}.plus(a.camera.to.times(0.5)).plus(space{a.within(-0.3, 0.3), 0, 0})
		a.drawFlower(flowerAt{at: at, faces: faces, width: a.about(a.flower, 0.1), colour: h.colour})
	}
}

// scatter sets single flowers over the upper half of a plant whose outline is given.
func (a *artist) scatter(outline func(azimuth, elevation float64) space) {
	if a.drawing.Flower.Form == plants.NoFlower || a.drawing.Arrangement != plants.Scattered {
		return
	}
	area := 2 * a.radius * max(a.height, a.radius)
	n := int(clamp(0.3*area/(a.flower*a.flower), 7, 26))
	for i := range n {
		elevation := math.Asin(clamp(1-1.05*(float64(i)+0.5)/float64(n), -0.1, 0.98))
		azimuth := float64(i)*golden + a.within(-0.3, 0.3)
		at := outline(azimuth, elevation)
		a.drawFlower(flowerAt{at: at, faces: a.look(towards(azimuth, elevation), 0.55), width: a.about(a.flower, 0.12), colour: a.headColour()})
	}
}
