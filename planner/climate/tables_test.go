package climate_test

import (
	"compress/gzip"
	"encoding/csv"
	"math"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"fourturn/planner/civil"
	"fourturn/planner/climate"
	"fourturn/planner/quantity"
)

// published reads a table of testdata/published with its columns by name.
func published(t testing.TB, name string) []map[string]string {
	t.Helper()
	f, err := os.Open(filepath.Join("..", "..", "testdata", "published", name))
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	records, err := csv.NewReader(f).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	var rows []map[string]string
	for _, r := range records[1:] {
		row := map[string]string{}
		for i, column := range records[0] {
			row[column] = r[i]
		}
		rows = append(rows, row)
	}
	if len(rows) == 0 {
		t.Fatalf("%s has no rows", name)
	}
	return rows
}

func num(t testing.TB, s string) float64 {
	t.Helper()
	v, err := strconv.ParseFloat(s, 64)
	if err != nil {
		t.Fatal(err)
	}
	return v
}

// later returns by how many days a comes after b in the round of the year.
func later(a, b civil.MonthDay) int {
	d := climate.MonthDayIndex(a) - climate.MonthDayIndex(b)
	return (d+182+365)%365 - 182
}

// fahrenheit returns a threshold as the tables mean it, rounded to a tenth of a
// degree Celsius as the daily series are.
func fahrenheit(t testing.TB, s string) float64 {
	t.Helper()
	return math.Round(float64(quantity.FromFahrenheit(num(t, s)))*10) / 10
}

// freezeTables groups NOAA's complete tables by station, period and threshold.
func freezeTables(t testing.TB) map[string][]climate.FreezeDates {
	t.Helper()
	byStation := map[string]map[string]*climate.FreezeDates{}
	for _, row := range published(t, "climate_freeze.csv") {
		if row["element"] == "PRBGSL" {
			continue
		}
		key := row["ghcn_id"] + " " + row["period"]
		if byStation[key] == nil {
			byStation[key] = map[string]*climate.FreezeDates{}
		}
		d := byStation[key][row["threshold_F"]]
		if d == nil {
			d = &climate.FreezeDates{Threshold: fahrenheit(t, row["threshold_F"])}
			byStation[key][row["threshold_F"]] = d
		}
		for p := 1; p <= 9; p++ {
			level := climate.FreezeLevel{Odds: float64(p) / 10, Day: civil.MustParseMonthDay(row["p"+strconv.Itoa(p)+"0"])}
			if row["element"] == "PRBLST" {
				d.Last = append(d.Last, level)
			} else {
				d.First = append(d.First, level)
			}
		}
	}
	tables := map[string][]climate.FreezeDates{}
	for key, m := range byStation {
		for _, d := range m {
			tables[key] = append(tables[key], *d)
		}
	}
	return tables
}

// baseOf returns the station that the tables of Lebanon NH (and of Westchester NY, not
// in the station table) are laid upon.
func baseOf(t testing.TB, key string) climate.Station {
	t.Helper()
	if strings.HasPrefix(key, "USW00094745") {
		return station(t, "New York JFK")
	}
	return station(t, "Lebanon NH")
}

// rawTable reads the embedded station table as text, apart from the package.
func rawTable(t testing.TB) []map[string]string {
	t.Helper()
	f, err := os.Open("data/stations.csv.gz")
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	zip, err := gzip.NewReader(f)
	if err != nil {
		t.Fatal(err)
	}
	records, err := csv.NewReader(zip).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	var rows []map[string]string
	for _, r := range records[1:] {
		row := map[string]string{}
		for i, column := range records[0] {
			row[column] = r[i]
		}
		rows = append(rows, row)
	}
	return rows
}
