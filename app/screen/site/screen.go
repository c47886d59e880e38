// Package site is a place with its climate: the year as it normally is, the odds of
// freezes, the four planting seasons with their spread, and where all that is from.
//
// It draws nothing. The person finds a station by name, corrects for height, and may
// type frost dates of their own.
package site

import (
	"errors"
	"strings"

	"fourturn/app/session"
	"fourturn/app/words"
	"fourturn/planner"
	"fourturn/planner/civil"
	"fourturn/planner/climate"
	"fourturn/planner/finding"
	"fourturn/planner/quantity"
	"fourturn/planner/working"
)

// Session is the open plan with what is worked out for it.
type Session = session.Session[*planner.Outlook]

// Screen is the page of a site.
type Screen struct {
	session *Session
	words   *words.Words
	chosen  string
}

// New returns the page of a session.
func New(s *Session, w *words.Words) *Screen { return &Screen{session: s, words: w} }

// FieldError refuses what was typed into a field; its text is for the person.
type FieldError struct{ Text string }

// Error returns the text.
func (e *FieldError) Error() string { return e.Text }

// Chosen returns the site that is looked at, or nil where the plan has none.
func (s *Screen) Chosen() *planner.Site {
	plan := s.session.Plan()
	if site := plan.Site(s.chosen); site != nil {
		return site
	}
	if len(plan.Sites) == 0 {
		return nil
	}
	return &plan.Sites[0]
}

// Names returns the sites of the plan with the number of the chosen one.
func (s *Screen) Names() (names []string, chosen int) {
	chosen = -1
	site := s.Chosen()
	for i := range s.session.Plan().Sites {
		one := &s.session.Plan().Sites[i]
		names = append(names, one.Label())
		if one.ID == site.ID {
			chosen = i
		}
	}
	return names, chosen
}

// Name returns what the site that is looked at is called, or "".
func (s *Screen) Name() string {
	if site := s.Chosen(); site != nil {
		return site.Label()
	}
	return ""
}

// Choose looks at another site.
func (s *Screen) Choose(i int) {
	if sites := s.session.Plan().Sites; i >= 0 && i < len(sites) {
		s.chosen = sites[i].ID
	}
}

// Outlook returns what is worked out for the chosen site, or nil.
func (s *Screen) Outlook() *planner.SiteOutlook {
	all, _ := s.session.Outlook()
	site := s.Chosen()
	if all == nil || site == nil {
		return nil
	}
	for i := range all.Sites {
		if all.Sites[i].Site.ID == site.ID && all.Sites[i].Known {
			return &all.Sites[i]
		}
	}
	return nil
}

// Today returns the day that was worked out for, or no day before that.
func (s *Screen) Today() civil.Date {
	all, _ := s.session.Outlook()
	if all == nil {
		return 0
	}
	return all.Today
}

// Station is one place of the climate table.
type Station struct {
	ID   string
	Name string
}

// Find returns stations whose names fit what was typed, the best first.
func (s *Screen) Find(typed string, limit int) []Station {
	var list []Station
	for _, st := range climate.Find(typed, limit) {
		list = append(list, Station{ID: st.ID, Name: s.stationName(st)})
	}
	return list
}

func (s *Screen) stationName(st climate.Station) string {
	parts := []string{st.Name}
	if st.Admin != "" {
		parts = append(parts, st.Admin)
	}
	parts = append(parts, st.Country)
	return s.words.T("site.station_line", words.A{
		"name": strings.Join(parts, ", "), "height": s.height(st.Place.Elevation),
	})
}

func (s *Screen) height(l quantity.Length) string {
	return s.words.Value(working.Number(float64(l), working.Metre), s.session.Plan().Units)
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
		return s.session.Do("site.edit_new", args, func(p planner.Plan) (planner.Plan, error) {
			return s.firstSite(p, station), nil
		})
	}
	chosen := site.ID
	return s.session.Do("site.edit_station", args, func(p planner.Plan) (planner.Plan, error) {
		return p.WithSite(chosen, func(site *planner.Site) { site.Station, site.Elevation = id, nil })
	})
}

func (s *Screen) firstSite(p planner.Plan, station climate.Station) planner.Plan {
	p.Sites = []planner.Site{{ID: "home", Name: station.Name, Station: station.ID}}
	p.Spots = append(p.Spots[:len(p.Spots):len(p.Spots)], planner.Spot{
		ID:   planner.FreeID("open", func(id string) bool { return p.Spot(id) != nil }),
		Name: s.words.T("site.first_spot"), Site: "home", Light: planner.Sun,
	})
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
		if s.session.Plan().Units == quantity.USCustomary {
			unit = quantity.Foot
		}
		l, err := s.words.Reader().Length(typed, unit)
		if err != nil {
			return s.refusal(err)
		}
		if l < lowest || l > highest {
			return &FieldError{Text: s.words.T("site.elevation_range", words.A{"lowest": s.height(lowest), "highest": s.height(highest)})}
		}
		height = &l
	}
	return s.edit("site.edit_elevation", func(site *planner.Site) { site.Elevation = height })
}

// Frost returns the person's own last and first frost, written MM-DD, or "".
func (s *Screen) Frost() (last, first string) {
	site := s.Chosen()
	if site == nil {
		return "", ""
	}
	return site.Frost.Last.String(), site.Frost.First.String()
}

// SetFrost takes the person's own last (or first) frost in an even year.
func (s *Screen) SetFrost(last bool, typed string) error {
	var day civil.MonthDay
	if typed = strings.TrimSpace(typed); typed != "" {
		parsed, err := civil.ParseMonthDay(typed)
		if err != nil {
			return &FieldError{Text: s.words.T("site.frost_format")}
		}
		day = parsed
	}
	return s.edit("site.edit_frost", func(site *planner.Site) {
		if last {
			site.Frost.Last = day
		} else {
			site.Frost.First = day
		}
	})
}

func (s *Screen) edit(name string, edit func(*planner.Site)) error {
	site := s.Chosen()
	if site == nil {
		return nil
	}
	id := site.ID
	err := s.session.Do(name, []finding.Arg{{Name: "site", Value: working.Text(site.Label())}}, func(p planner.Plan) (planner.Plan, error) {
		return p.WithSite(id, edit)
	})
	if err != nil {
		return &FieldError{Text: s.words.T("site.refused", words.A{"cause": err.Error()})}
	}
	return nil
}

func (s *Screen) refusal(err error) error {
	var parse *quantity.ParseError
	if errors.As(err, &parse) {
		return &FieldError{Text: s.words.Typed(parse)}
	}
	return err
}
