package planfile

import (
	"strconv"
	"strings"

	"gopkg.in/yaml.v3"

	"fourturn/planner"
	"fourturn/planner/quantity"
)

var productForm = stocked(newForm(
	text("name", MaxName, func(p *planner.Product) *string { return &p.Name }),
	required(word(kindKey, func(p *planner.Product) *planner.ProductKind { return &p.Kind },
		planner.SlowRelease, planner.Soluble, planner.PottingMix, planner.Ingredient)),
	analysis("analysis", func(p *planner.Product) *string { return &p.Analysis }),
	number("longevity", monthsMeasure, 0.5, 36, func(p *planner.Product) *float64 { return &p.Longevity }),
	number("reference", temperatureMeasure, 1, 45, func(p *planner.Product) *quantity.Temperature { return &p.Reference }),
	number("coated", shareMeasure, 0.01, 1, func(p *planner.Product) *float64 { return &p.Coated }),
	number("rate", rateMeasure, 0.01, 100, func(p *planner.Product) *float64 { return &p.Rate }),
	text("rate_label", MaxName, func(p *planner.Product) *string { return &p.RateLabel }),
	number("strength", strengthMeasure, 1, 5000, func(p *planner.Product) *float64 { return &p.Strength }),
	number("solubility", rateMeasure, 1, 2000, func(p *planner.Product) *float64 { return &p.Solubility }),
	number("conductivity", conductivityMeasure, 0.01, 10, func(p *planner.Product) *float64 { return &p.Conductivity }),
	number("spoon", massMeasure, 0.001, 0.2, func(p *planner.Product) *quantity.Mass { return &p.SpoonMass }),
	list("packs", packForm, packKey, func(p *planner.Product) *[]planner.Pack { return &p.Packs }),
	inner("bulk", bulkForm, func(p *planner.Product) *planner.Bulk { return &p.Bulk }),
	number("expansion", countMeasure, 0.1, mostExpansion, func(p *planner.Product) *float64 { return &p.Expansion }),
	inShed(),
))

var packForm = newForm(
	number("volume", volumeMeasure, 0.1, 100_000, func(p *planner.Pack) *quantity.Volume { return &p.Volume }),
	number("mass", massMeasure, 0.001, 100_000, func(p *planner.Pack) *quantity.Mass { return &p.Mass }),
	number("price", priceMeasure, 0.001, highestPrice, func(p *planner.Pack) *float64 { return &p.Price }),
)

var bulkForm = newForm(
	number("price", priceMeasure, 0.001, highestPrice, func(b *planner.Bulk) *float64 { return &b.Price }),
	number("per", volumeMeasure, 0.1, 100_000, func(b *planner.Bulk) *quantity.Volume { return &b.Per }),
	number("step", volumeMeasure, 0.1, 100_000, func(b *planner.Bulk) *quantity.Volume { return &b.Step }),
	number("minimum", volumeMeasure, 0.1, 1_000_000, func(b *planner.Bulk) *quantity.Volume { return &b.Minimum }),
	number("delivery", priceMeasure, 0.001, highestPrice, func(b *planner.Bulk) *float64 { return &b.Delivery }),
)

var blendForm = newForm(
	text("name", MaxName, func(b *planner.Blend) *string { return &b.Name }),
	list("parts", blendPartForm, func(p *planner.BlendPart) string { return p.Product }, func(b *planner.Blend) *[]planner.BlendPart { return &b.Parts }),
	optional("shrinkage", shareMeasure, 0, 0.6, func(b *planner.Blend) **float64 { return &b.Shrinkage }),
)

var blendPartForm = newForm(
	required(refer("product", productReference, func(p *planner.BlendPart) *string { return &p.Product })),
	number("parts", countMeasure, 0.01, mostParts, func(p *planner.BlendPart) *float64 { return &p.Parts }),
)

// packKey names a pack by its size.
func packKey(p *planner.Pack) string {
	switch {
	case p.Volume != 0:
		return volumeMeasure.format(float64(p.Volume), quantity.Metric)
	case p.Mass != 0:
		return massMeasure.format(float64(p.Mass), quantity.Metric)
	}
	return ""
}

const (
	kindKey   = "kind"
	inShedKey = "in_shed"
)

// stockMeasure is what a product in the shed is counted in: mix by volume,
// fertiliser by mass.
func stockMeasure(p *planner.Product) *measure {
	if p.Kind.ByVolume() {
		return volumeMeasure
	}
	return massMeasure
}

// inShed is the stock of a product. Its unit depends on the kind, which may
// stand below it in the file: it is read when the rest is known.
func inShed() field[planner.Product] {
	return field[planner.Product]{
		key:  inShedKey,
		read: func(*reader, *place, *yaml.Node, *planner.Product) {},
		write: func(w *writer, from *planner.Product) *value {
			if from.InShed == 0 {
				return nil
			}
			return &value{measure: stockMeasure(from), number: from.InShed, system: w.system}
		},
		check: func(c *checker, at *place, from *planner.Product) {
			if from.InShed != 0 {
				c.within(stockMeasure(from), at, inShedKey, from.InShed, 0, largestStock)
			}
		},
	}
}

func stocked(f *form[planner.Product]) *form[planner.Product] {
	f.finish = func(r *reader, at *place, n *yaml.Node, into *planner.Product) {
		if stock := child(n, inShedKey); stock != nil {
			if x, ok := r.measure(at.in(inShedKey), stock, stockMeasure(into)); ok {
				into.InShed = x
			}
		}
	}
	return f
}

// analysis is a field of the three numbers on a fertiliser's label: per cent of
// N, P2O5 and K2O (the guaranteed analysis of fertiliser labels).
func analysis(key string, get func(*planner.Product) *string) field[planner.Product] {
	f := text(key, MaxID, get)
	f.write = func(_ *writer, from *planner.Product) *value {
		if s := *get(from); s != "" {
			return &value{text: s, bare: validAnalysis(s)}
		}
		return nil
	}
	f.check = func(c *checker, at *place, from *planner.Product) {
		if s := *get(from); s != "" && !validAnalysis(s) {
			c.report(problem("planfile.analysis", at.in(key), "text", s))
		}
	}
	return f
}

func validAnalysis(s string) bool {
	parts := strings.Split(s, "-")
	if len(parts) != 3 {
		return false
	}
	for _, part := range parts {
		if part == "" || strings.Trim(part, ".0123456789") != "" {
			return false
		}
		if x, err := strconv.ParseFloat(part, 64); err != nil || x > 100 {
			return false
		}
	}
	return true
}
