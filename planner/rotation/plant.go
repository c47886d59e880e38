package rotation

import (
	"fmt"

	"fourturn/planner/civil"
	"fourturn/planner/quantity"
)

// Window is a stretch of days, both ends included.
type Window struct {
	From, To civil.Date
}

// Has reports whether the day lies in the window.
func (w Window) Has(day civil.Date) bool { return day >= w.From && day <= w.To }

// Plant is one kind of plant as the rotation sees it.
type Plant struct {
	ID     string
	Family string

	// Lowest is the coldest air that the hardened plant lives through in a pot; of a
	// bulb, the coldest mix.
	Lowest quantity.Temperature
	// Hardened says that it is bought hardened off; otherwise it is tenderer at first.
	Hardened bool
	// PlantOut is the mean night that it wants when planted.
	PlantOut quantity.Temperature
	// HeatLimit is the mean daily maximum above which it declines; of no matter for
	// cut stems and bulbs, as are Lowest for cut stems and PlantOut for both.
	HeatLimit quantity.Temperature
	// Base and Optimum bound the temperatures between which it grows faster when
	// warmer. An Optimum of zero takes [Params.Optimum].
	Base, Optimum quantity.Temperature

	// Sizes are those in which it is sold, in the order of the plant book.
	Sizes []Size
	// DisplayWeeks is how long it looks well once full, or cut stems from the first
	// day; 0 takes [Params.AnnualWeeks] from planting, and for what overwinters and
	// for cut stems is as long as the weather lets it.
	DisplayWeeks float64

	// Overwinters says that it is meant to live through winter in its pot, whose
	// mix must then stay above RootLimit.
	Overwinters bool
	RootLimit   quantity.Temperature

	// Cut stems do not grow and cannot freeze; they age faster when warm.
	Cut bool
	// Bulb is the chill that a bulb wants before it flowers; nil for all else.
	Bulb *Bulb

	// Sold are the days on which it can be bought; none given means always.
	Sold []Window
	// Shows are the seasons in which it is at its best; none given means always. On
	// other days it shows a share, [Params.OffSeason], or nothing if it dies back.
	Shows    []Window
	DiesBack bool
	// Groups are the disease groups that it is a host of.
	Groups []string
	// Colours of flower and leaf, for pins and refusals.
	Colours []string
}

// Size is one size that a plant is sold in.
type Size struct {
	Name        string
	WeeksToFull float64 // at the temperature that [Params.GrowthReference] names
	Fullness    float64 // as bought, 0 to 1; 0 takes [Params.Fullness]
	Price       float64 // of one plant
}

// Bulb is what brings a bulb to flower.
type Bulb struct {
	ChillWeeks float64 // of days whose mean is at most ChillBelow
	ChillBelow quantity.Temperature
	HeatSum    float64 // degree-days above Base from the end of the chill to flower
}

// check names the first thing that makes the plant unfit for planning.
func (p *Plant) check() error {
	if len(p.Sizes) == 0 {
		return fmt.Errorf("%s is sold in no size", p.ID)
	}
	for _, size := range p.Sizes {
		if size.WeeksToFull < 0 || size.WeeksToFull > 520 || size.Fullness < 0 || size.Fullness > 1 {
			return fmt.Errorf("%s: size %q takes %g weeks from fullness %g", p.ID, size.Name, size.WeeksToFull, size.Fullness)
		}
	}
	if p.DisplayWeeks < 0 || p.DisplayWeeks > 520 {
		return fmt.Errorf("%s displays for %g weeks", p.ID, p.DisplayWeeks)
	}
	if p.Optimum != 0 && p.Optimum <= p.Base {
		return fmt.Errorf("%s: optimum %g °C is not above base %g °C", p.ID, float64(p.Optimum), float64(p.Base))
	}
	return nil
}

// Role is what a plant does in a planting, in the trade's words.
type Role string

// The trade's three roles.
const (
	Thriller Role = "thriller"
	Filler   Role = "filler"
	Spiller  Role = "spiller"
)

// Planting is a set of plants that go into a pot on one day.
type Planting struct {
	ID    string
	Parts []Part
	// Taste is how much the person likes it beside the others; 0 means 1.
	Taste float64
	// Out are the days on which it is put out; none given means any that suit its plants.
	Out []Window
}

// Part is one kind of plant in a planting.
type Part struct {
	Plant *Plant
	Size  int     // index in the plant's sizes
	Share float64 // of the display, 0 to 1; the shares of a planting sum to at most 1
	Role  Role
	Count float64 // plants bought for the pot
	Stays bool    // may stay on at a change-out, the rest changing around it
}

func (p *Planting) taste() float64 {
	if p.Taste == 0 {
		return 1
	}
	return p.Taste
}

// price is what the plants cost.
func (p *Planting) price() float64 {
	sum := 0.0
	for _, part := range p.Parts {
		sum += part.Count * part.Plant.Sizes[part.Size].Price
	}
	return sum
}

func (p *Planting) check() error {
	if len(p.Parts) == 0 {
		return fmt.Errorf("planting %s has no plants", p.ID)
	}
	sum := 0.0
	for _, part := range p.Parts {
		if err := part.Plant.check(); err != nil {
			return fmt.Errorf("planting %s: %w", p.ID, err)
		}
		if part.Size < 0 || part.Size >= len(part.Plant.Sizes) {
			return fmt.Errorf("planting %s: %s has no size %d", p.ID, part.Plant.ID, part.Size)
		}
		if !(part.Share >= 0 && part.Share <= 1) || part.Count < 0 {
			return fmt.Errorf("planting %s: %s has share %g and count %g", p.ID, part.Plant.ID, part.Share, part.Count)
		}
		sum += part.Share
	}
	if sum > 1+1e-9 {
		return fmt.Errorf("planting %s: the shares sum to %g, more than 1", p.ID, sum)
	}
	if p.Taste < 0 {
		return fmt.Errorf("planting %s: taste %g is negative", p.ID, p.Taste)
	}
	return nil
}
