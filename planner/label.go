package planner

// Label returns what the pot is called: its name, or its id where it has none.
func (p *Pot) Label() string { return labelOf(p.Name, p.ID) }

// Label returns what the site is called: its name, or its id where it has none.
func (s *Site) Label() string { return labelOf(s.Name, s.ID) }

// Label returns what the spot is called: its name, or its id where it has none.
func (s *Spot) Label() string { return labelOf(s.Name, s.ID) }

// Label returns what the recipe is called: its name, or its id where it has none.
func (r *Recipe) Label() string { return labelOf(r.Name, r.ID) }

// ProductLabel returns what a product is called, or the id itself where the product has
// no name or is not in the plan any more.
func (p *Plan) ProductLabel(id string) string {
	if product := p.Product(id); product != nil {
		return labelOf(product.Name, id)
	}
	return id
}

// Label returns what the blend is called: its name, or its id where it has none.
func (b *Blend) Label() string { return labelOf(b.Name, b.ID) }

func labelOf(name, id string) string {
	if name != "" {
		return name
	}
	return id
}
