package planner_test

import (
	"testing"

	"fourturn/planner"
	"fourturn/planner/civil"
	"fourturn/planner/climate"
	"fourturn/planner/climate/climatetest"
	"fourturn/planner/quantity"
)

func ptr[T any](x T) *T { return &x }

// A daily record lives on in the plan: the dates that follow are those of the record
// itself.
func TestARecordLivesInThePlan(t *testing.T) {
	r := climatetest.Record(t, "USW00094728")
	d, err := r.Digest("central park.csv", false, 0)
	if err != nil {
		t.Fatal(err)
	}
	plan := yard()
	plan.Sites[0] = planner.Site{ID: "home", Latitude: ptr(40.78), Longitude: ptr(-73.97), Record: d}
	whole, err := climate.New(climate.Input{Record: r, Place: &climate.Place{Latitude: 40.78, Longitude: -73.97}})
	if err != nil {
		t.Fatal(err)
	}
	site := planner.WorkOut(&plan, reference(t), today).Sites[0]
	if !site.Known || site.Estimated {
		t.Fatalf("the site's climate: %+v", site)
	}
	for i, want := range []climate.FreezeDate{whole.LastFreeze(0, climate.Cautious), whole.FirstFreeze(0, climate.Cautious)} {
		if got := site.Figures[i].Value.Date.MonthDay(); got != want.Day {
			t.Errorf("freeze %v, of the record %v", got, want.Day)
		}
	}
}

// What is nearer to the person wins, and a place without a station takes the nearest.
func TestWhatASiteIsMadeFrom(t *testing.T) {
	frost := planner.FrostDates{Last: civil.MustParseMonthDay("05-20"), First: civil.MustParseMonthDay("09-20"), Odds: 0.1}
	warm := []planner.MonthMeans{
		{Month: "jan", Tmin: ptr(quantity.Temperature(10))}, {Month: "jul", Tmin: ptr(quantity.Temperature(22)), Tmax: ptr(quantity.Temperature(30))},
	}
	figures := func(site planner.Site) planner.SiteOutlook {
		plan := yard()
		site.ID = "home"
		plan.Sites[0] = site
		return planner.WorkOut(&plan, reference(t), today).Sites[0]
	}
	plain := figures(planner.Site{Station: desMoines})
	placed := figures(planner.Site{Latitude: ptr(41.5), Longitude: ptr(-93.7)})
	if placed.Place != plain.Place || placed.Elevation != plain.Elevation {
		t.Errorf("a place near the station gets %s at %v", placed.Place, placed.Elevation)
	}
	if got := figures(planner.Site{Station: desMoines, Frost: frost}).Figures[0].Value.Date.MonthDay(); got != frost.Last {
		t.Errorf("the last freeze at 10 %% is %v, typed %v", got, frost.Last)
	}
	if got := figures(planner.Site{Station: desMoines, Means: warm}); !got.Estimated || got.Low[0] < 7 || got.Source.Status != "estimated" {
		t.Errorf("typed means give %v in January, estimated %v", got.Low[0], got.Estimated)
	}
	height := plain.Elevation + 1000
	steep := figures(planner.Site{Station: desMoines, Elevation: &height, LapseRate: 10})
	if d := plain.Low[0] - steep.Low[0]; d < 9.99 || d > 10.01 {
		t.Errorf("a kilometre higher at 10 K/km it is colder by %v", d)
	}
	near := climate.NearestFreeze(climate.Place{Latitude: 41.5, Longitude: -93.7}, 5)[4].Station
	dated := figures(planner.Site{Station: desMoines, FreezeStation: near.ID})
	if dated.Estimated || dated.Figures[0].Value.Date == plain.Figures[0].Value.Date && dated.Figures[1].Value.Date == plain.Figures[1].Value.Date {
		t.Errorf("the dates of %s change nothing", near.Name)
	}
}

// Own data that cannot be are told by their place in the plan.
func TestFaultyOwnDataAreFindings(t *testing.T) {
	plan := yard()
	plan.Sites[0].Means = []planner.MonthMeans{{Month: "mar", Tmin: ptr(quantity.Temperature(9)), Tmax: ptr(quantity.Temperature(3))}, {Month: "apr", Tmin: ptr(quantity.Temperature(5))}}
	o := planner.WorkOut(&plan, reference(t), today)
	if o.Sites[0].Known {
		t.Error("the site has a climate all the same")
	}
	for _, f := range o.Findings {
		if f.Code == "climate.tmin_above_tmax" && f.Where[1] == "home" && f.Args[0].Name == "month" && f.Args[0].Value.Number == 3 {
			return
		}
	}
	t.Errorf("findings %v", o.Findings)
}
