package planner

import (
	"slices"

	"fourturn/planner/mix"
	"fourturn/planner/nutrition"
	"fourturn/planner/quantity"
	"fourturn/planner/working"
)

// ByHand is an amount as a person would measure it, with the exact one in its working.
type ByHand struct {
	Hands  []mix.Hand // larger tool first
	Figure Figure     // L, what they come to
}

// MixByHand returns a volume of mix in the person's pails, or nothing for no figure.
func (o *Outlook) MixByHand(need Figure) ByHand {
	if need.IsZero() {
		return ByHand{}
	}
	tools := mix.MetricPails
	if o.Plan.Units == quantity.USCustomary {
		tools = mix.USPails
	}
	measured := mix.Measure(quantity.Volume(need.Number()), with(tools, mix.Pail(o.Plan.Mix.Pail)))
	return byHand(measured, "mix.exact_volume", need)
}

// ChargeByHand returns a mass of slow release in the person's spoons or scoop, or
// nothing for no figure.
func (o *Outlook) ChargeByHand(charge Figure) ByHand {
	if charge.IsZero() {
		return ByHand{}
	}
	tools := mix.MetricSpoons
	if o.Plan.Units == quantity.USCustomary {
		tools = mix.USSpoons
	}
	spoon, source := quantity.Mass(nutrition.PrillSpoon), tablespoonSource
	if product := o.Plan.Product(o.Plan.Feeding.SlowRelease); product != nil && product.SpoonMass > 0 {
		spoon, source = product.SpoonMass, working.Source{Status: working.Entered}
	}
	measured := mix.MeasureMass(quantity.Mass(charge.Number()), spoon, source, with(tools, mix.Scoop(o.Plan.Mix.Scoop)))
	return byHand(measured, "mix.exact_mass", charge)
}

// with puts a tool of the person's own among others, by size; one of no size is none.
func with(tools []mix.Tool, own mix.Tool) []mix.Tool {
	if own.Volume <= 0 {
		return tools
	}
	at := slices.IndexFunc(tools, func(t mix.Tool) bool { return t.Volume < own.Volume })
	if at < 0 {
		at = len(tools)
	}
	return slices.Insert(slices.Clone(tools), at, own)
}

func byHand(measured mix.Measured, exact string, from Figure) ByHand {
	return ByHand{
		Hands: measured.Hands,
		Figure: NewFigure(working.Number(float64(measured.Volume), working.Litre), func() working.Trace {
			return measured.Working().Beneath(exact, from.Working())
		}),
	}
}
