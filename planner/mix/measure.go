package mix

import (
	"math"

	"fourturn/planner/finding"
	"fourturn/planner/quantity"
	"fourturn/planner/working"
)

// Tool is something that a person measures with.
type Tool struct {
	Key    string // of its name: "mix.tool.tablespoon"
	Volume quantity.Volume
	Grain  float64 // the smallest part of it that is measured by eye: 0.25, 0.5 or 1
}

// The tools, by what is measured with them. Volumes are those of [quantity].
var (
	// USSpoons are for fertiliser and for small amounts of liquid.
	USSpoons = []Tool{
		{"mix.tool.gallon", quantity.Gallon, 0.25},
		{"mix.tool.liquid_quart", quantity.LiquidQuart, 0.25},
		{"mix.tool.cup", quantity.Cup, 0.25},
		{"mix.tool.tablespoon", quantity.Tablespoon, 0.5},
		{"mix.tool.teaspoon", quantity.Teaspoon, 0.25},
	}
	// USPails are for potting mix.
	USPails = []Tool{
		{"mix.tool.cubic_yard", quantity.CubicYard, 0.25},
		{"mix.tool.cubic_foot", quantity.CubicFoot, 0.25},
		{"mix.tool.gallon", quantity.Gallon, 0.25},
		{"mix.tool.dry_quart", quantity.DryQuart, 0.25},
		{"mix.tool.cup", quantity.Cup, 0.25},
	}
	// USCans are for water and feed.
	USCans = []Tool{
		{"mix.tool.gallon", quantity.Gallon, 0.25},
		{"mix.tool.liquid_quart", quantity.LiquidQuart, 0.25},
		{"mix.tool.cup", quantity.Cup, 0.25},
		{"mix.tool.fluid_ounce", quantity.FluidOunce, 0.5},
	}
	// MetricSpoons are for fertiliser; the spoons are those of metric kitchen sets, 15
	// and 5 mL.
	MetricSpoons = []Tool{
		{"mix.tool.litre", quantity.Litre, 0.1},
		{"mix.tool.spoon_15", 15 * quantity.Millilitre, 0.5},
		{"mix.tool.spoon_5", 5 * quantity.Millilitre, 0.25},
	}
	// MetricPails are for potting mix, water and feed.
	MetricPails = []Tool{
		{"mix.tool.cubic_metre", quantity.CubicMetre, 0.1},
		{"mix.tool.pail_10", 10 * quantity.Litre, 0.5},
		{"mix.tool.litre", quantity.Litre, 0.25},
		{"mix.tool.decilitre", 100 * quantity.Millilitre, 0.5},
	}
)

// Scoop is a tool of the person's own, such as the one in a tub of fertiliser.
func Scoop(volume quantity.Volume) Tool { return Tool{"mix.tool.scoop", volume, 0.5} }

// Pail is a pail of the person's own, for mix.
func Pail(volume quantity.Volume) Tool { return Tool{"mix.tool.own_pail", volume, 0.5} }

// Hand is an amount of one tool.
type Hand struct {
	Tool  Tool
	Count float64 // a multiple of the tool's grain
}

// Measured is an amount as a person would measure it.
type Measured struct {
	Hands  []Hand          // one or two, larger tool first; none for nothing
	Volume quantity.Volume // what they come to
	Exact  quantity.Volume
	mass   quantity.Mass // of which Exact is the volume; 0 if it was a volume
	spoon  quantity.Mass // of a level US tablespoon
	source working.Source
}

const (
	// closeEnough is how far the measured amount may be from the exact one for the
	// sake of fewer scoops (judgement; a level spoon is itself good to 25 %).
	closeEnough = 0.05
	// spoonError is how far spoons are from a scale (published spoon masses of soluble
	// feeds lie between 3 and 7 g a teaspoon).
	spoonError = 0.25
)

// Measure returns a volume as a person would measure it with the given tools: in as
// few scoops as come within 5 % of it, or as near as the tools allow. It panics on a
// negative volume or no tools.
func Measure(v quantity.Volume, tools []Tool) Measured {
	if !(v >= 0) || math.IsInf(float64(v), 0) || len(tools) == 0 {
		panic("mix: nothing to measure, or nothing to measure with")
	}
	best := Measured{Exact: v}
	if v == 0 {
		return best
	}
	consider := func(hands ...Hand) {
		m := Measured{Exact: v}
		for _, h := range hands {
			if h.Count > 0 {
				m.Hands = append(m.Hands, h)
				m.Volume += h.Tool.Volume * quantity.Volume(h.Count)
			}
		}
		if len(m.Hands) > 0 && m.before(&best) {
			best = m
		}
	}
	for i, t := range tools {
		consider(t.nearest(v))
		for _, grain := range [...]float64{1, t.Grain} {
			large := t.atMost(v, grain)
			rest := v - t.Volume*quantity.Volume(large.Count)
			for _, small := range tools[i+1:] {
				if large.Count > 0 && small.Volume < t.Volume {
					consider(large, small.nearest(rest))
				}
			}
		}
	}
	if len(best.Hands) == 0 { // less than half a grain of anything
		least := tools[0]
		for _, t := range tools[1:] {
			if t.Volume*quantity.Volume(t.Grain) < least.Volume*quantity.Volume(least.Grain) {
				least = t
			}
		}
		best.Hands = []Hand{{least, least.Grain}}
		best.Volume = least.Volume * quantity.Volume(least.Grain)
	}
	return best
}

// nearest returns the number of grains of the tool that is nearest to v.
func (t Tool) nearest(v quantity.Volume) Hand {
	// Counted in grains and divided, so that tenths stay tenths.
	grains := math.Round(float64(v/t.Volume) / t.Grain)
	return Hand{t, grains / math.Round(1/t.Grain)}
}

// atMost returns the most of the tool, in grains of the given size, that does not
// exceed v.
func (t Tool) atMost(v quantity.Volume, grain float64) Hand {
	return Hand{t, math.Floor(float64(v/t.Volume)/grain) / math.Round(1/grain)}
}

// Error returns how far the measured amount is from the exact one, as a share of it.
func (m Measured) Error() float64 {
	if m.Exact == 0 {
		return 0
	}
	return float64(m.Volume/m.Exact) - 1
}

// before reports whether m is the better way to measure: near enough before not,
// then the less work, then the nearer.
func (m *Measured) before(other *Measured) bool {
	if len(other.Hands) == 0 {
		return true
	}
	mine, others := math.Abs(m.Error()), math.Abs(other.Error())
	const rounding = 1e-9
	mineNear, othersNear := mine <= closeEnough+rounding, others <= closeEnough+rounding
	switch {
	case mineNear != othersNear:
		return mineNear
	case mineNear && m.work() != other.work():
		return m.work() < other.work()
	}
	return mine < others-rounding
}

// work counts scoops: every whole one, a part of one as two, a change of tool as two.
func (m *Measured) work() float64 {
	const partOfScoop, changeOfTool = 2, 2
	work := float64(len(m.Hands)-1) * changeOfTool
	for _, h := range m.Hands {
		whole := math.Floor(h.Count)
		work += whole
		if h.Count != whole {
			work += partOfScoop
		}
	}
	return work
}

// MeasureMass returns a mass as a person would measure it with spoons, by the mass of
// a level US tablespoon of the material. It panics if that is not above zero.
func MeasureMass(m, tablespoon quantity.Mass, source working.Source, tools []Tool) Measured {
	if !(tablespoon > 0) {
		panic("mix: a spoonful without a mass")
	}
	out := Measure(quantity.Volume(m/tablespoon)*quantity.Tablespoon, tools)
	out.mass, out.spoon, out.source = m, tablespoon, source
	return out
}

// Working returns the trace of what is measured, with the exact amount.
func (m Measured) Working() working.Trace {
	trace := working.Trace{
		Name: "mix.measured", Formula: "v ≈ V",
		Inputs: []working.Input{{Symbol: "V", Name: "mix.exact_volume", Value: litres(m.Exact), Source: definition}},
		Result: litres(m.Volume),
		Source: working.Source{Status: working.Derived},
	}
	if m.spoon > 0 {
		trace.Formula = "v ≈ m / m_tbsp × V_tbsp"
		trace.Inputs = []working.Input{
			{Symbol: "m", Name: "mix.exact_mass", Value: kilograms(m.mass), Source: definition},
			{Symbol: "m_tbsp", Name: "mix.spoon_mass", Value: kilograms(m.spoon), Source: m.source},
			{Symbol: "V_tbsp", Name: "mix.tool.tablespoon", Value: litres(quantity.Tablespoon), Source: definition},
		}
		trace.Notes = append(trace.Notes, "mix.note_spoons")
	}
	trace.Inputs = append(trace.Inputs, working.Input{Name: "mix.rounding", Value: working.Number(m.Error(), working.Share), Source: definition})
	return trace
}

// Finding returns a note where the tools are too coarse for the amount, or false.
func (m Measured) Finding(where finding.Where) (finding.Finding, bool) {
	if math.Abs(m.Error()) <= spoonError {
		return finding.Finding{}, false
	}
	return finding.Finding{
		Code: "mix.too_coarse", Severity: finding.Warning, Where: where,
		Args: []finding.Arg{{Name: "error", Value: working.Number(m.Error(), working.Share)}},
	}, true
}

// RoundMass rounds a mass to what a kitchen scale shows and a person reads off: half
// grams below 10 g, grams below 100 g, 5 g below a kilogram, then 10 g; or quarter
// ounces below a pound, then ounces. What is not zero is not rounded to zero.
func RoundMass(m quantity.Mass, s quantity.System) quantity.Mass {
	step := 10 * quantity.Gram
	size := quantity.Mass(math.Abs(float64(m)))
	switch {
	case s == quantity.USCustomary && size < quantity.Pound:
		step = quantity.Ounce / 4
	case s == quantity.USCustomary:
		step = quantity.Ounce
	case size < 10*quantity.Gram:
		step = quantity.Gram / 2
	case size < 100*quantity.Gram:
		step = quantity.Gram
	case size < quantity.Kilogram:
		step = 5 * quantity.Gram
	}
	steps := math.Round(float64(m / step))
	if steps == 0 && m != 0 {
		steps = math.Copysign(1, float64(m))
	}
	return quantity.Mass(steps) * step
}
