package climate_test

import (
	"bufio"
	"bytes"
	"os"
	"os/exec"
	"regexp"
	"strconv"
	"testing"
	"time"

	"fourturn/planner/civil"
	"fourturn/planner/climate"
	"fourturn/planner/climate/climatetest"
	"fourturn/planner/quantity"
)

// A start of the program pays nothing for the tables: the package's share of the
// start, as the runtime itself counts it, is small, and the tables are 250 kB
// packed and several megabytes unpacked.
func TestStartCostsNothing(t *testing.T) {
	cmd := exec.Command(os.Args[0], "-test.run=^$")
	cmd.Env = append(os.Environ(), "GODEBUG=inittrace=1")
	var stderr bytes.Buffer
	cmd.Stderr = &stderr
	if err := cmd.Run(); err != nil {
		t.Fatal(err)
	}
	m := regexp.MustCompile(`init fourturn/planner/climate @.* (\d+) bytes, (\d+) allocs`).FindSubmatch(stderr.Bytes())
	if m == nil {
		t.Log("the package does nothing at all at the start")
		return
	}
	size, _ := strconv.Atoi(string(m[1]))
	t.Logf("%d bytes in %s allocations at the start", size, m[2])
	if size > 32<<10 {
		t.Errorf("%d bytes are taken at the start", size)
	}
}

// everything works out what the Site screen shows of a climate.
func everything(c *climate.Climate) int {
	n := 0
	for _, threshold := range []quantity.Temperature{-4.4, -2.2, 0, 2.2} {
		o := c.Freeze(threshold)
		for _, risk := range risks {
			n += len(o.LastFreeze(risk).Day.String()) + len(o.FirstFreeze(risk).Day.String()) + o.FreeDays(risk).Days
		}
	}
	n += c.Seasons(climate.Cautious).List[1].Days
	n += int(c.HotDays(30).Days) + int(c.HeatZone()) + int(c.HardinessZone())
	n += int(c.ProbMinBelow(0)[0] + c.ReferenceETYear()[0] + c.Daily().Tmin[0])
	n += int(c.HotSpellOdds(climate.HotSpell{Above: 26.7, Days: 5}, civil.MonthDay{Month: 1, Day: 1})[200])
	return n
}

// Reading seventy years and working everything out, as ratios to only counting the
// lines of the file and to only reading it.
func BenchmarkRecord(b *testing.B) {
	text := climatetest.Text(b, "USW00094728")
	place := climate.Place{Latitude: 40.78, Longitude: -73.97, Elevation: 40}
	var lines, reading, whole, digest time.Duration
	sink := 0
	for b.Loop() {
		start := time.Now()
		scan := bufio.NewScanner(bytes.NewReader(text))
		for scan.Scan() {
			sink++
		}
		lines += time.Since(start)

		start = time.Now()
		r, _, err := climate.ReadDaily(bytes.NewReader(text), climate.ReadOptions{})
		if err != nil {
			b.Fatal(err)
		}
		reading += time.Since(start)

		start = time.Now()
		c, err := climate.New(climate.Input{Record: r, RecordYears: 100, Place: &place})
		if err != nil {
			b.Fatal(err)
		}
		sink += everything(c)
		whole += time.Since(start)

		start = time.Now()
		d, err := r.Digest("own", false, 100)
		if err != nil {
			b.Fatal(err)
		}
		sink += len(d.Freezes)
		digest += time.Since(start)
	}
	_ = sink
	b.ReportMetric(float64(digest)/float64(reading), "digest-x-reading")
	b.ReportMetric(float64(reading+whole)/float64(lines), "x-counting-lines")
	b.ReportMetric(float64(reading+whole)/float64(reading), "x-reading")
}

// The climate of a station and everything of it, as a ratio to its smooth curve
// alone.
func BenchmarkStation(b *testing.B) {
	s := station(b, "Chicago")
	climate.Smooth(s.Means.Tmin) // the matrix is made once
	var curve, whole time.Duration
	sink := 0
	for b.Loop() {
		start := time.Now()
		climate.Smooth(s.Means.Tmin)
		curve += time.Since(start)
		start = time.Now()
		sink += everything(climate.FromStation(s))
		whole += time.Since(start)
	}
	_ = sink
	b.ReportMetric(float64(whole)/float64(curve), "x-smooth-curve")
}

// A search as a person types, as a ratio to folding every name anew.
func BenchmarkFind(b *testing.B) {
	var search, walk time.Duration
	n := 0
	climate.Find("a", 1)
	for b.Loop() {
		start := time.Now()
		n += len(climate.Find("san fr", 10))
		search += time.Since(start)
		start = time.Now()
		for _, s := range climate.Stations() {
			n += len(s.Name)
		}
		walk += time.Since(start)
	}
	_ = n
	b.ReportMetric(float64(search)/float64(walk), "x-walking-the-table")
}
