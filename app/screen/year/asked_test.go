package year_test

import (
	"slices"
	"testing"

	"fourturn/app/screen/screentest"
	"fourturn/app/screen/year"
	"fourturn/planner"
	"fourturn/planner/civil"
	"fourturn/planner/quantity"
)

// labels returns the pots that are shown.
func labels(s *year.Screen) (list []string) {
	for i := range s.Rows() {
		list = append(list, s.Row(i).Label)
	}
	return list
}

func TestPotsAreFoundAsOneTypes(t *testing.T) {
	_, s := open(t, screentest.Example(t), screentest.SummerDay)
	all := s.Rows()
	for _, one := range []struct {
		typed string
		want  []string
	}{
		{"door", []string{"Door pot, left", "Door pot, right", "Long trough under the window", "Urn on the steps"}}, // three stand at the door
		{"DOOR left", []string{"Door pot, left"}},
		{"barrel", []string{"Half barrel"}},
		{"coleus bowl", []string{"Wide bowl"}}, // what grows in it
		{"no such", nil},
	} {
		s.Search(one.typed)
		if got := labels(s); !slices.Equal(got, one.want) {
			t.Errorf("%q finds %q, want %q", one.typed, got, one.want)
		}
		if !s.Asked() || s.Query() != one.typed {
			t.Errorf("%q is not asked", one.typed)
		}
	}
	if s.ShowAll(); s.Rows() != all || s.Asked() {
		t.Error("not all are shown again")
	}
}

func TestPotsAreAskedForByClientPlaceAndShape(t *testing.T) {
	d, s := open(t, screentest.Example(t), screentest.SummerDay)
	if c := s.Clients(); len(c.Options) != 1 {
		t.Errorf("without clients there is %q to choose", c.Options)
	}
	d.Edit(func(p *planner.Plan) {
		p.Pots = slices.Clone(p.Pots)
		p.Pots[2].Client, p.Pots[3].Client = "Mill Lane", "Harbour"
	})
	if c := s.Clients(); !slices.Equal(c.Options, []string{"all clients", "own pots", "Harbour", "Mill Lane"}) || c.Chosen != 0 {
		t.Fatalf("clients %+v", c)
	}
	s.SetClient(2)
	if got := labels(s); !slices.Equal(got, []string{"Half barrel"}) || s.Clients().Chosen != 2 {
		t.Errorf("at the Harbour: %q", got)
	}
	s.SetClient(1)
	if got := s.Rows(); got != len(d.Plan().Pots)-2 {
		t.Errorf("%d own pots", got)
	}
	s.SetClient(0)
	if c := s.Places(); !slices.Equal(c.Options, []string{"all places", "Cafe door, south wall", "Workshop bench", "North arch"}) {
		t.Fatalf("places %q", c.Options)
	}
	s.SetPlace(3)
	for i := range s.Rows() {
		if s.Row(i).Detail != "North arch" {
			t.Errorf("%q stands elsewhere", s.Row(i).Label)
		}
	}
	shapes := s.Shapes()
	if len(shapes.Options) < 3 {
		t.Fatalf("shapes %q", shapes.Options)
	}
	s.ShowAll()
	count := 0
	for i := 1; i < len(shapes.Options); i++ {
		s.SetShape(i)
		if s.Rows() == 0 || s.Shapes().Chosen != i {
			t.Errorf("no pot is %s", shapes.Options[i])
		}
		count += s.Rows()
	}
	if count != len(d.Plan().Pots) {
		t.Errorf("the shapes hold %d pots", count)
	}
}

// Two sites can be asked for each as a whole.
func TestASiteIsAskedForWithItsSpots(t *testing.T) {
	d, s := open(t, screentest.Example(t), screentest.SummerDay)
	d.Edit(func(p *planner.Plan) {
		p.Sites = append(slices.Clone(p.Sites), planner.Site{ID: "far", Name: "Far", Station: p.Sites[0].Station})
		p.Spots = append(slices.Clone(p.Spots), planner.Spot{ID: "gate", Site: "far"})
		p.Pots = slices.Clone(p.Pots)
		p.Pots[5].Spot = "gate"
	})
	c := s.Places()
	at := slices.Index(c.Options, "Far")
	if at < 0 || !slices.Contains(c.Options, "Far: gate") {
		t.Fatalf("places %q", c.Options)
	}
	s.SetPlace(at)
	if got := labels(s); !slices.Equal(got, []string{d.Plan().Pots[5].Name}) {
		t.Errorf("at the far site: %q", got)
	}
	s.Choose(0)
	if s.SiteName() != "Far" || s.Sky().Name != "Far" {
		t.Errorf("the weather is that of %q", s.SiteName())
	}
}

// A move goes to the pot that is shown, not to the one of the same number in the plan.
func TestAMoveOfAFoundPotIsItsOwn(t *testing.T) {
	d, s := open(t, screentest.Example(t), screentest.SummerDay)
	s.Search("half barrel")
	for k, segment := range s.Row(0).Segments {
		if segment.From > s.Today().AddDays(30) {
			if err := s.Pin(0, k); err != nil {
				t.Fatal(err)
			}
			break
		}
	}
	d.Settle()
	for i, p := range d.Plan().Pots {
		for _, planting := range p.Plantings {
			if pinned := !planting.Start.IsZero(); pinned != (p.Name == "Half barrel" && planting.Season == planner.Autumn) {
				t.Errorf("pot %d, %s: pinned %v", i, planting.Season, pinned)
			}
		}
	}
	if s.Rows() != 1 || s.RowOf(d.Plan().Pots[0].ID) != -1 {
		t.Error("after the edit other pots are shown")
	}
}

func TestTheSkyHasOneValueForEachDay(t *testing.T) {
	for _, today := range []civil.Date{screentest.SummerDay, civil.MustParse("2028-02-29")} {
		_, s := open(t, screentest.Example(t), today)
		first, last := s.Span()
		sky := s.Sky()
		if n := int(last - first); len(sky.Low) != n || len(sky.High) != n || len(sky.Freeze) != n {
			t.Fatalf("%v: %d days, %d values", today, n, len(sky.Low))
		}
		low, high := slices.Min(sky.Low), slices.Max(sky.High)
		if sky.Values[0] > low || sky.Values[len(sky.Values)-1] < high || !slices.Contains(sky.Labels, "0 °C") {
			t.Errorf("the scale %v does not hold %v to %v", sky.Values, low, high)
		}
		reading := s.Reading(civil.MustParse("2028-02-29"))
		if len(reading) != 3 || reading[0] != "29 Feb" {
			t.Errorf("read %q", reading)
		}
	}
}

func TestTheSkyReadsInThePersonsUnits(t *testing.T) {
	plan := screentest.Example(t)
	plan.Units = quantity.USCustomary
	_, s := open(t, plan, screentest.SummerDay)
	if sky := s.Sky(); !slices.Contains(sky.Labels, "32 °F") {
		t.Errorf("scale %q", sky.Labels)
	}
	if got := s.Reading(screentest.SummerDay)[1]; got != "62 °F to 82 °F" {
		t.Errorf("read %q", got)
	}
}

func TestWeeksAreMondays(t *testing.T) {
	_, s := open(t, screentest.Example(t), screentest.SummerDay)
	first, last := s.Span()
	weeks := s.Weeks()
	if weeks[0].Day >= first.AddDays(7) || weeks[len(weeks)-1].Day < last.AddDays(-7) {
		t.Errorf("weeks from %v to %v", weeks[0].Day, weeks[len(weeks)-1].Day)
	}
	for _, w := range weeks {
		if w.Day.Weekday().String() != "Monday" {
			t.Errorf("%v is no Monday", w.Day)
		}
	}
}
