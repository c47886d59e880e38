package nutrition_test

import (
	"math"
	"testing"

	"fourturn/planner/nutrition"
	"fourturn/planner/working"
)

// Every figure shows its formula, its inputs with their sources, and itself.
func TestEveryFigureShowsItsWorking(t *testing.T) {
	balanced := nutrition.MustParseAnalysis("20-20-20")
	feed, _ := nutrition.AtStrength(balanced, 200)
	slope, _ := nutrition.KnownSlope(balanced)
	track := steady(product(3.5, 21), 18, nutrition.UsualKinetics())
	_, p, _ := balanced.Elements()
	longevity := product(3.5, 21).LongevityAt(18, nutrition.UsualKinetics())
	pour := nutrition.PourFor(10, 0, 0)
	light := nutrition.ClassOf(nutrition.LightFeeder)
	dose := nutrition.DoseOf(track.Charge.Product, light.Rate(track.Charge.Product.Analysis), 10, 3, nutrition.FreshMix, nutrition.ClassRateSource())
	stock := nutrition.StockOf(0.1, []nutrition.Use{{Date: spring, Mass: 0.3}}, 7)
	ec := feed.EC(slope, 0.2)
	top := track
	top.Charge.Placement = nutrition.OnTop
	for name, c := range map[string]struct {
		trace working.Trace
		want  float64
		soft  bool
	}{
		"phosphorus": {balanced.Working(), p / 100, false},
		"strength":   {feed.Working(), 1, false},
		"longevity":  {longevity.Working(), longevity.Days, true},
		"left":       {track.Working(spring.AddDays(40)), track.Left(spring.AddDays(40)), true},
		"on top":     {top.Working(spring), 1, true},
		"pour":       {pour.Working(), pour.Volume.Litres(), false},
		"dose":       {dose.Working(), dose.Mass.Kilograms(), false},
		"stock":      {stock.Working(), 0.2, false},
		"EC":         {ec.Working(), float64(ec.Value), false},
	} {
		if c.trace.Name == "" || c.trace.Formula == "" || len(c.trace.Inputs) == 0 || c.trace.Source.Status == "" {
			t.Errorf("%s: %+v", name, c.trace)
		}
		if math.Abs(c.trace.Result.Number-c.want) > 1e-9 || c.trace.Soft() != c.soft {
			t.Errorf("%s: %v soft %v, want %v soft %v", name, c.trace.Result, c.trace.Soft(), c.want, c.soft)
		}
		for _, in := range c.trace.Inputs {
			if in.Symbol == "" || in.Name == "" || in.Source.Status == "" {
				t.Errorf("%s: input %+v", name, in)
			}
		}
	}
}

// 20-20-20 at 200 ppm N: the elements in the can, through a 1:100 injector.
func TestElementsInTheCan(t *testing.T) {
	feed, _ := nutrition.AtStrength(nutrition.MustParseAnalysis("20-20-20"), 200)
	if !near(float64(feed.Potassium()), 166, 0.001) || !near(float64(feed.Phosphorus()), 87.3, 0.001) {
		t.Errorf("%v ppm P, %v ppm K", feed.Phosphorus(), feed.Potassium())
	}
	if got := (nutrition.Injector{Ratio: 100, Convention: nutrition.PartsAdded}).StockVolume(101); got != 1 {
		t.Errorf("the injector draws %v L for 101 L", got)
	}
	if got := feed.EC(nutrition.LabelSlope(0.5), 0.1); !near(float64(got.Value), 1.1, 1e-9) || got.Low != got.High {
		t.Errorf("%+v", got)
	}
}

// Errors say what was typed.
func TestErrorsNameTheText(t *testing.T) {
	_, err := nutrition.ParseAnalysis("20-20")
	if err == nil || err.Error() != `analysis "20-20" is not three numbers N-P2O5-K2O, such as 20-10-20` {
		t.Errorf("%v", err)
	}
	_, err = nutrition.ParseRate("3 g/acre", nutrition.PrillSpoon)
	if err == nil || err.Error() != `rate "3 g/acre": "1 acre" is not a volume` {
		t.Errorf("%v", err)
	}
}

// Programmer's errors panic with the package's name.
func TestPanics(t *testing.T) {
	for name, f := range map[string]func(){
		"no longevity":     func() { steady(nutrition.SlowRelease{}, 20, nutrition.UsualKinetics()) },
		"no kinetics":      func() { steady(product(3, 21), 20, nutrition.Kinetics{}) },
		"no temperatures":  func() { nutrition.NewThermal(spring, nil, nutrition.UsualKinetics()) },
		"no class":         func() { nutrition.ClassOf(nutrition.NoFeeder) },
		"an unknown class": func() { nutrition.ClassOf("greedy") },
		"no turn":          func() { nutrition.PlanRounds(nil, nutrition.RoundRules{First: spring, Last: spring}) },
		"days backwards":   func() { nutrition.PlanRounds(nil, nutrition.RoundRules{First: spring, Last: spring - 2, Products: 2}) },
		"no mix":           func() { nutrition.Account{}.Weeks(spring, 1) },
		"a leaky pour":     func() { nutrition.PourFor(10, 0, 1) },
		"an empty spoon":   func() { nutrition.SpoonsOf(1, 0) },
		"no can":           func() { nutrition.CansOf(nutrition.Solution{}, 1, -1) },
		"no ratio":         func() { nutrition.Injector{}.Dilution() },
		"no shared class":  func() { nutrition.SharedStrength() },
		"a bad analysis":   func() { nutrition.MustParseAnalysis("x") },
	} {
		func() {
			defer func() {
				if message, ok := recover().(string); !ok || len(message) < 11 || message[:11] != "nutrition: " {
					t.Errorf("%s: %v", name, message)
				}
			}()
			f()
			t.Errorf("%s does not panic", name)
		}()
	}
}
