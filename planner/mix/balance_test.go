package mix_test

import (
	"fmt"
	"math"
	"testing"
	"time"

	"pgregory.net/rapid"

	"fourturn/planner/mix"
	"fourturn/planner/quantity"
)

// timed returns the seconds that f takes.
func timed(f func()) float64 {
	start := time.Now()
	f()
	return time.Since(start).Seconds()
}

// About a third of the mix is replaced (UC Master Gardeners of Orange County) when
// nothing is lifted: a pot of 30 L takes 10 L of fresh mix, 11.5 L from the bag.
func ExampleContent_At() {
	b := mix.Content{Volume: 30, Age: 1}.At(mix.ChangeOut{Capacity: 30, Elapsed: 1})
	fmt.Printf("out %.1f L, fresh %.1f L, from the bag %.1f L, age %.2f seasons\n", b.OldOut, b.Fresh, b.Loose(), b.After.Age)
	// Output: out 10.0 L, fresh 10.0 L, from the bag 11.5 L, age 1.33 seasons
}

func changeOuts(capacity quantity.Volume) *rapid.Generator[mix.ChangeOut] {
	return rapid.Custom(func(t *rapid.T) mix.ChangeOut {
		volume := func(label string) quantity.Volume {
			return quantity.Volume(rapid.Float64Range(0, 1.3).Draw(t, label)) * capacity
		}
		return mix.ChangeOut{
			Capacity:     capacity,
			OldRootBalls: volume("old balls"),
			NewRootBalls: volume("new balls"),
			Policy:       rapid.SampledFrom([]mix.Policy{"", mix.ReplaceShare, mix.TopUp, mix.AllFresh}).Draw(t, "policy"),
			Share:        rapid.Float64Range(0, 1).Draw(t, "share"),
			Settling:     rapid.Float64Range(0.1, 0.2).Draw(t, "settling"),
			Elapsed:      rapid.Float64Range(0, 3).Draw(t, "elapsed"),
			Shrinkage:    rapid.Float64Range(0, 0.3).Draw(t, "shrinkage"),
			RetireAfter:  rapid.SampledFrom([]float64{0, 2, math.Inf(1)}).Draw(t, "retire"),
			Diseased:     rapid.IntRange(0, 5).Draw(t, "diseased") == 0,
		}
	})
}

// What goes in less what comes out is what is there; it never stands above the fill
// line, is never less than nothing, and is full after every change-out.
func TestBalanceConserves(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		capacity := quantity.Volume(rapid.Float64Range(0.5, 500).Draw(t, "capacity"))
		years := rapid.SliceOfN(changeOuts(capacity), 1, 16).Draw(t, "change-outs")
		balances := mix.Year(mix.Content{}, years, nil)
		tolerance := 1e-9 * float64(capacity)
		var total mix.Total
		before := mix.Content{}
		for i, b := range balances {
			if b.Before != before {
				t.Fatalf("change-out %d begins with %v, the last ended with %v", i, b.Before, before)
			}
			sum := b.Before.Volume - b.Shrunk - b.BallsOut - b.OldOut + b.BallsIn + b.Fresh
			if math.Abs(float64(sum-b.After.Volume)) > tolerance {
				t.Fatalf("change-out %d: %v L remain by the sum, %v in the pot", i, sum, b.After.Volume)
			}
			if b.After.Volume > capacity || float64(capacity-b.After.Volume) > tolerance {
				t.Fatalf("change-out %d: %v L in a pot of %v", i, b.After.Volume, capacity)
			}
			for _, v := range []quantity.Volume{b.Shrunk, b.BallsOut, b.OldOut, b.BallsIn, b.Fresh, b.NoRoom} {
				if v < 0 {
					t.Fatalf("change-out %d has a negative volume: %+v", i, b)
				}
			}
			if b.After.Age > b.Before.Age+years[i].Elapsed || b.After.Age < 0 {
				t.Fatalf("change-out %d: age %v after, %v before", i, b.After.Age, b.Before.Age)
			}
			before = b.After
		}
		total.Add(balances...)
		end := total.BallsIn + total.Fresh - total.BallsOut - total.OldOut - total.Shrunk
		if math.Abs(float64(end-before.Volume)) > tolerance*16 {
			t.Fatalf("over all years %v L by the sum, %v in the pot", end, before.Volume)
		}
	})
}

// The age is the mean of the ages of the parts, each kept apart: mix that went in at
// change-out i and is still there at the end is as old as the seasons since.
func TestAgeIsTheMeanOfTheParts(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		years := rapid.SliceOfN(changeOuts(50), 1, 10).Draw(t, "change-outs")
		type part struct{ volume, age float64 }
		var parts []part
		for i, b := range mix.Year(mix.Content{}, years, nil) {
			kept := float64(b.After.Volume - b.BallsIn - b.Fresh)
			share := 0.0
			if b.Before.Volume > 0 {
				share = kept / float64(b.Before.Volume)
			}
			for j := range parts {
				parts[j].volume *= share
				parts[j].age += years[i].Elapsed
			}
			parts = append(parts, part{volume: float64(b.BallsIn + b.Fresh)})
			sum, volume := 0.0, 0.0
			for _, p := range parts {
				sum += p.volume * p.age
				volume += p.volume
			}
			if want := sum / volume; math.Abs(want-b.After.Age) > 1e-6 {
				t.Fatalf("change-out %d: age %v, mean of the parts %v", i, b.After.Age, want)
			}
		}
	})
}

func TestPolicies(t *testing.T) {
	old := mix.Content{Volume: 20, Age: 3}
	base := mix.ChangeOut{Capacity: 20, OldRootBalls: 4, NewRootBalls: 2, Elapsed: 1}
	for name, c := range map[string]struct {
		change    func(*mix.ChangeOut)
		reason    mix.Reason
		out, into quantity.Volume
	}{
		"share":        {func(ch *mix.ChangeOut) { ch.Share = 0.5 }, mix.ByShare, 8, 10},
		"top up":       {func(ch *mix.ChangeOut) { ch.Policy = mix.TopUp }, mix.ByTopUp, 0, 2},
		"all fresh":    {func(ch *mix.ChangeOut) { ch.Policy = mix.AllFresh }, mix.ByPolicy, 16, 18},
		"disease":      {func(ch *mix.ChangeOut) { ch.Policy, ch.Diseased = mix.TopUp, true }, mix.ByDisease, 16, 18},
		"age":          {func(ch *mix.ChangeOut) { ch.RetireAfter = 4 }, mix.ByAge, 16, 18},
		"not yet old":  {func(ch *mix.ChangeOut) { ch.Policy, ch.RetireAfter = mix.TopUp, 4.1 }, mix.ByTopUp, 0, 2},
		"large balls":  {func(ch *mix.ChangeOut) { ch.Policy, ch.NewRootBalls = mix.TopUp, 10 }, mix.ByTopUp, 6, 0},
		"no room":      {func(ch *mix.ChangeOut) { ch.NewRootBalls = 25 }, mix.ByShare, 16, 0},
		"rotted":       {func(ch *mix.ChangeOut) { ch.Policy, ch.Shrinkage = mix.TopUp, 0.1 }, mix.ByTopUp, 0, 4},
		"nothing left": {func(ch *mix.ChangeOut) { ch.OldRootBalls = 30 }, mix.ByShare, 0, 18},
	} {
		ch := base
		c.change(&ch)
		b := old.At(ch)
		if b.Reason != c.reason || math.Abs(float64(b.OldOut-c.out)) > 1e-9 || math.Abs(float64(b.Fresh-c.into)) > 1e-9 {
			t.Errorf("%s: %s, %v L out and %v L in; want %s, %v and %v", name, b.Reason, b.OldOut, b.Fresh, c.reason, c.out, c.into)
		}
	}
	if b := old.At(mix.ChangeOut{Capacity: 20, NewRootBalls: 25}); b.NoRoom != 5 || len(b.Findings(nil)) == 0 {
		t.Errorf("root balls of 25 L in a pot of 20: no room for %v, findings %v", b.NoRoom, b.Findings(nil))
	}
	if first := (mix.Content{}).At(base); first.Reason != mix.ByFirst || first.Fresh != 18 {
		t.Errorf("first filling: %+v", first)
	}
}

func TestBalancePanicsOnProgrammerErrors(t *testing.T) {
	for name, ch := range map[string]mix.ChangeOut{
		"volume":   {Capacity: -1},
		"share":    {Share: 1.5},
		"age":      {Elapsed: math.NaN()},
		"policy":   {Policy: "half"},
		"settling": {Settling: 2},
	} {
		func() {
			defer func() {
				if recover() == nil {
					t.Errorf("%s: no panic", name)
				}
			}()
			mix.Content{Volume: 1}.At(ch)
		}()
	}
}

// BenchmarkYearOf10000Pots works through four seasons of 10 000 pots and reports the
// time as a ratio to summing as many numbers of the same size in memory.
func BenchmarkYearOf10000Pots(b *testing.B) {
	const pots = 10_000
	years := make([][4]mix.ChangeOut, pots)
	for i := range years {
		capacity := quantity.Volume(5 + i%90)
		for season := range years[i] {
			years[i][season] = mix.ChangeOut{Capacity: capacity, OldRootBalls: capacity / 5, NewRootBalls: capacity / 10, Elapsed: 1}
		}
	}
	var into []mix.Balance
	b.ReportAllocs()
	var total mix.Total
	for b.Loop() {
		total = mix.Total{}
		for i := range years {
			into = mix.Year(mix.Content{Volume: years[i][0].Capacity, Age: 2}, years[i][:], into[:0])
			total.Add(into...)
		}
	}
	own := b.Elapsed().Seconds() / float64(b.N)
	b.StopTimer()
	plain := math.Inf(1)
	sum := quantity.Volume(0)
	for range 5 {
		plain = min(plain, timed(func() {
			for i := range years {
				for season := range years[i] {
					ch := &years[i][season]
					sum += ch.Capacity + ch.OldRootBalls + ch.NewRootBalls
				}
			}
		}))
	}
	if sum == 0 || total.Loose == 0 {
		b.Fatal("nothing was worked out")
	}
	b.ReportMetric(own/plain, "own/sum")
	b.ReportMetric(own*1000, "ms/year")
}
