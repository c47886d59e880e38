package planfile

import (
	"strings"

	"gopkg.in/yaml.v3"
)

// fromSketch brings a version 0 file to version 1. Version 0 is the sketch of
// the format from before the first release: sites, spots, products, recipes and
// pots were lists whose items carried their id, numbers had no unit but a suffix
// to the key ("diameter_cm: 40"), and shares were numbers from 0 to 1.
func fromSketch(root *yaml.Node) {
	for _, section := range [...]string{"sites", "spots", "products", "recipes", "pots"} {
		listToTable(child(root, section), "id")
	}
	if pots := child(root, "pots"); pots != nil && pots.Kind == yaml.MappingNode {
		for i := 1; i < len(pots.Content); i += 2 {
			listToTable(child(pots.Content[i], "plantings"), "season")
		}
	}
	suffixToUnit(root)
}

// listToTable turns a list of mappings with an id into a mapping from id to the
// rest. Items without an id are left as they are, for the reader to refuse.
func listToTable(n *yaml.Node, idKey string) {
	if n == nil || n.Kind != yaml.SequenceNode {
		return
	}
	for _, item := range n.Content {
		if id := child(item, idKey); id == nil || id.Kind != yaml.ScalarNode {
			return
		}
	}
	items := n.Content
	n.Kind, n.Tag, n.Content = yaml.MappingNode, "!!map", make([]*yaml.Node, 0, 2*len(items))
	n.Style &^= yaml.FlowStyle
	for _, item := range items {
		key := *child(item, idKey)
		key.HeadComment, key.LineComment, key.FootComment = item.HeadComment, "", item.FootComment
		item.HeadComment, item.FootComment = "", ""
		removeChild(item, idKey, &key)
		n.Content = append(n.Content, &key, item)
	}
}

// removeChild takes a key out of a mapping and hands its comments to heir.
func removeChild(n *yaml.Node, name string, heir *yaml.Node) {
	for i := 0; i+1 < len(n.Content); i += 2 {
		key, v := n.Content[i], n.Content[i+1]
		if key.Value != name {
			continue
		}
		heir.HeadComment = joinComments(heir.HeadComment, key.HeadComment, key.LineComment, v.LineComment)
		heir.FootComment = joinComments(heir.FootComment, key.FootComment)
		n.Content = append(n.Content[:i:i], n.Content[i+2:]...)
		return
	}
}

func joinComments(parts ...string) string {
	kept := parts[:0]
	for _, p := range parts {
		if p != "" {
			kept = append(kept, p)
		}
	}
	return strings.Join(kept, "\n")
}

// sketchSuffixes are the key endings of version 0 and the units they stood for.
var sketchSuffixes = [...]struct{ suffix, unit string }{
	{"_cm", " cm"},
	{"_litres", " L"},
	{"_kg", " kg"},
	{"_share", ""},
	{"_days", " days"},
	{"_months", " months"},
	{"_kelvin", " K"},
	{"_g_per_litre", " g/L"},
	{"_ppm", " ppm"},
}

func suffixToUnit(n *yaml.Node) {
	for i, c := range n.Content {
		suffixToUnit(c)
		if n.Kind != yaml.MappingNode || i%2 == 0 || c.Kind != yaml.ScalarNode {
			continue
		}
		key := n.Content[i-1]
		for _, s := range sketchSuffixes {
			if name, ok := strings.CutSuffix(key.Value, s.suffix); ok && name != "" {
				key.Value = name
				c.Value += s.unit
				c.Tag, c.Style = "", 0
				break
			}
		}
	}
}
