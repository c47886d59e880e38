package plants

import (
	"maps"
	"slices"
	"strings"

	"fourturn/planner/finding"
)

// assembly is a book being put together from files on top of another book.
type assembly struct {
	book   *Book
	faults Faults
	places map[string]origin // of plants that came from the files
}

// origin is where a plant was read.
type origin struct {
	file  string
	at    map[Field]place
	start place
}

// assemble puts the files on top of base, which may be nil, and checks every
// plant that they give. The book is nil where there are faults.
func assemble(base *Book, files ...contents) (*Book, error) {
	a := assembly{book: base.copy(), places: map[string]origin{}}
	for _, c := range files {
		a.faults = append(a.faults, c.faults...)
		a.tables(c)
	}
	for _, c := range files {
		a.cites(c)
		for _, p := range c.plants {
			a.add(c, p)
		}
	}
	for _, p := range a.book.plants {
		if from, ok := a.places[p.ID]; ok {
			a.check(p, from)
		}
	}
	if len(a.faults) > 0 {
		return nil, a.faults
	}
	return a.book, nil
}

func (b *Book) copy() *Book {
	if b == nil {
		b = &Book{}
	}
	return &Book{
		plants: slices.Clone(b.plants), sizes: slices.Clone(b.sizes),
		diseases: slices.Clone(b.diseases), citations: slices.Clone(b.citations),
		plantAt: cloned(b.plantAt), sizeAt: cloned(b.sizeAt),
		diseaseAt: cloned(b.diseaseAt), citationAt: cloned(b.citationAt),
	}
}

func cloned(m map[string]int) map[string]int {
	if m == nil {
		return map[string]int{}
	}
	return maps.Clone(m)
}

// tables adds or replaces the file's sizes, diseases and sources.
func (a *assembly) tables(c contents) {
	for _, s := range c.sizes {
		a.book.sizes = putByID(a.book.sizes, a.book.sizeAt, s.ID, s)
	}
	for _, d := range c.diseases {
		a.book.diseases = putByID(a.book.diseases, a.book.diseaseAt, d.ID, d)
	}
	for _, s := range c.citations {
		a.book.citations = putByID(a.book.citations, a.book.citationAt, s.ID, s)
	}
}

func putByID[T any](all []T, at map[string]int, id string, v T) []T {
	if i, ok := at[id]; ok {
		all[i] = v
		return all
	}
	at[id] = len(all)
	return append(all, v)
}

// add puts one plant into the book: a new one, or the values given on top of the
// one that stands there.
func (a *assembly) add(c contents, r read) {
	id := r.plant.ID
	from := origin{c.file, r.at, r.start}
	if earlier, ok := a.places[id]; ok {
		a.fault(from, id, "", "plant_twice", number("line", float64(earlier.start.line), ""))
		return
	}
	a.places[id] = from
	plant := r.plant
	if c.group != "" {
		plant.Own = nil
	}
	if standing, ok := a.book.Plant(id); ok {
		a.book.plants[a.book.plantAt[id]] = standing.over(&plant)
		return
	}
	a.book.plantAt[id] = len(a.book.plants)
	a.book.plants = append(a.book.plants, &plant)
}

// over returns a copy of the plant with the values that own gives, each with its
// own provenance.
func (p *Plant) over(own *Plant) *Plant {
	merged := *p
	said := map[Field]Provenance{}
	file := map[Field]Provenance(nil)
	if p.ground != nil {
		said, file = maps.Clone(p.ground.said), p.ground.file
	}
	if said == nil {
		said = map[Field]Provenance{}
	}
	for _, f := range own.Own {
		a, _ := attributeOf(f)
		a.copy(&merged, own)
		forget(said, f)
		if a.write(own) != nil { // not taken away
			said[f] = own.Provenance(f)
		}
		for part, from := range own.ground.said {
			if partOfField(part, f) {
				said[part] = from
			}
		}
	}
	merged.ground = &ground{said: said, file: file}
	merged.Own = slices.Clone(own.Own)
	return &merged
}

// forget drops what was said of a field and of its parts.
func forget(said map[Field]Provenance, f Field) {
	maps.DeleteFunc(said, func(key Field, _ Provenance) bool { return key == f || partOfField(key, f) })
}

// partOfField reports whether key is a part of a field, as "sold.quart" of "sold".
func partOfField(key, f Field) bool { return strings.HasPrefix(string(key), string(f)+".") }

// check applies the rules to one plant and notes what breaks them.
func (a *assembly) check(p *Plant, from origin) {
	a.required(p, from)
	for _, b := range brokenLaws(p) {
		a.fault(from, p.ID, b.field, b.code, b.args...)
	}
	a.references(p, from)
}

func (a *assembly) required(p *Plant, from origin) {
	for _, attr := range attributes {
		if attr.required && attr.write(p) == nil {
			a.fault(from, p.ID, "", "missing", word("key", string(attr.field)))
		}
	}
}

// references checks that what the plant points to is in the book.
func (a *assembly) references(p *Plant, from origin) {
	for _, s := range p.Sold {
		if _, ok := a.book.Size(s.Size); !ok {
			a.fault(from, p.ID, FieldSold, "unknown_size", word("id", s.Size))
		}
	}
	for _, id := range p.Diseases {
		d, ok := a.book.Disease(id)
		switch {
		case !ok:
			a.fault(from, p.ID, FieldDiseases, "unknown_disease", word("id", id))
		case !d.Hosts.include(p):
			a.fault(from, p.ID, FieldDiseases, "not_a_host", word("id", id))
		}
	}
}

// cites checks that every source that a file mentions is in the book.
func (a *assembly) cites(c contents) {
	for _, mention := range c.cited {
		if _, ok := a.book.Citation(mention.source); !ok {
			from := origin{file: c.file, start: mention.at}
			a.fault(from, mention.plant, mention.field, "unknown_source", word("id", mention.source))
		}
	}
}

func (a *assembly) fault(from origin, plant string, f Field, code string, args ...finding.Arg) {
	if len(a.faults) >= maxFaults {
		return
	}
	at, ok := from.at[f]
	if !ok {
		at = from.start
	}
	a.faults = append(a.faults, Fault{
		File: from.file, Line: at.line, Column: at.column, Plant: plant, Field: f,
		Code: "plants.fault." + code, Args: args,
	})
}
