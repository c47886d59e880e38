package planner

import "slices"

// WithoutSite returns the plan without a site and without its spots. Pots that stood
// there stay, at no spot.
func (p Plan) WithoutSite(id string) (Plan, error) {
	i := slices.IndexFunc(p.Sites, func(s Site) bool { return s.ID == id })
	if i < 0 {
		return p, &MissingError{Kind: "site", ID: id}
	}
	p.Sites = slices.Delete(slices.Clone(p.Sites), i, i+1)
	for _, spot := range p.Spots {
		if spot.Site == id {
			p, _ = p.WithoutSpot(spot.ID)
		}
	}
	return p, nil
}

// WithSpot returns the plan with one spot changed by edit, or a [*MissingError].
func (p Plan) WithSpot(id string, edit func(*Spot)) (Plan, error) {
	i := slices.IndexFunc(p.Spots, func(s Spot) bool { return s.ID == id })
	if i < 0 {
		return p, &MissingError{Kind: "spot", ID: id}
	}
	p.Spots = slices.Clone(p.Spots)
	edit(&p.Spots[i])
	return p, nil
}

// WithoutSpot returns the plan without a spot. Pots that stood there stay, at no spot.
func (p Plan) WithoutSpot(id string) (Plan, error) {
	i := slices.IndexFunc(p.Spots, func(s Spot) bool { return s.ID == id })
	if i < 0 {
		return p, &MissingError{Kind: "spot", ID: id}
	}
	p.Spots = slices.Delete(slices.Clone(p.Spots), i, i+1)
	pots := slices.Clone(p.Pots)
	for k := range pots {
		if pots[k].Spot == id {
			pots[k].Spot = ""
		}
	}
	p.Pots = pots
	return p, nil
}

// PotsAt counts the pots that stand at a spot.
func (p *Plan) PotsAt(spot string) int {
	n := 0
	for i := range p.Pots {
		if p.Pots[i].Spot == spot {
			n++
		}
	}
	return n
}
