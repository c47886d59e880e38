package words

import (
	"strings"

	"golang.org/x/text/language"
)

// Words is one language with its habits of writing numbers and dates.
type Words struct {
	language string       // of the catalogue, such as "de"
	tag      language.Tag // with the region, such as de-AT
	texts    catalogue
	english  catalogue
	habits   habits
	currency string // ISO 4217 code, or empty
}

// New returns the words of a language, given as the system gives it: "de",
// "de-AT" or "de_AT.UTF-8". A language without a catalogue gives English; the
// region is kept for numbers and dates, so that "en_US" writes "Apr 14".
func New(preferred string) *Words { return newWords(embedded(), preferred) }

func newWords(all map[string]catalogue, preferred string) *Words {
	name, tag := match(all, preferred)
	return &Words{
		language: name,
		tag:      tag,
		texts:    all[name],
		english:  all[fallbackLanguage],
		habits:   habitsOf(tag),
	}
}

// WithCurrency returns the same words, writing money in a currency given by its
// ISO 4217 code. An empty code writes amounts without a sign.
func (w *Words) WithCurrency(code string) *Words {
	changed := *w
	changed.currency = code
	return &changed
}

// Language returns the language of the texts, such as "en".
func (w *Words) Language() string { return w.language }

// Preferred returns the language that the environment asks for, in the order of
// POSIX (IEEE Std 1003.1, section 8.2): LC_ALL, LC_MESSAGES, LANG. It is empty
// where none is set.
func Preferred(getenv func(string) string) string {
	for _, name := range []string{"LC_ALL", "LC_MESSAGES", "LANG"} {
		if value := getenv(name); value != "" {
			return value
		}
	}
	return ""
}

// match finds the catalogue for a preferred language and the tag for its numbers.
func match(all map[string]catalogue, preferred string) (name string, tag language.Tag) {
	english := language.English
	wanted, err := language.Parse(posixToBCP47(preferred))
	if err != nil {
		return fallbackLanguage, english
	}
	base, confidence := wanted.Base()
	if _, ok := all[base.String()]; !ok || confidence == language.No {
		return fallbackLanguage, english
	}
	return base.String(), wanted
}

// posixToBCP47 takes the encoding and the modifier off a POSIX locale, as in
// "de_AT.UTF-8@euro". "C" and "POSIX" name no language.
func posixToBCP47(locale string) string {
	locale, _, _ = strings.Cut(locale, ".")
	locale, _, _ = strings.Cut(locale, "@")
	if locale == "C" || locale == "POSIX" {
		return ""
	}
	return strings.ReplaceAll(locale, "_", "-")
}
