package planner

import "slices"

// WithNewProduct returns the plan with a product at the end of its list.
func (p Plan) WithNewProduct(product Product) Plan {
	p.Products = append(slices.Clip(p.Products), product)
	return p
}

// WithoutProduct returns the plan without a product, or a [*MissingError]. Feeds and
// blends that named it go on without it.
func (p Plan) WithoutProduct(id string) (Plan, error) {
	i := slices.IndexFunc(p.Products, func(x Product) bool { return x.ID == id })
	if i < 0 {
		return p, &MissingError{Kind: "product", ID: id}
	}
	p.Products = slices.Delete(slices.Clone(p.Products), i, i+1)
	if p.Feeding.SlowRelease == id {
		p.Feeding.SlowRelease = ""
	}
	p.Feeding.Turn = slices.DeleteFunc(slices.Clone(p.Feeding.Turn), func(one string) bool { return one == id })
	p.Blends = slices.Clone(p.Blends)
	for k := range p.Blends {
		parts := slices.Clone(p.Blends[k].Parts)
		p.Blends[k].Parts = slices.DeleteFunc(parts, func(one BlendPart) bool { return one.Product == id })
	}
	return p, nil
}

// WithNewBlend returns the plan with a blend at the end of its list.
func (p Plan) WithNewBlend(blend Blend) Plan {
	p.Blends = append(slices.Clip(p.Blends), blend)
	return p
}

// WithBlend returns the plan with one blend changed by edit, or a [*MissingError].
func (p Plan) WithBlend(id string, edit func(*Blend)) (Plan, error) {
	i := slices.IndexFunc(p.Blends, func(x Blend) bool { return x.ID == id })
	if i < 0 {
		return p, &MissingError{Kind: "blend", ID: id}
	}
	p.Blends = slices.Clone(p.Blends)
	p.Blends[i].Parts = slices.Clone(p.Blends[i].Parts)
	edit(&p.Blends[i])
	return p, nil
}

// WithoutBlend returns the plan without a blend, or a [*MissingError]. Where pots were
// filled with it, they are filled with ready mix.
func (p Plan) WithoutBlend(id string) (Plan, error) {
	i := slices.IndexFunc(p.Blends, func(x Blend) bool { return x.ID == id })
	if i < 0 {
		return p, &MissingError{Kind: "blend", ID: id}
	}
	p.Blends = slices.Delete(slices.Clone(p.Blends), i, i+1)
	if p.Mix.Blend == id {
		p.Mix.Blend = ""
	}
	return p, nil
}
