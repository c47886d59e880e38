package planner

import (
	"fmt"

	"fourturn/planner/civil"
	"fourturn/planner/mix"
	"fourturn/planner/quantity"
)

// Span is a run of days and a choice of pots to buy for. A change-out that is late,
// but still asked for, counts to its first day.
type Span struct {
	From, To civil.Date // the first day, and the day after the last
	Client   string     // whose pots; "" means all
}

// Needs returns the change-outs of a span that have not happened, by pot: indices into
// Pots and into its Stands.
func (o *Outlook) Needs(span Span) [][2]int {
	var list [][2]int
	for i := range o.Pots {
		if span.Client != "" && o.Pots[i].Pot.Client != span.Client {
			continue
		}
		for k := range o.Pots[i].Stands {
			s := &o.Pots[i].Stands[k]
			if s.open(span.From) && s.From < span.To && !s.Mix.IsZero() {
				list = append(list, [2]int{i, k})
			}
		}
	}
	return list
}

// BuyMix returns the cheapest purchase of potting mix for the change-outs of a span,
// from the bags that the plan lists, less what is in the shed. It fails where no bag
// has a size and a price, or where one is absurd.
func (o *Outlook) BuyMix(span Span) (mix.Purchase, error) {
	order := mix.Order{}
	for _, n := range o.Needs(span) {
		order.Need += quantity.Volume(o.Pots[n[0]].Stands[n[1]].Mix.Number())
	}
	for i := range o.Plan.Products {
		p := &o.Plan.Products[i]
		if p.Kind != PottingMix {
			continue
		}
		order.InShed += quantity.Volume(p.InShed)
		for k, pack := range p.Packs {
			if pack.Volume > 0 {
				order.Bags = append(order.Bags, mix.Bag{Key: fmt.Sprintf("%s/%d", p.ID, k), Volume: pack.Volume, Price: pack.Price})
			}
		}
	}
	return mix.Buy(order)
}
