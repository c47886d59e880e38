package climate

import (
	"math"

	"fourturn/planner/civil"
	"fourturn/planner/working"
)

// perMegajoule is the water in mm that one MJ/m² evaporates (FAO-56 eq. 20,
// 1/2.45).
const perMegajoule = 0.408

// Hargreaves returns the reference evapotranspiration in mm/d from a day's mean,
// highest and lowest temperature in °C and the extraterrestrial radiation in
// MJ m⁻² d⁻¹ (Hargreaves; FAO-56 eq. 52). Never below zero.
func Hargreaves(tmean, tmax, tmin, ra float64) float64 {
	return max(0, 0.0023*(tmean+17.8)*math.Sqrt(max(0, tmax-tmin))*perMegajoule*ra)
}

// SolarFromSunshine returns the solar radiation at the ground in MJ m⁻² d⁻¹ from
// hours of sunshine of the possible hours (Ångström; FAO-56 eq. 35, 0.25 and
// 0.50).
func SolarFromSunshine(ra, hours, possible float64) float64 {
	return (0.25 + 0.50*hours/possible) * ra
}

// SolarFromTemperature returns the solar radiation at the ground in MJ m⁻² d⁻¹
// from the daily range of temperature (FAO-56 eq. 50): adjustment 0.16 inland,
// 0.19 near a coast.
func SolarFromTemperature(ra, tmax, tmin, adjustment float64) float64 {
	return adjustment * math.Sqrt(max(0, tmax-tmin)) * ra
}

// ClearSky returns the solar radiation of a cloudless day in MJ m⁻² d⁻¹ at a
// height in metres (FAO-56 eq. 37).
func ClearSky(ra, elevation float64) float64 { return (0.75 + 2e-5*elevation) * ra }

// SaturationPressure returns the saturation vapour pressure in kPa at a
// temperature in °C (FAO-56 eq. 11).
func SaturationPressure(t float64) float64 { return 0.6108 * math.Exp(17.27*t/(t+237.3)) }

// WindAt2m returns the wind speed at 2 m from that at a height in metres
// (FAO-56 eq. 47).
func WindAt2m(speed, height float64) float64 { return speed * 4.87 / math.Log(67.8*height-5.42) }

// Weather is a day's weather for the FAO Penman-Monteith equation.
type Weather struct {
	Tmin, Tmax     float64 // °C
	VapourPressure float64 // actual, kPa
	Wind           float64 // at 2 m, m/s
	Solar          float64 // at the ground, MJ m⁻² d⁻¹
	Extra          float64 // extraterrestrial, MJ m⁻² d⁻¹
	Elevation      float64 // m
}

// PenmanMonteith returns the reference evapotranspiration in mm/d (FAO-56 eq. 6,
// with net radiation by eq. 38 to 40 and no ground heat over a day).
func PenmanMonteith(w Weather) float64 {
	t := (w.Tmin + w.Tmax) / 2
	saturation := (SaturationPressure(w.Tmin) + SaturationPressure(w.Tmax)) / 2 // eq. 12
	slope := 4098 * SaturationPressure(t) / ((t + 237.3) * (t + 237.3))         // eq. 13
	pressure := 101.3 * math.Pow((293-0.0065*w.Elevation)/293, 5.26)            // eq. 7
	gamma := 0.665e-3 * pressure                                                // eq. 8
	net := NetRadiation(w)
	energy := perMegajoule * slope * net
	wind := gamma * 900 / (t + 273) * w.Wind * (saturation - w.VapourPressure)
	return max(0, (energy+wind)/(slope+gamma*(1+0.34*w.Wind)))
}

// NetRadiation returns Rn in MJ m⁻² d⁻¹ (FAO-56 eq. 38 to 40, albedo 0.23).
func NetRadiation(w Weather) float64 {
	const (
		albedo    = 0.23     // grass reference
		boltzmann = 4.903e-9 // MJ K⁻⁴ m⁻² d⁻¹
	)
	lo, hi := w.Tmin+273.16, w.Tmax+273.16
	relative := min(1, w.Solar/ClearSky(w.Extra, w.Elevation))
	long := boltzmann * (math.Pow(lo, 4) + math.Pow(hi, 4)) / 2 *
		(0.34 - 0.14*math.Sqrt(w.VapourPressure)) * (1.35*relative - 0.35)
	return (1-albedo)*w.Solar - long
}

// Evapotranspiration is a day's reference evapotranspiration at a site.
type Evapotranspiration struct {
	Millimetres float64 // per day
	tmin, tmax  float64
	ra          float64
	source      working.Source
}

// ReferenceET returns the reference evapotranspiration of a date's normals by
// Hargreaves. The normals' mean range stands for the range of a mean day.
func (c *Climate) ReferenceET(d civil.Date) Evapotranspiration {
	ra := Extraterrestrial(c.place.Latitude, d.YearDay())
	lo, hi := float64(c.Tmin(d)), float64(c.Tmax(d))
	return Evapotranspiration{Hargreaves((lo+hi)/2, hi, lo, ra), lo, hi, ra, c.Temperatures()}
}

// ReferenceETYear returns the reference evapotranspiration of every day of the
// year in mm/d.
func (c *Climate) ReferenceETYear() *Year {
	y := new(Year)
	for i := range y {
		lo, hi := c.tmin[i], c.tmax[i]
		y[i] = Hargreaves((lo+hi)/2, hi, lo, Extraterrestrial(c.place.Latitude, i+1))
	}
	return y
}

// Working returns the trace of the evapotranspiration.
func (e Evapotranspiration) Working() working.Trace {
	fao := working.Source{Status: working.Published, Cite: "Allen et al. 1998, FAO Irrigation and Drainage Paper 56, eq. 52"}
	return working.Trace{
		Name: "climate.reference_et", Formula: "ETo = 0.0023 × (Tmean + 17.8) × √(Tmax − Tmin) × 0.408 × Ra",
		Inputs: []working.Input{
			{Symbol: "Tmin", Name: "climate.tmin", Value: working.Number(e.tmin, working.Celsius), Source: e.source},
			{Symbol: "Tmax", Name: "climate.tmax", Value: working.Number(e.tmax, working.Celsius), Source: e.source},
			{Symbol: "Ra", Name: "climate.extraterrestrial", Value: working.Number(e.ra, working.MegajoulePerM2Day), Source: working.Source{Status: working.Derived, Cite: "FAO-56 eq. 21 to 25"}},
		},
		Result: working.Number(e.Millimetres, working.MillimetrePerDay),
		Source: fao,
		Notes:  []string{"climate.note_hargreaves"},
	}
}
