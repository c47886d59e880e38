package words

import (
	"math"
	"strings"
	"unicode"

	"golang.org/x/text/currency"
	"golang.org/x/text/message"
	"golang.org/x/text/number"
)

// noBreak keeps a number and its sign on one line.
const noBreak = "\u00a0"

// Number writes x with at most the given decimals, without trailing zeros. What
// is not a number is written as a dash.
func (w *Words) Number(x float64, decimals int) string {
	return w.decimal(x, number.MaxFractionDigits(decimals), decimals)
}

// Count writes a whole number.
func (w *Words) Count(n int) string { return w.Number(float64(n), 0) }

// Significant writes x to the given number of significant digits, but never
// rounds away whole units: 38.2, 1,234.
func (w *Words) Significant(x float64, digits int) string {
	if x == 0 || math.IsNaN(x) || math.IsInf(x, 0) {
		return w.Number(x, 0)
	}
	before := int(math.Floor(math.Log10(math.Abs(x)))) + 1
	return w.Number(x, max(0, digits-before))
}

// Percent writes a share of 1 in per cent, with at most one decimal.
func (w *Words) Percent(share float64) string {
	if math.IsNaN(share) || math.IsInf(share, 0) {
		return w.Number(share, 0)
	}
	rounded := roundTo(share, 3)
	return message.NewPrinter(w.tag).Sprint(number.Percent(rounded, number.MaxFractionDigits(1)))
}

// Money writes an amount in the currency of the words, with as many decimals as
// ISO 4217 gives it.
func (w *Words) Money(amount float64) string {
	if math.IsNaN(amount) || math.IsInf(amount, 0) {
		return w.Number(amount, 0)
	}
	sign, decimals := w.currencySign()
	digits := w.decimal(math.Abs(amount), number.Scale(decimals), decimals)
	minus := ""
	if roundTo(amount, decimals) < 0 {
		minus = "-"
	}
	switch {
	case sign == "":
		return minus + digits
	case !w.habits.moneyBefore:
		return minus + digits + noBreak + sign
	case unicode.IsLetter([]rune(sign)[len([]rune(sign))-1]):
		// A code stands apart from the digits (CLDR, currencySpacing).
		return minus + sign + noBreak + digits
	}
	return minus + sign + digits
}

// currencySign returns the sign of the currency and its usual decimals; a code
// that ISO 4217 does not know stands for itself.
func (w *Words) currencySign() (sign string, decimals int) {
	if w.currency == "" {
		return "", 2
	}
	unit, err := currency.ParseISO(w.currency)
	if err != nil {
		return w.currency, 2
	}
	decimals, _ = currency.Standard.Rounding(unit)
	sign = message.NewPrinter(w.tag).Sprint(currency.NarrowSymbol(unit))
	return strings.TrimSpace(sign), decimals
}

// decimal writes x with the separators of the language.
func (w *Words) decimal(x float64, digits number.Option, decimals int) string {
	switch {
	case math.IsNaN(x):
		return "–"
	case math.IsInf(x, 1):
		return "∞"
	case math.IsInf(x, -1):
		return "-∞"
	}
	rounded := roundTo(x, decimals)
	options := []number.Option{digits}
	if math.Abs(rounded) < float64(w.habits.groupFrom) {
		options = append(options, number.NoSeparator())
	}
	return message.NewPrinter(w.tag).Sprint(number.Decimal(rounded, options...))
}

// roundTo rounds half away from zero, as people do on paper, and leaves no minus
// sign on a zero.
func roundTo(x float64, decimals int) float64 {
	scale := math.Pow10(decimals)
	rounded := math.Round(x*scale) / scale
	if rounded == 0 {
		return 0
	}
	if math.IsInf(rounded, 0) {
		return x // too large to have decimals
	}
	return rounded
}
