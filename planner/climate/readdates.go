package climate

import (
	"strconv"
	"strings"
	"time"
)

// dateReader reads the dates of one file.
type dateReader struct {
	column           int
	order            DateOrder
	year, month, day int // columns, where the order is SplitColumns
}

// dateReader settles how the dates of a table are written, from all of them.
func (d *dailyReader) dateReader(h header, body []string) *dateReader {
	r := &dateReader{column: h.date, year: h.year, month: h.month, day: h.day}
	if h.date < 0 {
		r.order = SplitColumns
		d.report.Order, d.report.OrderBy = SplitColumns, Stated
		return r
	}
	if d.options.Order != OrderUnknown {
		r.order = d.options.Order
		d.report.Order, d.report.OrderBy = r.order, Told
		return r
	}
	r.order, d.report.OrderBy = inferOrder(h, body)
	d.report.Order = r.order
	return r
}

// inferOrder tells day first from month first: by a number past 12, by points
// between the numbers, which only day-first countries use, or else by which order
// makes more of the dates follow each other day by day.
func inferOrder(h header, body []string) (DateOrder, Certainty) {
	var past [2]bool
	dotted := false
	var steps [2]int
	var before [2]time.Time
	for _, l := range body {
		fields, _ := split(nil, l, h.separator)
		if blankOrComment(l) || h.date >= len(fields) {
			continue
		}
		a, b, y, iso, ok := dateParts(fields[h.date])
		if iso {
			return YearMonthDay, Stated
		}
		if !ok {
			continue
		}
		dotted = dotted || strings.Contains(fields[h.date], ".")
		past[0], past[1] = past[0] || a > 12, past[1] || b > 12
		for k, md := range [2][2]int{{b, a}, {a, b}} {
			t := time.Date(y, time.Month(md[0]), md[1], 0, 0, 0, 0, time.UTC)
			if t.Sub(before[k]) == 24*time.Hour {
				steps[k]++
			}
			before[k] = t
		}
	}
	switch {
	case past[0] && !past[1], dotted && !past[1]:
		return DayMonthYear, Inferred
	case past[1] && !past[0]:
		return MonthDayYear, Inferred
	case steps[0] > steps[1]:
		return DayMonthYear, Guessed
	}
	return MonthDayYear, Guessed
}

// dateParts reads the three numbers of a local date, or tells an ISO one.
func dateParts(s string) (a, b, year int, iso, ok bool) {
	s = datePart(s)
	if _, _, _, compact := compactDate(s); compact {
		return 0, 0, 0, true, false
	}
	n, found := threeNumbers(s)
	if !found {
		return 0, 0, 0, false, false
	}
	if n[0] > 31 {
		return 0, 0, 0, true, false
	}
	return n[0], n[1], n[2], false, n[2] > 31
}

// datePart cuts a time of day off.
func datePart(s string) string {
	s = strings.TrimSpace(s)
	if i := strings.IndexAny(s, "T "); i >= 6 {
		s = s[:i]
	}
	return s
}

// threeNumbers reads numbers parted by - / or full stops.
func threeNumbers(s string) (n [3]int, ok bool) {
	parts := strings.FieldsFunc(s, func(r rune) bool { return r == '-' || r == '/' || r == '.' })
	if len(parts) != 3 {
		return n, false
	}
	for i, p := range parts {
		v, err := strconv.Atoi(p)
		if err != nil || v < 0 || v > 9999 {
			return n, false
		}
		n[i] = v
	}
	return n, true
}

// compactDate reads YYYYMMDD.
func compactDate(s string) (y int, m time.Month, d int, ok bool) {
	if len(s) != 8 {
		return 0, 0, 0, false
	}
	v, err := strconv.Atoi(s)
	if err != nil || v < 0 {
		return 0, 0, 0, false
	}
	return v / 10000, time.Month(v / 100 % 100), v % 100, true
}

// read returns year, month and day of a row, not yet checked against the
// calendar.
func (r *dateReader) read(fields []string) (y int, m time.Month, d int, ok bool) {
	if r.order == SplitColumns {
		var n [3]int
		for i, c := range [3]int{r.year, r.month, r.day} {
			v, err := strconv.Atoi(strings.TrimSpace(fields[c]))
			if err != nil {
				return 0, 0, 0, false
			}
			n[i] = v
		}
		return n[0], time.Month(n[1]), n[2], true
	}
	s := datePart(fields[r.column])
	if y, m, d, ok := compactDate(s); ok {
		return y, m, d, true
	}
	n, ok := threeNumbers(s)
	switch {
	case !ok:
		return 0, 0, 0, false
	case n[0] > 31 || r.order == YearMonthDay:
		return n[0], time.Month(n[1]), n[2], true
	case r.order == DayMonthYear:
		return n[2], time.Month(n[1]), n[0], true
	}
	return n[2], time.Month(n[0]), n[1], true
}
