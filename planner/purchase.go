package planner

import (
	"errors"
	"fmt"

	"fourturn/planner/civil"
	"fourturn/planner/mix"
	"fourturn/planner/quantity"
	"fourturn/planner/working"
)

// Span is a run of days and a choice of pots to buy for. A change-out that is late,
// but still asked for, counts to its first day.
type Span struct {
	From, To civil.Date // the first day, and the day after the last
	Client   string     // whose pots; "" means all
	Season   Season     // the change-outs into one season alone; "" means all
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
			if span.Season != "" && s.Season != span.Season {
				continue
			}
			if s.open(span.From) && s.From < span.To && !s.Mix.IsZero() {
				list = append(list, [2]int{i, k})
			}
		}
	}
	return list
}

// ErrNoParts means that the blend that pots are filled with has no parts.
var ErrNoParts = errors.New("planner: a blend without parts")

// MixBuying is the cheapest purchase of one thing that the mix of a span is made of:
// ready mix, with loose volumes, or one part of the plan's blend, with volumes as sold.
type MixBuying struct {
	Product  string // id of the part; "" for ready mix of any kind
	Need     Figure // L
	Purchase mix.Purchase
	Cost     Figure // in the plan's currency; zero with Err
	LeftOver Figure // L; zero with Err
	Err      error  // why nothing can be bought: nothing is sold, or a size or a price is absurd
}

// BuyMix returns the cheapest purchases of what fills the pots at the change-outs of a
// span, less what is in the shed: of ready mix, from the sizes of all the plan's mixes,
// or of each part of the plan's blend.
func (o *Outlook) BuyMix(span Span) []MixBuying {
	needs := o.Needs(span)
	total := sum{name: "plan.mix_of_span", unit: working.Litre}
	for _, n := range needs {
		total.add(o.Pots[n[0]].Stands[n[1]].Mix)
	}
	need := total.figure()
	blend := o.Plan.Blend(o.Plan.Mix.Blend)
	if blend == nil {
		return []MixBuying{o.buyOne("", need, func(p *Product) (float64, bool) { return p.Loosens(), p.Kind == PottingMix })}
	}
	made, err := o.Plan.Made(blend)
	if err != nil {
		return []MixBuying{{Need: need, Err: err}}
	}
	batch := made.Make(quantity.Volume(need.Number()))
	parts := make([]MixBuying, 0, len(batch.Portions))
	for i, portion := range batch.Portions {
		asSold := NewFigure(working.Number(float64(portion.AsSold), working.Litre), func() working.Trace {
			return batch.Working(i).Beneath("mix.batch", need.Working())
		})
		parts = append(parts, o.buyOne(portion.Key, asSold, func(p *Product) (float64, bool) { return 1, p.ID == portion.Key }))
	}
	return parts
}

// Made returns a blend as the mix chapter reckons with it, or [ErrNoParts]. A part whose
// product is not in the plan any more is reckoned loose.
func (p *Plan) Made(b *Blend) (mix.Blend, error) {
	made := mix.Blend{Shrinkage: mix.UsualShrinkage}
	if b.Shrinkage != nil {
		made.Shrinkage = *b.Shrinkage
	}
	for _, part := range b.Parts {
		if part.Parts > 0 {
			one := mix.Part{Key: part.Product, Parts: part.Parts}
			if product := p.Product(part.Product); product != nil {
				one.Expansion = product.Loosens()
			}
			made.Parts = append(made.Parts, one)
		}
	}
	if len(made.Parts) == 0 {
		return mix.Blend{}, ErrNoParts
	}
	return made, nil
}

// buyOne buys a volume from the sizes of the products that will do, each volume as sold
// times what willDo says.
func (o *Outlook) buyOne(product string, need Figure, willDo func(*Product) (times float64, ok bool)) MixBuying {
	buying := MixBuying{Product: product, Need: need}
	order := mix.Order{Need: quantity.Volume(need.Number())}
	for i := range o.Plan.Products {
		p := &o.Plan.Products[i]
		times, ok := willDo(p)
		if !ok {
			continue
		}
		order.InShed += quantity.Volume(p.InShed * times)
		for k, pack := range p.Packs {
			if pack.Volume > 0 && pack.Price > 0 { // one without a price is not for sale
				order.Bags = append(order.Bags, mix.Bag{Key: fmt.Sprintf("%s/%d", p.ID, k), Volume: pack.Volume * quantity.Volume(times), Price: pack.Price})
			}
		}
		if p.Bulk.Price > 0 && order.Bulk == nil { // one lorry, the first that is listed
			order.Bulk = p.Bulk.offer(quantity.Volume(times))
		}
	}
	bought, err := mix.Buy(order)
	if err != nil {
		buying.Err = err
		return buying
	}
	buying.Purchase = bought
	buying.Cost = NewFigure(working.Number(bought.Cost, working.Money), func() working.Trace {
		return bought.Working().Beneath("mix.need", need.Working())
	})
	buying.LeftOver = NewFigure(working.Number(float64(bought.LeftOver), working.Litre), bought.LeftOverWorking)
	return buying
}

// offer is the bulk as the mix chapter reckons with it.
func (b *Bulk) offer(times quantity.Volume) *mix.Bulk {
	per := b.Per
	if per == 0 {
		per = quantity.CubicMetre
	}
	step := b.Step
	if step == 0 {
		step = per
	}
	return &mix.Bulk{Price: b.Price, Per: per * times, Step: step * times, Minimum: b.Minimum * times, Delivery: b.Delivery}
}
