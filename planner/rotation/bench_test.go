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

// thousandPots makes requests that all differ: in size, and so in prices, in what
// suits them, and in the change-outs that are wanted.
func thousandPots(t testing.TB, n int) []rotation.Request {
	all := benchRequest(t)
	requests := make([]rotation.Request, n)
	for i := range requests {
		req := all
		req.Members = []rotation.Member{all.Members[0]}
		req.Members[0].Plants = 0.5 + float64(i)/float64(n)
		req.Candidates = append([]rotation.Planting(nil), all.Candidates[i%40:120+i%40]...)
		req.PerYear = 3 + i%3
		requests[i] = req
	}
	return requests
}

// A hundred pots stand for a thousand: the time grows with their number.
func BenchmarkHundredDifferentPots(b *testing.B) {
	requests := thousandPots(b, 100)
	ratio(b, "plain-passes/pot", func() {
		results, errs := rotation.PlanAll(requests)
		if results[0] == nil {
			b.Fatal(errs[0])
		}
	}, func() {
		for i := range requests {
			plainPass(&requests[i])
		}
	})
}

// Ten thousand pots of which most share site, spot and wishes: twenty kinds.
func BenchmarkTenThousandPotsOfTwentyKinds(b *testing.B) {
	kinds := thousandPots(b, 20)
	requests := make([]rotation.Request, 10_000)
	for i := range requests {
		requests[i] = kinds[i%len(kinds)]
	}
	ratio(b, "plain-passes/kind", func() {
		results, errs := rotation.PlanAll(requests)
		if results[0] == nil {
			b.Fatal(errs[0])
		}
	}, func() {
		for i := range kinds {
			plainPass(&kinds[i])
		}
	})
}

// Dragging one handle in a plan of 200 pots: the pot is planned again for the day
// under the pointer and the plan's total taken anew. The frame of a 60 Hz screen is
// 16.7 ms.
func BenchmarkDragInPlanOf200Pots(b *testing.B) {
	requests := thousandPots(b, 20)
	results, _ := rotation.PlanAll(requests)
	totals := make([]float64, 200)
	for i := range totals {
		totals[i] = results[i%len(results)].Best.Value.Total
	}
	dragged := results[0]
	const changeOut = 1
	drag := dragged.StartDrag(changeOut)
	day := dragged.Best.ChangeOuts[changeOut].Day
	away, sum := 0, 0.0
	start := time.Now()
	for b.Loop() {
		away = (away + 1) % 21
		if moved, ok := drag.To(day.AddDays(away - 10)); ok {
			totals[0] = moved.Best.Value.Total
		}
		for _, total := range totals {
			sum += total
		}
	}
	perMove := float64(time.Since(start)) / float64(b.N)
	b.ReportMetric(perMove/float64(time.Second/60), "frames")
	start = time.Now()
	plainPass(&requests[0])
	b.ReportMetric(perMove/float64(time.Since(start)), "plain-passes")
}

// The cost shown at the pointer while 200 handles are moved together.
func BenchmarkCostOfMoving200Pots(b *testing.B) {
	requests := thousandPots(b, 20)
	results, _ := rotation.PlanAll(requests)
	away := 0
	start := time.Now()
	for b.Loop() {
		away = (away + 1) % 21
		for i := range 200 {
			r := results[i%len(results)]
			r.CostOfMoving(1, r.Best.ChangeOuts[1].Day.AddDays(away-10))
		}
	}
	b.ReportMetric(float64(time.Since(start))/float64(b.N)/float64(time.Second/60), "frames")
}
