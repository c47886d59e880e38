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

// after counts a day of the answer from the coldest day.
func (w *window) after(d FreezeDate) int { return wrap(MonthDayIndex(d.Day) - w.coldest) }

// spring opens when growth begins and freezes that kill hardened plants are past.
func (w *window) spring() opening {
	grow, always, never := w.rise(&w.mean, w.rules.Growth)
	safe := w.hardy.SafeFrom(w.risk)
	switch {
	case never || safe.Outcome == NeverSafe:
		return opening{why: ReasonNeverAbove}
	case always && safe.Outcome == AlwaysSafe:
		return opening{why: ReasonRunsOn}
	case always:
		return opening{w.after(safe), ReasonHardyFreeze, true}
	case safe.Outcome == AlwaysSafe || w.after(safe) <= grow || w.after(safe) > w.warmest:
		return opening{grow, ReasonGrowth, true}
	}
	return opening{w.after(safe), ReasonHardyFreeze, true}
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
	safe := w.tender.SafeFrom(w.risk)
	switch {
	case never || safe.Outcome == NeverSafe:
		return opening{why: ReasonTooCool}
	case always && safe.Outcome == AlwaysSafe:
		return w.heat()
	case safe.Outcome == AlwaysSafe || !always && w.after(safe) <= nights:
		return opening{nights, ReasonWarmNights, true}
	case w.after(safe) > w.warmest:
		return opening{nights, ReasonWarmNights, !always}
	}
	return opening{w.after(safe), ReasonFreeze, true}
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
	if until := w.tender.SafeUntil(w.risk); until.Known() && w.after(until) >= w.warmest && (always || w.after(until) < cool) {
		o, always = opening{w.after(until), ReasonFreeze, true}, false
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
	until := w.hardy.SafeUntil(w.risk)
	switch {
	case never:
		return opening{why: ReasonAllYear, exists: true}
	case until.Known() && w.after(until) >= w.warmest && (always || w.after(until) < stop):
		return opening{w.after(until), ReasonHardyFreeze, true}
	case always:
		return opening{why: ReasonRunsOn}
	}
	return opening{stop, ReasonGrowth, true}
}
