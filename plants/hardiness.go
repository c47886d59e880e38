package plants

import "fourturn/planner/quantity"

// ZoneLow returns the low edge of a USDA hardiness zone, the average annual
// extreme minimum: −60 °F for zone 1 and 10 °F more for each (USDA Plant
// Hardiness Zone Map; 13 zones). It panics on a zone outside 1 to 13.
func ZoneLow(zone int) quantity.Temperature {
	if zone < 1 || zone > 13 {
		panic("plants: USDA zones go from 1 to 13")
	}
	return quantity.FromFahrenheit(float64(-60 + 10*(zone-1)))
}

// HalfZone returns the USDA zone and half zone ("a" or "b", of 5 °F each) of an
// average annual extreme minimum; temperatures beyond the map belong to its ends.
func HalfZone(extreme quantity.Temperature) (zone int, half string) {
	halves := int((extreme.Fahrenheit() + 60) / 5)
	halves = min(max(halves, 0), 25)
	if halves%2 == 0 {
		return halves/2 + 1, "a"
	}
	return halves/2 + 1, "b"
}

// twoZones is what a pot takes from a plant's hardiness: two zones of 10 °F.
const twoZones quantity.Temperature = 20 / 1.8

// InPot returns the lowest air temperature that a plant of a USDA zone stands in
// a large pot, by the two-zone rule of nursery practice: the low edge of its zone
// and two zones more.
func InPot(zone int) quantity.Temperature { return ZoneLow(zone) + twoZones }

// Lowest returns the range in which the lowest temperature of a frost class lies.
//
// Hardy plants stand 26 °F (−3.3 °C) or lower, half-hardy ones light frost to the
// upper 20s °F, tender ones are killed between 26 and 32 °F (published annuals
// lists); the ranges here are wider by the spread of those lists and by what
// growers report of hardened plants in pots.
func (c FrostClass) Lowest() (low, high quantity.Temperature) {
	switch c {
	case Hardy:
		return -50, -2.5
	case HalfHardy:
		return -8, 0
	case Tender:
		return -2.5, 1.2
	case VeryTender:
		return 0.5, 15
	}
	panic("plants: unknown frost class " + string(c))
}

// Bases returns the range of base temperatures of a class. The published bounds
// (39 °F; 40 to 45 °F; 46 °F) leave a degree Fahrenheit between classes, which
// belongs to either here.
func (c TemperatureClass) Bases() (low, high quantity.Temperature) {
	tolerant, intermediate := quantity.FromFahrenheit(39), quantity.FromFahrenheit(40)
	upper, sensitive := quantity.FromFahrenheit(45), quantity.FromFahrenheit(46)
	switch c {
	case ColdTolerant:
		return -5, intermediate
	case ColdIntermediate:
		return tolerant, sensitive
	case ColdSensitive:
		return upper, 18
	}
	panic("plants: unknown temperature class " + string(c))
}

// RHS is a hardiness rating of the Royal Horticultural Society.
type RHS string

// rhsRatings are the ratings by the lowest temperature they stand, °C (RHS
// hardiness ratings, 2012). The RHS warns that plants in pots of H3 to H5 are
// more at risk.
var rhsRatings = [...]struct {
	rating RHS
	lowest quantity.Temperature
}{
	{"H1a", 15}, {"H1b", 10}, {"H1c", 5}, {"H2", 1}, {"H3", -5}, {"H4", -10}, {"H5", -15}, {"H6", -20},
}

// RHSRating returns the rating of a plant that stands a lowest temperature.
func RHSRating(lowest quantity.Temperature) RHS {
	for _, r := range rhsRatings {
		if lowest >= r.lowest {
			return r.rating
		}
	}
	return "H7"
}

// heatZoneDays are the most days a year above 30 °C (86 °F) of AHS heat zones 2
// to 11; zone 1 has less than one, zone 12 more than 210 (American Horticultural
// Society, 1997).
var heatZoneDays = [...]float64{7, 14, 30, 45, 60, 90, 120, 150, 180, 210}

// HeatZone returns the AHS heat zone, 1 to 12, of a place with so many days a
// year on which the maximum is above 30 °C.
func HeatZone(days float64) int {
	if days < 1 {
		return 1
	}
	for i, most := range heatZoneDays {
		if days <= most {
			return i + 2
		}
	}
	return 12
}
