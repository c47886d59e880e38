package planner

import (
	"fourturn/planner/finding"
	"fourturn/planner/nutrition"
	"fourturn/planner/quantity"
	"fourturn/planner/working"
)

// slowRelease is a slow-release product with its label read.
type slowRelease struct {
	product *Product
	label   nutrition.SlowRelease
	rate    nutrition.Concentration // of the label; 0 takes that of the feeder class
}

// labelOf reads the label of a slow-release product once for all pots, or returns nil
// where there is none that can be read.
func (w *workOut) labelOf(id string) *slowRelease {
	if read, ok := w.labels[id]; ok {
		return read
	}
	read := w.readLabel(id)
	w.labels[id] = read
	return read
}

func (w *workOut) readLabel(id string) *slowRelease {
	product := w.Plan.Product(id)
	if product == nil {
		return nil
	}
	analysis, err := nutrition.ParseAnalysis(product.Analysis)
	if err != nil {
		return nil
	}
	read := &slowRelease{product: product, rate: nutrition.Concentration(product.Rate), label: nutrition.SlowRelease{
		Analysis: analysis, Longevity: product.Longevity, Reference: product.Reference, Coated: product.Coated, Tablespoon: product.SpoonMass,
	}}
	if product.RateLabel != "" {
		rate, err := nutrition.ParseRate(product.RateLabel, read.spoon())
		if err != nil {
			w.find("plan.rate_unreadable", finding.Warning, finding.Where{"products", id, "rate_label"}, finding.Arg{Name: "rate", Value: working.Text(product.RateLabel)})
		} else {
			read.rate = rate
		}
	}
	return read
}

// spoon returns the mass of a level tablespoon of the product.
func (s *slowRelease) spoon() quantity.Mass {
	if s != nil && s.product.SpoonMass > 0 {
		return s.product.SpoonMass
	}
	return nutrition.PrillSpoon
}

// lasts reports whether the product says how long it lasts.
func (s *slowRelease) lasts() bool { return s.label.Longevity > 0 }

// dose returns the charge for so much mix: at the label's rate where the product has
// one, else at that of the feeder class.
func (w *workOut) dose(feeder nutrition.Feeder, charged quantity.Volume) (nutrition.Dose, bool) {
	if w.slow == nil || !feeder.Known() {
		return nutrition.Dose{}, false
	}
	rate, source := nutrition.ClassOf(feeder).Rate(w.slow.label.Analysis), nutrition.ClassRateSource()
	if w.slow.rate > 0 {
		rate, source = w.slow.rate, nutrition.LabelRateSource()
	}
	return nutrition.DoseOf(w.slow.label, rate, charged, charged, nutrition.AllMix, source), true
}

// prillSpoon returns the mass of a level tablespoon of the slow release.
func (w *workOut) prillSpoon() quantity.Mass { return w.slow.spoon() }

// kineticsOf returns the settings of the release model: the person's own before the
// usual ones.
func kineticsOf(plan *Plan) nutrition.Kinetics {
	k := nutrition.UsualKinetics()
	if e := plan.Feeding.Release.ActivationEnergy; e > 0 {
		k.ActivationEnergy = e
	}
	if s := plan.Feeding.Release.Spent; s > 0 && s < 1 {
		k.Spent = s
	}
	return k
}

// placement says where charges go.
func (w *workOut) placement() nutrition.Placement {
	if w.Plan.Feeding.OnTop {
		return nutrition.OnTop
	}
	return nutrition.MixedIn
}
