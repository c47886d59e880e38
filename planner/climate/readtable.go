package climate

import (
	"math"
	"strings"

	"fourturn/planner/civil"
)

// headerSearch is how many lines may come before the header of a table: the
// notes that services put before their data.
const headerSearch = 60

// readTable reads a table with named columns, or GHCN-Daily rows by element
// without a header.
func (d *dailyReader) readTable(lines []string) {
	if n, ok := firstData(lines); ok && d.looksLikeBareElements(lines[n]) {
		d.readElements(lines, n, bareElements)
		return
	}
	h, ok := findHeader(lines)
	if !ok {
		return
	}
	d.report.Separator, d.report.HeaderLine = h.separator, h.line
	d.report.DecimalComma = h.separator != ','
	body := lines[h.line:]
	if h.element >= 0 {
		d.readElements(lines, h.line, h)
		return
	}
	if h.tmin < 0 && h.tmax < 0 || !h.dated() {
		return
	}
	d.report.Layout = LayoutColumns
	d.report.Date, d.report.Tmin, d.report.Tmax = h.column(h.date), h.column(h.tmin), h.column(h.tmax)
	if h.year >= 0 {
		d.report.Date = h.column(h.year)
	}
	d.unitFromHeader(h)
	dates := d.dateReader(h, body)
	var fields []string
	for i, l := range body {
		line := h.line + i + 1
		if blankOrComment(l) {
			continue
		}
		var stray bool
		fields, stray = split(fields[:0], l, h.separator)
		if stray {
			d.faults.add(FaultPunctuated, line)
		}
		d.readRow(h, dates, fields, line)
	}
}

// firstData returns the first line that is neither blank nor a comment.
func firstData(lines []string) (int, bool) {
	for i, l := range lines {
		if !blankOrComment(l) {
			return i, true
		}
	}
	return 0, false
}

func blankOrComment(l string) bool {
	t := strings.TrimSpace(l)
	return t == "" || strings.HasPrefix(t, "#")
}

// readRow reads one row of a table with a column for each value.
func (d *dailyReader) readRow(h header, dates *dateReader, fields []string, line int) {
	if len(fields) <= max(h.date, h.year, h.month, h.day, min(h.tmin, h.tmax)) {
		d.faults.add(FaultShortRow, line)
		return
	}
	if h.station >= 0 && h.station < len(fields) && !d.ofStation(strings.TrimSpace(fields[h.station]), line) {
		return
	}
	date, ok := d.readDate(dates, fields, line)
	if !ok {
		return
	}
	d.add(line, date, d.value(h, fields, h.tmin, h.tminFlags, line), d.value(h, fields, h.tmax, h.tmaxFlags, line))
}

// readDate reads the date of a row and counts what is wrong with it.
func (d *dailyReader) readDate(dates *dateReader, fields []string, line int) (civil.Date, bool) {
	y, m, day, ok := dates.read(fields)
	switch {
	case !ok:
		d.faults.add(FaultDate, line)
		return 0, false
	case y < civil.MinYear || y > civil.MaxYear:
		d.faults.add(FaultYear, line)
		return 0, false
	case !civil.Valid(y, m, day):
		d.faults.add(FaultDate, line)
		return 0, false
	}
	return civil.New(y, m, day), true
}

// value reads one number of a row; NaN where missing, flagged or unreadable.
func (d *dailyReader) value(h header, fields []string, column, flags, line int) float64 {
	if column < 0 || column >= len(fields) {
		return math.NaN()
	}
	v, state := number(fields[column], d.report.DecimalComma)
	if state == numberBad {
		d.faults.add(FaultNumber, line)
	}
	if state == numberRead && flags >= 0 && flags < len(fields) && qualityFlag(fields[flags], h.flagsAlone) != "" {
		d.faults.add(FaultQuality, line)
		return math.NaN()
	}
	return v
}

// qualityFlag returns the quality flag of an attributes column, which holds
// measurement, quality and source flag, and perhaps an hour, with commas between
// (NOAA NCEI, Daily Summaries documentation); or of a column of its own.
func qualityFlag(attributes string, alone bool) string {
	if alone {
		return strings.TrimSpace(attributes)
	}
	parts := strings.Split(attributes, ",")
	if len(parts) < 2 {
		return ""
	}
	return strings.TrimSpace(parts[1])
}

// elementColumns are the places of a row for each day and element.
type elementColumns struct{ station, date, element, value, quality int }

// bareElements is the layout of GHCN-Daily's files by year and by station: id,
// YYYYMMDD, element, value, measurement, quality and source flag, hour.
var bareElements = header{separator: ',', elements: elementColumns{0, 1, 2, 3, 5}}

func (d *dailyReader) looksLikeBareElements(l string) bool {
	f, _ := split(nil, l, ',')
	if len(f) < 4 || len(f[2]) != 4 || len(strings.TrimSpace(f[1])) != 8 {
		return false
	}
	_, state := number(f[3], false)
	_, _, _, ok := compactDate(strings.TrimSpace(f[1]))
	return ok && state == numberRead
}

// readElements reads rows for each day and element, from the line after the
// header, where there is one.
func (d *dailyReader) readElements(lines []string, from int, h header) {
	e := h.elements
	d.report.Layout, d.report.Separator = LayoutLong, h.separator
	d.report.Date, d.report.Tmin, d.report.Tmax = Column{e.date, "DATE"}, Column{e.value, "TMIN"}, Column{e.value, "TMAX"}
	if h.line == 0 {
		d.report.Unit, d.report.UnitBy = TenthsC, Stated // the layout without a header is defined so
	}
	if d.options.Unit != UnitUnknown {
		d.report.Unit, d.report.UnitBy = d.options.Unit, Told
	}
	d.report.Order, d.report.OrderBy = YearMonthDay, Stated
	var fields []string
	for i, l := range lines[from:] {
		line := from + i + 1
		if blankOrComment(l) {
			continue
		}
		fields, _ = split(fields[:0], l, h.separator)
		if len(fields) <= max(e.station, e.date, e.element, e.value) {
			d.faults.add(FaultShortRow, line)
			continue
		}
		d.readElement(e, fields, line)
	}
}

func (d *dailyReader) readElement(e elementColumns, fields []string, line int) {
	element := strings.ToUpper(strings.TrimSpace(fields[e.element]))
	if element != "TMIN" && element != "TMAX" {
		d.faults.add(FaultElement, line)
		return
	}
	if e.station >= 0 && !d.ofStation(strings.TrimSpace(fields[e.station]), line) {
		return
	}
	date, ok := d.readDate(&dateReader{column: e.date, order: YearMonthDay}, fields, line)
	if !ok {
		return
	}
	v, state := number(fields[e.value], false)
	switch {
	case state == numberBad:
		d.faults.add(FaultNumber, line)
		return
	case state == numberNone || v == dlyNone:
		return
	case e.quality >= 0 && e.quality < len(fields) && strings.TrimSpace(fields[e.quality]) != "":
		d.faults.add(FaultQuality, line)
		return
	}
	if element == "TMIN" {
		d.add(line, date, v, math.NaN())
	} else {
		d.add(line, date, math.NaN(), v)
	}
}
