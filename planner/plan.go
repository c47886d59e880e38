package planner

import (
	"slices"

	"fourturn/planner/civil"
	"fourturn/planner/climate"
	"fourturn/planner/quantity"
)

// Plan is the whole document. The zero Plan is an empty one; lists keep the order
// in which the person arranged them.
type Plan struct {
	ID        string // tells the plan from others, in calendars say; empty in plans of old files
	Title     string
	Units     quantity.System // what the person reads
	Currency  string          // ISO 4217 code, such as "EUR"; empty means amounts without a sign
	Risk      float64         // share of years in which the person accepts to be caught by a freeze, 0.01 to 0.99
	Household Household
	Sites     []Site
	Spots     []Spot
	Mix       MixSettings
	Year      YearSettings
	Feeding   FeedingSettings
	Products  []Product
	Blends    []Blend
	Recipes   []Recipe
	Pots      []Pot
	Reminders Reminders
	Snoozed   []Snooze
	Log       []Entry
}

// DefaultRisk is the cautious appetite for risk: caught by a freeze in one year
// of ten. NOAA publishes the 10 % level as its cautious date.
const DefaultRisk = 0.10

// Household says who lives with the pots, for the cautions on plants.
type Household struct {
	Cats     bool
	Dogs     bool
	Children bool
}

// Site is a place with a climate. What is nearer to the person wins: their own daily
// record before typed means, typed means before the station of the table, typed frost
// dates before all others.
type Site struct {
	ID            string
	Name          string
	Latitude      *float64         // degrees, north positive; nil, with Longitude, means that of the station
	Longitude     *float64         // degrees, east positive
	Station       string           // id in the climate table; empty takes the nearest where the site has a place
	Elevation     *quantity.Length // of the site; nil means that of the station
	LapseRate     float64          // K/km by which the air is colder higher up; 0 means [climate.DefaultLapseRate]
	FreezeStation string           // id of a US freeze station whose dates replace those of Station; empty for none
	Frost         FrostDates       // typed in; zero where the station's are used
	Means         []MonthMeans     // typed in, at the site; months that are missing are estimated
	Record        *climate.Digest  // what the person's own daily record tells; nil without one
}

// FrostDates are a person's own last and first frost at 0 °C.
type FrostDates struct {
	Last  civil.MonthDay
	First civil.MonthDay
	Odds  float64 // that the last one is on or after, the first on or before the day; 0 means the even dates, 50 %
}

// MonthMeans are the mean daily minimum and maximum of a month; nil where not known.
type MonthMeans struct {
	Month Month
	Tmin  *quantity.Temperature
	Tmax  *quantity.Temperature
}

// Month is a month as the plan's file names it, "jan" to "dec".
type Month string

// Months lists the months in order.
var Months = [...]Month{"jan", "feb", "mar", "apr", "may", "jun", "jul", "aug", "sep", "oct", "nov", "dec"}

// Index returns where the month stands in [Months], or -1.
func (m Month) Index() int { return slices.Index(Months[:], m) }

// Light is how much sun a spot gets.
type Light string

// The light of a spot, as plant labels use the words.
const (
	Sun     Light = "sun"   // six hours of direct sun or more
	PartSun Light = "part"  // three to six hours
	Shade   Light = "shade" // less than three hours
	NoLight Light = ""      // not said
)

// Spot is where a pot stands: its light, its shelter, and what that does to the
// site's temperatures.
type Spot struct {
	ID          string
	Name        string
	Site        string // id of the site
	Light       Light
	Shelter     string   // key of a kind of place in the climate chapter, such as "open" or "south_wall"
	NightOffset *float64 // kelvin on the site's minimum; nil means the default of the shelter
	DayOffset   *float64 // kelvin on the site's maximum; nil likewise
}

// MixSettings says how pots are filled and refreshed.
type MixSettings struct {
	Settling    float64         // share by which loose mix settles when firmed and watered; 0 means the default
	Refresh     float64         // share of old mix replaced at a change-out; 0 means the default
	RetireAfter int             // mean age in planting seasons from which all mix is replaced; 0 means the default
	Substrate   string          // key of a mix with published properties, for the weight; "" means the usual
	Blend       string          // id of the blend that pots are filled with; "" for ready mix
	Pail        quantity.Volume // of the person's own pail for mix; 0 for none
	Scoop       quantity.Volume // of the person's own scoop for slow release; 0 for none
}
