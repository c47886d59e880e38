package climate

import (
	"math"

	"fourturn/planner/quantity"
)

// Place is a point on the map and its height above the sea. Latitude is in
// degrees, north positive; longitude in degrees, east positive.
type Place struct {
	Latitude  float64
	Longitude float64
	Elevation quantity.Length
}

// Southern reports whether the place lies south of the equator, where the cold
// season is in the middle of the calendar year.
func (p Place) Southern() bool { return p.Latitude < 0 }

// Valid reports whether the coordinates are on the map and the height is one
// that land has.
func (p Place) Valid() bool {
	return math.Abs(p.Latitude) <= 90 && math.Abs(p.Longitude) <= 180 &&
		p.Elevation >= lowestLand && p.Elevation <= highestLand
}

// The heights that a site may have: the shore of the Dead Sea lies some 430 m
// below the sea and the highest summit 8,849 m above it.
const (
	lowestLand  quantity.Length = -500
	highestLand quantity.Length = 9000
)

// earthRadius is the mean radius R1 = (2a + b)/3 of the GRS 80 ellipsoid in
// metres (Moritz 2000, Geodetic Reference System 1980, J. Geodesy 74:128).
const earthRadius = 6371008.8

// Distance returns the great-circle distance to another place by the haversine
// formula, on a sphere: it is off by up to 0.5 % of the ellipsoid's.
func (p Place) Distance(q Place) quantity.Length {
	lat1, lat2 := radians(p.Latitude), radians(q.Latitude)
	dLat, dLon := lat2-lat1, radians(q.Longitude-p.Longitude)
	s, t := math.Sin(dLat/2), math.Sin(dLon/2)
	h := s*s + math.Cos(lat1)*math.Cos(lat2)*t*t
	return quantity.Length(2 * earthRadius * math.Asin(math.Sqrt(min(1, h))))
}

func radians(degrees float64) float64 { return degrees * math.Pi / 180 }
