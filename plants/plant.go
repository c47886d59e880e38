package plants

import "fourturn/planner/quantity"

// Plant is one kind of plant as a garden shop sells it. Plants of a [Book] are
// shared and must not be changed; [Plant.Clone] gives a copy to edit.
type Plant struct {
	ID        string
	Names     []string // common names, the usual one first
	Botanical []string // current botanical names; more than one where the trade sells several under one name
	Synonyms  []string // former botanical names still seen on labels
	Family    string
	Kind      Kind

	Seasons    []Season // the plantings it is sold for
	Role       Role
	Light      []Light // that suits it
	Water      Level
	Feeder     Feeder     // empty for cut stems
	FrostClass FrostClass // empty for cut stems

	Height  Span            // in a pot, from the smallest kinds to the tallest
	Spread  quantity.Length // in a pot, full
	Spacing quantity.Length // centre to centre in a pot

	LowestInPot      Maybe[quantity.Temperature] // air, hardened, in a pot
	PlantingOutNight Maybe[quantity.Temperature] // nights from which it may be planted out
	HeatLimit        Maybe[quantity.Temperature] // mean daily maximum above which it declines
	RootZoneLimit    Maybe[quantity.Temperature] // lowest temperature of the mix that the roots stand

	TemperatureClass   TemperatureClass            // empty for cut stems
	BaseTemperature    Maybe[quantity.Temperature] // no development below
	OptimumTemperature Maybe[quantity.Temperature] // fastest development; looks are often best below it

	Zone  Maybe[int]   // the coldest USDA hardiness zone in the ground, 1 to 13
	Sold  []Sold       // the sizes it is sold in, smallest first
	Shows Maybe[Weeks] // how long it looks good in one planting
	Chill Maybe[Weeks] // cold weeks that a bulb needs before it flowers

	Diseases []string // ids of disease groups
	Toxicity Toxicity
	Invasive []Invasive

	Colours     []Colour // of flowers, fruit or coloured leaves, whatever it is planted for
	Foliage     Foliage
	Scent       Scent
	Pollinators []Pollinator
	Edible      []EdiblePart
	Drawing     Drawing

	Notes     string
	Conflicts []Conflict

	// Group is the file of the built-in book that holds the plant, such as
	// "cool-annuals", or "" for one of the person's own.
	Group string
	// Own names the values that the person's own book gives.
	Own []Field

	ground *ground
}

// Sold is one size in which a plant is sold.
type Sold struct {
	Size        string         // id of a [Size]
	WeeksToFull Maybe[float64] // from planting to full size, in mild weather
}

// Invasive is a region where the plant escapes from gardens.
type Invasive struct {
	Region string // in words, such as "Florida wetlands"
	Note   string
}

// Name returns the usual common name.
func (p *Plant) Name() string {
	if len(p.Names) == 0 {
		return p.ID
	}
	return p.Names[0]
}

// Genus returns the first word of the first botanical name, the mark of a
// hybrid left out.
func (p *Plant) Genus() string {
	if len(p.Botanical) == 0 {
		return ""
	}
	return genusOf(p.Botanical[0])
}

// WeeksToFull returns the weeks that a plant bought in a size takes to fill its
// place, and whether that is known.
func (p *Plant) WeeksToFull(size string) (float64, bool) {
	for _, s := range p.Sold {
		if s.Size == size {
			return s.WeeksToFull.Get()
		}
	}
	return 0, false
}

// Has reports whether the plant has a value for the field.
func (p *Plant) Has(f Field) bool {
	a, ok := attributeOf(f)
	return ok && a.write(p) != nil
}
