package planner

import (
	"errors"
	"maps"
	"math"
	"slices"
	"time"

	"fourturn/planner/civil"
	"fourturn/planner/climate"
	"fourturn/planner/finding"
	"fourturn/planner/quantity"
	"fourturn/planner/working"
)

// siteClimate is the climate of a spot with its four seasons at the plan's risk.
type siteClimate struct {
	seasons climate.Seasons
	from    civil.Date
	tmean   []quantity.Temperature // of each day from from on
	summed  []float64              // of tmean up to, and without, each day
}

// daysAround is how far the daily temperatures reach beyond the days planned for: a
// stand may have begun, and a charge may last, that much longer.
const daysAround = 400

// mean returns the mean temperature of the days from a to b, b not included.
func (c *siteClimate) mean(a, b civil.Date) float64 {
	i, k := c.index(a), c.index(b)
	if k <= i {
		return float64(c.tmean[i])
	}
	return (c.summed[k] - c.summed[i]) / float64(k-i)
}

// on returns the mean temperature of a day.
func (c *siteClimate) on(d civil.Date) quantity.Temperature { return c.tmean[c.index(d)] }

func (c *siteClimate) index(d civil.Date) int { return min(max(0, int(d-c.from)), len(c.tmean)-1) }

// sites works out the climate of every site.
func (w *workOut) sites() {
	w.years = map[yearKey]seasonDays{}
	w.climates = map[string]*siteClimate{}
	w.Sites = make([]SiteOutlook, len(w.Plan.Sites))
	for i := range w.Plan.Sites {
		site := &w.Plan.Sites[i]
		w.Sites[i] = SiteOutlook{Site: site}
		c, err := climateOfSite(site)
		if err != nil {
			w.noClimate(site, err)
			continue
		}
		w.Sites[i].describe(c, w.Today, w.risk())
	}
}

// noClimate says why a site has no climate: nothing that it could be made from, or a
// fault of the person's own data.
func (w *workOut) noClimate(site *Site, err error) {
	where := finding.Where{"sites", site.ID}
	fault := new(climate.Error)
	if !errors.As(err, &fault) || fault.Code == "climate.no_data" || fault.Code == "climate.no_place" {
		w.find("plan.no_station", finding.Warning, where)
		return
	}
	var args []finding.Arg
	for _, name := range slices.Sorted(maps.Keys(fault.Args)) {
		args = append(args, finding.Arg{Name: name, Value: working.Number(fault.Args[name], working.None)})
	}
	w.find(fault.Code, finding.Error, where, args...)
}

// climateOfSite builds the climate of a site from its station, its place and height and
// what the person typed in or read from a record of their own.
func climateOfSite(site *Site) (*climate.Climate, error) {
	in := climate.Input{Elevation: site.Elevation, LapseRate: site.LapseRate, Digest: site.Record}
	if station, ok := climate.StationByID(site.Station); ok {
		in.Station = &station
	}
	if site.Latitude != nil && site.Longitude != nil {
		in.Place = &climate.Place{Latitude: *site.Latitude, Longitude: *site.Longitude}
		if in.Station == nil {
			in.Station = &climate.Nearest(*in.Place, 1)[0].Station
		}
		in.Place.Elevation = in.Station.Place.Elevation
	}
	if near, ok := climate.FreezeStationByID(site.FreezeStation); ok {
		in.Nearby = &near
	}
	if len(site.Means) > 0 {
		in.Means = typedMeans(site.Means)
	}
	if frost := site.Frost; !frost.Last.IsZero() || !frost.First.IsZero() {
		odds := frost.Odds
		if odds == 0 {
			odds = float64(climate.Even)
		}
		in.Frost = &climate.FreezeDates{Last: atLevel(frost.Last, odds), First: atLevel(frost.First, odds)}
	}
	return climate.New(in)
}

// typedMeans are the typed months, the others not a number.
func typedMeans(months []MonthMeans) *climate.Means {
	m := new(climate.Means)
	for i := range 12 {
		m.Tmin[i], m.Tmax[i] = math.NaN(), math.NaN()
	}
	for _, typed := range months {
		i := typed.Month.Index()
		if i < 0 {
			continue
		}
		if typed.Tmin != nil {
			m.Tmin[i] = float64(*typed.Tmin)
		}
		if typed.Tmax != nil {
			m.Tmax[i] = float64(*typed.Tmax)
		}
	}
	return m
}

// atLevel is a typed date at its level, or none.
func atLevel(day civil.MonthDay, odds float64) []climate.FreezeLevel {
	if day.IsZero() {
		return nil
	}
	return []climate.FreezeLevel{{Odds: odds, Day: day}}
}

// stillOrAlready returns, for each day of a year, the odds that a freeze still comes, in
// the half that warms up, and that one has come already, in the half that cools down.
// The halves meet on the coldest day and where the cold season begins anew: on 1 August
// in the north (NOAA), half a year later in the south.
func stillOrAlready(odds *climate.FreezeOdds, tmean *climate.Year, south bool) []float64 {
	anew := civil.MonthDay{Month: time.August, Day: 1}
	if south {
		anew.Month = time.February
	}
	coldest := 0
	for i, t := range tmean {
		if t < tmean[coldest] {
			coldest = i
		}
	}
	warming := (climate.MonthDayIndex(anew) - coldest + climate.DaysPerYear) % climate.DaysPerYear
	list := make([]float64, climate.DaysPerYear)
	for n := range climate.DaysPerYear {
		i := (coldest + n) % climate.DaysPerYear
		if n < warming {
			list[i] = odds.SpringRisk(climate.MonthDayAt(i))
		} else {
			list[i] = odds.AutumnRisk(climate.MonthDayAt(i))
		}
	}
	return list
}

// freezing is the threshold of a freeze, reached or passed (NOAA: 32 °F).
const freezing quantity.Temperature = 0

func (w *workOut) risk() climate.Risk {
	if w.Plan.Risk == 0 {
		return DefaultRisk
	}
	return climate.Risk(w.Plan.Risk)
}

func seasonFigure(seasons climate.Seasons, name climate.SeasonName, day civil.Date) Figure {
	return NewFigure(working.Date(day), func() working.Trace {
		trace := seasons.Working(name)
		trace.Result = working.Date(day)
		return trace
	})
}

// spreadAround returns the earliest and the latest of a season's starts at the named
// risks, in the year of a day.
func spreadAround(s climate.Season, day civil.Date) (earliest, latest civil.Date) {
	earliest, latest = day, day
	for _, m := range []civil.MonthDay{s.Spread.Cautious, s.Spread.Even, s.Spread.Bold} {
		if m.IsZero() {
			continue
		}
		d := m.In(day.Year())
		switch {
		case d-day > halfYear:
			d = m.In(day.Year() - 1)
		case day-d > halfYear:
			d = m.In(day.Year() + 1)
		}
		earliest, latest = min(earliest, d), max(latest, d)
	}
	return earliest, latest
}

// spotClimate returns the climate of a spot, worked out once.
func (w *workOut) spotClimate(spot *Spot, site *SiteOutlook) *siteClimate {
	if c, ok := w.climates[spot.ID]; ok {
		return c
	}
	c := site.climate.At(placeOf(spot))
	sc := &siteClimate{seasons: c.Seasons(w.risk()), from: w.First.AddDays(-daysAround)}
	year, total := c.Daily().Tmean, 0.0
	for d := sc.from; d <= w.Last.AddDays(daysAround); d++ {
		t := year.On(d)
		sc.tmean, sc.summed = append(sc.tmean, quantity.Temperature(t)), append(sc.summed, total)
		total += t
	}
	w.climates[spot.ID] = sc
	return sc
}

// placeOf returns the offsets of a spot: the person's own, else those usual for its
// kind of place; open ground where the kind is not known.
func placeOf(spot *Spot) climate.Spot {
	place, ok := climate.SpotByKey(spot.Shelter)
	if !ok {
		place = climate.Open
	}
	return place.With(spot.NightOffset, spot.DayOffset)
}

// seasonDaysOf returns the change-out days of a spot in one calendar year.
func (w *workOut) seasonDaysOf(spot *Spot, site *SiteOutlook, year int) seasonDays {
	sc := w.spotClimate(spot, site)
	days := seasonDays{}
	for i, s := range sc.seasons.List {
		if !s.Exists {
			continue
		}
		if s.AllYear { // any day will do: the year's first, until somebody pins another
			s.Start, s.Spread = civil.MonthDay{Month: time.January, Day: 1}, climate.Spread{}
		}
		day := seasonDay{exists: true, endless: s.AllYear, best: s.Start.In(year), reason: "climate.reason_" + string(s.Why)}
		day.earliest, day.latest = spreadAround(s, day.best)
		name := s.Name
		day.trace = func(d civil.Date) working.Trace { return seasonFigure(sc.seasons, name, d).Working() }
		days[Seasons[i]] = day
	}
	return days
}

// climateOf returns the climate at a pot, or nil where there is none.
func (w *workOut) climateOf(out *PotOutlook) *siteClimate {
	if out.Spot == nil || out.Site == nil || !out.Site.Known {
		return nil
	}
	return w.spotClimate(out.Spot, out.Site)
}

// meanTemperature returns the mean temperature of the air over a stand, or that of
// growth where the climate is not known.
func (w *workOut) meanTemperature(out *PotOutlook, s *Stand) float64 {
	sc := w.climateOf(out)
	if sc == nil || s.To <= s.From {
		return growthFloor
	}
	return sc.mean(s.From, s.To)
}

// siteOf returns the site with an id, or nil.
func (o *Outlook) siteOf(id string) *SiteOutlook {
	i := slices.IndexFunc(o.Sites, func(s SiteOutlook) bool { return s.Site.ID == id })
	if i < 0 {
		return nil
	}
	return &o.Sites[i]
}
