package planner

import (
	"fourturn/planner/civil"
	"fourturn/planner/quantity"
	"fourturn/planner/vessel"
)

// Pot is one container: its shape and size, where it stands and what is planted
// in it through the year.
type Pot struct {
	ID        string
	Name      string
	Spot      string // id of the spot
	Client    string // whose pot it is; empty for one's own
	Vessel    vessel.Spec
	Refresh   RefreshPolicy
	Plantings []Planting // one for each season that the pot is planted in
	Notes     string

	RefreshShare float64       // of old mix replaced at a change-out; 0 means the plan's
	RetireAfter  int           // mean age in planting seasons from which all mix is replaced; 0 means the plan's
	MixSince     civil.Date    // when the pot was last filled with all fresh mix; zero if not known
	PlantMass    quantity.Mass // of the plants above the mix at their heaviest; 0 means an estimate
	ChangeOuts   int           // wanted a year at most; 0 means as the plan says
	Match        string        // pots with the same word get the same plantings on the same days, as a pair at a door
	Pins         []Pin
	Bans         []Ban
}

// RefreshPolicy says what is done with old mix at a change-out.
type RefreshPolicy string

// The policies. The empty policy means [ReplaceShare] with the plan's share.
const (
	ReplaceShare RefreshPolicy = "share"  // take out a share, put fresh in
	TopUp        RefreshPolicy = "top_up" // only what went out with the root balls
	AllFresh     RefreshPolicy = "fresh"  // empty the pot and fill anew
)

// Season is one of the four planting seasons of a container.
type Season string

// The four planting seasons, in the order of a northern calendar year.
const (
	Spring Season = "spring" // cool-season annuals, until the heat
	Summer Season = "summer" // warm-season annuals, from the last frost
	Autumn Season = "autumn" // the autumn display
	Winter Season = "winter" // the winter display: hardy plants, bulbs beneath, cut greens
)

// Seasons lists the four planting seasons in order.
var Seasons = [...]Season{Spring, Summer, Autumn, Winter}

// Planting is what stands in a pot from one change-out to the next.
type Planting struct {
	Season Season
	Recipe string     // id of the recipe it was made from, or empty
	Plants []Part     // what is planted; empty means as the recipe says
	Start  civil.Date // a pinned first day; zero lets the site decide, every year
}

// Part is one kind of plant in a planting or a recipe.
type Part struct {
	Plant string  // id in the plant book
	Role  Role    // empty means the plant's usual role
	Count int     // plants; 0 lets the planner count from the pot's size and the share
	Share float64 // share of the pot's surface, 0 to 1; 0 shares what is left evenly
	Stays bool    // may stay in the pot at a change-out, the rest changing around it
}

// Role is what a plant does in a planting.
type Role string

// The trade's three roles.
const (
	Thriller Role = "thriller" // upright
	Filler   Role = "filler"   // mounding
	Spiller  Role = "spiller"  // trailing
)

// Recipe is a planting pattern by role and share, to be scaled to any pot.
type Recipe struct {
	ID     string
	Name   string
	Season Season
	Light  Light // empty suits any
	Parts  []Part
}
