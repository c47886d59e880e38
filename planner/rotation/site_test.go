package rotation_test

import (
	"encoding/csv"
	"math"
	"os"
	"strconv"
	"strings"
	"testing"

	"fourturn/planner/civil"
	"fourturn/planner/quantity"
	"fourturn/planner/rotation"
)

// table reads a published table as rows by column name.
func table(t testing.TB, name string) []map[string]string {
	t.Helper()
	file, err := os.Open("../../testdata/published/" + name)
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	rows, err := csv.NewReader(file).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	var list []map[string]string
	for _, row := range rows[1:] {
		named := make(map[string]string)
		for i, column := range rows[0] {
			named[column] = row[i]
		}
		list = append(list, named)
	}
	return list
}

func number(t testing.TB, s string) float64 {
	t.Helper()
	if s == "" {
		return 0
	}
	x, err := strconv.ParseFloat(s, 64)
	if err != nil {
		t.Fatal(err)
	}
	return x
}

// normalsOf draws a straight line through the middles of the months.
func normalsOf(t testing.TB, site map[string]string, from civil.Date, days int) rotation.Normals {
	t.Helper()
	daily := func(column string) []float64 {
		var months [12]float64
		for m := range months {
			months[m] = number(t, site[column+"_"+[]string{"01", "02", "03", "04", "05", "06", "07", "08", "09", "10", "11", "12"}[m]])
		}
		values := make([]float64, days)
		for i := range values {
			x := float64(from.AddDays(i).YearDay())/365.25*12 - 0.5
			k := math.Floor(x)
			f := x - k
			values[i] = months[(int(k)+12)%12]*(1-f) + months[(int(k)+13)%12]*f
		}
		return values
	}
	n := rotation.Normals{From: from, Tmin: daily("tmin"), Tmax: daily("tmax")}
	winter, summer := number(t, site["sd_winter"]), number(t, site["sd_summer"])
	midwinter := 15.0
	if strings.HasPrefix(site["lat"], "-") {
		midwinter += 182
	}
	n.TminSD = make([]float64, days)
	for i := range n.TminSD {
		phase := 2 * math.Pi * (float64(from.AddDays(i).YearDay()) - midwinter) / 365.25
		n.TminSD[i] = (winter+summer)/2 + (winter-summer)/2*math.Cos(phase)
	}
	return n
}

func outlookOf(t testing.TB, name string, from civil.Date, days int) *rotation.Outlook {
	t.Helper()
	for _, site := range table(t, "rotation_sites.csv") {
		if site["site"] == name {
			climate, err := rotation.NewClimate(normalsOf(t, site, from, days), nil)
			if err != nil {
				t.Fatal(err)
			}
			return rotation.NewOutlook(climate, rotation.DefaultParams())
		}
	}
	t.Fatalf("no site %s", name)
	return nil
}

// plantsOf reads the plants of the test; sold half a year later in the south.
func plantsOf(t testing.TB, from civil.Date, days int, south bool) map[string]*rotation.Plant {
	t.Helper()
	plants := make(map[string]*rotation.Plant)
	for _, row := range table(t, "rotation_plants.csv") {
		degrees := func(column string) quantity.Temperature { return quantity.Temperature(number(t, row[column])) }
		p := &rotation.Plant{
			ID: row["id"], Family: row["family"],
			Lowest: degrees("lowest_c"), PlantOut: degrees("plant_out_c"), HeatLimit: degrees("heat_limit_c"),
			Base: degrees("base_c"), Optimum: degrees("optimum_c"),
			Hardened:     true,
			DisplayWeeks: number(t, row["display_weeks"]),
			Sizes: []rotation.Size{{
				Name: "10 cm", WeeksToFull: number(t, row["weeks_to_full"]),
				Fullness: number(t, row["fullness"]), Price: number(t, row["price"]),
			}},
		}
		switch row["kind"] {
		case "cut":
			p.Cut = true
		case "bulb":
			p.Bulb = &rotation.Bulb{ChillWeeks: 12, ChillBelow: 9, HeatSum: 400}
			p.HeatLimit = 100
		case "evergreen":
			p.Overwinters, p.RootLimit = true, -9.4
		}
		if sold := row["sold_north"]; sold != "" {
			first, last, _ := strings.Cut(sold, "/")
			for year := from.Year() - 1; year <= from.AddDays(days).Year()+1; year++ {
				w := rotation.Window{
					From: civil.MustParseMonthDay(first).In(year),
					To:   civil.MustParseMonthDay(last).In(year),
				}
				if south {
					w.From, w.To = w.From.AddMonths(6), w.To.AddMonths(6)
				}
				p.Sold = append(p.Sold, w)
			}
		}
		p.Shows = seasonsOf(row["display_seasons"], from, days, south)
		plants[p.ID] = p
	}
	return plants
}

func single(p *rotation.Plant) rotation.Planting {
	return rotation.Planting{ID: p.ID, Parts: []rotation.Part{{Plant: p, Share: 1, Role: rotation.Filler, Count: 5}}}
}

func requestFor(t testing.TB, site string, today, until civil.Date) rotation.Request {
	t.Helper()
	from := today.AddDays(-200)
	days := int(until-from) + 120
	south := site == "brisbane"
	plants := plantsOf(t, from, days, south)
	req := rotation.Request{
		Today: today, Until: until,
		Members: []rotation.Member{{
			Outlook: outlookOf(t, site, from, days),
			Costs:   rotation.Costs{ChangeOut: 8, ReplaceMix: 15},
		}},
		PerYear: 4,
		Weights: rotation.DefaultWeights(),
		Lingers: rotation.DefaultLingers(),
		Risk:    0.10,
	}
	for _, id := range []string{"pansy", "snapdragon", "kale", "mum", "petunia", "begonia", "impatiens", "vinca", "lantana", "spruce_tips"} {
		req.Candidates = append(req.Candidates, single(plants[id]))
	}
	return req
}

// seasonsOf turns the seasons that a plant is grown for into days, by the months of
// the meteorologist: spring from March, or from September in the south.
func seasonsOf(list string, from civil.Date, days int, south bool) []rotation.Window {
	first := map[string]string{"Sp": "03-01", "Su": "06-01", "Fa": "09-01", "Wi": "12-01"}
	var windows []rotation.Window
	for _, season := range strings.Split(list, "/") {
		for year := from.Year() - 1; year <= from.AddDays(days).Year()+1; year++ {
			w := rotation.Window{From: civil.MustParseMonthDay(first[season]).In(year)}
			if south {
				w.From = w.From.AddMonths(6)
			}
			w.To = w.From.AddMonths(3).AddDays(-1)
			windows = append(windows, w)
		}
	}
	return windows
}
