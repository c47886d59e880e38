package nutrition_test

import (
	"fmt"
	"math"
	"testing"

	"pgregory.net/rapid"

	"fourturn/planner/civil"
	"fourturn/planner/finding"
	"fourturn/planner/nutrition"
	"fourturn/planner/quantity"
)

// 14-14-14 rated 3.5 months at 21 °C lies at 16 °C: a 5 to 6 month product was said
// to last 7 there (pitchcare.com, Controlled confusion), a factor of 1.17 to 1.40.
func ExampleSlowRelease_LongevityAt() {
	k := nutrition.UsualKinetics()
	p := nutrition.SlowRelease{Analysis: nutrition.MustParseAnalysis("14-14-14"), Longevity: 3.5}
	at21, at16 := p.LongevityAt(21, k).Days, p.LongevityAt(16, k).Days
	fmt.Printf("%.0f days, %.0f days, factor %.2f, Q10 %.2f\n", at21, at16, at16/at21, k.Q10())
	// Output: 107 days, 143 days, factor 1.34, Q10 1.75
}

func drawKinetics(t *rapid.T) nutrition.Kinetics {
	steady := rapid.Float64Range(0.1, 0.7).Draw(t, "steady")
	return nutrition.Kinetics{
		ActivationEnergy: rapid.Float64Range(0, 80).Draw(t, "Ea"),
		Lag:              rapid.Float64Range(0, 20).Draw(t, "lag"),
		Steady:           steady,
		Rated:            rapid.Float64Range(steady+0.01, 0.95).Draw(t, "rated"),
		Spent:            rapid.Float64Range(0.3, 0.97).Draw(t, "spent"),
	}
}

func drawTrack(t *rapid.T) nutrition.Track {
	means := make([]quantity.Temperature, rapid.IntRange(1, 40).Draw(t, "days"))
	for i := range means {
		means[i] = quantity.Temperature(rapid.Float64Range(-15, 45).Draw(t, "mean"))
	}
	p := product(rapid.Float64Range(0.2, 18).Draw(t, "months"), quantity.Temperature(rapid.Float64Range(15, 30).Draw(t, "reference")))
	p.Coated = rapid.Float64Range(0.05, 1).Draw(t, "coated")
	c := nutrition.Charge{Product: p, Date: spring.AddDays(rapid.IntRange(-60, 60).Draw(t, "date")), Mass: 0.02}
	if rapid.Bool().Draw(t, "top") {
		c.Placement = nutrition.OnTop
	}
	var takings []nutrition.Taking
	for i := range rapid.IntRange(0, 3).Draw(t, "takings") {
		takings = append(takings, nutrition.Taking{Date: spring.AddDays(40 * i), Share: rapid.Float64Range(0, 1).Draw(t, "share")})
	}
	return nutrition.Follow(c, nutrition.NewThermal(spring, means, drawKinetics(t)), takings)
}

// Release never runs backwards, never stops while something is left, and is spent on
// the day that is named.
func TestReleaseLaws(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		track := drawTrack(t)
		last := 0.0
		for i := range 60 {
			d := track.Charge.Date.AddDays(i * 5)
			r := track.Released(d)
			if r < last || r > 1 || r < 0 {
				t.Fatalf("released %v after %v on %v", r, last, d)
			}
			last = r
		}
		if left := track.Left(track.Charge.Date.AddDays(3000)); left < 0 || left > 1 {
			t.Fatalf("%v left", left)
		}
		day, ok := track.SpentOn()
		spent := track.Thermal.Kinetics().Spent
		if ok && (track.Released(day) < spent-1e-9 || track.Released(day.AddDays(-1)) >= spent) {
			t.Fatalf("spent at %v on %v: released %v, the day before %v", spent, day, track.Released(day), track.Released(day.AddDays(-1)))
		}
	})
}

// What dissolves in two stretches is what dissolves in both together; what dissolves,
// is taken out and is still in prills is the charge.
func TestNothingOfAChargeIsLost(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		track := drawTrack(t)
		a := track.Charge.Date.AddDays(rapid.IntRange(-20, 100).Draw(t, "from"))
		b := a.AddDays(rapid.IntRange(0, 100).Draw(t, "middle"))
		c := b.AddDays(rapid.IntRange(0, 100).Draw(t, "to"))
		whole, parts := track.Dissolved(a, c), track.Dissolved(a, b)+track.Dissolved(b, c)
		if math.Abs(float64(whole-parts)) > 1e-12 {
			t.Fatalf("%v in one, %v in two", whole, parts)
		}
		if len(track.Takings) > 0 || track.Charge.Placement == nutrition.OnTop {
			return
		}
		if sum := track.Dissolved(track.Charge.Date, c) + track.InPot(c); c >= track.Charge.Date && math.Abs(float64(sum-track.Charge.Mass)) > 1e-12 {
			t.Fatalf("%v of %v is accounted for", sum, track.Charge.Mass)
		}
	})
}

// Taking out a third of the mix takes a third of the prills, and what comes after
// is a third less.
func TestTakingsCarryPrillsOff(t *testing.T) {
	whole := steady(product(6, 21), 21, nutrition.UsualKinetics())
	taken := nutrition.Follow(whole.Charge, whole.Thermal, []nutrition.Taking{
		{Date: spring, Share: 1}, // before the charge went in on the same day
		{Date: spring.AddDays(60), Share: 1.0 / 3},
	})
	day, later := spring.AddDays(60), spring.AddDays(120)
	if got, want := float64(taken.InPot(day)), float64(whole.InPot(day))*2/3; !near(got, want, 1e-9) {
		t.Errorf("%v in the pot, want %v", got, want)
	}
	if got, want := float64(taken.Dissolved(day, later)), float64(whole.Dissolved(day, later))*2/3; !near(got, want, 1e-9) {
		t.Errorf("%v dissolves, want %v", got, want)
	}
	if taken.Dissolved(spring, day) != whole.Dissolved(spring, day) {
		t.Error("what dissolved before the taking changed")
	}
}

// Warmer is faster and the year's end, a leap day and the south make no seam.
func TestThermalAge(t *testing.T) {
	k := nutrition.UsualKinetics()
	first, last := civil.MustParse("2027-07-01"), civil.MustParse("2028-06-30")
	south := func(d civil.Date) quantity.Temperature {
		return quantity.Temperature(18 + 8*math.Cos(2*math.Pi*float64(d.YearDay()-15)/365.25))
	}
	thermal := nutrition.ThermalOf(first, last, south, k)
	total := 0.0
	for d := first; d <= last; d++ {
		step := thermal.Age(d, d+1, 21)
		if !near(step, k.Speed(south(d), 21), 1e-9) {
			t.Fatalf("%v counts %v days", d, step)
		}
		total += step
	}
	if got := thermal.Age(first, last+1, 21); !near(got, total, 1e-9) {
		t.Errorf("the year is %v days, its days sum to %v", got, total)
	}
	january := thermal.Age(civil.MustParse("2028-01-01"), civil.MustParse("2028-02-01"), 21)
	july := thermal.Age(civil.MustParse("2027-07-01"), civil.MustParse("2027-08-01"), 21)
	if january < 2*july {
		t.Errorf("in the south January counts %v days and July %v", january, july)
	}
	if at25 := thermal.Age(first, last, 25); !near(at25/thermal.Age(first, last, 21), k.Speed(21, 25), 1e-9) {
		t.Errorf("a reference of 25 °C: %v", at25)
	}
	if before := thermal.Age(first-10, first, 21); !near(before, 10*k.Speed(south(first), 21), 1e-9) {
		t.Errorf("ten days before the run: %v", before)
	}
	if after := thermal.Age(last+1, last+11, 21); !near(after, 10*k.Speed(south(last), 21), 1e-9) {
		t.Errorf("ten days after the run: %v", after)
	}
}

func arg(t *testing.T, f finding.Finding, name string) float64 {
	t.Helper()
	for _, a := range f.Args {
		if a.Name == name {
			if !a.Value.Date.IsZero() {
				return float64(a.Value.Date)
			}
			return a.Value.Number
		}
	}
	t.Fatalf("%s has no %q", f.Code, name)
	return 0
}

// A charge of three months before a change-out in five is bridged, and the
// top-dressing gives in the gap what the charge gave before.
func TestGapIsBridged(t *testing.T) {
	track := steady(product(3, 21), 21, nutrition.UsualKinetics())
	changeOut := spring.AddDays(150)
	f, ok := track.GapFinding("urn", changeOut, 7)
	if !ok || f.Code != "nutrition.spent_early" {
		t.Fatalf("%v %v", f, ok)
	}
	spent, _ := track.SpentOn()
	top := nutrition.Follow(nutrition.Charge{
		Product: track.Charge.Product, Date: civil.Date(arg(t, f, "date")), Mass: quantity.Mass(arg(t, f, "mass")), Placement: nutrition.OnTop,
	}, track.Thermal, nil)
	before := float64(track.Dissolved(spring, spent)) / float64(spent-spring)
	gap := float64(track.Dissolved(spent, changeOut)+top.Dissolved(spent, changeOut)) / float64(changeOut-spent)
	if !near(gap, before, 0.001) {
		t.Errorf("%v a day in the gap, %v before it", gap, before)
	}
	longer := steady(product(arg(t, f, "longevity"), 21), 21, nutrition.UsualKinetics())
	if day, _ := longer.SpentOn(); day < changeOut-1 || day > changeOut+1 {
		t.Errorf("a rating of %v months is spent on %v, not %v", arg(t, f, "longevity"), day, changeOut)
	}
	if _, ok := track.GapFinding("urn", spent.AddDays(7), 7); ok {
		t.Error("a week is reported, though it was to be let pass")
	}
	if _, ok := track.GapFinding("urn", spent.AddDays(-1), 0); ok {
		t.Error("a charge that lasts is reported")
	}
	if b, ok := track.Bridge(spring.AddDays(3000)); ok && b.Mass > track.Charge.Mass {
		t.Errorf("a bridge of %v is more than the charge", b.Mass)
	}
}

// A new charge on a fresh one doubles; the mended one makes up what is missing.
func TestDoublingIsMended(t *testing.T) {
	old := steady(product(6, 21), 21, nutrition.UsualKinetics())
	fresh := old.Charge
	fresh.Date = spring.AddDays(60)
	f, ok := nutrition.DoublingFinding("urn", fresh, []nutrition.Track{old}, nutrition.DoublingLimit)
	if !ok {
		t.Fatal("a charge after two months of six is let pass")
	}
	if got := arg(t, f, "mended") + float64(old.InPot(fresh.Date)); !near(got, float64(fresh.Mass), 1e-9) {
		t.Errorf("old and mended make %v, want %v", got, fresh.Mass)
	}
	fresh.Date = spring.AddDays(180)
	if _, ok := nutrition.DoublingFinding("urn", fresh, []nutrition.Track{old}, nutrition.DoublingLimit); ok {
		t.Error("a spent charge is reported")
	}
}

func TestRateFinding(t *testing.T) {
	p := nutrition.SlowRelease{Analysis: nutrition.MustParseAnalysis("16-9-12"), Longevity: 4}
	for grams, want := range map[float64]bool{34: false, 68: false, 102: true, 136: true} { // HortTechnology 23(2):157: the last two were not acceptable
		_, ok := nutrition.RateFinding("urn", nutrition.Charge{Product: p, Mass: quantity.Mass(grams) * quantity.Gram}, 10)
		if ok != want {
			t.Errorf("%v g in 10 L: %v", grams, ok)
		}
	}
}
