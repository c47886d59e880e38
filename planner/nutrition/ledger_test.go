package nutrition_test

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"fourturn/planner/civil"
	"fourturn/planner/nutrition"
	"fourturn/planner/quantity"
)

// potOf is a pot of a class through a season of 140 days: fed every so many days at a
// share of the class's strength, with a charge of a share of the class's rate.
func potOf(f nutrition.Feeder, mix quantity.Volume, every int, strength, charge float64) nutrition.Account {
	class := nutrition.ClassOf(f)
	a := nutrition.Account{Pot: "urn", Mix: mix, Growth: []nutrition.Growth{{Span: days(0, 139), Class: class}}}
	if charge > 0 {
		p := nutrition.SlowRelease{Analysis: nutrition.MustParseAnalysis("16-9-12"), Longevity: 4}
		rate := class.Rate(p.Analysis) * nutrition.Concentration(charge)
		thermal := nutrition.NewThermal(spring, []quantity.Temperature{21}, nutrition.UsualKinetics())
		a.Tracks = []nutrition.Track{nutrition.Follow(nutrition.Charge{Product: p, Date: spring, Mass: rate.Of(mix)}, thermal, nil)}
	}
	feed, _ := nutrition.AtStrength(nutrition.MustParseAnalysis("20-10-20"), class.Nitrogen())
	for day := 0; every > 0 && day < 140; day += every {
		a.Feeds = append(a.Feeds, nutrition.GivenFeed{
			Date: spring.AddDays(day), Solution: feed.Diluted(strength), Volume: nutrition.PourFor(mix, 0, 0).Volume,
		})
	}
	return a
}

func codes(l nutrition.Ledger) []string {
	var list []string
	for _, f := range l.Findings() {
		list = append(list, f.Code)
	}
	return list
}

func contains(list []string, code string) bool {
	for _, c := range list {
		if c == code {
			return true
		}
	}
	return false
}

// What sources call right is let pass in every class: the class's charge alone while
// it lasts, or its feeds alone at any interval of the class.
func TestBalanceLetsPassWhatSourcesCallRight(t *testing.T) {
	for _, f := range nutrition.Feeders {
		class := nutrition.ClassOf(f)
		for _, every := range []int{class.Interval.Shortest, class.Interval.Longest} {
			if got := codes(potOf(f, 10, every, 1, 0).Weeks(spring, 20)); len(got) != 0 {
				t.Errorf("%s, fed every %d days: %v", f, every, got)
			}
		}
		if got := codes(potOf(f, 10, 0, 0, 1).Weeks(spring, 12)); len(got) != 0 {
			t.Errorf("%s, charged: %v", f, got)
		}
	}
}

func TestBalanceFindsAndMends(t *testing.T) {
	for name, c := range map[string]struct {
		account nutrition.Account
		code    string
	}{
		"nothing":          {potOf(nutrition.HeavyFeeder, 10, 0, 0, 0), "nutrition.balance.little_more_feeds"},
		"weak":             {potOf(nutrition.HeavyFeeder, 10, 14, 0.4, 0), "nutrition.balance.little_more_feeds"},
		"a little weak":    {potOf(nutrition.LightFeeder, 10, 14, 0.4, 0), "nutrition.balance.little_stronger"},
		"strong":           {potOf(nutrition.LightFeeder, 10, 7, 2, 0), "nutrition.balance.much_weaker"},
		"charge and feeds": {potOf(nutrition.HeavyFeeder, 10, 7, 1.2, 1.5), "nutrition.balance.much_weaker"},
		"far too salty":    {potOf(nutrition.LightFeeder, 10, 3, 3, 0), "nutrition.balance.salty"},
		"charge alone":     {potOf(nutrition.LightFeeder, 10, 14, 0.2, 6), "nutrition.balance.much_no_feed"},
	} {
		ledger := c.account.Weeks(spring, 19)
		if got := codes(ledger); !contains(got, c.code) {
			t.Errorf("%s: %v, want %s", name, got, c.code)
			continue
		}
		for _, f := range ledger.Findings() {
			if f.Code == "nutrition.balance.much_weaker" || f.Code == "nutrition.balance.little_stronger" {
				mended := c.account
				mended.Feeds = nil
				for _, g := range c.account.Feeds {
					g.Solution = g.Solution.Diluted(arg(t, f, "share"))
					mended.Feeds = append(mended.Feeds, g)
				}
				for _, again := range mended.Weeks(civil.Date(arg(t, f, "from")), nutrition.BalanceWeeks).Findings() {
					if again.Code != "nutrition.balance.salty" {
						t.Errorf("%s: mended at %v, yet %s", name, arg(t, f, "share"), again.Code)
					}
				}
			}
		}
	}
}

// What goes in is in the weeks, once; a pot twice the size with twice as much has the
// same conductivity.
func TestLedgerLaws(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		f := rapid.SampledFrom(nutrition.Feeders[:]).Draw(t, "feeder")
		every := rapid.IntRange(3, 20).Draw(t, "every")
		strength, charge := rapid.Float64Range(0, 3).Draw(t, "strength"), rapid.Float64Range(0, 3).Draw(t, "charge")
		mix := quantity.Volume(rapid.Float64Range(0.5, 200).Draw(t, "mix"))
		small, large := potOf(f, mix, every, strength, charge), potOf(f, 2*mix, every, strength, charge)
		weeks := small.Weeks(spring, 20).Weeks
		fed, charged := 0.0, 0.0
		for i, w := range weeks {
			fed += float64(w.Feed.N)
			charged += float64(w.Charge.N)
			if big := large.Weeks(spring, 20).Weeks[i]; math.Abs(float64(big.Drain-w.Drain)) > 1e-6*(1+float64(w.Drain)) || w.Drain < 0 {
				t.Fatalf("week %d: %v in the small pot, %v in the large one", i, w.Drain, big.Drain)
			}
		}
		want := 0.0
		for _, g := range small.Feeds {
			want += float64(g.Solution.Brings(g.Volume).N)
		}
		if math.Abs(fed-want) > 1e-9*(1+want) {
			t.Fatalf("feeds bring %v, the weeks hold %v", want, fed)
		}
		want = 0
		for _, track := range small.Tracks {
			want += float64(track.Brings(spring, spring.AddDays(140)).N)
		}
		if math.Abs(charged-want) > 1e-9*(1+want) {
			t.Fatalf("charges bring %v, the weeks hold %v", want, charged)
		}
	})
}

func TestLedgerWorking(t *testing.T) {
	l := potOf(nutrition.MediumFeeder, 10, 10, 1, 0).Weeks(spring, 3)
	w := l.Working(0)
	if !near(w.Result.Number, float64(l.Weeks[0].Nitrogen()), 1e-12) || !w.Soft() {
		t.Errorf("%+v", w)
	}
}

func TestStock(t *testing.T) {
	use := func(day int, grams quantity.Mass) nutrition.Use {
		return nutrition.Use{Date: spring.AddDays(day), Mass: grams * quantity.Gram}
	}
	uses := []nutrition.Use{use(20, 300), use(0, 300), use(10, 300)}
	for name, c := range map[string]struct {
		grams   quantity.Mass
		covered int
		runsOut civil.Date
		short   quantity.Mass
	}{
		"all":     {900, 3, 0, 0},
		"a hair":  {900 * (1 - 1e-13), 3, 0, 0},
		"two":     {700, 2, spring.AddDays(20), 200},
		"none":    {0, 0, spring, 900},
		"surplus": {2000, 3, 0, 0},
	} {
		s := nutrition.StockOf(c.grams*quantity.Gram, uses, 14)
		if s.Covered != c.covered || s.RunsOut != c.runsOut || math.Abs(float64(s.Short-c.short*quantity.Gram)) > 1e-9 {
			t.Errorf("%s: %+v", name, s)
		}
		f, ok := s.Finding("a")
		if ok != (c.runsOut != 0) || ok && civil.Date(arg(t, f, "buy")) != c.runsOut.AddDays(-14) {
			t.Errorf("%s: %+v", name, f)
		}
		if math.Abs(s.Working().Result.Number-float64(s.Short)) > 0 {
			t.Errorf("%s: working %+v", name, s.Working())
		}
	}
}
