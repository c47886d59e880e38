package sketch

import (
	"math"

	"fourturn/plants"
)

// leafOf draws one petal: from r0 to r1 along an angle, as wide as half to each side
// at the widest place, which is at a share of its length. Tip is 0 for a pointed
// end, 1 for a broad one.
func (p *flowerPen) petalShape(f frame, angle, r0, r1, half, tip float64) []Point {
	t := f.turned(angle)
	long := r1 - r0
	w := half * (0.35 + 0.65*tip)
	return t.shape(
		r0, 0, r0+long*0.3, half*0.62, r0+long*0.68, half, r0+long*(0.88+0.06*tip), w*0.72, r1, 0,
		r0+long*(0.88+0.06*tip), -w*0.72, r0+long*0.68, -half, r0+long*0.3, -half*0.62)
}

// count returns how many petals there are, or the usual number.
func (p *flowerPen) count(usual int) int {
	if p.petals > 0 {
		return p.petals
	}
	return usual
}

// eye paints the middle.
func (p *flowerPen) eye(r float64) {
	tone := p.tone(plants.Yellow, 0)
	switch p.drawing.Flower.Eye {
	case plants.DarkEye:
		tone = p.tone(plants.Burgundy, -0.35)
	case plants.WhiteEye:
		tone = p.tone(plants.White, 0)
	case plants.GreenEye:
		tone = p.tone(plants.Lime, -0.1)
	case plants.Blotch, plants.NoEye:
		tone = p.tone(p.colour, -0.45)
	case plants.YellowEye:
	}
	p.dot(p.face, r, tone)
	if p.drawing.Flower.Eye == plants.DarkEye {
		p.marks = append(p.marks, Mark{Shape: ring(p.face, 10, func(float64) float64 { return r * 0.6 }), Closed: true, Fill: Tone{Kind: Ink}, Mono: true})
	}
}

func (p *flowerPen) daisy() {
	n := min(p.count(14), 22)
	half := min(0.2, 2.1/float64(n))
	for i := range n {
		angle := 2 * math.Pi * float64(i) / float64(n)
		p.area(p.tone(p.colour, 0.06*math.Sin(3*angle)), p.petalShape(p.face, angle, 0.2, 1, half, 0.7))
	}
	p.hatch(p.face, 0.36, 0.7, n)
	p.eye(0.33)
	if p.face.x.length() > 9*p.pen {
		for i := range 9 {
			r, angle := 0.24*math.Sqrt(float64(i)/9), float64(i)*golden
			f := frame{p.face.polar(r, angle), Point{p.pen * 0.55, 0}, Point{0, p.pen * 0.55}}
			p.marks = append(p.marks, Mark{Shape: ring(f, 6, func(float64) float64 { return 1 }), Closed: true, Fill: Tone{Kind: Faint}})
		}
	}
}

// daisySide is a daisy seen from its side: rays that stand out from a cup.
func (p *flowerPen) daisySide() {
	f := p.profile.scaled(0.5)
	n := min(p.count(14), 13)
	for i := range n {
		t := float64(i)/float64(n-1)*2 - 1
		angle := math.Pi/2 - t*1.35
		p.area(p.tone(p.colour, -0.08*math.Abs(t)), p.petalShape(frame{f.at, f.x, f.y.times(0.75)}, angle, 0.1, 1, 0.13, 0.7))
	}
	p.area(p.tone(p.leaves[0], -0.1), f.shape(-0.28, 0.12, -0.2, -0.14, 0, -0.22, 0.2, -0.14, 0.28, 0.12, 0, 0.16))
}

// double is a flower full of petals, in rings.
func (p *flowerPen) double() {
	rings := 3
	if p.face.x.length() > 11*p.pen {
		rings = 4
	}
	n := int(clamp(float64(p.count(24))/2.6, 8, 14))
	tip := 0.95
	if p.form == plants.Pompon {
		n, tip = 15, 0.6
	}
	for k := range rings {
		r := 1 - 0.82*float64(k)/float64(rings)
		for i := range n {
			angle := 2 * math.Pi * (float64(i) + 0.5*float64(k%2)) / float64(n)
			half := min(0.3, 3.6/float64(n)) * (0.45 + 0.55*r)
			p.area(p.tone(p.colour, 0.1-0.09*float64(k)), p.petalShape(p.face, angle, r*0.35, r, half, tip))
		}
		n = max(5, n-2)
	}
	p.hatch(p.face, 0.05, 0.5, 10)
	if p.drawing.Flower.Eye != plants.NoEye {
		p.eye(0.16)
	}
}

// pansy has two petals behind, two at the sides and one below, with a face.
func (p *flowerPen) pansy() {
	f := frame{p.face.at, Point{p.face.x.length(), 0}, Point{0, p.face.x.length() * 0.96}}.turned(p.within(-0.25, 0.25))
	back, front := p.tone(p.second, -0.05), p.petal()
	for _, side := range []float64{1, -1} {
		p.area(back, f.shape(0, 0, side*0.08, 0.62, side*0.3, 0.98, side*0.7, 0.92, side*0.82, 0.5, side*0.5, 0.1))
	}
	for _, side := range []float64{1, -1} {
		p.area(front, f.shape(0, 0.08, side*0.4, 0.42, side*0.86, 0.34, side*0.96, -0.08, side*0.7, -0.4, side*0.2, -0.2))
	}
	p.area(front, f.shape(0, 0.02, 0.32, -0.14, 0.66, -0.5, 0.46, -0.9, 0, -1, -0.46, -0.9, -0.66, -0.5, -0.32, -0.14))
	dark := p.tone(plants.Purple, -0.45)
	if p.drawing.Flower.Eye == plants.Blotch {
		p.marks = append(p.marks,
			Mark{Shape: f.shape(0, 0, 0.28, -0.16, 0.4, -0.42, 0.14, -0.5, 0, -0.66, -0.14, -0.5, -0.4, -0.42, -0.28, -0.16), Closed: true, Fill: dark},
			Mark{Shape: f.shape(0.06, 0.06, 0.32, 0.18, 0.56, 0.06, 0.4, -0.1, 0.12, -0.06), Closed: true, Fill: dark},
			Mark{Shape: f.shape(-0.06, 0.06, -0.32, 0.18, -0.56, 0.06, -0.4, -0.1, -0.12, -0.06), Closed: true, Fill: dark})
	}
	for _, x := range []float64{-0.42, -0.2, 0, 0.2, 0.42} {
		p.line(0.7, f.point(x*0.12, -0.08), f.point(x*0.6, -0.3), f.point(x, -0.5+0.3*math.Abs(x)))
	}
	for _, side := range []float64{1, -1} {
		p.line(0.7, f.point(side*0.12, 0.04), f.point(side*0.42, 0.08))
		p.line(0.7, f.point(side*0.12, 0), f.point(side*0.4, -0.08))
	}
	p.dot(f.moved(0, -0.04), 0.11, p.tone(plants.Yellow, 0))
}

// pointed is a star, or a lily seen from the front.
func (p *flowerPen) pointed() {
	n := p.count(5)
	half := clamp(1.35/float64(n), 0.15, 0.34)
	for i := range n {
		angle := math.Pi/2 + 2*math.Pi*float64(i)/float64(n)
		p.area(p.tone(p.colour, 0.07*float64(i%2)), p.petalShape(p.face, angle, 0.04, 1, half, 0))
		p.faint(0.6, p.face.polar(0.2, angle), p.face.polar(0.75, angle))
	}
	p.hatch(p.face, 0.2, 0.6, 3*n)
	if p.form == plants.LilyForm {
		p.stamens(p.face, 6, 0.55)
		return
	}
	p.eye(0.15)
}

// stamens are threads with a knob.
func (p *flowerPen) stamens(f frame, n int, reach float64) {
	for i := range n {
		angle := 2*math.Pi*float64(i)/float64(n) + 0.5
		tip := f.polar(reach, angle)
		p.line(0.7, f.at, tip)
		knob := frame{tip, Point{p.pen, 0}, Point{0, p.pen}}
		p.area(p.tone(plants.Brown, 0), ring(knob, 7, func(float64) float64 { return 1 }))
	}
}

// flat is a flower of round petals that lie in one plane.
func (p *flowerPen) flat() {
	n := p.count(5)
	if p.form == plants.Cross || p.form == plants.LaceForm {
		n = 4
	}
	half := clamp(2.35/float64(n), 0.2, 0.62)
	if p.form == plants.Cross { // with gaps between
		half = 0.42
	}
	notch := 0.0
	if p.form == plants.Ruffled {
		notch = 0.05
	}
	for i := range n {
		angle := math.Pi/2 + 2*math.Pi*float64(i)/float64(n)
		shape := p.petalShape(p.face, angle, 0.06, 1, half, 1)
		if notch > 0 {
			for j := range shape {
				if j%4 < 2 {
					shape[j] = between(shape[j], p.face.at, notch*2)
				}
			}
		}
		p.area(p.tone(p.colour, 0.06*float64(i%2)), shape)
		if p.drawing.Flower.Eye == plants.Blotch {
			for _, lean := range []float64{-0.14, 0, 0.14} {
				p.line(0.7, p.face.polar(0.2, angle), p.face.polar(0.55, angle+lean))
			}
		}
	}
	p.hatch(p.face, 0.24, 0.62, 3*n)
	if p.drawing.Flower.Eye == plants.DarkEye {
		p.marks = append(p.marks, Mark{Shape: ring(p.face, 18, func(a float64) float64 { return 0.42 + 0.07*math.Cos(float64(n)*a) }), Closed: true, Fill: p.tone(p.colour, -0.4)})
	}
	p.eye(0.17)
}

// bowl is an open bowl of broad petals with stamens.
func (p *flowerPen) bowl() {
	n := max(4, min(p.count(5), 9))
	half := clamp(2.6/float64(n), 0.3, 0.66)
	for k := range 2 {
		for i := k; i < n; i += 2 {
			angle := math.Pi/2 + 2*math.Pi*float64(i)/float64(n)
			p.area(p.tone(p.colour, -0.05+0.1*float64(k)), p.petalShape(p.face, angle, 0.02, 1, half, 1))
			for _, lean := range []float64{-0.2, 0.2} {
				p.faint(0.6, p.face.polar(0.3, angle+lean*0.5), p.face.polar(0.78, angle+lean))
			}
		}
	}
	p.hatch(p.face, 0.3, 0.66, 14)
	if p.drawing.Flower.Eye == plants.DarkEye {
		p.dot(p.face, 0.34, p.tone(p.colour, -0.42))
	}
	for i := range 9 {
		angle := 2 * math.Pi * float64(i) / 9
		p.line(0.6, p.face.polar(0.1, angle), p.face.polar(0.3, angle))
	}
	p.eye(0.14)
}

// throat is a trumpet or a bell that one looks into.
func (p *flowerPen) throat() {
	n := p.count(5)
	p.area(p.petal(), ring(p.face, 60, func(a float64) float64 {
		return 0.86 + 0.14*math.Cos(float64(n)*(a-math.Pi/2))
	}))
	for i := range n {
		angle := math.Pi/2 + 2*math.Pi*float64(i)/float64(n)
		p.faint(0.7, p.face.polar(0.3, angle), p.face.polar(0.82, angle))
	}
	p.hatch(p.face, 0.34, 0.72, 3*n)
	p.dot(p.face, 0.3, p.tone(p.colour, -0.3))
	switch p.drawing.Flower.Eye {
	case plants.NoEye:
		p.dot(p.face.scaled(0.6), 0.26, p.tone(p.colour, -0.55))
	default:
		p.eye(0.2)
	}
}

// corona is a daffodil: six petals around a cup.
func (p *flowerPen) corona() {
	for i := range 6 {
		angle := math.Pi/2 + math.Pi/3*float64(i)
		p.area(p.tone(p.colour, -0.06+0.1*float64(i%2)), p.petalShape(p.face, angle, 0.1, 1, 0.31, 0.35))
		p.faint(0.6, p.face.polar(0.4, angle), p.face.polar(0.82, angle))
	}
	cup := p.tone(p.second, -0.04)
	p.area(cup, ring(p.face, 48, func(a float64) float64 { return 0.43 + 0.035*math.Sin(12*a) }))
	p.area(p.tone(p.second, -0.25), ring(p.face, 16, func(float64) float64 { return 0.27 }))
	p.stamens(p.face, 3, 0.14)
}

// fan has all its petals on one side.
func (p *flowerPen) fan() {
	f := frame{p.face.at, Point{p.face.x.length(), 0}, Point{0, p.face.x.length()}}.turned(p.within(-0.3, 0.3))
	n := p.count(5)
	for i := range n {
		angle := -math.Pi/2 + (float64(i)/float64(n-1)-0.5)*2.7
		p.area(p.tone(p.colour, 0.05*float64(i%2)), p.petalShape(f.moved(0, 0.35), angle, 0.05, 1.25, 0.28, 0.8))
	}
	p.dot(f.moved(0, 0.32), 0.17, p.tone(plants.White, 0))
	p.dot(f.moved(0, 0.32), 0.08, p.tone(plants.Yellow, 0))
}
