package pots

import (
	"strings"
	"unicode"

	"golang.org/x/text/unicode/norm"
)

// unaccented are letters that have no accent to take off and that people without
// the letter type as here.
var unaccented = strings.NewReplacer("ß", "ss", "æ", "ae", "œ", "oe", "ø", "o", "ł", "l", "đ", "d", "ð", "d", "þ", "th", "ı", "i")

// fold writes text in small letters without accents and with single spaces, so that
// what is typed finds what is meant.
func fold(s string) string {
	var b strings.Builder
	for _, r := range norm.NFKD.String(strings.ToLower(s)) {
		if !unicode.Is(unicode.Mn, r) {
			b.WriteRune(r)
		}
	}
	return strings.Join(strings.Fields(unaccented.Replace(b.String())), " ")
}
