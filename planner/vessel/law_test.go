package vessel_test

import (
	"math"
	"testing"
	"time"

	"pgregory.net/rapid"

	"fourturn/planner/quantity"
	"fourturn/planner/vessel"
)

func mustNew(t interface{ Fatal(...any) }, s vessel.Spec) vessel.Vessel {
	v, err := vessel.New(s)
	if err != nil {
		t.Fatal(err)
	}
	return v
}

func near(a, b, relative float64) bool {
	return math.Abs(a-b) <= relative*max(math.Abs(a), math.Abs(b))
}

func TestVolumeLaws(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		v := mustNew(t, good().Draw(t, "spec"))
		depth := v.Depth()
		a := quantity.Length(rapid.Float64Range(0, 1).Draw(t, "a")) * depth
		b := quantity.Length(rapid.Float64Range(0, 1).Draw(t, "b")) * depth
		if a > b {
			a, b = b, a
		}
		if v.VolumeBelow(a) > v.VolumeBelow(b)*(1+1e-12) {
			t.Fatalf("less is beneath %v than beneath %v", b, a)
		}
		if v.VolumeBelow(-1) != 0 || v.VolumeBelow(depth+1) != v.BrimVolume() {
			t.Fatal("beneath the bottom there is something, or above the brim more")
		}
		if v.FillVolume() <= 0 || v.FillVolume() > v.BrimVolume()*(1+1e-12) {
			t.Fatalf("mix of %v in a hollow of %v", v.FillVolume(), v.BrimVolume())
		}
		if got := v.MixDepth() + v.Rim(); !near(float64(got), float64(depth), 1e-12) {
			t.Fatalf("mix and rim are %v deep, the hollow %v", got, depth)
		}
	})
}

// A pot twice as large every way holds eight times as much and has four times the
// surface.
func TestScaling(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := good().Filter(func(s vessel.Spec) bool { return s.Kind != vessel.Measured }).Draw(t, "spec")
		none := quantity.Length(0)
		s.Rim = &none
		small := mustNew(t, s)
		for _, l := range []*quantity.Length{
			&s.TopDiameter, &s.BottomDiameter, &s.TopLength, &s.TopWidth, &s.BottomLength, &s.BottomWidth, &s.Height, &s.Wall, &s.Base,
		} {
			*l *= 2
		}
		rings := make([]vessel.Ring, len(s.Rings))
		for i, r := range s.Rings {
			rings[i] = vessel.Ring{Height: 2 * r.Height, Diameter: 2 * r.Diameter}
		}
		s.Rings = rings
		large := mustNew(t, s)
		if !near(float64(large.FillVolume()), 8*float64(small.FillVolume()), 1e-9) {
			t.Fatalf("%v and %v", small.FillVolume(), large.FillVolume())
		}
		side, bottom := small.WallArea()
		side2, bottom2 := large.WallArea()
		if !near(float64(side2), 4*float64(side), 1e-9) || !near(float64(bottom2), 4*float64(bottom), 1e-9) {
			t.Fatalf("surfaces %v %v and %v %v", side, bottom, side2, bottom2)
		}
		if a, b := small.Opening(), large.Opening(); !near(float64(b.Area), 4*float64(a.Area), 1e-9) || !near(float64(b.Perimeter), 2*float64(a.Perimeter), 1e-9) {
			t.Fatalf("openings %+v and %+v", a, b)
		}
	})
}

// A pot measured outside is the pot that one would measure inside, and the other way
// round from where its bottom ends.
func TestOutsideAndInsideAgree(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := good().Filter(func(s vessel.Spec) bool {
			return s.Kind != vessel.Pockets && s.Kind != vessel.Measured && s.Kind != vessel.Turned
		}).Draw(t, "spec")
		s.MeasuredOn = vessel.Outside
		outside, err := vessel.New(s)
		if err != nil {
			t.Skip(err)
		}
		i := s
		i.MeasuredOn, i.Height = vessel.Inside, outside.Depth()
		i.TopLength, i.TopWidth = outside.WidthAt(outside.Depth())
		i.TopDiameter = i.TopLength
		i.BottomDiameter, i.BottomWidth = outside.WidthAt(0)
		i.MiddleDiameter, _ = outside.WidthAt(outside.Depth() / 2)
		if s.BottomLength > 0 {
			i.BottomLength = i.BottomDiameter
		} else {
			i.BottomWidth = 0
		}
		if s.Kind == vessel.HemisphereBasket {
			i.Kind = vessel.Bowl // a thick bottom makes it a shallower cap
		}
		inside := mustNew(t, i)
		if !near(float64(inside.BrimVolume()), float64(outside.BrimVolume()), 1e-9) {
			t.Fatalf("%s: %v measured inside, %v outside", s.Kind, inside.BrimVolume(), outside.BrimVolume())
		}
		z := quantity.Length(rapid.Float64Range(0, 1).Draw(t, "z"))*outside.Depth() + outside.Height() - outside.Depth()
		z = min(z, inside.Height(), outside.Height())
		a, b := inside.OutsideWidthAt(z)
		c, d := outside.OutsideWidthAt(z)
		switch s.Kind {
		case vessel.Bowl, vessel.HemisphereBasket, vessel.ConeBasket:
		default:
			if !near(float64(a), float64(c), 1e-9) || !near(float64(b), float64(d), 1e-9) {
				t.Fatalf("%s at %v: outside %v × %v and %v × %v", s.Kind, z, a, b, c, d)
			}
		}
	})
}

// The hollow is within the pot at every height.
func TestHollowIsWithinThePot(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		v := mustNew(t, good().Draw(t, "spec"))
		z := quantity.Length(rapid.Float64Range(0, 1).Draw(t, "z")) * v.Depth()
		l, w := v.WidthAt(z)
		outL, outW := v.OutsideWidthAt(min(v.Height(), z+v.Height()-v.Depth()))
		const rounding = 1e-6 // m, where a cap begins
		if l > outL+rounding || w > outW+rounding {
			t.Fatalf("at %v the hollow is %v × %v, the pot %v × %v", z, l, w, outL, outW)
		}
	})
}

// New never panics and never gives a pot without room, whatever stands in a Spec.
func TestNewOnAnything(t *testing.T) {
	odd := rapid.OneOf(
		rapid.Float64(),
		rapid.SampledFrom([]float64{0, -1, math.NaN(), math.Inf(1), math.Inf(-1), 1e-320, 1e300, 0.0254, 80, 0.3}),
		rapid.Float64Range(0, 2),
	)
	length := rapid.Map(odd, func(x float64) quantity.Length { return quantity.Length(x) })
	rapid.Check(t, func(t *rapid.T) {
		s := specs().Draw(t, "spec")
		for i, l := range []*quantity.Length{
			&s.TopDiameter, &s.MiddleDiameter, &s.BottomDiameter, &s.TopLength, &s.TopWidth, &s.BottomLength, &s.BottomWidth,
			&s.Height, &s.Wall, &s.Base, &s.FalseBottom, &s.DrainageLayer,
		} {
			if rapid.IntRange(0, 3).Draw(t, "odd") == 0 {
				*l = length.Draw(t, string(rune('a'+i)))
			}
		}
		if rapid.Bool().Draw(t, "rim") {
			rim := length.Draw(t, "rim")
			s.Rim = &rim
		}
		if rapid.IntRange(0, 4).Draw(t, "liner") == 0 {
			liner := specs().Draw(t, "liner")
			s.Liner = &liner
		}
		s.Water = quantity.Volume(odd.Draw(t, "water"))
		s.ReservoirWater = quantity.Volume(odd.Draw(t, "reservoir"))
		v, err := vessel.New(s)
		if err != nil {
			return
		}
		if !(v.FillVolume() > 0) || math.IsInf(float64(v.FillVolume()), 0) {
			t.Fatalf("a good pot with %v of mix", v.FillVolume())
		}
		if m := v.EmptyMass(); !(m.Mass >= 0) || math.IsInf(float64(m.Mass), 0) {
			t.Fatalf("a good pot of %v kg", m.Mass)
		}
		if o := v.Opening(); !(o.Area > 0 && o.Perimeter > 0) {
			t.Fatalf("a good pot with an opening of %+v", o)
		}
		if !(v.Footprint() > 0) {
			t.Fatalf("a good pot stands on %v m²", v.Footprint())
		}
		v.Side()
		v.Plan()
		v.Fill().Working()
		v.EmptyMass().Working()
		v.Findings(nil)
	})
}

func TestVolumeOfOnePotIsNotOnTheHeap(t *testing.T) {
	v := mustNew(t, vessel.Spec{Kind: vessel.Round, TopDiameter: 0.3, BottomDiameter: 0.2, Height: 0.3})
	sum := quantity.Volume(0)
	if n := testing.AllocsPerRun(100, func() { sum += v.FillVolume() }); n != 0 || sum == 0 {
		t.Errorf("%v allocations for a volume", n)
	}
}

// BenchmarkVolume is the volume of one pot to its fill line, as a ratio to one cube
// root in the same run.
func BenchmarkVolume(b *testing.B) {
	v := mustNew(b, vessel.Spec{Kind: vessel.OvalTrough, TopLength: 0.6, TopWidth: 0.3, BottomLength: 0.5, BottomWidth: 0.2, Height: 0.3})
	b.ReportAllocs()
	sum := quantity.Volume(0)
	for b.Loop() {
		sum += v.FillVolume()
	}
	own := b.Elapsed().Seconds() / float64(b.N)
	b.StopTimer()
	const roots = 1_000_000
	x, start := 2.0, time.Now()
	for range roots {
		x = math.Cbrt(x + 1)
	}
	root := time.Since(start).Seconds() / roots
	if sum == 0 || x == 0 {
		b.Fatal("no volume")
	}
	b.ReportMetric(own/root, "own/cbrt")
}

// BenchmarkNew checks a Spec and makes its vessel.
func BenchmarkNew(b *testing.B) {
	s := vessel.Spec{Kind: vessel.Round, TopDiameter: 0.3, BottomDiameter: 0.2, Height: 0.3, Wall: 0.01}
	b.ReportAllocs()
	for b.Loop() {
		if _, err := vessel.New(s); err != nil {
			b.Fatal(err)
		}
	}
}
