package year_test

import (
	"slices"
	"strings"
	"testing"

	"fourturn/app/screen/screentest"
	"fourturn/app/screen/year"
	"fourturn/planner"
	"fourturn/planner/civil"
)

func TestAStoryTellsWhatWhenAndWhy(t *testing.T) {
	_, s := open(t, screentest.Example(t), screentest.SummerDay)
	story := s.Story(0)
	if story.Title != "Door pot, left" || !strings.Contains(story.About, "Cafe door") || len(story.Chapters) < 4 {
		t.Fatalf("story %+v", story)
	}
	for i, c := range story.Chapters {
		segment := s.Row(0).Segments[c.Segment]
		if segment.To <= s.Today() {
			t.Errorf("%s is past", c.Title)
		}
		if c.Title == "" || !strings.Contains(c.Plants, " × ") || c.Told.Why == "" || c.Told.Value == "" || c.Told.Start.IsZero() {
			t.Errorf("chapter %d: %+v", i, c)
		}
		if len(c.Figures) == 0 || !slices.ContainsFunc(c.Figures, func(f year.Figure) bool { return f.Label == "Fresh mix" && strings.HasSuffix(f.Value, " L") }) {
			t.Errorf("chapter %d: figures %+v", i, c.Figures)
		}
		if strings.Contains(c.Title+c.Plants+c.Told.Why, "⟦") {
			t.Errorf("chapter %d lacks words: %+v", i, c)
		}
	}
	if empty := s.Story(99); empty.Title != "" || len(empty.Chapters) != 0 {
		t.Errorf("a story of no pot: %+v", empty)
	}
}

// of returns the segment of a season that is still to come.
func of(t *testing.T, s *year.Screen, season int) int {
	t.Helper()
	for k, segment := range s.Row(0).Segments {
		if segment.Season == season && segment.From > s.Today() {
			return k
		}
	}
	t.Fatal("no such season is to come")
	return 0
}

// optionCalled returns the option with a label.
func optionCalled(t *testing.T, list []year.Option, label string) year.Option {
	t.Helper()
	at := slices.IndexFunc(list, func(o year.Option) bool { return o.Label == label })
	if at < 0 {
		t.Fatalf("no %q in %+v", label, list)
	}
	return list[at]
}

func TestAPlantingIsSwappedForAnother(t *testing.T) {
	d, s := open(t, screentest.Example(t), screentest.SummerDay)
	spring := of(t, s, 0)
	swaps := s.Swaps(0, spring)
	for _, o := range swaps {
		if o.Label == "First warmth" {
			t.Error("a planting is offered in its own place")
		}
		if o.Detail == "" {
			t.Errorf("%s does not say what is in it", o.Label)
		}
	}
	if err := s.Swap(0, spring, optionCalled(t, swaps, "Cool corner")); err != nil {
		t.Fatal(err)
	}
	if got, want := d.UndoName(), "swap for Cool corner in Door pot, left"; got != want {
		t.Errorf("the undo is called %q, want %q", got, want)
	}
	d.Settle()
	if got := s.Row(0).Segments[spring].Label; got != "Cool corner" {
		t.Errorf("now %q stands there", got)
	}
	d.Undo()
	d.Settle()
	if got := s.Row(0).Segments[spring].Label; got != "First warmth" {
		t.Errorf("taken back, %q stands there", got)
	}
}

// A recipe for sun is not offered in the shade.
func TestSwapsSuitTheLight(t *testing.T) {
	d, s := open(t, screentest.Example(t), screentest.SummerDay)
	row := s.RowOf(d.Plan().Pots[6].ID) // the wide bowl under the arch
	for k, segment := range s.Row(row).Segments {
		for _, o := range s.Swaps(row, k) {
			if o.Label == "First warmth" || o.Label == "High summer" {
				t.Errorf("%s is offered in the shade for %s", o.Label, segment.Label)
			}
		}
	}
}

func TestWhatIsRefusedIsNotOfferedAndCanBeAllowedAgain(t *testing.T) {
	d, s := open(t, screentest.Example(t), screentest.SummerDay)
	spring := of(t, s, 0)
	for _, refused := range []string{"the planting First warmth", "Snapdragon"} {
		if err := s.Refuse(0, spring, optionCalled(t, s.Refusals(0, spring), refused)); err != nil {
			t.Fatal(err)
		}
		if got, want := d.UndoName(), "refuse "+refused+" in Door pot, left"; got != want {
			t.Errorf("the undo is called %q, want %q", got, want)
		}
		d.Settle()
		story := s.Story(0)
		if !slices.Equal(story.Bans, []string{refused}) {
			t.Errorf("refused is %q", story.Bans)
		}
		if slices.ContainsFunc(s.Refusals(0, spring), func(o year.Option) bool { return o.Label == refused }) {
			t.Errorf("%s can be refused twice", refused)
		}
		at := slices.IndexFunc(story.Chapters, func(c year.Chapter) bool { return c.Segment == spring })
		if story.Chapters[at].Refused == "" {
			t.Error("it is not said that a refused planting stands")
		}
		if err := s.Swap(0, spring, optionCalled(t, s.Swaps(0, spring), "Cool corner")); err != nil {
			t.Fatal(err)
		}
		d.Settle()
		if slices.ContainsFunc(s.Swaps(0, spring), func(o year.Option) bool { return o.Label == "First warmth" }) {
			t.Errorf("with %s refused, the planting is offered", refused)
		}
		if err := s.Allow(0, 0); err != nil {
			t.Fatal(err)
		}
		d.Settle()
		if err := s.Swap(0, spring, optionCalled(t, s.Swaps(0, spring), "First warmth")); err != nil {
			t.Fatal(err)
		}
		d.Settle()
	}
	if err := s.Allow(0, 5); err != nil {
		t.Error(err)
	}
}

func TestMovingSaysWhetherADayIsSafe(t *testing.T) {
	d, s := open(t, screentest.Example(t), screentest.SummerDay)
	row, segment := ahead(t, s)
	at := s.Row(row).Segments[segment]
	for _, one := range []struct {
		day  civil.Date
		bad  bool
		want string
	}{
		{at.Earliest.AddDays(-1), true, "before the first safe day, " + d.Words.ShortDate(at.Earliest)},
		{at.From, false, "safe and sensible"},
		{at.Latest, false, "safe and sensible"},
		{at.Latest.AddDays(1), true, "after the last sensible day, " + d.Words.ShortDate(at.Latest)},
	} {
		got := s.Moving(row, segment, one.day)
		if got.Bad != one.bad || got.Title == "" || !slices.Contains(got.Lines, one.want) {
			t.Errorf("on %v: %+v, want %q", one.day, got, one.want)
		}
	}
	priced := 0
	for k, other := range s.Row(row).Segments {
		if slices.Contains(s.Moving(row, k, other.From).Lines, "costs nothing") {
			priced++
		}
	}
	if priced == 0 {
		t.Error("of no change-out it is said what moving it costs")
	}
	if m := s.Moving(99, 0, s.Today()); m.Title != "" {
		t.Errorf("of nothing it is said %+v", m)
	}
}

func TestAClientIsToldOfInTheStory(t *testing.T) {
	d, s := open(t, screentest.Example(t), screentest.SummerDay)
	d.Edit(func(p *planner.Plan) {
		p.Pots = slices.Clone(p.Pots)
		p.Pots[0].Client = "Harbour"
	})
	if got := s.Story(0).About; got != "Stands at Cafe door, south wall, for Harbour" {
		t.Errorf("about %q", got)
	}
}

// The strips are as high as the planner expects the plantings to look, and the days that
// cost little lie about each change-out.
func TestStripsKnowTheirDisplayAndGoodDays(t *testing.T) {
	_, s := open(t, screentest.Example(t), screentest.SummerDay)
	known, good := 0, 0
	for i := range s.Rows() {
		for _, segment := range s.Row(i).Segments {
			if segment.Profile != nil {
				known++
				if len(segment.Profile) != int(segment.To-segment.From) || slices.Min(segment.Profile) < 0 || slices.Max(segment.Profile) > 1 {
					t.Errorf("%s of row %d: %d days from %v to %v", segment.Label, i, len(segment.Profile), slices.Min(segment.Profile), slices.Max(segment.Profile))
				}
			}
			if !segment.GoodFrom.IsZero() {
				good++
				if segment.GoodFrom > segment.From || segment.GoodTo < segment.From {
					t.Errorf("%s of row %d: good from %v to %v, not on %v", segment.Label, i, segment.GoodFrom, segment.GoodTo, segment.From)
				}
			}
		}
	}
	if known < 30 || good < 20 {
		t.Errorf("%d strips have a display, %d good days", known, good)
	}
}
