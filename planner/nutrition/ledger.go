package nutrition

import (
	"math"

	"fourturn/planner/civil"
	"fourturn/planner/quantity"
	"fourturn/planner/working"
)

// GivenFeed is a feed of one pot with what was in it: given, or planned.
type GivenFeed struct {
	Date     civil.Date
	Solution Solution
	Volume   quantity.Volume // poured on the pot
	Slope    Slope           // conductivity of the product; zero takes [UsualSlope]
}

// UsualSlope is the conductivity at 100 ppm N where a product's own is not known: a
// 20 % N product (MSU Extension, table 1).
const UsualSlope Conductivity = 0.64

// Growth is a run of days on which a pot's plants grow and eat as their class does.
type Growth struct {
	Span
	Class Class
}

// Account is what is known of one pot's nutrients.
type Account struct {
	Pot       string
	Mix       quantity.Volume
	Growth    []Growth    // in order and apart; outside it nothing is needed
	Tracks    []Track     // its charges
	Feeds     []GivenFeed // in order of date
	Water     Conductivity
	Leaching  float64 // share of each watering that runs through; 0 takes the middle of [LeachingBand]
	Waterings float64 // full waterings a week; 0 takes [UsualWaterings]
}

// UsualWaterings is how often a pot in growth is watered through in a week: plants in
// full growth empty a pot in 1 to 2 days (Rutgers NJAES FS812); over a season, three
// times a week is a judgement.
const UsualWaterings = 3

// poreShare is the water that a drained mix holds, as a share of its volume: the low
// end of 60 to 70 % (greenhousegrower.com, Predicting Plant Water Uptake).
const poreShare = 0.60

// Week is one week of a pot's nutrients.
type Week struct {
	First  civil.Date
	Charge Nutrients     // given up by charges
	Feed   Nutrients     // brought by soluble feeds
	Salts  quantity.Mass // fertiliser dissolved in the week, all of it salts
	Need   Need          // of the feeder class
	Drain  Conductivity  // estimated in what runs through at the end of the week
}

// Need is the nitrogen that a pot's plants should be offered.
type Need struct{ Low, High quantity.Mass }

// Nitrogen returns the nitrogen of charge and feeds together.
func (w Week) Nitrogen() quantity.Mass { return w.Charge.N + w.Feed.N }

// Ledger is the balance of one pot, week by week.
type Ledger struct {
	Weeks   []Week
	account Account
}

// Weeks returns the balance of the pot over n weeks from a day on. Feeds and charges
// bring what they bring; the conductivity of what runs through is estimated from
// what is left in the water of the mix when plants have taken the middle of their
// need and the waterings have leached their share. The salts of the water itself are
// counted once and not as they concentrate. It panics on a pot without mix.
func (a Account) Weeks(first civil.Date, n int) Ledger {
	if !(a.Mix > 0) {
		panic("nutrition: a pot holds no mix")
	}
	l := Ledger{Weeks: make([]Week, n), account: a}
	next := 0
	for next < len(a.Feeds) && a.Feeds[next].Date < first {
		next++
	}
	keeps := a.keeps()
	pool := 0.0 // mS/cm × L above the water's own
	for i := range l.Weeks {
		w := &l.Weeks[i]
		w.First = first.AddDays(7 * i)
		end := w.First.AddDays(7)
		for _, t := range a.Tracks {
			m := t.Dissolved(w.First, end)
			n := t.Charge.Product.Analysis.In(m)
			w.Charge, w.Salts = w.Charge.Plus(n), w.Salts+m
			pool += saltOf(n.N, UsualSlope)
		}
		for ; next < len(a.Feeds) && a.Feeds[next].Date < end; next++ {
			f := a.Feeds[next]
			n := f.Solution.Brings(f.Volume)
			w.Feed, w.Salts = w.Feed.Plus(n), w.Salts+f.Solution.For(f.Volume)
			pool += saltOf(n.N, f.slope())
		}
		w.Need = a.need(w.First, end)
		pool = max(0, pool-saltOf((w.Need.Low+w.Need.High)/2, UsualSlope)) * keeps
		w.Drain = a.Water + Conductivity(pool/(a.Mix.Litres()*poreShare))
	}
	return l
}

func (f GivenFeed) slope() Conductivity {
	if f.Slope.High == 0 {
		return UsualSlope
	}
	return f.Slope.Middle()
}

// saltOf returns the salts that come with a mass of nitrogen, as conductivity × litres.
func saltOf(n quantity.Mass, slope Conductivity) float64 {
	const milligrams = 1e6
	return float64(n) * milligrams * float64(slope) / 100
}

// keeps returns the share of dissolved salts that a week's waterings leave in the pot,
// by mixing as they run through: exp(−run-through / water held).
func (a Account) keeps() float64 {
	waterings := a.Waterings
	if waterings == 0 {
		waterings = UsualWaterings
	}
	through := PourFor(a.Mix, 0, a.Leaching).RunsThrough().Litres() * waterings
	return math.Exp(-through / (a.Mix.Litres() * poreShare))
}

// need returns the nitrogen needed from a morning to another.
func (a Account) need(from, to civil.Date) Need {
	var need Need
	for _, g := range a.Growth {
		days := min(int(g.Last)+1, int(to)) - max(int(g.First), int(from))
		if days <= 0 {
			continue
		}
		litreWeeks := a.Mix.Litres() * float64(days) / 7
		need.Low += quantity.Mass(g.Class.Weekly.Low*litreWeeks) * quantity.Gram / 1000
		need.High += quantity.Mass(g.Class.Weekly.High*litreWeeks) * quantity.Gram / 1000
	}
	return need
}

// Working returns the trace of the nitrogen of a week.
func (l Ledger) Working(week int) working.Trace {
	w := l.Weeks[week]
	kg := func(m quantity.Mass) working.Value { return working.Number(float64(m), working.Kilogram) }
	return working.Trace{
		Name:    "nutrition.week_nitrogen",
		Formula: "N = charge + feeds; need: low × V to high × V",
		Inputs: []working.Input{
			{Symbol: "charge", Name: "nutrition.from_charge", Value: kg(w.Charge.N), Source: working.Source{Status: working.Estimated, Cite: activationSource.Cite}},
			{Symbol: "feeds", Name: "nutrition.from_feeds", Value: kg(w.Feed.N), Source: working.Source{Status: working.Derived}},
			{Symbol: "V", Name: "nutrition.mix_volume", Value: working.Number(l.account.Mix.Litres(), working.Litre), Source: working.Source{Status: working.Derived}},
			{Symbol: "low", Name: "nutrition.need_low", Value: kg(w.Need.Low), Source: chargeSource},
			{Symbol: "high", Name: "nutrition.need_high", Value: kg(w.Need.High), Source: working.Source{Status: working.Derived, Cite: strengthSource.Cite}},
		},
		Result: kg(w.Nitrogen()),
		Source: working.Source{Status: working.Definition},
		Notes:  []string{"nutrition.note_need_bracket"},
	}
}
