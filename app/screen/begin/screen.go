// Package begin makes a new plan from three answers: where the pots stand, which pots
// there are, and what one likes to see in them. The year is there at once, to be
// changed afterwards like any other.
//
// It draws nothing, and changes nothing until [Screen.Finish]: then the new plan
// is one edit, which undo takes back. The size of a pot may be one that the trade has
// a name for, until somebody measures.
//
// Plants are chosen from the plant book by what they are planted for, by light, by
// colour and by style; none that is listed harmful to those who live there. That is
// a start and no more: whether a planting lives through its season in this climate
// the rooms say afterwards.
package begin

import (
	"fmt"
	"math"
	"slices"
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

// Screen holds the answers.
type Screen struct {
	session *Session
	words   *words.Words
	ref     planner.Reference
	today   civil.Date

	found   []climate.Station
	station *climate.Station
	climate *planner.SiteOutlook // of the station, once it was asked for

	size  sizeChoice
	lines []line

	taste Taste
}

// New returns the questions with nothing answered but what is usual.
func New(s *Session, w *words.Words, ref planner.Reference, today civil.Date) *Screen {
	return &Screen{session: s, words: w, ref: ref, today: today, size: usualSize(), taste: Taste{Household: s.Plan().Household}}
}

// Place is one place of the climate table.
type Place struct{ Name, About string }

// mostPlaces is how many places are listed; who sees that many types another letter.
const mostPlaces = 40

// SearchPlace looks for places by name and takes the best one.
func (s *Screen) SearchPlace(typed string) {
	s.found = climate.Find(typed, mostPlaces)
	s.station, s.climate = nil, nil
	s.ChoosePlace(0)
}

// Places returns the places that were found, the best first.
func (s *Screen) Places() []Place {
	list := make([]Place, len(s.found))
	for i, st := range s.found {
		land := st.Country
		if st.Admin != "" {
			land = st.Admin + ", " + land
		}
		list[i] = Place{Name: st.Name, About: s.words.T("begin.place_about", words.A{
			"land": land, "height": s.height(st.Place.Elevation),
		})}
	}
	return list
}

// height writes how high a place lies, in whole metres or feet.
func (s *Screen) height(l quantity.Length) string {
	if s.units() == quantity.USCustomary {
		return s.words.T("begin.height_feet", words.A{"height": int(math.Round(float64(l / quantity.Foot)))})
	}
	return s.words.T("begin.height_metres", words.A{"height": int(math.Round(float64(l / quantity.Metre)))})
}

// ChoosePlace takes one of the places that were found.
func (s *Screen) ChoosePlace(i int) {
	if i >= 0 && i < len(s.found) {
		s.station, s.climate = &s.found[i], nil
	}
}

// HasPlace reports whether a place was chosen.
func (s *Screen) HasPlace() bool { return s.station != nil }

// Climate says in a line what the chosen place is like for pots, or "".
func (s *Screen) Climate() string {
	site := s.site()
	if site == nil || !site.Known {
		return ""
	}
	var seasons []string
	for _, one := range site.Seasons {
		if one.Exists {
			seasons = append(seasons, s.words.T("plan.season."+string(one.Season)))
		}
	}
	for _, one := range site.Seasons {
		if one.Exists && one.Season == planner.Summer {
			return s.words.T("begin.climate", words.A{
				"place": s.town(), "seasons": s.words.List(seasons...), "summer": s.words.ShortDate(one.Start.Value.Date),
			})
		}
	}
	return s.words.T("begin.climate_seasons", words.A{"place": s.town(), "seasons": s.words.List(seasons...)})
}

// site works out the climate of the chosen place, without pots.
func (s *Screen) site() *planner.SiteOutlook {
	if s.station == nil {
		return nil
	}
	if s.climate == nil {
		plan := s.ground()
		s.climate = &planner.WorkOut(&plan, s.ref, s.today).Sites[0]
	}
	return s.climate
}

// stationWords are what weather services put behind the name of a town.
var stationWords = []string{"airport", "intl", "international", "municipal", "regional", "ap", "afb", "field"}

// town returns the name of the chosen place without what says that its station
// stands at an airport.
func (s *Screen) town() string {
	parts := strings.Fields(s.station.Name)
	for len(parts) > 1 && slices.Contains(stationWords, strings.ToLower(strings.Trim(parts[len(parts)-1], ".,"))) {
		parts = parts[:len(parts)-1]
	}
	return strings.TrimRight(strings.Join(parts, " "), " ,/-")
}

// customaryLands read US customary units (CIA World Factbook, appendix on weights and
// measures: the United States, Liberia and Burma have not adopted the metric system).
var customaryLands = []string{"United States", "Liberia", "Myanmar"}

// units are those of the chosen place, else those of the plan that is open.
func (s *Screen) units() quantity.System {
	if s.station == nil {
		return s.session.Plan().Units
	}
	if slices.ContainsFunc(customaryLands, func(land string) bool { return strings.HasPrefix(s.station.Country, land) }) {
		return quantity.USCustomary
	}
	return quantity.Metric
}

// The ids in a new plan.
const (
	siteID = "home"
	spotID = "spot"
)

// ground returns a plan with the place alone.
func (s *Screen) ground() planner.Plan {
	return planner.Plan{
		Title: s.words.T("begin.title", words.A{"place": s.town()}), Units: s.units(), Risk: planner.DefaultRisk,
		Household: s.taste.Household,
		Sites:     []planner.Site{{ID: siteID, Name: s.town(), Station: s.station.ID}},
		Spots: []planner.Spot{{
			ID: spotID, Name: s.words.T("begin.spot." + string(lights[s.taste.Light])), Site: siteID, Light: lights[s.taste.Light],
		}},
	}
}

// Plan returns the plan that the answers make. There must be a place.
func (s *Screen) Plan() planner.Plan {
	if s.station == nil {
		panic("begin: a plan without a place")
	}
	plan := s.ground()
	s.addProducts(&plan)
	plan.Recipes = append(plan.Recipes, s.plantings()...)
	n := 0
	for _, l := range s.Pots() {
		for range l.Count {
			n++
			pot := planner.Pot{
				ID: fmt.Sprintf("pot-%d", n), Name: s.words.T("begin.pot_name", words.A{"number": n}),
				Spot: spotID, Vessel: l.Spec,
			}
			for _, r := range plan.Recipes {
				pot.Plantings = append(pot.Plantings, planner.Planting{Season: r.Season, Recipe: r.ID})
			}
			plan.Pots = append(plan.Pots, pot)
		}
	}
	return plan
}

// Finish puts the new plan in the place of the open one, which must have no unsaved
// work. It is one edit of an empty plan.
func (s *Screen) Finish() error {
	plan := s.Plan()
	if err := s.session.Start(&planner.Plan{Risk: planner.DefaultRisk, Units: plan.Units}); err != nil {
		return err
	}
	args := []finding.Arg{{Name: "place", Value: working.Text(s.town())}}
	return s.session.Do("begin.edit_new_plan", args, func(planner.Plan) (planner.Plan, error) { return plan, nil })
}
