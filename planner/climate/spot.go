package climate

import (
	"fourturn/planner/quantity"
	"fourturn/planner/working"
)

// Spot is where at the site a pot stands, and what that does to the air about it.
type Spot struct {
	Key     string  // such as "south_wall"; its words are climate.spot_ and the key
	Night   float64 // added to the minimum, K
	Day     float64 // added to the maximum, K
	Shelter float64 // from the wind: 0 as open as the weather station, 1 still air
	source  working.Source
}

// Open is the site as the weather station stands: on grass in the open.
var Open = Spot{Key: "open", source: working.Source{Status: working.Definition}}

// spots are the usual kinds of place by what a person sees. The numbers are
// judgements: a wall gives back at night what it took up by day, a roof over the
// pot keeps it from radiating to the sky, cold air runs into hollows. A cheap
// thermometer that records the lowest and highest tells better than any table.
var spots = []Spot{
	Open,
	{Key: "roof", Night: -0.5, Day: 1, Shelter: 0, source: judged},
	{Key: "frost_hollow", Night: -3, Day: 0, Shelter: 0.3, source: judged},
	{Key: "hedged_garden", Night: 0.5, Day: 0.5, Shelter: 0.4, source: judged},
	{Key: "courtyard", Night: 1.5, Day: 1, Shelter: 0.7, source: judged},
	{Key: "street", Night: 1.5, Day: 1, Shelter: 0.4, source: judged},
	{Key: "balcony", Night: 1, Day: 1, Shelter: 0.3, source: judged},
	{Key: "eaves", Night: 1.5, Day: 0, Shelter: 0.3, source: judged},
	{Key: "south_wall", Night: 1.5, Day: 2.5, Shelter: 0.4, source: judged},
	{Key: "south_wall_eaves", Night: 2.5, Day: 2.5, Shelter: 0.5, source: judged},
	{Key: "north_wall", Night: 0.5, Day: -1.5, Shelter: 0.4, source: judged},
	{Key: "tree", Night: 1, Day: -1.5, Shelter: 0.4, source: judged},
	{Key: "porch", Night: 2, Day: -0.5, Shelter: 0.7, source: judged},
	{Key: "cold_frame", Night: 3, Day: 5, Shelter: 1, source: judged},
}

var judged = working.Source{Status: working.Judgement}

// Spots returns the kinds of place in the order in which a list shows them.
func Spots() []Spot { return append([]Spot(nil), spots...) }

// SpotByKey returns a kind of place. An empty key is [Open].
func SpotByKey(key string) (Spot, bool) {
	if key == "" {
		return Open, true
	}
	for _, s := range spots {
		if s.Key == key {
			return s, true
		}
	}
	return Open, false
}

// With returns the spot with offsets that the person typed, nil leaving its own.
func (s Spot) With(night, day *float64) Spot {
	if night != nil {
		s.Night, s.source = *night, working.Source{Status: working.Entered}
	}
	if day != nil {
		s.Day, s.source = *day, working.Source{Status: working.Entered}
	}
	return s
}

// At returns the climate of a spot at the site: all of it, freeze odds, seasons
// and zones included. A climate is of one spot; At replaces it.
func (c *Climate) At(s Spot) *Climate {
	d := *c
	d.spot = s
	d.minShift, d.maxShift = c.height+s.Night, c.height+s.Day
	return d.shifted()
}

// Spot returns the spot that the climate is of.
func (c *Climate) Spot() Spot { return c.spot }

// Shift is what height and spot add to the temperatures of the station.
type Shift struct {
	Night, Day float64 // K
	lapse      lapse
	spot       Spot
}

// Shift returns what height and spot add to the temperatures of the station.
func (c *Climate) Shift() Shift {
	return Shift{c.minShift, c.maxShift, c.lapse, c.spot}
}

// Working returns the trace of the shift at night.
func (s Shift) Working() working.Trace {
	return working.Trace{
		Name: "climate.shift", Formula: "ΔT = −Γ × (z − zs) / 1000 + Δspot",
		Inputs: []working.Input{
			{Symbol: "Γ", Name: "climate.lapse_rate", Value: working.Number(s.lapse.rate, working.KelvinPerKm), Source: working.Source{Status: working.Published, Cite: "ICAO standard atmosphere; a setting"}},
			{Symbol: "z", Name: "climate.elevation", Value: working.Number(float64(s.lapse.own), working.Metre), Source: working.Source{Status: working.Entered}},
			{Symbol: "zs", Name: "climate.station_elevation", Value: working.Number(float64(s.lapse.station), working.Metre), Source: working.Source{Status: working.Published}},
			{Symbol: "Δspot", Name: "climate.spot_" + s.spot.Key, Value: working.Number(s.spot.Night, working.Kelvin), Source: s.spot.source},
		},
		Result: working.Number(s.Night, working.Kelvin),
		Source: working.Source{Status: working.Derived},
	}
}

// StationDifference returns how much higher the site lies than the station.
func (c *Climate) StationDifference() quantity.Length { return c.lapse.own - c.lapse.station }
