package planner

import (
	"fourturn/planner/civil"
	"fourturn/planner/quantity"
)

// FeedingSettings says how slow release and the alternating feeds go.
type FeedingSettings struct {
	SlowRelease string          // id of the product worked into the mix
	OnTop       bool            // slow release is scattered on top, not mixed in
	Basis       ChargeBasis     // which mix a charge is reckoned on
	Turn        []string        // ids of the soluble products, in the order they take turns
	Interval    int             // days between a pot's feeds; 0 takes the interval of the feeder class
	Can         quantity.Volume // volume of the can; 0 means 9 L
	FirstDay    string          // weekday that rounds prefer, such as "saturday"; empty for any
	WaterEC     float64         // mS/cm, conductivity of the water itself
	Leaching    float64         // share of a feed that runs through; 0 takes the middle of the published 10 to 15 %
	Injector    float64         // the 100 of an injector's 1:100; 0 for a plain can
	PartsAdded  bool            // 1:100 is one part added to 100, not one part that makes 100
	Lead        int             // days before a product runs out by which to buy; 0 means 14
	Rules       FeedRules
	Release     ReleaseSettings
}

// ChargeBasis says which mix of a pot a charge is reckoned on.
type ChargeBasis string

// The bases. The empty basis is all the mix, but the fresh part alone while the charge
// before is not spent, so that nothing is doubled.
const (
	ChargeAll   ChargeBasis = "all"   // every litre, at every change-out
	ChargeFresh ChargeBasis = "fresh" // the fresh mix alone
)

// FeedRules say when soluble feeds are given and how strong. A zero field takes the
// default of the nutrition chapter.
type FeedRules struct {
	StarterWeeks float64               // covered by the starter charge of fresh mix
	ChargeWeeks  float64               // covered by a slow-release charge; 0 lets feeds go on beside it
	StopBefore   int                   // days without feed before a change-out
	Coldest      *quantity.Temperature // of the mix, below which nothing is fed
	HeatAbove    quantity.Temperature  // of the mix, above which the feed is weaker
	HeatShare    float64               // of the strength in heat
	YoungDays    int                   // after planting, while the feed is weaker
	YoungShare   float64               // of the strength for the young
	RestFrom     civil.MonthDay        // first day of every year's rest, on which nothing is fed; zero for none
	RestTo       civil.MonthDay        // last day of it
}

// ReleaseSettings say how slow release is reckoned. A zero field takes the default of
// the nutrition chapter.
type ReleaseSettings struct {
	Spent            float64 // share released at which a charge counts as spent, 0.75 to 0.95
	ActivationEnergy float64 // kJ/mol; published are 37 to 46
}

// Reminders say when the program reminds of what is due.
type Reminders struct {
	At    string // time of day, such as "08:00"; empty means that
	Quiet bool   // no notices on the desktop; the calendar file keeps its alarms
}

// Snooze puts the reminder of some due work off to a day.
//
// A round of feeds really moves: its pots are not fed before the day. A change-out keeps
// the day that the site and its plants give; only the reminder sleeps.
type Snooze struct {
	Kind   DueKind
	Pots   []string // ids
	Season Season   // of a change-out
	Until  civil.Date
	Set    civil.Date // the day on which it was put off: a feed since then ends it
}
