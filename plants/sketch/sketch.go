package sketch

import (
	"cmp"
	"hash/fnv"
	"math"
	"math/rand/v2"
	"slices"

	"fourturn/plants"
)

// View is from where a plant is seen.
type View int

// The views.
const (
	Side View = iota
	Above
)

// Mark is one area or line of a drawing.
type Mark struct {
	Shape  []Point
	Closed bool
	Fill   Tone    // of a closed shape
	Line   Tone    // along the shape
	Weight float64 // of the line; 1 is the pen's own
	Mono   bool    // a hatch, for print in one colour alone
}

// Sketch is a plant drawn, from the back to the front.
type Sketch struct {
	Marks []Mark
	// Ground is what the plant stands on or hangs over, for a drawing of the plant
	// by itself.
	Ground         []Mark
	Low, High      Point // corners of all marks but those of the ground
	Height, Spread float64
}

// Options say how large a plant is drawn.
type Options struct {
	// Pen is how wide the pen is, in metres of the plant. 0 is a drawing of some
	// 200 pens across.
	Pen float64
	// Height and Spread are those of the plant in metres; 0 is the middle of what
	// the book gives.
	Height, Spread float64
	// Rim is how far to the left and right of the foot trailing stems meet the rim
	// of the pot; 0 is a fifth of the spread.
	Rim [2]float64
	// Drop is how far trailing stems may hang; 0 is as far as they like.
	Drop float64
}

// Draw draws a plant.
func Draw(p *plants.Plant, v View, o Options) *Sketch {
	a := newArtist(p, v, o)
	a.grow()
	return a.finish()
}

// artist draws one plant.
type artist struct {
	plant         *plants.Plant
	drawing       plants.Drawing
	camera        camera
	view          View
	random        *rand.Rand
	height        float64
	radius        float64 // half the spread
	pen           float64 // m
	rim           [2]float64
	drop          float64
	leaf          float64 // length of a leaf as it is drawn, m
	flower        float64 // width of a flower as it is drawn, m
	bloom, accent plants.Colour
	leaves        []plants.Colour // at least two
	slim, bend    float64         // how narrow leaves are and how they bend
	full          float64         // how many stems there are, by the usual
	paired        bool            // whether leaves stand in pairs
	organs        []organ
	ground        []Mark
}

// organ is what is drawn together: a leaf, a flower, a stem.
type organ struct {
	near  float64
	marks []Mark
}

func newArtist(p *plants.Plant, v View, o Options) *artist {
	a := &artist{plant: p, drawing: p.Drawing, camera: cameraOf(v), view: v, random: randomOf(p.ID)}
	a.height, a.radius = o.Height, o.Spread/2
	if a.height <= 0 {
		a.height = float64(p.Height.Low+p.Height.High) / 2
	}
	if a.radius <= 0 {
		a.radius = float64(p.Spread) / 2
	}
	a.height, a.radius = max(a.height, least), max(a.radius, least/2)
	size := max(a.height, 2*a.radius)
	if a.pen = o.Pen; a.pen <= 0 {
		a.pen = size / 200
	}
	a.rim, a.drop = o.Rim, o.Drop
	for i := range a.rim {
		if a.rim[i] <= 0 {
			a.rim[i] = a.radius * 0.4
		}
	}
	a.leaf = clamp(float64(p.Drawing.Leaf.Length), 9*a.pen, 0.9*max(a.height, a.radius))
	a.flower = clamp(float64(p.Drawing.Flower.Width), 6*a.pen, 0.6*size)
	a.colours()
	return a
}

// least is the smallest plant that can be drawn, in metres.
const least = 0.005

func clamp(v, low, high float64) float64 { return max(low, min(v, max(low, high))) }

func randomOf(id string) *rand.Rand {
	h := fnv.New64a()
	_, _ = h.Write([]byte(id)) // a hash never fails
	return rand.New(rand.NewPCG(h.Sum64(), 0x5eed))
}

// colours chooses what the flowers and leaves are painted with: not white while the
// plant has another colour, so that flowers stand out from paper.
func (a *artist) colours() {
	bright := slices.DeleteFunc(slices.Clone(a.plant.Colours), func(c plants.Colour) bool {
		return c == plants.White || c == plants.Cream || c == plants.Green || c == plants.Silver || c == plants.Grey
	})
	all := bright
	if len(all) == 0 {
		all = a.plant.Colours
	}
	if len(all) == 0 {
		all = []plants.Colour{plants.Cream}
	}
	at := a.random.IntN(len(all))
	a.bloom = all[at]
	a.accent = all[(at+1)%len(all)]
	if len(all) == 1 && len(a.plant.Colours) > 1 {
		a.accent = a.plant.Colours[(slices.Index(a.plant.Colours, a.bloom)+1)%len(a.plant.Colours)]
	}
	a.leaves = slices.Clone(a.plant.Foliage.Colours)
	if len(a.leaves) == 0 {
		a.leaves = []plants.Colour{plants.Green}
	}
	if len(a.leaves) == 1 {
		a.leaves = append(a.leaves, a.leaves[0])
	}
}

// about returns a value within a share of v, either way.
func (a *artist) about(v, share float64) float64 { return v * (1 + share*(2*a.random.Float64()-1)) }

// within returns a value from low to high.
func (a *artist) within(low, high float64) float64 { return low + (high-low)*a.random.Float64() }

func (a *artist) chance(p float64) bool { return a.random.Float64() < p }

// add keeps an organ at its depth.
func (a *artist) add(near float64, marks ...Mark) {
	if len(marks) > 0 {
		a.organs = append(a.organs, organ{near, marks})
	}
}

// finish puts the organs in order and the drawing to scale.
func (a *artist) finish() *Sketch {
	slices.SortStableFunc(a.organs, func(x, y organ) int { return cmp.Compare(x.near, y.near) })
	s := &Sketch{Ground: a.ground, Height: a.height, Spread: 2 * a.radius}
	for _, o := range a.organs {
		s.Marks = append(s.Marks, o.marks...)
	}
	s.measure()
	a.fit(s)
	return s
}

func (s *Sketch) measure() {
	s.Low, s.High = Point{math.Inf(1), math.Inf(1)}, Point{math.Inf(-1), math.Inf(-1)}
	for _, m := range s.Marks {
		for _, p := range m.Shape {
			s.Low = Point{min(s.Low.X, p.X), min(s.Low.Y, p.Y)}
			s.High = Point{max(s.High.X, p.X), max(s.High.Y, p.Y)}
		}
	}
	if len(s.Marks) == 0 {
		s.Low, s.High = Point{}, Point{}
	}
}

// fit stretches the drawing to the plant's measures, but no leaf out of shape.
func (a *artist) fit(s *Sketch) {
	const most = 1.3
	kx := clamp(2*a.radius/(s.High.X-s.Low.X), 1/most, most)
	ky := kx
	if a.view == Side {
		ky = clamp(a.height/s.High.Y, 1/most, most)
	} else {
		ky = clamp(2*a.radius/(s.High.Y-s.Low.Y), 1/most, most)
	}
	if a.drawing.Habit == plants.Stems && !a.plant.Kind.Growing() {
		kx = 1 // the spread is that of one stem
	}
	if math.IsNaN(kx) || math.IsNaN(ky) {
		return
	}
	for i := range s.Marks {
		shape := s.Marks[i].Shape
		for j := range shape {
			shape[j] = Point{shape[j].X * kx, shape[j].Y * ky}
		}
	}
	s.measure()
}
