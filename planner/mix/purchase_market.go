package mix

import (
	"math"
	"math/bits"

	"fourturn/planner/quantity"
)

// Inside, volumes are whole nanolitres and money is whole millionths of the currency:
// a cubic inch is 16 387 064 nL exactly, so that US sizes are exact too.
const (
	nanolitres = 1e9 // in a litre
	millionths = 1e6 // in one of the currency
)

// item is one size that is sold.
type item struct {
	volume int64 // nL
	price  int64
	bag    bool // false for a step of bulk
}

// market is an order in whole numbers.
type market struct {
	order    Order
	need     int64 // nL still to be covered
	items    []item
	bulk     int   // index of the step of bulk, or −1
	least    int64 // steps of bulk in the smallest delivery
	delivery int64
}

func newMarket(o Order) *market {
	m := &market{order: o, bulk: -1}
	m.need = max(0, int64(math.Round(float64(o.Need-o.InShed)*nanolitres)))
	for _, b := range o.Bags {
		m.items = append(m.items, item{
			volume: int64(math.Round(float64(b.Volume) * nanolitres)),
			price:  int64(math.Round(b.Price * millionths)), bag: true,
		})
	}
	if b := o.Bulk; b != nil {
		m.bulk = len(m.items)
		step := int64(math.Round(float64(b.Step) * nanolitres))
		m.items = append(m.items, item{
			volume: step,
			price:  int64(math.Round(b.Price * float64(b.Step/b.Per) * millionths)),
		})
		smallest := int64(math.Round(float64(b.Minimum) * nanolitres))
		m.least = max(1, ceilDiv(smallest, step))
		m.delivery = int64(math.Round(b.Delivery * millionths))
	}
	return m
}

func ceilDiv(a, b int64) int64 { return (a + b - 1) / b }

// plan is a set of items that covers the need.
type plan struct {
	counts []int64 // by item
	cost   int64
	volume int64
	bags   int64
	proof  Proof
}

// before reports whether p is better than q: cheaper, then less volume, then fewer
// bags. A plan without counts is worse than any other.
func (p *plan) before(q *plan) bool {
	switch {
	case q.counts == nil:
		return true
	case p.cost != q.cost:
		return p.cost < q.cost
	case p.volume != q.volume:
		return p.volume < q.volume
	}
	return p.bags < q.bags
}

// cheapest solves the market without bulk and with it, and returns the better plan.
func (m *market) cheapest() plan {
	var best plan
	var proof Proof
	proof.Proven = true
	bound := int64(math.MaxInt64)
	merge := func(p plan, lowest int64) {
		bound = min(bound, lowest)
		proof.Totals += p.proof.Totals
		proof.Branches += p.proof.Branches
		proof.Measure = p.proof.Measure
		proof.Proven = proof.Proven && p.proof.Proven
		if p.before(&best) {
			best = p
		}
	}
	bags := m.items
	if m.bulk >= 0 {
		bags = m.items[:m.bulk]
		lowest := m.least*m.items[m.bulk].price + m.delivery
		if rest := m.need - m.least*m.items[m.bulk].volume; rest > 0 {
			lowest += bestPrice(rest, m.items)
		}
		merge(m.withBulk(), lowest)
	}
	if len(bags) > 0 {
		p := cover(m.need, bags)
		p.counts = append(p.counts, make([]int64, len(m.items)-len(bags))...)
		merge(p, bestPrice(m.need, bags))
	}
	proof.LowerBound = float64(bound) / millionths
	best.proof = proof
	return best
}

// withBulk takes the smallest delivery and covers the rest with any item; a step of
// bulk beyond the smallest delivery is an item like a bag.
func (m *market) withBulk() plan {
	step := m.items[m.bulk]
	p := plan{counts: make([]int64, len(m.items)), proof: Proof{Proven: true}}
	if rest := m.need - m.least*step.volume; rest > 0 {
		p = cover(rest, m.items)
	}
	p.counts[m.bulk] += m.least
	p.volume += m.least * step.volume
	p.cost += m.least*step.price + m.delivery
	return p
}

// bestPrice returns a cost that no set of items covering need can fall below: the
// need at the best price per volume, rounded up.
func bestPrice(need int64, items []item) int64 {
	least := int64(math.MaxInt64)
	for _, it := range items {
		least = min(least, atPrice(need, it))
	}
	return least
}

// atPrice returns need × price / volume, rounded up, by way of 128 bits. The limits of
// an order keep the result far within 64.
func atPrice(need int64, it item) int64 {
	high, low := bits.Mul64(uint64(need), uint64(it.price))
	low, carry := bits.Add64(low, uint64(it.volume-1), 0)
	quotient, _ := bits.Div64(high+carry, low, uint64(it.volume))
	return int64(quotient)
}

// purchase writes a plan out in the caller's terms.
func (m *market) purchase(best plan) Purchase {
	p := Purchase{
		Cost: float64(best.cost) / millionths, Bought: toVolume(best.volume), Bags: int(best.bags), Proof: best.proof, order: m.order,
		stillToCover: toVolume(m.need),
		LeftOver:     max(0, m.order.InShed+toVolume(best.volume)-m.order.Need),
	}
	for i, n := range best.counts {
		switch it := m.items[i]; {
		case n == 0:
		case i == m.bulk:
			p.BulkVolume = toVolume(n * it.volume)
			p.BulkCost = float64(n*it.price+m.delivery) / millionths
		default:
			p.Lines = append(p.Lines, Line{
				Index: i, Key: m.order.Bags[i].Key, Count: int(n),
				Volume: toVolume(n * it.volume), Cost: float64(n*it.price) / millionths,
			})
		}
	}
	return p
}

func toVolume(nl int64) quantity.Volume { return quantity.Volume(float64(nl) / nanolitres) }

// singleSizes returns what each size alone would cost.
func (m *market) singleSizes() []SingleSize {
	sizes := make([]SingleSize, 0, len(m.items))
	for i, it := range m.items {
		n := ceilDiv(m.need, it.volume)
		one := SingleSize{Bulk: i == m.bulk}
		cost := n * it.price
		if one.Bulk {
			n = max(n, m.least)
			cost = n*it.price + m.delivery
		} else {
			one.Key = m.order.Bags[i].Key
		}
		one.Count, one.Cost = int(n), float64(cost)/millionths
		one.LeftOver = max(0, m.order.InShed+toVolume(n*it.volume)-m.order.Need)
		sizes = append(sizes, one)
	}
	return sizes
}
