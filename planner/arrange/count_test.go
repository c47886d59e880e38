package arrange_test

import (
	"encoding/csv"
	"fmt"
	"math"
	"os"
	"strconv"
	"testing"

	"pgregory.net/rapid"

	"fourturn/planner/arrange"
	"fourturn/planner/quantity"
)

func round(diameter quantity.Length) arrange.Opening {
	d := float64(diameter)
	return arrange.Opening{Area: quantity.Area(math.Pi * d * d / 4), Perimeter: quantity.Length(math.Pi * d)}
}

// A 14 in pot planted in the traditional way takes 4 to 6 plants (Northeast Ohio
// Thrive, D. Hessel); at a spacing of 25 cm the count is 5.
func ExampleCapacity() {
	fmt.Printf("%.1f\n", arrange.Capacity(round(14*quantity.Inch), 25*quantity.Centimetre))
	// Output: 5.3
}

func TestPublishedCounts(t *testing.T) {
	file, err := os.Open("../../testdata/published/arrange.csv")
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	rows, err := csv.NewReader(file).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	number := func(s string) float64 {
		x, err := strconv.ParseFloat(s, 64)
		if err != nil {
			t.Fatal(err)
		}
		return x
	}
	for _, row := range rows[1:] {
		spacing := quantity.Length(number(row[2])) * quantity.Centimetre
		got := arrange.Counts(round(quantity.Length(number(row[1]))*quantity.Inch), []arrange.Kind{{Spacing: spacing}})
		if n := float64(got[0].Plants); n < number(row[3]) || n > number(row[4]) {
			t.Errorf("%s %s in: %v plants, published %s to %s (%s)", row[0], row[1], n, row[3], row[4], row[5])
		}
	}
}

func TestCountsLaws(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		opening := round(quantity.Length(rapid.Float64Range(0.05, 3).Draw(t, "diameter")))
		kinds := rapid.SliceOfN(rapid.Custom(func(t *rapid.T) arrange.Kind {
			return arrange.Kind{
				Spacing: quantity.Length(rapid.Float64Range(0.03, 1).Draw(t, "spacing")),
				Share:   rapid.SampledFrom([]float64{0, 0.2, 0.5, 0.9}).Draw(t, "share"),
			}
		}), 1, 6).Draw(t, "kinds")
		held := 0.0
		for i, c := range arrange.Counts(opening, kinds) {
			if c.Plants < 1 {
				t.Fatalf("kind %d gets %d plants", i, c.Plants)
			}
			held += c.Exact / arrange.Capacity(opening, kinds[i].Spacing)
		}
		if held > 1+1e-9 {
			t.Fatalf("the kinds hold %v of the surface", held)
		}
		wider := opening
		wider.Area *= 1.5
		if arrange.Capacity(wider, kinds[0].Spacing) <= arrange.Capacity(opening, kinds[0].Spacing) {
			t.Fatal("a wider pot takes no more plants")
		}
	})
}

func TestFixedCountStands(t *testing.T) {
	got := arrange.Counts(round(0.4), []arrange.Kind{{Spacing: 0.2, Fixed: 11}, {Spacing: 0.2}})
	if got[0].Plants != 11 {
		t.Errorf("a count of 11 became %d", got[0].Plants)
	}
}
