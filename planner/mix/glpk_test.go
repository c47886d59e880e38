package mix_test

import (
	"bufio"
	"fmt"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"fourturn/planner/mix"
	"fourturn/planner/quantity"
)

// glpsol returns the path of GLPK's solver. Without it a test is skipped, but not
// where CI is set: there it has to be installed.
func glpsol(tb testing.TB) string {
	tb.Helper()
	path, err := exec.LookPath("glpsol")
	switch {
	case err == nil:
	case os.Getenv("CI") != "":
		tb.Fatal("glpsol is missing: install Debian's glpk-utils")
	default:
		tb.Skip("glpsol is not installed (Debian's glpk-utils): purchases are not compared with GLPK")
	}
	return path
}

// model writes an order as a mixed-integer program in CPLEX LP format, in litres and
// cents. With atCost set, the cost is held there and the volume is made least.
func model(o mix.Order, atCost float64) string {
	var cost, volume, general []string
	for i, b := range o.Bags {
		cost = append(cost, fmt.Sprintf("%.0f n%d", b.Price*100, i))
		volume = append(volume, fmt.Sprintf("%.12g n%d", float64(b.Volume), i))
		general = append(general, fmt.Sprintf("n%d", i))
	}
	var rows, binary strings.Builder
	if b := o.Bulk; b != nil {
		cost = append(cost, fmt.Sprintf("%.0f q + %.0f y", b.Price*float64(b.Step/b.Per)*100, b.Delivery*100))
		volume = append(volume, fmt.Sprintf("%.12g q", float64(b.Step)))
		general = append(general, "q")
		steps := math.Ceil(float64(b.Minimum/b.Step) - 1e-9)
		most := math.Ceil(float64(o.Need/b.Step)) + steps
		fmt.Fprintf(&rows, " least: q - %.0f y >= 0\n most: q - %.0f y <= 0\n", math.Max(1, steps), most)
		binary.WriteString("Binary\n y\n")
	}
	objective := cost
	if atCost > 0 {
		objective = volume
		fmt.Fprintf(&rows, " cost: %s <= %.1f\n", strings.Join(cost, " + "), atCost*100+0.4)
	}
	return fmt.Sprintf("Minimize\n obj: %s\nSubject To\n need: %s >= %.12g\n%sGeneral\n %s\n%sEnd\n",
		strings.Join(objective, " + "), strings.Join(volume, " + "), float64(o.Need-o.InShed),
		rows.String(), strings.Join(general, " "), binary.String())
}

// solve runs glpsol and returns the value of the objective.
func solve(tb testing.TB, solver, program string) float64 {
	tb.Helper()
	dir := tb.TempDir()
	in, out := filepath.Join(dir, "order.lp"), filepath.Join(dir, "solution.txt")
	if err := os.WriteFile(in, []byte(program), 0o600); err != nil {
		tb.Fatal(err)
	}
	if said, err := exec.Command(solver, "--lp", in, "--cuts", "-w", out).CombinedOutput(); err != nil {
		tb.Fatalf("glpsol: %v\n%s\n%s", err, said, program)
	}
	file, err := os.Open(out)
	if err != nil {
		tb.Fatal(err)
	}
	defer file.Close()
	for lines := bufio.NewScanner(file); lines.Scan(); {
		var rows, columns int
		var status string
		var value float64
		if n, _ := fmt.Sscanf(lines.Text(), "s mip %d %d %s %g", &rows, &columns, &status, &value); n == 4 {
			if status != "o" {
				tb.Fatalf("glpsol found no optimum: status %q\n%s", status, program)
			}
			return value
		}
	}
	tb.Fatalf("glpsol wrote no solution for\n%s", program)
	return 0
}

// marketOf8 is a market of eight sizes as shops have them, and of bulk.
func marketOf8() mix.Order {
	return mix.Order{
		Need: 100 * quantity.CubicMetre,
		Bags: []mix.Bag{
			{Key: "8 L", Volume: 8, Price: 3.49},
			{Key: "16 L", Volume: 16, Price: 5.99},
			{Key: "20 L", Volume: 20, Price: 6.79},
			{Key: "25 L", Volume: 25, Price: 7.99},
			{Key: "40 L", Volume: 40, Price: 11.49},
			{Key: "50 L", Volume: 50, Price: 13.99},
			{Key: "60 L", Volume: 60, Price: 16.49},
			{Key: "70 L", Volume: 70, Price: 18.99},
		},
		Bulk: &mix.Bulk{Price: 165, Per: quantity.CubicMetre, Step: 500, Minimum: 2000, Delivery: 95},
	}
}

// Random orders that are too large to try every set of: GLPK finds the same cost,
// and, with the cost held there, the same volume.
func TestPurchaseAgreesWithGLPK(t *testing.T) {
	solver := glpsol(t)
	random := newRandom(20250301)
	for i := range 25 {
		o := mix.Order{Need: quantity.Volume(100 + random.below(5000)), InShed: quantity.Volume(random.below(90))}
		for k := range 2 + random.below(7) {
			volume := quantity.Volume(5 * (1 + random.below(20)))
			price := float64(100+random.below(100)+int(volume)*(15+random.below(15))) / 100
			o.Bags = append(o.Bags, mix.Bag{Key: fmt.Sprint(k), Volume: volume, Price: price})
		}
		if i%2 == 0 {
			step := quantity.Volume(50 * (1 + random.below(10)))
			o.Bulk = &mix.Bulk{
				Per: step, Step: step, Price: float64(step) * float64(10+random.below(15)) / 100,
				Minimum: quantity.Volume(random.below(2000)), Delivery: float64(random.below(12000)) / 100,
			}
		}
		p, err := mix.Buy(o)
		if err != nil {
			t.Fatal(err)
		}
		if cost := solve(t, solver, model(o, 0)) / 100; math.Abs(cost-p.Cost) > 0.005 {
			t.Errorf("order %d: GLPK %.2f, Buy %.2f\n%+v", i, cost, p.Cost, o)
			continue
		}
		if volume := solve(t, solver, model(o, p.Cost)); math.Abs(volume-float64(p.Bought)) > 0.01 {
			t.Errorf("order %d at cost %.2f: GLPK buys %v L, Buy %v L\n%+v", i, p.Cost, volume, p.Bought, o)
		}
	}
}

// random is a small generator with a fixed seed, so that failures repeat (D. Lehmer's
// method with the multiplier of S. Park and K. Miller, 1988).
type random struct{ state uint64 }

func newRandom(seed uint64) *random { return &random{seed} }

func (r *random) below(n int) int {
	r.state = r.state * 16807 % 2147483647
	return int(r.state % uint64(n))
}

// BenchmarkBuy100m3 buys 100 m³ from eight sizes with bulk, and reports how many
// times longer glpsol takes on the same order in the same run, its start included.
func BenchmarkBuy100m3(b *testing.B) {
	o := marketOf8()
	b.ReportAllocs()
	for b.Loop() {
		if _, err := mix.Buy(o); err != nil {
			b.Fatal(err)
		}
	}
	own := b.Elapsed().Seconds() / float64(b.N)
	b.StopTimer()
	compareSpeed(b, o, own)
}

// BenchmarkBuy100m3MixedUnits is the same with cubic-foot bags among the litres, so
// that the sizes have no useful common measure.
func BenchmarkBuy100m3MixedUnits(b *testing.B) {
	o := marketOf8()
	o.Bags[2] = mix.Bag{Key: "0.75 cu ft", Volume: 0.75 * quantity.CubicFoot, Price: 6.99}
	o.Bags[4] = mix.Bag{Key: "1.5 cu ft", Volume: 1.5 * quantity.CubicFoot, Price: 11.99}
	for b.Loop() {
		if _, err := mix.Buy(o); err != nil {
			b.Fatal(err)
		}
	}
}

func compareSpeed(b *testing.B, o mix.Order, own float64) {
	b.Helper()
	solver := glpsol(b)
	program := model(o, 0)
	const runs = 3
	best := math.Inf(1)
	for range runs {
		taken := timed(func() { solve(b, solver, program) })
		best = min(best, taken)
	}
	b.ReportMetric(best/own, "glpsol/own")
}
