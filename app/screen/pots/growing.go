package pots

import (
	"cmp"
	"math"
	"slices"

	"fourturn/planner"
	"fourturn/planner/civil"
	"fourturn/plants"
)

// Grown is one plant that stands in a pot today, to be drawn.
type Grown struct {
	Plant  *plants.Plant
	Height float64 // m, by now
	Spread float64 // m, by now
}

// mostDrawn is how many plants of a pot are drawn: more would hide each other.
const mostDrawn = 30

// Growing returns what stands in the chosen pot today.
func (s *Screen) Growing() []Grown {
	pot := s.Chosen()
	all, _ := s.session.Outlook()
	if pot == nil || all == nil {
		return nil
	}
	if out := s.outlook(pot); out != nil {
		return growing(out, all.Today)
	}
	return nil
}

// growing lists the plants of a pot one by one, thrillers first and spillers last.
func growing(out *planner.PotOutlook, today civil.Date) []Grown {
	stand := out.Standing(today)
	if stand == nil {
		return nil
	}
	counts := slices.Clone(stand.Plants)
	order := []planner.Role{planner.Thriller, planner.Filler, planner.Spiller}
	slices.SortStableFunc(counts, func(a, b planner.PlantCount) int {
		return cmp.Compare(slices.Index(order, a.Role), slices.Index(order, b.Role))
	})
	var list []Grown
	for _, c := range counts {
		if c.Known == nil {
			continue
		}
		grown := grownBy(c.Known, int(today-stand.From))
		for range int(math.Round(c.Count.Number())) {
			if len(list) < mostDrawn {
				list = append(list, grown)
			}
		}
	}
	return list
}

// young is how large a plant is when it is set out, as a share of its full size: a
// judgement, for a picture alone.
const young = 0.5

// grownBy returns how large a plant is some days after it was set out.
func grownBy(p *plants.Plant, days int) Grown {
	full := 1.0
	if weeks := weeksToFull(p); weeks > 0 {
		full = young + (1-young)*min(1, max(0, float64(days)/7/weeks))
	}
	return Grown{Plant: p, Height: float64(p.Height.Low+p.Height.High) / 2 * full, Spread: float64(p.Spread) * full}
}

// weeksToFull returns the weeks from the middle one of the sizes that it is sold in.
func weeksToFull(p *plants.Plant) float64 {
	if len(p.Sold) == 0 {
		return 0
	}
	return p.Sold[len(p.Sold)/2].WeeksToFull.Or(0)
}
