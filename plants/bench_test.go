package plants_test

import (
	"fmt"
	"strings"
	"testing"
	"time"

	"fourturn/plants"
)

// many returns ten thousand plants of a person's own, made from the book's.
func many(b *testing.B) []*plants.Plant {
	b.Helper()
	base := builtin(b).Plants()
	out := make([]*plants.Plant, 10_000)
	for i := range out {
		p := base[i%len(base)].Clone()
		p.ID = fmt.Sprintf("%s-%d", p.ID, i)
		for j := range p.Names {
			p.Names[j] = fmt.Sprintf("%s %d", p.Names[j], i)
		}
		out[i] = p
	}
	return out
}

// plainScan is the yardstick: looking once through every name as it stands.
func plainScan(list []*plants.Plant) int {
	found := 0
	for _, p := range list {
		for _, n := range p.Names {
			if strings.Contains(n, "salvia") {
				found++
			}
		}
		for _, n := range p.Botanical {
			if strings.Contains(n, "salvia") {
				found++
			}
		}
	}
	return found
}

var sink int

// against runs f for the benchmark and reports how many plain scans one f takes.
func against(b *testing.B, list []*plants.Plant, f func() int) {
	b.Helper()
	start := time.Now()
	const scans = 20
	for range scans {
		sink += plainScan(list)
	}
	scan := time.Since(start) / scans
	for b.Loop() {
		sink += f()
	}
	b.ReportMetric(float64(b.Elapsed())/float64(b.N)/float64(scan), "scans/op")
}

func BenchmarkFind(b *testing.B) {
	list := many(b)
	ix := plants.NewIndex(list)
	for name, query := range map[string]string{"common": "salvia", "botanical": "salvia farinacea", "several": "blue salvia 77", "misspelt": "slavia", "letter": "s"} {
		b.Run(name, func(b *testing.B) { against(b, list, func() int { return len(ix.Find(query)) }) })
	}
}

func BenchmarkNewIndex(b *testing.B) {
	list := many(b)
	against(b, list, func() int { plants.NewIndex(list); return 0 })
}

func BenchmarkFilter(b *testing.B) {
	list := many(b)
	f := plants.Filter{Seasons: []plants.Season{plants.Summer}, Colours: []plants.Colour{plants.Blue}, NotHarmfulTo: []plants.Creature{plants.Cats}}
	against(b, list, func() int { return len(f.Select(list)) })
}

func BenchmarkSorted(b *testing.B) {
	list := many(b)
	against(b, list, func() int { return len(plants.Sorted(list, plants.ByName, false)) })
}

// BenchmarkReadOwn reads an own book of ten thousand whole plants.
func BenchmarkReadOwn(b *testing.B) {
	list := many(b)
	var text strings.Builder
	text.WriteString("plants:\n")
	one := strings.TrimPrefix(whole, "plants:\n")
	for i := range list {
		text.WriteString(strings.Replace(one, "garden-aster", fmt.Sprintf("garden-aster-%d", i), 1))
	}
	data, base := []byte(text.String()), builtin(b)
	b.SetBytes(int64(len(data)))
	against(b, list, func() int {
		_, book, err := plants.ReadOwn("own.yaml", data, base)
		if err != nil {
			b.Fatal(err)
		}
		return len(book.Plants())
	})
}
