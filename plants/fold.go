package plants

import (
	"strings"
	"unicode"

	"golang.org/x/text/unicode/norm"
)

// foldedLetters are letters that have no decomposition in Unicode and that
// people without the letter type as here.
var foldedLetters = strings.NewReplacer(
	"ß", "ss", "æ", "ae", "œ", "oe", "ø", "o", "ł", "l", "đ", "d", "ð", "d", "þ", "th", "ı", "i", "×", "x",
)

// fold returns s in lower case without accents, for comparing what is typed
// with names.
func fold(s string) string {
	if ascii(s) {
		return strings.ToLower(s)
	}
	var b strings.Builder
	b.Grow(len(s))
	for _, r := range norm.NFKD.String(strings.ToLower(s)) {
		if !unicode.Is(unicode.Mn, r) {
			b.WriteRune(r)
		}
	}
	return foldedLetters.Replace(b.String())
}

func ascii(s string) bool {
	for i := range len(s) {
		if s[i] >= 0x80 {
			return false
		}
	}
	return true
}
