package climate

import "fourturn/planner/quantity"

// window is the year as the rules see it, with days counted from the coldest day
// of the mean temperature.
type window struct {
	coldest          int // day index
	warmest          int // days after the coldest
	tmin, tmax, mean Year
	tender, hardy    *FreezeOdds
	risk             Risk
	shift            float64 // K by which cautious or bold moves a gate
	rules            SeasonRules
}

func (c *Climate) window(rules SeasonRules) *window {
	w := &window{rules: rules}
	d := c.Daily()
	for i := range d.Tmean {
		if d.Tmean[i] < d.Tmean[w.coldest] {
			w.coldest = i
		}
	}
	for i := range DaysPerYear {
		k := wrap(w.coldest + i)
		w.tmin[i], w.tmax[i], w.mean[i] = d.Tmin[k], d.Tmax[k], d.Tmean[k]
		if w.mean[i] > w.mean[w.warmest] {
			w.warmest = i
		}
	}
	w.tender, w.hardy = c.Freeze(quantity.Temperature(rules.Tender)), c.Freeze(quantity.Temperature(rules.Hardy))
	return w
}

// rise returns the first day after the coldest from which the curve stays at or
// above a gate until the warmest day; always is true when even the coldest day is
// above it, never when the warmest is below.
func (w *window) rise(curve *Year, gate float64) (day int, always, never bool) {
	if curve[w.warmest] < gate {
		return 0, false, true
	}
	i := w.warmest
	for i > 0 && curve[i-1] >= gate {
		i--
	}
	return i, i == 0, false
}

// fall returns the first day after the warmest on which the curve is below a
// gate; always is true when it never falls below, never when it is never above.
func (w *window) fall(curve *Year, gate float64) (day int, always, never bool) {
	if curve[w.warmest] < gate {
		return 0, false, true
	}
	for i := w.warmest; i < DaysPerYear; i++ {
		if curve[i] < gate {
			return i, false, false
		}
	}
	return 0, true, false
}

// safeFrom returns the day from which a freeze is past at the risk: 0 where it
// never holds spring back, because it is rarer than the risk or past by the
// coldest day; ok is false where it is not past by the warmest day.
func (w *window) safeFrom(o *FreezeOdds) (day int, ok bool) {
	d := o.SafeFrom(w.risk)
	switch {
	case d.Outcome == AlwaysSafe:
		return 0, true
	case d.Outcome == NeverSafe:
		return 0, false
	case o.seasonDay(d.Day) <= wrap(w.coldest-o.start):
		return 0, true
	}
	day = o.seasonDay(d.Day) - wrap(w.coldest-o.start)
	return day, day <= w.warmest
}

// safeUntil returns the day up to which no freeze comes at the risk: the end of the
// year where it never cuts autumn short, because it is rarer than the risk or
// later than the coldest day; the warmest day where no day is safe.
func (w *window) safeUntil(o *FreezeOdds) int {
	d := o.SafeUntil(w.risk)
	switch {
	case d.Outcome == AlwaysSafe || d.Known() && o.seasonDay(d.Day) >= wrap(w.coldest-o.start):
		return DaysPerYear
	case d.Outcome == NeverSafe:
		return w.warmest
	}
	return max(w.warmest, DaysPerYear+o.seasonDay(d.Day)-wrap(w.coldest-o.start))
}

// spring opens when growth begins and freezes that kill hardened plants are past.
func (w *window) spring() opening {
	grow, always, never := w.rise(&w.mean, w.rules.Growth)
	safe, ok := w.safeFrom(w.hardy)
	switch {
	case never || !ok:
		return opening{why: ReasonNeverAbove}
	case always && safe == 0:
		return opening{why: ReasonRunsOn}
	case safe <= grow:
		return opening{grow, ReasonGrowth, true}
	}
	return opening{safe, ReasonHardyFreeze, true}
}

// summer opens when nights are warm and freezes that kill tender plants are past;
// where neither ever holds it back, when cool annuals give up.
func (w *window) summer() opening {
	gate, peak := max(w.rules.WarmNight, w.tmin[0]+w.rules.Rise), w.tmin[w.warmest]
	if w.tmin[0] >= w.rules.WarmNight {
		if peak < gate {
			return w.heat() // mild all year, with less swing than the rise asks for
		}
		gate = min(gate+w.shift, peak) // the warmest nights are warm enough for anyone
	} else {
		gate += w.shift
	}
	nights, always, never := w.rise(&w.tmin, gate)
	safe, ok := w.safeFrom(w.tender)
	switch {
	case never || !ok:
		return opening{why: ReasonTooCool}
	case always && safe == 0:
		return w.heat()
	case safe <= nights:
		return opening{nights, ReasonWarmNights, true}
	}
	return opening{safe, ReasonFreeze, true}
}

// heat opens the summer where nothing else does.
func (w *window) heat() opening {
	day, alwaysDay, neverDay := w.rise(&w.tmax, w.rules.HeatDay)
	night, alwaysNight, neverNight := w.rise(&w.tmin, w.rules.HeatNight)
	switch {
	case alwaysDay || alwaysNight || neverDay && neverNight:
		return opening{why: ReasonAllYear, exists: true}
	case neverDay || !neverNight && night < day:
		day = night
	}
	return opening{day, ReasonHeatBegins, true}
}

// pastHeight is how far below the summer's warmest nights, in K, the autumn may
// begin where nights are never warm: a judgement.
const pastHeight = 2

// autumn opens when nights turn cool or tender plants are at risk, but not while
// cool annuals would still give up to heat.
func (w *window) autumn() opening {
	peak := w.tmin[w.warmest]
	gate := min(max(w.rules.CoolNight, w.tmin[0]+w.rules.Rise)+w.shift, peak-pastHeight)
	cool, always, _ := w.fall(&w.tmin, gate)
	ends, hot := w.heatEnds()
	if hot && ends == DaysPerYear {
		return opening{why: ReasonAlwaysHot}
	}
	o := opening{cool, ReasonCoolNights, true}
	if until := w.safeUntil(w.tender); until < DaysPerYear && (always || until < cool) {
		o, always = opening{until, ReasonFreeze, true}, false
	}
	switch {
	case !hot && (always || peak-w.tmin[0] < w.rules.Rise):
		return opening{why: ReasonNoSwing}
	case hot && (always || ends > o.day):
		return opening{ends, ReasonHeatEnds, true}
	}
	return o
}

// heatEnds returns the first day after the warmest on which neither days nor
// nights are hot, DaysPerYear when there is none; hot is false where there is no
// heat at all.
func (w *window) heatEnds() (day int, hot bool) {
	d, alwaysDay, neverDay := w.fall(&w.tmax, w.rules.HeatDay)
	n, alwaysNight, neverNight := w.fall(&w.tmin, w.rules.HeatNight)
	if alwaysDay || alwaysNight {
		return DaysPerYear, true
	}
	if neverDay {
		d = 0
	}
	if neverNight {
		n = 0
	}
	return max(d, n), !neverDay || !neverNight
}

// winter opens when growth ends or hardened cool annuals are at risk.
func (w *window) winter() opening {
	stop, always, never := w.fall(&w.mean, w.rules.Growth)
	until := w.safeUntil(w.hardy)
	switch {
	case never:
		return opening{why: ReasonAllYear, exists: true}
	case until < DaysPerYear && (always || until < stop):
		return opening{until, ReasonHardyFreeze, true}
	case always:
		return opening{why: ReasonRunsOn}
	}
	return opening{stop, ReasonGrowth, true}
}
