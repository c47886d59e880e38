package vessel_test

import (
	"encoding/csv"
	"os"
	"strconv"
	"testing"

	"fourturn/planner/quantity"
	"fourturn/planner/vessel"
)

// ready returns the pots that rows of published values name.
func ready(t *testing.T) map[string]vessel.Spec {
	t.Helper()
	windowBox := func(length quantity.Length) vessel.Spec {
		const side = 6 * quantity.Inch
		return vessel.Spec{Kind: vessel.Trough, TopLength: length, BottomLength: length, TopWidth: side, BottomWidth: side, Height: side}
	}
	pots := map[string]vessel.Spec{
		"round_10x14_cylinder": {Kind: vessel.Cylinder, TopDiameter: 10 * quantity.Inch, Height: 14 * quantity.Inch},
		"window_box_6ft":       windowBox(6 * quantity.Foot),
		"window_box_4ft":       windowBox(4 * quantity.Foot),
	}
	for _, n := range vessel.Nominals() {
		pots[n.Key[len("vessel.nominal."):]] = n.Spec
	}
	return pots
}

func TestPublishedVolumes(t *testing.T) {
	file, err := os.Open("../../testdata/published/vessel.csv")
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	rows, err := csv.NewReader(file).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	number := func(s string) quantity.Volume {
		x, err := strconv.ParseFloat(s, 64)
		if err != nil {
			t.Fatal(err)
		}
		return quantity.Volume(x)
	}
	pots, classes := ready(t), map[string]vessel.Nominal{}
	for _, n := range vessel.Nominals() {
		classes[n.Key[len("vessel.nominal."):]] = n
	}
	for _, row := range rows[1:] {
		name, low, high, check, source := row[0], number(row[1]), number(row[2]), row[3], row[4]
		if check == "in_class" || check == "not_in_class" {
			n := classes[name]
			if within := low >= n.Low && low <= n.High; within != (check == "in_class") || !n.Class {
				t.Errorf("%s: %v L is %s, the class is %v to %v (%s)", name, low, check, n.Low, n.High, source)
			}
			continue
		}
		spec, known := pots[name]
		if !known {
			t.Errorf("%s: no such pot", name)
			continue
		}
		v, err := vessel.New(spec)
		if err != nil {
			t.Errorf("%s: %v", name, err)
			continue
		}
		volume := v.BrimVolume()
		if check == "fill" {
			volume = v.FillVolume()
		}
		if within := volume >= low && volume <= high; within == (check == "not") {
			t.Errorf("%s %s: %.3f L, published %v to %v (%s)", name, check, volume, low, high, source)
		}
	}
}

// Ready dimensions are good, and say where their volumes and proportions are from.
func TestNominalsAreGood(t *testing.T) {
	seen := map[string]bool{}
	for _, n := range vessel.Nominals() {
		v, err := vessel.New(n.Spec)
		if err != nil {
			t.Errorf("%s: %v", n.Key, err)
			continue
		}
		if n.Class && (v.BrimVolume() < n.Low || v.BrimVolume() > n.High) {
			t.Errorf("%s holds %v, its class is %v to %v", n.Key, v.BrimVolume(), n.Low, n.High)
		}
		if seen[n.Key] || n.Low > n.High || n.Source.Cite == "" || n.Proportions.Cite == "" {
			t.Errorf("%s stands twice, or lacks a range or a source: %+v", n.Key, n)
		}
		seen[n.Key] = true
	}
}
