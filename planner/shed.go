package planner

import (
	"fourturn/planner/finding"
	"fourturn/planner/nutrition"
	"fourturn/planner/quantity"
	"fourturn/planner/working"
)

// usualLead is how many days before a product runs out it is time to buy, where the plan
// does not say. Common practice, no source.
const usualLead = 14

// Shelf is a fertiliser with how far it goes.
type Shelf struct {
	Product string // id
	Stock   nutrition.Stock
	Need    Figure // kg that a year's uses take
	Missing Figure // kg to buy for them, above what is in the shed
}

// shed works out how far each fertiliser goes for the coming year's rounds and charges,
// and reports those that run out. A product of which nothing is said to be in the shed
// is on the buying list anyway.
func (w *workOut) shed() {
	lead := w.Plan.Feeding.Lead
	if lead == 0 {
		lead = usualLead
	}
	for i := range w.Plan.Products {
		p := &w.Plan.Products[i]
		uses := w.uses(p)
		if len(uses) == 0 {
			continue
		}
		stock := nutrition.StockOf(quantity.Mass(p.InShed), uses, lead)
		total := sum{name: "plan.shed_need", unit: working.Kilogram}
		for _, u := range uses {
			total.total += float64(u.Mass)
			total.n++
		}
		w.Shed = append(w.Shed, Shelf{
			Product: p.ID, Stock: stock, Need: total.figure(),
			Missing: NewFigure(working.Number(float64(stock.Short), working.Kilogram), stock.Working),
		})
		if f, ok := stock.Finding(p.ID); ok && p.InShed > 0 {
			f.Args[0].Value = working.Text(w.Plan.ProductLabel(p.ID))
			f.Where = finding.Where{"products", p.ID, "in_shed"}
			w.Findings = append(w.Findings, f)
		}
	}
}

// uses returns what the coming year takes of a fertiliser.
func (w *workOut) uses(p *Product) []nutrition.Use {
	var uses []nutrition.Use
	until := w.Today.AddDays(buyingDays)
	switch p.Kind {
	case Soluble:
		for i := range w.Rounds {
			if r := &w.Rounds[i]; r.Product == p.ID && !r.Done && r.Date < until {
				uses = append(uses, nutrition.Use{Date: r.Date, Mass: quantity.Mass(r.Dose.Number())})
			}
		}
	case SlowRelease:
		if w.Plan.Feeding.SlowRelease != p.ID {
			break
		}
		for _, n := range w.Needs(Span{From: w.Today, To: until}) {
			if s := &w.Pots[n[0]].Stands[n[1]]; !s.Charge.IsZero() {
				uses = append(uses, nutrition.Use{Date: s.From, Mass: quantity.Mass(s.Charge.Number())})
			}
		}
	case PottingMix:
	}
	return uses
}
