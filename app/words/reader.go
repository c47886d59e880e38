package words

import (
	"errors"
	"strings"

	"fourturn/planner/quantity"
)

// Reader reads typed measures as the language writes numbers, so that what these
// words wrote can be read back.
func (w *Words) Reader() quantity.Reader {
	decimal := '.'
	if strings.Contains(w.Number(0.5, 1), ",") {
		decimal = ','
	}
	return quantity.Reader{Decimal: decimal}
}

// longestUnit is how much of a word that is no unit is repeated.
const longestUnit = 8

// Unread turns an error of reading what was typed into a [Refusal] for the line under
// the field. Any other error stays, and so does nil.
func (w *Words) Unread(err error) error {
	var parse *quantity.ParseError
	if errors.As(err, &parse) {
		return &Refusal{Text: w.Typed(parse)}
	}
	return err
}

// Typed says in a few words, for the line under a field, why a typed measure cannot be
// read. See [Words.Refusal] for a whole sentence.
func (w *Words) Typed(e *quantity.ParseError) string {
	unit := []rune(e.Unit)
	if len(unit) > longestUnit {
		unit = append(unit[:longestUnit:longestUnit], '…')
	}
	return w.T("typed."+string(e.Fault), A{"kind": w.T("words.kind." + string(e.Kind)), "unit": string(unit)})
}
