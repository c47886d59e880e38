package words

import (
	"strings"
	"unicode"

	"golang.org/x/text/unicode/norm"
)

// foldedLetters are letters that have no decomposition in Unicode and that people
// without the letter type as here.
var foldedLetters = strings.NewReplacer(
	"ß", "ss", "æ", "ae", "œ", "oe", "ø", "o", "ł", "l", "đ", "d", "ð", "d", "þ", "th", "ı", "i", "×", "x",
)

// Fold returns a text in small letters without accents, its words with one space
// between them and the signs that divide words left out, so that what is typed
// finds what is meant.
func Fold(text string) string {
	var b strings.Builder
	b.Grow(len(text))
	for _, r := range strings.ToLower(norm.NFKD.String(text)) {
		switch {
		case unicode.Is(unicode.Mn, r), r == '\'', r == '’':
		case unicode.IsLetter(r), unicode.IsDigit(r), unicode.IsSymbol(r), r == '%':
			b.WriteRune(r)
		default:
			b.WriteByte(' ')
		}
	}
	return strings.Join(strings.Fields(foldedLetters.Replace(b.String())), " ")
}
