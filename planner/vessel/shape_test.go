package vessel_test

import (
	"math"
	"testing"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"fourturn/planner/quantity"
	"fourturn/planner/vessel"
)

func brim(t interface{ Fatal(...any) }, s vessel.Spec) float64 {
	return float64(mustNew(t, s).BrimVolume())
}

// Shapes in the limit where they are another shape, and formulas from handbooks.
func TestClosedForms(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := lengths(0.05, 1).Draw(t, "D")
		e := lengths(0.05, 1).Draw(t, "d")
		h := lengths(0.05, 1).Draw(t, "h")
		round := brim(t, vessel.Spec{Kind: vessel.Round, TopDiameter: d, BottomDiameter: e, Height: h})
		D, E, H := float64(d), float64(e), float64(h)
		same := func(name string, got, want float64) {
			if !near(got, want, 1e-9) {
				t.Fatalf("%s: %v L, want %v", name, got, want)
			}
		}
		same("frustum", round, 1000*math.Pi/12*H*(D*D+D*E+E*E))
		same("turned shape of two rings", brim(t, vessel.Spec{Kind: vessel.Turned, Rings: []vessel.Ring{{Height: 0, Diameter: e}, {Height: h, Diameter: d}}}), round)
		same("oval trough of equal axes", brim(t, vessel.Spec{Kind: vessel.OvalTrough, TopLength: d, TopWidth: d, BottomLength: e, BottomWidth: e, Height: h}), round)
		same("barrel of straight staves", brim(t, vessel.Spec{Kind: vessel.HalfBarrel, TopDiameter: d, MiddleDiameter: (d + e) / 2, BottomDiameter: e, Height: h}), round)
		same("trough of equal sides", brim(t, vessel.Spec{Kind: vessel.Trough, TopLength: d, TopWidth: d, BottomLength: e, BottomWidth: e, Height: h}),
			brim(t, vessel.Spec{Kind: vessel.Square, TopWidth: d, BottomWidth: e, Height: h}))
		same("pyramid's frustum", brim(t, vessel.Spec{Kind: vessel.Square, TopWidth: d, BottomWidth: e, Height: h}), round*4/math.Pi)
		same("tapered wall basket, half of a pot", 2*brim(t, vessel.Spec{Kind: vessel.WallBasket, TopLength: d, TopWidth: d / 2, BottomLength: e, BottomWidth: e / 2, Height: h}), round)
		same("cone", brim(t, vessel.Spec{Kind: vessel.ConeBasket, TopDiameter: d, Height: h}), 1000*math.Pi/12*D*D*H)
		same("cap", brim(t, vessel.Spec{Kind: vessel.Bowl, TopDiameter: d, Height: h}), 1000*math.Pi*H/6*(3*D*D/4+H*H))
		ball := 1000 * math.Pi / 6 * D * D * D
		same("half a ball", 2*brim(t, vessel.Spec{Kind: vessel.HemisphereBasket, TopDiameter: d}), ball)
		same("quarter of a ball", 4*brim(t, vessel.Spec{Kind: vessel.WallBasket, TopLength: d, TopWidth: d / 2, Height: d / 2}), ball)
		same("quarter of an ellipsoid", brim(t, vessel.Spec{Kind: vessel.WallBasket, TopLength: d, TopWidth: e, Height: h}), 1000*math.Pi/3*D/2*E*H)
		same("pockets", brim(t, vessel.Spec{Kind: vessel.Pockets, Cells: 7, Cell: vessel.Round, TopDiameter: d, BottomDiameter: e, Height: h}), 7*round)
	})
}

// A barrel with parabolic staves holds π·l/15 × (2D² + D·d + ¾d²), with D in the middle
// and d at the ends (W. Beyer, CRC Standard Mathematical Tables). Half of it is the
// half barrel, whose stave is upright at the brim.
func TestBarrel(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		middle := lengths(0.3, 1).Draw(t, "D")
		end := middle * lengths(0.6, 1).Draw(t, "share")
		l := lengths(0.2, 1).Draw(t, "l")
		D, d := float64(middle), float64(end)
		want := 1000 * math.Pi * float64(l) / 15 * (2*D*D + D*d + 0.75*d*d)
		whole := brim(t, vessel.Spec{Kind: vessel.HalfBarrel, TopDiameter: end, MiddleDiameter: middle, BottomDiameter: end, Height: l})
		if !near(whole, want, 1e-9) {
			t.Fatalf("barrel %v L, want %v", whole, want)
		}
		half := brim(t, vessel.Spec{Kind: vessel.HalfBarrel, TopDiameter: middle, BottomDiameter: end, Height: l / 2})
		if !near(2*half, want, 1e-9) {
			t.Fatalf("two half barrels %v L, want %v", 2*half, want)
		}
	})
}

// Measured with water: what the person measured is what the pot takes, with or
// without dimensions.
func TestMeasuredHoldsWhatWasMeasured(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := vessel.Spec{
			Kind: vessel.Measured, Water: quantity.Volume(rapid.Float64Range(0.5, 200).Draw(t, "water")),
			MeasuredOn: rapid.SampledFrom([]vessel.Surface{vessel.Inside, vessel.Outside}).Draw(t, "on"),
		}
		switch rapid.IntRange(0, 3).Draw(t, "known") {
		case 1:
			s.TopDiameter = lengths(0.1, 1).Draw(t, "D")
		case 2:
			s.TopLength, s.TopWidth, s.Height = lengths(0.1, 1).Draw(t, "L"), lengths(0.1, 1).Draw(t, "W"), lengths(0.1, 1).Draw(t, "h")
		case 3:
			s.Height, s.Wall = lengths(0.1, 1).Draw(t, "h"), 0.01
		}
		v, err := vessel.New(s)
		if err != nil {
			t.Skip(err)
		}
		if !near(float64(v.FillVolume()), float64(s.Water), 1e-9) {
			t.Fatalf("measured %v, takes %v", s.Water, v.FillVolume())
		}
		s.DrainageLayer = v.MixDepth() / 4
		layered := mustNew(t, s)
		if !near(float64(layered.FillVolume()), 0.75*float64(s.Water), 1e-9) || !near(float64(layered.LayerVolume()), 0.25*float64(s.Water), 1e-9) {
			t.Fatalf("a layer over a quarter leaves %v of %v", layered.FillVolume(), s.Water)
		}
	})
}

// Rim, false bottom and layer divide the hollow without gap or overlap.
func TestFeaturesDivideTheHollow(t *testing.T) {
	rim := quantity.Length(0.03)
	s := vessel.Spec{
		Kind: vessel.Trough, TopLength: 0.8, TopWidth: 0.3, BottomLength: 0.7, BottomWidth: 0.2, Height: 0.3,
		Rim: &rim, FalseBottom: 0.05, Reservoir: true, DrainageLayer: 0.02,
	}
	v := mustNew(t, s)
	above := v.BrimVolume() - v.VolumeBelow(v.Depth()-rim)
	if sum := v.ReservoirVolume() + v.LayerVolume() + v.FillVolume() + above; !near(float64(sum), float64(v.BrimVolume()), 1e-12) {
		t.Errorf("parts sum to %v, the hollow is %v", sum, v.BrimVolume())
	}
	s.ReservoirWater = 3
	if got := mustNew(t, s).ReservoirVolume(); got != 3 {
		t.Errorf("reservoir of 3 L holds %v", got)
	}
	s.ReservoirWater = 50
	if faults := s.Validate(); len(faults) != 1 || faults[0].Field != vessel.FieldReservoirWater {
		t.Errorf("50 L under a false bottom: %v", faults)
	}
}

func TestLiner(t *testing.T) {
	liner := vessel.Spec{Kind: vessel.Round, TopDiameter: 0.28, BottomDiameter: 0.2, Height: 0.25, Wall: 0.002, Material: vessel.Plastic}
	s := vessel.Spec{Kind: vessel.Cylinder, TopDiameter: 0.32, Height: 0.32, Wall: 0.02, Material: vessel.GlazedCeramic, Liner: &liner, NoHoles: true}
	v, own := mustNew(t, s), mustNew(t, liner)
	if v.FillVolume() != own.FillVolume() || v.Rim() != own.Rim() || v.Opening() != own.Opening() {
		t.Errorf("the mix in the liner: %v, the liner alone %v", v.FillVolume(), own.FillVolume())
	}
	shell := s
	shell.Liner = nil
	if got, want := v.EmptyMass().Mass, mustNew(t, shell).EmptyMass().Mass+own.EmptyMass().Mass; !near(float64(got), float64(want), 1e-12) {
		t.Errorf("pot and liner weigh %v, want %v", got, want)
	}
	side := v.Side()
	if len(side.Liner) == 0 || side.MixTo <= side.MixFrom || side.MixFrom < 0.02 {
		t.Errorf("side view %+v", side)
	}
	wide := liner
	wide.TopDiameter = 0.4
	s.Liner = &wide
	if faults := s.Validate(); len(faults) != 1 || faults[0].Code != vessel.FaultLiner {
		t.Errorf("a liner of 40 cm in a pot of 32: %v", faults)
	}
	nested := liner
	nested.Liner = &liner
	s.Liner = &nested
	if faults := s.Validate(); len(faults) != 1 || faults[0].Code != vessel.FaultNested {
		t.Errorf("a liner in a liner: %v", faults)
	}
	bad := liner
	bad.Height = 80
	s.Liner = &bad
	if faults := s.Validate(); len(faults) != 1 || cmp.Diff([]string{"liner", "height"}, faults[0].Path()) != "" {
		t.Errorf("a liner of 80 m: %v", faults)
	}
}

func TestOutlinesAgreeWithTheShape(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := good().Draw(t, "spec")
		v := mustNew(t, s)
		plan, side, opening := v.Plan(), v.Side(), v.Opening()
		// a polygon of 72 corners in an ellipse has 0.13 % less area
		if got, want := polygon(plan.Inner)*float64(opening.Cells), float64(opening.Area); !near(got, want, 0.0014) {
			t.Fatalf("the opening is drawn with %v m², and has %v", got, want)
		}
		if polygon(plan.Outer) < polygon(plan.Inner)*(1-1e-9) {
			t.Fatal("the opening is drawn wider than the pot")
		}
		for _, p := range plan.Inner {
			if !contains(plan.Outer, p) {
				t.Fatalf("%v of the opening is drawn beside the pot", p)
			}
		}
		if len(plan.Cells) != opening.Cells {
			t.Fatalf("%d cells drawn of %d", len(plan.Cells), opening.Cells)
		}
		ground := float64(v.Height() - v.Depth())
		for _, p := range side.Inner {
			l, _ := v.WidthAt(quantity.Length(min(p.Y-ground, float64(v.Depth()))))
			if !near(2*math.Abs(p.X), float64(l), 1e-6) && math.Abs(2*math.Abs(p.X)-float64(l)) > 1e-9 {
				t.Fatalf("at %v the hollow is drawn %v wide, and is %v", p.Y, 2*math.Abs(p.X), l)
			}
		}
		if polygon(side.Inner) <= 0 || polygon(side.Outer) < polygon(side.Inner)*(1-1e-9) {
			t.Fatalf("areas of the side view: %v in %v", polygon(side.Inner), polygon(side.Outer))
		}
		if side.MixFrom < ground-1e-12 || side.MixTo > float64(v.Height())+1e-12 || side.MixTo <= side.MixFrom {
			t.Fatalf("mix from %v to %v in a pot of %v", side.MixFrom, side.MixTo, v.Height())
		}
	})
}

// contains reports whether a convex outline holds a point, to 4 mm: outlines of many
// corners cut off that much at the tip of a long half ellipse.
func contains(outline []vessel.Point, p vessel.Point) bool {
	for i, a := range outline {
		b := outline[(i+1)%len(outline)]
		if (b.X-a.X)*(p.Y-a.Y)-(b.Y-a.Y)*(p.X-a.X) < -0.004*math.Hypot(b.X-a.X, b.Y-a.Y) {
			return false
		}
	}
	return true
}

// polygon returns the area that an outline encloses; above zero against the clock.
func polygon(points []vessel.Point) float64 {
	sum := 0.0
	for i, p := range points {
		q := points[(i+1)%len(points)]
		sum += p.X*q.Y - q.X*p.Y
	}
	return sum / 2
}

func TestSurfaces(t *testing.T) {
	side := func(s vessel.Spec) float64 {
		area, _ := mustNew(t, s).WallArea()
		return float64(area)
	}
	cylinder := side(vessel.Spec{Kind: vessel.Cylinder, TopDiameter: 0.3, Height: 0.4})
	for name, c := range map[string]struct{ got, want float64 }{
		"cylinder":   {cylinder, math.Pi * 0.3 * 0.4},
		"hemisphere": {side(vessel.Spec{Kind: vessel.HemisphereBasket, TopDiameter: 0.3}), 2 * math.Pi * 0.15 * 0.15},
		"box":        {side(vessel.Spec{Kind: vessel.Trough, TopLength: 0.6, BottomLength: 0.6, TopWidth: 0.2, BottomWidth: 0.2, Height: 0.3}), 2 * (0.6 + 0.2) * 0.3},
		"barrel with straight staves": {
			side(vessel.Spec{Kind: vessel.HalfBarrel, TopDiameter: 0.4, MiddleDiameter: 0.3000000001, BottomDiameter: 0.2, Height: 0.3}),
			side(vessel.Spec{Kind: vessel.Round, TopDiameter: 0.4, BottomDiameter: 0.2, Height: 0.3}),
		},
		"oval, nearly round": {
			side(vessel.Spec{Kind: vessel.OvalTrough, TopLength: 0.4, TopWidth: 0.4000000001, BottomLength: 0.2, BottomWidth: 0.2, Height: 0.3}),
			side(vessel.Spec{Kind: vessel.Round, TopDiameter: 0.4, BottomDiameter: 0.2, Height: 0.3}),
		},
		"quarter of a ball": { // its curved part, and half a disc at the back
			side(vessel.Spec{Kind: vessel.WallBasket, TopLength: 0.4, TopWidth: 0.2, Height: 0.2}),
			math.Pi*0.2*0.2 + math.Pi*0.2*0.2/2,
		},
		"half a cylinder": {
			side(vessel.Spec{Kind: vessel.WallBasket, TopLength: 0.4, TopWidth: 0.2, BottomLength: 0.4, BottomWidth: 0.2, Height: 0.3}),
			math.Pi*0.2*0.3 + 0.4*0.3,
		},
	} {
		if !near(c.got, c.want, 1e-7) {
			t.Errorf("%s: %v m², want %v", name, c.got, c.want)
		}
	}
	// Of an ellipse with axes 4 and 2 the perimeter is 9.688448220547676 (E(√3/2) from
	// tables, DLMF 19.2.8).
	oval := mustNew(t, vessel.Spec{Kind: vessel.OvalTrough, TopLength: 4, BottomLength: 4, TopWidth: 2, BottomWidth: 2, Height: 1})
	if p := float64(oval.Opening().Perimeter); !near(p, 9.688448220547676, 1e-13) {
		t.Errorf("perimeter %v", p)
	}
	if area, _ := oval.WallArea(); !near(float64(area), 9.688448220547676, 1e-9) {
		t.Errorf("side of an upright oval of height 1: %v", area)
	}
}

// A thin wall is its surface times its thickness, square to the side: measured level it
// counts for less on a side that slopes, by the cosine of the slope.
func TestThinWallsWeighTheirSurface(t *testing.T) {
	const thin = 1e-6
	weight := func(s vessel.Spec) float64 {
		s.Wall, s.Material = thin, vessel.Steel
		return float64(mustNew(t, s).EmptyMass().Mass) / (7850 * thin) // m² of surface
	}
	slope := math.Atan(0.05 / 0.4)
	for name, c := range map[string]struct {
		spec         vessel.Spec
		side, bottom float64
	}{
		"cylinder":   {vessel.Spec{Kind: vessel.Cylinder, TopDiameter: 0.3, Height: 0.4}, math.Pi * 0.3 * 0.4, math.Pi / 4 * 0.3 * 0.3},
		"box":        {vessel.Spec{Kind: vessel.Square, TopWidth: 0.3, BottomWidth: 0.3, Height: 0.4}, 4 * 0.3 * 0.4, 0.3 * 0.3},
		"hemisphere": {vessel.Spec{Kind: vessel.HemisphereBasket, TopDiameter: 0.3}, 2 * math.Pi * 0.15 * 0.15, 0},
		"tapered": {
			vessel.Spec{Kind: vessel.Round, TopDiameter: 0.4, BottomDiameter: 0.3, Height: 0.4},
			math.Pi * 0.35 * math.Hypot(0.05, 0.4) * math.Cos(slope), math.Pi / 4 * 0.3 * 0.3,
		},
	} {
		if got, want := weight(c.spec), c.side+c.bottom; !near(got, want, 1e-4) {
			t.Errorf("%s: a wall of 1 µm weighs as %v m², want %v", name, got, want)
		}
	}
}

// Without a wall the usual one of the material is taken over the surface.
func TestUsualWall(t *testing.T) {
	s := vessel.Spec{Kind: vessel.Cylinder, TopDiameter: 0.3, Height: 0.4, Material: vessel.Terracotta}
	e := mustNew(t, s).EmptyMass()
	want := 1922 * 0.012 * (math.Pi*0.3*0.4 + math.Pi/4*0.3*0.3)
	if !e.Known || !near(float64(e.Mass), want, 1e-9) {
		t.Errorf("%v kg, want %v", e.Mass, want)
	}
	trace := e.Working()
	if !trace.Soft() || trace.Result.Number != float64(e.Mass) {
		t.Errorf("trace %+v", trace)
	}
	s.Material = ""
	if e := mustNew(t, s).EmptyMass(); e.Known || e.Mass != 0 {
		t.Errorf("a pot of no known material weighs %v", e.Mass)
	}
}
