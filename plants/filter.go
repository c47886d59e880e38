package plants

import (
	"slices"

	"fourturn/planner/quantity"
)

// Filter chooses plants. Each list that is not empty must share an item with the
// plant; the zero Filter takes every plant.
type Filter struct {
	Kinds       []Kind
	Seasons     []Season
	Roles       []Role
	Light       []Light
	Water       []Level
	Feeders     []Feeder
	FrostClass  []FrostClass
	Families    []string
	Colours     []Colour // of flowers or leaves
	Pollinators []Pollinator
	Edible      []EdiblePart
	Sizes       []string // ids of sizes it is sold in

	Tallest  quantity.Length // 0 for any; the smallest kinds must be no taller
	Shortest quantity.Length // 0 for any; the tallest kinds must be no shorter

	Evergreen bool // only plants that keep their leaves
	Scented   bool // only plants with a scent
	Own       bool // only plants of which the person's own book says something
	// NonToxicTo leaves only plants that the lists name as non-toxic to each of
	// these: not listed is not enough.
	NonToxicTo []Creature
	// NotHarmfulTo leaves out plants that a list names as harmful to one of these,
	// or on which lists conflict; plants that are not listed remain.
	NotHarmfulTo []Creature
	// Suits leaves out plants for which it is false, such as those that do not live
	// at a site now. It may be nil.
	Suits func(*Plant) bool
}

// Accepts reports whether the filter takes the plant.
func (f *Filter) Accepts(p *Plant) bool {
	return among(f.Kinds, p.Kind) && among(f.Roles, p.Role) && among(f.Water, p.Water) &&
		among(f.Feeders, p.Feeder) && among(f.FrostClass, p.FrostClass) && among(f.Families, p.Family) &&
		share(f.Seasons, p.Seasons) && share(f.Light, p.Light) &&
		(share(f.Colours, p.Colours) || share(f.Colours, p.Foliage.Colours)) &&
		share(f.Pollinators, p.Pollinators) && share(f.Edible, p.Edible) &&
		f.acceptsSize(p) && f.acceptsTraits(p) && f.acceptsListing(p) &&
		(f.Suits == nil || f.Suits(p))
}

func (f *Filter) acceptsSize(p *Plant) bool {
	if f.Tallest > 0 && p.Height.Low > f.Tallest || f.Shortest > 0 && p.Height.High < f.Shortest {
		return false
	}
	return len(f.Sizes) == 0 || slices.ContainsFunc(p.Sold, func(s Sold) bool { return slices.Contains(f.Sizes, s.Size) })
}

func (f *Filter) acceptsTraits(p *Plant) bool {
	return (!f.Evergreen || p.Foliage.Evergreen) &&
		(!f.Scented || p.Scent == LightScent || p.Scent == StrongScent) &&
		(!f.Own || len(p.Own) > 0)
}

func (f *Filter) acceptsListing(p *Plant) bool {
	for _, c := range f.NonToxicTo {
		if p.Toxicity.For(c) != ListedNonToxic {
			return false
		}
	}
	for _, c := range f.NotHarmfulTo {
		if l := p.Toxicity.For(c); l.Harmful() || l == Conflicting {
			return false
		}
	}
	return true
}

// Select returns the plants that the filter takes, in their order.
func (f *Filter) Select(plants []*Plant) []*Plant {
	var out []*Plant
	for _, p := range plants {
		if f.Accepts(p) {
			out = append(out, p)
		}
	}
	return out
}

func among[T comparable](wanted []T, v T) bool {
	return len(wanted) == 0 || slices.Contains(wanted, v)
}

func share[T comparable](wanted, have []T) bool {
	if len(wanted) == 0 {
		return true
	}
	for _, v := range have {
		if slices.Contains(wanted, v) {
			return true
		}
	}
	return false
}
