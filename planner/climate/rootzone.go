package climate

import (
	"math"

	"fourturn/planner/quantity"
	"fourturn/planner/working"
)

// RootZone is the temperature about the roots of a pot that stands above ground.
// The ground evens out day and night and half the year; a pot only dampens the
// day. Its mix follows the air of a day or two, so that it is colder in winter and
// hotter in summer than the ground ever gets.
type RootZone struct {
	Depth    quantity.Length // of the roots that decide, from the wall
	Share    float64         // of the air's daily swing that reaches them
	SunOnPot float64         // K that sun on the wall adds to the hottest hour
	climate  *Climate
}

// The physics of the pot.
const (
	// diffusivity of a moist peat mix, m²/s. From memory of soil-physics texts,
	// 1.2e-7 (peat) to 5e-7 (sand); not checked.
	diffusivity = 1.4e-7
	// rootDepth is the part of a pot's width from the wall in which the roots that
	// decide are: a quarter. A judgement: most roots of a pot plant lie near the wall.
	rootDepth = 0.25
	// The warming of the wall's side of the mix by sun: judgements, of pots that
	// stand free; 8 K for a dark pot, 3 K for a light one.
	sunOnDark  = 8.0
	sunOnLight = 3.0
)

// RootZone returns the root zone of a pot by its width and whether sun falls on a
// dark wall. The swing of the day dies away with the depth d from the wall as
// e^(−d/D), where D = √(2a/ω) (periodic flow of heat into a solid: Carslaw and
// Jaeger, Conduction of Heat in Solids, 2nd ed. 1959, §2.6). It panics on a width
// that is not above zero.
func (c *Climate) RootZone(width quantity.Length, sun PotSun) RootZone {
	if !(width > 0) {
		panic("climate: a pot's width must be above zero")
	}
	omega := 2 * math.Pi / 86400
	damping := math.Sqrt(2 * diffusivity / omega)
	depth := width * rootDepth
	z := RootZone{Depth: depth, Share: math.Exp(-float64(depth) / damping), climate: c}
	switch sun {
	case SunOnDarkPot:
		z.SunOnPot = sunOnDark
	case SunOnLightPot:
		z.SunOnPot = sunOnLight
	case PotShaded:
	}
	return z
}

// PotSun says whether sun falls on the wall of a pot.
type PotSun string

// The states of a pot's wall.
const (
	PotShaded     PotSun = "shaded"
	SunOnLightPot PotSun = "sun_on_light"
	SunOnDarkPot  PotSun = "sun_on_dark"
)

// Lowest returns the normal daily minimum about the roots through the year, °C.
func (z RootZone) Lowest() *Year {
	y := new(Year)
	for i := range y {
		lo, hi := z.climate.tmin[i], z.climate.tmax[i]
		mean := (lo + hi) / 2
		y[i] = mean - z.Share*(mean-lo)
	}
	return y
}

// Highest returns the normal daily maximum about the roots through the year, °C.
func (z RootZone) Highest() *Year {
	y := new(Year)
	for i := range y {
		lo, hi := z.climate.tmin[i], z.climate.tmax[i]
		mean := (lo + hi) / 2
		y[i] = mean + z.Share*(hi-mean+z.SunOnPot)
	}
	return y
}

// Warmer returns by how much the coldest hour about the roots is milder than that
// of the air on a day of the year's normals, K: a threshold for the root zone is
// that much lower for the air. In a spell of several cold days nothing is left of
// the day's swing, and the roots are at the mean of the spell.
func (z RootZone) Warmer(day int) float64 {
	i := wrap(day)
	return (1 - z.Share) * (z.climate.tmax[i] - z.climate.tmin[i]) / 2
}

// ExtremeMin returns the mean yearly lowest temperature about the roots: that of
// the air, less cold by the damped half-swing of the coldest month.
func (z RootZone) ExtremeMin() quantity.Temperature {
	coldest := 0
	for i := range z.climate.tmin {
		if z.climate.tmin[i] < z.climate.tmin[coldest] {
			coldest = i
		}
	}
	return z.climate.ExtremeMin().Mean + quantity.Temperature(z.Warmer(coldest))
}

// Hottest returns the highest of the year's normal daily maxima about the roots.
func (z RootZone) Hottest() quantity.Temperature {
	hottest := math.Inf(-1)
	for _, t := range z.Highest() {
		hottest = max(hottest, t)
	}
	return quantity.Temperature(hottest)
}

// HottestWorking returns the trace of the hottest roots.
func (z RootZone) HottestWorking() working.Trace {
	day := 0
	highest := z.Highest()
	for i := range highest {
		if highest[i] > highest[day] {
			day = i
		}
	}
	lo, hi := z.climate.tmin[day], z.climate.tmax[day]
	air := z.climate.Temperatures()
	return working.Trace{
		Name: "climate.root_zone_hot", Formula: "Troot = Tmean + e^(−d/D) × ((Tmax − Tmin)/2 + ΔTsun)",
		Inputs: []working.Input{
			{Symbol: "Tmean", Name: "climate.daily_normals", Value: working.Number((lo+hi)/2, working.Celsius), Source: air},
			{Symbol: "Tmax", Name: "climate.tmax", Value: working.Number(hi, working.Celsius), Source: air},
			{Symbol: "Tmin", Name: "climate.tmin", Value: working.Number(lo, working.Celsius), Source: air},
			{Symbol: "d", Name: "climate.root_depth", Value: working.Number(float64(z.Depth), working.Metre), Source: judged},
			{Symbol: "e^(−d/D)", Name: "climate.swing_share", Value: working.Number(z.Share, working.Share), Source: working.Source{Status: working.Derived, Cite: "Carslaw and Jaeger 1959, §2.6"}},
			{Symbol: "ΔTsun", Name: "climate.sun_on_pot", Value: working.Number(z.SunOnPot, working.Kelvin), Source: judged},
		},
		Result: working.Number(float64(z.Hottest()), working.Celsius),
		Source: working.Source{Status: working.Derived, Cite: "Carslaw and Jaeger 1959, §2.6; depth of the roots and the sun on the pot judgements"},
	}
}

// Working returns the trace of the extreme about the roots.
func (z RootZone) Working() working.Trace {
	return working.Trace{
		Name: "climate.root_zone", Formula: "Troot = Tair + (1 − e^(−d/D)) × (Tmax − Tmin)/2, D = √(2a/ω)",
		Inputs: []working.Input{
			{Symbol: "Tair", Name: "climate.extreme_min", Value: working.Number(float64(z.climate.ExtremeMin().Mean), working.Celsius), Source: z.climate.ExtremeMin().Source()},
			{Symbol: "d", Name: "climate.root_depth", Value: working.Number(float64(z.Depth), working.Metre), Source: judged},
			{Symbol: "a", Name: "climate.diffusivity", Value: working.Number(diffusivity*1e6, working.None), Source: working.Source{Status: working.Memory, Cite: "soil physics, moist peat, 10⁻⁶ m²/s"}},
			{Symbol: "e^(−d/D)", Name: "climate.swing_share", Value: working.Number(z.Share, working.Share), Source: working.Source{Status: working.Derived, Cite: "Carslaw and Jaeger 1959, §2.6"}},
		},
		Result: working.Number(float64(z.ExtremeMin()), working.Celsius),
		Source: working.Source{Status: working.Derived, Cite: "Carslaw and Jaeger 1959, §2.6; depth of the roots a judgement"},
		Notes:  []string{"climate.note_root_zone"},
	}
}
