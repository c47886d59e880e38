package planfile

import (
	"bytes"
	"strings"
)

// copy takes over whole lines as they are.
func (s *splicer) copy(from, to int) {
	if from < to {
		s.breakLine()
		s.out = append(s.out, s.data[s.lines[from].start:s.lines[to-1].next]...)
	}
}

// copyDetached keeps, of an entry that goes, the comments above it that are set
// off by an empty line: they are not about this entry.
func (s *splicer) copyDetached(lines segment) {
	end := s.attached(lines.lead, lines.start)
	for at := lines.lead; at < end; at++ {
		if strings.TrimSpace(s.lines[at].text(s.data)) != "" {
			s.copy(lines.lead, end)
			return
		}
	}
}

// attached returns the first of the comment lines that stand directly above a
// line, without an empty line between.
func (s *splicer) attached(from, start int) int {
	for start > from && strings.TrimSpace(s.lines[start-1].text(s.data)) != "" {
		start--
	}
	return start
}

func (s *splicer) blank(from, to int) bool {
	return from < to && strings.TrimSpace(s.lines[from].text(s.data)) == ""
}

// write adds new text with the line breaks of the file.
func (s *splicer) write(text string) {
	s.breakLine()
	if s.eol != "\n" {
		text = strings.ReplaceAll(text, "\n", s.eol)
	}
	s.out = append(s.out, text...)
}

func (s *splicer) emit(entry func(b *strings.Builder)) {
	var b strings.Builder
	entry(&b)
	s.write(b.String())
}

// breakLine ends a last line that had no line break.
func (s *splicer) breakLine() {
	if len(s.out) > 0 && len(s.lines) > 0 && len(s.out) > s.lines[0].start {
		if tail := s.out[len(s.out)-1]; tail != '\n' && tail != '\r' && !bytes.HasSuffix(s.out, []byte("\u0085")) &&
			!bytes.HasSuffix(s.out, []byte("\u2028")) && !bytes.HasSuffix(s.out, []byte("\u2029")) {
			s.out = append(s.out, s.eol...)
		}
	}
}
