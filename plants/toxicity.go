package plants

// Listing is what the lists of poisonous plants say of a plant for one kind of
// creature. A plant that is not listed is not thereby safe.
type Listing string

// The listings. Those from [ListedIrritant] on are listed as harmful, the mildest first.
const (
	NotListed       Listing = "not_listed"
	ListedNonToxic  Listing = "listed_non_toxic"
	Conflicting     Listing = "conflicting"     // lists contradict each other
	ListedIrritant  Listing = "listed_irritant" // skin, eyes or mouth
	ListedMild      Listing = "listed_mild"
	ListedToxic     Listing = "listed_toxic"
	ListedDangerous Listing = "listed_dangerous" // can kill
)

// Harmful reports whether a list names the plant as harmful in any degree.
func (l Listing) Harmful() bool {
	switch l {
	case ListedIrritant, ListedMild, ListedToxic, ListedDangerous:
		return true
	case NotListed, ListedNonToxic, Conflicting, "":
		return false
	}
	return false
}

// Creature is who may be harmed.
type Creature string

// The creatures that listings are kept for.
const (
	Dogs   Creature = "dogs"
	Cats   Creature = "cats"
	People Creature = "people"
)

// Hazard is how a plant harms, and so how it is handled.
type Hazard string

// The hazards.
const (
	SkinIrritant     Hazard = "skin_irritant"    // gloves
	MilkySap         Hazard = "milky_sap"        // latex: gloves, and eye cover when cutting
	Oxalates         Hazard = "oxalates"         // needle crystals: burning mouth, swelling
	SolubleOxalates  Hazard = "soluble_oxalates" // kidneys, in quantity
	HeartPoison      Hazard = "heart_poison"
	KidneyFailure    Hazard = "kidney_failure" // of cats, by lilies: every part, pollen and vase water
	BloodCells       Hazard = "blood_cells"    // garlic family: red-cell damage in cats and dogs
	PoisonousBerries Hazard = "poisonous_berries"
	PoisonousBulb    Hazard = "poisonous_bulb"
	Saponins         Hazard = "saponins"
	Alkaloids        Hazard = "alkaloids"
	Photosensitiser  Hazard = "photosensitiser" // sap and sun burn skin
	HotFruit         Hazard = "hot_fruit"       // capsaicin
	EssentialOils    Hazard = "essential_oils"
	Thorns           Hazard = "thorns" // spines and sharp leaf tips
	CarriesBlight    Hazard = "carries_blight"
)

// Toxicity is what the lists say and how the plant harms.
type Toxicity struct {
	Dogs, Cats, People Listing
	Hazards            []Hazard
	Note               string
}

// For returns the listing for a creature. It panics on one that no listing is kept for.
func (t Toxicity) For(c Creature) Listing {
	switch c {
	case Dogs:
		return t.Dogs
	case Cats:
		return t.Cats
	case People:
		return t.People
	}
	panic("plants: no listing is kept for " + string(c))
}

// The words of each vocabulary.
var (
	Listings  = [...]Listing{NotListed, ListedNonToxic, Conflicting, ListedIrritant, ListedMild, ListedToxic, ListedDangerous}
	Creatures = [...]Creature{Dogs, Cats, People}
	Hazards   = [...]Hazard{
		SkinIrritant, MilkySap, Oxalates, SolubleOxalates, HeartPoison, KidneyFailure, BloodCells, PoisonousBerries,
		PoisonousBulb, Saponins, Alkaloids, Photosensitiser, HotFruit, EssentialOils, Thorns, CarriesBlight,
	}
)
