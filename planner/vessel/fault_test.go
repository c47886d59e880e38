package vessel_test

import (
	"errors"
	"math"
	"testing"

	"github.com/google/go-cmp/cmp"

	"fourturn/planner/finding"
	"fourturn/planner/quantity"
	"fourturn/planner/vessel"
)

func TestFaultsNameTheirField(t *testing.T) {
	round := vessel.Spec{Kind: vessel.Round, TopDiameter: 0.3, BottomDiameter: 0.2, Height: 0.3}
	rim := quantity.Length(0.4)
	for name, c := range map[string]struct {
		change func(*vessel.Spec)
		code   vessel.FaultCode
		path   []string
		low    float64
		high   float64
	}{
		"a pot of 80 m":      {func(s *vessel.Spec) { s.TopDiameter = 80 }, vessel.FaultRange, []string{"top_diameter"}, 0.01, 5},
		"not a number":       {func(s *vessel.Spec) { s.Height = quantity.Length(math.NaN()) }, vessel.FaultRange, []string{"height"}, 0.01, 3},
		"no height":          {func(s *vessel.Spec) { s.Height = 0 }, vessel.FaultMissing, []string{"height"}, 0.01, 3},
		"no kind":            {func(s *vessel.Spec) { s.Kind = "" }, vessel.FaultMissing, []string{"kind"}, 0, 0},
		"unknown kind":       {func(s *vessel.Spec) { s.Kind = "amphora" }, vessel.FaultUnknown, []string{"kind"}, 0, 0},
		"unknown material":   {func(s *vessel.Spec) { s.Material = "cheese" }, vessel.FaultUnknown, []string{"material"}, 0, 0},
		"unknown surface":    {func(s *vessel.Spec) { s.MeasuredOn = "beside" }, vessel.FaultUnknown, []string{"measured_on"}, 0, 0},
		"negative wall":      {func(s *vessel.Spec) { s.Wall = -0.01 }, vessel.FaultRange, []string{"wall"}, 0, 0.3},
		"all wall":           {func(s *vessel.Spec) { s.MeasuredOn, s.Wall, s.Base = vessel.Outside, 0.11, 0.01 }, vessel.FaultNoHollow, []string{"wall"}, 0, 0.1016666667},
		"all bottom":         {func(s *vessel.Spec) { s.MeasuredOn, s.Base = vessel.Outside, 0.3 }, vessel.FaultNoHollow, []string{"base"}, 0, 0.295},
		"all rim":            {func(s *vessel.Spec) { s.Rim = &rim }, vessel.FaultNoRoom, []string{"rim"}, 0, 0.295},
		"all false bottom":   {func(s *vessel.Spec) { s.FalseBottom = 0.28 }, vessel.FaultNoRoom, []string{"false_bottom"}, 0, 0.295},
		"all gravel":         {func(s *vessel.Spec) { s.DrainageLayer = 0.28 }, vessel.FaultNoRoom, []string{"drainage_layer"}, 0, 0.295},
		"no cells":           {func(s *vessel.Spec) { s.Kind, s.Cell = vessel.Pockets, vessel.Round }, vessel.FaultMissing, []string{"cells"}, 1, 10000},
		"no cell":            {func(s *vessel.Spec) { s.Kind, s.Cells = vessel.Pockets, 3 }, vessel.FaultMissing, []string{"cell"}, 0, 0},
		"pockets of pockets": {func(s *vessel.Spec) { s.Kind, s.Cell, s.Cells = vessel.Pockets, vessel.Pockets, 3 }, vessel.FaultUnknown, []string{"cell"}, 0, 0},
		"no water":           {func(s *vessel.Spec) { s.Kind = vessel.Measured }, vessel.FaultMissing, []string{"water"}, 0.01, 100000},
		"half an opening":    {func(s *vessel.Spec) { s.Kind, s.Water, s.TopLength = vessel.Measured, 9, 0.4 }, vessel.FaultTogether, []string{"top_width"}, 0, 0},
		"half a bottom": {
			func(s *vessel.Spec) {
				s.Kind, s.TopLength, s.TopWidth, s.BottomWidth = vessel.WallBasket, 0.4, 0.2, 0.1
			},
			vessel.FaultTogether,
			[]string{"bottom_length"},
			0, 0,
		},
		"one ring": {
			func(s *vessel.Spec) { s.Kind, s.Rings = vessel.Turned, []vessel.Ring{{Diameter: 0.2}} },
			vessel.FaultRange,
			[]string{"rings"},
			2, 200,
		},
		"rings out of order": {
			func(s *vessel.Spec) {
				s.Kind, s.Rings = vessel.Turned, []vessel.Ring{{Diameter: 0.2}, {Height: 0.2, Diameter: 0.3}, {Height: 0.1, Diameter: 0.2}}
			},
			vessel.FaultOrder,
			[]string{"rings", "3", "height"},
			0.2, 0,
		},
		"a ring too wide": {
			func(s *vessel.Spec) {
				s.Kind, s.Rings = vessel.Turned, []vessel.Ring{{Diameter: 0.2}, {Height: 0.2, Diameter: 50}}
			},
			vessel.FaultRange,
			[]string{"rings", "2", "diameter"},
			0.01, 5,
		},
		"a ring beneath the bottom": {
			func(s *vessel.Spec) {
				s.Kind, s.Rings = vessel.Turned, []vessel.Ring{{Height: -0.1, Diameter: 0.2}, {Height: 0.2, Diameter: 0.2}}
			},
			vessel.FaultRange,
			[]string{"rings", "1", "height"},
			0, 0,
		},
		"a stave through the axis": {
			func(s *vessel.Spec) {
				s.Kind, s.MiddleDiameter, s.TopDiameter, s.BottomDiameter = vessel.HalfBarrel, 0.02, 0.6, 0.02
			},
			vessel.FaultShape,
			[]string{"middle_diameter"},
			0, 0,
		},
	} {
		s := round
		c.change(&s)
		faults := s.Validate()
		if len(faults) != 1 {
			t.Errorf("%s: faults %v", name, faults)
			continue
		}
		f := faults[0]
		if f.Code != c.code || !cmp.Equal(f.Path(), c.path) || !near(f.Lowest.Number, c.low, 1e-6) || !near(f.Highest.Number, c.high, 1e-6) {
			t.Errorf("%s: %v %s, allowed %v to %v; want %v %s, %v to %v", name, f.Path(), f.Code, f.Lowest, f.Highest, c.path, c.code, c.low, c.high)
		}
		var all *vessel.FaultError
		if _, err := vessel.New(s); !errors.As(err, &all) || len(all.Faults) != 1 || err.Error() == "" {
			t.Errorf("%s: New says %v", name, err)
		}
		if found := f.Finding(finding.Where{"pots", "p"}); found.Severity != finding.Error || len(found.Where) != 2+len(c.path) {
			t.Errorf("%s: finding %+v", name, found)
		}
	}
	if faults := (vessel.Spec{Kind: vessel.Round}).Validate(); len(faults) != 3 {
		t.Errorf("three missing dimensions give %v", faults)
	}
}

// What Validate allows as the highest is allowed.
func TestAllowedIsAllowed(t *testing.T) {
	s := vessel.Spec{Kind: vessel.Round, MeasuredOn: vessel.Outside, TopDiameter: 0.3, BottomDiameter: 0.2, Height: 0.3, Wall: 0.2, Base: 0.01}
	f := s.Validate()[0]
	s.Wall = quantity.Length(f.Highest.Number) - 1e-6
	if faults := s.Validate(); len(faults) != 0 {
		t.Errorf("a wall of %v after %v was allowed: %v", s.Wall, f.Highest, faults)
	}
	if d := vessel.Dimensions(vessel.Pockets, vessel.Square); len(d) != 3 || d[0].Field != vessel.FieldTopWidth || d[0].Of(vessel.Spec{TopWidth: 1}) != 1 {
		t.Errorf("dimensions of square pockets: %v", d)
	}
}

func TestFindings(t *testing.T) {
	codes := func(s vessel.Spec) []string {
		var codes []string
		for _, f := range mustNew(t, s).Findings(finding.Where{"pots", "a"}) {
			codes = append(codes, f.Code)
		}
		return codes
	}
	round := vessel.Spec{Kind: vessel.Round, TopDiameter: 0.3, BottomDiameter: 0.2, Height: 0.3}
	with := func(change func(*vessel.Spec)) vessel.Spec {
		s := round
		change(&s)
		return s
	}
	for name, c := range map[string]struct {
		spec vessel.Spec
		want []string
	}{
		"plain":     {round, nil},
		"no holes":  {with(func(s *vessel.Spec) { s.NoHoles = true }), []string{"vessel.no_holes"}},
		"reservoir": {with(func(s *vessel.Spec) { s.NoHoles, s.Reservoir, s.FalseBottom = true, true, 0.05 }), nil},
		"gravel":    {with(func(s *vessel.Spec) { s.DrainageLayer = 0.03 }), []string{"vessel.drainage_layer"}},
		"clay":      {with(func(s *vessel.Spec) { s.Material = vessel.Terracotta }), []string{"vessel.frost_tender"}},
		"cachepot": {with(func(s *vessel.Spec) {
			s.NoHoles, s.Liner = true, &vessel.Spec{Kind: vessel.Cylinder, TopDiameter: 0.1, Height: 0.1}
		}), []string{"vessel.empty_outer_pot"}},
		"by water alone": {vessel.Spec{Kind: vessel.Measured, Water: 10}, []string{"vessel.sketch_only"}},
		"a slip of the unit": {
			vessel.Spec{Kind: vessel.Measured, Water: 100, TopDiameter: 0.3, Height: 0.3},
			[]string{"vessel.measured_differs"},
		},
	} {
		if diff := cmp.Diff(c.want, codes(c.spec)); diff != "" {
			t.Errorf("%s: findings (-want +got):\n%s", name, diff)
		}
	}
}

// The watering rim by size: 1 cm in small pots, 2.5 cm in larger ones, 5 cm in big
// tubs (see DefaultRim); less in a shallow pan, and always as the person says.
func TestDefaultRim(t *testing.T) {
	for _, c := range []struct{ across, depth, want quantity.Length }{
		{0.10, 0.10, 0.01}, {0.1499, 0.15, 0.01}, {0.15, 0.15, 0.025}, {0.30, 0.30, 0.025}, {0.45, 0.45, 0.05}, {0.9, 0.6, 0.05}, {0.45, 0.10, 0.02},
	} {
		if got := vessel.DefaultRim(c.across, c.depth); !near(float64(got), float64(c.want), 1e-12) {
			t.Errorf("across %v, deep %v: rim %v, want %v", c.across, c.depth, got, c.want)
		}
	}
	rim := quantity.Length(0)
	v := mustNew(t, vessel.Spec{Kind: vessel.Cylinder, TopDiameter: 0.3, Height: 0.3, Rim: &rim})
	if v.FillVolume() != v.BrimVolume() {
		t.Errorf("without a rim the pot takes %v of %v", v.FillVolume(), v.BrimVolume())
	}
}
