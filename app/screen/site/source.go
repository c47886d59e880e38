package site

import (
	"strings"

	"fourturn/app/words"
	"fourturn/planner"
	"fourturn/planner/climate"
	"fourturn/planner/finding"
	"fourturn/planner/quantity"
	"fourturn/planner/working"
)

// Station is one place of the climate table.
type Station struct {
	ID    string
	Name  string
	Taken bool // its climate is the site's
}

// Find returns stations whose names fit what was typed, the best first.
func (s *Screen) Find(typed string, limit int) []Station {
	var list []Station
	for _, st := range climate.Find(typed, limit) {
		list = append(list, Station{ID: st.ID, Name: s.words.T("site.station_line", words.A{
			"name": stationName(st), "height": s.height(st.Place.Elevation),
		}), Taken: s.taken(st.ID)})
	}
	return list
}

func stationName(st climate.Station) string {
	parts := []string{st.Name}
	if st.Admin != "" {
		parts = append(parts, st.Admin)
	}
	return strings.Join(append(parts, st.Country), ", ")
}

// taken reports whether the site's climate is that of a station.
func (s *Screen) taken(id string) bool {
	out := s.Outlook()
	if out == nil {
		return false
	}
	st, ok := out.Climate().Station()
	return ok && st.ID == id
}

// nearShown is how many neighbours of a place are listed.
const nearShown = 5

// Near returns the stations nearest to the site, with distance and difference of height.
func (s *Screen) Near() []Station {
	place, ok := s.place()
	if !ok {
		return nil
	}
	var list []Station
	for _, near := range climate.Nearest(place, nearShown) {
		list = append(list, Station{ID: near.Station.ID, Name: s.nearLine(stationName(near.Station), near.Distance, near.Higher), Taken: s.taken(near.Station.ID)})
	}
	return list
}

// place returns where the site is: its own latitude and longitude, else its station's.
func (s *Screen) place() (climate.Place, bool) {
	site := s.Chosen()
	if site == nil {
		return climate.Place{}, false
	}
	station, known := climate.StationByID(site.Station)
	place := station.Place
	switch {
	case site.Latitude != nil && site.Longitude != nil:
		place.Latitude, place.Longitude = *site.Latitude, *site.Longitude
		if !known {
			place.Elevation = climate.Nearest(place, 1)[0].Station.Place.Elevation
		}
	case !known:
		return climate.Place{}, false
	}
	if site.Elevation != nil {
		place.Elevation = *site.Elevation
	}
	return place, true
}

func (s *Screen) nearLine(name string, distance, higher quantity.Length) string {
	key := "site.near_higher"
	if higher < 0 {
		key, higher = "site.near_lower", -higher
	}
	return s.words.T(key, words.A{"name": name, "distance": s.distance(distance), "height": s.height(higher)})
}

// distance writes a distance over land.
func (s *Screen) distance(l quantity.Length) string {
	const metresPerMile = 1609.344 // international mile
	if s.units() == quantity.USCustomary {
		return s.words.T("site.miles", words.A{"n": s.words.Significant(float64(l)/metresPerMile, 2)})
	}
	return s.words.T("site.kilometres", words.A{"n": s.words.Significant(float64(l)/1000, 2)})
}

// SetStation takes the climate of a station. In a plan without a site it makes one,
// with a spot for the pots that have none.
func (s *Screen) SetStation(id string) error {
	station, ok := climate.StationByID(id)
	if !ok {
		return nil
	}
	args := []finding.Arg{{Name: "station", Value: working.Text(station.Name)}}
	site := s.Chosen()
	if site == nil {
		return s.refused(s.session.Do("site.edit_new", args, func(p planner.Plan) (planner.Plan, error) {
			return s.firstSite(p, station), nil
		}))
	}
	chosen := site.ID
	return s.refused(s.session.Do("site.edit_station", args, func(p planner.Plan) (planner.Plan, error) {
		return p.WithSite(chosen, func(site *planner.Site) {
			site.Station = id
			if site.Latitude == nil { // a height of one's own goes with a place of one's own
				site.Elevation = nil
			}
		})
	}))
}

func (s *Screen) firstSite(p planner.Plan, station climate.Station) planner.Plan {
	p.Sites = []planner.Site{{ID: "home", Name: station.Name, Station: station.ID}}
	p = s.withFirstSpot(p, "home")
	spot := p.Spots[len(p.Spots)-1].ID
	pots := append([]planner.Pot(nil), p.Pots...)
	for i := range pots {
		if pots[i].Spot == "" {
			pots[i].Spot = spot
		}
	}
	p.Pots = pots
	return p
}

// Source says where the climate is from.
func (s *Screen) Source() string {
	out, site := s.Outlook(), s.Chosen()
	if out == nil {
		return ""
	}
	cite := out.Source.Cite
	if out.Period != "" && site.Record == nil && len(site.Means) == 0 && !strings.Contains(cite, out.Period) {
		cite += ", " + out.Period
	}
	switch {
	case site.Record != nil:
		return s.words.T("site.source_record", words.A{"file": site.Record.Name, "from": s.words.Date(site.Record.From), "to": s.words.Date(site.Record.To)})
	case len(site.Means) > 0 && out.Warmth:
		return s.words.T("site.source_means_estimated", words.A{"source": cite})
	case len(site.Means) > 0:
		return s.words.T("site.source_means")
	case out.Place == "":
		return s.words.T("site.source_frost", words.A{"source": cite})
	}
	return s.words.T("site.source", words.A{"place": out.Place, "source": cite})
}

// Credit is a source of the built-in climate data with its licence.
type Credit struct{ Title, Text string }

// Credits lists the sources of the built-in climate data with their licences.
func (s *Screen) Credits() []Credit {
	var list []Credit
	for _, c := range climate.Credits() {
		parts := []string{s.words.T("site.credit", words.A{"licence": c.Licence, "places": s.words.Count(c.Stations)})}
		if c.Statement != "" {
			parts = append(parts, c.Statement+".")
		}
		list = append(list, Credit{Title: c.Publisher + ": " + c.Title, Text: strings.Join(parts, " ")})
	}
	return list
}
