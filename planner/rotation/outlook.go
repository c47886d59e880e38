package rotation

import (
	"math"
	"sync"

	"fourturn/planner/civil"
)

// Outlook is what a spot holds for plants: its climate and the parameters, with
// each plant's daily terms worked out once. Pots that share a site and a spot
// should share its Outlook. It is safe for concurrent use.
type Outlook struct {
	climate *Climate
	params  Params
	plants  sync.Map // *Plant to *plantDays; plants must not change once used
}

// NewOutlook returns the outlook of a spot.
func NewOutlook(climate *Climate, params Params) *Outlook {
	if climate == nil {
		panic("rotation: an outlook without a climate")
	}
	return &Outlook{climate: climate, params: params}
}

// Climate returns the climate of the spot.
func (o *Outlook) Climate() *Climate { return o.climate }

// Params returns the parameters of the display value.
func (o *Outlook) Params() Params { return o.params }

// index returns the position of a day in the climate's vectors.
func (o *Outlook) index(day civil.Date) int { return int(day - o.climate.from) }

// plantDays are the terms of the display value that depend on the plant and the
// day but not on the day of planting, one entry for each day of the climate.
type plantDays struct {
	growth   []float64 // days of growth at the reference temperature
	keep     []float64 // factor on what is left after the day: heat and cold, hardened
	keepSoft []float64 // the same, not hardened off
	steady   []float64 // cold to the eye, and whether the plant shows at all
	ageing   []float64 // cut stems: days of age at the reference temperature; else nil
	chill    []float64 // bulbs: 1 on a day that chills, and
	forcing  []float64 // degree-days above the base; else nil
	soft     []float64 // running sum of the intensity of killing cold, not hardened
	hard     []float64 // the same, hardened; entry i is the sum before day i
	heat     []float64 // running sum of what heat takes, as the exponent
	mayStart []bool    // sold, nights warm enough, days not too hot; the risk is judged apart
}

// plant returns the daily terms of a plant, working them out at the first call.
func (o *Outlook) plant(p *Plant) *plantDays {
	if known, ok := o.plants.Load(p); ok {
		return known.(*plantDays)
	}
	days, _ := o.plants.LoadOrStore(p, o.workOut(p))
	return days.(*plantDays)
}

func (o *Outlook) workOut(p *Plant) *plantDays {
	n := o.climate.days()
	d := &plantDays{
		growth:   make([]float64, n),
		keep:     make([]float64, n),
		keepSoft: make([]float64, n),
		steady:   make([]float64, n),
		soft:     make([]float64, n+1),
		hard:     make([]float64, n+1),
		heat:     make([]float64, n+1),
		mayStart: make([]bool, n),
	}
	if p.Cut {
		d.ageing = make([]float64, n)
	}
	if p.Bulb != nil {
		d.chill, d.forcing = make([]float64, n), make([]float64, n)
	}
	for i := range n {
		d.heat[i+1] = d.heat[i]
		o.workOutDay(p, d, i)
	}
	return d
}

func (o *Outlook) workOutDay(p *Plant, d *plantDays, i int) {
	c, day := o.climate, o.climate.from.AddDays(i)
	shows := 1.0
	if !within(p.Shows, day) {
		shows = o.params.OffSeason
		if p.DiesBack {
			shows = 0
		}
	}
	d.mayStart[i] = within(p.Sold, day)
	if p.Cut {
		// Stems are pushed in before the mix freezes (north-central USA: before
		// Thanksgiving; Star Tribune).
		d.mayStart[i] = d.mayStart[i] && c.tmean[i] > 0
		d.ageing[i] = math.Pow(o.params.CutQ10, (c.tmean[i]-float64(o.params.CutReference))/10)
		d.keep[i], d.keepSoft[i], d.steady[i] = 1, 1, shows
		d.soft[i+1], d.hard[i+1] = d.soft[i], d.hard[i]
		return
	}
	hard, soft := o.intensity(p, i)
	d.hard[i+1], d.soft[i+1] = d.hard[i]+hard, d.soft[i]+soft
	heat := max(0, c.tmax[i]-float64(p.HeatLimit)) / o.params.HeatCapacity
	if p.Bulb != nil {
		// Bulbs have their own end: the heat limit only shortens the flower.
		if c.tmean[i] <= float64(p.Bulb.ChillBelow) {
			d.chill[i] = 1
		}
		d.forcing[i] = max(0, c.tmean[i]-float64(p.Base))
		d.keep[i], d.keepSoft[i], d.steady[i] = math.Exp(-hard), math.Exp(-soft), shows
		return
	}
	d.heat[i+1] += heat
	d.growth[i] = o.growth(p, c.tmean[i])
	d.keep[i], d.keepSoft[i] = math.Exp(-hard-heat), math.Exp(-soft-heat)
	d.steady[i] = shows * o.coldToTheEye(p, c.tmin[i])
	d.mayStart[i] = d.mayStart[i] && c.tmin[i] >= float64(p.PlantOut) && c.tmax[i] <= float64(p.HeatLimit)
}

// intensity returns the intensity of killing cold on day i for a plant hardened
// and as bought. Cold at the roots and in the air comes in the same night, so that
// the worse of both counts, not their sum.
func (o *Outlook) intensity(p *Plant, i int) (hard, soft float64) {
	c := o.climate
	lowest := float64(p.Lowest)
	if p.Bulb != nil {
		// What a bulb bears is the cold of the mix.
		hard = o.rootIntensity(lowest, i)
		return hard, hard
	}
	hard = c.hazard.at(lowest, i)
	soft = hard
	if !p.Hardened {
		soft = c.hazard.at(lowest+o.params.UnhardenedGap, i)
	}
	if p.Overwinters {
		roots := o.rootIntensity(float64(p.RootLimit), i)
		hard, soft = max(hard, roots), max(soft, roots)
	}
	return hard, soft
}

// rootIntensity returns the intensity of cold in the mix on day i: that of the air at
// a threshold as much lower as the mix is warmer.
func (o *Outlook) rootIntensity(limit float64, i int) float64 {
	c := o.climate
	rootMin := c.tmin[i] + o.params.RootDamping*(c.tmean[i]-c.tmin[i])
	if c.rootMin != nil {
		rootMin = c.rootMin[i]
	}
	return c.hazard.at(limit-(rootMin-c.tmin[i]), i)
}

// growth returns the day's growth at a mean temperature, in days at the reference:
// the rate rises in proportion from the base to the optimum and holds beyond it
// (Michigan State University on base temperatures; sources in the package comment).
func (o *Outlook) growth(p *Plant, mean float64) float64 {
	base, optimum := float64(p.Base), float64(p.Optimum)
	if optimum == 0 {
		optimum = max(float64(o.params.Optimum), base+1)
	}
	rate := min(max(mean, base), optimum) - base
	reference := min(max(float64(o.params.GrowthReference), base+1), optimum) - base
	return rate / reference
}

// coldToTheEye is 1 on nights that suit planting out and falls in proportion to
// the floor on nights at the lowest temperature.
func (o *Outlook) coldToTheEye(p *Plant, night float64) float64 {
	lowest, good := float64(p.Lowest), float64(p.PlantOut)
	if night >= good {
		return 1
	}
	if good <= lowest {
		return o.params.ColdFloor
	}
	return o.params.ColdFloor + (1-o.params.ColdFloor)*max(0, night-lowest)/(good-lowest)
}

func within(windows []Window, day civil.Date) bool {
	if len(windows) == 0 {
		return true
	}
	for _, w := range windows {
		if w.Has(day) {
			return true
		}
	}
	return false
}
