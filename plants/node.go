package plants

import (
	"bytes"
	"errors"
	"io"
	"regexp"
	"strconv"
	"unicode/utf8"

	"gopkg.in/yaml.v3"

	"fourturn/planner/finding"
)

// Limits on a book file. Ten thousand plants with every value written out are
// about 15 MB and a million nodes; a file beyond these is not a book.
const (
	maxFileBytes = 24 << 20
	maxNodes     = 3_000_000
	maxDepth     = 12
	maxText      = 4000 // bytes of one scalar
	maxItems     = 100  // of a list or mapping within a plant
)

// reader walks the nodes of one file and gathers faults.
type reader struct {
	file   string
	plant  string // being read
	field  Field  // being read
	nodes  int
	cited  []cited
	faults Faults
}

// cited is one mention of a source, to be looked up once every file is read.
type cited struct {
	source string
	plant  string
	field  Field
	at     place
}

func (r *reader) fault(n *yaml.Node, code string, args ...finding.Arg) {
	if len(r.faults) >= maxFaults {
		return
	}
	f := Fault{File: r.file, Plant: r.plant, Field: r.field, Code: "plants.fault." + code, Args: args}
	if n != nil {
		f.Line, f.Column = n.Line, n.Column
	}
	r.faults = append(r.faults, f)
}

// parse reads one YAML document within the limits. It returns nil where the
// file is empty or not usable; then the fault is noted.
func (r *reader) parse(data []byte) *yaml.Node {
	if len(data) > maxFileBytes {
		r.fault(&yaml.Node{Line: 1, Column: 1}, "file_too_large", number("limit", maxFileBytes>>20, ""))
		return nil
	}
	if at := firstInvalid(data); at >= 0 {
		line, column := position(data, at)
		r.fault(&yaml.Node{Line: line, Column: column}, "not_utf8")
		return nil
	}
	decoder := yaml.NewDecoder(bytes.NewReader(data))
	var document yaml.Node
	if err := decoder.Decode(&document); err != nil {
		if !errors.Is(err, io.EOF) {
			r.syntax(data, err)
		}
		return nil
	}
	var second yaml.Node
	if err := decoder.Decode(&second); err == nil {
		r.fault(&second, "second_document")
		return nil
	} else if !errors.Is(err, io.EOF) {
		r.syntax(data, err)
		return nil
	}
	if len(document.Content) != 1 || !r.bounded(document.Content[0], 1) {
		return nil
	}
	return document.Content[0]
}

// yamlLine finds the line in a message of the YAML library.
var yamlLine = regexp.MustCompile(`line (\d+)`)

// syntax notes a fault of the YAML itself. The library names the line only; the
// column is that of the first character on it.
func (r *reader) syntax(data []byte, err error) {
	line := 1
	if m := yamlLine.FindStringSubmatch(err.Error()); m != nil {
		line, _ = strconv.Atoi(m[1])
	}
	r.fault(&yaml.Node{Line: line, Column: firstColumn(data, line)}, "yaml", word("message", err.Error()))
}

// bounded checks the depth, the number of nodes, the length of texts and the
// absence of aliases in a tree, so that what follows may walk it freely.
func (r *reader) bounded(n *yaml.Node, depth int) bool {
	r.nodes++
	switch {
	case n.Kind == yaml.AliasNode || n.Anchor != "":
		r.fault(n, "alias")
		return false
	case depth > maxDepth:
		r.fault(n, "too_deep", number("limit", maxDepth, ""))
		return false
	case r.nodes > maxNodes:
		r.fault(n, "too_many_nodes", number("limit", maxNodes, ""))
		return false
	case len(n.Value) > maxText:
		r.fault(n, "text_too_long", number("limit", maxText, ""))
		return false
	}
	for _, child := range n.Content {
		if !r.bounded(child, depth+1) {
			return false
		}
	}
	return true
}

// entry is one key of a mapping with its value.
type entry struct {
	key   string
	name  *yaml.Node
	value *yaml.Node
}

// mapping returns the entries of a mapping; keys must be plain words that come
// once.
func (r *reader) mapping(n *yaml.Node) ([]entry, bool) {
	if n.Kind != yaml.MappingNode {
		r.fault(n, "not_a_mapping")
		return nil, false
	}
	seen := make(map[string]bool, len(n.Content)/2)
	entries := make([]entry, 0, len(n.Content)/2)
	for i := 0; i+1 < len(n.Content); i += 2 {
		name, value := n.Content[i], n.Content[i+1]
		if name.Kind != yaml.ScalarNode {
			r.fault(name, "key_not_a_word")
			continue
		}
		if seen[name.Value] {
			r.fault(name, "key_twice", word("key", name.Value))
			continue
		}
		seen[name.Value] = true
		entries = append(entries, entry{name.Value, name, value})
	}
	return entries, true
}

// list returns the items of a list. A single item may stand without brackets.
func (r *reader) list(n *yaml.Node) ([]*yaml.Node, bool) {
	switch n.Kind {
	case yaml.SequenceNode:
		if len(n.Content) > maxItems {
			r.fault(n, "list_too_long", number("limit", maxItems, ""))
			return nil, false
		}
		return n.Content, true
	case yaml.ScalarNode:
		return []*yaml.Node{n}, true
	case yaml.DocumentNode, yaml.MappingNode, yaml.AliasNode:
	}
	r.fault(n, "not_a_list")
	return nil, false
}

// text returns a text that is not empty.
func (r *reader) text(n *yaml.Node) (string, bool) {
	if n.Kind != yaml.ScalarNode {
		r.fault(n, "not_a_text")
		return "", false
	}
	if n.Tag == "!!null" || n.Value == "" {
		r.fault(n, "empty")
		return "", false
	}
	return n.Value, true
}

// unknownKey notes a key that has no meaning at its place.
func (r *reader) unknownKey(e entry) {
	r.fault(e.name, "unknown_key", word("key", e.key))
}

func firstInvalid(data []byte) int {
	for at := 0; at < len(data); {
		if data[at] < utf8.RuneSelf {
			at++
			continue
		}
		r, size := utf8.DecodeRune(data[at:])
		if r == utf8.RuneError && size == 1 {
			return at
		}
		at += size
	}
	return -1
}

func position(data []byte, at int) (line, column int) {
	before := data[:at]
	return bytes.Count(before, []byte("\n")) + 1, utf8.RuneCount(before[bytes.LastIndexByte(before, '\n')+1:]) + 1
}

func firstColumn(data []byte, line int) int {
	for ; line > 1; line-- {
		end := bytes.IndexByte(data, '\n')
		if end < 0 {
			return 1
		}
		data = data[end+1:]
	}
	if end := bytes.IndexByte(data, '\n'); end >= 0 {
		data = data[:end]
	}
	return len(data) - len(bytes.TrimLeft(data, " \t")) + 1
}
