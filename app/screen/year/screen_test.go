package year_test

import (
	"errors"
	"runtime"
	"slices"
	"strings"
	"testing"
	"time"

	"fourturn/app/screen/screentest"
	"fourturn/app/screen/year"
	"fourturn/app/words"
	"fourturn/planner"
	"fourturn/planner/civil"
)

func open(t testing.TB, plan *planner.Plan, today civil.Date) (*screentest.Desk, *year.Screen) {
	t.Helper()
	d := screentest.Open(t, plan, today)
	return d, year.New(d.Session, d.Words)
}

func TestTicksAreTheFirstOfEachMonthShown(t *testing.T) {
	// The days shown begin 150 days before today: in January, August and December.
	for _, today := range []civil.Date{screentest.SummerDay, screentest.WinterDay, screentest.MayDay} {
		_, s := open(t, screentest.Example(t), today)
		first, last := s.Span()
		var got, want []civil.Date
		for _, tick := range s.Ticks() {
			got = append(got, tick.Day)
			if tick.Year != (tick.Day.YearDay() == 1) || tick.Label == "" {
				t.Errorf("%v: tick %+v", today, tick)
			}
		}
		for d := first.AddDays(1); d < last; d++ {
			if d.Day() == 1 {
				want = append(want, d)
			}
		}
		if !slices.Equal(got, want) {
			t.Errorf("%v: ticks at %v, want %v", today, got, want)
		}
	}
}

func TestRowsAreStripsWithoutGapsInTheOrderOfThePlan(t *testing.T) {
	for _, today := range []civil.Date{screentest.SummerDay, screentest.WinterDay} {
		d, s := open(t, screentest.Example(t), today)
		if s.Rows() != len(d.Plan().Pots) {
			t.Fatalf("%d rows for %d pots", s.Rows(), len(d.Plan().Pots))
		}
		for i := range s.Rows() {
			r := s.Row(i)
			if r.ID != d.Plan().Pots[i].ID || r.Label == "" || r.Detail == "" || len(r.Segments) == 0 {
				t.Errorf("row %d is %+v", i, r)
			}
			for k, seg := range r.Segments {
				if seg.From >= seg.To || seg.Label == "" || strings.Contains(seg.Label, "⟦") || seg.Season < 0 || seg.Season > 3 {
					t.Errorf("%s: segment %+v", r.ID, seg)
				}
				if k > 0 && r.Segments[k-1].To > seg.From {
					t.Errorf("%s: segment %d begins before the one before ends", r.ID, k)
				}
			}
			if len(r.Feeds) == 0 {
				t.Errorf("%s is never fed", r.ID)
			}
		}
	}
}

// ahead returns a planting that is still to come.
func ahead(t *testing.T, s *year.Screen) (row, segment int) {
	t.Helper()
	for i, seg := range s.Row(0).Segments {
		if seg.From > s.Today().AddDays(30) {
			return 0, i
		}
	}
	t.Fatal("nothing is to come")
	return 0, 0
}

func TestAMovedChangeOutIsPinnedAndCanBeUnpinned(t *testing.T) {
	d, s := open(t, screentest.Example(t), screentest.SummerDay)
	row, segment := ahead(t, s)
	free := s.Row(row).Segments[segment]
	day := free.From.AddDays(9)
	if err := s.Move(row, segment, day); err != nil {
		t.Fatal(err)
	}
	if got, want := d.UndoName(), "move Autumn in Door pot, left"; got != want {
		t.Errorf("the undo is called %q, want %q", got, want)
	}
	d.Settle()
	pinned := s.Row(row).Segments[segment]
	if pinned.From != day || !pinned.Pinned {
		t.Fatalf("moved to %v the planting is %+v", day, pinned)
	}
	if told := s.Tell(row, segment); !told.Pinned || !strings.HasSuffix(told.Why, "The day that was pinned") {
		t.Errorf("told %+v", told)
	}
	if err := s.Unpin(row, segment); err != nil {
		t.Fatal(err)
	}
	if got, want := d.UndoName(), "unpin Autumn in Door pot, left"; got != want {
		t.Errorf("the undo is called %q, want %q", got, want)
	}
	d.Settle()
	if again := s.Row(row).Segments[segment]; again.From != free.From || again.Pinned {
		t.Errorf("unpinned, the planting is %+v, was %+v", again, free)
	}
	revision := d.Revision()
	if err := s.Unpin(row, segment); err != nil || d.Revision() != revision {
		t.Errorf("unpinning what is not pinned: %v", err)
	}
}

func TestWhatCannotBeMovedIsRefused(t *testing.T) {
	d, s := open(t, screentest.Example(t), screentest.SummerDay)
	row, segment := ahead(t, s)
	first, last := s.Span()
	revision := d.Revision()
	for _, day := range []civil.Date{first.AddDays(-1), last, 0} { // the strips reach further than what is planned
		var refusal *words.Refusal
		if err := s.Move(row, segment, day); !errors.As(err, &refusal) || strings.Contains(refusal.Text, "⟦") {
			t.Errorf("moved to %v: %v", day, err)
		}
	}
	for _, place := range [][2]int{{-1, 0}, {0, -1}, {99, 0}, {0, 99}} {
		if err := s.Move(place[0], place[1], screentest.SummerDay); err != nil {
			t.Errorf("moved at %v: %v", place, err)
		}
		if err := s.Unpin(place[0], place[1]); err != nil {
			t.Errorf("unpinned at %v: %v", place, err)
		}
		if told := s.Tell(place[0], place[1]); told.Title != "" {
			t.Errorf("told %+v of %v", told, place)
		}
	}
	if d.Revision() != revision {
		t.Error("a refused move changed the plan")
	}
}

func TestAChangeOutThatHappenedStays(t *testing.T) {
	d, s := open(t, screentest.Example(t), screentest.SummerDay)
	d.Edit(func(p *planner.Plan) {
		*p = p.WithEntry(planner.Entry{ID: "x", Date: screentest.SummerDay.AddDays(-10), Kind: planner.Planted, Pots: []string{"door-left"}, Season: planner.Summer})
	})
	for i, seg := range s.Row(0).Segments {
		if !seg.Happened {
			continue
		}
		if seg.From != screentest.SummerDay.AddDays(-10) {
			t.Errorf("the log says otherwise than %v", seg.From)
		}
		var refusal *words.Refusal
		if err := s.Move(0, i, screentest.SummerDay); !errors.As(err, &refusal) {
			t.Errorf("what happened was moved: %v", err)
		}
		return
	}
	t.Error("the logged change-out is not shown")
}

func TestRiskIsChosenByName(t *testing.T) {
	d, s := open(t, screentest.Example(t), screentest.SummerDay)
	names, chosen := s.Risks()
	if chosen != 0 || !slices.Equal(names, []string{"cautious 10%", "even 50%", "bold 90%"}) {
		t.Errorf("risks %v, chosen %d", names, chosen)
	}
	revision := d.Revision()
	for _, i := range []int{0, -1, 3} { // the one that is chosen, and none
		if err := s.SetRisk(i); err != nil || d.Revision() != revision {
			t.Errorf("risk %d: %v", i, err)
		}
	}
	before := s.Row(0).Segments
	if err := s.SetRisk(2); err != nil {
		t.Fatal(err)
	}
	if got := d.UndoName(); got != "change the appetite for risk" {
		t.Errorf("the undo is called %q", got)
	}
	d.Settle()
	if _, chosen := s.Risks(); chosen != 2 || s.Risk() != "Caught by a freeze in 90% of years" {
		t.Errorf("chosen %d, %q", chosen, s.Risk())
	}
	moved := false
	for i, seg := range s.Row(0).Segments {
		moved = moved || i < len(before) && seg.From != before[i].From
	}
	if !moved {
		t.Error("a bold year is like a cautious one")
	}
	d.Edit(func(p *planner.Plan) { p.Risk = 0.25 })
	if _, chosen := s.Risks(); chosen != -1 {
		t.Errorf("a risk without a name is %d", chosen)
	}
}

func TestAnEmptyPlanHasNoRows(t *testing.T) {
	_, s := open(t, screentest.Empty(), screentest.SummerDay)
	if !s.Known() || s.Rows() != 0 || s.Tell(0, 0).Title != "" {
		t.Error("an empty plan has rows")
	}
}

func TestTheYearWaitsForItsOutlook(t *testing.T) {
	d := screentest.Waiting(t, screentest.Example(t), screentest.SummerDay)
	s := year.New(d.Session, d.Words)
	if s.Known() || s.Rows() != 0 || len(s.Ticks()) != 0 || !s.Today().IsZero() {
		t.Error("the year is known before it is worked out")
	}
	if s.Move(0, 0, screentest.SummerDay) != nil || s.Unpin(0, 0) != nil || s.Tell(0, 0).Title != "" {
		t.Error("a year that is not there was changed")
	}
	if s.Risk() == "" {
		t.Error("the risk is the plan's and always known")
	}
}

func TestARowCostsTheSameInALargePlan(t *testing.T) {
	_, few := open(t, screentest.Many(t, 10), screentest.SummerDay)
	_, many := open(t, screentest.Many(t, 300), screentest.SummerDay)
	small := testing.AllocsPerRun(20, func() { few.Row(0) })
	large := testing.AllocsPerRun(20, func() { many.Row(290) })
	if large > small*1.5+5 {
		t.Errorf("a row takes %.0f allocations of 300 pots, %.0f of 10", large, small)
	}
}

// The time of a row of 1,000 pots over that of a row of 10 must stay near 1.
func BenchmarkRow(b *testing.B) {
	_, few := open(b, screentest.Many(b, 10), screentest.SummerDay)
	_, many := open(b, screentest.Many(b, 1000), screentest.SummerDay)
	runtime.GC() // of what opening 1,000 pots left behind
	start := time.Now()
	for i := range b.N {
		few.Row(i % 10)
	}
	small := time.Since(start)
	b.ResetTimer()
	for i := range b.N {
		many.Row(i % 1000)
	}
	b.ReportMetric(float64(b.Elapsed())/float64(small), "of_10_pots")
}
