package sketch

import (
	"math"

	"fourturn/plants"
)

// path is the way of a stem through space.
type path struct{ points []space }

const joints = 14

// bow returns the way from one place to another that sets out towards a third.
func bow(from, over, to space) path {
	points := make([]space, joints+1)
	for i := range points {
		t := float64(i) / joints
		points[i] = from.times((1 - t) * (1 - t)).plus(over.times(2 * t * (1 - t))).plus(to.times(t * t))
	}
	return path{points}
}

// wayOf returns a way by its places.
func wayOf(at func(t float64) space) path {
	points := make([]space, joints+1)
	for i := range points {
		points[i] = at(float64(i) / joints)
	}
	return path{points}
}

func (p path) at(t float64) space {
	u := clamp(t, 0, 1) * joints
	i := min(int(u), joints-1)
	d := u - float64(i)
	return p.points[i].times(1 - d).plus(p.points[i+1].times(d))
}

func (p path) along(t float64) space {
	i := min(int(clamp(t, 0, 1)*joints), joints-1)
	return p.points[i+1].minus(p.points[i]).unit()
}

func (p path) length() (sum float64) {
	for i := range joints {
		sum += p.points[i+1].minus(p.points[i]).length()
	}
	return sum
}

func (p path) tip() space { return p.points[joints] }

// wood reports whether stems are brown.
func (a *artist) wood() bool {
	return a.plant.Kind == plants.Shrub || a.plant.Kind == plants.Conifer || a.plant.Kind == plants.CutStems
}

func (a *artist) stemTone(shade float64) Tone {
	if a.wood() {
		return Tone{Kind: Tinted, Colour: plants.Brown, Shade: shade}
	}
	return Tone{Kind: Tinted, Colour: plants.Green, Shade: shade - 0.06}
}

// drawStem adds a stem that tapers from one width to another, in pens.
func (a *artist) drawStem(p path, from, to float64) {
	a.drawBranch(p, from, to, a.stemTone(0))
}

func (a *artist) drawBranch(p path, from, to float64, tone Tone) {
	line := make([]Point, joints+1)
	for i, q := range p.points {
		line[i] = a.camera.see(q)
	}
	var left, right []Point
	for i := range line {
		dir := line[min(i+1, joints)].minus(line[max(i-1, 0)]).unit(Point{0, 1})
		half := dir.across().times(a.pen / 2 * (from + (to-from)*float64(i)/joints))
		left, right = append(left, line[i].plus(half)), append(right, line[i].minus(half))
	}
	for i := len(right) - 1; i >= 0; i-- {
		left = append(left, right[i])
	}
	near := a.camera.near(p.at(0.5)) - 0.15*a.radius
	if math.Max(from, to) < 1.6 {
		a.add(near, Mark{Shape: line, Line: Tone{Kind: Ink}, Weight: math.Max(from, to)})
		return
	}
	a.add(near, Mark{Shape: left, Closed: true, Fill: tone, Line: Tone{Kind: Ink}, Weight: 0.7})
}

// leafing says how leaves stand along a stem.
type leafing struct {
	from, to float64 // shares of the stem
	length   float64 // of the leaves, m
	spacing  float64 // m from node to node
	open     float64 // from the stem, in radians
	droop    float64
	stalk    float64 // m
	shrink   float64 // how much smaller the leaf at the tip is, 0 to 1
	pairs    bool    // two at a node
}

// alongStem adds leaves along a stem and one at its tip.
func (a *artist) alongStem(p path, l leafing) {
	if a.drawing.Leaf.Form == plants.NoLeaf {
		return
	}
	n := int(clamp(p.length()*(l.to-l.from)/l.spacing, 1, 16))
	turn := a.within(0, 2*math.Pi)
	for i := range n {
		t := l.from + (l.to-l.from)*float64(i)/float64(n)
		size := l.length * (1 - l.shrink*float64(i)/float64(n)) * a.within(0.88, 1.1)
		around := turn + float64(i)*golden
		if l.pairs {
			around = turn + float64(i)*math.Pi/2
		}
		a.leafFrom(p, t, around, size, l)
		if l.pairs {
			a.leafFrom(p, t, around+math.Pi, size, l)
		}
	}
	tip := p.along(1)
	a.drawLeaf(leafAt{base: p.tip(), along: tip, length: l.length * (1 - 0.5*l.shrink) * 0.8, droop: l.droop * 0.4})
}

func (a *artist) leafFrom(p path, t, around, size float64, l leafing) {
	dir := p.along(t)
	side := sideways(dir)
	out := side.times(math.Cos(around)).plus(side.cross(dir).times(math.Sin(around)))
	sin, cos := math.Sincos(l.open)
	along := dir.times(cos).plus(out.times(sin))
	a.drawLeaf(leafAt{base: p.at(t), along: along, length: size, droop: l.droop, stalk: l.stalk, turn: a.within(-0.4, 0.4)})
}
