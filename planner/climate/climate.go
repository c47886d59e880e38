package climate

import (
	"fmt"

	"fourturn/planner/civil"
	"fourturn/planner/quantity"
	"fourturn/planner/working"
)

// DefaultLapseRate is how much colder the air gets with height, in K per km: the
// value of the ICAO standard atmosphere, used for lack of a local one.
const DefaultLapseRate = 6.5

// Input says what a climate is made from. What is nearer to the person wins: a
// daily record or its digest before typed means, typed means before the station, typed frost
// dates before all other dates.
type Input struct {
	Station   *Station         // a station of the table
	Place     *Place           // where the site is; nil means at the station
	Elevation *quantity.Length // of the site, if it is not that of Place
	LapseRate float64          // K per km; 0 means [DefaultLapseRate]

	Record      *Record        // the person's own daily series, taken to be at the site
	RecordYears int            // how many of its last years count; 0 means 30, the years of a climatological normal
	Digest      *Digest        // what such a series told, when the series itself is not at hand
	Means       *Means         // typed in, taken to be at the site; NaN for months that are not known
	Frost       *FreezeDates   // typed in: any levels at one threshold, taken to be at the site
	Nearby      *FreezeStation // a NOAA freeze station whose dates replace those of Station
}

// Error is a fault of an [Input]. Code is a key such as "climate.no_place".
type Error struct {
	Code string
	Args map[string]float64
}

// Error returns the code and its numbers for logs; the surface has its own words.
func (e *Error) Error() string {
	if len(e.Args) == 0 {
		return e.Code
	}
	return fmt.Sprintf("%s %v", e.Code, e.Args)
}

// Climate is a place's year: immutable, and safe for concurrent use.
type Climate struct {
	place    Place
	base     *base
	height   float64 // added to all the base's temperatures by height, K
	minShift float64 // added to the base's minima by height and spot, K
	maxShift float64
	lapse    lapse
	spot     Spot
	tmin     *Year
	tmax     *Year
}

// base is what is known at the place of measurement, before height and spot.
type base struct {
	tmin, tmax   *Year
	temperatures working.Source
	freeze       freezer
	freezeSource working.Source
	record       *Record
	digest       *Digest
	station      *Station
	extreme      ExtremeMin
}

// freezer gives the odds of freeze at any threshold.
type freezer interface {
	at(threshold float64) *FreezeOdds
}

// lapse is the correction for height.
type lapse struct {
	rate         float64 // K per km
	station, own quantity.Length
}

// shift returns what the correction adds to every temperature, K.
func (l lapse) shift() float64 { return -l.rate * float64(l.own-l.station) / 1000 }

// FromStation returns the climate at a station of the table.
func FromStation(s Station) *Climate {
	c, err := New(Input{Station: &s})
	if err != nil {
		panic("climate: station of the table: " + err.Error())
	}
	return c
}

// New works out a climate. Its errors are of type [*Error]: no place, a place
// off the map, means that cannot be, a record with too few whole seasons.
func New(in Input) (*Climate, error) {
	place, l, err := in.site()
	if err != nil {
		return nil, err
	}
	if in.Record != nil {
		in.Record = in.Record.recent(in.RecordYears)
	}
	b, err := in.base(place, l)
	if err != nil {
		return nil, err
	}
	c := &Climate{place: place, base: b, lapse: l}
	if !in.ownTemperatures() {
		c.height = l.shift()
	}
	return c.At(Open), nil
}

// ownTemperatures reports whether the temperatures were measured at the site.
func (in Input) ownTemperatures() bool {
	return in.Record != nil || in.Digest != nil || in.Means != nil || in.Station == nil
}

// site returns where the site is and its correction for height.
func (in Input) site() (Place, lapse, error) {
	var place Place
	l := lapse{rate: in.LapseRate}
	if l.rate == 0 {
		l.rate = DefaultLapseRate
	}
	switch {
	case in.Place != nil:
		place = *in.Place
	case in.Station != nil:
		place = in.Station.Place
	default:
		return place, l, &Error{Code: "climate.no_place"}
	}
	if in.Elevation != nil {
		place.Elevation = *in.Elevation
	}
	if !place.Valid() {
		return place, l, &Error{"climate.place_off_map", map[string]float64{
			"latitude": place.Latitude, "longitude": place.Longitude, "elevation": float64(place.Elevation),
		}}
	}
	if l.rate < 0 || l.rate > 20 {
		return place, l, &Error{"climate.lapse_out_of_range", map[string]float64{"rate": l.rate}}
	}
	l.own, l.station = place.Elevation, place.Elevation
	if in.Station != nil {
		l.station = in.Station.Place.Elevation
	}
	return place, l, nil
}

// Place returns where the site is.
func (c *Climate) Place() Place { return c.place }

// Southern reports whether the site lies south of the equator.
func (c *Climate) Southern() bool { return c.place.Southern() }

// Station returns the station of the table behind the climate, if there is one.
func (c *Climate) Station() (Station, bool) {
	if c.base.station == nil {
		return Station{}, false
	}
	return *c.base.station, true
}

// FreezeNote returns what the publisher states about freezes at the station where
// it gives no dates, such as that they are possible all year round.
func (c *Climate) FreezeNote() FreezeNote {
	if c.base.station == nil {
		return FreezeDated
	}
	return c.base.station.FreezeNote
}

// shifted works out the daily curves from the base and the shifts. A spot whose
// nights would be warmer than its days gets nights as warm as its days.
func (c *Climate) shifted() *Climate {
	c.tmin, c.tmax = new(Year), new(Year)
	for i := range c.tmin {
		c.tmax[i] = c.base.tmax[i] + c.maxShift
		c.tmin[i] = min(c.base.tmin[i]+c.minShift, c.tmax[i])
	}
	return c
}

// Daily are the smooth normals of every day of the year, °C.
type Daily struct {
	Tmin, Tmax, Tmean, Spread Year
}

// Daily returns the smooth daily normals: minima, maxima, their mean and their
// spread. The mean over a month is the month's normal.
func (c *Climate) Daily() *Daily {
	d := &Daily{Tmin: *c.tmin, Tmax: *c.tmax}
	for i := range d.Tmin {
		d.Tmean[i] = (d.Tmin[i] + d.Tmax[i]) / 2
		d.Spread[i] = d.Tmax[i] - d.Tmin[i]
	}
	return d
}

// Tmin returns the normal minimum of a date.
func (c *Climate) Tmin(d civil.Date) quantity.Temperature { return quantity.Temperature(c.tmin.On(d)) }

// Tmax returns the normal maximum of a date.
func (c *Climate) Tmax(d civil.Date) quantity.Temperature { return quantity.Temperature(c.tmax.On(d)) }

// Tmean returns the mean of the normal minimum and maximum of a date.
func (c *Climate) Tmean(d civil.Date) quantity.Temperature { return (c.Tmin(d) + c.Tmax(d)) / 2 }

// Temperatures says what the daily normals rest on.
func (c *Climate) Temperatures() working.Source { return c.base.temperatures }

// Estimated reports whether the temperatures or the odds of freeze are estimated and
// not measured or published, and with them all that follows.
func (c *Climate) Estimated() bool {
	return c.base.temperatures.Status == working.Estimated || c.base.freezeSource.Status == working.Estimated
}

// Freeze returns the odds of freeze at a threshold, reached or passed.
func (c *Climate) Freeze(threshold quantity.Temperature) *FreezeOdds {
	o := c.base.freeze.at(float64(threshold) - c.minShift)
	o.threshold = float64(threshold)
	return o
}

// LastFreeze is [FreezeOdds.LastFreeze] at a threshold.
func (c *Climate) LastFreeze(threshold quantity.Temperature, risk Risk) FreezeDate {
	return c.Freeze(threshold).LastFreeze(risk)
}

// FirstFreeze is [FreezeOdds.FirstFreeze] at a threshold.
func (c *Climate) FirstFreeze(threshold quantity.Temperature, risk Risk) FreezeDate {
	return c.Freeze(threshold).FirstFreeze(risk)
}

// SpringRisk is [FreezeOdds.SpringRisk] of a date at a threshold.
func (c *Climate) SpringRisk(date civil.Date, threshold quantity.Temperature) float64 {
	return c.Freeze(threshold).SpringRisk(date.MonthDay())
}

// AutumnRisk is [FreezeOdds.AutumnRisk] of a date at a threshold.
func (c *Climate) AutumnRisk(date civil.Date, threshold quantity.Temperature) float64 {
	return c.Freeze(threshold).AutumnRisk(date.MonthDay())
}

// DayLength returns the daylight at the site on a date.
func (c *Climate) DayLength(d civil.Date) Daylight { return DayLength(c.place.Latitude, d) }
