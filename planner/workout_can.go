package planner

import (
	"math"
	"slices"

	"fourturn/planner/finding"
	"fourturn/planner/nutrition"
	"fourturn/planner/quantity"
	"fourturn/planner/working"
)

// turnProduct is one soluble product of the turn.
type turnProduct struct {
	product  *Product
	analysis nutrition.Analysis
}

// turn returns the soluble products in the order of their turns. A product that
// cannot be mixed is left out with a finding.
func (w *workOut) turn() []turnProduct {
	var turn []turnProduct
	for i, id := range w.Plan.Feeding.Turn {
		if slices.Contains(w.Plan.Feeding.Turn[:i], id) {
			continue // named twice
		}
		where := finding.Where{"products", id, "analysis"}
		product := w.Plan.Product(id)
		if product == nil {
			continue
		}
		analysis, err := nutrition.ParseAnalysis(product.Analysis)
		if err != nil {
			w.find("plan.no_analysis", finding.Warning, where)
			continue
		}
		if analysis.N == 0 {
			w.find("plan.no_nitrogen", finding.Warning, where)
			continue
		}
		turn = append(turn, turnProduct{product: product, analysis: analysis})
		if len(turn) == nutrition.MostProducts {
			break
		}
	}
	return turn
}

// strength is the nitrogen in one can with the way to it.
type strength struct {
	ppm     nutrition.PPM
	classes []nutrition.Class // of the pots, lightest first; nil where the product says the strength
	within  bool              // it suits them all
}

// strengthOf returns the strength of a can for some feeder classes: that of the product
// where it names one, since the label outranks the class; else what the classes bear in
// common.
func strengthOf(p *Product, feeders map[nutrition.Feeder]bool) strength {
	if p.Strength > 0 {
		return strength{ppm: nutrition.PPM(p.Strength), within: true}
	}
	var classes []nutrition.Class
	for _, f := range nutrition.Feeders {
		if feeders[f] {
			classes = append(classes, nutrition.ClassOf(f))
		}
	}
	if len(classes) == 0 {
		classes = append(classes, nutrition.ClassOf(nutrition.MediumFeeder))
	}
	ppm, within := nutrition.SharedStrength(classes...)
	return strength{ppm: ppm, classes: classes, within: within}
}

// solution returns what is in the can.
func (t turnProduct) solution(s strength) nutrition.Solution {
	solution, err := nutrition.AtStrength(t.analysis, s.ppm)
	if err != nil {
		panic("planner: a product without nitrogen in the turn")
	}
	return solution
}

// roundsOf works out the can of every round.
func (w *workOut) roundsOf(plan nutrition.Rounds, turn []turnProduct, pots []feeding) []Round {
	rounds := make([]Round, len(plan.Rounds))
	for i, r := range plan.Rounds {
		rounds[i] = w.round(r, turn[r.Product], pots)
		rounds[i].Number = w.fedRounds + i + 1
	}
	return rounds
}

// feed is one coming feed of a pot.
func (w *workOut) feed(out *PotOutlook, f nutrition.Feed, product string, pour nutrition.Pour) Feed {
	feed := Feed{Date: f.Date, Product: product, Water: pourFigure(pour), Share: 1}
	if s := out.Standing(f.Date); s != nil {
		part := w.opening(out, s).share(f.Date)
		feed.Share, feed.Reason = part.share, part.reason
	}
	return feed
}

func pourFigure(p nutrition.Pour) Figure {
	return NewFigure(working.Number(float64(p.Volume), working.Litre), p.Working)
}

// round works out the can for a round.
func (w *workOut) round(r nutrition.Round, t turnProduct, pots []feeding) Round {
	out := Round{Date: r.Date, Product: t.product.ID}
	total, feeders := quantity.Volume(0), map[nutrition.Feeder]bool{}
	for _, i := range r.Pots {
		out.Pots = append(out.Pots, pots[i].pot)
		pot := &w.Pots[pots[i].pot]
		share := 1.0
		if s := pot.Standing(r.Date); s != nil {
			share = w.opening(pot, s).share(r.Date).share
			feeders[s.Feeder] = true
		}
		if share < 1 {
			out.Weaker++
		}
		total += pots[i].pour.Volume * quantity.Volume(share)
	}
	strength := strengthOf(t.product, feeders)
	out.solution = t.solution(strength)
	out.Strength = NewFigure(working.Number(float64(strength.ppm), working.MilligramPerLitre), func() working.Trace { return strengthWorking(strength) })
	w.fillCans(&out, t.product, total)
	w.concentrate(&out, t)
	return out
}

// fillCans works out how often the can is filled and with what.
func (w *workOut) fillCans(out *Round, product *Product, total quantity.Volume) {
	solution, can := out.solution, w.Plan.Feeding.Can
	if can == 0 {
		can = nutrition.UsualCan
	}
	tablespoon := solubleSpoon(product)
	filling := nutrition.CansOf(solution, total, can)
	volume := sum{name: "plan.round_water", unit: working.Litre, total: float64(total), n: len(out.Pots)}
	out.Water = volume.figure()
	out.Dose = NewFigure(working.Number(float64(solution.For(total)), working.Kilogram), func() working.Trace {
		return doseWorking(solution, total)
	})
	level := nutrition.SpoonsOf(filling.PerCan, tablespoon)
	out.Spoons = NewFigure(working.Number(float64(level.Tablespoons)*3+level.Teaspoons, working.None), func() working.Trace {
		return spoonWorking(solution, can, tablespoon, level)
	})
	cans := math.Ceil(float64(total/can)*2-1e-9) / 2 // half cans are easy to fill
	out.Cans = NewFigure(working.Number(cans, working.None), func() working.Trace {
		return canWorking(total, can, cans)
	})
}

// solubleSpoon returns the mass of a level tablespoon of a soluble product.
func solubleSpoon(p *Product) quantity.Mass {
	if p.SpoonMass > 0 {
		return p.SpoonMass
	}
	return nutrition.SolubleSpoon
}

// concentrate works out the conductivity of the feed and the stock for an injector.
func (w *workOut) concentrate(out *Round, t turnProduct) {
	if slope, ok := SlopeOf(t.product); ok {
		ec := out.solution.EC(slope, nutrition.Conductivity(w.Plan.Feeding.WaterEC))
		out.EC = NewFigure(working.Number(float64(ec.Value), working.MilliSiemensPerCM), ec.Working)
	}
	if injector := InjectorOf(w.Plan.Feeding); injector != nutrition.NoInjector {
		solution, stock := out.solution, out.solution.Stock(injector)
		out.Stock = NewFigure(working.Number(float64(stock), working.GramPerLitre), func() working.Trace {
			return stockWorking(solution, injector)
		})
	}
}

// SlopeOf returns how much a soluble product raises the conductivity of water: as the
// label says, else as was published for its analysis. ok is false where neither is known.
func SlopeOf(p *Product) (slope nutrition.Slope, ok bool) {
	if p.Conductivity > 0 {
		return nutrition.LabelSlope(nutrition.Conductivity(p.Conductivity)), true
	}
	analysis, err := nutrition.ParseAnalysis(p.Analysis)
	if err != nil {
		return nutrition.Slope{}, false
	}
	return nutrition.KnownSlope(analysis)
}

// InjectorOf returns the injector of the settings, or [nutrition.NoInjector].
func InjectorOf(f FeedingSettings) nutrition.Injector {
	if !(f.Injector > 0) {
		return nutrition.NoInjector
	}
	injector := nutrition.Injector{Ratio: f.Injector}
	if f.PartsAdded {
		injector.Convention = nutrition.PartsAdded
	}
	return injector
}

// mixFindings reports once for each product of the turn what is wrong with its can: a
// stock that will not dissolve, more phosphorus than nitrogen, a strength of the label
// that does not suit the plants; and once that one can does not suit all.
func (w *workOut) mixFindings(turn []turnProduct, rounds []Round) {
	for _, t := range turn {
		where := finding.Where{"products", t.product.ID}
		strongest := nutrition.Solution{Analysis: t.analysis}
		feeders := map[nutrition.Feeder]bool{}
		for i := range rounds {
			if rounds[i].Product != t.product.ID {
				continue
			}
			if rounds[i].solution.Product > strongest.Product {
				strongest = rounds[i].solution
			}
			for _, pot := range rounds[i].Pots {
				if s := w.Pots[pot].Standing(rounds[i].Date); s != nil {
					feeders[s.Feeder] = true
				}
			}
		}
		if strongest.Product == 0 {
			continue
		}
		if f, ok := nutrition.SolubilityFinding(where, strongest, InjectorOf(w.Plan.Feeding), nutrition.Concentration(t.product.Solubility)); ok {
			w.findNamed(f, t.product)
		}
		if f, ok := nutrition.PhosphorusFinding(where, strongest); ok {
			w.findNamed(f, t.product)
		}
		for _, class := range nutrition.Feeders {
			if t.product.Strength == 0 || !feeders[class] {
				continue
			}
			if f, ok := nutrition.StrengthFinding(where, strongest, nutrition.ClassOf(class)); ok {
				w.findNamed(f, t.product)
				break
			}
		}
		if s := strengthOf(t.product, feeders); !s.within {
			w.find("plan.shared_strength", finding.Note, where,
				finding.Arg{Name: "product", Value: working.Text(w.Plan.ProductLabel(t.product.ID))},
				finding.Arg{Name: "nitrogen", Value: working.Number(float64(s.ppm), working.MilligramPerLitre)})
		}
	}
}

// findNamed keeps a finding with the name of its product.
func (w *workOut) findNamed(f finding.Finding, p *Product) {
	f.Args = append(slices.Clone(f.Args), finding.Arg{Name: "product", Value: working.Text(w.Plan.ProductLabel(p.ID))})
	w.Findings = append(w.Findings, f)
}
