package planner

import (
	"time"

	"fourturn/planner/civil"
	"fourturn/planner/climate"
	"fourturn/planner/finding"
	"fourturn/planner/mix"
	"fourturn/planner/nutrition"
	"fourturn/planner/quantity"
	"fourturn/planner/vessel"
	"fourturn/planner/working"
	"fourturn/plants"
)

// Reference is what the planner knows of the world outside the plan.
//
// The climate table is part of the climate chapter and always at hand.
type Reference struct {
	Book  *plants.Book
	Years *YearMemory // what was searched for before; nil searches for everything anew
}

// Outlook is everything worked out for a plan on a day. It is immutable: nobody
// changes it, and it may be read from any goroutine.
type Outlook struct {
	Plan     *Plan
	Today    civil.Date
	First    civil.Date // first day that is planned for
	Last     civil.Date // last day
	Sites    []SiteOutlook
	Pots     []PotOutlook // in the order of Plan.Pots
	Rounds   []Round      // by date
	Fewest   Figure       // how many coming rounds there are, with the bound below which no plan goes; zero without any
	Shed     []Shelf      // fertilisers, in the order of Plan.Products
	Due      []Due        // by date
	Buying   []Buying     // what the coming year asks for, by product
	Findings []finding.Finding

	cans    map[can]nutrition.Solution // of the coming rounds
	soluble map[string]turnProduct     // soluble products, by id
	slopes  map[string]nutrition.Slope // of those of which one is known

	ref Reference
}

// SiteOutlook is a site with its climate, in plain daily figures for a picture of
// the year. It is empty but for Site where the plan names no climate that is known.
type SiteOutlook struct {
	Site      *Site
	Known     bool            // whether there is a climate
	Place     string          // name of the station, with its country
	Elevation quantity.Length // that the climate was corrected to
	Latitude  float64         // degrees, north positive
	Source    working.Source  // of the climate
	Period    string          // years that the normals cover
	Estimated bool            // whether freeze dates are estimated
	Low       []float64       // °C, mean daily minimum on each day of a common year, 365 entries from 1 January
	High      []float64       // °C, mean daily maximum
	Freeze    []float64       // odds, 0 to 1, that it still freezes after (spring) or has frozen by (autumn) the day
	Daylight  []float64       // hours from sunrise to sunset
	Warmth    bool            // whether the temperatures are estimated
	Told      []string        // keys of what is to be said of such a year, such as that there is no frost
	Figures   []Figure        // last freeze, first freeze, season length, at the plan's risk; dates that do not exist are left out
	Extremes  []Figure        // mean yearly lowest temperature, hardiness zone, days above 30 °C, heat zone
	Months    []MonthOutlook  // January first
	Seasons   []SeasonOutlook // the four planting seasons, as they come in a year from today
	climate   *climate.Climate
	today     civil.Date
}

// MonthOutlook is a month at a site as it normally is. Figures of a single day are
// those of the 15th.
type MonthOutlook struct {
	Month       time.Month
	Low, High   Figure // °C, mean daily minimum and maximum
	Daylight    Figure // hours from sunrise to sunset
	Radiation   Figure // MJ/m² a day above the atmosphere
	Evaporation Figure // mm a day, reference evapotranspiration
	Rain        float64
	RainKnown   bool
}

// SeasonOutlook is one planting season at a site.
type SeasonOutlook struct {
	Season   Season
	Exists   bool   // false where this site has no such season; Reason says why
	AllYear  bool   // it never ends: Start is zero
	Reason   string // key of why the season begins when it does
	Start    Figure // the day at the plan's risk, with its working
	Earliest civil.Date
	Latest   civil.Date
}

// PotOutlook is everything worked out for one pot. Where the pot's size is faulty
// the figures are zero and a finding names the field.
type PotOutlook struct {
	Pot       *Pot
	Spot      *Spot          // nil where the plan names none
	Site      *SiteOutlook   // nil likewise
	Vessel    *vessel.Vessel // nil where the size is faulty
	Faults    []vessel.Fault
	Brim      Figure // L, volume up to the brim
	Fill      Figure // L, volume up to the fill line
	Mix       Figure // L of loose mix for a first filling
	Refresh   Figure // L of loose mix for a change-out by the pot's policy
	Charge    Figure // kg of slow-release fertiliser for a first filling
	Spoons    Figure // level US tablespoons of the same
	Empty     Figure // kg, the pot alone; zero where its material is not known
	Tops      Figure // kg, the plants above the mix
	Dry       Figure // kg, filled, mix dry
	Wet       Figure // kg, filled, mix at container capacity
	Load      Figure // kg/m², on the floor when watered; zero where the pot hangs
	Layer     Figure // L, of the drainage layer; zero without one
	Reservoir Figure // L, of water in the reservoir; zero without one
	Weight    mix.Weight
	Stands    []Stand
	Feeds     []Feed

	thermal *nutrition.Thermal // of its mix
	tracks  []nutrition.Track  // its charges, in order of date
	takings []nutrition.Taking // mix that goes out at its change-outs
	growth  []nutrition.Growth // days on which its plants eat
	search  *yearSearch        // of the days of its stands; nil where nothing was searched for
}

// Standing returns the planting that stands in the pot on a day, or nil.
func (p *PotOutlook) Standing(day civil.Date) *Stand {
	for i := range p.Stands {
		if s := &p.Stands[i]; s.From <= day && day < s.To {
			return s
		}
	}
	return nil
}

// Stand is one planting in a pot from its change-out to the next.
type Stand struct {
	Planting *Planting
	Season   Season
	From     civil.Date // the change-out day
	To       civil.Date // the day of the next; the stand ends before it
	Earliest civil.Date // the first safe day at the plan's risk
	Latest   civil.Date // the last sensible day
	Good     Days       // the days about From that cost less than 5 % of the display of the season; zero where nothing was searched for
	Reason   string     // key of why the day is what it is
	Reasons  []string   // keys of all reasons, that of Reason among them
	Pinned   bool       // the person chose the day
	Happened bool       // the log says so
	Start    Figure     // From, with its working
	Display  Figure     // display days that the planting is expected to give; zero where nothing was searched for
	Plants   []PlantCount
	Mix      Figure           // L of fresh loose mix for this change-out
	Balance  mix.Balance      // what goes in and out of the pot at this change-out; zero where its size is faulty
	Charge   Figure           // kg of slow-release fertiliser for this change-out
	Spoons   Figure           // level US tablespoons of the same
	Spent    Figure           // day on which the charge is spent; zero without one
	Feeder   nutrition.Feeder // class of its hungriest plant

	first bool // the first of its season that is not over
	turn  int  // which turn of the pot's search it is, from 1; 0 where its day was not searched for
}

// PlantCount is how many of one plant go into a planting.
type PlantCount struct {
	Plant string // id in the plant book
	Known *plants.Plant
	Role  Role
	Count Figure
}

// Feed is one feed of one pot, coming or done.
type Feed struct {
	Date    civil.Date
	Product string  // id
	Water   Figure  // L of dilute feed for this pot
	Share   float64 // of the strength in the can; the rest is plain water. 0 where it is not known
	Reason  string  // key of why the share is below 1, or ""
	Done    bool
}

// Round is one shared feeding day, one product in the can.
type Round struct {
	Date    civil.Date
	Product string // id
	Pots    []int  // indices into Outlook.Pots
	Water   Figure // L of dilute feed for all of them
	Dose    Figure // kg of product for all of it
	Spoons  Figure // level US teaspoons a can
	Cans    Figure // how many cans
	Done    bool

	Strength Figure // ppm of nitrogen in the can
	EC       Figure // mS/cm of the feed and the water together; zero where no slope is known
	Stock    Figure // g of product per litre of stock for the injector; zero without one
	Weaker   int    // pots that get less than full strength
	Number   int    // counts the plan's rounds, those that the log knows first, from 1
	solution nutrition.Solution
}

// DueKind says what kind of work is due.
type DueKind string

// The kinds of work.
const (
	DueFeed      DueKind = "feed"
	DueChangeOut DueKind = "change_out"
)

// Due is work that the plan asks for by a date.
type Due struct {
	Date    civil.Date
	Kind    DueKind
	Pots    []int      // indices into Outlook.Pots
	Product string     // for DueFeed
	Season  Season     // for DueChangeOut
	Round   int        // index into Outlook.Rounds, for DueFeed
	Until   civil.Date // the reminder sleeps until this day; zero where it does not
}

// Overdue returns by how many days the work has slipped on a day, or 0.
func (d Due) Overdue(today civil.Date) int { return max(0, int(today-d.Date)) }

// Buying is how much of one thing the coming year asks for.
type Buying struct {
	Product string // id, or empty for potting mix
	Need    Figure // L of mix, or kg of fertiliser
}
