package climate

import (
	"math"
	"slices"
	"strconv"
	"strings"
	"time"

	"fourturn/planner/civil"
)

// The fixed columns of a GHCN-Daily .dly file (NOAA NCEI, GHCN-Daily readme.txt,
// section III), from 0: station 0-11, year 11-15, month 15-17, element 17-21, then
// 31 times value (5), measurement, quality and source flag (1 each).
const (
	dlyFirst = 21
	dlyWidth = 8
	dlyNone  = -9999
)

// looksLikeDly reports whether the first line with text is one of a .dly file.
func looksLikeDly(lines []string) bool {
	for _, l := range lines {
		if strings.TrimSpace(l) == "" {
			continue
		}
		_, _, ok := dlyMonth(l)
		return ok && len(l) >= dlyFirst+dlyWidth && !strings.ContainsAny(l[:dlyFirst], ",;\t\"")
	}
	return false
}

// dlyMonth reads year and month.
func dlyMonth(l string) (year int, month time.Month, ok bool) {
	if len(l) < dlyFirst {
		return 0, 0, false
	}
	y, errYear := strconv.Atoi(l[11:15])
	m, errMonth := strconv.Atoi(l[15:17])
	return y, time.Month(m), errYear == nil && errMonth == nil && m >= 1 && m <= 12
}

// readDly reads a fixed-width file. TMIN and TMAX of a month stand in two rows,
// which meet in a day.
func (d *dailyReader) readDly(lines []string) {
	d.report.Layout, d.report.Order, d.report.OrderBy = LayoutDly, MonthInRecord, Stated
	d.report.Unit, d.report.UnitBy = TenthsC, Stated
	d.report.Tmin, d.report.Tmax = Column{-1, "TMIN"}, Column{-1, "TMAX"}
	months := map[civil.Date]*dlyDays{}
	var order []*dlyDays
	for n, l := range lines {
		line := n + 1
		if strings.TrimSpace(l) == "" {
			continue
		}
		year, month, ok := dlyMonth(l)
		switch {
		case !ok:
			d.faults.add(FaultDate, line)
			continue
		case year < civil.MinYear || year > civil.MaxYear:
			d.faults.add(FaultYear, line)
			continue
		}
		element := l[17:21]
		if element != "TMIN" && element != "TMAX" {
			d.faults.add(FaultElement, line)
			continue
		}
		if !d.ofStation(strings.TrimSpace(l[:11]), line) {
			continue
		}
		key := civil.New(year, month, 1)
		m := months[key]
		if m == nil {
			m = newDlyDays(key)
			months[key] = m
			order = append(order, m)
		}
		d.readDlyMonth(m, l, element, line)
	}
	for _, m := range order {
		for i := range m.tmin {
			if math.IsNaN(m.tmin[i]) && math.IsNaN(m.tmax[i]) {
				continue // a gap, listed as such
			}
			d.add(max(m.lines[0], m.lines[1]), m.first.AddDays(i), m.tmin[i], m.tmax[i])
		}
	}
}

// dlyDays are the days of one month.
type dlyDays struct {
	first      civil.Date
	tmin, tmax []float64
	lines      [2]int
}

func newDlyDays(first civil.Date) *dlyDays {
	n := civil.DaysIn(first.Year(), first.Month())
	m := &dlyDays{first: first, tmin: make([]float64, n), tmax: make([]float64, n)}
	for i := range n {
		m.tmin[i], m.tmax[i] = math.NaN(), math.NaN()
	}
	return m
}

func (d *dailyReader) readDlyMonth(m *dlyDays, l, element string, line int) {
	values, which := m.tmin, 0
	if element == "TMAX" {
		values, which = m.tmax, 1
	}
	if m.lines[which] != 0 {
		d.faults.add(FaultDuplicate, line)
		return
	}
	m.lines[which] = line
	for i := range values {
		at := dlyFirst + i*dlyWidth
		if at+5 > len(l) {
			d.faults.add(FaultShortRow, line)
			return
		}
		v, err := strconv.Atoi(strings.TrimSpace(l[at : at+5]))
		switch {
		case err != nil:
			d.faults.add(FaultNumber, line)
		case v == dlyNone:
		case at+6 < len(l) && l[at+6] != ' ':
			d.faults.add(FaultQuality, line)
		default:
			values[i] = float64(v)
		}
	}
}

// ofStation reports whether a row is of the station that is read, which is the
// one asked for or else the first.
func (d *dailyReader) ofStation(id string, line int) bool {
	if d.report.Station == "" {
		d.report.Station = id
		if d.options.Station != "" {
			d.report.Station = d.options.Station
		}
	}
	if id == d.report.Station {
		return true
	}
	d.faults.add(FaultStation, line)
	if len(d.report.OtherStations) < ShownLines && !slices.Contains(d.report.OtherStations, id) {
		d.report.OtherStations = append(d.report.OtherStations, id)
	}
	return false
}
