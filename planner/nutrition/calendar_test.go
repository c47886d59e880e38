package nutrition_test

import (
	"testing"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"fourturn/planner/civil"
	"fourturn/planner/nutrition"
	"fourturn/planner/quantity"
)

func always(c quantity.Temperature) func(civil.Date) quantity.Temperature {
	return func(civil.Date) quantity.Temperature { return c }
}

func TestOpeningsFollowTheRules(t *testing.T) {
	stay := nutrition.Stay{Planted: spring, ChangeOut: spring.AddDays(100), Feeder: nutrition.MediumFeeder, FreshMix: true}
	rules := nutrition.UsualFeedRules()
	change := func(f func(*nutrition.Stay)) nutrition.Stay {
		s := stay
		f(&s)
		return s
	}
	for name, c := range map[string]struct {
		stay   nutrition.Stay
		warmth quantity.Temperature
		want   []nutrition.Span
	}{
		"starter charge": {stay, 18, []nutrition.Span{days(14, 92)}},
		"no fresh mix":   {change(func(s *nutrition.Stay) { s.FreshMix = false }), 18, []nutrition.Span{days(0, 92)}},
		"slow release":   {change(func(s *nutrition.Stay) { s.Charged = true }), 18, []nutrition.Span{days(56, 92)}},
		"covered to":     {change(func(s *nutrition.Stay) { s.Charged, s.CoveredTo = true, spring.AddDays(70) }), 18, []nutrition.Span{days(70, 92)}},
		"cut stems":      {change(func(s *nutrition.Stay) { s.Feeder = nutrition.NoFeeder }), 18, nil},
		"cold":           {stay, 4, nil},
		"dormant":        {change(func(s *nutrition.Stay) { s.DormantDays = []nutrition.Span{days(30, 39)} }), 18, []nutrition.Span{days(14, 29), days(40, 92)}},
		"too short":      {change(func(s *nutrition.Stay) { s.ChangeOut = spring.AddDays(20) }), 18, nil},
		"never planted":  {change(func(s *nutrition.Stay) { s.ChangeOut = spring }), 18, nil},
	} {
		o := nutrition.OpeningsOf(c.stay, rules, always(c.warmth))
		if diff := cmp.Diff(c.want, o.Open); diff != "" {
			t.Errorf("%s: %s", name, diff)
		}
		count := 0
		for _, s := range o.Open {
			count += int(s.Last-s.First) + 1
		}
		for _, s := range o.Closed {
			count += int(s.Last-s.First) + 1
			if s.Reason == "" {
				t.Errorf("%s: closed without a reason", name)
			}
		}
		if count != int(c.stay.ChangeOut-c.stay.Planted) {
			t.Errorf("%s: %d days of %d are told", name, count, c.stay.ChangeOut-c.stay.Planted)
		}
	}
}

// One cold night does not close a pot; a cold fortnight does.
func TestOneColdNightDoesNotClose(t *testing.T) {
	stay := nutrition.Stay{Planted: spring, ChangeOut: spring.AddDays(60), Feeder: nutrition.LightFeeder}
	dip := func(first, last int) func(civil.Date) quantity.Temperature {
		return func(d civil.Date) quantity.Temperature {
			if days(first, last).Holds(d) {
				return -2
			}
			return 12
		}
	}
	if o := nutrition.OpeningsOf(stay, nutrition.UsualFeedRules(), dip(20, 20)); len(o.Open) != 1 {
		t.Errorf("a cold night: %v", o.Open)
	}
	o := nutrition.OpeningsOf(stay, nutrition.UsualFeedRules(), dip(20, 33))
	if len(o.Open) != 2 || o.Closed[0].Reason != "nutrition.closed.cold" {
		t.Errorf("a cold fortnight: %v, %v", o.Open, o.Closed)
	}
}

func TestShareOfStrength(t *testing.T) {
	stay := nutrition.Stay{Planted: spring, ChangeOut: spring.AddDays(100), Feeder: nutrition.HeavyFeeder}
	rules := nutrition.UsualFeedRules()
	mild := nutrition.OpeningsOf(stay, rules, always(20))
	hot := nutrition.OpeningsOf(stay, rules, always(33))
	for _, c := range []struct {
		openings nutrition.Openings
		day      int
		share    float64
		reason   string
	}{
		{mild, 0, 0.5, "nutrition.weaker.young"},
		{mild, 20, 0.5, "nutrition.weaker.young"},
		{mild, 21, 1, ""},
		{hot, 21, 0.5, "nutrition.weaker.heat"},
		{hot, 5, 0.5, "nutrition.weaker.young"},
	} {
		if share, reason := c.openings.Share(spring.AddDays(c.day)); share != c.share || reason != c.reason {
			t.Errorf("day %d: %v %q, want %v %q", c.day, share, reason, c.share, c.reason)
		}
	}
}

// Joined spans hold exactly the days of their parts, in order and apart.
func TestJoinSpans(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		var parts []nutrition.Span
		for range rapid.IntRange(0, 6).Draw(t, "spans") {
			first := rapid.IntRange(0, 40).Draw(t, "first")
			parts = append(parts, days(first, first+rapid.IntRange(-1, 10).Draw(t, "length")))
		}
		joined := nutrition.JoinSpans(parts[:len(parts)/2], parts[len(parts)/2:])
		holds := func(spans []nutrition.Span, d civil.Date) bool {
			for _, s := range spans {
				if s.Holds(d) {
					return true
				}
			}
			return false
		}
		for d := spring - 2; d < spring.AddDays(60); d++ {
			if holds(parts, d) != holds(joined, d) {
				t.Fatalf("%v: %v became %v", d, parts, joined)
			}
		}
		for i := 1; i < len(joined); i++ {
			if joined[i].First <= joined[i-1].Last+1 {
				t.Fatalf("%v touch", joined)
			}
		}
	})
}

// A pot alone: feeds at the wanted interval, in turn, past a year's end and a leap day.
func TestNextFeeds(t *testing.T) {
	first := civil.MustParse("2027-12-20")
	d := nutrition.Demand{
		Interval: nutrition.Interval{Shortest: 7, Longest: 14, Wanted: 10},
		Open:     []nutrition.Span{{First: first, Last: first.AddDays(15)}, {First: civil.MustParse("2028-02-19"), Last: civil.MustParse("2028-03-10")}},
	}
	date := civil.MustParse
	want := []nutrition.Feed{
		{Date: date("2027-12-20"), Product: 0},
		{Date: date("2027-12-30"), Product: 1},
		{Date: date("2028-02-19"), Product: 0},
		{Date: date("2028-02-29"), Product: 1},
		{Date: date("2028-03-10"), Product: 0},
	}
	if diff := cmp.Diff(want, nutrition.NextFeeds(d, 2, first, 99)); diff != "" {
		t.Error(diff)
	}
	d.LastFed, d.LastProduct, d.NotBefore = date("2027-12-18"), 1, date("2027-12-31")
	want = []nutrition.Feed{{Date: date("2027-12-31"), Product: 0}, {Date: date("2028-02-19"), Product: 1}}
	if diff := cmp.Diff(want, nutrition.NextFeeds(d, 2, first, 2)); diff != "" {
		t.Error(diff)
	}
}

func TestHistory(t *testing.T) {
	at := spring.AddDays
	demand := nutrition.Demand{Pot: "urn", Interval: nutrition.Interval{Shortest: 7, Longest: 14}, Open: []nutrition.Span{days(-60, 60)}}
	for name, c := range map[string]struct {
		events    []nutrition.Event
		next      int
		lastFed   civil.Date
		notBefore civil.Date
	}{
		"in turn":             {[]nutrition.Event{{Date: at(0), Product: 0}, {Date: at(10), Product: 1}}, 0, at(10), 0},
		"entered backwards":   {[]nutrition.Event{{Date: at(10), Product: 1}, {Date: at(0), Product: 0}}, 0, at(10), 0},
		"entered twice":       {[]nutrition.Event{{Date: at(0), Product: 0}, {Date: at(0), Product: 0}}, 1, at(0), 0},
		"ticked late":         {[]nutrition.Event{{Date: at(0), Product: 0}, {Date: at(17), Product: 1}}, 0, at(17), 0},
		"skipped for rain":    {[]nutrition.Event{{Date: at(0), Product: 0}, {Date: at(9), Kind: nutrition.Skipped}}, 1, at(0), at(11)},
		"skipped, then fed":   {[]nutrition.Event{{Date: at(9), Kind: nutrition.Skipped}, {Date: at(11), Product: 0}}, 1, at(11), 0},
		"wrong product":       {[]nutrition.Event{{Date: at(0), Product: 0}, {Date: at(10), Product: 0}}, 1, at(10), 0},
		"something else":      {[]nutrition.Event{{Date: at(0), Product: 0}, {Date: at(10), Product: nutrition.AnyProduct}}, 1, at(10), 0},
		"skipped before once": {[]nutrition.Event{{Date: at(0), Product: 1}, {Date: at(9), Kind: nutrition.Skipped}, {Date: at(9), Kind: nutrition.Skipped}}, 0, at(0), at(11)},
	} {
		h := nutrition.NewHistory(c.events)
		if next, ok := h.Next(2); !ok || next != c.next {
			t.Errorf("%s: next is %d, %v, want %d", name, next, ok, c.next)
		}
		d := h.Since(demand, 2, 2)
		if d.LastFed != c.lastFed || d.NotBefore != c.notBefore || (d.LastProduct+1)%2 != c.next {
			t.Errorf("%s: %+v", name, d)
		}
	}
	if _, ok := nutrition.NewHistory(nil).Next(2); ok {
		t.Error("a pot that had nothing has a next product")
	}
	found := nutrition.NewHistory([]nutrition.Event{{Date: at(0), Product: 0}, {Date: at(3), Product: 0}, {Date: at(13), Product: 1}}).Findings("urn", demand.Interval, 2, at(0))
	if len(found) != 2 || found[0].Code != "nutrition.fed_too_soon" || found[1].Code != "nutrition.turn_broken" {
		t.Errorf("two of one after three days: %+v", found)
	}
}

// A year lived through: each round is ticked, late, skipped or fed wrongly, and the
// plan is made anew. The product that a pot meets never repeats but where the wrong
// one was used, and no two feeds come closer than the shortest interval.
func TestLifeDoesNotDoubleAFeed(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		interval := nutrition.Interval{Shortest: 7, Longest: 10}
		events := make([][]nutrition.Event, 3)
		today := spring
		for range 8 {
			demands := make([]nutrition.Demand, len(events))
			for i := range demands {
				d := nutrition.Demand{Pot: string(rune('a' + i)), Interval: interval, Open: []nutrition.Span{days(5*i, 300)}}
				demands[i] = nutrition.NewHistory(events[i]).Since(d, 2, 1)
			}
			plan := nutrition.PlanRounds(demands, nutrition.RoundRules{First: today, Last: today.AddDays(25), Products: 2, Effort: 50_000})
			if len(plan.Rounds) == 0 {
				t.Fatalf("nothing is due from %v on", today)
			}
			round := plan.Rounds[0]
			late := rapid.IntRange(0, 3).Draw(t, "late")
			skipped := rapid.IntRange(0, 5).Draw(t, "skip") == 0
			wrong := rapid.IntRange(0, 7).Draw(t, "wrong") == 0
			for _, pot := range round.Pots {
				e := nutrition.Event{Date: round.Date.AddDays(late), Product: round.Product}
				if skipped {
					e.Kind = nutrition.Skipped
				} else if wrong {
					e.Product = 1 - e.Product
				}
				feeds := nutrition.NewHistory(events[pot]).Feeds()
				if n := len(feeds); n > 0 && !skipped {
					if last := feeds[n-1]; int(e.Date-last.Date) < interval.Shortest || !wrong && last.Product == e.Product {
						t.Fatalf("pot %d: %+v after %+v", pot, e, last)
					}
				}
				events[pot] = append(events[pot], e)
			}
			today = round.Date.AddDays(late + 1)
		}
	})
}
