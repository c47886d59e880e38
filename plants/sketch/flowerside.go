package sketch

import (
	"math"

	"fourturn/plants"
)

// goblet is a tulip or a crocus: three petals before, the tips of three behind.
func (p *flowerPen) goblet() {
	f := p.profile
	p.area(p.tone(p.colour, -0.14), f.shape(-0.1, 0.3, -0.42, 0.75, -0.3, 1.16, -0.12, 0.98, 0, 1.22, 0.12, 0.98, 0.3, 1.16, 0.42, 0.75, 0.1, 0.3))
	for _, side := range []float64{1, -1} {
		p.area(p.tone(p.colour, -0.02), f.shape(0, 0.02, side*0.34, 0.12, side*0.48, 0.5, side*0.4, 0.86, side*0.36, 1.08, side*0.2, 0.86, side*0.06, 0.5))
	}
	p.area(p.tone(p.colour, 0.08), f.shape(0, 0, 0.24, 0.2, 0.27, 0.6, 0.12, 0.94, 0, 1.1, -0.12, 0.94, -0.27, 0.6, -0.24, 0.2))
	p.faint(0.7, f.line(0, 0.16, 0.01, 0.5, 0, 0.86)...)
	p.faint(0.6, f.line(0.1, 0.2, 0.13, 0.5, 0.08, 0.76)...)
	p.faint(0.6, f.line(-0.1, 0.2, -0.13, 0.5, -0.08, 0.76)...)
	p.sideHatch(f, 0.1, 0.9, 0.36)
}

// sideHatch draws lines along a profile for print in one colour.
func (p *flowerPen) sideHatch(f frame, y0, y1, half float64) {
	n := 2 * darkness(p.colour)
	for i := range n {
		x := half * (2*(float64(i)+0.5)/float64(max(n, 1)) - 1)
		p.marks = append(p.marks, Mark{Shape: f.line(x*0.7, y0, x, (y0+y1)/2, x*0.85, y1), Line: Tone{Kind: Ink}, Weight: 0.45, Mono: true})
	}
}

// bell has a flared rim.
func (p *flowerPen) bell() {
	f := p.profile
	neck := 0.3
	if p.form == plants.Urn {
		p.area(p.petal(), f.shape(0, 0, -0.34, 0.2, -0.38, 0.6, -0.16, 0.92, -0.22, 1.02, 0, 0.98, 0.22, 1.02, 0.16, 0.92, 0.38, 0.6, 0.34, 0.2))
		p.sideHatch(f, 0.15, 0.8, 0.3)
		return
	}
	p.area(p.petal(), f.shape(0, 0, -neck, 0.12, -0.34, 0.5, -0.4, 0.72, -0.56, 0.98, -0.34, 0.92, -0.18, 1.06, 0, 0.94, 0.18, 1.06, 0.34, 0.92, 0.56, 0.98, 0.4, 0.72, 0.34, 0.5, neck, 0.12))
	p.faint(0.6, f.line(-0.1, 0.2, -0.14, 0.55, -0.18, 0.9)...)
	p.faint(0.6, f.line(0.1, 0.2, 0.14, 0.55, 0.18, 0.9)...)
	p.sideHatch(f, 0.15, 0.8, 0.3)
}

// trumpet is a tube that opens into a limb, seen partly from the front.
func (p *flowerPen) trumpet() {
	f := p.profile
	p.area(p.tone(p.colour, -0.12), f.shape(0, 0, -0.08, 0.1, -0.12, 0.5, -0.34, 0.86, 0, 0.94, 0.34, 0.86, 0.12, 0.5, 0.08, 0.1))
	p.faint(0.6, f.line(0, 0.2, 0, 0.7)...)
	p.area(p.tone(p.leaves[0], -0.1), f.shape(0, -0.05, -0.13, 0.06, -0.1, 0.22, 0, 0.14, 0.1, 0.22, 0.13, 0.06))
	limb := frame{f.point(0, 0.9), f.x.times(0.5), f.y.times(0.27)}
	n := float64(p.count(5))
	p.area(p.petal(), ring(limb, 50, func(a float64) float64 { return 0.88 + 0.12*math.Cos(n*(a-math.Pi/2)) }))
	for i := range p.count(5) {
		a := math.Pi/2 + 2*math.Pi*float64(i)/n
		p.faint(0.6, limb.polar(0.35, a), limb.polar(0.8, a))
	}
	p.hatch(limb, 0.4, 0.8, 12)
	throat := p.tone(p.colour, -0.4)
	if p.drawing.Flower.Eye == plants.YellowEye {
		throat = p.tone(plants.Yellow, -0.08)
	}
	p.area(throat, ring(limb, 14, func(float64) float64 { return 0.32 }))
}

// tube is long and narrow with small lips.
func (p *flowerPen) tube() {
	f := p.profile
	f.x, f.y = f.x.times(0.8), f.y.times(1.8)
	p.area(p.petal(), f.shape(0, 0, -0.1, 0.1, -0.15, 0.5, -0.2, 0.84, -0.34, 1, -0.12, 0.97, 0, 1.06, 0.12, 0.97, 0.34, 1, 0.2, 0.84, 0.15, 0.5, 0.1, 0.1))
	p.area(p.tone(p.colour, -0.3), f.shape(0, -0.03, -0.14, 0.08, -0.13, 0.3, 0, 0.24, 0.13, 0.3, 0.14, 0.08))
	if p.drawing.Flower.Eye == plants.DarkEye {
		p.area(Tone{Kind: Ink}, f.shape(-0.2, 0.9, -0.3, 1, 0, 1.04, 0.3, 1, 0.2, 0.9))
	}
}

// lily has six pointed petals that bend back, and stamens.
func (p *flowerPen) lily() {
	f := p.profile.scaled(0.85)
	p.area(p.tone(p.colour, -0.1), f.shape(-0.06, 0.2, -0.22, 0.7, -0.14, 1.0, 0, 0.86, 0.14, 1.0, 0.22, 0.7, 0.06, 0.2))
	for _, side := range []float64{1, -1} {
		p.area(p.petal(), f.shape(0, 0.04, side*0.16, 0.3, side*0.4, 0.66, side*0.62, 0.78, side*0.72, 0.66, side*0.5, 0.5, side*0.22, 0.2))
		p.area(p.tone(p.colour, 0.05), f.shape(0, 0, side*0.1, 0.4, side*0.32, 0.86, side*0.46, 1.02, side*0.2, 0.92, side*0.02, 0.5))
	}
	p.area(p.tone(p.colour, 0.1), f.shape(0, 0, 0.12, 0.3, 0.16, 0.6, 0.05, 0.82, 0, 0.98, -0.08, 0.8, -0.16, 0.6, -0.12, 0.3))
	p.faint(0.7, f.line(0, 0.2, 0, 0.75)...)
	for _, x := range []float64{-0.2, 0, 0.2} {
		p.line(0.6, f.point(x*0.4, 0.8), f.point(x, 1.16))
		p.dot(frame{f.point(x, 1.18), f.x, f.y}, 0.045, p.tone(plants.Brown, 0))
	}
	p.sideHatch(f, 0.2, 0.7, 0.25)
}

// iris has standards above and falls below.
func (p *flowerPen) iris() {
	f := frame{p.face.at, Point{p.face.x.length(), 0}, Point{0, p.face.x.length()}}
	for _, side := range []float64{1, -1} {
		p.area(p.tone(p.colour, 0.06), f.shape(0, 0, side*0.14, 0.5, side*0.34, 0.98, side*0.5, 0.8, side*0.36, 0.4, side*0.12, 0.05))
	}
	p.area(p.tone(p.colour, 0), f.shape(0, 0, 0.2, 0.4, 0.14, 0.9, 0, 1.05, -0.14, 0.9, -0.2, 0.4))
	for _, side := range []float64{1, -1} {
		p.area(p.petal(), f.shape(0, 0.05, side*0.36, 0.1, side*0.8, -0.08, side*0.98, -0.46, side*0.74, -0.66, side*0.46, -0.34, side*0.14, -0.12))
	}
	p.area(p.tone(p.colour, -0.06), f.shape(0, 0.05, 0.2, -0.2, 0.36, -0.66, 0.2, -0.98, 0, -1.04, -0.2, -0.98, -0.36, -0.66, -0.2, -0.2))
	p.marks = append(p.marks, Mark{Shape: f.shape(0, 0, 0.07, -0.3, 0, -0.62, -0.07, -0.3), Closed: true, Fill: p.tone(plants.Yellow, 0), Line: Tone{Kind: Ink}, Weight: 0.6})
	p.sideHatch(frame{f.at, f.x, f.y}, -0.9, -0.2, 0.24)
}

// lipped has a small upper lip and a broad lower one.
func (p *flowerPen) lipped() {
	f := frame{p.face.at, Point{p.face.x.length(), 0}, Point{0, p.face.x.length()}}.turned(p.within(-0.3, 0.3))
	switch p.form {
	case plants.Jaw:
		p.area(p.tone(p.colour, -0.08), f.shape(-0.1, -0.1, -0.62, 0.3, -0.5, 0.9, -0.1, 0.78, 0.1, 0.78, 0.5, 0.9, 0.62, 0.3, 0.1, -0.1))
		p.area(p.petal(), f.shape(0, 0.26, -0.5, 0.2, -0.8, -0.16, -0.72, -0.66, -0.3, -0.92, 0, -0.78, 0.3, -0.92, 0.72, -0.66, 0.8, -0.16, 0.5, 0.2))
		p.area(p.tone(p.second, 0.1), f.shape(-0.3, 0.12, 0, 0.2, 0.3, 0.12, 0.26, -0.26, 0, -0.36, -0.26, -0.26))
		p.hatch(f.moved(0, -0.4), 0.15, 0.36, 7)
		return
	case plants.Slipper:
		p.area(p.tone(p.colour, -0.12), f.shape(-0.1, 0.3, -0.42, 0.5, -0.3, 0.86, 0, 0.92, 0.3, 0.86, 0.42, 0.5, 0.1, 0.3))
		p.area(p.petal(), f.shape(0, 0.42, -0.5, 0.3, -0.86, -0.2, -0.6, -0.8, 0, -0.98, 0.6, -0.8, 0.86, -0.2, 0.5, 0.3))
		p.hatch(f.moved(0, -0.3), 0.2, 0.5, 8)
		p.area(p.tone(p.colour, -0.4), f.shape(-0.24, 0.3, 0, 0.4, 0.24, 0.3, 0, 0.12))
		return
	case plants.Spurred:
		p.area(p.tone(p.colour, -0.2), f.shape(-0.1, 0, -0.16, -0.7, -0.3, -1.15, -0.1, -1.1, 0.06, -0.6, 0.1, 0))
	}
	for _, side := range []float64{1, -1} {
		p.area(p.tone(p.colour, -0.04), f.shape(0, 0.06, side*0.06, 0.6, side*0.3, 0.92, side*0.56, 0.7, side*0.4, 0.2))
	}
	for _, side := range []float64{1, -1} {
		p.area(p.petal(), f.shape(0, 0.06, side*0.5, 0.22, side*0.92, -0.02, side*0.86, -0.44, side*0.4, -0.4))
	}
	p.area(p.tone(p.colour, 0.06), f.shape(0, 0.05, 0.34, -0.24, 0.52, -0.7, 0.24, -0.98, 0, -0.9, -0.24, -0.98, -0.52, -0.7, -0.34, -0.24))
	p.hatch(f.moved(0, -0.1), 0.26, 0.6, 9)
	switch p.drawing.Flower.Eye {
	case plants.NoEye:
		p.dot(f.moved(0, -0.02), 0.13, p.tone(p.colour, -0.4))
	default:
		p.face = f.moved(0, -0.05)
		p.eye(0.17)
	}
}

// reflexed is a cyclamen: petals swept up from a mouth that looks down.
func (p *flowerPen) reflexed() {
	f := frame{p.face.at, Point{p.face.x.length(), 0}, Point{0, p.face.x.length()}}
	for _, petal := range [][2]float64{{-0.7, -0.05}, {0.7, -0.05}, {-0.38, 0}, {0.38, 0}, {0, 0.06}} {
		x := petal[0]
		p.area(p.tone(p.colour, petal[1]), f.shape(x*0.2, -0.55, x*0.5-0.13, -0.1, x-0.17, 0.5, x*1.05-0.03, 0.98, x*1.02+0.12, 0.9, x+0.17, 0.45, x*0.5+0.13, -0.1))
		p.faint(0.6, f.point(x*0.4, -0.3), f.point(x*0.95, 0.6))
	}
	p.area(p.tone(p.colour, -0.3), f.shape(-0.26, -0.5, 0, -0.42, 0.26, -0.5, 0.2, -0.76, 0, -0.82, -0.2, -0.76))
	p.sideHatch(f, -0.2, 0.6, 0.4)
}

// pendant is a fuchsia: sepals spread over a skirt, stamens below.
func (p *flowerPen) pendant() {
	f := frame{p.face.at, Point{p.face.x.length(), 0}, Point{0, p.face.x.length()}}
	skirt, sepal := p.tone(p.second, 0), p.petal()
	if p.drawing.Flower.Eye == plants.GreenEye { // a snowdrop
		for _, x := range []float64{-0.45, 0.45, 0} {
			p.area(p.petal(), f.shape(x*0.2, 0.8, x*0.7-0.22, 0.3, x*1.1-0.22, -0.4, x*1.3, -0.9, x*1.1+0.22, -0.4, x*0.7+0.22, 0.3))
		}
		p.area(p.tone(plants.Green, 0), f.shape(-0.12, 0.98, 0, 1.06, 0.12, 0.98, 0.14, 0.78, 0, 0.7, -0.14, 0.78))
		p.marks = append(p.marks, Mark{Shape: f.shape(-0.12, -0.5, 0, -0.36, 0.12, -0.5, 0, -0.66), Closed: true, Fill: p.tone(plants.Green, 0)})
		return
	}
	for _, x := range []float64{-0.16, 0, 0.16} {
		p.line(0.6, f.point(x*0.4, -0.4), f.point(x, -1.15+0.2*math.Abs(x)))
	}
	p.area(skirt, f.shape(-0.2, 0.3, -0.42, -0.1, -0.44, -0.5, -0.2, -0.62, 0, -0.54, 0.2, -0.62, 0.44, -0.5, 0.42, -0.1, 0.2, 0.3))
	p.faint(0.6, f.line(-0.08, 0.1, -0.14, -0.5)...)
	p.faint(0.6, f.line(0.1, 0.1, 0.16, -0.5)...)
	for _, side := range []float64{1, -1} {
		p.area(sepal, f.shape(0, 0.4, side*0.4, 0.5, side*0.98, 0.28, side*1.06, 0.16, side*0.6, 0.06, side*0.1, 0.14))
		p.area(p.tone(p.colour, 0.07), f.shape(0, 0.4, side*0.3, 0.24, side*0.66, -0.24, side*0.68, -0.38, side*0.36, -0.18, side*0.04, 0.14))
	}
	p.area(sepal, f.shape(-0.1, 1, 0.1, 1, 0.15, 0.6, 0.16, 0.28, 0, 0.2, -0.16, 0.28, -0.15, 0.6))
}

// pea has a standard behind, two wings and a keel.
func (p *flowerPen) pea() {
	f := frame{p.face.at, Point{p.face.x.length(), 0}, Point{0, p.face.x.length()}}.turned(p.within(-0.3, 0.3))
	p.area(p.tone(p.colour, -0.04), f.shape(0, -0.4, -0.6, -0.3, -0.98, 0.2, -0.8, 0.8, -0.3, 0.98, 0, 0.84, 0.3, 0.98, 0.8, 0.8, 0.98, 0.2, 0.6, -0.3))
	p.faint(0.6, f.line(0, -0.2, 0, 0.8)...)
	p.hatch(f.moved(0, 0.2), 0.3, 0.6, 10)
	for _, side := range []float64{1, -1} {
		p.area(p.tone(p.second, 0.04), f.shape(0, -0.35, side*0.1, 0.1, side*0.4, 0.2, side*0.52, -0.2, side*0.3, -0.62, side*0.06, -0.66))
	}
	p.area(p.tone(plants.White, -0.05), f.shape(0, 0, 0.13, -0.3, 0.08, -0.72, 0, -0.8, -0.08, -0.72, -0.13, -0.3))
}
