package plants

import (
	"maps"
	"slices"

	"fourturn/planner/working"
)

// Own is a person's own book: plants that they added, and values that they give
// instead of the built-in ones. Where the file lies is the caller's matter. An
// Own does not change; edits return another.
type Own struct {
	plants    []Plant // Plant.Own lists the values that each gives
	sizes     []Size
	diseases  []Disease
	citations []Citation
	ground    map[Field]Provenance
}

// ReadOwn reads a person's own book and puts it on top of base. The name is used
// in faults only. The error is a [Faults], each with line and column.
func ReadOwn(name string, data []byte, base *Book) (*Own, *Book, error) {
	return ownOf(readFile(name, "", data, working.Entered), base)
}

func ownOf(c contents, base *Book) (*Own, *Book, error) {
	book, err := assemble(base, c)
	if err != nil {
		return nil, nil, err
	}
	own := &Own{sizes: c.sizes, diseases: c.diseases, citations: c.citations, ground: c.ground}
	for _, r := range c.plants {
		own.plants = append(own.plants, r.plant)
	}
	return own, book, nil
}

// On puts the own book on top of base. The error is a [Faults] that names plants
// and fields, without lines: it arises when an edit breaks a rule.
func (o *Own) On(base *Book) (*Book, error) {
	c := contents{sizes: o.sizes, diseases: o.diseases, citations: o.citations, ground: o.ground}
	for i := range o.plants {
		c.plants = append(c.plants, read{plant: o.plants[i]})
		c.cited = append(c.cited, mentions(&o.plants[i])...)
	}
	return assemble(base, c)
}

// mentions returns the sources that a plant of an own book names, for plants that
// were edited and not read.
func mentions(p *Plant) []cited {
	var all []cited
	for _, f := range slices.Sorted(maps.Keys(p.ground.said)) {
		for _, id := range p.ground.said[f].Cites {
			all = append(all, cited{source: id, plant: p.ID, field: f})
		}
	}
	for _, c := range p.Conflicts {
		for _, v := range c.Versions {
			for _, id := range v.Cites {
				all = append(all, cited{source: id, plant: p.ID, field: FieldConflicts})
			}
		}
	}
	return all
}

// Plants returns the ids of the plants that the own book adds or changes, in the
// order of its file.
func (o *Own) Plants() []string {
	ids := make([]string, len(o.plants))
	for i := range o.plants {
		ids[i] = o.plants[i].ID
	}
	return ids
}

// Given returns the values that the own book gives of a plant, and false where
// it says nothing of it.
func (o *Own) Given(id string) ([]Field, bool) {
	at := o.at(id)
	if at < 0 {
		return nil, false
	}
	return slices.Clone(o.plants[at].Own), true
}

func (o *Own) at(id string) int {
	return slices.IndexFunc(o.plants, func(p Plant) bool { return p.ID == id })
}

// Set returns an own book that gives the named values as p has them, on top of
// what it gave of that plant before; a value that p does not have is taken away
// from the book below. from says where values are from; those
// that it leaves out were entered by the person. Set panics on a field that
// does not exist.
func (o *Own) Set(p *Plant, from map[Field]Provenance, fields ...Field) *Own {
	out := o.clone()
	at := out.at(p.ID)
	if at < 0 {
		out.plants = append(out.plants, Plant{ID: p.ID, ground: &ground{file: out.ground}})
		at = len(out.plants) - 1
	}
	entry := out.plants[at]
	entry.Own = slices.Clone(entry.Own)
	said := maps.Clone(entry.ground.said)
	if said == nil {
		said = map[Field]Provenance{}
	}
	for _, f := range fields {
		a, ok := attributeOf(f)
		if !ok {
			panic("plants: no field " + string(f))
		}
		a.copy(&entry, p)
		forget(said, f)
		for key, given := range from {
			if key == f || partOfField(key, f) {
				said[key] = given
			}
		}
		if !slices.Contains(entry.Own, f) {
			entry.Own = append(entry.Own, f)
		}
	}
	inOrder(entry.Own)
	entry.ground = &ground{said: said, file: entry.ground.file}
	out.plants[at] = entry
	return out
}

// Unset returns an own book that no longer gives the named values of a plant, so
// that those of the book below show again.
func (o *Own) Unset(id string, fields ...Field) *Own {
	at := o.at(id)
	if at < 0 {
		return o
	}
	out := o.clone()
	entry := out.plants[at]
	said := maps.Clone(entry.ground.said)
	var none Plant
	kept := make([]Field, 0, len(entry.Own))
	for _, f := range entry.Own {
		if !slices.Contains(fields, f) {
			kept = append(kept, f)
			continue
		}
		a, _ := attributeOf(f)
		a.copy(&entry, &none)
		forget(said, f)
	}
	if len(kept) == 0 {
		out.plants = slices.Delete(out.plants, at, at+1)
		return out
	}
	entry.Own = kept
	entry.ground = &ground{said: said, file: entry.ground.file}
	out.plants[at] = entry
	return out
}

// Remove returns an own book that says nothing of a plant.
func (o *Own) Remove(id string) *Own {
	given, ok := o.Given(id)
	if !ok {
		return o
	}
	return o.Unset(id, given...)
}

// Join returns the own book with everything that other gives on top, as after
// an import.
func (o *Own) Join(other *Own) *Own {
	out := o.clone()
	for i := range other.plants {
		p := &other.plants[i]
		from := maps.Clone(p.ground.said)
		if from == nil {
			from = map[Field]Provenance{}
		}
		for _, f := range p.Own {
			from[f] = p.Provenance(f)
		}
		out = out.Set(p, from, p.Own...)
	}
	out.sizes = joinByID(out.sizes, other.sizes, func(s Size) string { return s.ID })
	out.diseases = joinByID(out.diseases, other.diseases, func(d Disease) string { return d.ID })
	out.citations = joinByID(out.citations, other.citations, func(c Citation) string { return c.ID })
	return out
}

func joinByID[T any](all, more []T, id func(T) string) []T {
	for _, v := range more {
		at := slices.IndexFunc(all, func(w T) bool { return id(w) == id(v) })
		if at >= 0 {
			all[at] = v
		} else {
			all = append(all, v)
		}
	}
	return all
}

// clone returns a copy whose lists can be changed. A nil Own is an empty one.
func (o *Own) clone() *Own {
	if o == nil {
		o = &Own{}
	}
	out := &Own{
		plants: slices.Clone(o.plants), sizes: slices.Clone(o.sizes), diseases: slices.Clone(o.diseases),
		citations: slices.Clone(o.citations), ground: o.ground,
	}
	if out.ground == nil {
		out.ground = map[Field]Provenance{anyField: {Status: working.Entered}}
	}
	return out
}

// Clone returns a copy of the plant that may be edited.
func (p *Plant) Clone() *Plant {
	out := *p
	out.Names, out.Botanical, out.Synonyms = slices.Clone(p.Names), slices.Clone(p.Botanical), slices.Clone(p.Synonyms)
	out.Seasons, out.Light, out.Sold = slices.Clone(p.Seasons), slices.Clone(p.Light), slices.Clone(p.Sold)
	out.Diseases, out.Invasive, out.Colours = slices.Clone(p.Diseases), slices.Clone(p.Invasive), slices.Clone(p.Colours)
	out.Foliage.Colours, out.Toxicity.Hazards = slices.Clone(p.Foliage.Colours), slices.Clone(p.Toxicity.Hazards)
	out.Pollinators, out.Edible = slices.Clone(p.Pollinators), slices.Clone(p.Edible)
	out.Conflicts, out.Own = slices.Clone(p.Conflicts), slices.Clone(p.Own)
	return &out
}
