package climate

import (
	"gonum.org/v1/gonum/stat/distuv"

	"fourturn/planner/civil"
	"fourturn/planner/working"
)

// SeasonName is one of the four planting seasons.
type SeasonName string

// The four planting seasons, in the order of a northern calendar year.
const (
	CoolSpring SeasonName = "spring" // cool-season annuals, until the heat
	Summer     SeasonName = "summer" // warm-season annuals, from the last frost
	Autumn     SeasonName = "autumn" // the autumn display
	Winter     SeasonName = "winter" // the winter display
)

// Reason says why a season starts on its day, or why there is none.
type Reason string

// The reasons.
const (
	ReasonHardyFreeze Reason = "hardy_freeze" // freezes that kill hardened cool annuals are past, or near
	ReasonFreeze      Reason = "freeze"       // freezes that kill tender plants are past, or near
	ReasonGrowth      Reason = "growth"       // days are warm enough for growth, or no longer
	ReasonWarmNights  Reason = "warm_nights"  // nights are warm enough for warm annuals
	ReasonCoolNights  Reason = "cool_nights"  // nights have become too cool for them
	ReasonHeatBegins  Reason = "heat_begins"  // cool annuals give up
	ReasonHeatEnds    Reason = "heat_ends"    // cool annuals hold again

	ReasonAllYear    Reason = "all_year"    // the season has no start: it never ends
	ReasonTooCool    Reason = "too_cool"    // nights never get warm enough, or never free of freezes
	ReasonAlwaysHot  Reason = "always_hot"  // days or nights are never cool enough
	ReasonRunsOn     Reason = "runs_on"     // no break: the planting before stands until the one after
	ReasonNoSwing    Reason = "no_swing"    // the year has too little change to part it
	ReasonTooShort   Reason = "too_short"   // it would last less than the shortest season
	ReasonNeverAbove Reason = "never_grows" // no day of the year is warm enough for growth
)

// Season is one planting season at a site.
type Season struct {
	Name    SeasonName
	Exists  bool
	AllYear bool           // it never ends: Start is zero
	Start   civil.MonthDay // first day at the risk asked for
	End     civil.MonthDay // day before the next season that exists, at the same risk
	Days    int            // from Start to End
	Why     Reason         // of the start, or of there being none
	Spread  Spread
}

// Spread is the same start at the three named risks; a zero day where the season
// does not exist at that risk.
type Spread struct {
	Cautious, Even, Bold civil.MonthDay
}

// Seasons are the four planting seasons of a site at a risk.
type Seasons struct {
	Risk Risk
	List [4]Season // spring, summer, autumn, winter
	c    *Climate
	r    SeasonRules
}

// Get returns one season.
func (s Seasons) Get(name SeasonName) Season {
	for _, x := range s.List {
		if x.Name == name {
			return x
		}
	}
	panic("climate: no season " + string(name))
}

// Seasons returns the four planting seasons at a risk, with the default rules.
func (c *Climate) Seasons(risk Risk) Seasons { return c.SeasonsBy(risk, DefaultSeasonRules) }

// SeasonsBy returns the four planting seasons at a risk. Cautious starts warm
// seasons later and ends them earlier.
func (c *Climate) SeasonsBy(risk Risk, rules SeasonRules) Seasons {
	s := Seasons{Risk: Risk(risk.clamp()), c: c, r: rules}
	w := c.window(rules)
	s.List = w.seasonsAt(s.Risk)
	cautious, even, bold := w.seasonsAt(Cautious), w.seasonsAt(Even), w.seasonsAt(Bold)
	for i := range s.List {
		s.List[i].Spread = Spread{cautious[i].Start, even[i].Start, bold[i].Start}
	}
	return s
}

// opening is a day counted from the coldest day of the year with its reason.
type opening struct {
	day    int
	why    Reason
	exists bool
}

// seasonsAt works out the seasons without their spread.
func (w *window) seasonsAt(risk Risk) [4]Season {
	w.risk, w.shift = risk, risk.margin()*w.rules.YearToYear
	starts := [4]opening{w.spring(), w.summer(), w.autumn(), w.winter()}
	dropShort(&starts, w.rules.ShortestDay)
	settle(&starts)
	names := [4]SeasonName{CoolSpring, Summer, Autumn, Winter}
	var list [4]Season
	for i, o := range starts {
		list[i] = Season{Name: names[i], Exists: o.exists, Why: o.why}
		if !o.exists {
			continue
		}
		if o.why == ReasonAllYear {
			list[i].AllYear, list[i].Days = true, DaysPerYear
			continue
		}
		list[i].Start = MonthDayAt(w.coldest + o.day)
		list[i].Days = daysToNext(starts, i)
		list[i].End = MonthDayAt(w.coldest + o.day + list[i].Days - 1)
	}
	return list
}

// daysToNext returns the days from the start of a season to that of the next one
// that exists; none or fewer where the next comes too early.
func daysToNext(starts [4]opening, i int) int {
	for k := i + 1; k < i+len(starts); k++ {
		next := starts[k%len(starts)]
		if !next.exists || next.why == ReasonAllYear {
			continue
		}
		if k >= len(starts) {
			return next.day + DaysPerYear - starts[i].day
		}
		return next.day - starts[i].day
	}
	return DaysPerYear
}

// dropShort takes out the seasons that the next one overtakes or leaves too few
// days, until all that are left last long enough. Summer goes before any other;
// spring and autumn give way to it.
func dropShort(starts *[4]opening, shortest int) {
	for again := true; again; {
		again = false
		for _, i := range [...]int{1, 0, 2, 3} {
			o := &starts[i]
			if o.exists && o.why != ReasonAllYear && daysToNext(*starts, i) < shortest {
				o.exists, o.why, again = false, ReasonTooShort, true
			}
		}
	}
}

// settle makes the four agree: without a winter there is no spring of its own,
// the autumn's planting stands until summer; a season that is alone has no start.
func settle(starts *[4]opening) {
	spring, winter := &starts[0], starts[3]
	if !winter.exists && (spring.exists || spring.why == ReasonTooShort) {
		spring.exists, spring.why = false, ReasonRunsOn
	}
	alone := -1
	for i, o := range starts {
		if o.exists && alone >= 0 {
			return
		}
		if o.exists {
			alone = i
		}
	}
	if alone >= 0 {
		starts[alone].why = ReasonAllYear
	}
}

// margin returns the quantile of the year-to-year differences at a risk, in standard deviations:
// above zero for cautious risks.
func (r Risk) margin() float64 { return distuv.UnitNormal.Quantile(1 - r.clamp()) }

// Working returns the trace of one season.
func (s Seasons) Working(name SeasonName) working.Trace {
	x := s.Get(name)
	t := working.Trace{
		Name: "climate.season_" + string(name), Formula: seasonFormulas[name],
		Inputs: append(s.r.inputs(), working.Input{
			Symbol: "r", Name: "climate.risk", Value: working.Number(float64(s.Risk), working.Share),
			Source: working.Source{Status: working.Entered},
		}),
		Result: working.Text("climate.reason_" + string(x.Why)),
		Source: working.Source{Status: working.Judgement, Cite: "season guidance of university extensions, read together"},
		Notes:  []string{"climate.reason_" + string(x.Why)},
	}
	if x.Exists && !x.AllYear {
		t.Result = working.Date(x.Start.In(commonYear))
	}
	t.Inputs = append(t.Inputs, working.Input{
		Symbol: "T", Name: "climate.daily_normals", Value: working.Text(""), Source: s.c.Temperatures(),
	}, working.Input{
		Symbol: "P", Name: "climate.freeze_odds", Value: working.Text(""), Source: s.c.base.freezeSource,
	})
	if s.c.Estimated() {
		t.Notes = append(t.Notes, "climate.note_estimated")
	}
	return t
}

var seasonFormulas = map[SeasonName]string{
	CoolSpring: "latest of: Tmean ≥ Tg; P(Tmin ≤ θh later) ≤ r",
	Summer:     "latest of: Tmin ≥ Tn↑ + z(r)·σ; P(Tmin ≤ θt later) ≤ r",
	Autumn:     "earliest of: Tmin < Tn↓ + z(r)·σ; P(Tmin ≤ θt earlier) > r; not before Tmax < Th",
	Winter:     "earliest of: Tmean < Tg; P(Tmin ≤ θh earlier) > r",
}
