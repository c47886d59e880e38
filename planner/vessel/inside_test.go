package vessel_test

import (
	"math"
	"testing"

	"fourturn/planner/quantity"
	"fourturn/planner/vessel"
	"fourturn/planner/working"
)

// built is a pot with a reservoir, a layer of gravel and a liner with gravel of its own.
func built(t *testing.T) (vessel.Vessel, vessel.Spec) {
	t.Helper()
	spec := vessel.Spec{
		Kind: vessel.Cylinder, TopDiameter: 0.40, Height: 0.50, FalseBottom: 0.06, Reservoir: true, DrainageLayer: 0.03, Wall: 0.01,
		Liner: &vessel.Spec{Kind: vessel.Cylinder, TopDiameter: 0.30, Height: 0.30, DrainageLayer: 0.02},
	}
	v, err := vessel.New(spec)
	if err != nil {
		t.Fatal(err)
	}
	return v, spec
}

// disc is the volume of a layer in a straight pot.
func disc(diameter, thickness float64) float64 {
	return math.Pi / 4 * diameter * diameter * thickness * 1000
}

func TestLayersOfPotAndLinerCountTogether(t *testing.T) {
	v, _ := built(t)
	if got, want := float64(v.LayerVolume()), disc(0.40, 0.03)+disc(0.30, 0.02); math.Abs(got-want) > 1e-9 {
		t.Errorf("the layers take %v L, want %v", got, want)
	}
	if got, want := float64(v.ReservoirVolume()), disc(0.40, 0.06); math.Abs(got-want) > 1e-9 {
		t.Errorf("the reservoir holds %v L, want %v", got, want)
	}
	if side := v.Side(); math.Abs(side.Shelf-0.07) > 1e-12 || side.LayerTo <= side.LayerFrom {
		t.Errorf("the false bottom is drawn at %v, the layer from %v to %v", side.Shelf, side.LayerFrom, side.LayerTo)
	}
}

func TestWorkingsOfWhatIsInside(t *testing.T) {
	v, spec := built(t)
	for name, one := range map[string]struct {
		trace  working.Trace
		want   float64
		inputs int
	}{
		"layer":     {v.LayerWorking(), float64(v.LayerVolume()), 4},
		"reservoir": {v.ReservoirWorking(), float64(v.ReservoirVolume()), 1},
		"rim":       {v.RimWorking(), float64(v.Rim()), 2},
	} {
		if one.trace.Result.Number != one.want || len(one.trace.Inputs) != one.inputs || one.trace.Name == "" {
			t.Errorf("%s: %+v", name, one.trace)
		}
	}
	rim := 3 * quantity.Centimetre
	spec.Liner.Rim = &rim
	spec.ReservoirWater = 2
	v, err := vessel.New(spec)
	if err != nil {
		t.Fatal(err)
	}
	if trace := v.RimWorking(); trace.Source.Status != working.Entered || trace.Result.Number != 0.03 || len(trace.Inputs) != 0 {
		t.Errorf("a rim that was measured: %+v", trace)
	}
	if trace := v.ReservoirWorking(); trace.Result.Number != 2 || trace.Inputs[0].Source.Status != working.Entered {
		t.Errorf("water that was measured: %+v", trace)
	}
}
