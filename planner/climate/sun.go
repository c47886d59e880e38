package climate

import (
	"math"

	"fourturn/planner/civil"
	"fourturn/planner/working"
)

// solarConstant is Gsc of FAO-56 eq. 21 in MJ m⁻² min⁻¹.
const solarConstant = 0.0820

// Extraterrestrial returns Ra, the radiation in MJ m⁻² d⁻¹ that reaches a level
// surface above the atmosphere at a latitude in degrees on a day of the year,
// 1 to 366 (FAO-56, eq. 21 to 25).
func Extraterrestrial(latitude float64, dayOfYear int) float64 {
	phi := radians(latitude)
	j := 2 * math.Pi / 365 * float64(dayOfYear)
	dr := 1 + 0.033*math.Cos(j)             // eq. 23
	declination := 0.409 * math.Sin(j-1.39) // eq. 24
	ws := sunsetAngle(phi, declination)
	ra := ws*math.Sin(phi)*math.Sin(declination) + math.Cos(phi)*math.Cos(declination)*math.Sin(ws)
	return max(0, 24*60/math.Pi*solarConstant*dr*ra)
}

// Radiation is what reaches a level surface above the atmosphere on a day.
type Radiation struct {
	Megajoules float64 // per m² and day
	latitude   float64
	date       civil.Date
}

// RadiationOn returns [Extraterrestrial] at the site on a date, with its working.
func (c *Climate) RadiationOn(d civil.Date) Radiation {
	return Radiation{Extraterrestrial(c.place.Latitude, d.YearDay()), c.place.Latitude, d}
}

// Working returns the trace of the radiation.
func (r Radiation) Working() working.Trace {
	j := 2 * math.Pi / 365 * float64(r.date.YearDay())
	declination := 0.409 * math.Sin(j-1.39)
	fao := func(equation string) working.Source {
		return working.Source{Status: working.Derived, Cite: "Allen et al. 1998, FAO Irrigation and Drainage Paper 56, " + equation}
	}
	return working.Trace{
		Name: "climate.extraterrestrial", Formula: "Ra = (24·60/π)·Gsc·dr·(ωs·sin φ·sin δ + cos φ·cos δ·sin ωs)",
		Inputs: []working.Input{
			{Symbol: "day", Name: "climate.day", Value: working.Date(r.date), Source: working.Source{Status: working.Entered}},
			{Symbol: "φ", Name: "climate.latitude", Value: working.Number(r.latitude, working.None), Source: working.Source{Status: working.Entered}},
			{Symbol: "Gsc", Name: "climate.solar_constant", Value: working.Number(solarConstant, working.None), Source: fao("eq. 21")},
			{Symbol: "dr", Name: "climate.sun_distance", Value: working.Number(1+0.033*math.Cos(j), working.None), Source: fao("eq. 23")},
			{Symbol: "δ", Name: "climate.declination", Value: working.Number(declination*180/math.Pi, working.None), Source: fao("eq. 24")},
			{Symbol: "ωs", Name: "climate.sunset_angle", Value: working.Number(sunsetAngle(radians(r.latitude), declination)*180/math.Pi, working.None), Source: fao("eq. 25")},
		},
		Result: working.Number(r.Megajoules, working.MegajoulePerM2Day),
		Source: working.Source{Status: working.Published, Cite: "Allen et al. 1998, FAO Irrigation and Drainage Paper 56, eq. 21"},
	}
}

// sunsetAngle returns the hour angle of sunset in radians (FAO-56 eq. 25), π
// where the sun does not set and 0 where it does not rise.
func sunsetAngle(phi, declination float64) float64 {
	return math.Acos(min(1, max(-1, -math.Tan(phi)*math.Tan(declination))))
}

// DaylightHours returns N of FAO-56 eq. 34, the hours from the sun's centre
// rising to its setting without refraction, as evapotranspiration takes them.
func DaylightHours(latitude float64, dayOfYear int) float64 {
	j := 2 * math.Pi / 365 * float64(dayOfYear)
	return 24 / math.Pi * sunsetAngle(radians(latitude), 0.409*math.Sin(j-1.39))
}

// Daylight is what an almanac says of the sun on a day.
type Daylight struct {
	Hours     float64 // from sunrise to sunset
	NeverSets bool    // the sun stays up: Hours is 24
	NeverUp   bool    // the sun stays down: Hours is 0
	latitude  float64
	date      civil.Date
}

// sunriseAltitude is where the sun's centre stands at sunrise and sunset, in
// degrees: half its disc, 16′, and 34′ of refraction at the horizon (almanac
// convention; Meeus, Astronomical Algorithms, 2nd ed. 1998, ch. 15).
const sunriseAltitude = -0.8333

// DayLength returns the time from sunrise to sunset at a latitude in degrees on a
// date: the upper edge of the sun on a level horizon with ordinary refraction.
// The declination is the sun's at noon of the meridian of Greenwich (Meeus, ch.
// 25, lower accuracy, 0.01°).
func DayLength(latitude float64, date civil.Date) Daylight {
	phi, declination := radians(latitude), declinationAtNoon(date)
	x := (math.Sin(radians(sunriseAltitude)) - math.Sin(phi)*math.Sin(declination)) /
		(math.Cos(phi) * math.Cos(declination))
	switch {
	case x <= -1:
		return Daylight{24, true, false, latitude, date}
	case x >= 1:
		return Daylight{0, false, true, latitude, date}
	}
	return Daylight{2 * math.Acos(x) * 12 / math.Pi, false, false, latitude, date}
}

// Working returns the trace of the day length.
func (d Daylight) Working() working.Trace {
	return working.Trace{
		Name: "climate.day_length", Formula: "cos ω = (sin h₀ − sin φ·sin δ) / (cos φ·cos δ), h = 24·ω/π",
		Inputs: []working.Input{
			{Symbol: "day", Name: "climate.day", Value: working.Date(d.date), Source: working.Source{Status: working.Entered}},
			{Symbol: "φ", Name: "climate.latitude", Value: working.Number(d.latitude, working.None), Source: working.Source{Status: working.Entered}},
			{Symbol: "δ", Name: "climate.declination", Value: working.Number(declinationAtNoon(d.date)*180/math.Pi, working.None), Source: working.Source{Status: working.Derived, Cite: "Meeus, Astronomical Algorithms, 2nd ed. 1998, ch. 25"}},
			{Symbol: "h₀", Name: "climate.sunrise_altitude", Value: working.Number(sunriseAltitude, working.None), Source: working.Source{Status: working.Definition}},
		},
		Result: working.Number(d.Hours, working.Hour),
		Source: working.Source{Status: working.Derived, Cite: "spherical astronomy; compared with an almanac library"},
	}
}

// dayOf2000 is the civil day of the epoch J2000.0, noon on 1 January 2000.
var dayOf2000 = civil.New(2000, 1, 1)

// declinationAtNoon returns the sun's apparent declination in radians at 12 h UT
// (Meeus, eq. 25.2 to 25.8).
func declinationAtNoon(date civil.Date) float64 {
	t := float64(date-dayOf2000) / 36525
	mean := 280.46646 + 36000.76983*t + 0.0003032*t*t
	anomaly := radians(357.52911 + 35999.05029*t - 0.0001537*t*t)
	centre := (1.914602-0.004817*t)*math.Sin(anomaly) + (0.019993-0.000101*t)*math.Sin(2*anomaly) + 0.000289*math.Sin(3*anomaly)
	node := radians(125.04 - 1934.136*t)
	longitude := radians(mean + centre - 0.00569 - 0.00478*math.Sin(node))
	obliquity := radians(23.439291 - 0.0130042*t + 0.00256*math.Cos(node))
	return math.Asin(math.Sin(obliquity) * math.Sin(longitude))
}
