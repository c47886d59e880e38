package mix_test

import (
	"errors"
	"fmt"
	"math"
	"testing"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"fourturn/planner/mix"
	"fourturn/planner/quantity"
)

func ExampleBuy() {
	p, err := mix.Buy(mix.Order{
		Need: 130, InShed: 10,
		Bags: []mix.Bag{{Key: "small", Volume: 20, Price: 5}, {Key: "large", Volume: 50, Price: 10}},
	})
	if err != nil {
		panic(err)
	}
	for _, l := range p.Lines {
		fmt.Printf("%d %s\n", l.Count, l.Key)
	}
	one, _ := p.CheapestSingleSize()
	fmt.Printf("cost %.2f, left over %v L; %s alone %.2f\n", p.Cost, p.LeftOver, one.Key, one.Cost)
	// Output:
	// 1 small
	// 2 large
	// cost 25.00, left over 0 L; small alone 30.00
}

// outcome is what a purchase is judged by, in cents, tenths of a litre and bags.
type outcome struct{ cents, left, bags int }

func (o outcome) before(p outcome) bool {
	if o.cents != p.cents {
		return o.cents < p.cents
	}
	if o.left != p.left {
		return o.left < p.left
	}
	return o.bags < p.bags
}

// byHand tries every set of bags, with bulk and without, in plain loops.
func byHand(o mix.Order) outcome {
	tenths := func(v quantity.Volume) int { return int(math.Round(float64(v) * 10)) }
	cents := func(x float64) int { return int(math.Round(x * 100)) }
	need := max(0, tenths(o.Need)-tenths(o.InShed))
	best := outcome{cents: math.MaxInt}
	var try func(k, volume, cost, bags int)
	try = func(k, volume, cost, bags int) {
		if volume >= need {
			left := max(0, tenths(o.InShed)+volume-tenths(o.Need))
			if got := (outcome{cost, left, bags}); got.before(best) {
				best = got
			}
		}
		if k == len(o.Bags) {
			return
		}
		size := tenths(o.Bags[k].Volume)
		for n := 0; ; n++ {
			try(k+1, volume+n*size, cost+n*cents(o.Bags[k].Price), bags+n)
			if volume+n*size >= need {
				return
			}
		}
	}
	try(0, 0, 0, 0)
	if b := o.Bulk; b != nil && need > 0 {
		step := tenths(b.Step)
		price := cents(b.Price * float64(b.Step/b.Per))
		for n := max(1, (tenths(b.Minimum)+step-1)/step); ; n++ {
			try(0, n*step, n*price+cents(b.Delivery), 0)
			if n*step >= need {
				break
			}
		}
	}
	return best
}

func orders() *rapid.Generator[mix.Order] {
	return rapid.Custom(func(t *rapid.T) mix.Order {
		tenths := func(low, high int, label string) quantity.Volume {
			return quantity.Volume(float64(rapid.IntRange(low, high).Draw(t, label)) / 10)
		}
		price := func(low, high int, label string) float64 {
			return float64(rapid.IntRange(low, high).Draw(t, label)) / 100
		}
		o := mix.Order{Need: tenths(0, 900, "need"), InShed: tenths(0, 200, "shed")}
		for i := range rapid.IntRange(1, 3).Draw(t, "sizes") {
			o.Bags = append(o.Bags, mix.Bag{Key: fmt.Sprint(i), Volume: tenths(60, 500, "volume"), Price: price(0, 1000, "price")})
		}
		if rapid.Bool().Draw(t, "bulk") {
			o.Bulk = &mix.Bulk{
				Per: 10, Step: tenths(50, 300, "step"), Minimum: tenths(0, 500, "minimum"),
				Price: price(0, 500, "bulk price"), Delivery: price(0, 1000, "delivery"),
			}
			// whole cents a step, so that the plain loops are exact
			o.Bulk.Price = math.Round(o.Bulk.Price*float64(o.Bulk.Step/10)*100) / 100
			o.Bulk.Per = o.Bulk.Step
		}
		return o
	})
}

func TestPurchaseAgreesWithExhaustiveSearch(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		o := orders().Draw(t, "order")
		p, err := mix.Buy(o)
		if err != nil {
			t.Fatal(err)
		}
		got := outcome{int(math.Round(p.Cost * 100)), int(math.Round(float64(p.LeftOver) * 10)), p.Bags}
		if diff := cmp.Diff(byHand(o), got, cmp.AllowUnexported(outcome{})); diff != "" {
			t.Fatalf("by hand and by Buy differ (-hand +Buy):\n%s", diff)
		}
		if !p.Proof.Proven {
			t.Fatal("not proven")
		}
	})
}

func TestPurchaseLaws(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		o := orders().Draw(t, "order")
		o.Need *= 20
		p, err := mix.Buy(o)
		if err != nil {
			t.Fatal(err)
		}
		volume, cost, bags := p.BulkVolume, p.BulkCost, 0
		for _, l := range p.Lines {
			volume += l.Volume
			cost += l.Cost
			bags += l.Count
		}
		const litre, cent = 1e-6, 1e-6
		if math.Abs(float64(volume-p.Bought)) > litre || math.Abs(cost-p.Cost) > cent || bags != p.Bags {
			t.Fatalf("lines sum to %v L, %v, %d bags; the purchase says %v L, %v, %d", volume, cost, bags, p.Bought, p.Cost, p.Bags)
		}
		if o.InShed+p.Bought < o.Need-litre {
			t.Fatalf("%v L do not cover %v", o.InShed+p.Bought, o.Need)
		}
		if p.Cost < p.Proof.LowerBound-cent && len(p.SingleSizes) > 0 {
			t.Fatalf("cost %v falls below its bound %v", p.Cost, p.Proof.LowerBound)
		}
		if one, ok := p.CheapestSingleSize(); ok && one.Cost < p.Cost-cent {
			t.Fatalf("one size alone costs %v, the purchase %v", one.Cost, p.Cost)
		}
	})
}

func TestNothingNeeded(t *testing.T) {
	p, err := mix.Buy(mix.Order{Need: 10, InShed: 25})
	if err != nil || p.Cost != 0 || p.LeftOver != 15 || !p.Proof.Proven {
		t.Errorf("got %+v, %v", p, err)
	}
	if _, err := mix.Buy(mix.Order{Need: 10}); !errors.Is(err, mix.ErrNothingSold) {
		t.Errorf("error %v", err)
	}
}

func TestOrderFaults(t *testing.T) {
	good := mix.Order{Need: 10, Bags: []mix.Bag{{Key: "a", Volume: 10, Price: 1}}}
	for code, change := range map[string]func(*mix.Order){
		"mix.order.need":   func(o *mix.Order) { o.Need = -1 },
		"mix.order.volume": func(o *mix.Order) { o.Bags = []mix.Bag{{Key: "a", Price: 1}} },
		"mix.order.price":  func(o *mix.Order) { o.Bags = []mix.Bag{{Key: "a", Volume: 1, Price: math.NaN()}} },
		"mix.order.sizes":  func(o *mix.Order) { o.Bags = make([]mix.Bag, mix.MaxSizes+1) },
	} {
		o := good
		change(&o)
		var fault *mix.OrderError
		if _, err := mix.Buy(o); !errors.As(err, &fault) || fault.Code != code {
			t.Errorf("%s: error %v", code, err)
		}
	}
	o := good
	o.Bulk = &mix.Bulk{Price: 1, Per: 1}
	if _, err := mix.Buy(o); err == nil {
		t.Error("bulk without a step is taken")
	}
}
