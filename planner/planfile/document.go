package planfile

import (
	"bytes"
	"errors"
	"sort"
	"strings"

	"gopkg.in/yaml.v3"

	"fourturn/planner"
	"fourturn/planner/finding"
)

// Document is a plan together with the text it was read from or written as. It
// does not change: [Document.With] returns another. It may be used from several
// goroutines.
type Document struct {
	text     []byte
	root     *yaml.Node // as read, with the lines and columns of the text
	plan     *planner.Plan
	version  int
	migrated *yaml.Node // of an older version: the nodes in today's form
	warnings []Problem
}

// ErrNewer is the error of writing a document whose file was made by a newer
// version of the format. It is shown and left alone.
var ErrNewer = errors.New("planfile: the file was made by a newer version and is not written to")

// Decode reads a plan file. The error is [Problems] with everything that is
// wrong. A file of an older version is brought up to date in memory. A file of a
// newer version is read as far as it is understood and cannot be written; see
// [Document.ReadOnly].
func Decode(data []byte) (*Document, error) {
	root, err := parse(data)
	if err != nil {
		return nil, err
	}
	d := &Document{text: bytes.Clone(data), root: root}
	if d.version, err = versionOf(root); err != nil {
		return nil, err
	}
	form := root
	if d.version < Version {
		if form, err = migrate(root, d.version); err != nil {
			return nil, err
		}
		d.migrated = form
	}
	if err := d.read(form); err != nil {
		return nil, err
	}
	return d, nil
}

// read fills the plan from nodes in today's form.
func (d *Document) read(root *yaml.Node) error {
	r := &reader{problems: &Problems{}, warnings: &Problems{}, lenient: d.ReadOnly(), failed: map[string]struct{}{}}
	plan := &planner.Plan{}
	planForm.read(r, nil, root, plan)
	found, mild := &Problems{}, &Problems{}
	checkInto(found, mild, r.broken, plan)
	for _, p := range found.List {
		p.Line, p.Column, _ = positionIn(root, p.Where)
		r.problems.add(p)
	}
	r.problems.More += found.More
	if err := r.problems.orNil(); err != nil {
		return err
	}
	for _, p := range append(r.warnings.List, mild.List...) {
		if p.Line == 0 {
			p.Line, p.Column, _ = positionIn(root, p.Where)
		}
		p.Severity = finding.Warning
		d.warnings = append(d.warnings, p)
	}
	sort.SliceStable(d.warnings, func(i, j int) bool { return d.warnings[i].Line < d.warnings[j].Line })
	d.plan = plan
	return nil
}

// broken reports whether a path or one above it could not be read, so that no
// second problem follows from the first.
func (r *reader) broken(where finding.Where) bool {
	if len(r.failed) == 0 {
		return false
	}
	for i := 1; i <= len(where); i++ {
		if _, ok := r.failed[pathKey(where[:i])]; ok {
			return true
		}
	}
	return false
}

// Encode writes a plan that has no file yet. Reading the result gives the plan
// back. The error is [Problems] if the plan fails [Check].
func Encode(plan *planner.Plan) ([]byte, error) {
	d, err := New(plan)
	if err != nil {
		return nil, err
	}
	return d.text, nil
}

// New returns the document of a plan that has no file yet. The error is that of
// [Encode].
func New(plan *planner.Plan) (*Document, error) {
	if err := Check(plan); err != nil {
		return nil, err
	}
	text := emit(valueOf(plan))
	root, err := readBack(text, plan)
	if err != nil {
		return nil, err
	}
	return &Document{text: text, root: root, plan: plan, version: Version}, nil
}

func valueOf(plan *planner.Plan) *value {
	return planForm.write(&writer{system: plan.Units}, plan)
}

// Plan returns the plan. It is shared: do not change what it points to.
func (d *Document) Plan() *planner.Plan { return d.plan }

// Text returns a copy of the text that the document was read from.
func (d *Document) Text() []byte { return bytes.Clone(d.text) }

// FileVersion returns the version that the text was written in.
func (d *Document) FileVersion() int { return d.version }

// ReadOnly reports whether the text is of a newer version than this package
// writes.
func (d *Document) ReadOnly() bool { return d.version > Version }

// Warnings returns what was passed over: keys that a newer version knows, and
// log entries about pots that are no longer in the plan.
func (d *Document) Warnings() []Problem { return append([]Problem(nil), d.warnings...) }

// Encode returns the document's text changed to say what plan says. Lines whose
// meaning did not change stay as they are, to the byte. The error is [Problems]
// if the plan fails [Check], or [ErrNewer].
func (d *Document) Encode(plan *planner.Plan) ([]byte, error) {
	text, _, err := d.rewrite(plan)
	return text, err
}

// With returns the document of another plan, written into this one's text. The
// errors are those of [Document.Encode].
func (d *Document) With(plan *planner.Plan) (*Document, error) {
	text, root, err := d.rewrite(plan)
	if err != nil {
		return nil, err
	}
	return &Document{text: text, root: root, plan: plan, version: Version}, nil
}

// rewrite returns the changed text and its nodes, which were read back from it
// and say what the plan says.
func (d *Document) rewrite(plan *planner.Plan) ([]byte, *yaml.Node, error) {
	if d.ReadOnly() {
		return nil, nil, ErrNewer
	}
	if err := Check(plan); err != nil {
		return nil, nil, err
	}
	text, root := d.text, d.root
	if d.migrated != nil {
		var err error
		if text, root, err = rewritten(d.migrated); err != nil {
			return nil, nil, err
		}
	}
	if says(root, valueOf(plan)) && isReadAs(root, plan) == nil {
		return bytes.Clone(text), root, nil
	}
	if spliced, ok := newSplicer(text).plan(root, valueOf(plan)); ok {
		if back, err := readBack(spliced, plan); err == nil {
			return spliced, back, nil
		}
	}
	text = anew(text, root, valueOf(plan))
	back, err := readBack(text, plan)
	return text, back, err
}

// readBack makes sure that a text is read as the plan before anybody relies on it.
func readBack(text []byte, plan *planner.Plan) (*yaml.Node, error) {
	root, err := parse(text)
	if err != nil {
		return nil, err
	}
	return root, isReadAs(root, plan)
}

// isReadAs returns an error where nodes are read as another plan. It goes by what
// stands in the nodes and not by a plan in memory, which somebody may have changed.
func isReadAs(root *yaml.Node, plan *planner.Plan) error {
	back, err := readPlan(root)
	if err == nil && !same(valueOf(back), valueOf(plan)) {
		err = errNotWritten
	}
	return err
}

// readPlan reads a plan from nodes in today's form, without [Check].
func readPlan(root *yaml.Node) (*planner.Plan, error) {
	r := &reader{problems: &Problems{}, warnings: &Problems{}, failed: map[string]struct{}{}}
	plan := &planner.Plan{}
	planForm.read(r, nil, root, plan)
	return plan, r.problems.orNil()
}

var errNotWritten = errors.New("planfile: the plan cannot be written as a file that reads back the same; please report this plan")

// anew writes a plan without regard to the old lines, under the comments that
// they held. It is the last resort for files in a shape that cannot be changed
// in place, such as one bracket around everything.
func anew(text []byte, root *yaml.Node, v *value) []byte {
	s := newSplicer(text)
	seen := map[string]bool{}
	keep := func(row string) {
		if row = strings.TrimSpace(row); strings.HasPrefix(row, "#") && !seen[row] {
			seen[row] = true
			s.write(row + "\n")
		}
	}
	for at := 0; at < min(root.Line-1, len(s.lines)); at++ {
		keep(s.lines[at].text(text))
	}
	for _, comment := range comments([]*yaml.Node{root}, nil) {
		for _, row := range strings.Split(comment, "\n") {
			keep(row)
		}
	}
	v.adopt(root)
	s.write(string(emit(v)))
	return s.out
}

// Position returns the line and column, from 1, of the part of the file that a
// finding names. Where the file leaves out that part, it is the nearest part
// around it that is there; ok is false where nothing of the path is there.
func (d *Document) Position(where finding.Where) (line, column int, ok bool) {
	if d.migrated != nil {
		return positionIn(d.migrated, where)
	}
	return positionIn(d.root, where)
}

func positionIn(root *yaml.Node, where finding.Where) (line, column int, ok bool) {
	line, column = root.Line, root.Column
	at := root
	for _, step := range where {
		key, below := oneStep(at, step)
		if key == nil {
			break
		}
		line, column, ok = key.Line, key.Column, true
		at = below
	}
	return line, column, ok
}

// oneStep goes one step down from a node: to a key of a mapping, or to the item of
// a list that bears a name or a number.
func oneStep(n *yaml.Node, name string) (place, below *yaml.Node) {
	switch n.Kind {
	case yaml.MappingNode:
		for i := 0; i+1 < len(n.Content); i += 2 {
			if n.Content[i].Value == name {
				return n.Content[i], n.Content[i+1]
			}
		}
	case yaml.SequenceNode:
		for i, item := range n.Content {
			if itemName(nodeItemKey(item), i) == name {
				return item, item
			}
		}
	}
	return nil, nil
}
