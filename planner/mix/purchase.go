package mix

import (
	"errors"
	"fmt"

	"fourturn/planner/quantity"
)

// Bag is a size that mix is sold in.
type Bag struct {
	Key    string // what the caller knows it by
	Volume quantity.Volume
	Price  float64 // of one, in the plan's currency
}

// Bulk is mix delivered loose.
type Bulk struct {
	Price    float64         // of Per
	Per      quantity.Volume // such as 1 m³
	Step     quantity.Volume // it is sold in multiples of this
	Minimum  quantity.Volume // of one delivery
	Delivery float64         // charge for the delivery
}

// Order is what has to be covered, and what may be bought.
type Order struct {
	Need   quantity.Volume // loose mix
	InShed quantity.Volume // what is there already
	Bags   []Bag
	Bulk   *Bulk // nil where none is sold
}

// Limits of an order, so that every sum is exact in 64 bits.
const (
	MaxNeed  = 10_000 * quantity.CubicMetre
	MaxPrice = 1e6  // of one bag or one step of bulk
	MaxCost  = 1e10 // of covering the need by one size alone
	MaxSizes = 100
)

// OrderError says what in an order cannot be worked with.
type OrderError struct {
	Code string // key of its text: "mix.order.volume", "mix.order.price", "mix.order.cost", "mix.order.need" or "mix.order.sizes"
	Key  string // of the bag; "bulk" for bulk; empty for the need
}

func (e *OrderError) Error() string { return fmt.Sprintf("mix: %s %s", e.Code, e.Key) }

// ErrNothingSold means that something is needed and nothing is sold.
var ErrNothingSold = errors.New("mix: nothing is sold")

// Line is one entry of a purchase.
type Line struct {
	Index  int // of the bag in the Order
	Key    string
	Count  int
	Volume quantity.Volume // all of them together
	Cost   float64
}

// Purchase is the cheapest purchase that covers an order.
type Purchase struct {
	Lines        []Line // bags, in the order of the Order, without those of which none is bought
	BulkVolume   quantity.Volume
	BulkCost     float64 // with the delivery
	Cost         float64
	Bought       quantity.Volume
	LeftOver     quantity.Volume // with what was in the shed
	Bags         int
	SingleSizes  []SingleSize // what one size alone would cost, in the order of the Order, bulk last
	Proof        Proof
	order        Order
	stillToCover quantity.Volume
}

// SingleSize is the purchase of one size alone.
type SingleSize struct {
	Key      string // "" for bulk
	Bulk     bool
	Count    int // bags, or steps of bulk
	Cost     float64
	LeftOver quantity.Volume
}

// Proof is the ground on which a purchase is known to be the cheapest.
type Proof struct {
	// Totals is how many total volumes were compared, each with its cheapest set, in
	// steps of Measure, the largest measure that all sizes are multiples of; 0 where
	// the sizes have none that is useful.
	Totals  int
	Measure quantity.Volume
	// Branches is how many partial sets were looked at and either completed or shown
	// to cost more; 0 where totals were compared.
	Branches int
	// LowerBound is what no purchase can fall below: every litre at the best price.
	LowerBound float64
	// Proven is false only where the search was given up (see maxBranches); the cost
	// is then at most Cost − LowerBound too high.
	Proven bool
}

// Buy returns the cheapest purchase that covers the need less what is in the shed,
// or an [*OrderError], or [ErrNothingSold].
func Buy(o Order) (Purchase, error) {
	if err := o.check(); err != nil {
		return Purchase{}, err
	}
	m := newMarket(o)
	if m.need <= 0 {
		p := m.purchase(plan{counts: make([]int64, len(m.items))})
		p.Proof.Proven = true
		return p, nil
	}
	if len(o.Bags) == 0 && o.Bulk == nil {
		return Purchase{}, ErrNothingSold
	}
	best := m.cheapest()
	p := m.purchase(best)
	p.SingleSizes = m.singleSizes()
	return p, nil
}

func (o *Order) check() error {
	if !(o.Need >= 0 && o.Need <= MaxNeed && o.InShed >= 0 && o.InShed <= MaxNeed) {
		return &OrderError{Code: "mix.order.need"}
	}
	if len(o.Bags) > MaxSizes {
		return &OrderError{Code: "mix.order.sizes"}
	}
	for _, b := range o.Bags {
		switch {
		case !(b.Volume >= quantity.Millilitre && b.Volume <= MaxNeed):
			return &OrderError{Code: "mix.order.volume", Key: b.Key}
		case !(b.Price >= 0 && b.Price <= MaxPrice):
			return &OrderError{Code: "mix.order.price", Key: b.Key}
		case costAlone(o.Need, b.Volume, b.Price) > MaxCost:
			return &OrderError{Code: "mix.order.cost", Key: b.Key}
		}
	}
	return o.Bulk.check(o.Need)
}

// costAlone returns what one size alone would cost at most.
func costAlone(need, volume quantity.Volume, price float64) float64 {
	return (float64(need/volume) + 1) * price
}

func (b *Bulk) check(need quantity.Volume) error {
	if b == nil {
		return nil
	}
	switch {
	case !(b.Per >= quantity.Millilitre && b.Per <= MaxNeed && b.Step >= 10*quantity.Millilitre && b.Step <= MaxNeed && b.Minimum >= 0 && b.Minimum <= MaxNeed):
		return &OrderError{Code: "mix.order.volume", Key: "bulk"}
	case !(b.Price >= 0 && b.Price <= MaxPrice && b.Delivery >= 0 && b.Delivery <= MaxPrice && b.Price*float64(b.Step/b.Per) <= MaxPrice):
		return &OrderError{Code: "mix.order.price", Key: "bulk"}
	case costAlone(max(need, b.Minimum), b.Step, b.Price*float64(b.Step/b.Per)) > MaxCost:
		return &OrderError{Code: "mix.order.cost", Key: "bulk"}
	}
	return nil
}
