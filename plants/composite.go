package plants

import (
	"gopkg.in/yaml.v3"

	"fourturn/planner/quantity"
	"fourturn/planner/working"
)

var toxicityCodec = structCodec(
	must(partOf("dogs", func(t *Toxicity) *Listing { return &t.Dogs }, wordCodec(Listings[:]))),
	must(partOf("cats", func(t *Toxicity) *Listing { return &t.Cats }, wordCodec(Listings[:]))),
	must(partOf("people", func(t *Toxicity) *Listing { return &t.People }, wordCodec(Listings[:]))),
	partOf("hazards", func(t *Toxicity) *[]Hazard { return &t.Hazards }, listCodec(wordCodec(Hazards[:]))),
	partOf("note", func(t *Toxicity) *string { return &t.Note }, textCodec),
)

var invasiveCodec = structCodec(
	must(partOf("region", func(i *Invasive) *string { return &i.Region }, textCodec)),
	partOf("note", func(i *Invasive) *string { return &i.Note }, textCodec),
)

var foliageCodec = structCodec(
	must(partOf("colours", func(f *Foliage) *[]Colour { return &f.Colours }, listCodec(wordCodec(Colours[:])))),
	must(partOf("texture", func(f *Foliage) *Texture { return &f.Texture }, wordCodec(Textures[:]))),
	partOf("evergreen", func(f *Foliage) *bool { return &f.Evergreen }, truthCodec),
)

var leafCodec = structCodec(
	must(partOf("form", func(l *Leaf) *LeafForm { return &l.Form }, wordCodec(LeafForms[:]))),
	partOf("length", func(l *Leaf) *quantity.Length { return &l.Length }, lengthCodec),
	partOf("edge", func(l *Leaf) *LeafEdge { return &l.Edge }, wordCodec(LeafEdges[:])),
	partOf("pattern", func(l *Leaf) *LeafPattern { return &l.Pattern }, wordCodec(LeafPatterns[:])),
)

var flowerCodec = structCodec(
	must(partOf("form", func(f *Flower) *FlowerForm { return &f.Form }, wordCodec(FlowerForms[:]))),
	must(partOf("width", func(f *Flower) *quantity.Length { return &f.Width }, lengthCodec)),
	partOf("petals", func(f *Flower) *int { return &f.Petals }, petalsCodec),
	partOf("eye", func(f *Flower) *Eye { return &f.Eye }, wordCodec(Eyes[:])),
)

// petalsCodec leaves a count of 0 unwritten.
var petalsCodec = codec[int]{
	read: countCodec.read,
	write: func(i int) *yaml.Node {
		if i == 0 {
			return nil
		}
		return countCodec.write(i)
	},
}

var drawingCodec = block(structCodec(
	must(partOf("habit", func(d *Drawing) *Habit { return &d.Habit }, wordCodec(Habits[:]))),
	must(partOf("leaf", func(d *Drawing) *Leaf { return &d.Leaf }, leafCodec)),
	partOf("flower", func(d *Drawing) *Flower { return &d.Flower }, flowerCodec),
	partOf("arrangement", func(d *Drawing) *Arrangement { return &d.Arrangement }, wordCodec(Arrangements[:])),
))

// block writes a mapping one key to a line.
func block[T any](c codec[T]) codec[T] {
	write := c.write
	c.write = func(v T) *yaml.Node {
		n := write(v)
		if n != nil {
			n.Style = 0
		}
		return n
	}
	return c
}

var versionCodec = structCodec(
	must(partOf("says", func(v *Version) *string { return &v.Says }, textCodec)),
	partOf("cite", func(v *Version) *[]string { return &v.Cites }, listCodec(citeCodec)),
)

var fieldCodec = codec[Field]{
	read: func(r *reader, n *yaml.Node) (Field, bool) {
		text, ok := r.text(n)
		if !ok {
			return "", false
		}
		if !fieldKey(Field(text)) {
			r.fault(n, "unknown_field", word("field", text))
			return "", false
		}
		return Field(text), true
	},
	write: func(f Field) *yaml.Node { return scalar(string(f)) },
}

var conflictCodec = block(structCodec(
	must(partOf("field", func(c *Conflict) *Field { return &c.Field }, fieldCodec)),
	must(partOf("versions", func(c *Conflict) *[]Version { return &c.Versions }, sequenceCodec(versionCodec))),
	must(partOf("why", func(c *Conflict) *string { return &c.Why }, textCodec)),
))

// citeCodec reads the id of a source and notes where it was mentioned.
var citeCodec = codec[string]{
	read: func(r *reader, n *yaml.Node) (string, bool) {
		id, ok := textCodec.read(r, n)
		if ok {
			r.cited = append(r.cited, cited{source: id, plant: r.plant, field: r.field, at: place{n.Line, n.Column}})
		}
		return id, ok
	},
	write: textCodec.write,
}

// provenanceCodec reads where a value is from: a status alone, a list of cited
// sources (then it is published), or a mapping of status, cite and note.
var provenanceCodec = codec[Provenance]{
	read: func(r *reader, n *yaml.Node) (Provenance, bool) {
		switch n.Kind {
		case yaml.ScalarNode:
			status, ok := wordCodec(statuses[:]).read(r, n)
			return Provenance{Status: status}, ok
		case yaml.SequenceNode:
			cites, ok := listCodec(citeCodec).read(r, n)
			return Provenance{Status: working.Published, Cites: cites}, ok
		case yaml.MappingNode, yaml.DocumentNode, yaml.AliasNode:
		}
		return fullProvenance.read(r, n)
	},
	write: func(p Provenance) *yaml.Node {
		switch {
		case p.Note == "" && len(p.Cites) == 0:
			return scalar(string(p.Status))
		case p.Note == "" && p.Status == working.Published:
			return listCodec(citeCodec).write(p.Cites)
		}
		return fullProvenance.write(p)
	},
}

var fullProvenance = structCodec(
	must(partOf("status", func(p *Provenance) *working.Status { return &p.Status }, wordCodec(statuses[:]))),
	partOf("cite", func(p *Provenance) *[]string { return &p.Cites }, listCodec(citeCodec)),
	partOf("note", func(p *Provenance) *string { return &p.Note }, textCodec),
)
