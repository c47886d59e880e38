package quantity

import (
	"math"
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"
)

// vulgarFractions are the fractions that have a sign of their own.
var vulgarFractions = map[rune]float64{
	'¼': 1.0 / 4, '½': 1.0 / 2, '¾': 3.0 / 4, '⅓': 1.0 / 3, '⅔': 2.0 / 3,
	'⅛': 1.0 / 8, '⅜': 3.0 / 8, '⅝': 5.0 / 8, '⅞': 7.0 / 8,
}

// longestNumber is how many characters of digits are read; the longest that a
// float64 needs is some 330 before the point.
const longestNumber = 400

// number takes the number at the head of the rest: "12", "1.5", "1,5", "1/2",
// "1 1/2", "1-1/2", "1½".
func (p *measure) number() (float64, error) {
	digits := p.digits()
	if digits == "" {
		if f, ok := p.vulgar(); ok {
			return f, nil
		}
		return 0, p.fault(FaultNotANumber)
	}
	whole, err := p.decimal(digits)
	if err != nil {
		return 0, err
	}
	if f, ok := p.vulgar(); ok {
		return whole + f, nil
	}
	if strings.HasPrefix(p.rest, "/") {
		p.rest = p.rest[1:]
		bottom, err := p.denominator()
		return whole / bottom, err
	}
	if f, ok, err := p.fractionAfter(); ok || err != nil {
		return whole + f, err
	}
	p.skipSpace()
	return whole, nil
}

// skipSpace takes the space between a number and its unit.
func (p *measure) skipSpace() { p.rest = strings.TrimLeftFunc(p.rest, unicode.IsSpace) }

// digits takes digits and separators off the head. A no-break or thin space counts as
// a separator where three digits follow, as in "1 234".
func (p *measure) digits() string {
	end := 0
	for end < len(p.rest) {
		r, size := utf8.DecodeRuneInString(p.rest[end:])
		switch {
		case r >= '0' && r <= '9', r == '.' || r == ',':
		case (r == '\u00a0' || r == '\u202f' || r == '\u2009') && end > 0 && threeDigits(p.rest[end+size:]):
		default:
			return p.take(end)
		}
		end += size
	}
	return p.take(end)
}

func (p *measure) take(n int) string {
	head := p.rest[:n]
	p.rest = p.rest[n:]
	return head
}

// threeDigits reports whether s begins with three digits and no fourth.
func threeDigits(s string) bool {
	n := 0
	for n < len(s) && s[n] >= '0' && s[n] <= '9' {
		n++
	}
	return n == 3
}

// vulgar takes a fraction sign off the head, and a space before it.
func (p *measure) vulgar() (float64, bool) {
	rest := strings.TrimLeftFunc(p.rest, unicode.IsSpace)
	r, size := utf8.DecodeRuneInString(rest)
	f, ok := vulgarFractions[r]
	if ok {
		p.rest = strings.TrimLeftFunc(rest[size:], unicode.IsSpace)
	}
	return f, ok
}

// fractionAfter takes the "1/2" of "1 1/2" or "1-1/2" off the head, if it is there.
func (p *measure) fractionAfter() (float64, bool, error) {
	rest := strings.TrimPrefix(strings.TrimLeftFunc(p.rest, unicode.IsSpace), "-")
	if rest == p.rest {
		return 0, false, nil // no space and no hyphen: the digits went before
	}
	slash := strings.IndexByte(rest, '/')
	if slash <= 0 || strings.IndexFunc(rest[:slash], notDigit) >= 0 {
		return 0, false, nil
	}
	top, err := p.decimal(rest[:slash])
	if err != nil {
		return 0, false, err
	}
	p.rest = rest[slash+1:]
	bottom, err := p.denominator()
	return top / bottom, true, err
}

func notDigit(r rune) bool { return r < '0' || r > '9' }

// denominator takes a whole number above zero off the head.
func (p *measure) denominator() (float64, error) {
	end := strings.IndexFunc(p.rest, notDigit)
	if end < 0 {
		end = len(p.rest)
	}
	x, err := strconv.ParseFloat(p.take(end), 64)
	if err != nil || x == 0 {
		return 1, p.fault(FaultNotANumber)
	}
	p.skipSpace()
	return x, nil
}

// decimal reads digits with their separators.
func (p *measure) decimal(digits string) (float64, error) {
	if len(digits) > longestNumber {
		return 0, p.fault(FaultNotFinite)
	}
	plain, fault := p.reader.plain(digits)
	if fault != "" {
		return 0, p.fault(fault)
	}
	x, err := strconv.ParseFloat(plain, 64)
	switch {
	case math.IsInf(x, 0):
		return 0, p.fault(FaultNotFinite)
	case err != nil:
		return 0, p.fault(FaultNotANumber)
	}
	return x, nil
}

// plain writes digits with a point before the decimals and nothing else between.
func (r Reader) plain(digits string) (string, Fault) {
	if spaced := strings.Map(dropSpace, digits); spaced != digits {
		before, _, _ := strings.Cut(strings.ReplaceAll(digits, ",", "."), ".")
		if !grouped(strings.Map(spaceToComma, before), ',') {
			return "", FaultNotANumber
		}
		digits = spaced
	}
	points, commas := strings.Count(digits, "."), strings.Count(digits, ",")
	switch {
	case points == 0 && commas == 0:
		return digits, ""
	case points > 0 && commas > 0:
		decimal := '.'
		if strings.LastIndexByte(digits, ',') > strings.LastIndexByte(digits, '.') {
			decimal = ','
		}
		return ungrouped(digits, decimal)
	case points > 1:
		return ungrouped(digits, ',')
	case commas > 1:
		return ungrouped(digits, '.')
	}
	return r.single(digits)
}

// single settles what the one separator in digits is.
func (r Reader) single(digits string) (string, Fault) {
	separator := '.'
	if strings.Contains(digits, ",") {
		separator = ','
	}
	looksGrouped := grouped(digits, separator)
	switch {
	case r.Decimal == separator || !looksGrouped:
		return strings.Replace(digits, string(separator), ".", 1), ""
	case r.Decimal != 0:
		return strings.Replace(digits, string(separator), "", 1), ""
	case separator == ',':
		return "", FaultSeparators
	}
	return digits, ""
}

// ungrouped takes the separators of thousands out of digits with a decimal sign.
func ungrouped(digits string, decimal rune) (string, Fault) {
	group := ','
	if decimal == ',' {
		group = '.'
	}
	before, after, found := strings.Cut(digits, string(decimal))
	if !grouped(before, group) || strings.ContainsAny(after, ".,") {
		return "", FaultNotANumber
	}
	plain := strings.ReplaceAll(before, string(group), "")
	if found {
		plain += "." + after
	}
	return plain, ""
}

// grouped reports whether s is digits in groups of three: "1,234,567". A single
// "0" before the first group is no group: "0,500" is a decimal.
func grouped(s string, group rune) bool {
	groups := strings.Split(s, string(group))
	first := groups[0]
	if len(groups) < 2 || len(first) == 0 || len(first) > 3 || first[0] == '0' {
		return false
	}
	for _, g := range groups[1:] {
		if !threeDigits(g) || len(g) != 3 {
			return false
		}
	}
	return strings.IndexFunc(first, notDigit) < 0
}

func dropSpace(r rune) rune {
	if unicode.IsSpace(r) {
		return -1
	}
	return r
}

func spaceToComma(r rune) rune {
	if unicode.IsSpace(r) {
		return ','
	}
	return r
}
