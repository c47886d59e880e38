package work_test

import (
	"encoding/json"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"
	"time"

	"pgregory.net/rapid"

	"fourturn/planner/civil"
	"fourturn/planner/quantity"
	"fourturn/planner/work"
)

var monday = civil.MustParse("2027-05-03")

// valley is a job whose loss grows by a display day for each day off its best one.
func valley(id, place string, minutes float64, best, spread int) work.Job {
	j := work.Job{ID: id, Place: place, Minutes: minutes}
	for d := best - spread; d <= best+spread; d++ {
		j.Days = append(j.Days, work.DayLoss{Day: monday.AddDays(d), Loss: math.Abs(float64(d - best))})
	}
	return j
}

// Three pots at one door want Monday, Tuesday and Wednesday. A trip is worth three
// display days, and so one visit on Tuesday, which loses two, beats two or three.
func ExamplePlanVisits() {
	v, err := work.PlanVisits(work.VisitRequest{
		Jobs: []work.Job{valley("a", "door", 30, 0, 5), valley("b", "door", 30, 1, 5), valley("c", "door", 30, 2, 5)},
		Trip: 3,
	})
	fmt.Println(v.Visits[0].Day, v.Trips, v.Loss, v.Total, v.Exact, err)
	// Output: 2027-05-04 1 2 5 true <nil>
}

// A crew with an hour a day cannot do all three on one; the bound stays below.
func TestACrewThatIsShortOfTime(t *testing.T) {
	v, err := work.PlanVisits(work.VisitRequest{
		Jobs:     []work.Job{valley("a", "door", 30, 0, 5), valley("b", "door", 30, 1, 5), valley("c", "door", 30, 2, 5)},
		Trip:     3,
		Capacity: 60,
	})
	if err != nil {
		t.Fatal(err)
	}
	// Two trips and one pot moved by a day.
	if v.Trips != 2 || v.Loss != 1 || v.Total != 7 || !v.Exact || v.Gap() != 0 {
		t.Errorf("%+v", v)
	}
}

func anyRequest(t *rapid.T, mostJobs, mostDays int, grows, limited bool) work.VisitRequest {
	r := work.VisitRequest{Trip: rapid.Float64Range(0, 5).Draw(t, "trip"), TripMinutes: rapid.Float64Range(0, 20).Draw(t, "trip minutes")}
	if limited {
		r.Capacity = rapid.Float64Range(60, 200).Draw(t, "capacity")
	}
	n := rapid.IntRange(1, mostJobs).Draw(t, "jobs")
	for i := range n {
		j := work.Job{
			ID: fmt.Sprint(i), Place: rapid.SampledFrom([]string{"north", "south"}).Draw(t, "place"),
			Minutes: rapid.Float64Range(5, 60).Draw(t, "minutes"),
		}
		first := rapid.IntRange(0, mostDays-1).Draw(t, "first")
		last := rapid.IntRange(first, mostDays-1).Draw(t, "last")
		best := rapid.IntRange(first, last).Draw(t, "best")
		slope := rapid.Float64Range(0, 2).Draw(t, "slope")
		for d := first; d <= last; d++ {
			loss := slope * math.Abs(float64(d-best))
			if !grows {
				loss = rapid.Float64Range(0, 5).Draw(t, "loss")
			}
			j.Days = append(j.Days, work.DayLoss{Day: monday.AddDays(d), Loss: loss})
		}
		r.Jobs = append(r.Jobs, j)
	}
	return r
}

// checkVisits checks that a plan of visits is what it says.
func checkVisits(t *rapid.T, r work.VisitRequest, v *work.Visits) {
	loss, used := 0.0, make(map[civil.Date]float64)
	for i, day := range v.Assigned {
		if day.IsZero() {
			continue
		}
		at := slices.IndexFunc(r.Jobs[i].Days, func(d work.DayLoss) bool { return d.Day == day })
		if at < 0 {
			t.Fatalf("job %d is done on %v, none of its days", i, day)
		}
		loss += r.Jobs[i].Days[at].Loss
	}
	done := 0
	for _, visit := range v.Visits {
		minutes := r.TripMinutes
		for _, i := range visit.Jobs {
			if v.Assigned[i] != visit.Day || r.Jobs[i].Place != visit.Place {
				t.Fatalf("job %d is in the visit of %v to %s", i, visit.Day, visit.Place)
			}
			minutes += r.Jobs[i].Minutes
			done++
		}
		if math.Abs(minutes-visit.Minutes) > 1e-9 {
			t.Fatalf("a visit of %v minutes is said to take %v", minutes, visit.Minutes)
		}
		used[visit.Day] += minutes
	}
	for day, minutes := range used {
		if r.Capacity > 0 && minutes > r.Capacity+1e-6 {
			t.Fatalf("%v minutes of work on %v, of %v", minutes, day, r.Capacity)
		}
	}
	if done+len(v.Findings) != len(r.Jobs) {
		t.Fatalf("%d jobs done and %d findings, of %d jobs", done, len(v.Findings), len(r.Jobs))
	}
	if math.Abs(loss-v.Loss) > 1e-9 || math.Abs(v.Total-loss-r.Trip*float64(len(v.Visits))) > 1e-9 {
		t.Fatalf("loss %v, total %v with %d visits", v.Loss, v.Total, len(v.Visits))
	}
}

// bestVisits tries every assignment of all jobs; infinite where none fits.
func bestVisits(r work.VisitRequest) float64 {
	type trip struct {
		day   civil.Date
		place string
	}
	best := math.Inf(1)
	var walk func(i int, loss float64, trips map[trip]int, used map[civil.Date]float64)
	walk = func(i int, loss float64, trips map[trip]int, used map[civil.Date]float64) {
		if i == len(r.Jobs) {
			for day, minutes := range used {
				for at, jobs := range trips {
					if at.day == day && jobs > 0 {
						minutes += r.TripMinutes
					}
				}
				if r.Capacity > 0 && minutes > r.Capacity+1e-9 {
					return
				}
			}
			n := 0
			for _, jobs := range trips {
				if jobs > 0 {
					n++
				}
			}
			best = min(best, loss+r.Trip*float64(n))
			return
		}
		for _, d := range r.Jobs[i].Days {
			at := trip{d.Day, r.Jobs[i].Place}
			trips[at]++
			used[d.Day] += r.Jobs[i].Minutes
			walk(i+1, loss+d.Loss, trips, used)
			trips[at]--
			used[d.Day] -= r.Jobs[i].Minutes
		}
	}
	walk(0, 0, make(map[trip]int), make(map[civil.Date]float64))
	return best
}

func TestSmallVisitsEqualExhaustiveSearch(t *testing.T) {
	for _, c := range []struct{ grows, limited bool }{{true, false}, {false, false}, {true, true}, {false, true}} {
		rapid.Check(t, func(t *rapid.T) {
			r := anyRequest(t, 5, 6, c.grows, c.limited)
			v, err := work.PlanVisits(r)
			if err != nil {
				t.Fatal(err)
			}
			checkVisits(t, r, v)
			best := bestVisits(r)
			switch {
			case math.IsInf(best, 1):
				if len(v.Findings) == 0 {
					t.Fatal("all jobs are done, though no plan does them all")
				}
			case !v.Exact || math.Abs(v.Total-best) > 1e-6 || v.LowerBound > best+1e-6:
				t.Fatalf("total %v, bound %v, exact %v; the best possible is %v", v.Total, v.LowerBound, v.Exact, best)
			}
		})
	}
}

// Too many for a search: the plan keeps its word, and the bound stays below it.
func TestManyVisitsKeepTheirBound(t *testing.T) {
	exact := 0
	rapid.Check(t, func(t *rapid.T) {
		limited := rapid.Bool().Draw(t, "limited")
		r := anyRequest(t, 40, 20, true, limited)
		v, err := work.PlanVisits(r)
		if err != nil {
			t.Fatal(err)
		}
		checkVisits(t, r, v)
		if len(v.Findings) == 0 && v.LowerBound > v.Total+1e-6 {
			t.Fatalf("bound %v above the total %v", v.LowerBound, v.Total)
		}
		if !limited && !v.Exact {
			t.Fatalf("without a limit and with growing losses the plan is not the best: %+v", v)
		}
		if v.Exact {
			exact++
		}
	})
	if exact == 0 {
		t.Error("no plan was ever the best possible")
	}
}

// A season's round of 120 pots at twelve doors by one crew: how far from the best
// possible it is at most.
func TestGapOfASeason(t *testing.T) {
	r := season(120, 12)
	v, err := work.PlanVisits(r)
	if err != nil {
		t.Fatal(err)
	}
	t.Logf("%d trips, loss %.0f, total %.0f, at least %.0f: gap %.1f %%", v.Trips, v.Loss, v.Total, v.LowerBound, 100*v.Gap()/v.Total)
	if len(v.Findings) > 0 || v.Gap() > 0.15*v.Total {
		t.Errorf("gap %v of %v, %d findings", v.Gap(), v.Total, len(v.Findings))
	}
}

// season is change-outs of pots spread over doors, with best days a few weeks apart.
func season(pots, doors int) work.VisitRequest {
	r := work.VisitRequest{Capacity: 480, Trip: 4, TripMinutes: 40}
	labour := work.DefaultLabour()
	for i := range pots {
		minutes := labour.Minutes(work.ChangeOutWork, quantity.Volume(15+i%5*10))
		r.Jobs = append(r.Jobs, valley(fmt.Sprintf("pot %d", i), fmt.Sprintf("door %d", i%doors), minutes, 12+(i*7)%13, 10))
	}
	return r
}

func TestJobsWithoutADay(t *testing.T) {
	v, err := work.PlanVisits(work.VisitRequest{
		Jobs:       []work.Job{{ID: "never", Place: "door", Minutes: 10}, valley("long", "door", 500, 0, 3), valley("fine", "door", 50, 0, 0), valley("too many", "door", 50, 0, 0)},
		Capacity:   100,
		Capacities: map[civil.Date]float64{monday: 60},
	})
	if err != nil {
		t.Fatal(err)
	}
	var codes []string
	for _, f := range v.Findings {
		codes = append(codes, f.Code+" "+f.Where[1])
	}
	slices.Sort(codes)
	want := []string{"visits.no_days never", "visits.no_room too many", "visits.too_long long"}
	if !slices.Equal(codes, want) && !slices.Equal(codes, []string{"visits.no_days never", "visits.no_room fine", "visits.too_long long"}) {
		t.Errorf("findings %v", codes)
	}
	if v.Trips != 1 {
		t.Errorf("%d trips", v.Trips)
	}
}

func TestVisitRequestsRefused(t *testing.T) {
	for name, r := range map[string]work.VisitRequest{
		"negative trip":    {Trip: -1},
		"negative minutes": {Jobs: []work.Job{{Minutes: -1}}},
		"negative loss":    {Jobs: []work.Job{{Days: []work.DayLoss{{Day: monday, Loss: -1}}}}},
		"not a number":     {Jobs: []work.Job{{Days: []work.DayLoss{{Day: monday, Loss: math.NaN()}}}}},
		"a day twice":      {Jobs: []work.Job{{Days: []work.DayLoss{{Day: monday}, {Day: monday}}}}},
	} {
		if _, err := work.PlanVisits(r); err == nil {
			t.Errorf("%s: planned", name)
		}
	}
}

func TestNothingToDo(t *testing.T) {
	v, err := work.PlanVisits(work.VisitRequest{})
	if err != nil || v.Total != 0 || !v.Exact {
		t.Errorf("%+v, %v", v, err)
	}
}

// Every key of the visits has its English words, and no words are left over.
func TestVisitKeysHaveWords(t *testing.T) {
	text, err := os.ReadFile("../../app/words/translations/en/visits.json")
	if err != nil {
		t.Fatal(err)
	}
	var words map[string]string
	if err := json.Unmarshal(text, &words); err != nil {
		t.Fatal(err)
	}
	files, err := filepath.Glob("visits*.go")
	if err != nil {
		t.Fatal(err)
	}
	used := make(map[string]bool)
	for _, name := range files {
		code, err := os.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		if strings.HasSuffix(name, "_test.go") {
			continue
		}
		for _, match := range regexp.MustCompile(`"(visits\.[a-z0-9_.]+)"`).FindAllStringSubmatch(string(code), -1) {
			used[match[1]] = true
			if words[match[1]] == "" {
				t.Errorf("%s: %s has no words", name, match[1])
			}
		}
	}
	for key := range words {
		if !used[key] {
			t.Errorf("the words of %s are not used", key)
		}
	}
}

// A thousand change-outs at a hundred doors with four crews, against a plain pass
// over every job and day.
func BenchmarkVisitsOfAThousandPots(b *testing.B) {
	r := season(1000, 100)
	r.Capacity *= 6
	sum := 0.0
	var plain time.Duration
	start := time.Now()
	for b.Loop() {
		if _, err := work.PlanVisits(r); err != nil {
			b.Fatal(err)
		}
	}
	worked := float64(time.Since(start)) / float64(b.N)
	start = time.Now()
	const passes = 100
	for range passes {
		for _, j := range r.Jobs {
			for _, d := range j.Days {
				sum += d.Loss
			}
		}
	}
	plain = time.Since(start) / passes
	b.ReportMetric(worked/float64(plain), "plain-passes")
	if sum < 0 {
		b.Fatal(sum)
	}
}
