package plants

import "fourturn/planner/quantity"

// Size is one way in which plants are sold. RootBall is the volume that a plant
// of the size brings into the pot, mix and roots; it is 0 for cut stems.
type Size struct {
	ID       string
	Name     string
	RootBall quantity.Volume
	Ground   Provenance
}

var sizeParts = []part[Size]{
	must(partOf("id", func(s *Size) *string { return &s.ID }, idCodec)),
	must(partOf("name", func(s *Size) *string { return &s.Name }, textCodec)),
	must(partOf("root_ball", func(s *Size) *quantity.Volume { return &s.RootBall }, volumeCodec)),
	must(partOf("from", func(s *Size) *Provenance { return &s.Ground }, provenanceCodec)),
}

var citationParts = []part[Citation]{
	must(partOf("id", func(c *Citation) *string { return &c.ID }, idCodec)),
	must(partOf("cite", func(c *Citation) *string { return &c.Cite }, textCodec)),
	partOf("where", func(c *Citation) *string { return &c.Where }, textCodec),
	must(partOf("grade", func(c *Citation) *Grade { return &c.Grade }, wordCodec(Grades[:]))),
}
