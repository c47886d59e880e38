package planfile

import (
	"bytes"
	"strconv"

	"gopkg.in/yaml.v3"
)

// Version is the version of the format that this package writes.
const Version = 1

const (
	versionKey         = "fourturn"
	currentVersionText = "1"
	highestVersion     = 9999 // more is a slip of the keyboard
)

// migrations bring the nodes of one version to the next: migrations[0] from 0 to
// 1. Each changes the nodes it is given and keeps their lines and columns, so
// that problems name places in the file as it is.
var migrations = [Version]func(root *yaml.Node){fromSketch}

// versionOf reads the version of a file. A file without one is no plan.
func versionOf(root *yaml.Node) (int, error) {
	n := child(root, versionKey)
	if n == nil {
		return 0, fileProblem("planfile.no_version", root.Line, root.Column)
	}
	version, err := strconv.Atoi(n.Value)
	if err != nil || strconv.Itoa(version) != n.Value || n.Kind != yaml.ScalarNode || version < 0 || version > highestVersion {
		p := problem("planfile.bad_version", (*place)(nil).in(versionKey), "text", n.Value)
		p.Line, p.Column = n.Line, n.Column
		return 0, &Problems{List: []Problem{p}}
	}
	return version, nil
}

// migrate returns the nodes of an older version in today's form; the nodes that
// were read are left alone.
func migrate(root *yaml.Node, version int) (*yaml.Node, error) {
	form := copyNode(root)
	for ; version < Version; version++ {
		migrations[version](form)
	}
	setChild(form, versionKey, currentVersionText)
	return form, nil
}

// rewritten turns migrated nodes into a text with their comments, and reads it.
func rewritten(form *yaml.Node) ([]byte, *yaml.Node, error) {
	var text bytes.Buffer
	encoder := yaml.NewEncoder(&text)
	encoder.SetIndent(indentStep)
	if err := encoder.Encode(form); err != nil {
		return nil, nil, err
	}
	if err := encoder.Close(); err != nil {
		return nil, nil, err
	}
	root, err := parse(text.Bytes())
	return text.Bytes(), root, err
}

func copyNode(n *yaml.Node) *yaml.Node {
	twin := *n
	twin.Content = make([]*yaml.Node, len(n.Content))
	for i, c := range n.Content {
		twin.Content[i] = copyNode(c)
	}
	return &twin
}

// setChild changes the text of a key that is there.
func setChild(n *yaml.Node, key, text string) {
	if c := child(n, key); c != nil {
		c.Value, c.Tag = text, ""
	}
}
