package planner_test

import (
	"errors"
	"math"
	"testing"

	"fourturn/planner"
	"fourturn/planner/mix"
	"fourturn/planner/quantity"
)

func yearOf(client string) planner.Span {
	return planner.Span{From: today, To: today.AddDays(365), Client: client}
}

// cheapest works out a plan and buys its mix of the coming year.
func cheapest(t *testing.T, plan planner.Plan, span planner.Span) []planner.MixBuying {
	t.Helper()
	return planner.WorkOut(&plan, reference(t), today).BuyMix(span)
}

func TestASeasonIsPartOfTheYear(t *testing.T) {
	plan := yard()
	o := planner.WorkOut(&plan, reference(t), today)
	sum := 0.0
	for _, s := range planner.Seasons {
		span := yearOf("")
		span.Season = s
		for _, n := range o.Needs(span) {
			if got := o.Pots[n[0]].Stands[n[1]].Season; got != s {
				t.Errorf("%s is bought for %s", got, s)
			}
		}
		sum += o.BuyMix(span)[0].Need.Number()
	}
	if whole := o.BuyMix(yearOf(""))[0].Need.Number(); whole == 0 || math.Abs(sum-whole) > 1e-9*whole {
		t.Errorf("the seasons need %v L, the year %v", sum, whole)
	}
	if got := o.BuyMix(yearOf("nobody"))[0]; got.Need.Number() != 0 || got.Cost.Number() != 0 || got.Err != nil {
		t.Errorf("nobody buys %+v", got)
	}
}

func TestAPackWithoutAPriceIsNotForSale(t *testing.T) {
	plan := yard()
	plan.Products[3].Packs = []planner.Pack{{Volume: 40}}
	if got := cheapest(t, plan, yearOf(""))[0]; !errors.Is(got.Err, mix.ErrNothingSold) || !got.Cost.IsZero() {
		t.Errorf("a bag of unknown price was bought: %+v", got)
	}
}

func TestBulkIsBoughtWhereItIsCheapest(t *testing.T) {
	plan := yard()
	bags := cheapest(t, plan, yearOf(""))[0]
	plan.Products[3].Bulk = planner.Bulk{Price: 20, Delivery: 1} // of a cubic metre, in whole ones
	got := cheapest(t, plan, yearOf(""))[0]
	if got.Purchase.BulkVolume != 1000 || got.Cost.Number() != 21 || got.Cost.Number() >= bags.Cost.Number() {
		t.Errorf("bulk at a price of nothing: %v L for %v, in bags %v", got.Purchase.BulkVolume, got.Cost.Number(), bags.Cost.Number())
	}
	if left := got.LeftOver.Number(); math.Abs(left-(1000-got.Need.Number())) > 1e-6 {
		t.Errorf("left over %v of 1000 L, needed %v", left, got.Need.Number())
	}
	plan.Products[3].Bulk = planner.Bulk{Price: 20, Per: 100, Step: 50, Minimum: 300, Delivery: 500}
	if got := cheapest(t, plan, yearOf(""))[0]; got.Purchase.BulkVolume != 0 || got.Cost.Number() != bags.Cost.Number() {
		t.Errorf("a dear delivery is taken: %+v", got.Purchase)
	}
}

// A pressed bale of a mix fills as much as two loose ones of its volume.
func TestPressedMixCountsLoose(t *testing.T) {
	plan := yard()
	plan.Products[3].Packs = []planner.Pack{{Volume: 50, Price: 10}}
	plan.Products[3].Expansion = 2
	plan.Products[3].InShed = 10
	got := cheapest(t, plan, yearOf(""))[0]
	want := math.Ceil((got.Need.Number() - 20) / 100)
	if float64(got.Purchase.Bags) != want {
		t.Errorf("%d bales for %v L with 10 L pressed in the shed, want %v", got.Purchase.Bags, got.Need.Number(), want)
	}
}

// Three of pressed peat and one of perlite, without shrinkage: three quarters of the
// mix is peat, of which a bale gives two for one (a peat packer's answer: 3.0 ft³ give
// 6), and one quarter is perlite.
func TestABlendIsBoughtByItsParts(t *testing.T) {
	plan := yard()
	none := 0.0
	plan.Products = append(plan.Products,
		planner.Product{ID: "peat", Kind: planner.Ingredient, Expansion: mix.BaleExpansion, Packs: []planner.Pack{{Volume: 3 * quantity.CubicFoot, Price: 17}}},
		planner.Product{ID: "perlite", Kind: planner.Ingredient, InShed: 5, Packs: []planner.Pack{{Volume: 25, Price: 12}}},
	)
	plan.Blends = []planner.Blend{{ID: "own", Parts: []planner.BlendPart{{Product: "peat", Parts: 3}, {Product: "perlite", Parts: 1}, {Product: "mix"}}, Shrinkage: &none}}
	ready := cheapest(t, plan, yearOf(""))[0]
	plan.Mix.Blend = "own"
	parts := cheapest(t, plan, yearOf(""))
	if len(parts) != 2 || parts[0].Product != "peat" || parts[1].Product != "perlite" {
		t.Fatalf("parts %+v", parts)
	}
	whole := ready.Need.Number()
	if got, want := parts[0].Need.Number(), whole*3/4/2; math.Abs(got-want) > 1e-9*want {
		t.Errorf("%v L of peat in bales, want %v", got, want)
	}
	if got, want := parts[1].Need.Number(), whole/4; math.Abs(got-want) > 1e-9*want {
		t.Errorf("%v L of perlite, want %v", got, want)
	}
	if got, want := float64(parts[1].Purchase.Bags), math.Ceil((whole/4-5)/25); got != want {
		t.Errorf("%v bags of perlite, want %v", got, want)
	}
	if trace := parts[0].Need.Working(); trace.Result.Number != parts[0].Need.Number() || trace.Inputs[0].From == nil {
		t.Errorf("the working of a part does not lead back to the pots: %+v", trace)
	}
	// the usual shrinkage of a tenth asks for more
	plan.Blends[0].Shrinkage = nil
	if got, want := cheapest(t, plan, yearOf(""))[1].Need.Number(), whole/4/0.9; math.Abs(got-want) > 1e-9*want {
		t.Errorf("%v L of perlite with shrinkage, want %v", got, want)
	}
	plan.Blends[0].Parts = nil
	if got := cheapest(t, plan, yearOf("")); len(got) != 1 || !errors.Is(got[0].Err, planner.ErrNoParts) {
		t.Errorf("a blend of nothing: %+v", got)
	}
}

func TestProductsAndBlendsComeAndGo(t *testing.T) {
	plan := yard()
	more := plan.WithNewProduct(planner.Product{ID: "peat", Kind: planner.Ingredient}).WithNewBlend(planner.Blend{ID: "own", Parts: []planner.BlendPart{{Product: "peat", Parts: 1}, {Product: "mix", Parts: 1}}})
	more.Mix.Blend = "own"
	if len(plan.Products) != 4 || len(plan.Blends) != 0 || len(more.Products) != 5 || more.Blend("own").Label() != "own" {
		t.Fatalf("%d products before, %d after", len(plan.Products), len(more.Products))
	}
	less, err := more.WithoutProduct("mix")
	if err != nil || len(less.Blends[0].Parts) != 1 || len(more.Blends[0].Parts) != 2 || less.Product("mix") != nil {
		t.Errorf("%v: %+v of %+v", err, less.Blends, more.Blends)
	}
	fed, err := more.WithoutProduct("even")
	if err != nil || len(fed.Feeding.Turn) != 1 || len(more.Feeding.Turn) != 2 {
		t.Errorf("%v: turn %v", err, fed.Feeding.Turn)
	}
	fed, err = fed.WithoutProduct("coated")
	if err != nil || fed.Feeding.SlowRelease != "" {
		t.Errorf("%v: slow release %q", err, fed.Feeding.SlowRelease)
	}
	named, err := more.WithBlend("own", func(b *planner.Blend) { b.Name, b.Parts[0].Parts = "Own", 4 })
	if err != nil || named.Blends[0].Label() != "Own" || more.Blends[0].Parts[0].Parts != 1 {
		t.Errorf("%v: %+v of %+v", err, named.Blends, more.Blends)
	}
	without, err := named.WithoutBlend("own")
	if err != nil || len(without.Blends) != 0 || without.Mix.Blend != "" || named.Mix.Blend != "own" {
		t.Errorf("%v: %+v", err, without.Mix)
	}
	var missing *planner.MissingError
	for _, gone := range []func() (planner.Plan, error){
		func() (planner.Plan, error) { return plan.WithoutProduct("x") },
		func() (planner.Plan, error) { return plan.WithoutBlend("x") },
		func() (planner.Plan, error) { return plan.WithBlend("x", func(*planner.Blend) {}) },
	} {
		if _, err := gone(); !errors.As(err, &missing) {
			t.Errorf("error %v", err)
		}
	}
}

func TestAmountsAreMeasuredByHand(t *testing.T) {
	plan := yard()
	o := planner.WorkOut(&plan, reference(t), today)
	if got := o.MixByHand(planner.Figure{}); len(got.Hands) != 0 || !got.Figure.IsZero() {
		t.Errorf("nothing is measured as %+v", got)
	}
	stand := o.Pots[0].Stands[2]
	for name, got := range map[string]planner.ByHand{"mix": o.MixByHand(stand.Mix), "charge": o.ChargeByHand(stand.Charge)} {
		trace := got.Figure.Working()
		if len(got.Hands) == 0 || trace.Result != got.Figure.Value || trace.Inputs[0].From == nil {
			t.Errorf("%s is measured as %+v", name, got)
		}
	}
	if got := o.MixByHand(stand.Mix).Figure.Number(); math.Abs(got/stand.Mix.Number()-1) > 0.05 {
		t.Errorf("%v L are measured as %v", stand.Mix.Number(), got)
	}
	plan.Mix.Pail, plan.Mix.Scoop = quantity.Volume(stand.Mix.Number()), quantity.Volume(stand.Charge.Number()) // prills are about 1 kg/L
	if got := o.MixByHand(stand.Mix).Hands; len(got) != 1 || got[0].Tool.Key != "mix.tool.own_pail" || got[0].Count != 1 {
		t.Errorf("a pail of just that size: %+v", got)
	}
	if got := o.ChargeByHand(stand.Charge).Hands; len(got) != 1 || got[0].Tool.Key != "mix.tool.scoop" || got[0].Count != 1 {
		t.Errorf("a scoop of just that size: %+v", got)
	}
	plan.Units = quantity.USCustomary
	plan.Mix.Pail, plan.Mix.Scoop = 0, 0
	if got := o.ChargeByHand(stand.Charge).Hands; got[0].Tool.Key == "mix.tool.spoon_15" {
		t.Errorf("in US units: %+v", got)
	}
}
