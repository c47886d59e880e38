package main

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

// manyPots returns the example with its pots repeated until there are n.
func manyPots(n int) *planner.Plan {
	plan := *examplePlan()
	kinds := plan.Pots
	plan.Pots = make([]planner.Pot, n)
	for i := range plan.Pots {
		plan.Pots[i] = kinds[i%len(kinds)]
		plan.Pots[i].ID = fmt.Sprintf("pot-%d", i)
		plan.Pots[i].Name = fmt.Sprintf("%s %d", plan.Pots[i].Name, i)
	}
	return &plan
}

// cost is what some work took: time, and bytes of memory.
type cost struct {
	time  time.Duration
	bytes uint64
}

func (c *cost) add(work func() error) error {
	var before, after runtime.MemStats
	runtime.GC()
	runtime.ReadMemStats(&before)
	start := time.Now()
	err := work()
	c.time += time.Since(start)
	runtime.ReadMemStats(&after)
	c.bytes += after.TotalAlloc - before.TotalAlloc
	return err
}

// BenchmarkOpenWorkOutSave opens, works out and saves plans of 10 to 10,000 pots. Each
// is reported as a ratio, in time and in memory, to the bare library for YAML on the
// same bytes in the same run: opening and working out to its decoding, saving to its
// encoding.
func BenchmarkOpenWorkOutSave(b *testing.B) {
	book, _ := openBook("", nil)
	ref := planner.Reference{Book: book}
	for _, pots := range []int{10, 1_000, 10_000} {
		text, err := planfile.Encode(manyPots(pots))
		if err != nil {
			b.Fatal(err)
		}
		count := 0
		store := planfile.NewStore(b.TempDir(), todayOf(examplesDay), func() string { count++; return fmt.Sprint(count) })
		path := filepath.Join(b.TempDir(), "plan.yaml")
		b.Run(fmt.Sprintf("pots=%d", pots), func(b *testing.B) {
			var open, workOut, save, decode, encode cost
			for b.Loop() {
				var bare any
				var document *planfile.Document
				for _, one := range []struct {
					cost *cost
					work func() error
				}{
					{&decode, func() error { return yaml.Unmarshal(text, &bare) }},
					{&encode, func() error { _, err := yaml.Marshal(bare); return err }},
					{&open, func() (err error) { document, err = planfile.Decode(text); return err }},
					{&workOut, func() error { planner.WorkOut(document.Plan(), ref, examplesDay); return nil }},
					{&save, func() error { return saveEdited(store, path, document) }},
				} {
					if err := one.cost.add(one.work); err != nil {
						b.Fatal(err)
					}
				}
			}
			for name, pair := range map[string][2]cost{"open": {open, decode}, "workout": {workOut, decode}, "save": {save, encode}} {
				b.ReportMetric(float64(pair[0].time)/float64(pair[1].time), name+"-time/yaml")
				b.ReportMetric(float64(pair[0].bytes)/float64(pair[1].bytes), name+"-memory/yaml")
			}
		})
	}
}

// saveEdited saves a plan with one pot renamed.
func saveEdited(store *planfile.Store, path string, document *planfile.Document) error {
	edited := *document.Plan()
	edited.Pots = append([]planner.Pot(nil), edited.Pots...)
	edited.Pots[len(edited.Pots)/2].Name = "Renamed"
	changed, err := document.With(&edited)
	if err != nil {
		return err
	}
	stamp, err := store.StampOf(path)
	if err != nil {
		return err
	}
	_, err = store.Save(path, changed.Text(), stamp)
	return err
}

// examplesDay is the day on which the example is looked at.
var examplesDay = civil.MustParse("2027-06-08")
