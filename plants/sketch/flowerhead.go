package sketch

import (
	"math"

	"fourturn/plants"
)

// upright returns the flower's frame standing on the paper, 1 is half the width.
func (p *flowerPen) upright() frame {
	w := p.face.x.length()
	axis := p.profile.y.unit(Point{0, 1})
	return frame{p.face.at, axis.across().times(-w), axis.times(w)}
}

// plume is a feathery flame, or a crest where it is as wide as tall.
func (p *flowerPen) plume() {
	f := p.upright()
	long := 3.0
	if p.form == plants.Crest {
		long = 1.5
	}
	const knobs = 6
	for k := range knobs {
		t := float64(k) / knobs
		y := -0.6 + long*t
		wide := 0.85 * math.Sqrt(math.Sin(math.Pi*(0.22+0.74*t)))
		for _, x := range []float64{-1, 1, 0} {
			size := 0.5 * (1.1 - 0.6*t)
			c := frame{f.point(x*wide*0.55, y+0.22*(1-math.Abs(x))), f.x.times(size), f.y.times(size * 1.5)}.turned(-x * 0.5)
			p.area(p.tone(p.colour, 0.08*math.Sin(float64(3*k)+x)), c.shape(0, -0.9, 0.6, -0.2, 0.5, 0.5, 0, 1.05, -0.5, 0.5, -0.6, -0.2))
			if darkness(p.colour) > 1 {
				p.marks = append(p.marks, Mark{Shape: []Point{c.point(0.15, -0.5), c.point(0.15, 0.5)}, Line: Tone{Kind: Ink}, Weight: 0.5, Mono: true})
			}
		}
	}
}

// globe is a ball of many small flowers.
func (p *flowerPen) globe() {
	f := frame{p.face.at, Point{p.face.x.length(), 0}, Point{0, p.face.x.length()}}
	p.area(p.petal(), ring(f, 44, func(a float64) float64 { return 0.92 + 0.08*math.Cos(14*a) }))
	r := f.x.length()
	if r < 4*p.pen {
		return
	}
	n := int(clamp(r*r/(9*p.pen*p.pen), 6, 34))
	size := 0.55 / math.Sqrt(float64(n))
	for i := range n {
		d, angle := 0.86*math.Sqrt((float64(i)+0.5)/float64(n)), float64(i)*golden
		star := frame{f.polar(d, angle), f.x.times(size * 1.6), f.y.times(size * 1.6)}
		p.marks = append(p.marks, Mark{
			Shape: ring(star, 20, func(a float64) float64 { return 0.7 + 0.3*math.Cos(5*a) }), Closed: true,
			Fill: p.tone(p.colour, 0.1*math.Sin(float64(i)*1.7)), Line: Tone{Kind: Ink}, Weight: 0.6,
		})
	}
	p.hatch(f, 0.55, 0.9, 8)
}

// bristle is the brush of a grass.
func (p *flowerPen) bristle() {
	f := p.upright()
	long := clamp(0.3*p.height/f.y.length(), 4.2, 12)
	if p.drawing.Arrangement == plants.Umbel {
		long = 1
	}
	tone := p.tone(p.colour, -0.1)
	body := f.shape(0, -0.3, -0.36, 0.5, -0.34, long*0.6, 0, long, 0.34, long*0.6, 0.36, 0.5)
	p.marks = append(p.marks, Mark{Shape: body, Closed: true, Fill: p.tone(p.colour, 0.12)})
	const n = 15
	for i := range n {
		t := float64(i) / n
		y := long * t
		wide := 0.95 * math.Sqrt(math.Sin(math.Pi*(0.15+0.8*t)))
		for _, side := range []float64{1, -1} {
			p.marks = append(p.marks, Mark{Shape: []Point{f.point(0, y-0.1), f.point(side*wide, y+0.5)}, Line: tone, Weight: 0.9})
			if i%2 == 0 {
				p.line(0.6, f.point(0, y), f.point(side*wide*0.7, y+0.55))
			}
		}
	}
}

// spathe is one leaf of a flower rolled around a finger.
func (p *flowerPen) spathe() {
	if p.count(1) > 1 { // a crane's head
		f := p.upright()
		p.area(p.tone(plants.Green, -0.1), f.shape(-0.95, 0.02, -0.2, -0.16, 0.5, -0.1, 0.56, 0.1, -0.2, 0.12))
		for i, lean := range []float64{0.1, 0.45, 0.85} {
			p.area(p.tone(p.colour, 0.05*float64(i)), p.petalShape(f.moved(0.25, 0.05), math.Pi/2-lean+0.2, 0, 0.95, 0.14, 0))
		}
		p.area(p.tone(p.second, 0), p.petalShape(f.moved(0.25, 0.05), 0.35, 0, 0.8, 0.1, 0))
		return
	}
	f := p.upright()
	p.area(p.tone(p.colour, -0.14), f.shape(0, -1.1, -0.5, -0.3, -0.85, 0.5, -0.4, 1, 0.1, 1.15, 0.5, 1.5, 0.72, 0.8, 0.4, -0.2))
	p.area(p.tone(plants.Yellow, 0), f.shape(-0.1, -0.4, 0.1, -0.4, 0.12, 0.6, 0, 0.78, -0.12, 0.6))
	p.area(p.petal(), f.shape(0, -1.2, 0.34, -0.6, 0.6, 0.1, 0.74, 0.8, 0.3, 0.3, -0.3, 0.1, -0.85, 0.5, -0.56, -0.3))
	p.sideHatch(f, -0.9, 0, 0.3)
}

func (p *flowerPen) berry() {
	f := frame{p.face.at, Point{p.face.x.length(), 0}, Point{0, p.face.x.length()}}
	p.dot(f, 0.95, p.petal())
	p.hatch(f, 0.4, 0.85, 4)
	if f.x.length() > 2.4*p.pen {
		shine := frame{f.point(-0.3, 0.34), f.x.times(0.22), f.y.times(0.22)}
		p.marks = append(p.marks, Mark{Shape: ring(shine, 8, func(float64) float64 { return 1 }), Closed: true, Fill: Tone{Kind: Paper}})
	}
}

// fruit hangs from a green cap; its shape is the plant's own.
func (p *flowerPen) fruit() {
	f := frame{p.face.at, Point{p.face.x.length(), 0}, Point{0, p.face.x.length()}}
	body := f.shape(0, 0.85, -0.6, 0.8, -0.98, 0.2, -0.75, -0.6, 0, -0.98, 0.75, -0.6, 0.98, 0.2, 0.6, 0.8)
	switch fruitOf(p.plant) {
	case longFruit:
		body = f.shape(0, 0.95, -0.42, 0.8, -0.56, 0, -0.46, -0.9, 0, -1.4, 0.46, -0.9, 0.56, 0, 0.42, 0.8)
	case pointedFruit:
		body = f.shape(0, 0.9, -0.62, 0.86, -0.86, 0.3, -0.5, -0.5, 0, -1.15, 0.5, -0.5, 0.86, 0.3, 0.62, 0.86)
	case roundFruit:
	}
	p.area(p.petal(), body)
	p.hatch(f, 0.4, 0.75, 7)
	if fruitOf(p.plant) == pointedFruit {
		for i := range 9 {
			seed := f.point(0.5*math.Cos(float64(i)*golden)*math.Sqrt(float64(i)/9), 0.05+0.6*math.Sin(float64(i)*golden)*math.Sqrt(float64(i)/9))
			p.line(0.8, seed, seed.plus(Point{0, p.pen}))
		}
	} else {
		p.marks = append(p.marks, Mark{Shape: f.shape(-0.5, 0.4, -0.3, 0.5, -0.36, 0.1, -0.5, -0.1), Closed: true, Fill: p.tone(p.colour, 0.35)})
	}
	for _, lean := range []float64{-1.1, -0.5, 0, 0.5, 1.1} {
		p.area(p.tone(p.leaves[0], -0.15), p.petalShape(f.moved(0, 0.9), -math.Pi/2+lean*1.1, 0, 0.5, 0.13, 0))
	}
	p.line(1.4, f.point(0, 0.9), f.point(0.06, 1.35))
}

type fruitShape int

const (
	roundFruit fruitShape = iota
	longFruit
	pointedFruit
)

// fruitOf tells the shape of a fruit by its genus, as the book says no more.
func fruitOf(p *plants.Plant) fruitShape {
	switch p.Genus() {
	case "Fragaria":
		return pointedFruit
	case "Capsicum":
		return longFruit
	}
	return roundFruit
}

// cone is the cone of a conifer, or a catkin.
func (p *flowerPen) cone() {
	f := p.upright()
	if p.form == plants.Catkin {
		p.area(p.petal(), f.shape(0, -0.9, -0.55, -0.3, -0.5, 0.6, 0, 1.1, 0.5, 0.6, 0.55, -0.3))
		for i := range 4 {
			y := -0.4 + 0.35*float64(i)
			p.faint(0.6, f.point(-0.3, y), f.point(0, y+0.16), f.point(0.3, y))
		}
		p.area(p.tone(plants.Brown, -0.1), f.shape(0, -1.2, -0.34, -0.8, 0, -0.5, 0.34, -0.8))
		return
	}
	p.area(p.tone(plants.Brown, 0.05), f.shape(0, -1.1, -0.62, -0.6, -0.66, 0.2, -0.3, 0.95, 0, 1.15, 0.3, 0.95, 0.66, 0.2, 0.62, -0.6))
	for i := range 5 {
		y := -0.8 + 0.4*float64(i)
		wide := 0.55 * math.Sqrt(math.Max(0.1, 1-math.Pow(y/1.2, 2)))
		p.line(0.8, f.line(-wide, y+0.12, -wide/2, y-0.1, 0, y+0.12, wide/2, y-0.1, wide, y+0.12)...)
	}
}

// bracts are three papery leaves around a small white flower.
func (p *flowerPen) bracts() {
	n := p.count(3)
	for i := range n {
		angle := math.Pi/2 + 2*math.Pi*float64(i)/float64(n)
		p.area(p.tone(p.colour, 0.06*float64(i)), p.petalShape(p.face, angle, 0.04, 1.05, 0.48, 0.3))
		p.faint(0.7, p.face.polar(0.1, angle), p.face.polar(0.85, angle))
	}
	p.hatch(p.face, 0.25, 0.6, 9)
	p.dot(p.face, 0.16, p.tone(plants.White, 0))
}
