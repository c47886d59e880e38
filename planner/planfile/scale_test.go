package planfile_test

import (
	"fmt"
	"path/filepath"
	"runtime"
	"testing"
	"time"

	"gopkg.in/yaml.v3"

	"fourturn/planner"
	"fourturn/planner/civil"
	"fourturn/planner/planfile"
)

// bigPlan is a plan of many pots with four plantings of three kinds each.
func bigPlan(pots int) *planner.Plan {
	p := &planner.Plan{
		Title: "Large", Risk: 0.1,
		Sites: []planner.Site{{ID: "home", Name: "Home", Station: "s"}},
		Spots: []planner.Spot{{ID: "door", Name: "Door", Site: "home", Light: planner.Sun}},
	}
	for i := range pots {
		pot := planner.Pot{
			ID: fmt.Sprintf("pot-%d", i), Name: fmt.Sprintf("Pot number %d", i), Spot: "door",
			MixSince: civil.New(2026, 4, 1+i%28), Vessel: bigVessel(i),
		}
		for _, s := range planner.Seasons {
			pot.Plantings = append(pot.Plantings, planner.Planting{Season: s, Plants: []planner.Part{
				{Plant: "viola", Role: planner.Filler, Count: 3 + i%5},
				{Plant: "ivy", Role: planner.Spiller, Share: 0.2},
				{Plant: "grass", Role: planner.Thriller, Count: 1},
			}})
		}
		p.Pots = append(p.Pots, pot)
	}
	return p
}

// measureOnce returns the time and the bytes allocated by a function.
func measureOnce(f func()) (time.Duration, uint64) {
	var before, after runtime.MemStats
	runtime.GC()
	runtime.ReadMemStats(&before)
	start := time.Now()
	f()
	took := time.Since(start)
	runtime.ReadMemStats(&after)
	return took, after.TotalAlloc - before.TotalAlloc
}

// ratio reports how much longer, and with how much more memory, our work takes
// than that of the bare library on the same bytes, in the same run.
func ratio(b *testing.B, ours, bare func()) {
	var ourTime, bareTime time.Duration
	var ourBytes, bareBytes uint64
	for b.Loop() {
		t, m := measureOnce(ours)
		ourTime, ourBytes = ourTime+t, ourBytes+m
		t, m = measureOnce(bare)
		bareTime, bareBytes = bareTime+t, bareBytes+m
	}
	b.ReportMetric(float64(ourTime)/float64(bareTime), "time/yaml")
	b.ReportMetric(float64(ourBytes)/float64(bareBytes), "memory/yaml")
}

var potCounts = []int{10, 1_000, 10_000}

func BenchmarkDecode(b *testing.B) {
	for _, pots := range potCounts {
		text := mustEncode(b, bigPlan(pots))
		b.Run(fmt.Sprintf("pots=%d", pots), func(b *testing.B) {
			ratio(b,
				func() { mustDecode(b, text) },
				func() {
					var bare any
					if err := yaml.Unmarshal(text, &bare); err != nil {
						b.Fatal(err)
					}
				})
		})
	}
}

// The first writing of a plan, read back for certainty, against bare encoding.
func BenchmarkEncode(b *testing.B) {
	for _, pots := range potCounts {
		plan := bigPlan(pots)
		var bare any
		if err := yaml.Unmarshal(mustEncode(b, plan), &bare); err != nil {
			b.Fatal(err)
		}
		b.Run(fmt.Sprintf("pots=%d", pots), func(b *testing.B) {
			ratio(b,
				func() { mustEncode(b, plan) },
				func() {
					if _, err := yaml.Marshal(bare); err != nil {
						b.Fatal(err)
					}
				})
		})
	}
}

// One edit saved to a file, against bare encoding of the whole.
func BenchmarkSaveOneEdit(b *testing.B) {
	for _, pots := range potCounts {
		text := mustEncode(b, bigPlan(pots))
		d := mustDecode(b, text)
		edited := *d.Plan()
		edited.Pots = append([]planner.Pot(nil), edited.Pots...)
		edited.Pots[pots/2].Name = "Renamed"
		var bare any
		if err := yaml.Unmarshal(text, &bare); err != nil {
			b.Fatal(err)
		}
		folder := b.TempDir()
		count := 0
		store := planfile.NewStore(filepath.Join(folder, "state"), func() time.Time { return time.Date(2027, time.June, 8, 12, 0, 0, 0, time.UTC) }, func() string { count++; return fmt.Sprint(count) })
		path := filepath.Join(folder, "plan.yaml")
		b.Run(fmt.Sprintf("pots=%d", pots), func(b *testing.B) {
			ratio(b,
				func() {
					changed, err := d.With(&edited)
					if err != nil {
						b.Fatal(err)
					}
					stamp, err := store.StampOf(path)
					if err == nil {
						_, err = store.Save(path, changed.Text(), stamp)
					}
					if err != nil {
						b.Fatal(err)
					}
				},
				func() {
					if _, err := yaml.Marshal(bare); err != nil {
						b.Fatal(err)
					}
				})
		})
	}
}

// Checking an edit happens on the interface goroutine.
func BenchmarkCheck(b *testing.B) {
	for _, pots := range potCounts {
		plan := bigPlan(pots)
		text := mustEncode(b, plan)
		b.Run(fmt.Sprintf("pots=%d", pots), func(b *testing.B) {
			ratio(b,
				func() {
					if err := planfile.Check(plan); err != nil {
						b.Fatal(err)
					}
				},
				func() {
					var bare any
					if err := yaml.Unmarshal(text, &bare); err != nil {
						b.Fatal(err)
					}
				})
		})
	}
}

func mustEncode(t testing.TB, plan *planner.Plan) []byte {
	text, err := planfile.Encode(plan)
	if err != nil {
		t.Fatal(err)
	}
	return text
}

func mustDecode(t testing.TB, text []byte) *planfile.Document {
	d, err := planfile.Decode(text)
	if err != nil {
		t.Fatal(err)
	}
	return d
}

// The largest plan that we promise fits the limits: New reads it back.
func TestTenThousandPotsFit(t *testing.T) {
	if testing.Short() || planfile.UnderRace {
		t.Skip("takes a second")
	}
	t.Parallel()
	d, err := planfile.New(bigPlan(10_000))
	if err != nil {
		t.Fatal(err)
	}
	if size := len(d.Text()); size > planfile.MaxBytes/2 {
		t.Errorf("it takes %d bytes of %d", size, planfile.MaxBytes)
	}
}
