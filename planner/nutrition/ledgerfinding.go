package nutrition

import (
	"math"

	"fourturn/planner/finding"
	"fourturn/planner/quantity"
	"fourturn/planner/working"
)

// BalanceWeeks is the run of weeks that is held against the need: feeds come in
// single doses, so that one week says little.
const BalanceWeeks = 4

// FlushVolumes is the water that washes salts out, in volumes of the pot (UC ANR,
// soluble salts of houseplants).
const FlushVolumes = 2

// SaltLimit returns the conductivity of what runs through above which a class is too
// salty, in mS/cm: the upper ends of NC State's leachate ranges (Horticulture
// Information Leaflet 590, 2000), from memory. Nursery targets are lower: 0.5 to 1.0
// with liquid feed (SNA guide 1997, Univ. Kentucky).
func (c Class) SaltLimit() Conductivity {
	switch c.Feeder {
	case LightFeeder:
		return 2.6
	case HeavyFeeder:
		return 4.6
	default:
		return 3.5
	}
}

// LeachateBand returns the published target for what runs through, in mS/cm (Univ.
// Kentucky, from the SNA guide 1997): with slow release alone, or with liquid feed.
func LeachateBand(slowReleaseAlone bool) Band {
	if slowReleaseAlone {
		return Band{0.2, 0.5}
	}
	return Band{0.5, 1.0}
}

// Findings reports runs of weeks in which the pot gets too little or too much
// nitrogen, or grows too salty, each once at its worst, with the change that mends
// it. A quarter more or less than the need is let pass: spoons are no better.
func (l Ledger) Findings() []finding.Finding { return l.FindingsFrom(0) }

// FindingsFrom is [Ledger.Findings] for the weeks from one on: what is past cannot be
// mended, though its salts may still be there.
func (l Ledger) FindingsFrom(week int) []finding.Finding {
	var found []finding.Finding
	worst, kind, excess := 0, 0, 0.0
	report := func() {
		if kind != 0 {
			found = append(found, l.balanceFinding(worst, kind))
		}
	}
	for i := max(0, week); i+BalanceWeeks <= len(l.Weeks); i++ {
		s := l.sum(i)
		k, by := 0, 0.0
		switch {
		case s.need.High == 0 || s.growing < BalanceWeeks:
		case s.supply() < s.need.Low*(1-SpoonError):
			k, by = -1, 1-float64(s.supply()/s.need.Low)
		case s.supply() > s.need.High*(1+SpoonError):
			k, by = 1, float64(s.supply()/s.need.High)
		}
		if k != kind {
			report()
			kind, excess = k, 0
		}
		if k != 0 && by > excess {
			worst, excess = i, by
		}
	}
	report()
	if f, ok := l.saltFinding(week); ok {
		found = append(found, f)
	}
	return found
}

// balance is the sum of a run of weeks.
type balance struct {
	charge, feed quantity.Mass // nitrogen
	need         Need
	growing      int // weeks with any need
}

func (b balance) supply() quantity.Mass { return b.charge + b.feed }

func (l Ledger) sum(first int) balance {
	var b balance
	for _, w := range l.Weeks[first : first+BalanceWeeks] {
		b.charge += w.Charge.N
		b.feed += w.Feed.N
		b.need.Low += w.Need.Low
		b.need.High += w.Need.High
		if w.Need.High > 0 {
			b.growing++
		}
	}
	return b
}

// balanceFinding reports a run of weeks with the share of their strength at which its
// feeds would bring it a quarter inside the need, or else with the extra feeds.
func (l Ledger) balanceFinding(first, kind int) finding.Finding {
	b := l.sum(first)
	aim := b.need.Low * (1 + SpoonError)
	if kind > 0 {
		aim = b.need.High * (1 - SpoonError)
	}
	share := math.Inf(1)
	if b.feed > 0 {
		share = max(0, float64((aim-b.charge)/b.feed))
	}
	class := l.classIn(first)
	oneFeed := quantity.Mass(float64(class.Nitrogen())*PourFor(l.account.Mix, 0, l.account.Leaching).Volume.Litres()) * quantity.Gram / 1000
	extra := math.Ceil(max(0, float64((aim-b.supply())/oneFeed)))
	code := "nutrition.balance.much_no_feed" // the charge alone is too much
	switch {
	case kind < 0 && share <= 2: // twice the strength at most: beyond it, more feeds
		code = "nutrition.balance.little_stronger"
	case kind < 0:
		code = "nutrition.balance.little_more_feeds"
	case share > 0 && b.feed > 0:
		code = "nutrition.balance.much_weaker"
	}
	kg := func(m quantity.Mass) working.Value { return working.Number(float64(m), working.Kilogram) }
	if math.IsInf(share, 1) {
		share = 0
	}
	return finding.Finding{
		Code: code, Severity: finding.Warning, Where: finding.Where{"pots", l.account.Pot},
		Args: []finding.Arg{
			{Name: "pot", Value: working.Text(l.account.Pot)},
			{Name: "from", Value: working.Date(l.Weeks[first].First)},
			{Name: "to", Value: working.Date(l.Weeks[first].First.AddDays(7*BalanceWeeks - 1))},
			{Name: "nitrogen", Value: kg(b.supply())},
			{Name: "charge", Value: kg(b.charge)},
			{Name: "feed", Value: kg(b.feed)},
			{Name: "low", Value: kg(b.need.Low)},
			{Name: "high", Value: kg(b.need.High)},
			{Name: "share", Value: working.Number(share, working.Share)},
			{Name: "feeds", Value: working.Number(extra, working.None)},
		},
	}
}

// classIn returns the class that grows in or next after a week.
func (l Ledger) classIn(week int) Class {
	for _, g := range l.account.Growth {
		if g.Last >= l.Weeks[week].First {
			return g.Class
		}
	}
	return l.account.Growth[len(l.account.Growth)-1].Class
}

// saltFinding reports the saltiest week above the limit of its class, with the water
// that would wash the salts out.
func (l Ledger) saltFinding(from int) (f finding.Finding, ok bool) {
	if len(l.account.Growth) == 0 {
		return finding.Finding{}, false
	}
	worst, excess := -1, 1.0
	for i, w := range l.Weeks {
		if i < from {
			continue
		}
		if by := float64(w.Drain / l.classIn(i).SaltLimit()); by > excess {
			worst, excess = i, by
		}
	}
	if worst < 0 {
		return finding.Finding{}, false
	}
	return finding.Finding{
		Code: "nutrition.balance.salty", Severity: finding.Warning, Where: finding.Where{"pots", l.account.Pot},
		Args: []finding.Arg{
			{Name: "pot", Value: working.Text(l.account.Pot)},
			{Name: "from", Value: working.Date(l.Weeks[worst].First)},
			{Name: "conductivity", Value: working.Number(float64(l.Weeks[worst].Drain), working.MilliSiemensPerCM)},
			{Name: "limit", Value: working.Number(float64(l.classIn(worst).SaltLimit()), working.MilliSiemensPerCM)},
			{Name: "water", Value: working.Number(l.account.Mix.Litres()*FlushVolumes, working.Litre)},
		},
	}, true
}
