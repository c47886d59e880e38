package climate

import (
	"cmp"
	"slices"

	"fourturn/planner/civil"
)

// Fault is a kind of trouble in a file of daily values.
type Fault string

// The faults, with what is done about each.
const (
	FaultShortRow   Fault = "short_row"    // fewer fields than the header: the row is left out
	FaultLongLine   Fault = "long_line"    // a line beyond the limit: left out
	FaultDate       Fault = "bad_date"     // no date can be read: the row is left out
	FaultYear       Fault = "bad_year"     // a year outside 1900 to 2399: the row is left out
	FaultNumber     Fault = "bad_number"   // no number can be read: counts as missing
	FaultQuality    Fault = "quality_flag" // the publisher flags the value as failed: counts as missing
	FaultRange      Fault = "out_of_range" // no air on earth was that cold or hot: counts as missing
	FaultCrossed    Fault = "tmin_above_tmax"
	FaultDuplicate  Fault = "duplicate_date"    // the same day again, with the same values: left out
	FaultConflict   Fault = "conflicting_dates" // the same day again, with other values: the first stays
	FaultOrder      Fault = "out_of_order"      // an earlier day than the line before: put in its place
	FaultStation    Fault = "other_station"     // a row of another station: left out
	FaultElement    Fault = "other_element"     // an element other than TMIN and TMAX: left out (counted, no fault)
	FaultEmpty      Fault = "no_value"          // neither minimum nor maximum: the day is missing
	FaultPunctuated Fault = "stray_quote"       // a quotation mark without its partner: read as it stands
)

// FaultCount is how often a fault came up and in which lines, the first few.
type FaultCount struct {
	Fault Fault
	Count int
	Lines []int // from 1; at most [ShownLines]
}

// ShownLines is how many line numbers of a fault are kept.
const ShownLines = 20

// Layout is how a file of daily values is laid out.
type Layout string

// The layouts.
const (
	LayoutColumns Layout = "columns"    // a date and one column for each value
	LayoutLong    Layout = "elements"   // one row for each day and element
	LayoutDly     Layout = "dly"        // GHCN-Daily, fixed width, one row for each month and element
	LayoutNone    Layout = "unreadable" // no date and temperature columns were found
)

// Unit is the unit of the temperatures in a file.
type Unit string

// The units.
const (
	UnitUnknown Unit = ""
	Celsius     Unit = "C"
	Fahrenheit  Unit = "F"
	TenthsC     Unit = "tenths_C"
)

// Certainty says how something about a file is known.
type Certainty string

// The certainties.
const (
	Told     Certainty = "told"     // the person said so
	Stated   Certainty = "stated"   // the file says so, or its layout is defined so
	Inferred Certainty = "inferred" // from the values: only one reading makes sense
	Guessed  Certainty = "guessed"  // several readings make sense: the person should look
)

// DateOrder is how dates are written.
type DateOrder string

// The date orders.
const (
	OrderUnknown  DateOrder = ""
	YearMonthDay  DateOrder = "ymd"
	DayMonthYear  DateOrder = "dmy"
	MonthDayYear  DateOrder = "mdy"
	SplitColumns  DateOrder = "year_month_day_columns"
	MonthInRecord DateOrder = "month_rows"
)

// Column is a column that was understood.
type Column struct {
	Index int // from 0; -1 where there is none
	Name  string
}

// ReadReport says what was understood of a file, for the person to see before
// the record is taken in.
type ReadReport struct {
	Layout        Layout
	Separator     rune // 0 for fixed width
	DecimalComma  bool
	HeaderLine    int // from 1; 0 where there is none
	Date          Column
	Tmin, Tmax    Column
	Order         DateOrder
	OrderBy       Certainty
	Unit          Unit
	UnitBy        Certainty
	Station       string   // id, where the file names stations
	OtherStations []string // left out, the first few

	Lines     int  // read, header and comments included
	Rows      int  // with values
	Truncated bool // the file goes on past the limit

	First, Last civil.Date
	TminDays    int
	TmaxDays    int
	AllDays     int
	Gaps        []Gap
	Faults      []FaultCount // in order of first line
}

// Count returns how often a fault came up.
func (r *ReadReport) Count(f Fault) int {
	for _, c := range r.Faults {
		if c.Fault == f {
			return c.Count
		}
	}
	return 0
}

// Doubtful reports whether something was guessed that the person should confirm.
func (r *ReadReport) Doubtful() bool { return r.OrderBy == Guessed || r.UnitBy == Guessed }

// faultLog collects faults while a file is read.
type faultLog map[Fault]*FaultCount

func (l faultLog) add(f Fault, line int) {
	c := l[f]
	if c == nil {
		c = &FaultCount{Fault: f}
		l[f] = c
	}
	c.Count++
	if len(c.Lines) < ShownLines && (len(c.Lines) == 0 || c.Lines[len(c.Lines)-1] != line) {
		c.Lines = append(c.Lines, line)
	}
}

func (l faultLog) sorted() []FaultCount {
	var out []FaultCount
	for _, c := range l {
		out = append(out, *c)
	}
	slices.SortFunc(out, func(a, b FaultCount) int {
		return cmp.Or(cmp.Compare(a.Lines[0], b.Lines[0]), cmp.Compare(a.Fault, b.Fault))
	})
	return out
}
