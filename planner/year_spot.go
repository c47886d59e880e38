package planner

import (
	"encoding/json"
	"fmt"
	"slices"
	"sync"

	"fourturn/planner/civil"
	"fourturn/planner/climate"
	"fourturn/planner/quantity"
	"fourturn/planner/rotation"
	"fourturn/plants"
)

// yearSpot is what a spot holds for plants through the days of a search. It is safe for
// concurrent use.
type yearSpot struct {
	key     string
	seasons climate.Seasons
	outlook *rotation.Outlook
	from    civil.Date // first day of its climate
	until   civil.Date // day after the last
	book    *plants.Book

	mu     sync.Mutex
	plants map[string]*rotation.Plant // by id in the book; nil where it cannot be followed
	priced map[string]*rotation.Plant // the same with prices
}

// Days of climate that a search needs around those that are planned for: a planting may
// have stood for a year and more, and the last one wants some days to be judged by.
const (
	yearBefore = 560
	yearAfter  = 150
)

// yearSpotOf returns what the spot of a pot holds for plants.
func (w *workOut) yearSpotOf(spot *Spot, site *SiteOutlook) *yearSpot {
	if s, ok := w.yearSpots[spot.ID]; ok {
		return s
	}
	s := w.ref.Years.spot(w.spotKey(spot, site), func(number int) *yearSpot {
		s := w.newYearSpot(spot, site)
		s.key = fmt.Sprintf("%d", number)
		return s
	})
	if s == nil { // there is no memory, or none for it
		s = w.newYearSpot(spot, site)
		s.key = "once " + spot.ID
	}
	w.yearSpots[spot.ID] = s
	return s
}

// spotKey tells all that the climate of a spot depends on; "" where that cannot be told,
// so that nothing is remembered.
func (w *workOut) spotKey(spot *Spot, site *SiteOutlook) string {
	text, err := json.Marshal(struct {
		Site  *Site
		Spot  *Spot
		Today civil.Date
		Risk  float64
	}{site.Site, spot, w.Today, float64(w.risk())})
	if err != nil {
		return ""
	}
	return string(text)
}

func (w *workOut) newYearSpot(spot *Spot, site *SiteOutlook) *yearSpot {
	c := site.climate.At(placeOf(spot))
	s := &yearSpot{
		seasons: c.Seasons(w.risk()), from: w.First.AddDays(-yearBefore), until: w.Last.AddDays(yearAfter + 1),
		book: w.ref.Book, plants: map[string]*rotation.Plant{},
	}
	daily := c.Daily()
	n := rotation.Normals{From: s.from}
	for day := s.from; day < s.until; day++ {
		n.Tmin, n.Tmax = append(n.Tmin, daily.Tmin.On(day)), append(n.Tmax, daily.Tmax.On(day))
	}
	odds := map[quantity.Temperature]*climate.Year{}
	at, err := rotation.NewClimateOfDays(n, func(threshold quantity.Temperature, day civil.Date) float64 {
		year, ok := odds[threshold]
		if !ok {
			year = c.Freeze(threshold).DailyOdds()
			odds[threshold] = year
		}
		return year.On(day)
	})
	if err != nil {
		panic("planner: the climate of a site is no climate: " + err.Error())
	}
	s.outlook = rotation.NewOutlook(at, rotation.DefaultParams())
	return s
}

// plant returns a plant of the book as a search sees it at the spot, or nil where the
// book does not know it.
func (s *yearSpot) plant(id string) *rotation.Plant {
	s.mu.Lock()
	defer s.mu.Unlock()
	p, ok := s.plants[id]
	if !ok {
		if known, found := s.book.Plant(id); found {
			p = s.translate(known)
		}
		s.plants[id] = p
	}
	return p
}

// seasonNamed returns a planting season at the spot.
func (s *yearSpot) seasonNamed(season Season) climate.Season {
	return s.seasons.List[slices.Index(Seasons[:], season)]
}
