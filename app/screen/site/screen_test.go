package site_test

import (
	"errors"
	"strings"
	"testing"

	"fourturn/app/screen/screentest"
	"fourturn/app/screen/site"
	"fourturn/app/words"
	"fourturn/planner"
	"fourturn/planner/civil"
	"fourturn/planner/quantity"
)

func open(t *testing.T, plan *planner.Plan) (*screentest.Desk, *site.Screen) {
	t.Helper()
	d := screentest.Open(t, plan, screentest.SummerDay)
	return d, site.New(d.Session, d.Words)
}

func refused(t *testing.T, err error) string {
	t.Helper()
	var field *words.Refusal
	if !errors.As(err, &field) {
		t.Fatalf("the error is %v", err)
	}
	if strings.Contains(field.Text, "⟦") || len([]rune(field.Text)) > 34 {
		t.Errorf("the refusal is %q", field.Text)
	}
	return field.Text
}

// slicesOf are all figures of the year's page.
func slicesOf(s *site.Screen) []site.Figure {
	all := append(append(s.Freezes(), s.Heat()...), s.Extremes()...)
	for _, m := range s.MonthRows() {
		all = append(all, m.Low, m.High, m.Daylight, m.Radiation, m.Evaporation)
	}
	return all
}

func TestASiteTellsItsYear(t *testing.T) {
	for _, plan := range []*planner.Plan{screentest.Example(t), screentest.Customary(t)} {
		_, s := open(t, plan)
		if s.Name() != "The yard" || s.Outlook() == nil || len(s.Freezes()) == 0 || len(s.Seasons()) != 4 || s.Elevation() == "" {
			t.Fatalf("site %q", s.Name())
		}
		for _, f := range slicesOf(s) {
			if f.Value == "" || strings.Contains(f.Label+f.Value, "⟦") {
				t.Errorf("figure %+v", f)
			}
		}
		for _, one := range s.Seasons() {
			if !one.Exists || one.From.IsZero() || one.Spread == "" || strings.Contains(one.Reason+one.Spread, "⟦") {
				t.Errorf("season %+v", one)
			}
		}
		if source := s.Source(); !strings.Contains(source, ".") || strings.Contains(source, "⟦") {
			t.Errorf("source %q", source)
		}
		values, labels := s.Scale()
		if len(values) != len(labels) || len(values) < 4 {
			t.Errorf("scale %v %v", values, labels)
		}
		for _, day := range []int{0, 58, 364} {
			if heading, lines := s.Reading(day); heading == "" || len(lines) != 3 {
				t.Errorf("day %d: %q %v", day, heading, lines)
			}
		}
		for _, day := range []int{-1, 365} {
			if heading, _ := s.Reading(day); heading != "" {
				t.Errorf("day %d: %q", day, heading)
			}
		}
	}
	_, s := open(t, screentest.Customary(t))
	if _, labels := s.Scale(); !strings.HasSuffix(labels[0], "0 °F") {
		t.Errorf("labels %v", labels)
	}
}

func TestStationsAreFoundByName(t *testing.T) {
	_, s := open(t, screentest.Example(t))
	for _, typed := range []string{"des moines", "DES  MOINES", "Des Moin"} {
		if found := s.Find(typed, 8); len(found) == 0 || !strings.Contains(found[0].Name, "Moines") || len(found) > 8 {
			t.Errorf("%q finds %v", typed, found)
		}
	}
	for _, typed := range []string{"", "zzzzqq"} {
		if found := s.Find(typed, 8); len(found) > 8 || typed != "" && len(found) != 0 {
			t.Errorf("%q finds %v", typed, found)
		}
	}
}

func TestAStationIsTaken(t *testing.T) {
	d, s := open(t, screentest.Example(t))
	other := s.Find("london", 1)[0]
	if err := s.SetStation(other.ID); err != nil {
		t.Fatal(err)
	}
	if got := d.UndoName(); !strings.HasPrefix(got, "take the climate of ") {
		t.Errorf("the undo is called %q", got)
	}
	if one := d.Plan().Sites[0]; one.Station != other.ID || one.Elevation != nil || one.Name != "The yard" {
		t.Errorf("site %+v", one)
	}
	revision := d.Revision()
	if err := s.SetStation("NOWHERE"); err != nil || d.Revision() != revision {
		t.Errorf("a station that is not there: %v", err)
	}
}

func TestTheFirstStationMakesASite(t *testing.T) {
	d, s := open(t, screentest.Empty())
	if names, chosen := s.Names(); s.Chosen() != nil || s.Name() != "" || len(names) != 0 || chosen != -1 || s.Outlook() != nil || s.Freezes() != nil || s.Seasons() != nil {
		t.Fatal("an empty plan has a site")
	}
	if s.SetElevation("3 m") != nil || s.SetFrost(true, "05-10") != nil || d.Dirty() {
		t.Error("a site that is not there was changed")
	}
	d.Edit(func(p *planner.Plan) { p.Pots = []planner.Pot{{ID: "a", Name: "A"}} })
	if err := s.SetStation(s.Find("london", 1)[0].ID); err != nil {
		t.Fatal(err)
	}
	if got := d.UndoName(); !strings.HasPrefix(got, "set the site to ") {
		t.Errorf("the undo is called %q", got)
	}
	plan := d.Plan()
	if len(plan.Sites) != 1 || len(plan.Spots) != 1 || plan.Pots[0].Spot != plan.Spots[0].ID || plan.Spots[0].Name != "In the open" {
		t.Errorf("sites %v, spots %v, pots %v", plan.Sites, plan.Spots, plan.Pots)
	}
	d.Settle()
	if s.Outlook() == nil {
		t.Error("the new site has no climate")
	}
}

func TestTheHeightOfTheSite(t *testing.T) {
	for _, one := range []struct {
		units       quantity.System
		typed, want string
	}{
		{quantity.Metric, "1200", "1,200 m"},
		{quantity.Metric, "1,200 m", "1,200 m"},
		{quantity.Metric, "3000 ft", "914 m"},
		{quantity.Metric, "-100 m", "-100 m"},
		{quantity.USCustomary, "5280", "5,280 ft"},
		{quantity.USCustomary, "100 m", "328 ft"},
	} {
		plan := screentest.Example(t)
		plan.Units = one.units
		d, s := open(t, plan)
		if err := s.SetElevation(one.typed); err != nil {
			t.Errorf("%q: %v", one.typed, err)
			continue
		}
		if got := d.UndoName(); got != "change the height of The yard" {
			t.Errorf("the undo is called %q", got)
		}
		d.Settle()
		if got := s.Elevation(); got != one.want {
			t.Errorf("%q is shown as %q, want %q", one.typed, got, one.want)
		}
		if err := s.SetElevation(s.Elevation()); err != nil {
			t.Errorf("%q cannot be typed again: %v", s.Elevation(), err)
		}
		if err := s.SetElevation(" "); err != nil || d.Plan().Sites[0].Elevation != nil {
			t.Errorf("back to the station: %v", err)
		}
	}
	d, s := open(t, screentest.Example(t))
	revision := d.Revision()
	for typed, want := range map[string]string{
		"high": "a number and a unit", "-500 m": "-450 m to 6,000 m", "7 km": "", "8000": "-450 m to 6,000 m", "80 kg": "“kg” is no unit of length",
	} {
		if got := refused(t, s.SetElevation(typed)); want != "" && got != want {
			t.Errorf("%q is refused with %q, want %q", typed, got, want)
		}
	}
	if d.Revision() != revision {
		t.Error("a refused height changed the plan")
	}
}

func TestFrostDaysOfOnesOwn(t *testing.T) {
	d, s := open(t, screentest.Example(t))
	before := s.Seasons()
	if last, first := s.Frost(); last+first != "" {
		t.Errorf("frost %q %q", last, first)
	}
	if err := s.SetFrost(true, " 06-10 "); err != nil || d.UndoName() != "change the frost dates of The yard" {
		t.Fatalf("%v, %q", err, d.UndoName())
	}
	if err := s.SetFrost(false, "09-01"); err != nil {
		t.Fatal(err)
	}
	if last, first := s.Frost(); last != "06-10" || first != "09-01" {
		t.Errorf("frost %q %q", last, first)
	}
	d.Settle()
	moved := false
	for i, one := range s.Seasons() {
		moved = moved || one.From != before[i].From
	}
	if !moved {
		t.Error("later frosts move no season")
	}
	if err := s.SetFrost(true, "02-29"); err != nil {
		t.Error(err)
	}
	for _, last := range []bool{true, false} {
		for _, typed := range []string{"13-01", "02-30", "5 May", "-1", "0", "2027-05-10", "80 m"} {
			if got := refused(t, s.SetFrost(last, typed)); got != "MM-DD, such as 05-10" {
				t.Errorf("%q is refused with %q", typed, got)
			}
		}
		if err := s.SetFrost(last, ""); err != nil {
			t.Error(err)
		}
	}
	if one := d.Plan().Sites[0].Frost; one != (planner.FrostDates{}) {
		t.Errorf("frost is %+v", one)
	}
}

func TestSeveralSites(t *testing.T) {
	plan := screentest.Example(t)
	plan.Sites = append(plan.Sites, planner.Site{ID: "hill", Station: "none"})
	_, s := open(t, plan)
	names, chosen := s.Names()
	if chosen != 0 || len(names) != 2 || names[1] != "hill" {
		t.Errorf("names %v, chosen %d", names, chosen)
	}
	s.Choose(1)
	if s.Name() != "hill" || s.Outlook() != nil || s.Source() != "" {
		t.Errorf("the hill has a climate: %q", s.Source())
	}
	s.Choose(-1)
	s.Choose(2)
	if s.Name() != "hill" {
		t.Errorf("chosen is %q", s.Name())
	}
}

func TestASiteBeforeItsOutlook(t *testing.T) {
	d := screentest.Waiting(t, screentest.Example(t), screentest.SummerDay)
	s := site.New(d.Session, d.Words)
	values, _ := s.Scale()
	heading, _ := s.Reading(0)
	if s.Outlook() != nil || s.Freezes() != nil || s.Seasons() != nil || s.Source() != "" || s.Elevation() != "" || values != nil || heading != "" || !s.Today().IsZero() {
		t.Error("the climate is known before it is worked out")
	}
	if s.Name() != "The yard" || len(s.Months()) != 12 {
		t.Error("the name is the plan's and always known")
	}
	d.Settle()
	if s.Today() != civil.Date(screentest.SummerDay) {
		t.Errorf("today is %v", s.Today())
	}
}
