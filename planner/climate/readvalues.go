package climate

import (
	"math"
	"strconv"
	"strings"
)

// numberState says what came of reading a number.
type numberState int

const (
	numberRead numberState = iota
	numberNone             // a sign for a missing value
	numberBad              // neither
)

// missingWords stand for a missing value, folded to lower case.
var missingWords = map[string]bool{
	"": true, "na": true, "n/a": true, "nan": true, "null": true, "none": true, "m": true, "-": true, "--": true,
	"---": true, ".": true, "x": true, "missing": true,
}

// number reads one temperature; NaN unless it was read.
func number(s string, decimalComma bool) (float64, numberState) {
	s = strings.TrimSpace(s)
	if missingWords[strings.ToLower(s)] {
		return math.NaN(), numberNone
	}
	s = strings.Replace(s, "−", "-", 1) // the typographic minus
	if strings.Contains(s, ",") && !strings.Contains(s, ".") && (decimalComma || strings.Count(s, ",") == 1) {
		s = strings.Replace(s, ",", ".", 1)
	}
	v, err := strconv.ParseFloat(s, 64)
	switch {
	case err != nil || math.IsNaN(v) || math.IsInf(v, 0):
		return math.NaN(), numberBad
	case isMissingCode(v):
		return math.NaN(), numberNone
	}
	return v, numberRead
}

// isMissingCode reports whether a number stands for a missing value: a row of
// nines, as -999, -9999, 9999 and -99.9 of many services.
func isMissingCode(v float64) bool {
	switch v {
	case -999, -9999, 999, 9999, -99.9, -999.9, -99.99, 99999, -99999:
		return true
	}
	return false
}

// unitFromHeader settles the unit where the person or a name says it.
func (d *dailyReader) unitFromHeader(h header) {
	if d.options.Unit != UnitUnknown {
		d.report.Unit, d.report.UnitBy = d.options.Unit, Told
		return
	}
	for _, i := range []int{h.tmin, h.tmax} {
		if u := unitInName(h.column(i).Name); u != UnitUnknown {
			d.report.Unit, d.report.UnitBy = u, Stated
			return
		}
	}
}

// decideUnit finds the unit from the values where nothing stated it.
//
// Tenths of a degree are whole numbers that pass 57 in either direction on many
// days of any year. Degrees Fahrenheit pass 57 in any place that has a summer and
// seldom fall below 0; degrees Celsius never pass 57. A place so cold that its
// Fahrenheit values never pass 57 cannot be told from Celsius: then Celsius is a
// guess.
func (d *dailyReader) decideUnit() {
	if d.report.Unit != UnitUnknown {
		return
	}
	highest, lowest, fractions := math.Inf(-1), math.Inf(1), false
	for _, day := range d.days {
		for _, v := range []float64{day.tmin, day.tmax} {
			if math.IsNaN(v) {
				continue
			}
			highest, lowest = max(highest, v), min(lowest, v)
			fractions = fractions || v != math.Trunc(v)
		}
	}
	// The highest air temperature ever accepted is 134 °F.
	const hottestF = 134.0
	switch {
	case highest > hottestF || lowest < coldestAir && highest > hottestAir && !fractions:
		d.report.Unit, d.report.UnitBy = TenthsC, Inferred
	case highest > hottestAir:
		d.report.Unit, d.report.UnitBy = Fahrenheit, Inferred
		if !fractions && lowest < -30 {
			d.report.UnitBy = Guessed // tenths of a cold place are as likely
		}
	case lowest < -5 || fractions || highest < 30:
		d.report.Unit, d.report.UnitBy = Celsius, Inferred
		if highest > 45 || highest < 5 || lowest < coldestAir { // -99 for a missing value, or tenths of eternal cold
			d.report.UnitBy = Guessed
		}
	default:
		d.report.Unit, d.report.UnitBy = Celsius, Guessed
	}
}
