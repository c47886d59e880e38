package climate_test

import (
	"bytes"
	"fmt"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"fourturn/planner/civil"
	"fourturn/planner/climate"
)

// FAO-56 Example 8 (p. 80): 20° S on 3 September (day 246): Ra = 32.2 MJ m⁻² d⁻¹.
func ExampleExtraterrestrial() {
	fmt.Printf("%.1f\n", climate.Extraterrestrial(-20, 246))
	// Output: 32.2
}

// FAO-56 Example 9 (p. 83): the same place and day have N = 11.7 hours.
func ExampleDaylightHours() {
	fmt.Printf("%.1f\n", climate.DaylightHours(-20, 246))
	// Output: 11.7
}

// FAO-56 Example 10 (p. 84): Rio de Janeiro, 22°54′ S, 15 May, 7.1 hours of sun:
// Ra 25.1, N 10.9, Rs 14.5 MJ m⁻² d⁻¹.
func ExampleSolarFromSunshine() {
	ra, n := climate.Extraterrestrial(-22.9, 135), climate.DaylightHours(-22.9, 135)
	fmt.Printf("%.1f %.1f %.1f\n", ra, n, climate.SolarFromSunshine(ra, 7.1, n))
	// Output: 25.1 10.9 14.5
}

// FAO-56 Example 15 (p. 98): Lyon in July, 26.6 and 14.8 °C, Ra 40.6, inland:
// Rs = 22.3 MJ m⁻² d⁻¹.
func ExampleSolarFromTemperature() {
	fmt.Printf("%.1f\n", climate.SolarFromTemperature(40.6, 26.6, 14.8, 0.16))
	// Output: 22.3
}

// FAO-56 Example 18 (p. 113): Uccle, 50°48′ N, 100 m, 6 July (day 187): 21.5 and
// 12.3 °C, humidity 84 and 63 %, wind 10 km/h at 10 m, 9.25 hours of sun. Printed:
// ea 1.409 kPa, u2 2.078 m/s, Ra 41.09, Rso 30.90, Rn 13.28, ETo 3.9 mm/d.
func ExamplePenmanMonteith() {
	ra := climate.Extraterrestrial(50.8, 187)
	w := climate.Weather{
		Tmin: 12.3, Tmax: 21.5, Extra: ra, Elevation: 100,
		VapourPressure: (climate.SaturationPressure(12.3)*0.84 + climate.SaturationPressure(21.5)*0.63) / 2,
		Wind:           climate.WindAt2m(10/3.6, 10),
		Solar:          climate.SolarFromSunshine(ra, 9.25, climate.DaylightHours(50.8, 187)),
	}
	fmt.Printf("%.3f %.3f %.2f %.2f %.2f %.1f\n", w.VapourPressure, w.Wind, ra,
		climate.ClearSky(ra, 100), climate.NetRadiation(w), climate.PenmanMonteith(w))
	// Output: 1.409 2.078 41.09 30.90 13.28 3.9
}

// FAO-56 Example 20 (p. 121): Lyon, 45°43′ N, 200 m, July with temperatures alone:
// 26.6 and 14.8 °C, wind 2 m/s, dew point at the minimum. Penman-Monteith gives
// 4.56 mm/d, Hargreaves 5.0 mm/d (answers from memory of the paper, arithmetic
// checked; inputs read).
func ExampleHargreaves() {
	w := climate.Weather{
		Tmin: 14.8, Tmax: 26.6, Extra: 40.6, Elevation: 200, Wind: 2,
		VapourPressure: climate.SaturationPressure(14.8),
		Solar:          climate.SolarFromTemperature(40.6, 26.6, 14.8, 0.16),
	}
	fmt.Printf("%.1f %.1f\n", climate.PenmanMonteith(w), climate.Hargreaves((26.6+14.8)/2, 26.6, 14.8, 40.6))
	// Output: 4.6 5.0
}

// Mehta 2006, Estimating evapotranspiration from weather data (Cornell): 28 and
// 38 °C, mean 35, Ra 38.93715: 6.1 mm/d.
func TestHargreavesElsewhere(t *testing.T) {
	if got := climate.Hargreaves(35, 38, 28, 38.93715); math.Abs(got-6.1) > 0.05 {
		t.Errorf("%.3f mm/d, want 6.1", got)
	}
}

// minutes is how far a day length may be from the almanac's. Where the sun runs
// along the horizon a little declination is many minutes: there the limit is
// wider.
func minutes(latitude, hours float64) float64 {
	if math.Abs(latitude) > 60 && (hours < 3 || hours > 21) {
		return 5
	}
	return 0.5
}

// 60 latitudes and dates against an almanac library; see the table for how it was
// made.
func TestDayLengthAgainstAlmanac(t *testing.T) {
	rows := published(t, "climate_daylength.csv")
	if len(rows) != 60 {
		t.Errorf("%d rows, want 60", len(rows))
	}
	worst := 0.0
	for _, row := range rows {
		worst = max(worst, compareDay(t, num(t, row["latitude"]), row["date"], row["hours"]))
	}
	t.Logf("worst: %.2f minutes", worst)
}

func compareDay(t *testing.T, latitude float64, date, want string) float64 {
	t.Helper()
	got := climate.DayLength(latitude, civil.MustParse(date))
	switch want {
	case "never_up", "never_sets":
		if got.NeverUp != (want == "never_up") || got.NeverSets != (want == "never_sets") {
			t.Errorf("%g on %s: %+v, almanac %s", latitude, date, got, want)
		}
		return 0
	}
	hours := num(t, want)
	off := math.Abs(got.Hours-hours) * 60
	if off > minutes(latitude, hours) {
		t.Errorf("%g on %s: %.4f h, almanac %.4f h: %.1f minutes", latitude, date, got.Hours, hours, off)
	}
	return off
}

// The same comparison with the library itself, at other dates, where it is
// installed; a continuous-integration run must have it.
func TestDayLengthAgainstLiveAlmanac(t *testing.T) {
	python := "/usr/bin/python3" // Debian's own, which has Debian's packages
	if err := exec.Command(python, "-c", "import astral; astral.Astral").Run(); err != nil {
		if os.Getenv("CI") != "" {
			t.Fatal("python3-astral is not installed: apt-get install python3-astral")
		}
		t.Skip("python3-astral is not installed (apt-get install python3-astral): the live comparison is left out")
	}
	var in strings.Builder
	for i := range 60 {
		latitude := -60 + 2*float64(i)
		date := civil.MustParse("2026-01-01").AddDays(i * 61)
		fmt.Fprintf(&in, "%g %s\n", latitude, date)
	}
	cmd := exec.Command(python, filepath.Join("..", "..", "testdata", "climate", "daylength.py"))
	cmd.Stdin = strings.NewReader(in.String())
	out, err := cmd.Output()
	if err != nil {
		t.Fatal(err)
	}
	lines := bytes.Split(bytes.TrimSpace(out), []byte("\n"))
	if len(lines) != 60 {
		t.Fatalf("%d lines from the almanac", len(lines))
	}
	for _, line := range lines {
		f := strings.Fields(string(line))
		compareDay(t, num(t, f[0]), f[1], f[2])
	}
}

// Day and night, summer north and winter south: a day's length north and that of
// the same latitude south make a little more than 24 hours together, by
// refraction and the sun's disc: each day by 2 × 0.8333° / (15°/h × cos φ cos δ sin H),
// which at 55° and a solstice is 0.27 h.
func TestDayAndNight(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		latitude := rapid.Float64Range(0, 89).Draw(t, "latitude")
		d := civil.New(1990, 1, 1).AddDays(rapid.IntRange(0, 30000).Draw(t, "day"))
		north, south := climate.DayLength(latitude, d), climate.DayLength(-latitude, d)
		for _, x := range []climate.Daylight{north, south} {
			if !(x.Hours >= 0 && x.Hours <= 24) || x.NeverSets != (x.Hours == 24) || x.NeverUp != (x.Hours == 0) {
				t.Fatalf("%+v", x)
			}
		}
		sum := north.Hours + south.Hours
		if sum < 24 || latitude < 55 && sum > 24.6 {
			t.Fatalf("day north %v h and south %v h", north.Hours, south.Hours)
		}
		if ra := climate.Extraterrestrial(latitude, d.YearDay()); !(ra >= 0 && ra < 50) {
			t.Fatalf("Ra %v", ra)
		}
	})
}
