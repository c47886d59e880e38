package nutrition

import (
	"math"
	"slices"

	"fourturn/planner/civil"
	"fourturn/planner/quantity"
)

// FeedRules say when soluble feeds are given and at which share of their strength.
type FeedRules struct {
	StarterWeeks float64              // covered by the starter charge of a fresh mix
	ChargeWeeks  float64              // covered by a slow-release charge
	StopBefore   int                  // days without feed before a change-out
	Coldest      quantity.Temperature // mean mix temperature below which nothing is fed
	HeatAbove    quantity.Temperature // mean mix temperature above which the feed is weaker
	HeatShare    float64              // of the strength in heat
	YoungDays    int                  // after planting, while the feed is weaker
	YoungShare   float64              // of the strength for the young
}

// UsualFeedRules returns the default rules.
//
//   - First feeds come after 2 to 3 weeks in a mix with a starter charge, and after 8
//     to 10 weeks with slow release (Minnesota Extension, 2018): the early ends, the
//     rest is the grace of the rounds.
//   - The last week before a change-out: common practice, no source. One label says a
//     month before frost.
//   - Below 5 °C no feed is counted: a judgement; no source gives a sharp value, and
//     pansies are fed on below 15.6 °C (UGA Extension).
//   - Half strength above a mean of 30 °C: common practice, no source.
//   - Half strength in the first three weeks: common practice, no source; seedlings
//     get 25 to 50 ppm (MSU Extension, 2024).
func UsualFeedRules() FeedRules {
	return FeedRules{
		StarterWeeks: 2, ChargeWeeks: 8, StopBefore: 7, Coldest: 5,
		HeatAbove: 30, HeatShare: 0.5, YoungDays: 21, YoungShare: 0.5,
	}
}

// Stay is what stands in a pot from one change-out to the next, as feeding sees it.
type Stay struct {
	Planted     civil.Date
	ChangeOut   civil.Date // the day it is replaced
	Feeder      Feeder     // [NoFeeder] for cut stems and bare mix
	FreshMix    bool       // planted in mix with a starter charge
	Charged     bool       // with slow release
	CoveredTo   civil.Date // a day worked out from the charge instead of its weeks; zero for none
	DormantDays []Span     // days on which the plants rest
}

// Closure is a run of days on which a pot is not fed, and why.
type Closure struct {
	Span
	Reason string // key, such as "nutrition.closed.cold"
}

// Openings are the days of a stay on which it may be fed, and the rest with reasons.
type Openings struct {
	Open   []Span
	Closed []Closure
	stay   Stay
	rules  FeedRules
	warmth func(civil.Date) quantity.Temperature
}

// OpeningsOf returns the days of a stay on which it may be fed. warmth is the mean
// temperature of the mix by day; the mean of a week is held against the rules, so
// that one cold night does not close a pot.
func OpeningsOf(s Stay, rules FeedRules, warmth func(civil.Date) quantity.Temperature) Openings {
	o := Openings{stay: s, rules: rules, warmth: warmth}
	covered := s.Planted
	if s.FreshMix {
		covered = max(covered, s.Planted.AddDays(int(math.Round(rules.StarterWeeks*7))))
	}
	switch {
	case !s.CoveredTo.IsZero():
		covered = max(covered, s.CoveredTo)
	case s.Charged:
		covered = max(covered, s.Planted.AddDays(int(math.Round(rules.ChargeWeeks*7))))
	}
	for d := s.Planted; d < s.ChangeOut; d++ {
		reason := ""
		switch {
		case !s.Feeder.Known():
			reason = "nutrition.closed.no_feeder"
		case int(s.ChangeOut-d) <= rules.StopBefore:
			reason = "nutrition.closed.change_out"
		case d < covered:
			reason = "nutrition.closed.covered"
		case slices.ContainsFunc(s.DormantDays, func(rest Span) bool { return rest.Holds(d) }):
			reason = "nutrition.closed.dormant"
		case o.week(d) < rules.Coldest:
			reason = "nutrition.closed.cold"
		}
		o.add(d, reason)
	}
	return o
}

// week is the mean temperature of the mix over the seven days around d.
func (o Openings) week(d civil.Date) quantity.Temperature {
	sum := quantity.Temperature(0)
	for k := -3; k <= 3; k++ {
		sum += o.warmth(d.AddDays(k))
	}
	return sum / 7
}

func (o *Openings) add(d civil.Date, reason string) {
	if reason == "" {
		if n := len(o.Open); n > 0 && o.Open[n-1].Last == d-1 {
			o.Open[n-1].Last = d
			return
		}
		o.Open = append(o.Open, Span{d, d})
		return
	}
	if n := len(o.Closed); n > 0 && o.Closed[n-1].Last == d-1 && o.Closed[n-1].Reason == reason {
		o.Closed[n-1].Last = d
		return
	}
	o.Closed = append(o.Closed, Closure{Span{d, d}, reason})
}

// Share returns the share of its strength that a feed on day d should have, with the
// key of the reason where it is below 1. Of two reasons the weaker feed wins.
func (o Openings) Share(d civil.Date) (share float64, reason string) {
	share = 1
	if int(d-o.stay.Planted) < o.rules.YoungDays && o.rules.YoungShare < share {
		share, reason = o.rules.YoungShare, "nutrition.weaker.young"
	}
	if o.rules.HeatShare < share && o.week(d) > o.rules.HeatAbove {
		share, reason = o.rules.HeatShare, "nutrition.weaker.heat"
	}
	return share, reason
}

// JoinSpans returns the days of several lists in order, with runs that touch or
// overlap made one: the open days of a pot from those of its stays.
func JoinSpans(lists ...[]Span) []Span {
	all := slices.Concat(lists...)
	slices.SortFunc(all, func(a, b Span) int { return int(a.First - b.First) })
	var joined []Span
	for _, s := range all {
		if s.Last < s.First {
			continue
		}
		if n := len(joined); n > 0 && s.First <= joined[n-1].Last+1 {
			joined[n-1].Last = max(joined[n-1].Last, s.Last)
			continue
		}
		joined = append(joined, s)
	}
	return joined
}
