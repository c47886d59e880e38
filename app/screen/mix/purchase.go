package mix

import (
	"errors"

	"fourturn/app/words"
	"fourturn/planner/mix"
	"fourturn/planner/quantity"
)

// Purchase is what to buy.
type Purchase struct {
	Lines    []string // such as "4 bags of 75 L, 76.00"
	Cost     Figure
	LeftOver string
	Naive    string // what the best single size would cost, or ""
	Trouble  string // why nothing can be bought, or ""
}

// Purchase returns the cheapest bags for the span.
func (s *Screen) Purchase() Purchase {
	if !s.Known() {
		return Purchase{}
	}
	buying := s.outlook().BuyMix(s.buySpan())[0]
	if buying.Err != nil {
		return Purchase{Trouble: s.trouble(buying.Err)}
	}
	bought := buying.Purchase
	money := s.words.WithCurrency(s.session.Plan().Currency)
	units := s.session.Plan().Units
	var p Purchase
	for _, line := range bought.Lines {
		p.Lines = append(p.Lines, s.words.T("mix_buying.line", words.A{
			"count": line.Count, "size": s.words.Volume(line.Volume/quantity.Volume(line.Count), units), "cost": money.Money(line.Cost),
		}))
	}
	if len(p.Lines) == 0 {
		p.Lines = []string{s.words.T("mix_buying.nothing")}
	}
	p.Cost = s.figure("mix_buying.cost", buying.Cost)
	p.Cost.Value = money.Money(bought.Cost)
	p.LeftOver = s.words.Volume(bought.LeftOver, units)
	if single, ok := bought.CheapestSingleSize(); ok && single.Cost > bought.Cost {
		p.Naive = s.words.T("mix_buying.naive", words.A{"cost": money.Money(single.Cost)})
	}
	return p
}

func (s *Screen) trouble(err error) string {
	var order *mix.OrderError
	switch {
	case errors.As(err, &order):
		return s.words.T(order.Code)
	case errors.Is(err, mix.ErrNothingSold):
		return s.words.T("mix_buying.no_bags")
	}
	return err.Error()
}

// Feed is what the coming year asks of a fertiliser.
type Feed struct {
	Name string
	Need Figure
}

// Feeds returns the fertilisers of the coming year.
func (s *Screen) Feeds() []Feed {
	all := s.outlook()
	if all == nil {
		return nil
	}
	var list []Feed
	for _, b := range all.Buying {
		if b.Product == "" {
			continue
		}
		list = append(list, Feed{Name: all.Plan.ProductLabel(b.Product), Need: s.figure("mix_buying.year_need", b.Need)})
	}
	return list
}
