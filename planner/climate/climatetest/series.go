// Package climatetest opens the daily series of the shared test data, for the tests of
// all that reads a person's own record.
package climatetest

import (
	"bytes"
	"compress/gzip"
	"io"
	"os"
	"path/filepath"
	"testing"

	"fourturn/planner/climate"
)

// Text returns a daily series, such as "USW00094728", as the text that a person would
// import.
func Text(tb testing.TB, id string) []byte {
	tb.Helper()
	f, err := os.Open(find(tb, id+".csv.gz"))
	if err != nil {
		tb.Fatal(err)
	}
	defer f.Close()
	zip, err := gzip.NewReader(f)
	if err != nil {
		tb.Fatal(err)
	}
	text, err := io.ReadAll(zip)
	if err != nil {
		tb.Fatal(err)
	}
	return text
}

// Record reads a daily series as a person would import it.
func Record(tb testing.TB, id string) *climate.Record {
	tb.Helper()
	r, _, err := climate.ReadDaily(bytes.NewReader(Text(tb, id)), climate.ReadOptions{})
	if err != nil {
		tb.Fatal(err)
	}
	return r
}

// find returns the path of a file of testdata/climate from wherever the test runs.
func find(tb testing.TB, name string) string {
	tb.Helper()
	folder, err := os.Getwd()
	if err != nil {
		tb.Fatal(err)
	}
	for {
		path := filepath.Join(folder, "testdata", "climate", name)
		if _, err := os.Stat(path); err == nil {
			return path
		}
		parent := filepath.Dir(folder)
		if parent == folder {
			tb.Fatalf("there is no testdata/climate/%s", name)
		}
		folder = parent
	}
}
