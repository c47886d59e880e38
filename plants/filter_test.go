package plants_test

import (
	"slices"
	"testing"

	"pgregory.net/rapid"

	"fourturn/planner/quantity"
	"fourturn/plants"
)

func ids(list []*plants.Plant) []string {
	out := make([]string, len(list))
	for i, p := range list {
		out[i] = p.ID
	}
	return out
}

func TestFilters(t *testing.T) {
	all := builtin(t).Plants()
	for name, c := range map[string]struct {
		filter  plants.Filter
		in, out string
	}{
		"season":      {plants.Filter{Seasons: []plants.Season{plants.Winter}}, "pansy", "zinnia"},
		"light":       {plants.Filter{Light: []plants.Light{plants.Shade}}, "hosta", "zinnia"},
		"role":        {plants.Filter{Roles: []plants.Role{plants.Spiller}}, "petunia", "canna"},
		"water":       {plants.Filter{Water: []plants.Level{plants.Low}}, "stonecrop", "papyrus"},
		"flower":      {plants.Filter{Colours: []plants.Colour{plants.Black}}, "pansy", "snowdrop"},
		"leaf colour": {plants.Filter{Colours: []plants.Colour{plants.Silver}}, "dusty-miller", "zinnia"},
		"tall":        {plants.Filter{Shortest: quantity.Metre}, "canna", "pansy"},
		"short":       {plants.Filter{Tallest: 10 * quantity.Centimetre}, "snowdrop", "canna"},
		"kind":        {plants.Filter{Kinds: []plants.Kind{plants.Herb}}, "basil", "pansy"},
		"edible":      {plants.Filter{Edible: []plants.EdiblePart{plants.EdibleFruit}}, "strawberry", "tulip"},
		"pollinator":  {plants.Filter{Pollinators: []plants.Pollinator{plants.Bees}}, "english-lavender", "boston-fern"},
		"size":        {plants.Filter{Sizes: []string{"bulb"}}, "tulip", "pansy"},
		"evergreen":   {plants.Filter{Evergreen: true}, "dwarf-boxwood", "tulip"},
		"scent":       {plants.Filter{Scented: true}, "sweet-pea", "celosia"},
		"family":      {plants.Filter{Families: []string{"Violaceae"}}, "viola", "petunia"},
		"suits": {plants.Filter{Suits: func(p *plants.Plant) bool {
			return p.LowestInPot.Or(99) < -20
		}}, "dwarf-alberta-spruce", "pansy"},
		"non-toxic":   {plants.Filter{NonToxicTo: []plants.Creature{plants.Cats, plants.Dogs}}, "pansy", "nemesia"},
		"not harmful": {plants.Filter{NotHarmfulTo: []plants.Creature{plants.Cats}}, "nemesia", "tulip"},
		"conflicting": {plants.Filter{NotHarmfulTo: []plants.Creature{plants.Cats}}, "pansy", "snapdragon"},
		"lilies":      {plants.Filter{NotHarmfulTo: []plants.Creature{plants.Cats}}, "zinnia", "pot-lily"},
	} {
		got := ids(c.filter.Select(all))
		if !slices.Contains(got, c.in) || slices.Contains(got, c.out) || len(got) == len(all) {
			t.Errorf("%s: %v", name, got)
		}
	}
	if own := (&plants.Filter{Own: true}).Select(all); len(own) != 0 {
		t.Errorf("own plants in the built-in book: %v", ids(own))
	}
}

// Laws: the empty filter takes all; a second wish only narrows; order is kept.
func TestLawFilter(t *testing.T) {
	all := builtin(t).Plants()
	if got := (&plants.Filter{}).Select(all); !slices.Equal(got, all) {
		t.Error("the empty filter leaves plants out")
	}
	rapid.Check(t, func(t *rapid.T) {
		f := plants.Filter{
			Seasons: rapid.SliceOfN(rapid.SampledFrom(plants.Seasons[:]), 0, 2).Draw(t, "seasons"),
			Colours: rapid.SliceOfN(rapid.SampledFrom(plants.Colours[:]), 0, 3).Draw(t, "colours"),
			Tallest: quantity.Length(rapid.Float64Range(0, 2).Draw(t, "tallest")),
		}
		wide := f.Select(all)
		f.Water = rapid.SliceOfN(rapid.SampledFrom(plants.Levels[:]), 1, 1).Draw(t, "water")
		narrow := f.Select(all)
		at := 0
		for _, p := range narrow {
			i := slices.Index(wide[at:], p)
			if i < 0 {
				t.Fatalf("%s is new in the narrower list, or out of order", p.ID)
			}
			at += i + 1
		}
	})
}

func TestSorted(t *testing.T) {
	all := builtin(t).Plants()
	for _, by := range plants.Orders {
		up, down := plants.Sorted(all, by, false), plants.Sorted(all, by, true)
		if len(up) != len(all) || len(down) != len(all) {
			t.Fatalf("%s loses plants", by)
		}
		if got := plants.Sorted(down, by, false); !slices.Equal(got, up) {
			t.Errorf("%s depends on the order it starts from", by)
		}
	}
	tallest := plants.Sorted(all, plants.ByHeight, true)
	for i := 1; i < len(tallest); i++ {
		if tallest[i].Height.High > tallest[i-1].Height.High {
			t.Fatalf("%s after %s", tallest[i].ID, tallest[i-1].ID)
		}
	}
	// Cut stems have no temperatures and come last both ways.
	for _, descending := range []bool{false, true} {
		list := plants.Sorted(all, plants.ByLowest, descending)
		if list[len(list)-1].Kind != plants.CutStems || list[0].Kind == plants.CutStems {
			t.Errorf("descending %v: begins with %s, ends with %s", descending, list[0].ID, list[len(list)-1].ID)
		}
	}
	if first := plants.Sorted(all, plants.ByName, false)[0]; first.Name() > "B" {
		t.Errorf("by name the first is %s", first.Name())
	}
}
