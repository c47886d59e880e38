package mix

import (
	"errors"
	"strings"

	"fourturn/app/words"
	"fourturn/planner"
	"fourturn/planner/mix"
	"fourturn/planner/quantity"
)

// Purchase is what to buy of one mix, or of one part of the blend.
type Purchase struct {
	Title    string
	Need     Figure
	Lines    []string // such as "4 bags of 75 L, 76.00"
	Cost     Figure
	LeftOver Figure
	Proof    string // whether it is known to be the cheapest, or ""
	Naive    string // what the best single size would cost, or ""
	Trouble  string // why nothing can be bought, or ""
}

// Purchases returns the cheapest bags and bulk for the span: of ready mix, or of each
// part of the plan's blend.
func (s *Screen) Purchases() []Purchase {
	if !s.Known() {
		return nil
	}
	var list []Purchase
	for _, b := range s.bestPurchases() {
		list = append(list, s.purchase(b))
	}
	return list
}

// TotalCost writes what all purchases cost together, or "" where there is but one.
func (s *Screen) TotalCost() string {
	if !s.Known() {
		return ""
	}
	buying := s.bestPurchases()
	if len(buying) < 2 {
		return ""
	}
	sum := 0.0
	for _, b := range buying {
		if !b.Cost.IsZero() {
			sum += b.Cost.Number()
		}
	}
	return s.money(sum)
}

// purchases are the cheapest ones for a span of an outlook.
type purchases struct {
	of   *planner.Outlook
	span planner.Span
	list []planner.MixBuying
}

// bestPurchases searches for the cheapest purchases once for what is looked at.
func (s *Screen) bestPurchases() []planner.MixBuying {
	if all, span := s.outlook(), s.buySpan(); s.best.of != all || s.best.span != span {
		s.best = purchases{all, span, all.BuyMix(span)}
	}
	return s.best.list
}

func (s *Screen) money(amount float64) string {
	return s.words.WithCurrency(s.session.Plan().Currency).Money(amount)
}

func (s *Screen) purchase(b planner.MixBuying) Purchase {
	plan := s.outlook().Plan
	p := Purchase{Title: s.words.T("mix_buying.bags"), Need: s.figure("mix_buying.need", b.Need)}
	if b.Product != "" {
		p.Title = plan.ProductLabel(b.Product)
	}
	if b.Err != nil {
		p.Trouble = s.trouble(b.Err)
		return p
	}
	bought := b.Purchase
	units := s.session.Plan().Units
	for _, line := range bought.Lines {
		p.Lines = append(p.Lines, s.words.T("mix_buying.line", words.A{
			"count": line.Count, "size": s.bagName(plan, line, b.Product == ""), "cost": s.money(line.Cost),
		}))
	}
	if bought.BulkVolume > 0 {
		p.Lines = append(p.Lines, s.words.T("mix_buying.bulk_line", words.A{
			"volume": s.words.Volume(bought.BulkVolume, units), "cost": s.money(bought.BulkCost),
		}))
	}
	if len(p.Lines) == 0 {
		p.Lines = []string{s.words.T("mix_buying.nothing")}
	}
	p.Cost = s.figure("mix_buying.cost", b.Cost)
	p.Cost.Value = s.money(bought.Cost)
	p.LeftOver = s.figure("mix_buying.left_over", b.LeftOver)
	if single, ok := bought.CheapestSingleSize(); ok && single.Cost > bought.Cost {
		p.Naive = s.words.T("mix_buying.naive", words.A{"cost": s.money(single.Cost), "more": s.money(single.Cost - bought.Cost)})
	}
	switch {
	case bought.Bags == 0 && bought.BulkVolume == 0: // nothing was looked for
	case bought.Proof.Proven:
		p.Proof = s.words.T("mix_buying.proven")
	default:
		p.Proof = s.words.T("mix_buying.not_proven", words.A{"gap": s.money(bought.Cost - bought.Proof.LowerBound)})
	}
	return p
}

// bagName writes the size of a bag, with its product's name where several mixes are
// sold.
func (s *Screen) bagName(plan *planner.Plan, line mix.Line, ready bool) string {
	size := s.words.Volume(line.Volume/quantity.Volume(line.Count), s.session.Plan().Units)
	id, _, _ := strings.Cut(line.Key, "/")
	kinds := 0
	for i := range plan.Products {
		if plan.Products[i].Kind == planner.PottingMix && len(plan.Products[i].Packs) > 0 {
			kinds++
		}
	}
	if !ready || kinds < 2 {
		return size
	}
	return s.words.T("mix_buying.bag_of", words.A{"size": size, "product": plan.ProductLabel(id)})
}

func (s *Screen) trouble(err error) string {
	var order *mix.OrderError
	switch {
	case errors.As(err, &order):
		return s.words.T(order.Code)
	case errors.Is(err, mix.ErrNothingSold):
		return s.words.T("mix_buying.no_bags")
	case errors.Is(err, planner.ErrNoParts):
		return s.words.T("mix_buying.no_parts")
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

// hands writes an amount as it is measured: "1 pail + 2 L".
func (s *Screen) hands(by planner.ByHand) string {
	if len(by.Hands) == 0 {
		return "–"
	}
	parts := make([]string, len(by.Hands))
	for i, h := range by.Hands {
		tool := "mix_buying.tool." + strings.TrimPrefix(h.Tool.Key, "mix.tool.")
		parts[i] = s.words.T(tool, words.A{"n": s.words.Number(h.Count, 2)})
	}
	return strings.Join(parts, " + ")
}
