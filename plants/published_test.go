package plants_test

import (
	"encoding/csv"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"testing"

	"fourturn/planner/quantity"
	"fourturn/plants"
)

// published reads a table of published values as rows of named columns.
func published(t *testing.T, name string) []map[string]string {
	t.Helper()
	f, err := os.Open(filepath.Join("..", "testdata", "published", name))
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	records, err := csv.NewReader(f).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	var rows []map[string]string
	for _, record := range records[1:] {
		row := map[string]string{}
		for i, title := range records[0] {
			row[title] = record[i]
		}
		if row["source"] == "" || row["status"] == "" {
			t.Errorf("%s: a row without source or status: %v", name, record)
		}
		rows = append(rows, row)
	}
	if len(rows) == 0 {
		t.Fatalf("%s has no rows", name)
	}
	return rows
}

func plant(t *testing.T, id string) *plants.Plant {
	t.Helper()
	p, ok := builtin(t).Plant(id)
	if !ok {
		t.Fatalf("the book has no %s", id)
	}
	return p
}

func float(t *testing.T, s string) float64 {
	t.Helper()
	x, err := strconv.ParseFloat(s, 64)
	if err != nil {
		t.Fatal(err)
	}
	return x
}

// expectAgreement checks one row, the exception of which must really be one.
func expectAgreement(t *testing.T, row map[string]string, agrees bool, got any) {
	t.Helper()
	switch {
	case row["exception"] == "" && !agrees:
		t.Errorf("%s: the book says %v, the table %v (%s)", row["plant"], got, row, row["source"])
	case row["exception"] != "" && agrees:
		t.Errorf("%s agrees with %s: no longer an exception", row["plant"], row["source"])
	}
}

func TestFrostClassesAgreeWithPublishedLists(t *testing.T) {
	for _, row := range published(t, "plants_frost.csv") {
		got := string(plant(t, row["plant"]).FrostClass)
		if row["list"] == "northwest" && got == "very_tender" {
			got = "tender" // that list has two classes
		}
		expectAgreement(t, row, got == row["class"], got)
	}
}

func TestTemperaturesAgreeWithPublishedValues(t *testing.T) {
	for _, row := range published(t, "plants_temperature.csv") {
		p := plant(t, row["plant"])
		got, ok := map[string]plants.Maybe[quantity.Temperature]{
			"heat_limit": p.HeatLimit, "planting_out_night": p.PlantingOutNight, "lowest_in_pot": p.LowestInPot,
			"root_zone_limit": p.RootZoneLimit, "base_temperature": p.BaseTemperature,
			"optimum_temperature": p.OptimumTemperature,
		}[row["field"]].Get()
		if !ok || math.Abs(float64(got)-float(t, row["celsius"])) > float(t, row["tolerance"])+0.01 {
			t.Errorf("%s %s: the book says %v (known: %v), published is %s (%s)", row["plant"], row["field"], got, ok, row["celsius"], row["source"])
		}
	}
}

func TestTemperatureClassesAgreeWithPublished(t *testing.T) {
	for _, row := range published(t, "plants_temperature_class.csv") {
		if got := string(plant(t, row["plant"]).TemperatureClass); got != row["class"] {
			t.Errorf("%s is %s, published is %s", row["plant"], got, row["class"])
		}
	}
}

func TestListingsAgreeWithPublishedLists(t *testing.T) {
	for _, row := range published(t, "plants_toxicity.csv") {
		p := plant(t, row["plant"])
		dogs := row["dogs"] == "" || string(p.Toxicity.Dogs) == row["dogs"]
		agrees := dogs && string(p.Toxicity.Cats) == row["cats"]
		expectAgreement(t, row, agrees, p.Toxicity)
		if row["exception"] != "" && (p.Toxicity.Cats != plants.Conflicting || !hasConflict(p, plants.FieldToxicity)) {
			t.Errorf("%s: an exception must be shown as conflicting and keep both versions", p.ID)
		}
	}
}

func hasConflict(p *plants.Plant, f plants.Field) bool {
	return slices.ContainsFunc(p.Conflicts, func(c plants.Conflict) bool { return c.Field == f })
}

func TestDiseaseHostsAgreeWithPublished(t *testing.T) {
	for _, row := range published(t, "plants_disease_hosts.csv") {
		p := plant(t, row["plant"])
		if _, ok := builtin(t).Disease(row["disease"]); !ok {
			t.Fatalf("no disease group %s", row["disease"])
		}
		if got := slices.Contains(p.Diseases, row["disease"]); got != (row["role"] == "host") {
			t.Errorf("%s: host of %s: %v, published: %s (%s)", p.ID, row["disease"], got, row["role"], row["source"])
		}
	}
}

func TestChillAgreesWithPublished(t *testing.T) {
	for _, row := range published(t, "plants_chill.csv") {
		w, ok := plant(t, row["plant"]).Chill.Get()
		if !ok || w.Low != float(t, row["weeks_from"]) || w.High != float(t, row["weeks_to"]) {
			t.Errorf("%s: %v weeks, published %s to %s", row["plant"], w, row["weeks_from"], row["weeks_to"])
		}
	}
}

func TestZonesAgreeWithTheMap(t *testing.T) {
	for _, row := range published(t, "plants_usda_zones.csv") {
		zone := int(float(t, row["zone"][:len(row["zone"])-1]))
		half := row["zone"][len(row["zone"])-1:]
		middle := quantity.FromFahrenheit((float(t, row["low_f"]) + float(t, row["high_f"])) / 2)
		if z, h := plants.HalfZone(middle); z != zone || h != half {
			t.Errorf("%v is zone %d%s, the map says %s", middle, z, h, row["zone"])
		}
		if z, h := plants.HalfZone(quantity.FromFahrenheit(float(t, row["low_f"]))); z != zone || h != half {
			t.Errorf("the low edge of %s is zone %d%s", row["zone"], z, h)
		}
		if low := plants.ZoneLow(zone); half == "a" && math.Abs(float64(low)-float(t, row["low_c"])) > 0.05 {
			t.Errorf("zone %d begins at %v, the map says %s", zone, low, row["low_c"])
		}
	}
	if z, h := plants.HalfZone(-80); z != 1 || h != "a" {
		t.Errorf("-80 °C is zone %d%s", z, h)
	}
	if z, h := plants.HalfZone(40); z != 13 || h != "b" {
		t.Errorf("40 °C is zone %d%s", z, h)
	}
}

// A nursery's worked example of the two-zone rule: in zone 6 choose plants hardy
// to zone 4 (blog.greatgardenplants.com, hardiness of plants in containers).
func ExampleInPot() {
	fmt.Printf("%.1f °C = low edge of zone 6, %.1f °C\n", float64(plants.InPot(4)), float64(plants.ZoneLow(6)))
	// Output: -23.3 °C = low edge of zone 6, -23.3 °C
}

func TestHeatZonesAgreeWithTheMap(t *testing.T) {
	for _, row := range published(t, "plants_heat_zones.csv") {
		for _, days := range []float64{float(t, row["days_from"]), float(t, row["days_to"])} {
			if got := plants.HeatZone(days); got != int(float(t, row["zone"])) {
				t.Errorf("%v days is heat zone %d, the map says %s", days, got, row["zone"])
			}
		}
	}
}

func TestRHSRatingsAgreeWithTheScale(t *testing.T) {
	for _, row := range published(t, "plants_rhs.csv") {
		lowest := 16.0
		switch {
		case row["from_c"] == "":
			lowest = float(t, row["to_c"]) - 0.1
		default:
			lowest = float(t, row["from_c"])
		}
		if got := plants.RHSRating(quantity.Temperature(lowest)); string(got) != row["rating"] {
			t.Errorf("%v °C is %s, the scale says %s", lowest, got, row["rating"])
		}
	}
}
