package plants

import (
	"cmp"
	"math"
	"slices"

	"fourturn/planner/quantity"
)

// Order is what a list of plants is sorted by.
type Order string

// The orders. Plants without the value come last, whichever way the list goes.
const (
	ByName      Order = "name"
	ByBotanical Order = "botanical"
	ByFamily    Order = "family"
	ByKind      Order = "kind"
	ByHeight    Order = "height"
	BySpread    Order = "spread"
	ByLowest    Order = "lowest_in_pot"
	ByNight     Order = "planting_out_night"
	ByHeat      Order = "heat_limit"
	ByWater     Order = "water"
	ByShows     Order = "shows"
)

// Orders lists the orders as a screen offers them.
var Orders = [...]Order{
	ByName, ByBotanical, ByFamily, ByKind, ByHeight, BySpread, ByLowest, ByNight, ByHeat, ByWater, ByShows,
}

// sortKey is what a plant is sorted by: a text or a number.
type sortKey struct {
	plant  *Plant
	text   string
	number float64 // NaN where the plant has no value
	name   string
}

// Sorted returns the plants in an order; equal ones are sorted by name, then id.
// The list that was given stays as it is. Sorted panics on an order that does
// not exist.
func Sorted(plants []*Plant, by Order, descending bool) []*Plant {
	key, ok := sortKeys[by]
	if !ok {
		panic("plants: no order " + string(by))
	}
	keys := make([]sortKey, len(plants))
	for i, p := range plants {
		keys[i] = sortKey{plant: p, name: fold(p.Name())}
		keys[i].text, keys[i].number = key(p)
	}
	slices.SortFunc(keys, func(a, b sortKey) int { return a.compare(b, descending) })
	out := make([]*Plant, len(keys))
	for i, k := range keys {
		out[i] = k.plant
	}
	return out
}

func (k sortKey) compare(other sortKey, descending bool) int {
	missing, otherMissing := math.IsNaN(k.number), math.IsNaN(other.number)
	if missing != otherMissing {
		if missing {
			return 1
		}
		return -1
	}
	if !missing {
		c := cmp.Or(cmp.Compare(k.text, other.text), cmp.Compare(k.number, other.number))
		if descending {
			c = -c
		}
		if c != 0 {
			return c
		}
	}
	return cmp.Or(cmp.Compare(k.name, other.name), cmp.Compare(k.plant.ID, other.plant.ID))
}

var sortKeys = map[Order]func(*Plant) (string, float64){
	ByName:      func(p *Plant) (string, float64) { return fold(p.Name()), 0 },
	ByBotanical: func(p *Plant) (string, float64) { return botanicalKey(p), 0 },
	ByFamily:    func(p *Plant) (string, float64) { return p.Family, 0 },
	ByKind:      func(p *Plant) (string, float64) { return "", float64(slices.Index(Kinds[:], p.Kind)) },
	ByHeight:    func(p *Plant) (string, float64) { return "", float64(p.Height.High) },
	BySpread:    func(p *Plant) (string, float64) { return "", float64(p.Spread) },
	ByLowest:    func(p *Plant) (string, float64) { return "", temperatureKey(p.LowestInPot) },
	ByNight:     func(p *Plant) (string, float64) { return "", temperatureKey(p.PlantingOutNight) },
	ByHeat:      func(p *Plant) (string, float64) { return "", temperatureKey(p.HeatLimit) },
	ByWater:     func(p *Plant) (string, float64) { return "", float64(slices.Index(Levels[:], p.Water)) },
	ByShows: func(p *Plant) (string, float64) {
		if w, ok := p.Shows.Get(); ok {
			return "", w.High
		}
		return "", math.NaN()
	},
}

func botanicalKey(p *Plant) string {
	if len(p.Botanical) == 0 {
		return ""
	}
	return fold(p.Botanical[0])
}

func temperatureKey(t Maybe[quantity.Temperature]) float64 {
	return float64(t.Or(quantity.Temperature(math.NaN())))
}
