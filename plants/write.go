package plants

import (
	"bytes"
	"maps"
	"slices"

	"gopkg.in/yaml.v3"
)

// Format writes the own book as a YAML file, the same way every time: reading
// what it wrote gives the same book. Comments of a file that was read are not
// kept.
func (o *Own) Format() []byte {
	root := &yaml.Node{Kind: yaml.MappingNode}
	put := func(key string, n *yaml.Node) {
		if n != nil {
			root.Content = append(root.Content, scalar(key), n)
		}
	}
	if o != nil {
		put("unless_said", writeProvenances(o.ground, entered))
		put("sources", writeAll(o.citations, citationParts))
		put("sizes", writeAll(o.sizes, sizeParts))
		put("diseases", writeAll(o.diseases, diseaseParts))
		put("plants", o.writePlants())
	}
	if len(root.Content) == 0 {
		root.Content = append(root.Content, scalar("plants"), flow(yaml.SequenceNode))
	}
	var b bytes.Buffer
	encoder := yaml.NewEncoder(&b)
	encoder.SetIndent(2)
	if err := encoder.Encode(root); err != nil {
		panic("plants: " + err.Error()) // the tree was made here
	}
	return b.Bytes()
}

func writeAll[T any](all []T, parts []part[T]) *yaml.Node {
	return sequenceCodec(block(structCodec(parts...))).write(all)
}

func (o *Own) writePlants() *yaml.Node {
	if len(o.plants) == 0 {
		return nil
	}
	list := &yaml.Node{Kind: yaml.SequenceNode}
	for i := range o.plants {
		list.Content = append(list.Content, writePlant(&o.plants[i]))
	}
	return list
}

// writePlant writes the values that a plant of an own book gives.
func writePlant(p *Plant) *yaml.Node {
	n := &yaml.Node{Kind: yaml.MappingNode}
	n.Content = append(n.Content, scalar("id"), scalar(p.ID))
	var without []Field
	for _, a := range attributes {
		if !slices.Contains(p.Own, a.field) {
			continue
		}
		value := a.write(p)
		if value == nil {
			without = append(without, a.field)
			continue
		}
		n.Content = append(n.Content, scalar(a.key), value)
	}
	if taken := listCodec(fieldCodec).write(without); taken != nil {
		n.Content = append(n.Content, scalar("without"), taken)
	}
	if from := writeProvenances(p.ground.said, nothing); from != nil {
		n.Content = append(n.Content, scalar("from"), from)
	}
	return n
}

// Tests of what need not be written.
func entered(f Field, p Provenance) bool {
	return f == anyField && p.Status == "entered" && len(p.Cites) == 0 && p.Note == ""
}

func nothing(Field, Provenance) bool { return false }

func writeProvenances(all map[Field]Provenance, skip func(Field, Provenance) bool) *yaml.Node {
	n := &yaml.Node{Kind: yaml.MappingNode}
	for _, f := range slices.Sorted(maps.Keys(all)) {
		if !skip(f, all[f]) {
			n.Content = append(n.Content, scalar(string(f)), provenanceCodec.write(all[f]))
		}
	}
	if len(n.Content) == 0 {
		return nil
	}
	return n
}
