package mix

import (
	"fmt"
	"slices"
	"strings"

	"fourturn/app/words"
	"fourturn/planner"
	"fourturn/planner/mix"
	"fourturn/planner/planfile"
	"fourturn/planner/quantity"
)

// Limits of a product, as the plan file allows them.
const (
	leastPack    = 100 * quantity.Millilitre
	mostPack     = 100_000 * quantity.Litre
	leastPrice   = 0.001
	mostPrice    = 1e6
	mostStock    = 1e6 * quantity.Litre
	mostExpanded = 10
)

// Products returns the mixes and ingredients of the plan: what is in the shed, the sizes
// they are sold in, and bulk.
func (s *Screen) Products() []Group {
	var groups []Group
	plan := s.session.Plan()
	for i := range plan.Products {
		if plan.Products[i].Kind.ByVolume() {
			groups = append(groups, s.product(&plan.Products[i]))
		}
	}
	return groups
}

func (s *Screen) product(p *planner.Product) Group {
	w := s.words
	label := s.session.Plan().ProductLabel(p.ID)
	edit := func(change func(*planner.Product)) error {
		return s.do("mix_buying.edit_product", label, func(plan planner.Plan) (planner.Plan, error) { return plan.WithProduct(p.ID, change) })
	}
	g := Group{Key: "product/" + p.ID, Title: label, Summary: s.productSummary(p), Remove: func() error {
		return s.do("mix_buying.edit_remove", label, func(plan planner.Plan) (planner.Plan, error) { return plan.WithoutProduct(p.ID) })
	}}
	kinds := []planner.ProductKind{planner.PottingMix, planner.Ingredient}
	g.Fields = []Field{
		s.name(p.Name, func(name string) error { return edit(func(p *planner.Product) { p.Name = name }) }),
		s.choice("kind", "mix_buying.kind", "", []string{w.T("mix_buying.kind_mix"), w.T("mix_buying.kind_ingredient")}, slices.Index(kinds, p.Kind),
			func(i int) error { return edit(func(p *planner.Product) { p.Kind = kinds[i] }) }),
		s.volume("in_shed", "mix_buying.in_shed", w.T("mix_buying.help_shed"), quantity.Volume(p.InShed), quantity.Millilitre, mostStock,
			func(v quantity.Volume) error { return edit(func(p *planner.Product) { p.InShed = float64(v) }) }),
		s.number("expansion", "mix_buying.expansion", w.T("mix_buying.help_expansion", words.A{"bale": w.Number(mix.BaleExpansion, 1)}), p.Expansion, 0.1, mostExpanded, false,
			func(x float64) error { return edit(func(p *planner.Product) { p.Expansion = x }) }),
	}
	g.Fields = append(g.Fields, s.packs(p, edit)...)
	g.Fields = append(g.Fields, s.bulk(p, edit)...)
	g.Notes = []string{w.T("mix_buying.product_notes")}
	return g
}

// name is the field of a name.
func (s *Screen) name(name string, set func(string) error) Field {
	return Field{Key: "name", Label: s.words.T("mix_buying.name"), Value: name, Take: func(typed string) error {
		typed = strings.TrimSpace(typed)
		switch {
		case typed == name:
			return nil
		case typed == "" || len([]rune(typed)) > planfile.MaxName:
			return &words.Refusal{Text: s.words.T("mix_buying.name_range", words.A{"most": planfile.MaxName})}
		}
		return set(typed)
	}}
}

// packs are the sizes with their prices, and an empty one to be filled in. A size that is
// emptied is not sold any more.
func (s *Screen) packs(p *planner.Product, edit func(func(*planner.Product)) error) []Field {
	w := s.words
	var fields []Field
	for i, pack := range append(slices.Clip(p.Packs), planner.Pack{}) {
		help := w.T("mix_buying.help_pack")
		if i == len(p.Packs) {
			help = w.T("mix_buying.help_new_pack")
		}
		fields = append(fields, s.volume(fmt.Sprintf("pack/%d", i), "mix_buying.pack", help, pack.Volume, leastPack, mostPack, func(v quantity.Volume) error {
			if i == len(p.Packs) && v == 0 {
				return nil
			}
			return edit(func(p *planner.Product) {
				switch {
				case i == len(p.Packs):
					p.Packs = append(p.Packs, planner.Pack{Volume: v})
				case v == 0:
					p.Packs = slices.Delete(p.Packs, i, i+1)
				default:
					p.Packs[i].Volume = v
				}
			})
		}))
		if i == len(p.Packs) {
			break
		}
		fields = append(fields, s.number(fmt.Sprintf("price/%d", i), "mix_buying.price", w.T("mix_buying.help_price"), pack.Price, leastPrice, mostPrice, false,
			func(x float64) error { return edit(func(p *planner.Product) { p.Packs[i].Price = x }) }))
	}
	return fields
}

// bulk are the terms of a delivery; those that follow the price are shown with it.
func (s *Screen) bulk(p *planner.Product, edit func(func(*planner.Product)) error) []Field {
	w, b := s.words, p.Bulk
	fields := []Field{s.number("bulk_price", "mix_buying.bulk_price", w.T("mix_buying.help_bulk"), b.Price, leastPrice, mostPrice, false,
		func(x float64) error { return edit(func(p *planner.Product) { p.Bulk.Price = x }) })}
	if b.Price == 0 {
		return fields
	}
	units := s.session.Plan().Units
	volume := func(key, label, help string, v, most quantity.Volume, of func(*planner.Bulk) *quantity.Volume) {
		fields = append(fields, s.volume(key, label, help, v, leastPack, most, func(v quantity.Volume) error {
			return edit(func(p *planner.Product) { *of(&p.Bulk) = v })
		}))
	}
	volume("bulk_per", "mix_buying.bulk_per", w.T("mix_buying.help_per", words.A{"usual": w.Volume(quantity.CubicMetre, units)}), b.Per, mostPack, func(b *planner.Bulk) *quantity.Volume { return &b.Per })
	volume("bulk_step", "mix_buying.bulk_step", w.T("mix_buying.help_step"), b.Step, mostPack, func(b *planner.Bulk) *quantity.Volume { return &b.Step })
	volume("bulk_minimum", "mix_buying.bulk_minimum", w.T("mix_buying.help_minimum"), b.Minimum, mostStock, func(b *planner.Bulk) *quantity.Volume { return &b.Minimum })
	return append(fields, s.number("bulk_delivery", "mix_buying.bulk_delivery", w.T("mix_buying.help_delivery"), b.Delivery, leastPrice, mostPrice, false,
		func(x float64) error { return edit(func(p *planner.Product) { p.Bulk.Delivery = x }) }))
}

func (s *Screen) productSummary(p *planner.Product) string {
	w, units := s.words, s.session.Plan().Units
	var parts []string
	for _, pack := range p.Packs {
		price := w.T("mix_buying.no_price")
		if pack.Price > 0 {
			price = s.money(pack.Price)
		}
		parts = append(parts, w.T("mix_buying.pack_at", words.A{"size": w.Volume(pack.Volume, units), "price": price}))
	}
	if p.Bulk.Price > 0 {
		parts = append(parts, w.T("mix_buying.bulk_there"))
	}
	if p.InShed > 0 {
		parts = append(parts, w.T("mix_buying.shed_holds", words.A{"volume": w.Volume(quantity.Volume(p.InShed), units)}))
	}
	if len(parts) == 0 {
		return w.T("mix_buying.not_sold")
	}
	return strings.Join(parts, ", ")
}

// AddMix puts a new ready mix into the plan.
func (s *Screen) AddMix() error { return s.add("mix_buying.new_mix", planner.PottingMix) }

// AddIngredient puts a new part for blends into the plan.
func (s *Screen) AddIngredient() error { return s.add("mix_buying.new_ingredient", planner.Ingredient) }

func (s *Screen) add(name string, kind planner.ProductKind) error {
	plan := s.session.Plan()
	id := planner.FreeID(string(kind), func(id string) bool { return plan.Product(id) != nil })
	product := planner.Product{ID: id, Name: s.words.T(name), Kind: kind}
	return s.do("mix_buying.edit_add", product.Name, func(p planner.Plan) (planner.Plan, error) { return p.WithNewProduct(product), nil })
}

// AddBlend puts a new blend into the plan.
func (s *Screen) AddBlend() error {
	plan := s.session.Plan()
	blend := planner.Blend{
		ID:   planner.FreeID("blend", func(id string) bool { return plan.Blend(id) != nil }),
		Name: s.words.T("mix_buying.new_blend"),
	}
	return s.do("mix_buying.edit_add", blend.Name, func(p planner.Plan) (planner.Plan, error) { return p.WithNewBlend(blend), nil })
}
