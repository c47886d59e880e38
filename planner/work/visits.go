package work

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"fourturn/planner/civil"
	"fourturn/planner/finding"
	"fourturn/planner/working"
)

// Job is work on one pot that wants a day.
type Job struct {
	ID      string
	Place   string  // the place or client that a trip goes to
	Minutes float64 // of one crew
	Days    []DayLoss
}

// DayLoss is a day on which a job may be done, and the display days that it loses
// against the best one.
type DayLoss struct {
	Day  civil.Date
	Loss float64
}

// VisitRequest asks for visit days.
type VisitRequest struct {
	Jobs []Job
	// Capacity is the crew's minutes a day; 0 sets no limit. Capacities holds other
	// limits of single days; 0 there means that no work is done.
	Capacity   float64
	Capacities map[civil.Date]float64
	// Trip is what a trip to a place is held to be worth, in display days.
	Trip        float64
	TripMinutes float64 // of the crew's day that a trip takes
}

// Visits are the days chosen, with how good they are at least.
type Visits struct {
	Visits   []Visit      // in the order of days, and of places within a day
	Assigned []civil.Date // by job; zero where no day could be found
	Loss     float64      // display days lost by all jobs against their best days
	Trips    int
	Total    float64 // loss and trips, in display days
	// LowerBound is what no plan of visits can fall below. It counts all jobs that
	// have a day at all; where some found none the two do not compare.
	LowerBound float64
	Exact      bool // the total is the best possible
	Findings   []finding.Finding

	request *VisitRequest
}

// Visit is one trip to a place.
type Visit struct {
	Day     civil.Date
	Place   string
	Jobs    []int // positions in the request
	Minutes float64
}

// Gap is how far the total is from the best possible, at most, in display days.
func (v *Visits) Gap() float64 { return max(0, v.Total-v.LowerBound) }

func (r *VisitRequest) check() error {
	if r.Capacity < 0 || r.Trip < 0 || r.TripMinutes < 0 {
		return fmt.Errorf("a capacity or a trip is negative")
	}
	for _, j := range r.Jobs {
		if j.Minutes < 0 {
			return fmt.Errorf("%s takes %g minutes", j.ID, j.Minutes)
		}
		seen := make(map[civil.Date]bool)
		for _, d := range j.Days {
			if !(d.Loss >= 0) || math.IsInf(d.Loss, 1) || d.Day.IsZero() {
				return fmt.Errorf("%s loses %g on %v", j.ID, d.Loss, d.Day)
			}
			if seen[d.Day] {
				return fmt.Errorf("%s names %v twice", j.ID, d.Day)
			}
			seen[d.Day] = true
		}
	}
	return nil
}

// PlanVisits chooses the days. An error names the first fault in the data; a job that
// finds no day is a finding.
func PlanVisits(req VisitRequest) (*Visits, error) {
	if err := req.check(); err != nil {
		return nil, err
	}
	p := newVisitProblem(&req)
	best, bound, exact := p.solve()
	return p.tell(best, bound, exact), nil
}

// visitProblem is a request by numbers: of jobs, of the days that any job may use,
// and of places.
type visitProblem struct {
	req     *VisitRequest
	days    []civil.Date
	limit   []float64   // by day: minutes; infinite without a limit
	loss    [][]float64 // by job and day; infinite where it may not be done
	minutes []float64   // by job
	place   []int       // by job
	places  []string
	jobs    []int   // those that have a day at all
	never   []int   // those that have none
	byPlace [][]int // jobs of each place
}

func newVisitProblem(req *VisitRequest) *visitProblem {
	p := &visitProblem{req: req}
	for _, j := range req.Jobs {
		for _, d := range j.Days {
			p.days = append(p.days, d.Day)
		}
		p.places = append(p.places, j.Place)
	}
	slices.Sort(p.days)
	p.days = slices.Compact(p.days)
	slices.Sort(p.places)
	p.places = slices.Compact(p.places)
	p.byPlace = make([][]int, len(p.places))
	for _, day := range p.days {
		p.limit = append(p.limit, req.limit(day))
	}
	for i := range req.Jobs {
		p.addJob(i)
	}
	return p
}

func (r *VisitRequest) limit(day civil.Date) float64 {
	if limit, ok := r.Capacities[day]; ok {
		return limit
	}
	if r.Capacity == 0 {
		return math.Inf(1)
	}
	return r.Capacity
}

func (p *visitProblem) addJob(i int) {
	job := &p.req.Jobs[i]
	loss := make([]float64, len(p.days))
	for d := range loss {
		loss[d] = math.Inf(1)
	}
	place, _ := slices.BinarySearch(p.places, job.Place)
	can := false
	for _, d := range job.Days {
		k, _ := slices.BinarySearch(p.days, d.Day)
		if job.Minutes+p.req.TripMinutes <= p.limit[k]+tiny && p.limit[k] > 0 {
			loss[k], can = d.Loss, true
		}
	}
	p.loss = append(p.loss, loss)
	p.minutes = append(p.minutes, job.Minutes)
	p.place = append(p.place, place)
	if !can {
		p.never = append(p.never, i)
		return
	}
	p.jobs = append(p.jobs, i)
	p.byPlace[place] = append(p.byPlace[place], i)
}

// solve returns the best assignment found, by job and -1 for none, a lower bound on
// the best possible, and whether the two are known to meet.
func (p *visitProblem) solve() (best []int, bound float64, exact bool) {
	best, bound, exact = p.unlimited()
	fits := p.fits(best)
	if exact && fits {
		return best, bound, true
	}
	if !fits {
		p.repair(best)
	}
	p.improve(best)
	if len(p.jobs) <= searchJobs {
		if found, done := p.search(best); done && p.complete(found) {
			return found, p.total(found), true
		}
	}
	if !p.complete(best) {
		return best, bound, false
	}
	bound = max(bound, p.lagrange(p.total(best)))
	return best, bound, p.total(best) <= bound+tiny
}

// tiny is what sums of the same losses may differ by in another order.
const tiny = 1e-9

func (p *visitProblem) tell(assigned []int, bound float64, exact bool) *Visits {
	v := &Visits{request: p.req, Assigned: make([]civil.Date, len(p.req.Jobs)), LowerBound: bound, Exact: exact}
	at := make(map[[2]int]int)
	for _, i := range p.jobs {
		d := assigned[i]
		if d < 0 {
			v.Findings = append(v.Findings, p.unplaced("visits.no_room", i))
			continue
		}
		v.Assigned[i] = p.days[d]
		v.Loss += p.loss[i][d]
		k, ok := at[[2]int{d, p.place[i]}]
		if !ok {
			k = len(v.Visits)
			at[[2]int{d, p.place[i]}] = k
			v.Visits = append(v.Visits, Visit{Day: p.days[d], Place: p.places[p.place[i]], Minutes: p.req.TripMinutes})
		}
		v.Visits[k].Jobs = append(v.Visits[k].Jobs, i)
		v.Visits[k].Minutes += p.minutes[i]
	}
	for _, i := range p.never {
		v.Findings = append(v.Findings, p.unplaced(p.whyNever(i), i))
	}
	slices.SortStableFunc(v.Visits, func(a, b Visit) int {
		return cmp.Or(cmp.Compare(a.Day, b.Day), cmp.Compare(a.Place, b.Place))
	})
	v.Trips = len(v.Visits)
	v.Total = v.Loss + p.req.Trip*float64(v.Trips)
	return v
}

func (p *visitProblem) unplaced(code string, i int) finding.Finding {
	job := &p.req.Jobs[i]
	return finding.Finding{
		Code: code, Severity: finding.Warning, Where: finding.Where{"jobs", job.ID},
		Args: []finding.Arg{
			{Name: "job", Value: working.Text(job.ID)},
			{Name: "minutes", Value: working.Number(job.Minutes+p.req.TripMinutes, working.Minute)},
		},
	}
}

// whyNever tells a job without good days from one that is longer than any of them.
func (p *visitProblem) whyNever(i int) string {
	if len(p.req.Jobs[i].Days) == 0 {
		return "visits.no_days"
	}
	return "visits.too_long"
}

// Working returns how the total is made up, and how good it is at least.
func (v *Visits) Working() working.Trace {
	judgement, entered := working.Source{Status: working.Judgement}, working.Source{Status: working.Entered}
	t := working.Trace{
		Name:    "visits.total",
		Formula: "total = Σ loss + c × n ≥ B",
		Result:  working.Number(v.Total, working.DisplayDay),
		Source:  judgement,
		Inputs: []working.Input{
			{Symbol: "loss", Name: "visits.loss", Value: working.Number(v.Loss, working.DisplayDay), Source: judgement},
			{Symbol: "c", Name: "visits.trip", Value: working.Number(v.request.Trip, working.DisplayDay), Source: entered},
			{Symbol: "n", Name: "visits.trips", Value: working.Number(float64(v.Trips), working.None), Source: working.Source{Status: working.Derived}},
			{Symbol: "B", Name: "visits.lower_bound", Value: working.Number(v.LowerBound, working.DisplayDay), Source: working.Source{
				Status: working.Memory, Cite: "dual ascent: Erlenkotter 1978, Operations Research 26:992-1009",
			}},
		},
		Notes: []string{"visits.note_bound"},
	}
	if v.Exact {
		t.Notes = []string{"visits.note_exact"}
	}
	return t
}
