package words

import (
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
