package planner

import "fourturn/planner/civil"

// YearSettings are the person's wishes for the year of all pots, and what work and
// display are worth. A zero value takes the default that is named.
type YearSettings struct {
	ChangeOuts int      // wanted a year at most, 1 to 5; 0 means [DefaultChangeOuts]
	Weekdays   []string // "monday" to "sunday" on which work may be done; none given means any
	Refused    []Days   // on which no work is done
	Lead       int      // days from ordering plants to planting

	LikedPlants    []string // ids in the plant book
	RefusedPlants  []string
	LikedColours   []string // in the plant book's words
	RefusedColours []string

	DayWorth  float64 // money that one day of full display is worth; 0 means [DefaultDayWorth]
	Labour    float64 // money an hour of work costs
	Minutes   float64 // for the change-out of a pot of [UsualPot]; 0 means the work chapter's
	Trip      float64 // minutes that a visit costs whatever is done; 0 means the work chapter's
	CrewHours float64 // of work a day, of all hands together; 0 means no limit
}

// DefaultChangeOuts is one for each planting season.
const DefaultChangeOuts = 4

// DefaultDayWorth is the money that a day of full display is worth where the person
// says nothing: a judgement, in any currency.
const DefaultDayWorth = 2

// Days are a stretch of days, both ends included.
type Days struct {
	From civil.Date
	To   civil.Date // zero means From
}

// Last returns the last day of the stretch.
func (d Days) Last() civil.Date { return max(d.From, d.To) }

// Pin is a wish that must hold: on some days the pot holds a planting of the recipe or
// the season, with the plant and with the colour, each as far as it is given. With
// Start, its change-out falls on one of those days.
type Pin struct {
	ID     string
	Recipe string // id
	Season Season
	Plant  string // id in the plant book
	Colour string
	Days
	Start bool
}

// Ban refuses a planting of a recipe, a plant or a colour on some days, or always where
// no days are given. It does not touch what stands already.
type Ban struct {
	ID     string
	Recipe string // id
	Plant  string // id in the plant book
	Colour string
	Days
}
