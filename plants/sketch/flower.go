package sketch

import (
	"math"

	"fourturn/plants"
)

// flowerAt is where a flower stands and which way it looks.
type flowerAt struct {
	at     space
	faces  space
	width  float64 // m
	colour plants.Colour
	bud    bool
}

// flowerPen draws one flower.
type flowerPen struct {
	*artist
	form           plants.FlowerForm
	petals         int
	face           frame // of the flower's plane, 1 is half the width
	profile        frame // of its side: Y along its axis, 1 is the width
	colour, second plants.Colour
	shade          float64
	fine           bool // whether petals can be told apart
	marks          []Mark
}

// drawFlower adds a flower of the plant's own form.
func (a *artist) drawFlower(f flowerAt) {
	near := a.camera.near(f.at) + 0.25*a.radius // flowers are in front of the leaves beside them
	if a.view == Above {
		near = a.camera.near(f.at) + 0.5*a.height
	}
	p := &flowerPen{
		artist: a, form: a.drawing.Flower.Form, petals: a.drawing.Flower.Petals,
		colour: f.colour, second: a.accent, shade: a.depthShade(a.camera.near(f.at)) + a.within(-0.06, 0.06),
		fine: f.width > 7*a.pen,
	}
	p.setFrames(f)
	if f.bud {
		p.drawBud()
	} else {
		p.draw(a.camera.faces(f.faces.unit()))
	}
	a.add(near, p.marks...)
}

// setFrames looks at the flower's plane and at its axis.
func (p *flowerPen) setFrames(f flowerAt) {
	axis := p.camera.see(f.faces.unit())
	at := p.camera.see(f.at)
	tilt := axis.unit(Point{0, 1})
	open := max(0.62, math.Abs(p.camera.faces(f.faces.unit())))
	p.face = frame{at, tilt.across().times(-f.width / 2), tilt.times(f.width / 2 * open)}
	p.profile = frame{at, tilt.across().times(-f.width), tilt.times(f.width)}
}

func (p *flowerPen) tone(c plants.Colour, shade float64) Tone {
	return Tone{Kind: Tinted, Colour: c, Shade: p.shade + shade}
}

func (p *flowerPen) petal() Tone { return p.tone(p.colour, 0) }

// area paints a closed shape with an ink outline.
func (p *flowerPen) area(tone Tone, shape []Point) {
	weight := 1.0
	if !p.fine {
		weight = 0.8
	}
	p.marks = append(p.marks, Mark{Shape: shape, Closed: true, Fill: tone, Line: Tone{Kind: Ink}, Weight: weight})
}

func (p *flowerPen) line(weight float64, points ...Point) {
	p.marks = append(p.marks, Mark{Shape: points, Line: Tone{Kind: Ink}, Weight: weight})
}

func (p *flowerPen) faint(weight float64, points ...Point) {
	p.marks = append(p.marks, Mark{Shape: points, Line: Tone{Kind: Faint}, Weight: weight})
}

// hatch draws lines for print in one colour, from near the middle of the frame out.
func (p *flowerPen) hatch(f frame, r0, r1 float64, rays int) {
	sets := darkness(p.colour)
	if sets == 0 || !p.fine {
		return
	}
	for i := range rays * sets {
		angle := 2 * math.Pi * (float64(i) + 0.3) / float64(rays*sets)
		out := r1 * (0.8 + 0.2*math.Cos(float64(i)*2.4))
		p.marks = append(p.marks, Mark{Shape: []Point{f.polar(r0, angle), f.polar(out, angle)}, Line: Tone{Kind: Ink}, Weight: 0.45, Mono: true})
	}
}

// dot paints a disc around the middle of a frame.
func (p *flowerPen) dot(f frame, r float64, tone Tone) {
	p.area(tone, ring(f, 12, func(float64) float64 { return r }))
}

// draw draws the flower; facing is how far it looks at the viewer, from -1 to 1.
func (p *flowerPen) draw(facing float64) {
	if !p.fine {
		p.small()
		return
	}
	if facing < 0.55 && p.drawProfile() {
		return
	}
	p.drawFace()
}

// small is a flower of which a pen can draw no more than a dab.
func (p *flowerPen) small() {
	n := max(4, min(p.petals, 5))
	switch p.form {
	case plants.Globular, plants.Berry, plants.Fruit, plants.Tiny, plants.Pompon, plants.Catkin:
		p.dot(p.face, 0.95, p.petal())
		return
	}
	p.area(p.petal(), ring(p.face, 20, func(angle float64) float64 {
		return 0.74 + 0.26*math.Cos(float64(n)*angle)
	}))
}

// drawBud draws a flower that is not open yet.
func (p *flowerPen) drawBud() {
	f := p.profile.scaled(0.62)
	p.area(p.petal(), f.shape(-0.02, 0, -0.2, 0.3, -0.12, 0.75, 0, 1, 0.12, 0.75, 0.2, 0.3, 0.02, 0))
	if p.fine {
		p.area(p.tone(p.leaves[0], -0.1), f.shape(0, -0.06, -0.2, 0.12, -0.16, 0.36, 0, 0.2, 0.16, 0.36, 0.2, 0.12))
	}
}

// drawFace draws the flower as it looks at one.
func (p *flowerPen) drawFace() {
	switch p.form {
	case plants.Daisy:
		p.daisy()
	case plants.Double, plants.Pompon:
		p.double()
	case plants.Face:
		p.pansy()
	case plants.Star, plants.LilyForm:
		p.pointed()
	case plants.FlatFive, plants.Cross, plants.LaceForm, plants.Ruffled:
		p.flat()
	case plants.Cup, plants.Bowl, plants.Goblet:
		p.bowl()
	case plants.Bell, plants.Trumpet, plants.TubeForm, plants.Urn:
		p.throat()
	case plants.Corona:
		p.corona()
	case plants.FlagForm:
		p.iris()
	case plants.Lipped, plants.Jaw, plants.Slipper, plants.Spurred:
		p.lipped()
	case plants.FanForm:
		p.fan()
	case plants.Reflexed:
		p.reflexed()
	case plants.Pendant:
		p.pendant()
	case plants.Pea:
		p.pea()
	case plants.Plume, plants.Crest:
		p.plume()
	case plants.Globular:
		p.globe()
	case plants.Bristle:
		p.bristle()
	case plants.Spathe:
		p.spathe()
	case plants.Tiny:
		p.small()
	case plants.Berry:
		p.berry()
	case plants.Fruit:
		p.fruit()
	case plants.ConeFruit, plants.Catkin:
		p.cone()
	case plants.Bracts:
		p.bracts()
	case plants.NoFlower:
	}
}

// drawProfile draws the flower from its side, where that is how one knows it.
func (p *flowerPen) drawProfile() bool {
	switch p.form {
	case plants.Goblet, plants.Cup:
		p.goblet()
	case plants.Bell, plants.Urn:
		p.bell()
	case plants.Trumpet:
		p.trumpet()
	case plants.TubeForm:
		p.tube()
	case plants.LilyForm:
		p.lily()
	case plants.Daisy:
		p.daisySide()
	default:
		return false
	}
	return true
}
