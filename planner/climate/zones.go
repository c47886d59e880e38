package climate

import (
	"math"
	"strconv"

	"fourturn/planner/quantity"
)

// HardinessZone is a zone of the US hardiness map, counted in half zones: 0 is
// 1a, 25 is 13b.
type HardinessZone int

// ZoneOf returns the zone of a mean yearly lowest temperature. Zones are 10 °F
// wide from −60 °F up, halves 5 °F: 1a, the coldest, begins at −60 °F, and what
// is beyond either end belongs to the end. The structure is that of the US
// Department of Agriculture's map.
func ZoneOf(extreme quantity.Temperature) HardinessZone {
	half := math.Floor((extreme.Fahrenheit() + 60) / 5)
	return HardinessZone(min(25, max(0, half)))
}

// String returns the zone as 6b.
func (z HardinessZone) String() string {
	return strconv.Itoa(int(z)/2+1) + string("ab"[int(z)%2])
}

// Number returns the zone without its half, 1 to 13.
func (z HardinessZone) Number() int { return int(z)/2 + 1 }

// HeatZone is a zone by the mean number of days a year above 30 °C (86 °F), 1 to
// 12.
type HeatZone int

// heatZoneTops are the most days of zones 1 to 11 (American Horticultural
// Society, heat-zone map 1997: below 1 day, 1-7, over 7-14, over 14-30, over
// 30-45, over 45-60, over 60-90, over 90-120, over 120-150, over 150-180, over
// 180-210, over 210).
var heatZoneTops = [...]float64{1, 7, 14, 30, 45, 60, 90, 120, 150, 180, 210}

// HeatZoneOf returns the heat zone of a mean number of days a year.
func HeatZoneOf(days float64) HeatZone {
	if days < heatZoneTops[0] {
		return 1
	}
	for i, top := range heatZoneTops[1:] {
		if days <= top {
			return HeatZone(i + 2)
		}
	}
	return 12
}
