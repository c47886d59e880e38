package plants_test

import (
	"fmt"
	"testing"

	"fourturn/plants"
)

func TestWaits(t *testing.T) {
	for _, c := range []struct {
		previous, next string
		recorded       []string
		reason         plants.WaitReason // of the longest wait, or "" for none
		seasons        int
		years          float64
	}{
		{"pansy", "pansy", nil, plants.SameHost, 1, 0},
		{"pansy", "viola", nil, plants.SameHost, 1, 0},
		{"petunia", "calibrachoa", nil, plants.SharedFamily, 1, 0},
		{"petunia", "ornamental-pepper", nil, plants.SharedFamily, 1, 0},
		{"flowering-tobacco", "bush-tomato", nil, plants.SharedFamily, 1, 0},
		// Black root rot in both, but other families and no disease seen.
		{"pansy", "petunia", nil, "", 0, 0},
		{"pansy", "petunia", []string{"black-root-rot"}, plants.AfterDisease, 0, 3},
		{"pansy", "zinnia", []string{"black-root-rot"}, "", 0, 0},
		// After downy mildew of impatiens swap to coleus, begonia, lobelia or New
		// Guinea impatiens (Floral Daily quoting the University of Massachusetts).
		{"impatiens", "impatiens", []string{"impatiens-downy-mildew"}, plants.AfterDisease, 0, 3},
		{"impatiens", "coleus", []string{"impatiens-downy-mildew"}, "", 0, 0},
		{"impatiens", "wax-begonia", []string{"impatiens-downy-mildew"}, "", 0, 0},
		{"impatiens", "edging-lobelia", []string{"impatiens-downy-mildew"}, "", 0, 0},
		{"impatiens", "new-guinea-impatiens", []string{"impatiens-downy-mildew"}, "", 0, 0},
		// Where Phytophthora killed petunias, marigold, verbena, salvia, ageratum are
		// named (Utah State University Extension).
		{"petunia", "french-marigold", []string{"phytophthora"}, "", 0, 0},
		{"petunia", "garden-verbena", []string{"phytophthora"}, "", 0, 0},
		{"petunia", "scarlet-salvia", []string{"phytophthora"}, "", 0, 0},
		{"petunia", "ageratum", []string{"phytophthora"}, "", 0, 0},
		{"petunia", "snapdragon", []string{"phytophthora"}, plants.AfterDisease, 0, 3},
		// Fusarium wilt keeps to its host, but stays long.
		{"china-pink", "garden-mum", []string{"fusarium-wilt"}, "", 0, 0},
		{"china-pink", "sweet-william", []string{"fusarium-wilt"}, plants.AfterDisease, 0, 5},
		{"ornamental-kale", "sweet-alyssum", []string{"clubroot"}, plants.AfterDisease, 0, 7},
		// Grey mould and root rots come to everything: no rotation helps.
		{"wax-begonia", "zonal-geranium", []string{"botrytis", "pythium", "rhizoctonia"}, "", 0, 0},
		{"zinnia", "pansy", nil, "", 0, 0},
	} {
		waits := builtin(t).Waits(plant(t, c.previous), plant(t, c.next), c.recorded)
		got := plants.Wait{}
		if len(waits) > 0 {
			got = waits[0]
		}
		if got.Reason != c.reason || got.Seasons != c.seasons || got.Years != c.years {
			t.Errorf("%s then %s after %v: %s, %d seasons, %g years", c.previous, c.next, c.recorded, got.Reason, got.Seasons, got.Years)
		}
		for _, w := range waits {
			if w.NewMix == plants.NoMatter || w.Seasons == 0 && w.Years == 0 {
				t.Errorf("%s then %s: a wait for nothing: %+v", c.previous, c.next, w)
			}
			if trace := w.Working(); trace.Result.Number != max(float64(w.Seasons), w.Years) || !trace.Soft() {
				t.Errorf("%s then %s: the working says %+v", c.previous, c.next, trace)
			}
		}
	}
}

func ExampleBook_Waits() {
	book, _ := plants.Builtin()
	kale, _ := book.Plant("ornamental-kale")
	stock, _ := book.Plant("stock")
	alyssum, _ := book.Plant("sweet-alyssum")
	fmt.Println(len(book.Waits(kale, stock, nil)))
	for _, w := range book.Waits(kale, alyssum, []string{"clubroot"}) {
		fmt.Println(w.Disease, w.Reason, w.Years, "years; new mix:", w.NewMix)
	}
	// Output:
	// 0
	// clubroot after_disease 7 years; new mix: clears
}
