package planfile

import (
	"strings"

	"gopkg.in/yaml.v3"
)

// segments shares the lines of a block among its entries. tail is the first line
// after the last entry that belongs to none.
func (s *splicer) segments(starts, last []int, indent, from, to int, where position) (segments []segment, tail int) {
	segments = make([]segment, len(starts))
	next := to
	for i := len(starts) - 1; i >= 0; i-- {
		end := next
		for end > last[i]+1 && end > starts[i]+1 && blankOrComment(s.lines[end-1].text(s.data)) {
			end--
		}
		// Comments indented deeper than this block's keys still belong to the entry.
		for at := next - 1; at >= end; at-- {
			if text := s.lines[at].text(s.data); strings.TrimSpace(text) != "" && indentOf(text) > indent {
				end = at + 1
				break
			}
		}
		segments[i].start, segments[i].end = starts[i], end
		if i+1 < len(starts) {
			segments[i+1].lead = end
		} else {
			tail = end
		}
		next = starts[i]
	}
	segments[0].lead = segments[0].start
	if where == underKey {
		segments[0].lead = s.attached(from, starts[0])
	}
	return segments, tail
}

// lastLine returns the last line that surely belongs to a value: comments and
// empty lines after it do not.
func (s *splicer) lastLine(n *yaml.Node, indent int) int {
	at := n.Line - 1
	if len(n.Content) > 0 {
		inside := indent
		if n.Style&yaml.FlowStyle == 0 {
			inside = n.Column - 1
		}
		return max(at, s.lastLine(n.Content[len(n.Content)-1], inside))
	}
	switch {
	case at < 0 || at >= len(s.lines):
		return at
	case n.Style&(yaml.LiteralStyle|yaml.FoldedStyle) != 0:
		return s.lastBlockLine(n, at, indent)
	case n.Style&(yaml.DoubleQuotedStyle|yaml.SingleQuotedStyle) != 0:
		return s.lastQuotedLine(n, at)
	}
	return at
}

// lastBlockLine finds the end of a literal or folded text by its indentation.
func (s *splicer) lastBlockLine(n *yaml.Node, at, indent int) int {
	header := s.lines[at].text(s.data)
	keep := false
	if column := byteColumn(header, n.Column); column >= 0 {
		mark, _, _ := strings.Cut(header[column:], " ")
		keep = strings.Contains(mark, "+")
	}
	end := at
	for next := at + 1; next < len(s.lines); next++ {
		text := s.lines[next].text(s.data)
		blank := strings.Trim(text, " ") == ""
		if !blank && indentOf(text) <= indent {
			break
		}
		if !blank || keep {
			end = next
		}
	}
	return end
}

// lastQuotedLine finds the line with the closing quote.
func (s *splicer) lastQuotedLine(n *yaml.Node, at int) int {
	begin := byteColumn(s.lines[at].text(s.data), n.Column)
	if begin < 0 {
		return at
	}
	from := s.lines[at].start + begin
	end := quoteEnd(string(s.data[from:]))
	if end < 0 {
		return at
	}
	for at+1 < len(s.lines) && s.lines[at+1].start < from+end {
		at++
	}
	return at
}

// quoteEnd returns the index after the closing quote of a quoted text, or -1.
func quoteEnd(text string) int {
	if text == "" || text[0] != '"' && text[0] != '\'' {
		return -1
	}
	quote := text[0]
	for i := 1; i < len(text); i++ {
		switch {
		case quote == '"' && text[i] == '\\':
			i++
		case text[i] == quote && quote == '\'' && i+1 < len(text) && text[i+1] == quote:
			i++
		case text[i] == quote:
			return i + 1
		}
	}
	return -1
}

// tokenEnd returns the index after a value that begins and ends on a line, or -1.
func tokenEnd(text string, begin int, n *yaml.Node) int {
	rest := text[begin:]
	switch {
	case n.Style&yaml.FlowStyle != 0:
		if end := bracketEnd(rest); end >= 0 {
			return begin + end
		}
		return -1
	case n.Style&(yaml.DoubleQuotedStyle|yaml.SingleQuotedStyle) != 0:
		if end := quoteEnd(rest); end >= 0 {
			return begin + end
		}
		return -1
	case n.Style&(yaml.LiteralStyle|yaml.FoldedStyle) != 0:
		return -1
	}
	for i := 1; i < len(rest); i++ {
		if rest[i] == '#' && (rest[i-1] == ' ' || rest[i-1] == '\t') {
			rest = rest[:i]
			break
		}
	}
	return begin + len(strings.TrimRight(rest, " \t"))
}

// bracketEnd returns the index after the bracket that closes the first one.
func bracketEnd(text string) int {
	depth := 0
	for i := 0; i < len(text); i++ {
		switch c := text[i]; c {
		case '[', '{':
			depth++
		case ']', '}':
			depth--
			if depth == 0 {
				return i + 1
			}
		case '"', '\'':
			if !opensQuote(text[:i]) {
				continue
			}
			end := quoteEnd(text[i:])
			if end < 0 {
				return -1
			}
			i += end - 1
		}
	}
	return -1
}

// opensQuote reports whether a quote after this text begins a quoted scalar and
// is not part of a plain one, such as the apostrophe of a name.
func opensQuote(before string) bool {
	before = strings.TrimRight(before, " \t")
	return before == "" || strings.IndexByte("[{,:", before[len(before)-1]) >= 0
}

// ordered is one entry of the new text: an old one, a new one, or both.
type ordered struct {
	key   string
	old   int    // index in the old mapping, or -1
	value *value // what it shall say, or nil
	keep  bool   // of an old one without value: it says nothing, so it may stay
}

// entryOrder lists the entries of a rewritten mapping. The keys of a record keep
// the order of the old text and new ones follow the key before them in the form;
// the entries of a table take the order of the plan. Entries that go are listed
// where they stood.
func entryOrder(n *yaml.Node, v *value) []ordered {
	old := make(map[string]int, len(n.Content)/2)
	for i := 0; i+1 < len(n.Content); i += 2 {
		old[n.Content[i].Value] = i / 2
	}
	if v.kind == tableKind {
		return tableOrder(n, v, old)
	}
	order := make([]ordered, 0, len(n.Content)/2+len(v.entries))
	for i := 0; i+1 < len(n.Content); i += 2 {
		key := n.Content[i].Value
		want := v.find(key)
		order = append(order, ordered{key, i / 2, want, want == nil && mayStay(key, n.Content[i+1])})
	}
	before := ""
	for _, e := range v.entries {
		if _, there := old[e.key]; !there && !e.value.mayLack {
			at := 0
			for i := range order {
				if order[i].key == before {
					at = i + 1
				}
			}
			order = append(order, ordered{})
			copy(order[at+1:], order[at:])
			order[at] = ordered{e.key, -1, e.value, false}
		}
		if _, there := old[e.key]; there || !e.value.mayLack {
			before = e.key
		}
	}
	return order
}

func tableOrder(n *yaml.Node, v *value, old map[string]int) []ordered {
	wanted := make(map[string]bool, len(v.entries))
	for _, e := range v.entries {
		wanted[e.key] = true
	}
	order := make([]ordered, 0, len(v.entries))
	at := 0
	dropTo := func(end int) {
		for ; at < end; at++ {
			if key := n.Content[2*at].Value; !wanted[key] {
				order = append(order, ordered{key: key, old: at})
			}
		}
	}
	for _, e := range v.entries {
		i, there := old[e.key]
		if !there {
			order = append(order, ordered{e.key, -1, e.value, false})
			continue
		}
		dropTo(i)
		order = append(order, ordered{e.key, i, e.value, false})
	}
	dropTo(len(n.Content) / 2)
	return order
}

// salvage writes the comments inside lines that are written anew above them.
func (s *splicer) salvage(lines segment, indent int, nodes ...*yaml.Node) {
	for _, comment := range comments(nodes, nil) {
		for _, row := range strings.Split(comment, "\n") {
			row = strings.TrimSpace(row)
			if row == "" || !s.endsALine(lines, row) {
				continue
			}
			s.write(strings.Repeat(" ", indent) + row + "\n")
		}
	}
}

func (s *splicer) endsALine(lines segment, comment string) bool {
	for at := lines.start; at < lines.end; at++ {
		if strings.HasSuffix(strings.TrimSpace(s.lines[at].text(s.data)), comment) {
			return true
		}
	}
	return false
}

func comments(nodes []*yaml.Node, found []string) []string {
	for _, n := range nodes {
		found = append(found, n.HeadComment, n.LineComment)
		found = comments(n.Content, found)
		found = append(found, n.FootComment)
	}
	return found
}
