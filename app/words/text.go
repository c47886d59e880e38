package words

import (
	"fmt"
	"maps"
	"math"
	"strconv"
	"strings"
	"time"

	"fourturn/planner/civil"

	"golang.org/x/text/feature/plural"
)

// A holds the arguments of a text by the names of its placeholders. A value is a
// string, an int, a float64, a [civil.Date], a [time.Month] or a [time.Weekday];
// measures are written beforehand, as in {"volume": w.Volume(v, system)}.
type A map[string]any

// The marks around a key without a text and a placeholder without an argument.
const (
	missingOpen  = "⟦"
	missingClose = "⟧"
)

// T returns the text of a key with its placeholders filled in. Where the key has
// plural forms, the argument count chooses among them. Several A are taken as one.
func (w *Words) T(key string, args ...A) string {
	merged := A{}
	for _, a := range args {
		maps.Copy(merged, a)
	}
	text, ok := w.lookUp(key, merged)
	if !ok {
		return missingOpen + key + missingClose
	}
	return fill(text, func(name string) (string, bool) {
		value, ok := merged[name]
		if !ok {
			return "", false
		}
		return w.argument(name, value), true
	})
}

// Has reports whether some catalogue has a text for the key.
func (w *Words) Has(key string) bool {
	_, ok := w.lookUp(key, A{"count": 1})
	return ok
}

// lookUp finds the text of a key in the language, and else in English.
func (w *Words) lookUp(key string, args A) (string, bool) {
	if text, ok := w.texts[key]; ok {
		return text, true
	}
	if _, ok := w.texts[key+"#other"]; ok {
		return w.pluralForm(w.texts, key, args["count"]), true
	}
	if text, ok := w.english[key]; ok {
		return text, true
	}
	if _, ok := w.english[key+"#other"]; ok {
		return w.pluralForm(w.english, key, args["count"]), true
	}
	return "", false
}

// pluralForm returns the text for a count, or the form "other" where the language
// asks for a form that the catalogue lacks.
func (w *Words) pluralForm(texts catalogue, key string, count any) string {
	if text, ok := texts[key+"#"+w.category(count)]; ok {
		return text
	}
	return texts[key+"#other"]
}

// pluralNames are the names that CLDR gives to the plural categories.
var pluralNames = map[plural.Form]string{
	plural.Zero: "zero", plural.One: "one", plural.Two: "two",
	plural.Few: "few", plural.Many: "many", plural.Other: "other",
}

// category returns the CLDR plural category of a count in the language. The
// operands are those of Unicode Technical Standard 35, part 3, section 5.1.1.
func (w *Words) category(count any) string {
	var n float64
	switch c := count.(type) {
	case int:
		n = float64(c)
	case float64:
		n = c
	default:
		return "other"
	}
	whole, fraction, _ := strings.Cut(strconv.FormatFloat(math.Abs(n), 'f', -1, 64), ".")
	// No category depends on more than the last six digits.
	i, _ := strconv.Atoi(whole[max(0, len(whole)-6):])
	if len(whole) > 6 {
		i += 1_000_000 // keep 1,000,001 apart from 1
	}
	f, _ := strconv.Atoi(fraction[:min(len(fraction), 6)])
	digits := min(len(fraction), 6)
	form := plural.Cardinal.MatchPlural(w.tag, i, digits, digits, f, f)
	return pluralNames[form]
}

// argument writes one argument of a text.
func (w *Words) argument(name string, value any) string {
	switch v := value.(type) {
	case string:
		return v
	case int:
		return w.Count(v)
	case float64:
		return w.Number(v, 2)
	case civil.Date:
		return w.Date(v)
	case time.Month:
		return w.Month(v)
	case time.Weekday:
		return w.Weekday(v)
	}
	panic(fmt.Sprintf("words: argument %q is a %T, which has no form in words", name, value))
}

// fill replaces each {name} of a text by its value; a name without a value stays
// visible.
func fill(text string, value func(name string) (string, bool)) string {
	var out strings.Builder
	for {
		open := strings.IndexByte(text, '{')
		if open < 0 {
			break
		}
		end := strings.IndexByte(text[open:], '}')
		if end < 0 {
			break
		}
		out.WriteString(text[:open])
		name := text[open+1 : open+end]
		if v, ok := value(name); ok {
			out.WriteString(v)
		} else {
			out.WriteString(missingOpen + name + missingClose)
		}
		text = text[open+end+1:]
	}
	out.WriteString(text)
	return out.String()
}

// List joins items as a sentence does: "a, b and c".
func (w *Words) List(items ...string) string {
	if len(items) < 2 {
		return strings.Join(items, "")
	}
	last := len(items) - 1
	return w.T("words.list", A{"items": strings.Join(items[:last], ", "), "last": items[last]})
}
