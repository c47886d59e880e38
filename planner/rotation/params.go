package rotation

import (
	"fourturn/planner/quantity"
	"fourturn/planner/working"
)

// Params are the numbers of the display value that belong to no single plant. All
// may be changed by the person; [DefaultParams] says where each is from.
type Params struct {
	Fullness        float64              // share of its full size that a plant has as bought
	GrowthReference quantity.Temperature // mean temperature at which weeks to full hold
	Optimum         quantity.Temperature // of growth, for plants that do not name theirs
	UnhardenedGap   float64              // K by which a plant not hardened off is tenderer
	HardeningDays   int                  // in which that gap closes, all at once
	HeatCapacity    float64              // K d of excess over the heat limit that leaves 1/e of the display
	ColdFloor       float64              // display left at the lowest temperature, of that at the planting-out night
	AnnualWeeks     float64              // from planting that a plant of one season lasts, where it names no display weeks
	OffSeason       float64              // share that a plant shows outside the seasons it is grown for
	FadeDays        int                  // from full display to none, once the display weeks are over
	CutReference    quantity.Temperature // mean temperature at which cut stems keep their display weeks
	CutQ10          float64              // ageing of cut stems per 10 K
	RootDamping     float64              // how far the mix's minimum stays above the air's, as a share of the way to the mean
	SettleDays      int                  // that a planting must be expected to live through at the person's risk
	BulbFlowerDays  int                  // of a bulb's flower where its plant names no display weeks
}

// paramSource pairs a parameter's key with its default and where that is from.
type paramSource struct {
	key    string
	value  func(Params) working.Value
	source working.Source
}

var judgement = working.Source{Status: working.Judgement}

// DefaultParams returns the planner's own values. Sources of each: [Params.Working].
func DefaultParams() Params {
	return Params{
		Fullness:        0.4,
		GrowthReference: 20,
		Optimum:         25,
		UnhardenedGap:   1.7,
		HardeningDays:   14,
		HeatCapacity:    40,
		ColdFloor:       0.2,
		AnnualWeeks:     26,
		OffSeason:       0.6,
		FadeDays:        21,
		CutReference:    5,
		CutQ10:          2.5,
		RootDamping:     0.5,
		SettleDays:      28,
		BulbFlowerDays:  18,
	}
}

// paramSources lists every parameter in the order of [Params].
func paramSources() []paramSource {
	number := func(read func(Params) float64, unit working.Unit) func(Params) working.Value {
		return func(p Params) working.Value { return working.Number(read(p), unit) }
	}
	return []paramSource{
		{"rotation.fullness", number(func(p Params) float64 { return p.Fullness }, working.Share), judgement},
		{"rotation.growth_reference", number(func(p Params) float64 { return float64(p.GrowthReference) }, working.Celsius), judgement},
		{"rotation.optimum", number(func(p Params) float64 { return float64(p.Optimum) }, working.Celsius), working.Source{
			Status: working.Judgement,
			Cite:   "between 19.1 °C (dahlia) and 27-28 °C (China pink, gazania): Blanchard and Runkle 2011, Scientia Horticulturae 128:30-37",
		}},
		{"rotation.unhardened_gap", number(func(p Params) float64 { return p.UnhardenedGap }, working.Kelvin), working.Source{
			Status: working.Derived,
			Cite:   "spring snapdragons hold to 28 °F (Wisconsin greenhouse, frost notes) against 25 °F hardened",
		}},
		{"rotation.hardening_days", number(func(p Params) float64 { return float64(p.HardeningDays) }, working.Day), working.Source{
			Status: working.Published,
			Cite:   "about two weeks: California Master Gardener Handbook, 2nd ed.; Hennepin County Master Gardeners 2014",
		}},
		{"rotation.heat_capacity", number(func(p Params) float64 { return p.HeatCapacity }, working.DegreeDay), judgement},
		{"rotation.cold_floor", number(func(p Params) float64 { return p.ColdFloor }, working.Share), judgement},
		{"rotation.annual_weeks", number(func(p Params) float64 { return p.AnnualWeeks }, working.Week), working.Source{
			Status: working.Derived,
			Cite:   "replace about every six months in the frost-free south: University of Florida guidance as quoted by a designer",
		}},
		{"rotation.off_season", number(func(p Params) float64 { return p.OffSeason }, working.Share), judgement},
		{"rotation.fade_days", number(func(p Params) float64 { return float64(p.FadeDays) }, working.Day), judgement},
		{"rotation.cut_reference", number(func(p Params) float64 { return float64(p.CutReference) }, working.Celsius), judgement},
		{"rotation.cut_q10", number(func(p Params) float64 { return p.CutQ10 }, working.None), judgement},
		{"rotation.root_damping", number(func(p Params) float64 { return p.RootDamping }, working.Share), judgement},
		{"rotation.settle_days", number(func(p Params) float64 { return float64(p.SettleDays) }, working.Day), judgement},
		{"rotation.bulb_flower_days", number(func(p Params) float64 { return float64(p.BulbFlowerDays) }, working.Day), working.Source{
			Status: working.CommonPractice,
		}},
	}
}
