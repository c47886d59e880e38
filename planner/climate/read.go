package climate

import (
	"bufio"
	"bytes"
	"errors"
	"fmt"
	"io"
	"math"
	"slices"

	"fourturn/planner/civil"
)

// ReadOptions are what the person says of a file; zero values let it be found out.
type ReadOptions struct {
	Unit     Unit
	Order    DateOrder
	Station  string // id of the station to take from a file of several; empty takes the first
	MaxBytes int64  // 0 means [DefaultMaxBytes]
}

// The limits on a file of daily values.
const (
	// DefaultMaxBytes is ample for 200 years of daily summaries with all elements.
	DefaultMaxBytes = 64 << 20
	// maxLine is longer than a row of daily summaries with every element and flag.
	maxLine = 16 << 10
)

// ErrNoDays is returned by [ReadDaily] when a file holds no day with a minimum or
// a maximum; the report tells what was understood of it.
var ErrNoDays = errors.New("no days with a minimum or a maximum temperature")

// ReadDaily reads a daily series: daily summaries of GHCN-Daily with one column
// for each element or one row for each, its fixed-width .dly files, or any table
// with a date, a minimum and a maximum, told by the names of its columns. The
// report says what was understood and lists every fault with its lines; nothing
// is dropped in silence. An error is the reader's own, or [ErrNoDays].
func ReadDaily(from io.Reader, options ReadOptions) (*Record, *ReadReport, error) {
	if options.MaxBytes <= 0 {
		options.MaxBytes = DefaultMaxBytes
	}
	d := &dailyReader{options: options, faults: faultLog{}, seen: map[civil.Date]int{}}
	d.report.Date, d.report.Tmin, d.report.Tmax = Column{Index: -1}, Column{Index: -1}, Column{Index: -1}
	lines, err := d.readLines(from)
	if err != nil {
		return nil, d.finish(nil), fmt.Errorf("read daily values: %w", err)
	}
	d.report.Lines = len(lines)
	if looksLikeDly(lines) {
		d.readDly(lines)
	} else {
		d.readTable(lines)
	}
	record := d.record()
	report := d.finish(record)
	if record == nil {
		return nil, report, ErrNoDays
	}
	return record, report, nil
}

// dailyReader is the state of one reading.
type dailyReader struct {
	options ReadOptions
	report  ReadReport
	faults  faultLog
	days    []rawDay
	seen    map[civil.Date]int // index in days
	before  civil.Date         // of the row before
}

// rawDay is a day in the file's own unit.
type rawDay struct {
	date       civil.Date
	tmin, tmax float64
	line       int
}

// readLines splits the file into lines without their ends. Lines past the limit
// are emptied and counted.
func (d *dailyReader) readLines(from io.Reader) ([]string, error) {
	limited := &io.LimitedReader{R: from, N: d.options.MaxBytes + 1}
	in := bufio.NewReaderSize(limited, maxLine)
	var lines []string
	for {
		line, more, err := in.ReadLine()
		if errors.Is(err, io.EOF) {
			break
		}
		if err != nil {
			return nil, err
		}
		text := string(bytes.TrimSuffix(line, []byte("\r")))
		for more && err == nil {
			text = ""
			_, more, err = in.ReadLine()
		}
		if text == "" && len(line) > 0 && len(line) >= maxLine {
			d.faults.add(FaultLongLine, len(lines)+1)
		}
		lines = append(lines, text)
	}
	if limited.N <= 0 {
		d.report.Truncated = true
		lines = lines[:max(0, len(lines)-1)] // the last line is cut somewhere
	}
	if len(lines) > 0 {
		lines[0] = string(bytes.TrimPrefix([]byte(lines[0]), []byte("\xef\xbb\xbf")))
	}
	return lines, nil
}

// add takes in one row's values for a date, in the file's unit. A value that
// joins a day of which it was missing is no double.
func (d *dailyReader) add(line int, date civil.Date, tmin, tmax float64) {
	if math.IsNaN(tmin) && math.IsNaN(tmax) {
		d.faults.add(FaultEmpty, line)
		return
	}
	if date < d.before {
		d.faults.add(FaultOrder, line)
	}
	d.before = date
	i, doubled := d.seen[date]
	if !doubled {
		d.seen[date] = len(d.days)
		d.days = append(d.days, rawDay{date, tmin, tmax, line})
		return
	}
	day := &d.days[i]
	switch same := sameOrMissing(day.tmin, tmin) && sameOrMissing(day.tmax, tmax); {
	case !same:
		d.faults.add(FaultConflict, line)
	case math.IsNaN(tmin) || !math.IsNaN(day.tmin):
		if math.IsNaN(tmax) || !math.IsNaN(day.tmax) {
			d.faults.add(FaultDuplicate, line)
		}
	}
	if math.IsNaN(day.tmin) {
		day.tmin = tmin
	}
	if math.IsNaN(day.tmax) {
		day.tmax = tmax
	}
}

func sameOrMissing(a, b float64) bool { return math.IsNaN(a) || math.IsNaN(b) || a == b }

// The air at screen height that counts as possible, °C: beyond the coldest
// (-89.2) and the hottest (56.7) that the World Meteorological Organization's
// archive of extremes accepts.
const (
	coldestAir = -90.0
	hottestAir = 57.0
)

// record turns the days into °C and checks them.
func (d *dailyReader) record() *Record {
	if len(d.days) == 0 {
		return nil
	}
	d.decideUnit()
	values := make([]DayValue, 0, len(d.days))
	for _, day := range d.days {
		v := DayValue{day.date, d.celsius(day.tmin, day.line), d.celsius(day.tmax, day.line)}
		if v.Tmin > v.Tmax {
			// Either may be the wrong one: neither is used.
			d.faults.add(FaultCrossed, day.line)
			v.Tmin, v.Tmax = math.NaN(), math.NaN()
		}
		values = append(values, v)
	}
	d.report.Rows = len(values)
	return NewRecord(values)
}

// celsius brings a value to °C, rounded to a tenth where it was in °F, so that
// 32, 28 and 36 °F stand exactly on 0, -2.2 and 2.2.
func (d *dailyReader) celsius(x float64, line int) float64 {
	switch d.report.Unit {
	case TenthsC:
		x /= 10
	case Fahrenheit:
		x = math.Round((x-32)/1.8*10) / 10
	case Celsius, UnitUnknown:
	}
	if x < coldestAir || x > hottestAir {
		d.faults.add(FaultRange, line)
		return math.NaN()
	}
	return x
}

// finish completes the report.
func (d *dailyReader) finish(r *Record) *ReadReport {
	d.report.Faults = d.faults.sorted()
	slices.Sort(d.report.OtherStations)
	if r != nil {
		d.report.First, d.report.Last = r.First(), r.Last()
		d.report.TminDays, d.report.TmaxDays, d.report.AllDays = r.Days()
		d.report.Gaps = r.Gaps()
	}
	if d.report.Layout == "" {
		d.report.Layout = LayoutNone
	}
	return &d.report
}
