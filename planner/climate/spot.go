package climate

// Spot is where at the site a pot stands, and what that does to temperatures.
type Spot struct {
	Key   string
	Night float64 // added to the minimum, K
	Day   float64 // added to the maximum, K
}

// Open is the open ground of the site itself.
var Open = Spot{Key: "open"}

// At returns the climate of a spot at the site.
func (c *Climate) At(s Spot) *Climate {
	d := *c
	d.spot = s
	d.minShift = c.minShift - c.spot.Night + s.Night
	d.maxShift = c.maxShift - c.spot.Day + s.Day
	return d.shifted()
}
