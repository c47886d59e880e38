package words

import (
	"unicode"
	"unicode/utf8"
)

// Capital writes text with a capital first letter, as a label or a title begins.
func Capital(text string) string {
	first, size := utf8.DecodeRuneInString(text)
	if size == 0 {
		return text
	}
	return string(unicode.ToTitle(first)) + text[size:]
}
