package climate

import (
	"slices"
	"strings"
)

// header is what the names of a table's columns say. Columns that are not there
// are -1.
type header struct {
	line                 int // from 1
	separator            rune
	names                []string
	date                 int
	year, month, day     int
	tmin, tmax           int
	tminFlags, tmaxFlags int
	flagsAlone           bool // the flag columns hold a quality flag alone
	station              int
	element              int
	elements             elementColumns
}

func (h header) dated() bool { return h.date >= 0 || h.year >= 0 && h.month >= 0 && h.day >= 0 }

func (h header) column(i int) Column {
	if i < 0 || i >= len(h.names) {
		return Column{Index: -1}
	}
	return Column{i, strings.TrimSpace(h.names[i])}
}

// separators are tried in this order; the one that finds most columns wins.
var separators = []rune{',', ';', '\t', '|'}

// findHeader looks for the first line that names a date and a temperature.
func findHeader(lines []string) (header, bool) {
	for i, l := range lines[:min(len(lines), headerSearch)] {
		l = strings.TrimPrefix(strings.TrimSpace(l), "#")
		for _, sep := range separators {
			if !strings.ContainsRune(l, sep) {
				continue
			}
			names, _ := split(nil, l, sep)
			h := readHeader(names)
			h.line, h.separator = i+1, sep
			if h.dated() && (h.tmin >= 0 || h.tmax >= 0 || h.element >= 0) {
				return h, true
			}
		}
	}
	return header{}, false
}

// Names of columns as [plain] words. They are the names in use by weather services in
// English, German, French and Spanish, and plain ones.
var (
	dateNames = []string{"date", "day", "datum", "fecha", "yyyymmdd", "yyyy mm dd", "mess datum", "messdatum", "time", "datetime", "date time", "obs date", "observation date"}
	tminNames = []string{
		"tmin", "tn", "tnk", "mintp", "min", "tmin c", "tmin f", "minimum", "mintemp", "min temp", "temp min", "tempmin", "t min", "temperature min", "min temperature",
		"minimum temperature", "temperature 2m min", "minimum air temperature", "tiefstwert", "tmini", "minimum temp",
	}
	tmaxNames = []string{
		"tmax", "tx", "txk", "maxtp", "max", "tmax c", "tmax f", "maximum", "maxtemp", "max temp", "temp max", "tempmax", "t max", "temperature max", "max temperature",
		"maximum temperature", "temperature 2m max", "maximum air temperature", "hochstwert", "tmaxi", "maximum temp",
	}
	stationNames = []string{"station", "station id", "stations id", "stationid", "id", "ghcn id", "ghcnd id", "staid"}
	elementNames = []string{"element", "datatype", "data type"}
	valueNames   = []string{"value", "data value"}
	qualityNames = []string{"qflag", "q flag", "quality flag"}
)

func readHeader(names []string) header {
	h := header{
		names: names, date: -1, year: -1, month: -1, day: -1, tmin: -1, tmax: -1,
		tminFlags: -1, tmaxFlags: -1, station: -1, element: -1,
		elements: elementColumns{-1, -1, -1, -1, -1},
	}
	set := func(at *int, i int) {
		if *at < 0 {
			*at = i
		}
	}
	dayAlone := -1
	for i, raw := range names {
		n := plain(raw)
		bare := withoutUnit(n)
		switch {
		case n == "year" || n == "yyyy" || n == "jahr":
			set(&h.year, i)
		case n == "month" || n == "mm" || n == "monat":
			set(&h.month, i)
		case n == "day" || n == "dd" || n == "tag":
			set(&dayAlone, i)
		case slices.Contains(dateNames, n):
			set(&h.date, i)
		case slices.Contains(tminNames, bare):
			set(&h.tmin, i)
		case slices.Contains(tmaxNames, bare):
			set(&h.tmax, i)
		case n == "tmin attributes":
			set(&h.tminFlags, i)
		case n == "tmax attributes":
			set(&h.tmaxFlags, i)
		case slices.Contains(stationNames, n):
			set(&h.station, i)
		case slices.Contains(elementNames, n):
			set(&h.element, i)
		case slices.Contains(valueNames, n):
			set(&h.elements.value, i)
		case slices.Contains(qualityNames, n):
			set(&h.elements.quality, i)
		}
	}
	h.placeDay(dayAlone)
	h.elements.station, h.elements.date, h.elements.element = h.station, h.date, h.element
	if h.elements.value < 0 || h.date < 0 {
		h.element = -1
	}
	return h
}

// placeDay reads a column "day" as the day of the month where year and month
// have columns of their own, and otherwise as the date.
func (h *header) placeDay(dayAlone int) {
	switch {
	case dayAlone < 0:
	case h.year >= 0 && h.month >= 0:
		h.day, h.date = dayAlone, -1
	case h.date < 0:
		h.date = dayAlone
	}
	if h.day < 0 {
		h.year, h.month = -1, -1
	}
}

// withoutUnit takes the words of a unit off a plain name.
func withoutUnit(n string) string {
	words := strings.Fields(n)
	for len(words) > 1 {
		switch words[len(words)-1] {
		case "c", "f", "degc", "degf", "deg", "degree", "degrees", "celsius", "fahrenheit", "tenths", "of", "oc", "01c", "01", "in", "0", "1":
			words = words[:len(words)-1]
			continue
		}
		break
	}
	return strings.Join(words, " ")
}

// unitInName returns the unit that a column's name states.
func unitInName(name string) Unit {
	n := " " + plain(name) + " "
	has := func(words ...string) bool {
		for _, w := range words {
			if strings.Contains(n, " "+w+" ") {
				return true
			}
		}
		return false
	}
	switch {
	case has("tenths", "01c", "01"), strings.Contains(name, "0.1"):
		return TenthsC
	case has("f", "of", "degf", "fahrenheit"):
		return Fahrenheit
	case has("c", "oc", "degc", "celsius"):
		return Celsius
	}
	return UnitUnknown
}

// split cuts a line at the separator. A field may stand in double quotes, with a
// quote inside doubled; stray is true where a quote has no partner.
func split(fields []string, line string, separator rune) (out []string, stray bool) {
	sep := byte(separator)
	for {
		t := strings.TrimLeft(line, " ")
		if strings.HasPrefix(t, `"`) {
			field, rest, ok := quoted(t[1:])
			if !ok {
				stray = true
				field, rest = t[1:], ""
			}
			fields = append(fields, field)
			i := strings.IndexByte(rest, sep)
			if i < 0 {
				return fields, stray
			}
			line = rest[i+1:]
			continue
		}
		i := strings.IndexByte(line, sep)
		if i < 0 {
			return append(fields, line), stray
		}
		fields = append(fields, line[:i])
		line = line[i+1:]
	}
}

// quoted returns the text up to the closing quote and what follows it.
func quoted(s string) (field, rest string, ok bool) {
	var b strings.Builder
	for i := 0; i < len(s); i++ {
		if s[i] != '"' {
			continue
		}
		if i+1 < len(s) && s[i+1] == '"' {
			b.WriteString(s[:i+1])
			s, i = s[i+2:], -1
			continue
		}
		return b.String() + s[:i], s[i+1:], true
	}
	return "", "", false
}
