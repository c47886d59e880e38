package nutrition

import (
	"cmp"
	"slices"

	"fourturn/planner/civil"
	"fourturn/planner/finding"
	"fourturn/planner/quantity"
	"fourturn/planner/working"
)

// Use is a mass of a product that will be used on a day.
type Use struct {
	Date civil.Date
	Mass quantity.Mass
}

// Stock is how far what is in the shed goes.
type Stock struct {
	InShed  quantity.Mass
	Covered int           // uses that it covers whole, in order of date
	RunsOut civil.Date    // first use that it does not cover; zero when it covers all
	BuyBy   civil.Date    // the lead before that
	Short   quantity.Mass // missing for all uses
	Left    quantity.Mass // over after all uses
	uses    int
	needed  quantity.Mass
}

// StockOf returns how far a mass in the shed goes for uses to come, and when to buy,
// lead days before it runs out.
func StockOf(inShed quantity.Mass, uses []Use, lead int) Stock {
	ordered := slices.Clone(uses)
	slices.SortStableFunc(ordered, func(a, b Use) int { return cmp.Compare(a.Date, b.Date) })
	s := Stock{InShed: inShed, uses: len(uses)}
	for _, u := range ordered {
		s.needed += u.Mass
		switch {
		case !s.RunsOut.IsZero():
		case s.needed <= inShed*(1+1e-12): // sums of decimals miss by a hair
			s.Covered++
		default:
			s.RunsOut, s.BuyBy = u.Date, u.Date.AddDays(-lead)
		}
	}
	s.Short, s.Left = max(0, s.needed-inShed), max(0, inShed-s.needed)
	if s.RunsOut.IsZero() {
		s.Short = 0
	}
	return s
}

// Finding reports that a product runs out before its last use.
func (s Stock) Finding(product string) (f finding.Finding, ok bool) {
	if s.RunsOut.IsZero() {
		return finding.Finding{}, false
	}
	return finding.Finding{
		Code: "nutrition.stock_short", Severity: finding.Note, Where: finding.Where{"products", product},
		Args: []finding.Arg{
			{Name: "product", Value: working.Text(product)},
			{Name: "date", Value: working.Date(s.RunsOut)},
			{Name: "buy", Value: working.Date(s.BuyBy)},
			{Name: "mass", Value: working.Number(float64(s.Short), working.Kilogram)},
			{Name: "covered", Value: working.Number(float64(s.Covered), working.None)},
		},
	}, true
}

// Working returns the trace of what is missing.
func (s Stock) Working() working.Trace {
	return working.Trace{
		Name:    "nutrition.stock_missing",
		Formula: "missing = Σ uses − in shed, at least 0",
		Inputs: []working.Input{
			{Symbol: "uses", Name: "nutrition.uses", Value: working.Number(float64(s.needed), working.Kilogram), Source: working.Source{Status: working.Derived}},
			{Symbol: "in shed", Name: "nutrition.in_shed", Value: working.Number(float64(s.InShed), working.Kilogram), Source: working.Source{Status: working.Entered}},
		},
		Result: working.Number(float64(s.Short), working.Kilogram),
		Source: working.Source{Status: working.Definition},
	}
}
