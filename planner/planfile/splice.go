package planfile

import (
	"strings"

	"gopkg.in/yaml.v3"
)

// splicer rewrites a text so that it says something new, and copies every line
// that still says what it should. It works on block mappings and lists, whose
// entries are whole lines; what is written on one line is replaced within it.
//
// Each entry of a mapping or list owns the lines from its key to the last line
// of its value, and the comments and empty lines directly above them. Comments
// that are indented deeper than the next key belong to the entry before it.
type splicer struct {
	data  []byte
	lines []line
	eol   string
	out   []byte
}

// segment is the lines of one entry: lead to start are comments and empty lines
// above it, start to end is the entry itself.
type segment struct{ lead, start, end int }

func newSplicer(data []byte) *splicer {
	s := &splicer{data: data, lines: splitLines(data), eol: "\n"}
	if len(s.lines) > 0 {
		if first := s.lines[0]; string(data[first.end:first.next]) == "\r\n" {
			s.eol = "\r\n"
		}
		s.out = append(make([]byte, 0, len(data)+1024), data[:s.lines[0].start]...)
	}
	return s
}

// plan rewrites the whole text; ok is false where its shape is too unusual.
func (s *splicer) plan(root *yaml.Node, v *value) (text []byte, ok bool) {
	if root.Style&yaml.FlowStyle != 0 || len(root.Content) == 0 || !s.mapping(root, v, 0, len(s.lines), wholePlan) {
		return nil, false
	}
	return s.out, true
}

// position says where a mapping stands, which decides about the lines before its
// first key.
type position uint8

const (
	wholePlan position = iota // they are the head of the file and stay on top
	underKey                  // comments directly above the first key belong to it
	inItem                    // the first key stands on the line of the item's dash
)

// mapping rewrites the lines from one line to before another, which hold a block
// mapping.
func (s *splicer) mapping(n *yaml.Node, v *value, from, to int, where position) bool {
	count := len(n.Content) / 2
	starts, last := make([]int, count), make([]int, count)
	indent := n.Content[0].Column - 1
	for i := range starts {
		key := n.Content[2*i]
		starts[i] = key.Line - 1
		if !s.ownLine(key, starts, i, from, to) && (i > 0 || where != inItem) {
			return false
		}
		last[i] = s.lastLine(n.Content[2*i+1], indent)
	}
	segments, tail := s.segments(starts, last, indent, from, to, where)
	order := entryOrder(n, v)
	if where == inItem && (len(order) == 0 || order[0].old != 0) {
		return false
	}
	s.copy(from, segments[0].lead)
	apart := len(segments) > 1 && s.blank(segments[len(segments)-1].lead, segments[len(segments)-1].start)
	for _, o := range order {
		switch {
		case o.value == nil && o.keep:
			s.copy(segments[o.old].lead, segments[o.old].end)
		case o.value == nil:
			s.copyDetached(segments[o.old])
		case o.old < 0:
			if where == wholePlan && standsApart(o.value) || where == underKey && apart {
				s.write("\n")
			}
			s.emit(func(b *strings.Builder) { emitEntry(b, o.key, o.value, indent) })
		default:
			s.copy(segments[o.old].lead, segments[o.old].start)
			dash := where == inItem && o.old == 0
			if !s.entry(n.Content[2*o.old], n.Content[2*o.old+1], segments[o.old], o.value, indent, dash) {
				return false
			}
		}
	}
	s.copy(tail, to)
	return true
}

// ownLine reports whether a key is the first thing on a line of its own.
func (s *splicer) ownLine(key *yaml.Node, starts []int, i, from, to int) bool {
	at := starts[i]
	if at < from || at >= to || i > 0 && at <= starts[i-1] {
		return false
	}
	text := s.lines[at].text(s.data)
	column := byteColumn(text, key.Column)
	return column >= 0 && strings.Trim(text[:column], " ") == ""
}

// entry rewrites one key and its value, or copies them where they say the same.
// An entry on the line of an item's dash can only be changed within its line.
func (s *splicer) entry(key, n *yaml.Node, lines segment, v *value, indent int, dash bool) bool {
	if says(n, v) {
		s.copy(lines.start, lines.end)
		return true
	}
	mark := len(s.out)
	if n.Style&yaml.FlowStyle == 0 && len(n.Content) > 0 && len(v.entries) > 0 && n.Line > key.Line {
		s.copy(lines.start, lines.start+1)
		switch {
		case n.Kind == yaml.MappingNode && (v.kind == recordKind || v.kind == tableKind):
			if s.mapping(n, v, lines.start+1, lines.end, underKey) {
				return true
			}
		case n.Kind == yaml.SequenceNode && v.kind == listKind:
			if s.sequence(n, v, lines.start+1, lines.end) {
				return true
			}
		}
		s.out = s.out[:mark]
	}
	v.adopt(n)
	if s.inline(n, lines, v, indent) {
		return true
	}
	if dash {
		return false
	}
	s.out = s.out[:mark]
	s.salvage(lines, indent, key, n)
	s.emit(func(b *strings.Builder) { emitEntry(b, key.Value, v, indent) })
	return true
}

// sequence rewrites the lines of a block list.
func (s *splicer) sequence(n *yaml.Node, v *value, from, to int) bool {
	count := len(n.Content)
	starts, last := make([]int, count), make([]int, count)
	indent := n.Column - 1
	for i, item := range n.Content {
		at := s.dashLine(item.Line-1, indent, from)
		if at < from || at >= to || i > 0 && at <= starts[i-1] {
			return false
		}
		starts[i] = at
		last[i] = s.lastLine(item, indent)
	}
	segments, tail := s.segments(starts, last, indent, from, to, underKey)
	old := make(map[string]int, count)
	for i, key := range nodeItemKeys(n) {
		old[key] = i
	}
	wanted := make(map[int]bool, count)
	for _, e := range v.entries {
		if i, ok := old[e.key]; ok {
			wanted[i] = true
		}
	}
	s.copy(from, segments[0].lead)
	for i := range segments {
		if !wanted[i] {
			s.copyDetached(segments[i])
		}
	}
	for _, e := range v.entries {
		if i, ok := old[e.key]; ok {
			s.copy(segments[i].lead, segments[i].start)
			s.item(n.Content[i], segments[i], e.value, indent)
			continue
		}
		s.emit(func(b *strings.Builder) { emitItem(b, e.value, indent) })
	}
	s.copy(tail, to)
	return true
}

// dashLine finds the line with the dash of an item that begins on a line.
func (s *splicer) dashLine(at, indent, from int) int {
	for ; at >= from; at-- {
		text := s.lines[at].text(s.data)
		if len(text) > indent && text[indent] == '-' && strings.Trim(text[:indent], " ") == "" {
			return at
		}
		if !blankOrComment(text) && indentOf(text) <= indent {
			return -1
		}
	}
	return -1
}

// item rewrites one item of a list.
func (s *splicer) item(n *yaml.Node, lines segment, v *value, indent int) {
	if says(n, v) {
		s.copy(lines.start, lines.end)
		return
	}
	mark := len(s.out)
	if n.Kind == yaml.MappingNode && n.Style&yaml.FlowStyle == 0 && len(n.Content) > 0 && n.Line-1 == lines.start {
		if s.mapping(n, v, lines.start, lines.end, inItem) {
			return
		}
		s.out = s.out[:mark]
	}
	v.adopt(n)
	if s.inline(n, lines, v, indent) {
		return
	}
	s.out = s.out[:mark]
	s.salvage(lines, indent, n)
	s.emit(func(b *strings.Builder) { emitItem(b, v, indent) })
}

// inline replaces a value that stands on one line by another that does.
func (s *splicer) inline(n *yaml.Node, lines segment, v *value, indent int) bool {
	at := n.Line - 1
	onOneLine := v.kind == scalarKind && !fitsBlock(v.text) || n.Style&yaml.FlowStyle != 0 || v.flow || len(v.entries) == 0 && v.kind != scalarKind
	if at != lines.start || !onOneLine || n.Kind == yaml.ScalarNode && (n.Tag == "!!null" || v.kind != scalarKind) {
		return false
	}
	if n.Kind != yaml.ScalarNode && n.Style&yaml.FlowStyle == 0 || s.lastLine(n, indent) != at {
		return false
	}
	for next := at + 1; next < lines.end; next++ {
		if !blankOrComment(s.lines[next].text(s.data)) { // a plain text that goes on
			return false
		}
	}
	text := s.lines[at].text(s.data)
	begin := byteColumn(text, n.Column)
	if begin < 0 {
		return false
	}
	end := tokenEnd(text, begin, n)
	if end < 0 {
		return false
	}
	var b strings.Builder
	emitFlow(&b, v, false)
	s.write(text[:begin] + b.String() + text[end:])
	s.out = append(s.out, s.data[s.lines[at].end:s.lines[at].next]...)
	s.copy(at+1, lines.end)
	return true
}
