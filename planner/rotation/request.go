package rotation

import (
	"fmt"
	"time"

	"fourturn/planner/civil"
)

// Request asks for the best year of one pot, or of pots that should match.
type Request struct {
	Today civil.Date
	Until civil.Date // end of the horizon; its own day no longer counts

	// Members are the pots that get the same plantings on the same days; usually one.
	Members []Member
	// Candidates are the plantings to choose from, those that suit light and size.
	Candidates []Planting

	PerYear  int        // change-outs a year at most, 1 to 5
	AtLeast  int        // change-outs a year at least, in years that lie wholly in the horizon
	YearFrom civil.Date // day on which the planning year began; zero means today
	Done     int        // change-outs already made in it

	Weights Weights
	Lingers Lingers
	History []Host // what stood or was ill in the present mix
	// TellOnly leaves the rotation of the mix to the person: see [Result.Breaches].
	TellOnly bool

	Pins     []Pin
	Bans     []Ban
	Turns    []Turn // the plantings in their order, where only days are looked for; PerYear and AtLeast then do not count
	Days     DayRules
	LeadDays int     // from ordering to planting
	Risk     float64 // share of years in which the person accepts to lose a planting that settles
	MinStand int     // days from one change-out to the next; 0 means [DefaultMinStand]
}

// DefaultMinStand is six weeks: a judgement.
const DefaultMinStand = 42

// Member is one pot of a request.
type Member struct {
	Outlook  *Outlook
	Standing Standing
	Costs    Costs
	Plants   float64 // factor on the counts of plants of the candidates; 0 means 1
}

// Standing is what is in the pot today. A nil Planting is an empty pot.
type Standing struct {
	Planting *Planting
	Since    civil.Date
	// Condition is how well it looks today, 0 to 1, as the person sees it; 0 is
	// dead. Nil lets the model say. Either way it is taken to be alive today.
	Condition *float64
}

// Costs are what a change-out of a pot costs beside its plants, in money.
type Costs struct {
	ChangeOut  float64 // labour, and the mix that is refreshed
	ReplaceMix float64 // on top, when all the mix is replaced and the pot cleaned
}

// Weights turn the display into a total, in display days: days at full display
// and weight one.
type Weights struct {
	Tired      float64   // lost per day and unit of display below TiredBelow
	TiredBelow float64   // display under which a planting looks tired
	Bare       float64   // lost per day of an empty pot
	DayWorth   float64   // money that one display day is worth
	ChargeDays int       // a planting that goes on past the horizon is charged in full from so many days on
	Days       []float64 // weight of each day from today on; nil and days past the end weigh 1
}

// DefaultWeights returns the planner's own weights: all judgements.
func DefaultWeights() Weights {
	return Weights{Tired: 1, TiredBelow: 0.25, Bare: 0.3, DayWorth: 2, ChargeDays: 90}
}

// Linger is how long a disease stays in the mix after a host was taken out.
type Linger struct {
	Healthy  int // days, where no disease was seen
	Diseased int // days, where it was
}

// Lingers are the rotation rules of the mix.
type Lingers struct {
	Host     Linger            // for the same plant again
	Families map[string]Linger // for families that share their diseases
	Groups   map[string]Linger // for named disease groups
	Other    Linger            // for all other disease groups of the plants
}

// DefaultLingers returns a season after a healthy host and three years after a
// diseased one, for the same plant and for the nightshade family. Three years is
// the usual rotation of vegetable families; that it holds for flower pots is an
// inference, and that a season is 90 days is a judgement.
func DefaultLingers() Lingers {
	const season, threeYears = 90, 1096
	rule := Linger{Healthy: season, Diseased: threeYears}
	return Lingers{
		Host:     rule,
		Families: map[string]Linger{"Solanaceae": rule},
		Other:    Linger{Diseased: threeYears},
	}
}

// Host is a record of a disease group's host in the present mix. Exactly one of
// Plant, Family and Group is set.
type Host struct {
	Plant, Family, Group string
	Last                 civil.Date // when it was taken out, or when disease was seen
	Diseased             bool
}

// Pin is a wish that must hold: on the days From to To the pot holds a planting of
// the id, with the plant and with the colour named, each as far as it is given.
// With Start, a change-out to it falls on one of those days.
type Pin struct {
	ID                      string
	Planting, Plant, Colour string
	From, To                civil.Date // To zero means From
	Start                   bool
}

// Ban refuses a planting, a plant or a colour on some days, or always when From
// and To are zero. It does not touch what stands already.
type Ban struct {
	Planting, Plant, Colour string
	From, To                civil.Date
}

// DayRules say on which days work can be done.
type DayRules struct {
	Weekdays []time.Weekday // none given means any
	Refused  []Window
}

// Allows reports whether work may be done on the day.
func (r DayRules) Allows(day civil.Date) bool {
	for _, w := range r.Refused {
		if w.Has(day) {
			return false
		}
	}
	if len(r.Weekdays) == 0 {
		return true
	}
	for _, weekday := range r.Weekdays {
		if day.Weekday() == weekday {
			return true
		}
	}
	return false
}

// The longest horizons, in days: two years and a bit, and three where the turns are
// given.
const (
	longestHorizon      = 800
	longestTurnsHorizon = 1500
)

func (r *Request) check() error {
	days, longest, turns := int(r.Until-r.Today), longestHorizon, len(r.Turns) > 0
	if turns {
		longest = longestTurnsHorizon
	}
	switch {
	case r.Today.IsZero() || days < 1 || days > longest:
		return fmt.Errorf("the horizon runs from %v to %v; it must be of 1 to %d days", r.Today, r.Until, longest)
	case len(r.Members) == 0:
		return fmt.Errorf("no pot is named")
	case turns:
	case r.PerYear < 1 || r.PerYear > 5:
		return fmt.Errorf("%d change-outs a year; 1 to 5 can be planned", r.PerYear)
	case r.AtLeast < 0 || r.AtLeast > r.PerYear:
		return fmt.Errorf("at least %d change-outs a year of at most %d", r.AtLeast, r.PerYear)
	}
	switch {
	case r.Done < 0 || r.LeadDays < 0 || r.MinStand < 0:
		return fmt.Errorf("negative counts of change-outs made, days of delivery or days of standing")
	case !(r.Risk > 0 && r.Risk < 1):
		return fmt.Errorf("risk %g is not between 0 and 1", r.Risk)
	case !(r.Weights.DayWorth > 0):
		return fmt.Errorf("a display day is worth %g, not above 0", r.Weights.DayWorth)
	case r.YearFrom > r.Today:
		return fmt.Errorf("the planning year begins on %v, after today", r.YearFrom)
	}
	for i := range r.Candidates {
		if err := r.Candidates[i].check(); err != nil {
			return err
		}
	}
	if err := r.checkTurns(); turns && err != nil {
		return err
	}
	for i, m := range r.Members {
		if err := r.checkMember(&m); err != nil {
			return fmt.Errorf("pot %d: %w", i+1, err)
		}
	}
	return nil
}

func (r *Request) checkMember(m *Member) error {
	if m.Outlook == nil {
		panic("rotation: a pot without an outlook")
	}
	c := m.Outlook.climate
	if c.From() > r.Today || c.Until() < r.Until {
		return fmt.Errorf("the climate runs from %v to %v and does not cover the horizon", c.From(), c.Until())
	}
	if m.Plants < 0 || m.Costs.ChangeOut < 0 || m.Costs.ReplaceMix < 0 {
		return fmt.Errorf("a cost is negative")
	}
	s := m.Standing
	if s.Planting == nil {
		return nil
	}
	if s.Since.IsZero() || s.Since > r.Today {
		return fmt.Errorf("what stands was planted on %v, not by today", s.Since)
	}
	if s.Condition != nil && !(*s.Condition >= 0 && *s.Condition <= 1) {
		return fmt.Errorf("what stands looks %g, not 0 to 1", *s.Condition)
	}
	return s.Planting.check()
}
