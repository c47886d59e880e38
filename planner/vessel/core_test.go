package vessel_test

import (
	"fmt"
	"math"
	"testing"

	"gonum.org/v1/gonum/integrate/quad"
	"pgregory.net/rapid"

	"fourturn/planner/quantity"
	"fourturn/planner/vessel"
)

// A straight round pot 10 in across and 14 in deep holds π × 25 × 14 = 1099 in³,
// 4.09 dry gallons (eHow, how_7581413).
func ExampleVessel_BrimVolume() {
	pot, err := vessel.New(vessel.Spec{Kind: vessel.Cylinder, TopDiameter: 10 * quantity.Inch, Height: 14 * quantity.Inch})
	if err != nil {
		panic(err)
	}
	fmt.Printf("%.2f dry gal\n", float64(pot.BrimVolume()/quantity.DryGallon))
	// Output: 4.09 dry gal
}

// A window box of 6 ft × 6 in × 6 in holds 1.5 ft³. A published tip sheet says 3;
// geometry says otherwise.
func ExampleVessel_BrimVolume_windowBox() {
	box, err := vessel.New(vessel.Spec{
		Kind: vessel.Trough, Height: 6 * quantity.Inch,
		TopLength: 6 * quantity.Foot, TopWidth: 6 * quantity.Inch,
		BottomLength: 6 * quantity.Foot, BottomWidth: 6 * quantity.Inch,
	})
	if err != nil {
		panic(err)
	}
	fmt.Printf("%.2f cu ft\n", float64(box.BrimVolume()/quantity.CubicFoot))
	// Output: 1.50 cu ft
}

func lengths(low, high quantity.Length) *rapid.Generator[quantity.Length] {
	return rapid.Map(rapid.Float64Range(float64(low), float64(high)), func(x float64) quantity.Length { return quantity.Length(x) })
}

// specs draws pots of every kind, of which most are good.
func specs() *rapid.Generator[vessel.Spec] {
	return rapid.Custom(func(t *rapid.T) vessel.Spec {
		across := lengths(0.05, 1.5)
		s := vessel.Spec{
			Kind:           rapid.SampledFrom(vessel.Kinds[:]).Draw(t, "kind"),
			MeasuredOn:     rapid.SampledFrom([]vessel.Surface{"", vessel.Inside, vessel.Outside}).Draw(t, "on"),
			TopDiameter:    across.Draw(t, "D"),
			BottomDiameter: across.Draw(t, "d"),
			TopLength:      across.Draw(t, "L"),
			TopWidth:       across.Draw(t, "W"),
			BottomLength:   across.Draw(t, "l"),
			BottomWidth:    across.Draw(t, "w"),
			Height:         lengths(0.05, 1).Draw(t, "h"),
			Cells:          rapid.IntRange(1, 40).Draw(t, "n"),
			Cell:           rapid.SampledFrom([]vessel.Kind{vessel.Round, vessel.Square, vessel.Bowl, vessel.WallBasket, vessel.OvalTrough}).Draw(t, "cell"),
			Water:          quantity.Volume(rapid.Float64Range(0.1, 500).Draw(t, "water")),
			Wall:           lengths(0, 0.015).Draw(t, "wall"),
			Material:       rapid.SampledFrom(vessel.Materials[:]).Draw(t, "material"),
		}
		if rapid.Bool().Draw(t, "rounded") {
			s.BottomLength, s.BottomWidth = 0, 0
		}
		if s.Kind == vessel.Trough || s.Kind == vessel.OvalTrough || s.Cell == vessel.OvalTrough {
			s.BottomLength, s.BottomWidth = across.Draw(t, "l2"), across.Draw(t, "w2")
		}
		if s.Kind == vessel.Turned {
			z := quantity.Length(0)
			for range rapid.IntRange(2, 9).Draw(t, "rings") {
				s.Rings = append(s.Rings, vessel.Ring{Height: z, Diameter: across.Draw(t, "ring")})
				z += lengths(0.02, 0.2).Draw(t, "step")
			}
		}
		return s
	})
}

// good draws pots that are good.
func good() *rapid.Generator[vessel.Spec] {
	return specs().Filter(func(s vessel.Spec) bool { return len(s.Validate()) == 0 })
}

func areaFactor(s vessel.Spec) float64 {
	kind := s.Kind
	if kind == vessel.Pockets {
		kind = s.Cell
	}
	if kind == vessel.Square || kind == vessel.Trough {
		return 1
	}
	return math.Pi / 4
}

// Volume to any height is the integral of the area of the cuts. gonum's
// Gauss-Legendre rule is exact for the polynomials of each part, so 1e-9 is rounding.
func TestVolumeAgreesWithNumericalIntegration(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := good().Filter(func(s vessel.Spec) bool { return s.Kind != vessel.Measured }).Draw(t, "spec")
		v, err := vessel.New(s)
		if err != nil {
			t.Fatal(err)
		}
		cells := 1
		if s.Kind == vessel.Pockets {
			cells = s.Cells
		}
		to := quantity.Length(rapid.Float64Range(0.05, 1).Draw(t, "share")) * v.Depth()
		bends := []float64{0}
		lift := quantity.Length(0)
		if s.MeasuredOn == vessel.Outside {
			lift = v.Height() - v.Depth()
		}
		for _, r := range s.Rings {
			if z := r.Height - lift; z > 0 && z < to {
				bends = append(bends, float64(z))
			}
		}
		bends = append(bends, float64(to))
		sum := 0.0
		for i := 1; i < len(bends); i++ {
			sum += quad.Fixed(func(z float64) float64 {
				l, w := v.WidthAt(quantity.Length(z))
				return areaFactor(s) * float64(l) * float64(w)
			}, bends[i-1], bends[i], 20, quad.Legendre{}, 0)
		}
		want := sum * 1000 * float64(cells)
		if got := float64(v.VolumeBelow(to)); math.Abs(got-want) > 1e-9*want {
			t.Fatalf("%s to %v: %v L in closed form, %v L integrated", s.Kind, to, got, want)
		}
	})
}
