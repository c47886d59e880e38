package planner_test

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"fourturn/planner"
	"fourturn/planner/civil"
	"fourturn/planner/finding"
	"fourturn/planner/quantity"
	"fourturn/planner/vessel"
	"fourturn/plants"
)

// today is a fixed day in the middle of the growing season.
var today = civil.MustParse("2027-06-08")

func reference(t testing.TB) planner.Reference {
	t.Helper()
	book, err := plants.Builtin()
	if err != nil {
		t.Fatal(err)
	}
	return planner.Reference{Book: book}
}

// desMoines is a mid-continental site: NOAA's even (50 %) dates of 0 °C there in
// 1981-2010 are 17 April and 17 October, the early ones in spring 7 April.
const desMoines = "WMO72546"

// yard returns a plan with one pot of each of the simple shapes, planted all year.
func yard() planner.Plan {
	plantings := []planner.Planting{
		{Season: planner.Spring, Plants: []planner.Part{{Plant: "pansy", Share: 0.6}, {Plant: "sweet-alyssum", Share: 0.4}}},
		{Season: planner.Summer, Plants: []planner.Part{{Plant: "zonal-geranium"}, {Plant: "calibrachoa"}}},
		{Season: planner.Autumn, Plants: []planner.Part{{Plant: "ornamental-kale"}, {Plant: "garden-mum"}}},
		{Season: planner.Winter, Plants: []planner.Part{{Plant: "spruce-tips", Count: 5}}},
	}
	round := vessel.Spec{Kind: vessel.Round, TopDiameter: 0.40, BottomDiameter: 0.30, Height: 0.36}
	square := vessel.Spec{Kind: vessel.Square, TopWidth: 0.40, BottomWidth: 0.34, Height: 0.40}
	trough := vessel.Spec{Kind: vessel.Trough, TopLength: 0.80, TopWidth: 0.22, BottomLength: 0.74, BottomWidth: 0.17, Height: 0.22}
	pot := func(id string, spec vessel.Spec) planner.Pot {
		return planner.Pot{ID: id, Name: id, Spot: "open", Vessel: spec, Plantings: plantings}
	}
	return planner.Plan{
		Risk:  planner.DefaultRisk,
		Sites: []planner.Site{{ID: "home", Name: "Home", Station: desMoines}},
		Spots: []planner.Spot{{ID: "open", Name: "In the open", Site: "home", Light: planner.Sun}},
		Products: []planner.Product{
			{ID: "coated", Kind: planner.SlowRelease, Analysis: "14-14-14", Longevity: 3.5},
			{ID: "even", Kind: planner.Soluble, Analysis: "20-20-20"},
			{ID: "bloom", Kind: planner.Soluble, Analysis: "10-30-20"},
			{ID: "mix", Kind: planner.PottingMix, Packs: []planner.Pack{{Volume: 40, Price: 11.5}, {Volume: 75, Price: 19}}},
		},
		Feeding: planner.FeedingSettings{SlowRelease: "coated", Turn: []string{"even", "bloom"}},
		Pots:    []planner.Pot{pot("round", round), pot("square", square), pot("trough", trough)},
	}
}

func TestFourPlantingsFollowTheSite(t *testing.T) {
	plan := yard()
	o := planner.WorkOut(&plan, reference(t), today)
	// Season guidance: cool-season annuals two to five weeks before the average last
	// frost (a Pacific Northwest list), warm-season annuals from the last frost, near
	// early May in the Midwest (Chicago: early May), an autumn change two to six weeks
	// before the first frost (memory), greens before Thanksgiving (Star Tribune).
	for season, window := range map[planner.Season][2]string{
		planner.Spring: {"2028-03-10", "2028-04-17"},
		planner.Summer: {"2028-04-20", "2028-05-25"},
		planner.Autumn: {"2027-09-01", "2027-10-07"},
		planner.Winter: {"2027-10-17", "2027-11-25"},
	} {
		from, to := civil.MustParse(window[0]), civil.MustParse(window[1])
		found := false
		for _, s := range o.Pots[0].Stands {
			if s.Season == season && s.From >= from && s.From <= to {
				found = true
				if s.Earliest > s.From || s.Latest < s.From {
					t.Errorf("%s on %v lies outside its own spread %v to %v", season, s.From, s.Earliest, s.Latest)
				}
			}
		}
		if !found {
			t.Errorf("no %s change-out from %v to %v", season, from, to)
		}
	}
}

// The odds of a freeze fall from the coldest day to midsummer and rise from there.
func TestFreezeOddsFallAndRise(t *testing.T) {
	plan := yard()
	site := planner.WorkOut(&plan, reference(t), today).Sites[0]
	const february, august = 45, 212 // days of the year from 0
	for i := february; i < august-1; i++ {
		if site.Freeze[i+1] > site.Freeze[i]+1e-12 {
			t.Fatalf("the odds of a freeze still to come rise on day %d", i)
		}
	}
	for i := august; i < 364; i++ {
		if site.Freeze[i+1] < site.Freeze[i]-1e-12 {
			t.Fatalf("the odds of a freeze that has come fall on day %d", i)
		}
	}
	if site.Freeze[august] > 0.01 || site.Freeze[february] < 0.99 {
		t.Errorf("odds %v in August, %v in February", site.Freeze[august], site.Freeze[february])
	}
}

func TestVolumesAreExact(t *testing.T) {
	plan := yard()
	o := planner.WorkOut(&plan, reference(t), today)
	rim := 0.02 // of pots of this size, by default
	frustum := func(top, bottom, height float64) float64 {
		d := bottom + (top-bottom)*(height-rim)/height // at the fill line
		return math.Pi / 12 * (height - rim) * (d*d + d*bottom + bottom*bottom) * 1000
	}
	v, err := vessel.New(plan.Pots[0].Vessel)
	if err != nil {
		t.Fatal(err)
	}
	rim = float64(v.Rim())
	if got, want := o.Pots[0].Fill.Number(), frustum(0.40, 0.30, 0.36); math.Abs(got-want) > 1e-9*want {
		t.Errorf("the round pot takes %v L to its fill line, a frustum holds %v", got, want)
	}
	for _, p := range o.Pots {
		if got, want := p.Mix.Number(), p.Fill.Number()*1.15; math.Abs(got-want) > 1e-9*want {
			t.Errorf("%s: %v L of loose mix, want 15 %% more than %v", p.Pot.ID, got, p.Fill.Number())
		}
	}
}

func TestFeedsTakeTurnsByCount(t *testing.T) {
	plan := yard()
	ref := reference(t)
	o := planner.WorkOut(&plan, ref, today)
	next := firstOpen(t, o)
	if next.Product != "even" {
		t.Errorf("the first feed is with %s, the turn begins with even", next.Product)
	}
	ticked := plan.WithEntry(planner.Entry{ID: "a", Date: today, Kind: planner.Fed, Product: next.Product, Pots: []string{"round", "square", "trough"}})
	after := firstOpen(t, planner.WorkOut(&ticked, ref, today))
	if after.Product == next.Product {
		t.Errorf("after a feed with %s the next is %s again", next.Product, after.Product)
	}
	if gap := int(after.Date - today); gap < 7 || gap > 14 {
		t.Errorf("the next feed comes after %d days, want 7 to 14", gap)
	}
	wrong := plan.WithEntry(planner.Entry{ID: "a", Date: today, Kind: planner.Fed, Product: after.Product, Pots: []string{"round", "square", "trough"}})
	if back := firstOpen(t, planner.WorkOut(&wrong, ref, today)); back.Product != next.Product {
		t.Errorf("after the wrong product %s comes %s, want %s", after.Product, back.Product, next.Product)
	}
	for _, p := range planner.WorkOut(&ticked, ref, today).Pots {
		for i := 1; i < len(p.Feeds); i++ {
			if p.Feeds[i].Product == p.Feeds[i-1].Product {
				t.Errorf("%s: %s on %v and again on %v", p.Pot.ID, p.Feeds[i].Product, p.Feeds[i-1].Date, p.Feeds[i].Date)
			}
		}
	}
}

func firstOpen(t *testing.T, o *planner.Outlook) planner.Round {
	t.Helper()
	for _, r := range o.Rounds {
		if !r.Done {
			return r
		}
	}
	t.Fatal("no round is planned")
	return planner.Round{}
}

func TestAPinHoldsAndEarlyOnesAreRemarkedOn(t *testing.T) {
	plan := yard()
	day := civil.MustParse("2028-04-02")
	plan, err := plan.WithPot("round", func(p *planner.Pot) { p.Plantings[1].Start = day })
	if err != nil {
		t.Fatal(err)
	}
	o := planner.WorkOut(&plan, reference(t), today)
	pinned := false
	for _, s := range o.Pots[0].Stands {
		pinned = pinned || s.Pinned && s.From == day && s.Season == planner.Summer
	}
	if !pinned {
		t.Error("the pinned day was not kept")
	}
	if !has(o, "plan.pin_before_safe") {
		t.Error("nothing is said of summer plants on 2 April")
	}
}

func has(o *planner.Outlook, code string) bool {
	for _, f := range o.Findings {
		if f.Code == code {
			return true
		}
	}
	return false
}

func TestFaultsBecomeFindings(t *testing.T) {
	plan := yard()
	plan.Pots[0].Vessel.Height = 80 // metres
	plan.Pots[1].Spot = "nowhere"
	plan.Sites = append(plan.Sites, planner.Site{ID: "moon", Station: "none"})
	plan.Pots[2].Plantings = []planner.Planting{{Season: planner.Summer, Plants: []planner.Part{{Plant: "triffid"}}}}
	plan.Products[1].Analysis = "much"
	o := planner.WorkOut(&plan, reference(t), today)
	for _, code := range []string{"vessel.fault.range", "plan.no_spot", "plan.no_station", "plan.unknown_plant", "plan.no_analysis"} {
		if !has(o, code) {
			t.Errorf("no finding %s", code)
		}
	}
	if !o.Pots[0].Fill.IsZero() {
		t.Error("a pot of 80 m has a volume")
	}
	for i := 1; i < len(o.Findings); i++ {
		if o.Findings[i].Severity > o.Findings[i-1].Severity {
			t.Error("findings are not in order of gravity")
		}
	}
	if o.Findings[0].Severity != finding.Error {
		t.Error("the gravest finding is not an error")
	}
}

func TestAnEmptyPlan(t *testing.T) {
	o := planner.WorkOut(&planner.Plan{}, reference(t), today)
	if len(o.Findings)+len(o.Pots)+len(o.Rounds)+len(o.Due) != 0 {
		t.Errorf("an empty plan has %+v", o)
	}
}

func TestTheSouthIsHalfAYearAway(t *testing.T) {
	plan := yard()
	plan.Sites[0].Station = "WMO94865" // Melbourne
	o := planner.WorkOut(&plan, reference(t), today)
	if !o.Sites[0].Known {
		t.Fatal("the table has no such station")
	}
	summers := 0
	for _, s := range o.Pots[0].Stands {
		if m := s.From.Month(); s.Season == planner.Summer && m >= 3 && m <= 8 {
			t.Errorf("summer plants go in on %v", s.From)
		}
		if s.Season == planner.Summer {
			summers++
		}
	}
	if summers == 0 {
		t.Error("there is no summer")
	}
}

// What is worked out never contradicts itself, whatever the sizes, the risk and the day.
func TestLaws(t *testing.T) {
	ref := reference(t)
	rapid.Check(t, func(t *rapid.T) {
		plan := yard()
		plan.Risk = rapid.Float64Range(0.01, 0.99).Draw(t, "risk")
		plan.Feeding.Interval = rapid.SampledFrom([]int{0, 7, 10, 14}).Draw(t, "interval")
		spec := &plan.Pots[0].Vessel
		spec.TopDiameter = quantity.Length(rapid.Float64Range(0.08, 1.5).Draw(t, "top"))
		spec.BottomDiameter = quantity.Length(rapid.Float64Range(0.08, 1.5).Draw(t, "bottom"))
		day := civil.New(2027, 1, 1).AddDays(rapid.IntRange(0, 800).Draw(t, "day"))
		o := planner.WorkOut(&plan, ref, day)
		for _, p := range o.Pots {
			for i, s := range p.Stands {
				if s.To <= s.From {
					t.Fatalf("%s: a stand from %v to %v", p.Pot.ID, s.From, s.To)
				}
				if i > 0 && p.Stands[i-1].To != s.From {
					t.Fatalf("%s: a gap between stands on %v", p.Pot.ID, s.From)
				}
				if m := s.Mix.Number(); !(m >= 0 && m <= p.Mix.Number()+1e-9) {
					t.Fatalf("%s: a change-out takes %v L, a filling %v L", p.Pot.ID, m, p.Mix.Number())
				}
			}
		}
		for i, r := range o.Rounds {
			if i > 0 && r.Date <= o.Rounds[i-1].Date {
				t.Fatalf("rounds on %v and %v", o.Rounds[i-1].Date, r.Date)
			}
		}
	})
}

func TestWorkingsAreThere(t *testing.T) {
	plan := yard()
	o := planner.WorkOut(&plan, reference(t), today)
	p := o.Pots[0]
	for name, f := range map[string]planner.Figure{
		"brim": p.Brim, "fill": p.Fill, "mix": p.Mix, "refresh": p.Refresh, "charge": p.Charge, "dry": p.Dry, "wet": p.Wet,
		"start": p.Stands[0].Start, "stand mix": p.Stands[0].Mix, "water": firstOpen(t, o).Water, "dose": firstOpen(t, o).Dose,
	} {
		if f.IsZero() {
			t.Errorf("no figure of %s", name)
			continue
		}
		if trace := f.Working(); trace.Formula == "" || trace.Source.Status == "" || trace.Name == "" {
			t.Errorf("the working of %s has no name, formula or source: %+v", name, trace)
		}
	}
}
