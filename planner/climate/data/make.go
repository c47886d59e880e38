//go:build ignore

// Make writes the two embedded tables from the compiled reference tables:
//
//	go run make.go stations.csv stations_all.csv us_freeze_1981_2010.csv
//
// It leaves out rows whose licence was not read anywhere (the daily series of
// three national services), puts in the nearest freely licensed neighbour where
// there is one, drops columns that the planner does not use, and compresses
// without a time stamp, so that the same input gives the same bytes.
package main

import (
	"bytes"
	"compress/gzip"
	"encoding/csv"
	"fmt"
	"log"
	"os"
	"sort"
	"strings"
)

// leftOut are stations computed from daily series whose licence is only general
// knowledge, not read in the copy or at the publisher.
var leftOut = map[string]bool{"AU066062": true, "CA1018935": true, "FR069029001": true, "FR000007130": true}

// putIn are their freely licensed neighbours from the long table.
var putIn = map[string]bool{"WMO94767": true, "WMO71783": true, "WMO07481": true}

// alsoKnownAs are names that people search for, beside the spelling of the table.
var alsoKnownAs = map[string]string{
	"Agana": "Hagatna", "Arhangelsk": "Arkhangelsk", "Bangalore": "Bengaluru", "Bruessel (Uccle)": "Brussels Bruxelles Brussel",
	"Bucuresti Baneasa": "Bucharest", "Busan": "Pusan", "Carnavon": "Carnarvon", "Dublin/Casement Airport": "Baile Atha Cliath",
	"Geneve Airport": "Geneva Genf", "Ghardaja Airport": "Ghardaia", "Goose": "Goose Bay Happy Valley",
	"Guangzhou": "Canton", "Heathrow": "London", "Hurn": "Bournemouth", "Isla de Pascua": "Easter Island Rapa Nui",
	"Kasan": "Kazan", "Kashi": "Kashgar", "Kiev": "Kyiv", "Koeln/Bonn": "Cologne", "Kokos Inseln": "Cocos Islands",
	"Krakow-Balice": "Cracow", "Lisbon": "Lisboa", "Moskva": "Moscow", "Mumbai/Colaba": "Bombay", "Muenchen-Stadt": "Munich",
	"Nuernberg": "Nuremberg", "Ojmjakon": "Oymyakon", "Paisley": "Glasgow", "Polokwane (Pietersburg)": "Pietersburg",
	"Pomezia/Pratica di Mare": "Rome Roma", "Ponape": "Pohnpei", "Port Elizabeth": "Gqeberha", "Porto Santo Airport": "Madeira",
	"Praha-Libus": "Prague", "Pudahuel": "Santiago de Chile", "Sevilla Airport": "Seville", "Sutton Bonington": "Nottingham",
	"Tokio": "Tokyo", "Toronto City": "Toronto", "Triest": "Trieste", "Turuhansk": "Turukhansk", "Verhojansk": "Verkhoyansk",
	"Vlissingen": "Flushing", "Warszawa-Okecie": "Warsaw", "Wien": "Vienna", "Wu Lu Mu Qi (Urumtschi)": "Urumqi",
	"Zuerich/Fluntern": "Zurich", "Hato Intern. Airport": "Willemstad", "Lajes/Acores": "Azores", "Denpasar/Sunda-Inseln": "Bali",
	"Lima/Callao": "Lima", "Colombo": "Sri Jayawardenepura", "Armagh": "Northern Ireland", "Yeovilton": "Yeovil Somerset",
	"Waddington": "Lincoln", "Shawbury": "Shrewsbury", "Manston": "Ramsgate Kent", "Leuchars": "St Andrews Fife Dundee",
	"Camborne": "Cornwall", "Chivenor": "Barnstaple Devon", "Valley": "Anglesey", "Hutag": "Khutag",
}

// respelled mends spellings of the table that no gazetteer has.
var respelled = map[string]string{"Carnavon": "Carnarvon", "Tokio": "Tokyo", "Kasan": "Kazan", "Triest": "Trieste"}

// countries are plain names for the table's.
var countries = map[string]string{
	"United Arab. Emirates": "United Arab Emirates", "Caroline-Islands": "Micronesia",
	"Marshall-Islands": "Marshall Islands", "Wallis-Islands": "Wallis and Futuna",
}

func main() {
	if len(os.Args) != 4 {
		log.Fatal("usage: go run make.go stations.csv stations_all.csv us_freeze_1981_2010.csv")
	}
	stations(os.Args[1], os.Args[2])
	freezes(os.Args[3])
}

func stations(curated, all string) {
	var rows []map[string]string
	for _, r := range read(curated) {
		if !leftOut[r["station_id"]] {
			rows = append(rows, r)
		}
	}
	for _, r := range read(all) {
		if putIn[r["station_id"]] {
			rows = append(rows, r)
		}
	}
	sort.Slice(rows, func(i, j int) bool { return rows[i]["station_id"] < rows[j]["station_id"] })
	columns := []string{"station_id", "name", "also", "country", "admin", "lat", "lon", "elev_m"}
	for _, kind := range []string{"tmax", "tmin", "prcp"} {
		for m := 1; m <= 12; m++ {
			columns = append(columns, fmt.Sprintf("%s_%02d", kind, m))
		}
	}
	for _, at := range []string{"0C", "m2.2C"} {
		for _, kind := range []string{"last", "first"} {
			for _, p := range []string{"p10", "p50", "p90"} {
				columns = append(columns, kind+"_freeze_"+at+"_"+p)
			}
		}
	}
	columns = append(columns, "freeze_source", "ann_ext_min_c", "n_ext_years", "zone", "source", "normals_period", "n_years_min")
	for _, r := range rows {
		r["also"] = alsoKnownAs[r["name"]]
		if s, ok := respelled[r["name"]]; ok {
			r["name"] = s
		}
		if s, ok := countries[r["country"]]; ok {
			r["country"] = s
		}
		r["name"] = strings.NewReplacer("Airp.)", "Airport)", "Intern.", "International").Replace(r["name"])
		if strings.HasPrefix(r["source"], "daily:IE") {
			r["source"] = "MET-EIREANN"
		}
		if strings.HasPrefix(r["source"], "daily:US") {
			r["source"] = "GHCN-DAILY"
		}
		r["freeze_source"] = freezeSource(r["freeze_source"])
	}
	write("stations.csv.gz", columns, rows)
}

// freezeSource shortens the reference's words to a code.
func freezeSource(s string) string {
	switch {
	case s == "":
		return ""
	case strings.Contains(s, "-4444"):
		return "noaa_8110_all_year"
	case strings.Contains(s, "-6666"):
		return "noaa_8110_rare"
	case strings.HasPrefix(s, "NOAA NCEI 1981-2010"):
		return "noaa_8110"
	case strings.HasPrefix(s, "NOAA NCEI 1991-2020"):
		return "noaa_9120"
	case strings.HasPrefix(s, "computed from daily series"):
		return "daily"
	}
	log.Fatalf("unknown freeze source %q", s)
	return ""
}

func freezes(path string) {
	rows := read(path)
	sort.Slice(rows, func(i, j int) bool { return rows[i]["ghcn_id"] < rows[j]["ghcn_id"] })
	write("us_freeze.csv.gz", []string{
		"ghcn_id", "name", "state", "lat", "lon", "elev_m", "last_32F_p50", "last_32F_p90", "first_32F_p50",
		"first_32F_p90", "gsl_32F_p50_days", "gsl_32F_p90_days", "completeness_flag", "special",
	}, rows)
}

func read(path string) []map[string]string {
	f, err := os.Open(path)
	if err != nil {
		log.Fatal(err)
	}
	defer f.Close()
	records, err := csv.NewReader(f).ReadAll()
	if err != nil {
		log.Fatal(path, ": ", err)
	}
	var rows []map[string]string
	for _, rec := range records[1:] {
		row := map[string]string{}
		for i, name := range records[0] {
			row[name] = rec[i]
		}
		rows = append(rows, row)
	}
	return rows
}

func write(path string, columns []string, rows []map[string]string) {
	var out bytes.Buffer
	zip, err := gzip.NewWriterLevel(&out, gzip.BestCompression)
	if err != nil {
		log.Fatal(err)
	}
	w := csv.NewWriter(zip)
	check(w.Write(columns))
	for _, r := range rows {
		rec := make([]string, len(columns))
		for i, c := range columns {
			v, ok := r[c]
			if !ok {
				log.Fatalf("%s: no column %q", path, c)
			}
			rec[i] = v
		}
		check(w.Write(rec))
	}
	w.Flush()
	check(w.Error())
	check(zip.Close())
	check(os.WriteFile(path, out.Bytes(), 0o644))
	fmt.Println(path, len(rows), "rows", out.Len(), "bytes")
}

func check(err error) {
	if err != nil {
		log.Fatal(err)
	}
}
