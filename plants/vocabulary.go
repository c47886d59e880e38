package plants

// Kind is how the trade deals with a plant.
type Kind string

// The kinds of plant.
const (
	CoolAnnual      Kind = "cool_annual"      // one season, cool
	WarmAnnual      Kind = "warm_annual"      // one season, warm
	TenderPerennial Kind = "tender_perennial" // lives on where winters are mild
	Perennial       Kind = "perennial"        // herbaceous, hardy
	Grass           Kind = "grass"            // grasses and sedges
	Herb            Kind = "herb"             // kitchen herbs
	Vegetable       Kind = "vegetable"        // vegetables and fruit for pots
	Bulb            Kind = "bulb"             // bulbs, corms and tubers planted dry
	Shrub           Kind = "shrub"            // broad-leaved and woody
	Conifer         Kind = "conifer"
	CutStems        Kind = "cut_stems" // stuck in the mix, not growing
)

// Season is one of the four planting seasons of a container. Seasons are those
// of the plant, not of the calendar: they fall in other months in the south.
type Season string

// The four planting seasons.
const (
	Spring Season = "spring"
	Summer Season = "summer"
	Autumn Season = "autumn"
	Winter Season = "winter"
)

// Role is what a plant does in a planting, in the trade's words.
type Role string

// The three roles.
const (
	Thriller Role = "thriller" // upright
	Filler   Role = "filler"   // mounding
	Spiller  Role = "spiller"  // trailing
)

// Light is how much sun a spot gets, in the words of plant labels.
type Light string

// The light of a spot.
const (
	Sun     Light = "sun"   // six hours of direct sun or more
	PartSun Light = "part"  // three to six hours
	Shade   Light = "shade" // less than three hours
)

// Level is a rough measure of how much water a plant asks for.
type Level string

// The levels of water.
const (
	Low    Level = "low"
	Medium Level = "medium"
	High   Level = "high"
)

// Feeder is how much a plant wants to be fed.
type Feeder string

// The feeder classes.
const (
	LightFeeder  Feeder = "light"
	MediumFeeder Feeder = "medium"
	HeavyFeeder  Feeder = "heavy"
)

// FrostClass is how a young, hardened plant stands frost.
type FrostClass string

// The frost classes, hardiest first. Hardy and half-hardy are the H and HH of
// published annuals lists (hard frost to about −7 °C, light frost to about
// −2 °C); very tender plants are hurt by cold above freezing.
const (
	Hardy      FrostClass = "hardy"
	HalfHardy  FrostClass = "half_hardy"
	Tender     FrostClass = "tender"
	VeryTender FrostClass = "very_tender"
)

// TemperatureClass groups plants by base temperature (Michigan State University
// Extension, floriculture).
type TemperatureClass string

// The classes by base temperature.
const (
	ColdTolerant     TemperatureClass = "cold_tolerant"     // 3.9 °C (39 °F) or lower
	ColdIntermediate TemperatureClass = "cold_intermediate" // 4.4 to 7.2 °C (40 to 45 °F)
	ColdSensitive    TemperatureClass = "cold_sensitive"    // 7.8 °C (46 °F) or higher
)

// The words of each vocabulary in the order that a screen lists them.
var (
	Kinds              = [...]Kind{CoolAnnual, WarmAnnual, TenderPerennial, Perennial, Grass, Herb, Vegetable, Bulb, Shrub, Conifer, CutStems}
	Seasons            = [...]Season{Spring, Summer, Autumn, Winter}
	Roles              = [...]Role{Thriller, Filler, Spiller}
	Lights             = [...]Light{Sun, PartSun, Shade}
	Levels             = [...]Level{Low, Medium, High}
	Feeders            = [...]Feeder{LightFeeder, MediumFeeder, HeavyFeeder}
	FrostClasses       = [...]FrostClass{Hardy, HalfHardy, Tender, VeryTender}
	TemperatureClasses = [...]TemperatureClass{ColdTolerant, ColdIntermediate, ColdSensitive}
)

// Growing reports whether the plant has roots: cut stems do not.
func (k Kind) Growing() bool { return k != CutStems }

// Lasting reports whether plants of the kind are rated to overwinter by the
// two-zone rule, where they have a zone.
func (k Kind) Lasting() bool {
	switch k {
	case Perennial, Grass, Herb, Shrub, Conifer:
		return true
	case CoolAnnual, WarmAnnual, TenderPerennial, Vegetable, Bulb, CutStems:
		return false
	}
	return false
}
