package planfile

import (
	"strconv"
	"strings"
	"unicode/utf8"
)

const indentStep = 2 // spaces

// emit writes a whole plan with an empty line before each of its sections.
func emit(v *value) []byte {
	var b strings.Builder
	for i, e := range v.entries {
		if i > 0 && standsApart(e.value) {
			b.WriteByte('\n')
		}
		emitEntry(&b, e.key, e.value, 0)
	}
	return []byte(b.String())
}

// standsApart reports whether a section of the plan gets an empty line before it.
func standsApart(v *value) bool { return v.kind != scalarKind && !v.flow }

// emitEntry writes one key and its value as whole lines.
func emitEntry(b *strings.Builder, key string, v *value, indent int) {
	b.WriteString(strings.Repeat(" ", indent))
	b.WriteString(quoted(key, false))
	b.WriteByte(':')
	emitAfterKey(b, v, indent)
}

// emitAfterKey writes what follows the colon of a key, to the end of the line or
// lines.
func emitAfterKey(b *strings.Builder, v *value, indent int) {
	switch {
	case v.kind == scalarKind && v.measure == nil && fitsBlock(v.text):
		emitBlockText(b, v.text, indent+indentStep)
	case v.kind == scalarKind || v.flow || len(v.entries) == 0:
		b.WriteByte(' ')
		emitFlow(b, v, false)
		b.WriteByte('\n')
	case v.kind == listKind:
		b.WriteByte('\n')
		for _, e := range v.entries {
			emitItem(b, e.value, indent+indentStep)
		}
	default:
		b.WriteByte('\n')
		for _, e := range v.entries {
			emitEntry(b, e.key, e.value, indent+indentStep)
		}
	}
}

// emitItem writes one item of a list on its own line.
func emitItem(b *strings.Builder, v *value, indent int) {
	b.WriteString(strings.Repeat(" ", indent))
	b.WriteString("- ")
	emitFlow(b, v, false)
	b.WriteByte('\n')
}

// emitFlow writes a value on one line. inside says that it stands in brackets.
func emitFlow(b *strings.Builder, v *value, inside bool) {
	switch v.kind {
	case scalarKind:
		b.WriteString(v.quoted(inside))
	case listKind:
		b.WriteByte('[')
		for i, e := range v.entries {
			if i > 0 {
				b.WriteString(", ")
			}
			emitFlow(b, e.value, true)
		}
		b.WriteByte(']')
	default:
		b.WriteByte('{')
		for i, e := range v.entries {
			if i > 0 {
				b.WriteString(", ")
			}
			b.WriteString(quoted(e.key, true))
			b.WriteString(": ")
			emitFlow(b, e.value, true)
		}
		b.WriteByte('}')
	}
}

// fitsBlock reports whether a text of several lines may be written as a literal
// block and read back unchanged.
func fitsBlock(s string) bool {
	if !strings.Contains(s, "\n") || strings.HasSuffix(s, "\n\n") || strings.Trim(s, "\n") == "" {
		return false
	}
	if s[0] == ' ' || s[0] == '\n' || s[0] == '\t' {
		return false
	}
	for _, r := range s {
		if r != '\n' && !printable(r) {
			return false
		}
	}
	return true
}

func emitBlockText(b *strings.Builder, s string, indent int) {
	b.WriteString(" |")
	if !strings.HasSuffix(s, "\n") {
		b.WriteByte('-')
	}
	b.WriteByte('\n')
	for _, row := range strings.Split(strings.TrimSuffix(s, "\n"), "\n") {
		if row != "" {
			b.WriteString(strings.Repeat(" ", indent))
			b.WriteString(row)
		}
		b.WriteByte('\n')
	}
}

// quoted writes a scalar. Measures and the like are known to be plain.
func (v *value) quoted(inside bool) string {
	switch {
	case v.typed != "" && strings.ContainsAny(v.typed, "\"'`,:#&*!|>@[]{}\n"):
		return doubleQuoted(v.typed)
	case v.measure != nil || v.bare:
		return v.scalar()
	}
	return quoted(v.text, inside)
}

// quoted writes a text plain where that reads back as the same text in every
// YAML version, and in double quotes elsewhere.
func quoted(s string, inside bool) string {
	if plainSafe(s, inside) {
		return s
	}
	return doubleQuoted(s)
}

// plainSafe is stricter than YAML: a plain text begins with a letter, ends with
// no space, holds no character that YAML gives a meaning to in any place, and is
// no word that YAML 1.1 or 1.2 reads as something else than text.
func plainSafe(s string, inside bool) bool {
	if s == "" || s[len(s)-1] == ' ' {
		return false
	}
	for i, r := range s {
		switch {
		case r >= 'a' && r <= 'z' || r >= 'A' && r <= 'Z' || r == '_':
		case i == 0 && (r < 0x80 || !printable(r)):
			return false
		case r >= '0' && r <= '9' || r == ' ' || r == '-' || r == '.' || r == '(' || r == ')' || r == '/' || r == '\'' || r == ';' || r == '+':
		case r == ',' && !inside:
		case r >= 0x80 && printable(r):
		default:
			return false
		}
	}
	return !reservedWord(s)
}

// reservedWord lists the plain words that some YAML version reads as a boolean,
// a null or a number (YAML 1.1 type repository; YAML 1.2 section 10.3).
func reservedWord(s string) bool {
	switch strings.ToLower(s) {
	case "y", "n", "yes", "no", "true", "false", "on", "off", "null", "nan", "inf":
		return true
	}
	return false
}

// printable is the printable set of YAML 1.2, section 5.1, less the line breaks
// and the byte order mark.
func printable(r rune) bool {
	switch {
	case r == 0x85, r == 0x2028, r == 0x2029, r == 0xFEFF, r == 0x7F, r == utf8.RuneError:
		return false
	case r >= 0x20 && r < 0x7F:
		return true
	case r == '\t':
		return false // readable, but not to be told from spaces
	}
	return r >= 0xA0 && r <= 0xD7FF || r >= 0xE000 && r <= 0xFFFD || r >= 0x10000 && r <= 0x10FFFF
}

func doubleQuoted(s string) string {
	var b strings.Builder
	b.WriteByte('"')
	for _, r := range s {
		switch {
		case r == '"' || r == '\\':
			b.WriteByte('\\')
			b.WriteRune(r)
		case r == '\n':
			b.WriteString(`\n`)
		case r == '\t':
			b.WriteString(`\t`)
		case printable(r):
			b.WriteRune(r)
		case r <= 0xFF:
			b.WriteString(`\x` + hexDigits(r, 2))
		case r <= 0xFFFF:
			b.WriteString(`\u` + hexDigits(r, 4))
		default:
			b.WriteString(`\U` + hexDigits(r, 8))
		}
	}
	b.WriteByte('"')
	return b.String()
}

func hexDigits(r rune, width int) string {
	digits := strconv.FormatInt(int64(r), 16)
	return strings.Repeat("0", max(0, width-len(digits))) + digits
}
