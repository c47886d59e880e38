package climate

import (
	"bytes"
	"compress/gzip"
	"io"
	"testing"
	"time"
)

// Unpacking both tables, as a ratio to only inflating them. It happens once, on
// first use.
func BenchmarkUnpack(b *testing.B) {
	var inflate, whole time.Duration
	for b.Loop() {
		start := time.Now()
		for _, zipped := range [][]byte{stationsGzip, freezesGzip} {
			zip, err := gzip.NewReader(bytes.NewReader(zipped))
			if err != nil {
				b.Fatal(err)
			}
			if _, err := io.Copy(io.Discard, zip); err != nil {
				b.Fatal(err)
			}
		}
		inflate += time.Since(start)
		start = time.Now()
		unpack(stationsGzip, readStation)
		unpack(freezesGzip, readFreezeStation)
		whole += time.Since(start)
	}
	b.ReportMetric(float64(whole)/float64(inflate), "x-inflating")
}
