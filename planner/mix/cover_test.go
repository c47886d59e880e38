package mix

import (
	"testing"

	"pgregory.net/rapid"
)

func items(most int) *rapid.Generator[[]item] {
	return rapid.SliceOfN(rapid.Custom(func(t *rapid.T) item {
		return item{
			volume: int64(rapid.IntRange(5, 80).Draw(t, "volume")),
			price:  int64(rapid.IntRange(0, 2000).Draw(t, "price")),
			bag:    rapid.IntRange(0, 4).Draw(t, "bag") > 0,
		}
	}), 1, most)
}

// The two methods are independent of each other and find plans of equal worth.
func TestTotalsAndBranchesAgree(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		all := items(5).Draw(t, "items")
		need := int64(rapid.IntRange(1, 900).Draw(t, "need"))
		a, b := coverByTotals(need, 1, all), coverByBranches(need, all, maxBranches)
		if a.cost != b.cost || a.volume != b.volume || a.bags != b.bags {
			t.Fatalf("by totals %+v, by branches %+v", a, b)
		}
		for _, p := range []plan{a, b} {
			var volume, cost, bags int64
			for i, n := range p.counts {
				volume += n * all[i].volume
				cost += n * all[i].price
				if all[i].bag {
					bags += n
				}
			}
			if volume != p.volume || cost != p.cost || bags != p.bags || volume < need {
				t.Fatalf("the counts of %+v do not add up", p)
			}
		}
	})
}

// The product of need and price does not fit in 64 bits; the cost does.
func TestAtPriceIsExactBeyond64Bits(t *testing.T) {
	for _, c := range []struct {
		need int64
		it   item
		want int64
	}{
		{7, item{volume: 2, price: 3}, 11},                                                      // 10.5 rounded up
		{8, item{volume: 2, price: 3}, 12},                                                      // even
		{1e16, item{volume: 1e9, price: 1e9}, 1e16},                                             // 1e25 between
		{1e16, item{volume: 28_316_846_592, price: 4_990_000}, 1_762_201_869_403},               // a cubic foot at 4.99
		{28_316_846_592 * 3, item{volume: 28_316_846_592, price: 4_990_000}, 3 * 4_990_000},     // no rounding
		{28_316_846_592*3 + 1, item{volume: 28_316_846_592, price: 4_990_000}, 3*4_990_000 + 1}, // one nanolitre more
	} {
		if got := atPrice(c.need, c.it); got != c.want {
			t.Errorf("%d at %d for %d costs %d, want %d", c.need, c.it.price, c.it.volume, got, c.want)
		}
	}
}

// A search that is given up still covers the need, and says that it was given up.
func TestGivenUpSearchCovers(t *testing.T) {
	all := []item{{volume: 7, price: 70, bag: true}, {volume: 11, price: 110, bag: true}, {volume: 13, price: 130, bag: true}}
	p := coverByBranches(1000, all, 5)
	if p.proof.Proven || p.volume < 1000 {
		t.Errorf("after five branches: %+v", p)
	}
	if q := coverByBranches(1000, all, maxBranches); !q.proof.Proven || q.cost > p.cost {
		t.Errorf("after all branches: %+v", q)
	}
}
