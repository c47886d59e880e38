package rotation_test

import (
	"fmt"
	"testing"
	"time"

	"fourturn/planner/civil"
	"fourturn/planner/quantity"
	"fourturn/planner/rotation"
)

// manyPlants makes 160 plants that differ a little, in the proportions of a plant
// book: cool and warm annuals, some perennials, some cut stems.
func manyPlants(t testing.TB, from civil.Date, days int) []rotation.Planting {
	known := plantsOf(t, from, days, false)
	names := []string{"pansy", "snapdragon", "kale", "mum", "petunia", "begonia", "impatiens", "vinca", "lantana", "spruce_tips"}
	list := make([]rotation.Planting, 160)
	for i := range list {
		p := *known[names[i%len(names)]]
		p.ID = fmt.Sprintf("%s_%d", p.ID, i)
		vary := quantity.Temperature(float64(i%7)/3 - 1)
		p.Lowest, p.HeatLimit, p.PlantOut = p.Lowest+vary, p.HeatLimit-vary, p.PlantOut+vary
		p.Sizes = []rotation.Size{p.Sizes[0]}
		p.Sizes[0].Price += float64(i%5) / 2
		list[i] = single(&p)
	}
	return list
}

func benchRequest(t testing.TB) rotation.Request {
	today := civil.MustParse("2027-02-01")
	req := requestFor(t, "chicago", today, today.AddMonths(18))
	req.Candidates = manyPlants(t, today, 600)
	return req
}

// plainPass evaluates the display value once per candidate and day of the horizon.
func plainPass(req *rotation.Request) float64 {
	sum := 0.0
	for i := range req.Candidates {
		for _, v := range req.Members[0].Outlook.Curve(&req.Candidates[i], req.Today, req.Until) {
			sum += v
		}
	}
	return sum
}

// ratio times two pieces of work in turn and reports how many times longer the
// first takes.
func ratio(b *testing.B, name string, work, plain func()) {
	work()
	plain()
	var worked, plained time.Duration
	for b.Loop() {
		start := time.Now()
		work()
		worked += time.Since(start)
		start = time.Now()
		for range 10 {
			plain()
		}
		plained += time.Since(start) / 10
	}
	b.ReportMetric(float64(worked)/float64(plained), name)
	b.ReportMetric(float64(plained)/float64(b.N), "ns/plain-pass")
}

func BenchmarkOnePot160Plants18Months(b *testing.B) {
	req := benchRequest(b)
	ratio(b, "plain-passes", func() {
		if _, err := rotation.Plan(req); err != nil {
			b.Fatal(err)
		}
	}, func() { plainPass(&req) })
}
