package mix_test

import (
	"fmt"
	"math"
	"testing"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"fourturn/planner/finding"
	"fourturn/planner/mix"
	"fourturn/planner/quantity"
	"fourturn/planner/working"
)

// A 36-quart tub of wet bark mix is around the limit of an ideal lift before the pot
// and the plants.
func ExampleWeigh() {
	w := mix.Weigh(mix.WeightInput{Pot: 3, Mix: 36 * quantity.LiquidQuart, Substrate: mix.Substrates[2], Footprint: 0.1})
	fmt.Printf("%.1f kg dry, %.1f kg drained, %.0f kg/m²\n", float64(w.Dry), float64(w.Drained), w.FloorLoad)
	for _, f := range w.Findings(nil) {
		fmt.Println(f.Severity, f.Code)
	}
	// Output:
	// 9.1 kg dry, 25.5 kg drained, 255 kg/m²
	// caution mix.lift_wet
	// caution mix.floor_load
}

func TestWeightLaws(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		amount := func(label string) float64 { return rapid.Float64Range(0, 200).Draw(t, label) }
		in := mix.WeightInput{
			Pot: quantity.Mass(amount("pot")), Mix: quantity.Volume(amount("mix")), Plants: quantity.Mass(amount("plants")),
			Reservoir: quantity.Volume(amount("reservoir")), Gravel: quantity.Volume(amount("gravel")),
			Footprint: quantity.Area(rapid.Float64Range(0.001, 2).Draw(t, "footprint")),
			Substrate: rapid.SampledFrom(mix.Substrates[:]).Draw(t, "substrate"),
		}
		w := mix.Weigh(in)
		if w.Drained < w.Dry || w.Dry < in.Pot+in.Plants {
			t.Fatalf("%+v", w)
		}
		trace := w.Working()
		sum := 0.0
		for _, i := range trace.Inputs {
			switch i.Symbol {
			case "m_pot", "m_plants":
				sum += i.Value.Number
			case "V":
				sum += i.Value.Number * (in.Substrate.DryDensity + in.Substrate.ContainerCapacity)
			case "G":
				sum += i.Value.Number * mix.GravelDensity
			case "W":
				sum += i.Value.Number
			}
		}
		if math.Abs(sum-trace.Result.Number) > 1e-9*(1+sum) {
			t.Fatalf("the inputs of the working sum to %v, its result is %v", sum, trace.Result.Number)
		}
		if in.Footprint > 0 && math.Abs(w.FloorLoad*float64(in.Footprint)-float64(w.Drained)) > 1e-6 {
			t.Fatalf("%v kg/m² over %v m² for %v kg", w.FloorLoad, in.Footprint, w.Drained)
		}
	})
}

func TestWeightFindings(t *testing.T) {
	codes := func(in mix.WeightInput) []string {
		var codes []string
		for _, f := range mix.Weigh(in).Findings(finding.Where{"pots", "a"}) {
			if f.Severity != finding.Caution {
				t.Errorf("%s is a %s", f.Code, f.Severity)
			}
			codes = append(codes, f.Code)
		}
		return codes
	}
	for name, c := range map[string]struct {
		in   mix.WeightInput
		want []string
	}{
		"at the limit":    {mix.WeightInput{Pot: 23}, nil},
		"above the limit": {mix.WeightInput{Pot: 23.01}, []string{"mix.lift"}},
		"only when wet":   {mix.WeightInput{Pot: 10, Mix: 20}, []string{"mix.lift_wet"}},
		"by its water":    {mix.WeightInput{Pot: 10, Reservoir: 13.5}, []string{"mix.lift_wet"}},
		"on a small foot": {mix.WeightInput{Pot: 20, Footprint: 0.1}, []string{"mix.floor_load"}},
		"hanging":         {mix.WeightInput{Pot: 20}, nil},
	} {
		if diff := cmp.Diff(c.want, codes(c.in)); diff != "" {
			t.Errorf("%s (-want +got):\n%s", name, diff)
		}
	}
	if q := mix.Weigh(mix.WeightInput{Pot: 20, Footprint: 0.1}).FloorWorking(); math.Abs(q.Result.Number-200) > 1e-9 || q.Inputs[0].From == nil {
		t.Errorf("floor load %+v", q)
	}
}

func ExampleBlend_Make() {
	blend := mix.Blend{
		Parts:     []mix.Part{{Key: "bark", Parts: 3}, {Key: "peat", Parts: 2, Expansion: mix.BaleExpansion}, {Key: "perlite", Parts: 1}},
		Shrinkage: mix.UsualShrinkage,
	}
	for _, p := range blend.Make(90).Portions {
		fmt.Printf("%s %.1f L loose, %.1f L as sold\n", p.Key, float64(p.Loose), float64(p.AsSold))
	}
	// Output:
	// bark 50.0 L loose, 50.0 L as sold
	// peat 33.3 L loose, 16.7 L as sold
	// perlite 16.7 L loose, 16.7 L as sold
}

func TestBlendLaws(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		blend := mix.Blend{
			Parts: rapid.SliceOfN(rapid.Custom(func(t *rapid.T) mix.Part {
				return mix.Part{Parts: rapid.Float64Range(0.1, 9).Draw(t, "parts"), Expansion: rapid.SampledFrom([]float64{0, 1, 1.8, 2}).Draw(t, "expansion")}
			}), 1, 6).Draw(t, "blend"),
			Shrinkage: rapid.Float64Range(0, 0.5).Draw(t, "shrinkage"),
		}
		volume := quantity.Volume(rapid.Float64Range(0.1, 1000).Draw(t, "volume"))
		batch := blend.Make(volume)
		loose := quantity.Volume(0)
		var sold []quantity.Volume
		for i, p := range batch.Portions {
			loose += p.Loose
			sold = append(sold, p.AsSold)
			if trace := batch.Working(i); trace.Result.Number != float64(p.AsSold) {
				t.Fatalf("working %v, portion %v", trace.Result.Number, p.AsSold)
			}
		}
		if math.Abs(float64(loose)*(1-blend.Shrinkage)-float64(volume)) > 1e-9*float64(volume) {
			t.Fatalf("%v loose shrinks to %v, not %v", loose, float64(loose)*(1-blend.Shrinkage), volume)
		}
		back, _ := blend.Yield(sold)
		if math.Abs(float64(back-volume)) > 1e-9*float64(volume) {
			t.Fatalf("what goes into %v yields %v", volume, back)
		}
		short := rapid.IntRange(0, len(sold)-1).Draw(t, "short")
		sold[short] /= 2
		if half, which := blend.Yield(sold); which != short || math.Abs(float64(half-volume/2)) > 1e-9*float64(volume) {
			t.Fatalf("half of part %d yields %v of %v, short of %d", short, half, volume, which)
		}
	})
}

// The doses of a coated 14-14-14 in the words of a person with spoons, at 15 g a
// tablespoon (from memory, coated prill).
func ExampleMeasureMass() {
	spoon := working.Source{Status: working.Memory, Cite: "coated prill, about 1 g/mL"}
	for _, grams := range []quantity.Mass{3.7, 7.4, 22, 60, 130} {
		m := mix.MeasureMass(grams*quantity.Gram, 15*quantity.Gram, spoon, mix.USSpoons)
		fmt.Printf("%v g:", float64(grams))
		for _, h := range m.Hands {
			fmt.Printf(" %v %s", h.Count, h.Tool.Key)
		}
		fmt.Printf(" (%+.0f %%)\n", m.Error()*100)
	}
	// Output:
	// 3.7 g: 0.75 mix.tool.teaspoon (+1 %)
	// 7.4 g: 0.5 mix.tool.tablespoon (+1 %)
	// 22 g: 1.5 mix.tool.tablespoon (+2 %)
	// 60 g: 0.25 mix.tool.cup (+0 %)
	// 130 g: 0.5 mix.tool.cup 2 mix.tool.teaspoon (-0 %)
}

func TestMeasureLaws(t *testing.T) {
	tools := map[string][]mix.Tool{
		"spoons": mix.USSpoons, "pails": mix.USPails, "cans": mix.USCans, "metric spoons": mix.MetricSpoons, "metric pails": mix.MetricPails,
		"scoop": {mix.Scoop(0.06)},
	}
	rapid.Check(t, func(t *rapid.T) {
		set := tools[rapid.SampledFrom([]string{"spoons", "pails", "cans", "metric spoons", "metric pails", "scoop"}).Draw(t, "tools")]
		least := set[len(set)-1]
		grain := least.Volume * quantity.Volume(least.Grain)
		v := quantity.Volume(math.Exp(rapid.Float64Range(math.Log(float64(grain)/3), math.Log(float64(set[0].Volume)*20)).Draw(t, "log")))
		m := mix.Measure(v, set)
		sum := quantity.Volume(0)
		for _, h := range m.Hands {
			sum += h.Tool.Volume * quantity.Volume(h.Count)
			if grains := h.Count / h.Tool.Grain; h.Count <= 0 || math.Abs(grains-math.Round(grains)) > 1e-9 {
				t.Fatalf("%v of %s is not measured by eye", h.Count, h.Tool.Key)
			}
		}
		if math.Abs(float64(sum-m.Volume)) > 1e-9 || len(m.Hands) < 1 || len(m.Hands) > 2 {
			t.Fatalf("%+v", m)
		}
		// Within 5 %, or no further off than half of the least that can be measured.
		if off := math.Abs(float64(m.Volume - v)); off > 0.05*float64(v)+1e-9 && off > float64(grain)*(1+1e-9) {
			t.Fatalf("%v L is measured as %v L", v, m.Volume)
		}
		if m.Working().Result.Number != float64(m.Volume) {
			t.Fatalf("working %+v", m.Working())
		}
	})
}

func TestMeasuredInHandsPeopleHave(t *testing.T) {
	for _, c := range []struct {
		v     quantity.Volume
		tools []mix.Tool
		want  string
	}{
		{0, mix.USSpoons, ""},
		{quantity.Tablespoon, mix.USSpoons, "1 tablespoon"},
		{4 * quantity.Teaspoon, mix.USSpoons, "1 tablespoon + 1 teaspoon"},
		{quantity.Teaspoon / 100, mix.USSpoons, "0.25 teaspoon"},
		{0.9 * quantity.CubicFoot, mix.USPails, "0.75 cubic_foot + 1 gallon"},
		{51.4 * quantity.DryQuart, mix.USPails, "2 cubic_foot"},
		{1.5 * quantity.CubicYard, mix.USPails, "1.5 cubic_yard"},
		{11.5, mix.MetricPails, "1 pail_10 + 1.5 litre"},
		{0.022, mix.MetricSpoons, "1.5 spoon_15"},
		{9.46, mix.USCans, "2.5 gallon"},
	} {
		got := ""
		for i, h := range mix.Measure(c.v, c.tools).Hands {
			if i > 0 {
				got += " + "
			}
			got += fmt.Sprintf("%v %s", h.Count, h.Tool.Key[len("mix.tool."):])
		}
		if got != c.want {
			t.Errorf("%v L is measured as %q, want %q", float64(c.v), got, c.want)
		}
	}
	if _, coarse := mix.Measure(quantity.Teaspoon/100, mix.USSpoons).Finding(nil); !coarse {
		t.Error("a hundredth of a teaspoon is measured without a word")
	}
}

func TestRoundMass(t *testing.T) {
	for _, c := range []struct {
		m      quantity.Mass
		system quantity.System
		want   quantity.Mass
	}{
		{0, quantity.Metric, 0},
		{0.00001, quantity.Metric, 0.0005},
		{0.00374, quantity.Metric, 0.0035},
		{0.0236, quantity.Metric, 0.024},
		{0.4763, quantity.Metric, 0.475},
		{2.3456, quantity.Metric, 2.35},
		{3.1 * quantity.Ounce, quantity.USCustomary, 3 * quantity.Ounce},
		{5.13 * quantity.Pound, quantity.USCustomary, 82 * quantity.Ounce},
	} {
		if got := mix.RoundMass(c.m, c.system); math.Abs(float64(got-c.want)) > 1e-12 {
			t.Errorf("%v kg is rounded to %v, want %v", float64(c.m), float64(got), float64(c.want))
		}
	}
}

func TestFill(t *testing.T) {
	f := mix.ToFill(mix.FillInput{Capacity: 20, RootBalls: 5})
	if f.Firm != 15 || math.Abs(float64(f.Loose)-17.25) > 1e-12 {
		t.Errorf("%+v", f)
	}
	trace := f.Working()
	if !trace.Soft() || trace.Result.Number != float64(f.Loose) {
		t.Errorf("with the default settling the working is firm: %+v", trace)
	}
	f = mix.ToFill(mix.FillInput{Capacity: 20, RootBalls: 25, Settling: 0.2})
	trace = f.Working()
	if f.Loose != 0 || trace.Soft() {
		t.Errorf("%+v", f)
	}
}
