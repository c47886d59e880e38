package plants_test

import (
	"testing"

	"fourturn/plants"
)

func builtin(t testing.TB) *plants.Book {
	t.Helper()
	b, err := plants.Builtin()
	if err != nil {
		t.Fatal(err)
	}
	return b
}

func TestBuiltinIsWhole(t *testing.T) {
	b := builtin(t)
	if got := len(b.Plants()); got < 120 {
		t.Errorf("%d plants", got)
	}
	p, ok := b.Plant("pansy")
	if !ok || p.Name() != "Pansy" || p.Genus() != "Viola" {
		t.Errorf("pansy is %+v", p)
	}
}
