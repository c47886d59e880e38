package planfile

import (
	"strings"
	"unicode/utf8"
)

// line is one line of a text: its bytes without and with the line break.
type line struct{ start, end, next int }

func (l line) text(data []byte) string { return string(data[l.start:l.end]) }

// splitLines cuts a text at the line breaks that YAML 1.1 knows, which the
// library counts by: LF, CR LF, CR, NEL, LS and PS.
func splitLines(data []byte) []line {
	var lines []line
	start := 0
	if strings.HasPrefix(string(data[:min(3, len(data))]), "\uFEFF") {
		start = 3
	}
	for i := start; i < len(data); {
		size := breakSize(data, i)
		if size == 0 {
			i++
			continue
		}
		lines = append(lines, line{start, i, i + size})
		i += size
		start = i
	}
	if start < len(data) {
		lines = append(lines, line{start, len(data), len(data)})
	}
	return lines
}

func breakSize(data []byte, i int) int {
	switch data[i] {
	case '\n':
		return 1
	case '\r':
		if i+1 < len(data) && data[i+1] == '\n' {
			return 2
		}
		return 1
	case 0xC2:
		if i+1 < len(data) && data[i+1] == 0x85 {
			return 2
		}
	case 0xE2:
		if i+2 < len(data) && data[i+1] == 0x80 && (data[i+2] == 0xA8 || data[i+2] == 0xA9) {
			return 3
		}
	}
	return 0
}

// blankOrComment reports whether a line says nothing to YAML.
func blankOrComment(text string) bool {
	text = strings.TrimLeft(text, " \t")
	return text == "" || text[0] == '#'
}

// indentOf counts the spaces at the head of a line.
func indentOf(text string) int { return len(text) - len(strings.TrimLeft(text, " ")) }

// byteColumn turns a column that counts characters from 1 into a byte offset in
// the line, or -1 past its end.
func byteColumn(text string, column int) int {
	at := 0
	for ; column > 1; column-- {
		if at >= len(text) {
			return -1
		}
		_, size := utf8.DecodeRuneInString(text[at:])
		at += size
	}
	return at
}
