package climate

import (
	"bytes"
	"compress/gzip"
	_ "embed" // the two tables
	"encoding/csv"
	"fmt"
	"io"
	"slices"
	"strconv"
	"strings"
	"sync"

	"fourturn/planner/civil"
	"fourturn/planner/quantity"
)

//go:embed data/stations.csv.gz
var stationsGzip []byte

//go:embed data/us_freeze.csv.gz
var freezesGzip []byte

// stationTable and freezeTable unpack on first use, so that a start costs nothing.
var (
	stationTable = sync.OnceValue(func() *table[Station] { return unpack(stationsGzip, readStation) })
	freezeTable  = sync.OnceValue(func() *table[FreezeStation] { return unpack(freezesGzip, readFreezeStation) })
)

// Stations returns the built-in table in the order of ids. It is shared: do not
// change it.
func Stations() []Station { return stationTable().rows }

// FreezeStations returns NOAA's US freeze stations in the order of ids. It is
// shared: do not change it.
func FreezeStations() []FreezeStation { return freezeTable().rows }

// StationByID returns the station with an id of the table.
func StationByID(id string) (Station, bool) {
	return stationTable().find(id, func(s *Station) string { return s.ID })
}

// FreezeStationByID returns the freeze station with a GHCN id.
func FreezeStationByID(id string) (FreezeStation, bool) {
	return freezeTable().find(id, func(s *FreezeStation) string { return s.ID })
}

type table[T any] struct{ rows []T }

func (t *table[T]) find(id string, key func(*T) string) (T, bool) {
	i, ok := slices.BinarySearchFunc(t.rows, id, func(row T, id string) int { return strings.Compare(key(&row), id) })
	if !ok {
		var none T
		return none, false
	}
	return t.rows[i], true
}

// unpack reads one embedded table. The table is part of the program: a fault in
// it is a programmer's, and panics.
func unpack[T any](zipped []byte, read func(row) T) *table[T] {
	zip, err := gzip.NewReader(bytes.NewReader(zipped))
	if err != nil {
		panic("climate: embedded table: " + err.Error())
	}
	r := csv.NewReader(zip)
	r.ReuseRecord = true
	header, err := r.Read()
	if err != nil {
		panic("climate: embedded table: " + err.Error())
	}
	columns := map[string]int{}
	for i, name := range header {
		columns[strings.Clone(name)] = i
	}
	t := &table[T]{}
	for {
		fields, err := r.Read()
		if err == io.EOF {
			return t
		}
		if err != nil {
			panic("climate: embedded table: " + err.Error())
		}
		t.rows = append(t.rows, read(row{columns, fields}))
	}
}

// row is one line of an embedded table with its columns by name.
type row struct {
	columns map[string]int
	fields  []string
}

func (r row) text(column string) string {
	i, ok := r.columns[column]
	if !ok {
		panic("climate: embedded table has no column " + column)
	}
	return strings.Clone(r.fields[i])
}

func (r row) number(column string) float64 {
	x, err := strconv.ParseFloat(r.text(column), 64)
	if err != nil {
		panic("climate: embedded table: " + column + ": " + err.Error())
	}
	return x
}

// count reads a whole number, 0 for an empty field.
func (r row) count(column string) int {
	if r.text(column) == "" {
		return 0
	}
	return int(r.number(column))
}

// day reads MM-DD, the zero day for an empty field.
func (r row) day(column string) civil.MonthDay {
	s := r.text(column)
	if s == "" {
		return civil.MonthDay{}
	}
	return civil.MustParseMonthDay(s)
}

func (r row) place() Place {
	return Place{Latitude: r.number("lat"), Longitude: r.number("lon"), Elevation: quantity.Length(r.number("elev_m"))}
}

func readStation(r row) Station {
	s := Station{
		ID: r.text("station_id"), Name: r.text("name"), Also: r.text("also"),
		Country: r.text("country"), Admin: r.text("admin"), Place: r.place(),
		Source: DataSource(r.text("source")), Period: strings.Replace(r.text("normals_period"), "..", " - ", 1),
		MinYears: r.count("n_years_min"), ExtremeFrom: r.count("n_ext_years"),
	}
	for m := range 12 {
		s.Means.Tmax[m] = r.number(fmt.Sprintf("tmax_%02d", m+1))
		s.Means.Tmin[m] = r.number(fmt.Sprintf("tmin_%02d", m+1))
	}
	if r.text("prcp_01") != "" {
		s.Rain = &[12]float64{}
		for m := range 12 {
			s.Rain[m] = r.number(fmt.Sprintf("prcp_%02d", m+1))
		}
	}
	if r.text("ann_ext_min_c") != "" {
		x := r.number("ann_ext_min_c")
		s.ExtremeMin = &x
	}
	s.readFreezes(r)
	return s
}

// readFreezes fills in what the row says of freezes.
func (s *Station) readFreezes(r row) {
	switch code := r.text("freeze_source"); code {
	case "":
		return
	case "noaa_8110", "noaa_8110_rare", "noaa_8110_all_year":
		s.FreezeSource, s.FreezePeriod = SourceNOAA8110, "1981-2010"
		s.FreezeNote = FreezeNote(strings.TrimPrefix(strings.TrimPrefix(code, "noaa_8110"), "_"))
	case "noaa_9120":
		s.FreezeSource, s.FreezePeriod = SourceNOAA9120, "1991-2020"
	case "daily":
		s.FreezeSource, s.FreezePeriod = s.Source, s.Period
		if s.Source != SourceMetEireann {
			s.FreezeSource = SourceGHCN
		}
	default:
		panic("climate: embedded table: unknown freeze source " + code)
	}
	// 28 °F is -2.2 °C after rounding to a tenth, as the daily series are rounded.
	for _, at := range []struct {
		column    string
		threshold float64
	}{{"m2.2C", -2.2}, {"0C", 0}} {
		t := FreezeTable{Threshold: at.threshold}
		for i, level := range []string{"p10", "p50", "p90"} {
			t.Last[i] = r.day("last_freeze_" + at.column + "_" + level)
			t.First[i] = r.day("first_freeze_" + at.column + "_" + level)
		}
		if !t.Last[1].IsZero() && !t.First[1].IsZero() {
			s.Freezes = append(s.Freezes, t)
		}
	}
}

func readFreezeStation(r row) FreezeStation {
	s := FreezeStation{
		ID: r.text("ghcn_id"), Name: titleCase(r.text("name")), State: r.text("state"), Place: r.place(),
		Season: [2]int{r.count("gsl_32F_p50_days"), r.count("gsl_32F_p90_days")}, Flag: r.text("completeness_flag"),
	}
	switch r.text("special") {
	case "-4444":
		s.Note = FreezeAllYear
	case "-6666":
		s.Note = FreezeRare
	}
	s.Freezes.Last[1], s.Freezes.Last[2] = r.day("last_32F_p50"), r.day("last_32F_p90")
	s.Freezes.First[1], s.Freezes.First[2] = r.day("first_32F_p50"), r.day("first_32F_p90")
	return s
}

// titleCase writes the capitals of the freeze table as names are written.
func titleCase(s string) string {
	words := strings.Fields(strings.ToLower(s))
	for i, w := range words {
		words[i] = strings.ToUpper(w[:1]) + w[1:]
	}
	return strings.Join(words, " ")
}
