package site

import (
	"math"
	"strconv"
	"strings"

	"fourturn/app/words"
	"fourturn/planner"
	"fourturn/planner/climate"
	"fourturn/planner/quantity"
	"fourturn/planner/working"
)

// Coordinates returns latitude and longitude of the site, written out, or "".
func (s *Screen) Coordinates() (latitude, longitude string) {
	site := s.Chosen()
	if site == nil || site.Latitude == nil || site.Longitude == nil {
		return "", ""
	}
	return degrees(*site.Latitude, "N", "S"), degrees(*site.Longitude, "E", "W")
}

func degrees(x float64, positive, negative string) string {
	letter := positive
	if x < 0 {
		letter = negative
	}
	return strconv.FormatFloat(math.Abs(x), 'f', -1, 64) + "° " + letter
}

// SetCoordinates says where the site is, in degrees; both empty takes the station's
// place. "41.6, -93.6" may be typed into the first, as maps give it.
func (s *Screen) SetCoordinates(latitude, longitude string) error {
	latitude, longitude = strings.TrimSpace(latitude), strings.TrimSpace(longitude)
	if first, second, both := pair(latitude); both && longitude == "" {
		latitude, longitude = first, second
	}
	if latitude == "" && longitude == "" {
		return s.edit("site.edit_place", func(site *planner.Site) { site.Latitude, site.Longitude = nil, nil })
	}
	lat, ok := readDegrees(latitude, "N", "S", 90)
	if !ok {
		return &words.Refusal{Text: s.words.T("site.latitude_format")}
	}
	lon, ok := readDegrees(longitude, "E", "W", 180)
	if !ok {
		return &words.Refusal{Text: s.words.T("site.longitude_format")}
	}
	return s.edit("site.edit_place", func(site *planner.Site) { site.Latitude, site.Longitude = &lat, &lon })
}

// readDegrees reads degrees with a sign or with a letter.
func readDegrees(typed, positive, negative string, most float64) (float64, bool) {
	text := strings.ToUpper(strings.TrimSpace(typed))
	sign, lettered := 1.0, false
	for letter, s := range map[string]float64{positive: 1, negative: -1} {
		if rest, found := strings.CutSuffix(text, letter); found {
			text, sign, lettered = rest, s, true
		}
	}
	text = strings.TrimSpace(strings.TrimSuffix(strings.TrimSpace(text), "°"))
	text = strings.Replace(strings.Replace(text, "−", "-", 1), ",", ".", 1)
	x, err := strconv.ParseFloat(text, 64)
	if err != nil || math.IsNaN(x) || math.Abs(x) > most || lettered && x < 0 {
		return 0, false
	}
	return sign*x + 0, true // no minus sign on a zero
}

// Elevation returns the height of the site, written out.
func (s *Screen) Elevation() string {
	if out := s.Outlook(); out != nil {
		return s.height(out.Elevation)
	}
	return ""
}

// The heights that a site may have: from below the shore of the Dead Sea to above any
// town.
const (
	lowest  = -450 * quantity.Metre
	highest = 6000 * quantity.Metre
)

// SetElevation says how high the site lies; nothing typed takes the station's height.
func (s *Screen) SetElevation(typed string) error {
	var height *quantity.Length
	if strings.TrimSpace(typed) != "" {
		unit := quantity.Metre
		if s.units() == quantity.USCustomary {
			unit = quantity.Foot
		}
		l, err := s.words.Reader().Length(typed, unit)
		if err != nil {
			return s.words.Unread(err)
		}
		if l < lowest || l > highest {
			return &words.Refusal{Text: s.words.T("site.range", words.A{"lowest": s.height(lowest), "highest": s.height(highest)})}
		}
		height = &l
	}
	return s.edit("site.edit_elevation", func(site *planner.Site) { site.Elevation = height })
}

// A degree Fahrenheit and a thousand feet in the units of a lapse rate.
const (
	degreeF      = 1 / 1.8
	thousandFeet = 0.3048 // km
	steepest     = 20.0   // K/km
)

// Lapse returns by how much the air is colder higher up, as a bare number in the
// person's unit, and that unit.
func (s *Screen) Lapse() (value, unit string) {
	rate := climate.DefaultLapseRate
	if site := s.Chosen(); site != nil && site.LapseRate != 0 {
		rate = site.LapseRate
	}
	if s.units() == quantity.USCustomary {
		return s.words.Significant(rate/degreeF*thousandFeet, 3), s.words.T("site.lapse_unit_us")
	}
	return s.words.Significant(rate, 3), s.words.T("site.lapse_unit")
}

// SetLapse says by how much the air is colder higher up; nothing typed is the value of
// the standard atmosphere.
func (s *Screen) SetLapse(typed string) error {
	rate := 0.0
	if typed = strings.TrimSpace(typed); typed != "" {
		x, err := strconv.ParseFloat(strings.Replace(strings.Fields(typed)[0], ",", ".", 1), 64)
		if s.units() == quantity.USCustomary {
			x *= degreeF / thousandFeet
		}
		if err != nil || !(x >= 0.1 && x <= steepest) {
			return &words.Refusal{Text: s.words.T("site.lapse_range")}
		}
		rate = math.Round(x*1000) / 1000
	}
	return s.edit("site.edit_lapse", func(site *planner.Site) { site.LapseRate = rate })
}

// LapseSource says where the usual value is from.
func (s *Screen) LapseSource() string {
	return s.words.T("site.lapse_source", words.A{"rate": s.words.Value(working.Number(climate.DefaultLapseRate, working.KelvinPerKm), s.units())})
}

// freezeReach is how far from a site the freeze stations are offered.
const freezeReach = 150 * 1000 * quantity.Metre

// FreezeStations returns the US freeze stations near the site that give dates, the
// nearest first; none elsewhere. The one whose dates are taken is marked.
func (s *Screen) FreezeStations() []Station {
	place, ok := s.place()
	if !ok {
		return nil
	}
	var list []Station
	taken := s.Chosen().FreezeStation
	for _, near := range climate.NearestFreeze(place, 4*nearShown) {
		st := near.Station
		if near.Distance > freezeReach || len(list) == nearShown {
			break
		}
		if st.Note != climate.FreezeDated || st.Freezes.Last[1].IsZero() {
			continue
		}
		list = append(list, Station{
			ID: st.ID, Taken: st.ID == taken,
			Name: s.words.T("site.freeze_line", words.A{
				"station": s.nearLine(st.Name+", "+st.State, near.Distance, near.Higher),
				"last":    s.words.MonthDay(st.Freezes.Last[1]), "first": s.words.MonthDay(st.Freezes.First[1]),
			}),
		})
	}
	return list
}

// SetFreezeStation takes the dates of a freeze station; "" takes none.
func (s *Screen) SetFreezeStation(id string) error {
	return s.edit("site.edit_freeze_station", func(site *planner.Site) { site.FreezeStation = id })
}

// Whole reports whether a text holds both latitude and longitude.
func Whole(typed string) bool {
	_, _, both := pair(typed)
	return both
}

// pair splits "41.6, -93.6". A comma within a number is a decimal one.
func pair(typed string) (first, second string, ok bool) {
	first, second, ok = strings.Cut(typed, ",")
	if !ok || strings.TrimSpace(second) == "" {
		return typed, "", false
	}
	parted := strings.HasPrefix(second, " ") || strings.Contains(first, ".") || strings.ContainsAny(strings.ToUpper(first), "NS°")
	return strings.TrimSpace(first), strings.TrimSpace(second), parted
}
