package planner

import (
	"fmt"
	"slices"
)

// Editing a plan never changes it: each function returns a new plan that shares
// what it did not touch.

// MissingError reports an id that a plan does not have.
type MissingError struct {
	Kind string // "pot", "site", "spot", "product", "blend", "recipe" or "entry"
	ID   string
}

// Error describes the missing part.
func (e *MissingError) Error() string { return fmt.Sprintf("the plan has no %s %q", e.Kind, e.ID) }

// PotIndex returns where a pot stands in the plan, or -1.
func (p *Plan) PotIndex(id string) int {
	return slices.IndexFunc(p.Pots, func(pot Pot) bool { return pot.ID == id })
}

// Pot returns a pot by its id, or nil.
func (p *Plan) Pot(id string) *Pot { return find(p.Pots, id, func(x *Pot) string { return x.ID }) }

// Site returns a site by its id, or nil.
func (p *Plan) Site(id string) *Site { return find(p.Sites, id, func(x *Site) string { return x.ID }) }

// Spot returns a spot by its id, or nil.
func (p *Plan) Spot(id string) *Spot { return find(p.Spots, id, func(x *Spot) string { return x.ID }) }

// Product returns a product by its id, or nil.
func (p *Plan) Product(id string) *Product {
	return find(p.Products, id, func(x *Product) string { return x.ID })
}

// Recipe returns a recipe by its id, or nil.
func (p *Plan) Recipe(id string) *Recipe {
	return find(p.Recipes, id, func(x *Recipe) string { return x.ID })
}

// Blend returns a blend by its id, or nil.
func (p *Plan) Blend(id string) *Blend {
	return find(p.Blends, id, func(x *Blend) string { return x.ID })
}

func find[T any](list []T, id string, idOf func(*T) string) *T {
	for i := range list {
		if idOf(&list[i]) == id {
			return &list[i]
		}
	}
	return nil
}

// WithPot returns the plan with one pot changed by edit, or a [*MissingError].
func (p Plan) WithPot(id string, edit func(*Pot)) (Plan, error) {
	return p.WithPots([]string{id}, edit)
}

// WithPots returns the plan with each of some pots changed by edit, or a
// [*MissingError] for the first that is not there.
func (p Plan) WithPots(ids []string, edit func(*Pot)) (Plan, error) {
	index := make(map[string]int, len(p.Pots))
	for i := range p.Pots {
		index[p.Pots[i].ID] = i
	}
	pots := slices.Clone(p.Pots)
	for _, id := range ids {
		i, ok := index[id]
		if !ok {
			return p, &MissingError{Kind: "pot", ID: id}
		}
		pots[i].Plantings = clonePlantings(pots[i].Plantings)
		edit(&pots[i])
	}
	p.Pots = pots
	return p, nil
}

func clonePlantings(list []Planting) []Planting {
	copied := slices.Clone(list)
	for i := range copied {
		copied[i].Plants = slices.Clone(copied[i].Plants)
	}
	return copied
}

// WithSite returns the plan with one site changed by edit, or a [*MissingError].
func (p Plan) WithSite(id string, edit func(*Site)) (Plan, error) {
	i := slices.IndexFunc(p.Sites, func(s Site) bool { return s.ID == id })
	if i < 0 {
		return p, &MissingError{Kind: "site", ID: id}
	}
	p.Sites = slices.Clone(p.Sites)
	edit(&p.Sites[i])
	return p, nil
}

// WithProduct returns the plan with one product changed by edit, or a [*MissingError].
func (p Plan) WithProduct(id string, edit func(*Product)) (Plan, error) {
	i := slices.IndexFunc(p.Products, func(x Product) bool { return x.ID == id })
	if i < 0 {
		return p, &MissingError{Kind: "product", ID: id}
	}
	p.Products = slices.Clone(p.Products)
	p.Products[i].Packs = slices.Clone(p.Products[i].Packs)
	edit(&p.Products[i])
	return p, nil
}

// WithNewPots returns the plan with pots put behind the pot named after, or at the
// end where after is "".
func (p Plan) WithNewPots(after string, pots ...Pot) (Plan, error) {
	at := len(p.Pots)
	if after != "" {
		i := p.PotIndex(after)
		if i < 0 {
			return p, &MissingError{Kind: "pot", ID: after}
		}
		at = i + 1
	}
	p.Pots = slices.Insert(slices.Clone(p.Pots), at, pots...)
	return p, nil
}

// WithoutPot returns the plan without a pot. What the log says of other pots too stays,
// no longer naming it; what it says of this pot alone goes with it.
func (p Plan) WithoutPot(id string) (Plan, error) {
	i := p.PotIndex(id)
	if i < 0 {
		return p, &MissingError{Kind: "pot", ID: id}
	}
	p.Pots = slices.Delete(slices.Clone(p.Pots), i, i+1)
	log := make([]Entry, 0, len(p.Log))
	for _, e := range p.Log {
		if slices.Contains(e.Pots, id) {
			e.Pots = slices.DeleteFunc(slices.Clone(e.Pots), func(pot string) bool { return pot == id })
			if len(e.Pots) == 0 && e.Kind != Noted {
				continue
			}
		}
		log = append(log, e)
	}
	p.Log = log
	return p, nil
}

// WithEntry returns the plan with an entry in its log, in the order of dates.
func (p Plan) WithEntry(e Entry) Plan {
	at, _ := slices.BinarySearchFunc(p.Log, e, func(have, new Entry) int {
		if have.Date > new.Date {
			return 1
		}
		return -1 // an entry of the same day goes behind those that are there
	})
	p.Log = slices.Insert(slices.Clone(p.Log), at, e)
	return p
}

// WithoutEntry returns the plan without an entry, or a [*MissingError].
func (p Plan) WithoutEntry(id string) (Plan, error) {
	i := slices.IndexFunc(p.Log, func(e Entry) bool { return e.ID == id })
	if i < 0 {
		return p, &MissingError{Kind: "entry", ID: id}
	}
	p.Log = slices.Delete(slices.Clone(p.Log), i, i+1)
	return p, nil
}

// FreeID returns an id for a new part of the plan: base, or base with the first
// number from 2 on that makes it new.
func FreeID(base string, taken func(id string) bool) string {
	if !taken(base) {
		return base
	}
	for n := 2; ; n++ {
		if id := fmt.Sprintf("%s-%d", base, n); !taken(id) {
			return id
		}
	}
}
