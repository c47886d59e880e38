package plants

import (
	"bytes"
	"encoding/csv"
	"errors"
	"io"
	"slices"
	"strings"

	"gopkg.in/yaml.v3"

	"fourturn/planner/working"
)

// maxColumns bounds the width of a table: every column that exists, and room.
const maxColumns = 200

// Columns returns the names of the columns that [ImportCSV] understands, "id"
// first; there is one "sold." column more for each size of the book.
func Columns() []string {
	columns := []string{"id"}
	for _, a := range attributes {
		if parts, ok := columnParts[a.field]; ok {
			for _, p := range parts {
				columns = append(columns, string(a.field)+"."+p)
			}
		} else if a.field != FieldInvasive && a.field != FieldConflicts {
			columns = append(columns, string(a.field))
		}
	}
	return columns
}

// columnParts are the fields that take several columns, one for each part. A
// part of sold is any size.
var columnParts = map[Field][]string{
	FieldSold:     {},
	FieldToxicity: {"dogs", "cats", "people", "hazards", "note"},
	FieldFoliage:  {"colours", "texture", "evergreen"},
	FieldDrawing: {
		"habit", "leaf.form", "leaf.length", "leaf.edge", "leaf.pattern",
		"flower.form", "flower.width", "flower.petals", "flower.eye", "arrangement",
	},
}

// listColumns hold several items in a cell, divided by ; or |.
var listColumns = []string{
	"names", "botanical", "synonyms", "seasons", "light", "diseases", "colours", "pollinators", "edible",
	"toxicity.hazards", "foliage.colours",
}

// ImportCSV reads plants from a table and puts them on top of base, by the same
// rules as a book file. The first row names the columns: fields as in book
// files, with a point before a part ("toxicity.dogs", "sold.quart"). A unit in
// brackets after the name, as in "spread (cm)", holds for numbers without one.
// Cells divide lists by ; or |, empty cells say nothing, and without an id
// column the id is made from the first name. Columns are divided by comma,
// semicolon or tab, whichever the first row has most of. Values have the status
// entered. The error is a [Faults] with lines and columns of the table.
func ImportCSV(name string, data []byte, base *Book) (*Own, *Book, error) {
	c := contents{file: name, ground: map[Field]Provenance{anyField: {Status: working.Entered}}}
	r := &reader{file: name}
	if r.usable(data) {
		r.table(bytes.TrimPrefix(data, []byte("\ufeff")), &c)
	}
	c.faults, c.cited = r.faults, r.cited
	for i := range c.plants {
		c.plants[i].plant.ground.file = c.ground
	}
	return ownOf(c, base)
}

func (r *reader) usable(data []byte) bool {
	if len(data) > maxFileBytes {
		r.fault(&yaml.Node{Line: 1, Column: 1}, "file_too_large", number("limit", maxFileBytes>>20, ""))
		return false
	}
	if at := firstInvalid(data); at >= 0 {
		line, column := position(data, at)
		r.fault(&yaml.Node{Line: line, Column: column}, "not_utf8")
		return false
	}
	return true
}

// column is one column of a table: where its cells go in a plant.
type column struct {
	path []string
	unit string
	list bool
}

func (r *reader) table(data []byte, c *contents) {
	rows := csv.NewReader(bytes.NewReader(data))
	rows.Comma = delimiter(data)
	rows.FieldsPerRecord = -1
	rows.ReuseRecord = true
	var columns []column
	for {
		record, err := rows.Read()
		if errors.Is(err, io.EOF) {
			return
		}
		if err != nil {
			r.tableSyntax(err)
			return
		}
		at := func(i int) *yaml.Node {
			line, col := rows.FieldPos(i)
			return &yaml.Node{Kind: yaml.ScalarNode, Line: line, Column: col}
		}
		if columns == nil {
			if columns = r.header(record, at); columns == nil {
				return
			}
			continue
		}
		if len(record) > len(columns) {
			r.fault(at(len(columns)), "too_many_cells", number("columns", float64(len(columns)), ""))
			continue
		}
		if node := rowNode(columns, record, at); node != nil && r.bounded(node, 1) {
			if p, ok := r.onePlant(node); ok {
				c.plants = append(c.plants, p)
			}
		}
	}
}

func (r *reader) tableSyntax(err error) {
	n := &yaml.Node{Line: 1, Column: 1}
	var parse *csv.ParseError
	if errors.As(err, &parse) {
		n.Line, n.Column = parse.Line, parse.Column
	}
	r.fault(n, "csv", word("message", err.Error()))
}

// delimiter returns the divider that the first line has most of.
func delimiter(data []byte) rune {
	first, _, _ := bytes.Cut(data, []byte("\n"))
	best, most := ',', bytes.Count(first, []byte(","))
	for _, d := range []rune{';', '\t'} {
		if n := bytes.Count(first, []byte(string(d))); n > most {
			best, most = d, n
		}
	}
	return best
}

// header reads the names of the columns; nil means that the table cannot be read.
func (r *reader) header(record []string, at func(int) *yaml.Node) []column {
	if len(record) > maxColumns {
		r.fault(at(maxColumns), "list_too_long", number("limit", maxColumns, ""))
		return nil
	}
	columns := make([]column, len(record))
	seen := map[string]bool{}
	good := true
	for i, title := range record {
		name, unit, _ := strings.Cut(strings.TrimSpace(title), "(")
		name = strings.ReplaceAll(strings.ToLower(strings.TrimSpace(name)), " ", "_")
		columns[i] = column{
			path: strings.Split(name, "."), unit: strings.TrimSpace(strings.TrimSuffix(unit, ")")),
			list: slices.Contains(listColumns, name),
		}
		switch {
		case !knownColumn(name):
			r.fault(at(i), "unknown_column", word("column", title))
			good = false
		case seen[name]:
			r.fault(at(i), "key_twice", word("key", title))
			good = false
		}
		seen[name] = true
	}
	if !good {
		return nil
	}
	return columns
}

func knownColumn(name string) bool {
	return slices.Contains(Columns(), name) || strings.HasPrefix(name, string(FieldSold)+".") && strings.Count(name, ".") == 1
}

// rowNode builds the mapping that a book file would have for a row, each node at
// its cell. It is nil for an empty row.
func rowNode(columns []column, record []string, at func(int) *yaml.Node) *yaml.Node {
	start := at(0)
	root := &yaml.Node{Kind: yaml.MappingNode, Line: start.Line, Column: start.Column}
	var name *yaml.Node
	hasID := false
	for i, cell := range record {
		cell = strings.TrimSpace(cell)
		if cell == "" {
			continue
		}
		node := cellNode(columns[i], cell, at(i))
		putPath(root, columns[i].path, node)
		switch columns[i].path[0] {
		case "id":
			hasID = true
		case string(FieldNames):
			name = node
		}
	}
	if len(root.Content) == 0 {
		return nil
	}
	if !hasID && name != nil && len(name.Content) > 0 {
		first := name.Content[0]
		id := &yaml.Node{Kind: yaml.ScalarNode, Value: NewID(first.Value), Line: first.Line, Column: first.Column}
		putPath(root, []string{"id"}, id)
	}
	return root
}

func cellNode(c column, cell string, at *yaml.Node) *yaml.Node {
	if c.list {
		list := &yaml.Node{Kind: yaml.SequenceNode, Line: at.Line, Column: at.Column}
		for _, item := range strings.FieldsFunc(cell, func(r rune) bool { return r == ';' || r == '|' }) {
			if item = strings.TrimSpace(item); item != "" {
				list.Content = append(list.Content, &yaml.Node{Kind: yaml.ScalarNode, Value: item, Line: at.Line, Column: at.Column})
			}
		}
		return list
	}
	if c.unit != "" && strings.IndexByte("0123456789", cell[len(cell)-1]) >= 0 {
		cell += " " + c.unit
	}
	at.Value = cell
	return at
}

// putPath sets a node in a tree of mappings, making those on the way.
func putPath(root *yaml.Node, path []string, value *yaml.Node) {
	for _, key := range path[:len(path)-1] {
		var next *yaml.Node
		for i := 0; i+1 < len(root.Content); i += 2 {
			if root.Content[i].Value == key {
				next = root.Content[i+1]
			}
		}
		if next == nil {
			next = &yaml.Node{Kind: yaml.MappingNode, Line: value.Line, Column: value.Column}
			root.Content = append(root.Content, keyAt(key, value), next)
		}
		root = next
	}
	root.Content = append(root.Content, keyAt(path[len(path)-1], value), value)
}

func keyAt(key string, at *yaml.Node) *yaml.Node {
	return &yaml.Node{Kind: yaml.ScalarNode, Value: key, Line: at.Line, Column: at.Column}
}
