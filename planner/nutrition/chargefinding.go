package nutrition

import (
	"math"

	"fourturn/planner/civil"
	"fourturn/planner/finding"
	"fourturn/planner/quantity"
	"fourturn/planner/working"
)

// Bridge is a top-dressing that carries a pot from the end of a charge to the next
// change-out.
type Bridge struct {
	Date   civil.Date // early enough that its lag is over when the charge is spent
	Mass   quantity.Mass
	Spoons Spoons
}

// Bridge returns the top-dressing of the same product that gives, from the day the
// charge is spent to the change-out, as much nitrogen a day as the charge gave on
// average until it was spent, but no more than the charge itself. ok is false when
// the charge lasts.
func (t Track) Bridge(changeOut civil.Date) (b Bridge, ok bool) {
	spent, found := t.SpentOn()
	if !found || spent >= changeOut || spent <= t.Charge.Date {
		return Bridge{}, false
	}
	date := spent
	for date > t.Charge.Date && t.Thermal.Age(date, spent, t.Charge.Product.Reference) < t.curve.lag {
		date--
	}
	daily := float64(t.Dissolved(t.Charge.Date, spent)) / float64(spent-t.Charge.Date)
	need := daily*float64(changeOut-spent) - float64(t.Dissolved(spent, changeOut))
	probe := t.Charge
	probe.Date, probe.Mass, probe.Placement = date, quantity.Kilogram, OnTop
	gives := float64(Follow(probe, t.Thermal, nil).Dissolved(spent, changeOut))
	if !(need > 0) || !(gives > 0) {
		return Bridge{}, false
	}
	mass := quantity.Mass(math.Min(need/gives, float64(t.Charge.Mass)))
	return Bridge{Date: date, Mass: mass, Spoons: SpoonsOf(mass, t.Charge.Product.Tablespoon)}, true
}

// LastsUntil returns the rated longevity in months at which a product of the same
// reference temperature would be spent on the day, instead of earlier or later.
func (t Track) LastsUntil(day civil.Date) float64 {
	k := t.Thermal.kinetics
	need, low, high := t.Age(day), 0.01, 1000.0
	for range 60 { // halving 1000 months sixty times leaves nothing to see
		middle := (low + high) / 2
		p := t.Charge.Product
		p.Longevity = middle
		if p.curve(k).ageAt(k.Spent) < need {
			low = middle
		} else {
			high = middle
		}
	}
	return high
}

// GapFinding reports that a charge runs out before the pot's next change-out, with
// the top-dressing that bridges the gap and the rating that would have lasted. Gaps
// of fewer days than tolerated are not reported.
func (t Track) GapFinding(pot string, changeOut civil.Date, tolerated int) (f finding.Finding, ok bool) {
	spent, found := t.SpentOn()
	if !found || int(changeOut-spent) <= tolerated {
		return finding.Finding{}, false
	}
	bridge, ok := t.Bridge(changeOut)
	if !ok {
		return finding.Finding{}, false
	}
	return finding.Finding{
		Code: "nutrition.spent_early", Severity: finding.Warning, Where: finding.Where{"pots", pot},
		Args: []finding.Arg{
			{Name: "pot", Value: working.Text(pot)},
			{Name: "spent", Value: working.Date(spent)},
			{Name: "change_out", Value: working.Date(changeOut)},
			{Name: "days", Value: working.Number(float64(changeOut-spent), working.Day)},
			{Name: "mass", Value: working.Number(float64(bridge.Mass), working.Kilogram)},
			{Name: "date", Value: working.Date(bridge.Date)},
			{Name: "longevity", Value: working.Number(t.LastsUntil(changeOut), working.Month)},
		},
	}, true
}

// DoublingLimit is the nitrogen still in old prills, as a share of a new charge's,
// from which the two together count as doubled: half, a judgement.
const DoublingLimit = 0.5

// DoublingFinding reports that a new charge meets old ones that are still half full
// or more: their nitrogen in the pot is limit of the new charge's or above. It gives
// the new charge that would make the two together what was meant.
func DoublingFinding(pot string, fresh Charge, old []Track, limit float64) (f finding.Finding, ok bool) {
	left := quantity.Mass(0)
	for _, t := range old {
		left += t.Charge.Product.Analysis.In(t.InPot(fresh.Date)).N
	}
	brings := fresh.Product.Analysis.In(fresh.Mass).N
	if !(brings > 0) || float64(left/brings) < limit {
		return finding.Finding{}, false
	}
	mended := max(0, fresh.Mass*(1-left/brings))
	return finding.Finding{
		Code: "nutrition.charge_doubled", Severity: finding.Warning, Where: finding.Where{"pots", pot},
		Args: []finding.Arg{
			{Name: "pot", Value: working.Text(pot)},
			{Name: "date", Value: working.Date(fresh.Date)},
			{Name: "left", Value: working.Number(float64(left/brings), working.Share)},
			{Name: "nitrogen", Value: working.Number(float64(left), working.Kilogram)},
			{Name: "mass", Value: working.Number(float64(fresh.Mass), working.Kilogram)},
			{Name: "mended", Value: working.Number(float64(mended), working.Kilogram)},
		},
	}, true
}

// RateFinding reports a charge above the highest rate that gave acceptable plants,
// [HighestCharge], reckoned on its nitrogen.
func RateFinding(pot string, c Charge, mix quantity.Volume) (f finding.Finding, ok bool) {
	if !(mix > 0) {
		return finding.Finding{}, false
	}
	nitrogen := c.Product.Analysis.In(c.Mass).N.Grams() / mix.Litres()
	highest := float64(HighestCharge) * classNitrogen / 100
	if nitrogen <= highest*(1+1e-9) {
		return finding.Finding{}, false
	}
	return finding.Finding{
		Code: "nutrition.charge_high", Severity: finding.Warning, Where: finding.Where{"pots", pot},
		Args: []finding.Arg{
			{Name: "pot", Value: working.Text(pot)},
			{Name: "rate", Value: working.Number(c.Mass.Grams()/mix.Litres(), working.GramPerLitre)},
			{Name: "nitrogen", Value: working.Number(nitrogen, working.GramPerLitre)},
			{Name: "highest", Value: working.Number(highest, working.GramPerLitre)},
			{Name: "mended", Value: working.Number(float64(c.Mass)*highest/nitrogen, working.Kilogram)},
		},
	}, true
}
